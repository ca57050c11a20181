package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/rules"
)

// shelved is a case with one shelf of stuff in it, over a clear span in inches.
func shelved(stuff string, span, deep, thick float64, load string) string {
	return fmt.Sprintf(`climate { shop 8%% ; dry 6%% ; humid 11%% }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
%s
case rack {
  of ply
  wide %.4f ; high 30 ; deep %.4f
  joint dado deep 1/4
  across { side left ; down { top roof ; open a ; shelf only { of stuff %.4f ; joint dado deep 1/4 glue centre ; %s } ; open b ; bottom floor } ; side right }
}
`, stuff, span+1.5, deep, thick, load)
}

// sags reports whether shelf-sags speaks of a plan, or shelf-creeps, and fails where anything else does.
func sags(t interface{ Fatalf(string, ...any) }, text string) (sags, creeps bool) {
	for _, f := range example(text).found {
		switch f.Rule {
		case "shelf-sags":
			sags = true
		case "shelf-creeps":
			creeps = true
		default:
			t.Fatalf("%s: %s\n%s", f.Rule, f.Message, text)
		}
	}
	if sags && creeps {
		t.Fatalf("two findings of one shelf\n%s", text)
	}
	return sags, creeps
}

// TestPublishedShelves: the Architectural Woodwork Standards, 1st ed., 2009, p. 279, print the longest shelf in whole
// inches that sags no more than L/144. Whole plans with a shelf that long are silent, and one inch more is found.
func TestPublishedShelves(t *testing.T) {
	tests := []struct {
		name, stuff string
		thick       float64
		load        int
		span        float64
	}{
		{"fir plywood", "plywood", 0.75, 40, 40},
		{"fir plywood", "plywood", 0.75, 50, 37},
		{"fir plywood", "plywood", 1, 40, 53},
		{"fir plywood", "plywood", 1, 50, 49},
		{"red oak", "oak", 0.75, 40, 49},
		{"red oak", "oak", 0.75, 50, 46},
		{"red oak", "oak", 1, 40, 66},
		{"red oak", "oak", 1, 50, 61},
	}
	for _, test := range tests {
		stuff := `wood stuff { species "red oak, northern" ; sawn quarter ; stiff 1820000psi }`
		if test.stuff == "plywood" {
			stuff = fmt.Sprintf(`sheet stuff { kind plywood ; thick %v ; actual %v ; stiff 950000psi ; emission "TSCA Title VI" }`, test.thick, test.thick)
		}
		for more, want := range []bool{false, true} {
			span := test.span + float64(more)
			text := shelved(stuff, span, 10, test.thick, fmt.Sprintf("load %dpsf", test.load))
			if got, _ := sags(t, text); got != want {
				t.Errorf("%s %v thick, %d psf, %v in: found %v", test.name, test.thick, test.load, span, got)
			}
		}
	}
}

// TestLongerAndThinnerSagMore: once a shelf sags too much, none that is longer, thinner or more heavily loaded is
// silent; and the mends that a finding computes put it right, for good.
func TestLongerAndThinnerSagMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]string{"plywood", "mdf", "particle", "osb", "red oak, northern", "eastern white pine"}).Draw(t, "stuff")
		use := rapid.SampledFrom([]string{"fine", "case", "kitchen"}).Draw(t, "sag")
		span, thick := sixteenths(t, "span", 8*16, 60*16), sixteenths(t, "thick", 8, 24)
		load := float64(rapid.IntRange(5, 80).Draw(t, "load"))
		shelf := func(span, thick, load float64) string {
			stuff := fmt.Sprintf(`sheet stuff { kind %s ; thick %.4f ; actual %.4f ; emission "TSCA Title VI" }`, kind, thick, thick)
			if strings.Contains(kind, " ") {
				stuff = fmt.Sprintf(`wood stuff { species %q ; sawn quarter }`, kind)
			}
			return shelved(stuff, span, 10, thick, fmt.Sprintf("load %.4fpsf sag %s", load, use))
		}
		sagsNow, creeps := sags(t, shelf(span, thick, load))
		if !sagsNow {
			if use != "fine" && creeps {
				t.Fatalf("only of fine work is it asked how straight it stays")
			}
			for _, less := range []string{shelf(span-1, thick, load), shelf(span, thick+0.125, load), shelf(span, thick, load*0.9)} {
				if now, later := sags(t, less); now || later && !creeps {
					t.Fatalf("less load begins to sag:\n%s", less)
				}
			}
			return
		}
		for _, more := range []string{shelf(span+1, thick, load), shelf(span, thick-0.125, load), shelf(span, thick, load*1.1)} {
			if now, _ := sags(t, more); !now {
				t.Fatalf("more load no longer sags:\n%s", more)
			}
		}
		for _, f := range example(shelf(span, thick, load)).found {
			for _, mend := range f.Fixes {
				thicker, shorter := thick, span
				if _, after, ok := strings.Cut(mend.Title, "clear span is over "); ok {
					shorter = inches(t, after)
				} else if _, after, ok := strings.Cut(mend.Title, "make it "); ok {
					thicker = inches(t, strings.TrimSuffix(after, " thick"))
				} else if _, after, ok := strings.Cut(mend.Title, "same kind, "); ok {
					thicker = inches(t, strings.TrimSuffix(after, " thick or more"))
				}
				if mended := shelf(shorter, thicker, load); thicker != thick || shorter != span {
					if now, later := sags(t, mended); now || later {
						t.Fatalf("%s does not mend it:\n%s", mend.Title, mended)
					}
				}
			}
		}
	})
}

