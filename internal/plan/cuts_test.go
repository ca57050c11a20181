package plan_test

// Cuts in space, each worked out by hand beside it: along the length x across the width x through
// the thickness, from the left, lower or front end, edge and face.

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

const cutMaterials = `
wood ash { species "white ash" ; sawn flat }
sheet ply { kind plywood ; thick 1/4 ; actual 1/4 ; size 48 x 96 }
dowel peg { thick 3/8 ; long 1 1/2 }
screw no10 { gauge 10 ; long 3 }
bolt bed { thick 3/8 ; long 4 ; nut 5/8 }
hinge cup { kind cup ; bore 1 3/8 ; deep 1/2 ; rim 3/16 }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
peg pin { thick 1/4 ; long 1 }
`

func TestCutsByHand(t *testing.T) {
	tests := []struct {
		name, text string
		cuts       map[string][]string // by the path of what they are in
	}{
		{
			name: "a door frame: tenons beside the groove and the haunch",
			text: `frame leaf { of ash ; wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 haunch 1/2
  each panel groove 1/4 x 3/8
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; panel field { of ply } ; rail foot 3 } ; stile right 2 1/4 }
}`,
			cuts: map[string][]string{
				"leaf.foot": { // 13 1/2 between shoulders, 16 in all
					"tenon: 0..1 1/4 x 1/2..2 5/8 x 1/4..1/2",    // 3, less haunch 1/2 below and groove 3/8 above
					"groove: 7/8..15 1/8 x 2 5/8..3 x 1/4..1/2",  // shoulder to shoulder, and 3/8 into both stiles
					"haunch: 7/8..1 1/4 x 0..1/2 x 1/4..1/2",     // as deep as the groove
					"haunch: 14 3/4..15 1/8 x 0..1/2 x 1/4..1/2", //
					"tenon: 14 3/4..16 x 1/2..2 5/8 x 1/4..1/2",  //
				},
				"leaf.left": {
					"haunch: 0..1/2 x 1 7/8..2 1/4 x 1/4..1/2",
					"mortise: 1/2..2 5/8 x 15/16..2 1/4 x 1/4..1/2",     // 2 1/4 - 1 1/4 - 1/16
					"groove: 2 5/8..22 1/8 x 1 7/8..2 1/4 x 1/4..1/2",   // 3 - 3/8; 24 - 2 1/4 + 3/8
					"mortise: 22 1/8..23 1/2 x 15/16..2 1/4 x 1/4..1/2", // 24 - 2 1/4 + 3/8; 24 - 1/2
					"haunch: 23 1/2..24 x 1 7/8..2 1/4 x 1/4..1/2",
				},
			},
		},
		{
			name: "two sides share their legs, and two tenons meet in each",
			text: `part leg x 4 { of ash ; size 28 x 2 1/4 x 2 }
joint apron tenon thick 1/4 set 1/4 shoulder 1/2
frame long x 2 { of ash ; wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint apron long 1 1/2 } ; space } ; post right part leg } }
frame short x 2 { of ash ; wide 30 ; high 28 ; thick 2 1/4
  across { post front part leg turned ; down { apron two 4 { thick 3/4 ; recess front 1/8 ; joint apron long 1 } ; space } ; post back part leg turned } }`,
			cuts: map[string][]string{
				"leg": {
					// Of the long side, across the leg's width: 2 1/4 - 1 1/2 - 1/16; set back 1/4 + 1/4 from the front.
					"mortise: 24 1/2..27 1/2 x 11/16..2 1/4 x 1/2..3/4",
					// Of the short side, across its thickness: 2 - 1 - 1/16; 1/8 + 1/4 from the outside.
					"mortise: 24 1/2..27 1/2 x 3/8..5/8 x 15/16..2",
				},
			},
		},
		{
			name: "opposite housings in a divider, and the rabbet of a back",
			text: `case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12 ; joint dado deep 1/4
  across {
    side left
    behind {
      across { down { open ; shelf low ; open 8 } ; divider mid ; down { open ; shelf high ; open 8 } }
      back rear { of ply ; joint rabbet 3/8 x 1/4 }
    }
    side right
  }
}`,
			cuts: map[string][]string{
				"chest.left": {
					"rabbet: 0..20 x 11 3/4..12 x 3/8..3/4", // 3/8 into the inner face, 1/4 from the back edge
					"housing: 8..8 3/4 x 0..11 3/4 x 1/2..3/4",
				},
				"chest.mid": {
					"housing: 8..8 3/4 x 0..11 3/4 x 0..1/4",
					"housing: 8..8 3/4 x 0..11 3/4 x 1/2..3/4",
				},
			},
		},
		{
			name: "loose tenons, in the middle and set from the face",
			text: `frame leaf { of ash ; wide 18 ; high 24 ; thick 1
  joint loose-tenon thick 3/8 wide 1 1/2 long 2 mortise deep 1 1/16 own 1
  across { stile left 2 1/4 ; down { rail head 3 ; space ; rail foot 4 { joint loose-tenon set 1/4 } } ; stile right 2 1/4 }
}`,
			cuts: map[string][]string{
				"leaf.head": { // 13 1/2 long
					"mortise: 0..1 x 3/4..2 1/4 x 5/16..11/16",
					"mortise: 12 1/2..13 1/2 x 3/4..2 1/4 x 5/16..11/16",
				},
				"leaf.right": {
					"mortise: 1 1/4..2 3/4 x 0..1 1/16 x 1/4..5/8",      // (4 - 1 1/2) / 2
					"mortise: 21 3/4..23 1/4 x 0..1 1/16 x 5/16..11/16", // 24 - 3 + 3/4
				},
			},
		},
		{
			name: "dowels in a row, half of each and 1/32 in both parts",
			text: `frame leaf { of ash ; wide 18 ; high 24 ; thick 1 ; joint dowel peg at 1, 2 1/2
  across { stile left 2 1/4 ; down { rail head 3 ; space } ; stile right 2 1/4 }
}`,
			cuts: map[string][]string{
				"leaf.head": {
					"dowel hole: 0..25/32 x 13/16..1 3/16 x 5/16..11/16",
					"dowel hole: 0..25/32 x 2 5/16..2 11/16 x 5/16..11/16",
					"dowel hole: 12 23/32..13 1/2 x 13/16..1 3/16 x 5/16..11/16",
					"dowel hole: 12 23/32..13 1/2 x 2 5/16..2 11/16 x 5/16..11/16",
				},
				"leaf.left": { // the rail's lower edge is at 21
					"dowel hole: 21 13/16..22 3/16 x 1 15/32..2 1/4 x 5/16..11/16",
					"dowel hole: 23 5/16..23 11/16 x 1 15/32..2 1/4 x 5/16..11/16",
				},
			},
		},
		{
			name: "a half-lap takes the back of the end and the front of its mate",
			text: `frame leaf { of ash ; wide 18 ; high 24 ; thick 1 ; joint half-lap deep 5/8
  across { stile left 2 1/4 ; down { rail head 3 ; space ; rail mid 2 ; space 6 } ; stile right 2 1/4 }
}`,
			cuts: map[string][]string{
				"leaf.mid":  {"lap: 0..2 1/4 x 0..2 x 5/8..1", "lap: 15 3/4..18 x 0..2 x 5/8..1"},
				"leaf.left": {"lap: 6..8 x 0..2 1/4 x 0..5/8", "lap: 21..24 x 0..2 1/4 x 0..5/8"},
			},
		},
		{
			name: "a bridle is slotted, and goes over its mate",
			text: `frame leaf { of ash ; wide 18 ; high 24 ; thick 3/4 ; joint bridle
  across { stile left 2 1/4 ; down { rail head 3 ; space } ; stile right 2 1/4 }
}`,
			cuts: map[string][]string{
				"leaf.head":  {"slot: 0..2 1/4 x 0..3 x 1/4..1/2", "slot: 15 3/4..18 x 0..3 x 1/4..1/2"},
				"leaf.right": {"lap: 21..24 x 0..2 1/4 x 0..1/4", "lap: 21..24 x 0..2 1/4 x 1/2..3/4"},
			},
		},
		{
			name: "a frame that turns: its left is at the front, its front at the left; mirrored, its front is at the right",
			text: `frame end { of ash ; thick 1 ; across { stile front 2 ; space ; stile back 3 } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across { frame one part end ; down { open ; rail low 2 { thick 3/4 ; joint tenon thick 1/4 long 3/4 } } ; frame two part end mirrored }
}`,
			cuts: map[string][]string{
				// The rail is flush with the front of the case: in the stile's width 1/4..1/2, from the
				// inside of its thickness 3/4 + 1/16. At the right it meets the other hand of that.
				"end.front": {"mortise: 0..2 x 1/4..1/2 x 3/16..1", "mortise: 0..2 x 1/4..1/2 x 3/16..1"},
				"end.back":  nil,
			},
		},
		{
			name: "screws go through the mate, counterbored, into the end; a barrel nut waits for its bolt",
			text: `frame bed { of ash ; wide 40 ; high 20 ; thick 2
  across { post left 2 ; down { rail one 4 { thick 1 ; joint screw no10 at 1 counterbore 1/2 pilot 1/8 } ; space
      rail two 4 { thick 1 ; joint bolt bed at 2 deep 2 1/2 nut-at 1 3/4 } } ; post right 2 }
}`,
			cuts: map[string][]string{
				"bed.one": { // 3 - (2 - 1/2) in the end
					"screw hole: 0..1 1/2 x 15/16..1 1/16 x 7/16..9/16",
					"screw hole: 34 1/2..36 x 15/16..1 1/16 x 7/16..9/16",
				},
				"bed.two": {
					"bolt hole: 0..2 1/2 x 1 13/16..2 3/16 x 5/16..11/16",
					"nut hole: 1 7/16..2 1/16 x 1 11/16..2 5/16 x ?",
					"bolt hole: 33 1/2..36 x 1 13/16..2 3/16 x 5/16..11/16",
					"nut hole: 33 15/16..34 9/16 x 1 11/16..2 5/16 x ?",
				},
				"bed.left": {
					"bolt hole: 1 13/16..2 3/16 x 0..2 x 5/16..11/16",
					"screw hole: 16.905..17.095 x 0..2 x 0.405..0.595", // no. 10 is 0.190 thick
				},
			},
		},
		{
			name: "a through tenon with a peg, drawn by 1/16",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 1
  joint tenon thick 3/8 through wide 2 peg pin at 3/4 draw 1/16
  across { stile left 2 ; down { space 6 ; rail mid 3 ; space } ; stile right 2 }
}`,
			cuts: map[string][]string{
				"leaf.mid": { // 16 between shoulders, 2 1/16 through each stile
					"tenon: 0..2 1/16 x 1/2..2 1/2 x 5/16..11/16",
					"peg hole: 1 1/4..1 1/2 x 1 3/8..1 5/8 x 0..1", // 2 1/16 - 11/16
					"tenon: 18 1/16..20 1/8 x 1/2..2 1/2 x 5/16..11/16",
					"peg hole: 18 5/8..18 7/8 x 1 3/8..1 5/8 x 0..1",
				},
				"leaf.left": { // the rail lies from 15 to 18
					"mortise: 15 1/2..17 1/2 x 0..2 x 5/16..11/16",
					"peg hole: 16 3/8..16 5/8 x 1 1/8..1 3/8 x 0..1", // 2 - 3/4
				},
			},
		},
		{
			name: "twin tenons share the width; a housing stops behind the front and its board is notched",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 1 ; joint tenon thick 3/8 long 1 count 2 apart 1 shoulder 1/2
  across { stile left 2 ; down { rail head 6 ; space } ; stile right 2 } }
case nest { of ash 3/4 ; wide 15 ; high 20 ; deep 10 ; joint dado deep 1/4 stopped 1/2
  across { side left ; down { open ; shelf one ; open 8 } ; side right } }`,
			cuts: map[string][]string{
				"leaf.left": { // 6 - 2 x 1/2 - 1 is 4: 2 each, from 18 + 1/2
					"mortise: 18 1/2..20 1/2 x 15/16..2 x 5/16..11/16",
					"mortise: 21 1/2..23 1/2 x 15/16..2 x 5/16..11/16",
				},
				"nest.left": {"housing: 8..8 3/4 x 1/2..10 x 1/2..3/4"},
				"nest.one":  {"notch: 0..1/4 x 0..1/2 x 0..3/4", "notch: 13 3/4..14 x 0..1/2 x 0..3/4"},
			},
		},
		{
			name: "tongue and groove, with its relief",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 3/4 ; joint tongue thick 1/4 long 3/8
  across { stile left 2 ; down { rail head 3 ; space } ; stile right 2 } }`,
			cuts: map[string][]string{
				"leaf.head": {"tongue: 0..3/8 x 0..3 x 1/4..1/2", "tongue: 16 3/8..16 3/4 x 0..3 x 1/4..1/2"},
				"leaf.left": {"groove: 21..24 x 1 19/32..2 x 1/4..1/2"}, // 3/8 + 1/32
			},
		},
		{
			name: "hinges: a cup in a stile, a butt in a slab and in the side that it hangs on",
			text: `frame leaf { of ash ; thick 3/4 ; across { stile one 2 ; space ; stile two 2 } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across { side left
    door first 14 { leaf leaf ; fit inset ; reveal 1/8 ; hang left ; hinge cup at 3 }
    divider mid
    down { door second { leaf ash 3/4 ; fit inset ; reveal 1/8 ; hang right ; hinge brass at 4 } ; bottom low }
    side right } }`,
			cuts: map[string][]string{
				"leaf.one": {"hinge bore: 2 5/16..3 11/16 x 3/16..1 9/16 x 1/4..3/4"}, // rim 3/16, from the back
				// The leaf is 30 - 14 - 3 x 3/4 - 2 x 1/8 = 13 1/2 wide. Half of what the knuckle is more
				// than the reveal goes into each; a flap is 1 3/8 / 2 - 1/8 deep.
				"chest.second": {"hinge gain: 3..5 x 13 7/16..13 1/2 x 0..9/16"},
				"chest.right":  {"hinge gain: 3 7/8..5 7/8 x 0..9/16 x 0..1/16"}, // 3/4 + 1/8 higher
			},
		},
		{
			name: "what is measured from the left is measured from the right in a mirror image",
			text: `pattern leaf { frame it { of ash ; wide 20 ; high 24 ; thick 1
  across { stile left 2 ; down { rail head 3 ; across { space 4 ; muntin mid 3 { joint dowel peg at 1 set 3/8 } ; space } ; rail foot 3 } ; stile right 2 } } }
build one from leaf
build two from leaf mirrored`,
			cuts: map[string][]string{
				"one.it.head": {"dowel hole: 4 13/16..5 3/16 x 0..25/32 x 3/16..9/16"},
				"two.it.head": {"dowel hole: 10 13/16..11 3/16 x 0..25/32 x 3/16..9/16"}, // 16 - 5
			},
		},
		{
			name: "a frame that turns, with a rail that is not in its middle, in both hands",
			text: `frame end { of ash ; thick 1 ; across { stile front 2 ; space ; stile back 3 } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across { frame one part end ; behind { space ; down { open ; rail low 2 { thick 3/4 ; joint tenon thick 1/4 set 1/8 long 3/4 } } } ; frame two part end mirrored } }`,
			cuts: map[string][]string{
				// The rail is at the back: 12 - 3/4 + 1/8 from the front, and the back stile begins at 9.
				"end.front": nil,
				"end.back":  {"mortise: 0..2 x 2 3/8..2 5/8 x 3/16..1", "mortise: 0..2 x 2 3/8..2 5/8 x 3/16..1"},
			},
		},
		{
			name: "the tongues of a top, and its breadboard ends with their pegs",
			text: `top slab { of ash ; thick 1 ; long 60 ; wide 30 ; breadboard 3 { tongue 3/8 x 1 ; peg pin at 2, 15 slotted 1/2 } }`,
			cuts: map[string][]string{ // 60 - 2 x 3 + 2 x 1
				"slab": {
					"tongue: 0..1 x 0..30 x 5/16..11/16", "tongue: 55..56 x 0..30 x 5/16..11/16",
					"peg hole: ? x 1 3/4..2 1/4 x 0..1", "peg hole: ? x 14 3/4..15 1/4 x 0..1",
				},
				"slab's breadboard": { // 1 + 1/32 deep; a peg of 1/4
					"groove: 0..30 x 0..1 1/32 x 5/16..11/16",
					"peg hole: 1 7/8..2 1/8 x ? x 0..1", "peg hole: 14 7/8..15 1/8 x ? x 0..1",
				},
			},
		},
		{
			name: "across a mitre a spline's place in the thickness is known, and a dowel's; so is a scarf's length",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 1 ; joint mitre spline thick 1/8
  across { stile left 2 ; down { rail head 2 ; space } ; stile right 2 } }
frame door { of ash ; wide 20 ; high 24 ; thick 1 ; joint mitre dowel peg at 1/2, 1 set 3/8
  across { stile left 2 ; down { rail head 2 ; space } ; stile right 2 } }
frame beam { of ash ; wide 90 ; high 4 ; thick 1 ; joint scarf slope 1:8
  across { rail one 4 { wide 4 ; long 45 } ; rail two 4 { wide 4 ; long 45 } } }`,
			cuts: map[string][]string{
				"leaf.head": {"spline slot: ? x ? x 7/16..9/16", "spline slot: ? x ? x 7/16..9/16"},
				"door.head": {
					"dowel hole: ? x ? x 3/16..9/16", "dowel hole: ? x ? x 3/16..9/16",
					"dowel hole: ? x ? x 3/16..9/16", "dowel hole: ? x ? x 3/16..9/16",
				},
				"beam.one": {"scarf: ? 8 x 0..4 x 0..1", "scarf: ? 8 x 0..4 x 0..1"},
			},
		},
		{
			name: "pocket screws run aslant, and come out in the middle of the end",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 3/4
  across { stile left 2 ; down { rail head 4 { joint pocket no10 at 1, 3 } ; space } ; stile right 2 } }`,
			cuts: map[string][]string{
				"leaf.left": {"screw hole: 20.905..21.095 x ? x 0.28..0.47", "screw hole: 22.905..23.095 x ? x 0.28..0.47"},
			},
		},
		{
			name: "a barrel nut is bored for from the far face, until the bolt lies in its middle",
			text: `bolt rail { thick 3/8 ; long 4 ; nut 5/8 ; nut-long 3/4 }
