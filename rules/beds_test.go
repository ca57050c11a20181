package rules_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
	"plancheck/lang"
	"plancheck/rules"
)

// bedsDrawn are ways to draw a bed, by what lies under the mattress, one below the other, and over how much a slat reaches in a
// clear span where the bed is so wide inside.
var bedsDrawn = map[string]struct {
	under string
	clear func(wide float64) float64
}{
	"between rails":                 {"behind %thick% { %slats% }", func(wide float64) float64 { return wide }},
	"on cleats":                     {"behind %thick% { %slats% } ; " + onCleats, func(wide float64) float64 { return wide - 1.5 }},
	"a base that is laid in":        {"frame deck part base ; " + onCleats, func(wide float64) float64 { return wide - 1.5 }},
	"a rail on a leg":               {"behind %thick% { %slats% } ; across { space ; down 1 { rail centre 2 { of soft } ; behind { space ; leg prop 2 { of soft } ; space } } ; space }", func(wide float64) float64 { return (wide - 1) / 2 }},
	"a rail that stands on nothing": {"behind %thick% { %slats% } ; across 2 { space ; rail centre 1 { of soft } ; space }", func(wide float64) float64 { return wide }},
}

const onCleats = "across 1 { cleat near 3/4 { thick 1 } ; space ; cleat far 3/4 { thick 1 } }"

// Beds of any sizes, in inches and in millimetres: gaps and bends are held against the formulas, worked out here.
func TestSlatsOfAnyBed(t *testing.T) {
	for name, way := range bedsDrawn {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				eighths := func(least, most int, what string) float64 {
					return float64(rapid.IntRange(8*least, 8*most).Draw(t, what)) / 8
				}
				wide, long := eighths(24, 62, "wide"), eighths(60, 84, "long")
				slat, thick := eighths(2, 4, "slat"), float64(rapid.IntRange(4, 24).Draw(t, "thick"))/8/2
				count := rapid.IntRange(4, int(long/slat)-1).Draw(t, "count")
				text := `climate { shop 8% ; dry 6% ; humid 11% }
wood stuff { species "white oak" ; sawn quarter ; stiff 1500000psi }
`
				if strings.Contains(way.under, "soft") {
					text += "wood soft { species \"white oak\" ; sawn quarter ; stiff 100psi }\n"
				}
				if strings.Contains(way.under, "base") {
					text += "frame base { of stuff ; wide %wide% ; high %long% ; thick %thick% ; down { %slats% } }\n"
				}
				text += "assembly bed { of stuff ; wide %wide% + 2 ; high 20 ; deep %long% + 2 ; across { rail left 1 { wide 6 } ; behind { rail head 1 ; " +
					"down { space inside 10 { holds mattress (%wide% - 1) x (%long% - 1) } ; " + way.under + " ; space } ; rail foot 1 } ; rail right 1 { wide 6 } } }\n"
				if strings.Contains(way.under, "leg") {
					text = strings.Replace(text, " ; space } ; rail foot", " } ; rail foot", 1)
				}
				text = strings.ReplaceAll(text, "%slats%", "slat lath %slat% { of stuff ; thick %thick% ; count %count% }")
				for name, size := range map[string]float64{"wide": wide, "long": long, "slat": slat, "thick": thick, "count": float64(count)} {
					text = strings.ReplaceAll(text, "%"+name+"%", strconv.FormatFloat(size, 'f', -1, 64))
				}
				if rapid.Bool().Draw(t, "metric") {
					tree, _ := lang.Parse(diag.NewFile("metric.plan", text))
					text = inMillimetres(tree)
				}

				gap := (long - float64(count)*slat) / float64(count-1)
				bends := 75 * math.Pow(way.clear(wide), 3) / (48 * 1500000 * slat * math.Pow(thick, 3) / 12)
				if near(gap, 3) || near(bends, 0.625) || near(bends, 1.25) {
					t.Skip("too near to say")
				}
				want := map[string]diag.Severity{}
				if gap > 3 {
					want["slats-apart"] = diag.Warning
				}
				switch {
				case bends > 1.25:
					want["slat-bends"] = diag.Error
				case bends > 0.625:
					want["slat-bends"] = diag.Warning
				}
				found := example(text).found
				for _, f := range found {
					if want[f.Rule] != f.Severity {
						t.Fatalf("%s, where gaps are %.3f and slats bend %.3f:\n%s\n%s", f.Rule, gap, bends, render(found), text)
					}
					delete(want, f.Rule)
				}
				if len(want) > 0 {
					t.Fatalf("%v is not found, where gaps are %.3f and slats bend %.3f:\n%s", want, gap, bends, text)
				}
			})
		})
	}
}

// near reports whether a figure is so near to a limit that rounding, or the limit in millimetres, decides.
func near(v, limit float64) bool { return math.Abs(v-limit) < 0.04*limit }

// By hand: 75 lb are 333.6 N, and 333.6 x 870^3 / (48 x 12000 x 70 x 20^3 / 12) = 8.17.
func TestSlatsStandAmongTheLoads(t *testing.T) {
	c := read(t, projects+"/bed", "sound.plan")
	p, _ := rules.Run(c.folder.read[0], c.folder.open)
	loads := rules.Loads(p)
	i := slices.IndexFunc(loads, func(l rules.Loaded) bool { return l.Path == "bed.lath" })
	if i < 0 {
		t.Fatalf("no slats among %v", loads)
	}
	if l := loads[i]; !l.Judged || p.Show(l.Span) != "870" || l.Sags != "8.17" || l.May != "16" {
		t.Errorf("got %+v", l)
	}
}