// inches reads a size as a tape reads: `29 5/32`.
func inches(t *rapid.T, shown string) (inches float64) {
	for _, part := range strings.Fields(shown) {
		var whole, over float64 = 0, 1
		if n, _ := fmt.Sscanf(part, "%f/%f", &whole, &over); n == 0 {
			t.Fatalf("no size: %q", shown)
		}
		inches += whole / over
	}
	return inches
}

// TestWhatCarries: the widest clear span of what is loaded, worked out by hand; "" where the plan does not tell what
// carries it.
func TestWhatCarries(t *testing.T) {
	const supplies = `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
screw no6 { gauge 6 ; long 1 }
part strip { of ply ; size 30 x 2 x 3/4 }
part plank { of ply ; size 30 x 12 x 3/4 ; load 5psf }
frame grid { of ply ; wide 39 1/2 ; high 12 ; thick 2 ; across { stile l 2 ; down { rail a 2 ; space ; rail b 2 { load 5lb/ft } } ; stile r 2 } }
case pedestal x 2 { of ply ; wide 12 ; high 20 ; deep 12 ; across { side left ; down { top roof ; open bay ; bottom floor } ; side right } }
`
	between := func(inner string) string { // 38 1/2 between the sides
		return "case rack { of ply ; wide 40 ; high 40 ; deep 12\n across { side left ; down { top roof ; open up ; " + inner + " ; bottom floor } ; side right } }"
	}
	tests := []struct{ name, text, want string }{
		{"between two sides", between("shelf s { load 5psf } ; open low"), "38 1/2"},
		{"a post under it", between("shelf s { load 5psf } ; across { open a 10 ; divider d ; open b }"), "27 3/4"},
		{"two posts", between("shelf s { load 5psf } ; across { open a 10 ; divider d ; open b 8 ; leg e 2 { thick 2 } ; open c }"), "17 3/4"},
		{"a post that stands on it, and one under that", between("across { open a 10 ; divider d ; open b } ; shelf s { load 5psf } ; across { open c 10 ; divider e ; open f }"), "27 3/4"},
		{"a post that stands on it", between("across { open a 10 ; divider d ; open b } ; shelf s { load 5psf } ; open low"), ""},
		{"a rail under it", between("shelf s { load 5psf } ; rail r 2 { thick 3/4 } ; open low"), ""},
		{"a rail on it", between("rail r 2 { thick 3/4 } ; shelf s { load 5psf } ; open low"), ""},
		{"cleats under its ends", between("shelf s { load 5psf } ; across 1 { cleat c 1 ; space ; cleat d 1 } ; open low"), "36 1/2"},
		{"a cleat under its middle", between("shelf s { load 5psf } ; across 1 { space 12 ; cleat c 1 ; space } ; open low"), ""},
		{"nobody loads it", between("open low ; shelf s ; open last"), "none"},
		{"a bottom that may stand on the floor", "case rack { of ply ; wide 40 ; high 40 ; deep 12 ; across { side left ; down { open up ; bottom b { load 5psf } } ; side right } }", ""},
		{"a bottom that does not", "case rack { of ply ; wide 40 ; high 40 ; deep 12 ; across { side left ; down { open up ; bottom b { load 5psf } ; space 3 } ; side right } }", "38 1/2"},
		{"a bottom on its kick", "case rack { of ply ; wide 40 ; high 40 ; deep 12 ; across { side left ; down { open up ; bottom b { load 5psf } ; kick k 3 { thick 3/4 } } ; side right } }", ""},
		{"what a bay holds", between("shelf s ; open low { holds books }"), ""},
		{"what a bay holds stands on the shelf under it", between("open mid { holds books } ; shelf s ; open low"), "38 1/2"},
		{"books in both bays on it", between("across { open a 10 { holds books } ; divider d ; open b { holds books } } ; shelf s ; across { open c 10 ; divider e ; open f }"), "27 3/4"},
		{"books in one bay of two", between("across { open a 10 { holds books } ; divider d ; open b } ; shelf s ; across { open c 10 ; divider e ; open f }"), "none"},
		{"clothes in a bay hang", between("open mid { holds clothes } ; shelf s ; open low"), "none"},
		{"of the whole case", between("shelf s ; open low") + "\ncase other { of ply ; wide 30 ; high 40 ; deep 12 ; load 5psf\n across { side left ; down { top roof ; open up ; shelf t ; open low ; bottom floor } ; side right } }", "28 1/2"},
		{"books on each shelf of the case", "case rack { of ply ; wide 30 ; high 40 ; deep 12 ; holds books\n across { side left ; down { top roof ; open up ; shelf t ; open low ; bottom floor } ; side right } }", "28 1/2"},
		{"books that weigh so much in all", "case rack { of ply ; wide 30 ; high 40 ; deep 12 ; holds books 300lb\n across { side left ; down { top roof ; open up ; shelf t ; open low ; bottom floor } ; side right } }", "none"},
		{"a mattress on something with a shelf", "case rack { of ply ; wide 30 ; high 40 ; deep 12 ; holds mattress 76 x 80\n across { side left ; down { top roof ; open up ; shelf t ; open low ; bottom floor } ; side right } }", "none"},
		{"of the part", between("shelf s { part plank } ; open low"), "38 1/2"},
		{"one end is free", "assembly a { of ply ; wide 40 ; high 40 ; deep 12 ; across { side left ; down { space ; shelf s { load 5psf } ; space } ; space 4 } }", ""},
		{"it runs through over its sides", "case a { of ply ; wide 40 ; high 40 ; deep 12 ; down { top t { load 5psf } ; across { space 6 ; side left ; open bay ; side right ; space 4 } } }", "28 1/2"},
		{"a part is fixed to it", between("shelf s { load 5psf } ; open low") + "\nfix strip to rack.s { screw no6 x 3 }", ""},
		{"its side is fixed to it", between("shelf s { load 5psf } ; open low") + "\nfix rack.s to rack.left { screw no6 x 3 }", "38 1/2"},
		{"it is fixed to the wall", between("shelf s { load 5psf } ; open low") + "\nfix rack.s to wall { screw no6 x 3 }", ""},
		{"the case is", between("shelf s { load 5psf } ; open low") + "\nfix rack to wall { screw no6 x 3 }", "38 1/2"},
		{"a frame that lies flat", "assembly a { wide 39 1/2 ; high 20 ; deep 12 ; down { frame lying 2 part grid ; space } }", ""},
		{"over two pedestals", "assembly a { wide 60 ; high 20 ; deep 12 ; across { case l part pedestal ; open knees ; case r part pedestal } }\ntop t { of ply ; over a ends 2 ; load 5psf }", "36"},
		{"its grain from front to back", between("shelf s { grain behind ; load 5psf } ; open low"), "38 1/2"},
		{"carried at all its edges", "case a { of ply ; wide 40 ; high 40 ; deep 12 ; across { side left ; behind { side f 3/4 { grain across } ; down { open up ; shelf s { load 5psf } ; open low } ; side b 3/4 { grain across } } ; side right } }", ""},
		{"arched", "frame f { of ply ; wide 40 ; high 20 ; thick 3/4 ; across { post l 2 ; down { rail r 4 { arch 1 ; load 5lb/ft } ; space } ; post r2 2 } }", ""},
		{"a rail between posts", "frame f { of ply ; wide 40 ; high 20 ; thick 3/4 ; across { post l 2 ; down { rail r 4 { load 5lb/ft } ; space } ; post r2 2 } }", "36"},
	}
	for _, test := range tests {
		c := example(supplies + test.text)
		p, _ := rules.Run(diag.NewFile(c.name, supplies+test.text), c.folder.open)
		got := "none"
		for _, l := range rules.Loads(p) {
			if strings.HasPrefix(l.Path, "grid") && !strings.HasPrefix(test.name, "a frame") {
				continue
			}
			got = ""
			if l.Judged {
				got = p.Show(l.Span)
			}
		}
		if got != test.want {
			t.Errorf("%s: %q, want %q\n%s", test.name, got, test.want, render(c.found))
		}
	}
}