frame bed { of ash ; wide 40 ; high 20 ; thick 2
  across { post left 2 ; down { rail one 4 { thick 1 1/4 ; joint bolt rail at 2 deep 2 1/2 nut-at 1 3/4 } ; space } ; post right 2 } }`,
			cuts: map[string][]string{
				"bed.one": { // 5/8 is the middle: 5/8 - 3/8
					"bolt hole: 0..2 1/2 x 1 13/16..2 3/16 x 7/16..13/16",
					"nut hole: 1 7/16..2 1/16 x 1 11/16..2 5/16 x 1/4..1 1/4",
					"bolt hole: 33 1/2..36 x 1 13/16..2 3/16 x 7/16..13/16",
					"nut hole: 33 15/16..34 9/16 x 1 11/16..2 5/16 x 1/4..1 1/4",
				},
			},
		},
		{
			name: "a shelf lies on pins just below it; a hook sits on the end and on its mate, as deep as its maker says",
			text: `pin steel { thick 1/4 ; long 3/4 }
hook plate { long 2 }
case box { of ash 3/4 ; wide 20 ; high 20 ; deep 10
  across { side left ; down { open upper 9 ; shelf plank { joint pin steel deep 3/8 at 2, 8 } ; open lower } ; side right } }
frame bed { of ash ; wide 40 ; high 20 ; thick 2
  across { post left 2 ; down { rail one 4 { thick 1 ; joint hook plate at 2 } ; space } ; post right 2 } }`,
			cuts: map[string][]string{ // the plank's lower face is 20 - 9 - 3/4 up
				"box.left": {"pin hole: 10..10 1/4 x 1 7/8..2 1/8 x 3/8..3/4", "pin hole: 10..10 1/4 x 7 7/8..8 1/8 x 3/8..3/4"},
				"bed.one":  {"hook: ? x 1..3 x 1/2..1/2", "hook: ? x 1..3 x 1/2..1/2"},
			},
		},
		{
			name: "a stub tenon lies in line with the panel's groove, in the middle of the thinnest stick",
			text: `frame leaf { of ash ; wide 20 ; high 24 ; thick 1 ; joint stub
  across { stile left 2 ; down { rail head 2 ; panel field { of ply ; groove 1/4 x 3/8 } ; rail foot 2 { thick 3/4 } } ; stile right 2 } }`,
			cuts: map[string][]string{ // half of 3/4, and of 1/4 to both sides
				"leaf.head": {
					"groove: 0..16 3/4 x 0..3/8 x 1/4..1/2", "tenon: 0..3/8 x 3/8..2 x 1/4..1/2", "tenon: 16 3/8..16 3/4 x 3/8..2 x 1/4..1/2",
				},
			},
		},
		{
			name: "hinges in line with the rails, in the leaf and in the stile of a frame beside it",
			text: `frame leaf { of ash ; thick 3/4 ; across { stile one 2 ; down { rail head 3 ; space ; rail foot 4 } ; stile two 2 } }
