package rules_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
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
