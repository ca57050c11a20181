package plan_test

// What whole things weigh, worked out by hand.

import (
	"math"
	"slices"
	"strings"
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
		// 2500 kg/m3 x 0.305 x 0.305 x 0.003175 m is 0.737 kg.
		{"a pane", "frame a { wide 12 ; high 12 ; thick 1 ; across { glass g { thick 1/8 ; gap 0 } } }", 1.626},
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

// What a table that is drawn by its sides weighs, whose legs are in two of them each, and where it balances with its
// top, worked out by hand.
func TestWeightOfSides(t *testing.T) {
	const sides = `climate { shop 8% ; dry 6% ; humid 11% }
wood heavy { species "red oak" ; heavy 40lb/ft3 }
part leg x 4 { of heavy ; size 28 x 2 x 2 }
frame long x 2 { of heavy ; wide 40 ; high 28 ; thick 2 ; joint tenon thick 3/8 long 1
  across { post l part leg ; down { apron a 4 { thick 1 } ; space } ; post r part leg } }
frame short x 2 { of heavy ; wide 20 ; high 28 ; thick 2 ; joint tenon thick 3/8 long 1
  across { post l part leg turned ; down { apron a 4 { thick 1 } ; space } ; post r part leg turned } }
`
	// Four legs, two aprons of 36 + 2 and two of 16 + 2, 4 x 1.
	const base = 40 * (4*28*4 + 2*38*4 + 2*18*4) / 1728.
	tests := []struct {
		name, text string
		pounds     float64 // below zero where it is not known
	}{
		{"its sides", "assembly base { wide 40 ; high 28 ; deep 20 }", base},
		{"a part that is used nowhere", "part stretcher x 2 { of heavy ; size 36 x 2 x 1 } assembly base { wide 40 ; high 28 ; deep 20 }", base + 40*2*72/1728.},
		{"a side that does not go in", "assembly base { wide 38 ; high 28 ; deep 20 }", -1},
		{"another piece", "assembly base { wide 40 ; high 28 ; deep 20 } assembly stool { kind bench ; of heavy ; wide 10 ; high 10 ; deep 10 ; down { top t { of heavy 1 } ; space } }", -1},
		{"two that have no lists", "assembly other { wide 40 ; high 28 ; deep 20 } assembly base { wide 40 ; high 28 ; deep 20 }", -1},
	}
	for _, test := range tests {
		p, _ := resolveText(sides + strings.ReplaceAll(strings.ReplaceAll(test.text, "} assembly", "}\nassembly"), "} part", "}\npart"))
		a := p.Assemblies[slices.IndexFunc(p.Assemblies, func(a *plan.Assembly) bool { return a.Text == "base" })]
		w, ok := p.Weight(a)
		if ok != (test.pounds >= 0) {
			t.Errorf("%s: known %v, %+v", test.name, ok, w)
		}
		if got := w.Kilograms / poundInKilos; ok && math.Abs(got-test.pounds) > 0.02 {
			t.Errorf("%s: %.3f lb, by hand %.3f", test.name, got, test.pounds)
		}
	}
}

// Where things balance, worked out by hand, in inches from the left, the top and the front.
func TestBalance(t *testing.T) {
	const heavy = `climate { shop 8% ; dry 6% ; humid 11% }
wood heavy { species "red oak" ; heavy 40lb/ft3 }
slide pair { kind side-mount ; long 14 ; room 1/2 }
`
	tests := []struct {
		name, text string
		at         [3]float64
	}{
		{
			"two boards", "assembly a { of heavy ; wide 10 ; high 12 ; deep 8 ; across { side thin { of heavy 1 } ; space ; side thick { of heavy 3 } } }",
			[3]float64{(0.5*1 + 8.5*3) / 4, 6, 4},
		},
		{"a board that stands at the back", "assembly a { wide 10 ; high 12 ; deep 8 ; across { stile s 10 { of heavy ; wide 10 ; thick 2 ; flush back } } }", [3]float64{5, 6, 7}},
		// The lean one is seen from its side, and its left becomes the front.
		{"a frame that is turned", `frame lean { of heavy ; wide 8 ; high 12 ; thick 1 ; across { stile one 1 ; space ; stile two 3 } }
assembly a { wide 10 ; high 12 ; deep 8 ; across { frame l part lean ; space } }`, [3]float64{0.5, 6, (0.5*1 + 6.5*3) / 4}},
		{"one that is mirrored", `case lean { of heavy ; wide 8 ; high 12 ; deep 1 ; across { side one { of heavy 1 } ; space ; side two { of heavy 3 } } }
assembly a { wide 8 ; high 12 ; deep 1 ; across { case l part lean mirrored } }`, [3]float64{8 - (0.5*1+6.5*3)/4, 6, 0.5}},
		// 12 x 8 x 2 in front of 12 x 8 x 1: a slab door that laps over a back board, both 8 wide.
		{
			"a door that laps over", `case a { wide 8 ; high 12 ; deep 6 ; behind { door d { leaf heavy 2 ; fit overlay lap 0 ; hang left } ; space ; divider b { of heavy 1 } } }`,
			[3]float64{4, 6, (-1*2 + 5.5) / 3},
		},
		{"a top that stands out in front", `assembly a { wide 10 ; high 12 ; deep 8 ; across { side one { of heavy 1 } ; space ; side two { of heavy 1 } } }
top t { of heavy ; thick 1 ; over a ends 1 front 3 back 1 }`, [3]float64{5, (6*192 - 0.5*144) / 336., (4*192 + 3*144) / 336.}},
	}
	for _, test := range tests {
		p, found := resolveText(heavy + test.text)
		a := p.Assemblies[slices.IndexFunc(p.Assemblies, func(a *plan.Assembly) bool { return a.Text == "a" })]
		b, ok := p.Balance(a)
		if !ok {
			t.Errorf("%s: not known: %s", test.name, found)
			continue
		}
		for axis, want := range test.at {
			if got := b.Centre[axis].Inches(); math.Abs(got-want) > 0.001 {
				t.Errorf("%s, %s: %.4f, by hand %.4f", test.name, plan.Axis(axis), got, want)
			}
		}
	}
}