frame end { of ash ; thick 1 ; across { stile front 2 ; space ; stile back 3 } }
assembly chest { of ash 3/4 ; wide 30 ; high 31 1/2 ; deep 12
  down { top roof ; across { frame side part end ; door first { leaf leaf ; fit inset ; reveal 1/8 ; hang left ; hinge brass in-line count 3 } ; frame other part end mirrored } ; bottom low } }`,
			cuts: map[string][]string{
				// The leaf is 29 3/4 high, 4 to 26 3/4 between its rails: the hinges of 2 stand at both ends of
				// that, and the third halfway. Each is let in half of 1/4 - 1/8.
				"leaf.one": {
					"hinge gain: 4..6 x 0..1/16 x 0..9/16",
					"hinge gain: 14 3/8..16 3/8 x 0..1/16 x 0..9/16",
					"hinge gain: 24 3/4..26 3/4 x 0..1/16 x 0..9/16",
				},
				"end.front": { // 1/8 higher, in the inner face: the back one of the frame that turned
					"hinge gain: 4 1/8..6 1/8 x 0..9/16 x 15/16..1",
					"hinge gain: 14 1/2..16 1/2 x 0..9/16 x 15/16..1",
					"hinge gain: 24 7/8..26 7/8 x 0..9/16 x 15/16..1",
				},
			},
		},
		{
			name: "a keeper is as high as its lock's bolt, beside the latch edge",
			text: `lock till { bolt 1/2 ; body 2 x 1 1/2 x 1/2 ; keeper deep 3/8 high 5/8 }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across { side left ; down { door first { leaf ash 3/4 ; fit inset ; reveal 1/8 ; hang left ; lock till at 10 keeper 10 } ; bottom low } ; side right } }`,
			cuts: map[string][]string{ // the door's lower edge is at 3/4 + 1/8; 10 7/8 less half of 5/8
				"chest.right": {"keeper: 10 9/16..11 3/16 x ? x 0..3/8"},
			},
		},
		{
			name: "what is fastened to what it touches: a runner by screws that only reach through it, and by dowels",
			text: `screw no8 { gauge 8 ; long 1 }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  across { side left { thick 1 1/4 } ; down { open ; across 3/4 { runner low 3/4 ; space ; runner high 3/4 } ; open 8 } ; side right } }
