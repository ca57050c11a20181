package plan_test

// What whole things weigh, worked out by hand.

import (
	"math"
	"testing"

	"plancheck/internal/plan"
)

const poundInKilos = 0.45359237

func TestWeight(t *testing.T) {
	const materials = `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "northern red oak" }
wood heavy { species "red oak" ; heavy 40lb/ft3 }
sheet board { kind mdf ; thick 3/4 ; actual 3/4 ; size 48 x 96 }
layup pressed { ply heavy along { thick 1/4 } ; ply board across ; ply heavy along { thick 1/4 } }
hinge butt { kind butt ; weighs 0.5lb }
slide pair { kind side-mount ; long 14 ; room 1/2 ; weighs 2lb }
handle bow { projects 1 ; weighs 0.25lb }
`
	const mdf = 800 * 0.0283168466 / poundInKilos // lb/ft3; the middle of 0.7 to 0.9 (Wood Handbook, Table 12-1)
	tests := []struct {
		name, text string
		pounds     float64 // below zero where it is not known
	}{
		// Specific gravity 0.63 at 8 % (Wood Handbook, Table 5-3): 3/4 x 24 x 80 is 35.4 lb.
		{"one board", "assembly a { wide 3/4 ; high 80 ; deep 24 ; across { side b { of oak 3/4 } } }", 35.4},
		{"a figure of the plan's", "assembly a { wide 2 ; high 72 ; deep 12 ; across { side b { of heavy 2 } } }", 40},
		// A square foot, of which 1/2 weighs 40 and 3/4 as the board does.
		{"a layup by its plies", "assembly a { wide 1 1/4 ; high 12 ; deep 12 ; across { side b { of pressed } } }", 40/24. + mdf/16},
		// Two of 1/2 x 12 x 24 and one of 11 x 12 x 1/2, at 40.
		{"an assembly placed twice", `case box { of heavy 1/2 ; wide 12 ; high 24 ; deep 12 ; across { side l ; down { space ; shelf s ; space } ; side r } }
assembly a { wide 24 ; high 24 ; deep 12 ; across { case one part box ; case two part box } }`, 2 * 40 * (2*144 + 66) / 1728.},
		// A leaf of 11 x 23 x 1/2, with 1/2 left at every edge, and its hardware.
		{
			"a door with its hardware", `case a { of heavy 1/2 ; wide 13 ; high 25 ; deep 12 ; across { side l ; down { top t ; door d { leaf heavy 1/2 ; fit inset ; reveal 1/2 ; hang left ; hinge butt ends 2 count 3 ; handle bow at 12 } ; bottom b } ; side r } }`,
			40*(11*23+2*25*12+2*12*12)/2/1728. + 1.5 + 0.25,
		},
		{"a pane", "frame a { wide 12 ; high 12 ; thick 1 ; across { glass g { thick 1/8 ; gap 0 } } }", 1.6},
		{"glass that is not said to be of a thickness", "frame a { wide 12 ; high 12 ; thick 1 ; across { glass g } }", -1},
		{"something of nothing that is known", "assembly a { wide 12 ; high 72 ; deep 2 ; across { side b 12 { thick 2 } } }", -1},
		{"nothing", "assembly a { wide 12 ; high 72 ; deep 2 }", -1},
		{"six alike", "frame a { of heavy ; sides 6 ; thick 1 ; rail side 2 { long 12 ; joint mitre } }", 40 * 6 * 24 / 1728.},
	}
	for _, test := range tests {
		p, found := resolveText(materials + test.text)
		if len(found) > 0 {
			t.Errorf("%s: %s", test.name, found)
		}
		a := p.Assemblies[len(p.Assemblies)-1]
		w, ok := p.Weight(a)
		if ok != (test.pounds >= 0) {
			t.Errorf("%s: known %v, %+v", test.name, ok, w)
		}
		if got := w.Kilograms / poundInKilos; ok && math.Abs(got-test.pounds) > 0.02 {
			t.Errorf("%s: %.3f lb, by hand %.3f", test.name, got, test.pounds)
		}
	}
}

// A drawer: its parts, its slides, its handle.
func TestWeightOfDrawer(t *testing.T) {
	p, _ := resolveText(`wood heavy { species "red oak" ; heavy 40lb/ft3 }
slide pair { kind side-mount ; long 14 ; room 1/2 ; weighs 2lb }
handle bow { projects 1 ; weighs 0.25lb }
case a { of heavy 1 ; wide 14 ; high 8 ; deep 16 ; across { side l ; down { top t ; drawer d 6 { of heavy 1/2 ; front heavy 1/2 applied ; fit inset ; reveal 1/8
  slide pair ; corner front dado deep 1/4 ; corner back dado deep 1/4 ; back grooved ; handle bow centred } ; bottom b } ; side r } }
`)
	// Sides 14 x 5 3/4, back and inner front 10 1/2 x 5 3/4, front 11 3/4 x 5 3/4, all 1/2.
	want := 40*5.75/2*(2*14+2*10.5+11.75)/1728 + 2.25
	for d := range plan.AllOf[*plan.Drawer](p) {
		w, ok := p.WeightOf(d)
		if got := w.Kilograms / poundInKilos; !ok || math.Abs(got-want) > 0.02 {
			t.Errorf("%.3f lb, by hand %.3f", got, want)
		}
	}
}