fix chest.low to chest.left { screw no8 x 2 { along 2, 10 ; at 3/8 ; counterbore 1/8 ; pilot 1/8 } }
fix chest.high to chest.right { dowel peg x 2 { along 2, 10 ; at 3/8 } }`,
			cuts: map[string][]string{
				// No. 8 is 0.164 thick, and 1 + 1/8 - 3/4 goes into the side. The runners begin 8 above the floor.
				"chest.low":  {"screw hole: 1.918..2.082 x 0..3/4 x 0.293..0.457", "screw hole: 9.918..10.082 x 0..3/4 x 0.293..0.457"},
				"chest.left": {"screw hole: 8 5/16..8 7/16 x 1 15/16..2 1/16 x 7/8..1 1/4", "screw hole: 8 5/16..8 7/16 x 9 15/16..10 1/16 x 7/8..1 1/4"},
				// Dowels of 3/8: 3/4 + 1/32 in each.
				"chest.high":  {"dowel hole: 1 13/16..2 3/16 x -1/32..3/4 x 3/16..9/16", "dowel hole: 9 13/16..10 3/16 x -1/32..3/4 x 3/16..9/16"},
				"chest.right": {"dowel hole: 8 3/16..8 9/16 x 1 13/16..2 3/16 x 0..25/32", "dowel hole: 8 3/16..8 9/16 x 9 13/16..10 3/16 x 0..25/32"},
			},
		},
		{
			name: "the groove of a front that closes its box, where the sides run on wood",
			text: `case chest { of ash 3/4 ; wide 20 ; high 11 1/2 ; deep 18
  across { side left ; down { top roof
    drawer one { of ash 1/2 ; front ash 3/4 ; fit inset ; reveal 1/8 ; runner ash ; gap 1/16 ; long 16 ; high 6
      corner front dovetail lap 1/4 ; bottom ply groove 1/4 x 1/4 up 1/2 }
    bottom low } ; side right } }`,
			cuts: map[string][]string{ // the front begins 1/8 higher than the sides
				"chest.one.front": {
					"tails: 0..1/2 x 0..9 3/4 x 1/4..3/4",
					// From 1/32 and 1/2, less 1/4, less the reveal of 1/8 at the left; 18 7/16 - 2 x 1/2 + 2 x 1/4 long.
					"groove: 5/32..18 3/32 x 3/8..5/8 x 1/2..3/4",
					"tails: 17 3/4..18 1/4 x 0..9 3/4 x 1/4..3/4",
				},
			},
		},
		{
			name: "a pair of leaves is drawn once: the second is hung as its mirror image",
			text: `frame leaf pair { of ash ; thick 3/4 ; across { stile hung 2 ; space ; stile free 2 } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  each door { leaf leaf ; fit inset ; reveal 1/8 }
  across { side left ; door first { hang left ; hinge cup at 3 } ; door second { hang right ; hinge cup at 5 } ; side right } }`,
			cuts: map[string][]string{
				"leaf.hung": {
					"hinge bore: 2 5/16..3 11/16 x 3/16..1 9/16 x 1/4..3/4",
					"hinge bore: 4 5/16..5 11/16 x 3/16..1 9/16 x 1/4..3/4",
				},
				"leaf.free": nil,
			},
		},
		{
			name: "the box of a drawer",
			text: `case chest { of ash 3/4 ; wide 20 ; high 10 ; deep 18
  across { side left
    drawer one { of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; long 16 ; high 6 ; wide 17
      corner front dovetail ; corner back dado deep 1/4 ; bottom ply groove 1/4 x 1/4 up 1/2 }
    side right } }`,
			cuts: map[string][]string{
				"chest.one.left": {
					"groove: 0..16 x 1/2..3/4 x 1/4..1/2",
					"tails: 0..1/2 x 0..6 x 0..1/2",
					"housing: 15 1/2..16 x 3/4..6 x 1/4..1/2", // above the bottom, which passes beneath
				},
				"chest.one.right": {
					"groove: 0..16 x 1/2..3/4 x 0..1/4",
					"tails: 0..1/2 x 0..6 x 0..1/2",
					"housing: 15 1/2..16 x 3/4..6 x 0..1/4",
				},
			},
		},
		{
			name: "a back is notched for its slide as far as it reaches below the bottom's groove",
			text: `slide under { kind undermount ; long 16 ; less 1 5/8 ; notch 1 3/8 x 1/2 }
case chest { of ash 3/4 ; wide 20 ; high 10 ; deep 18
  each drawer { of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; slide under }
  across { side left ; down {
    drawer one 4 { back grooved ; bottom ply groove 1/4 x 1/4 up 1/2 }
    drawer two { back under ; bottom ply groove 1/4 x 1/4 up 1/2 } } ; side right } }`,
			cuts: map[string][]string{
				"chest.one.back": {
					"groove: 0..16 7/8 x 1/2..3/4 x 0..1/4",
					"notch: ? 1 3/8 x 0..1/2 x 0..1/2", "notch: ? 1 3/8 x 0..1/2 x 0..1/2",
				},
				"chest.two.back": nil,
			},
		},
		{
			name: "what the plan does not say has no place",
			text: `frame leaf { of ash ; high 24 ; thick 1 ; joint tenon thick 3/8
  across { stile left 2 ; down { rail head 3 ; space } ; stile right 2 } }
frame pegged { of ash ; wide 20 ; high 24 ; thick 1 ; joint dowel peg count 2
  across { stile left 2 ; down { rail head 3 ; space } ; stile right 2 } }`,
			cuts: map[string][]string{
				"leaf.left":   {"mortise: 21..24 x ? x 5/16..11/16"},
				"pegged.left": {"dowel hole: ? 3/8 x 1 7/32..2 x 5/16..11/16", "dowel hole: ? 3/8 x 1 7/32..2 x 5/16..11/16"},
			},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, _ := resolveFiles(cutMaterials+test.text, nil)
			all := things(p)
			for path, want := range test.cuts {
				if all[path] == nil {
					t.Fatalf("there is no %s", path)
				}
				if got := cutsOf(p, all[path]); !slices.Equal(got, want) {
					t.Errorf("%s:\n\t%s\nby hand\n\t%s", path, strings.Join(got, "\n\t"), strings.Join(want, "\n\t"))
				}
			}
		})
	}
}

// cutsOf is every cut in a thing as a line: what it is, and its place.
func cutsOf(p *plan.Plan, thing any) []string {
	b := p.Cuts().In(thing)
	if b == nil {
		return nil
	}
	var lines []string
	for _, c := range b.Cuts {
		lines = append(lines, cutLine(p, c))
	}
	return lines
}

func cutLine(p *plan.Plan, c *plan.Cut) string {
	var at []string
	for _, e := range c.At {
		switch {
		case e.Known():
			at = append(at, p.Show(e.From)+".."+p.Show(e.To()))
		case e.Placed:
			at = append(at, p.Show(e.From)+"..?")
		case e.Sized:
			at = append(at, "? "+p.Show(e.Size))
		default:
			at = append(at, "?")
		}
	}
	return fmt.Sprintf("%s: %s", c.Kind, strings.Join(at, " x "))
}

// things are what can be cut in a plan, by their paths.
func things(p *plan.Plan) map[string]any {
	all := map[string]any{}
	for _, a := range p.Assemblies {
		for n := range a.Nodes() {
			all[plan.PathOf(n)] = n
			if d, ok := n.(*plan.Drawer); ok {
				for _, b := range []*plan.BoxPart{d.Front, d.Inner, d.Left, d.Right, d.Back, d.Bottom} {
					if b != nil {
						all[plan.PathOf(b)] = b
					}
				}
			}
		}
	}
	for _, part := range p.Parts {
		all[plan.PathOf(part)] = part
	}
	for _, top := range p.Tops {
		all[plan.PathOf(top)] = top
		all[plan.PathOf(top)+"'s breadboard"] = plan.BreadboardEnd{Top: top}
	}
	return all
}

// Two aprons in a post of 2, each set back 1/4, with tenons 1/4 thick and outer shoulders of 1/4:
// their zones end at 3/4. Tenons of 1 1/2 run into each other; tenons of 1 leave 2 - 1 - 1/16 -
// 3/4 = 3/16 between their mortises.
func TestTenonsMeetInAPost(t *testing.T) {
	for _, test := range []struct {
		long, gap, across string
	}{
		{"1 1/2", "-5/16", "-5/16"}, // from 2 - 1 1/2 - 1/16 = 7/16, against 3/4
		{"1", "0.2652", "3/16"},     // the wall stands aslant between two corners: 3/16 x the root of 2
	} {
		p, found := resolveFiles(cutMaterials+`part leg x 4 { of ash ; size 28 x 2 x 2 }
joint corner tenon thick 1/4 set 1/4 long `+test.long+`
frame long x 2 { of ash ; wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg } }
frame short x 2 { of ash ; wide 30 ; high 28 ; thick 2
  across { post left part leg turned ; down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg turned } }
`, nil)
		if len(found) > 0 {
			t.Fatal(found)
		}
		meetings := slices.Collect(p.Cuts().In(p.Parts[0]).Near(wood.Inch))
		if len(meetings) != 1 {
			t.Fatalf("%d meetings in the leg, want the one of its two mortises", len(meetings))
		}
		if got := p.Show(meetings[0].Gap); got != test.gap {
			t.Errorf("tenons of %s: gap %s, by hand %s", test.long, got, test.gap)
		}
		if got := p.Show(meetings[0].Apart[plan.Wide]); got != test.across {
			t.Errorf("tenons of %s: %s apart across the leg, by hand %s", test.long, got, test.across)
		}
	}
}

// Between two housings of 1/4 in a divider of 3/4 a web of 1/4 is left.
func TestWebBetweenOppositeHousings(t *testing.T) {
	p, _ := resolveFiles(cutMaterials+`case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12 ; joint dado deep 1/4
  across { side left ; down { open ; shelf low ; open 8 } ; divider mid ; down { open ; shelf high ; open 8 } ; side right } }`, nil)
	b := p.Cuts().In(things(p)["chest.mid"])
	meetings := slices.Collect(b.Near(wood.Inch / 2))
	if len(meetings) != 1 || !meetings[0].Opposite || meetings[0].Along != plan.Thick || meetings[0].Gap != wood.Inch/4 {
		t.Fatalf("%+v", meetings)
	}
	c := meetings[0].A
	if got := c.FaceName(c.Enters); got != "left face" {
		t.Errorf("the first is cut from the %s", got)
	}
	for f, left := range c.Walls() {
		switch f {
		case plan.FarFace:
			if left != wood.Inch/2 {
				t.Errorf("%s left behind a housing of 1/4 in 3/4", p.Show(left))
			}
		case plan.NearEnd, plan.FarEnd:
		default:
			t.Errorf("a housing has no wall at the %s", c.FaceName(f))
		}
	}
}

// What one drawing serves twice is two pieces: their cuts do not meet.
func TestPiecesOfOneDrawingDoNotMeet(t *testing.T) {
	for name, text := range map[string]string{
		"the leaves of two doors": `frame leaf pair { of ash ; thick 3/4 ; across { stile hung 2 ; space ; stile free 2 } }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12
  each door { leaf leaf ; fit inset ; reveal 1/8 }
  across { side left ; door first { hang left ; hinge cup at 3 } ; door second { hang right ; hinge cup at 3 1/2 } ; side right } }`,
		"two uses of a part": `part side x 2 { of ash 3/4 ; size 20 x 12 x 3/4 }
case chest { of ash 3/4 ; wide 30 ; high 20 ; deep 12 ; joint dado deep 1/4
  across { side left part side ; divider mid ; down { open ; shelf low ; open 8 } ; side right part side mirrored } }`,
		"what is placed twice": `case box x 2 { of ash 3/4 ; wide 10 ; high 20 ; deep 12 ; across { side left ; open ; side right } }
assembly desk { wide 60 ; high 20 ; deep 12
  across { case one part box ; down { shelf low { of ash 3/4 ; joint dado deep 1/4 } ; open } ; case two part box
    down { open 1/2 ; shelf high { of ash 3/4 ; joint dado deep 1/4 } ; open } ; case three part box } }`,
	} {
		p, _ := resolveFiles(cutMaterials+text, nil)
		for _, b := range p.Cuts().Blanks {
			for m := range b.Near(wood.Inch) {
				t.Errorf("%s: %s and %s meet in %s", name, cutLine(p, m.A), cutLine(p, m.B), plan.PathOf(b.Of))
			}
		}
	}
}
