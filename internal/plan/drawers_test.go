package plan_test

// Drawers: the front from the opening, the box from its slide and its corners, its parts
// from the box.

import "testing"

// The opening is 30 - 2 x 3/4 = 28 1/2 wide and 6 high.
func TestDrawers(t *testing.T) {
	const slides = `sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; size 48 x 96 }
slide side-slide { kind side-mount ; long 14 ; room 1/2 }
slide under-slide { kind undermount ; long 15 ; less 1 5/8 ; high-less 7/8 }
`
	chest := func(drawer string) string {
		return openCase + "across { side l ; down { top t ; drawer d 6 { " + drawer + " } ; shelf s ; open ; bottom f } ; side r } }\n"
	}
	try(t, layoutMaterials+slides, []trial{
		{
			name: "side-mount, applied front, half-blind in front, dado behind, bottom passing under the back",
			text: chest("of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; slide side-slide ; corner front dovetail ; corner back dado deep 1/4 ; bottom thin groove 1/4 x 1/4 up 1/2"),
			sizes: byHand{
				"c.d, front":       "28 1/4 x 5 3/4 x 3/4",    // 28 1/2 - 2 x 1/8; 6 - 2 x 1/8
				"c.d, inner front": "27 1/2 x 5 3/4 x 1/2",    // the box: 28 1/2 - 2 x 1/2; 6 - 1/4
				"c.d, left":        "14 x 5 3/4 x 1/2",        // as long as its slide
				"c.d, back":        "27 x 5 x 1/2",            // 26 1/2 + 2 x 1/4; 5 3/4 - 1/2 - 1/4
				"c.d, bottom":      "26 31/32 x 13 3/4 x 1/4", // 26 1/2 + 2 x 1/4 - 1/32; 14 - 1/2 + 1/4
			},
		},
		{
			name: "undermount, a back that is grooved and set in",
			text: chest("of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; slide under-slide ; corner front dovetail ; corner back dado deep 1/4 ; back grooved ; set-in 1/2 ; bottom thin groove 1/4 x 1/4 up 1/2"),
			sizes: byHand{
				"c.d, left":        "15 x 5 1/8 x 1/2",          // 6 - 7/8
				"c.d, inner front": "27 7/8 x 5 1/8 x 1/2",      // 28 1/2 - 1 5/8 + 2 x 1/2
				"c.d, back":        "27 3/8 x 5 1/8 x 1/2",      // 26 7/8 + 2 x 1/4
				"c.d, bottom":      "27 11/32 x 13 31/32 x 1/4", // 26 7/8 + 1/2 - 1/32; 15 - 2 x 1/2 - 1/2 + 2 x 1/4 - 1/32
			},
		},
		{
			name: "on wooden runners, a front that closes the box with lapped dovetails",
			text: chest("of ash 1/2 ; front ash 7/8 ; fit inset ; reveal 1/16 ; runner ash ; long 14 ; corner front dovetail lap 1/4 ; corner back dovetail ; bottom thin groove 1/4 x 1/4 up 1/2"),
			sizes: byHand{
				"c.d, front":  "28 3/8 x 5 7/8 x 7/8",
				"c.d, left":   "14 x 5 3/4 x 1/2",
				"c.d, back":   "28 7/16 x 5 x 1/2",       // over all: 28 1/2 - 1/16
				"c.d, bottom": "27 29/32 x 13 5/8 x 1/4", // 27 7/16 + 1/2 - 1/32; 14 + 1/4 - 7/8 + 1/4
			},
		},
		{
			name: "a box joint, its depth over all stated, its gap",
			text: chest("of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; runner ash ; gap 1/8 ; deep 14 ; high 5 ; corner front box ; corner back box ; back under"),
			sizes: byHand{
				"c.d, left":        "14 x 5 x 1/2",
				"c.d, inner front": "28 3/8 x 5 x 1/2",
				"c.d, back":        "28 3/8 x 5 x 1/2",
			},
		},
		{
			name: "a rabbeted front stands beyond its sides by what the rabbet leaves",
			text: chest("of ash 1/2 ; front ash 3/4 ; fit inset ; reveal 1/8 ; runner ash ; deep 14 ; corner front rabbet 1/2 x 1/2 ; corner back tongue thick 1/4 long 1/4 ; bottom thin groove 1/4 x 1/4 up 1/2"),
			sizes: byHand{
				"c.d, left":   "13 3/4 x 5 3/4 x 1/2",    // 14 - (3/4 - 1/2)
				"c.d, back":   "27 15/16 x 5 x 1/2",      // 28 7/16 - 2 x 1/2 + 2 x 1/4
				"c.d, bottom": "27 29/32 x 13 1/2 x 1/4", // 27 7/16 + 2 x 1/4 - 1/32; 13 3/4 + 1/4 - 3/4 + 1/4
			},
		},
		{
			name: "an applied front before a box that is screwed together: front and back stand between the sides",
			text: chest("of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; slide side-slide ; corner front screw ; corner back screw ; bottom thin groove 1/4 x 1/4 up 1/2"),
			sizes: byHand{
				"c.d, inner front": "26 1/2 x 5 3/4 x 1/2",    // 27 1/2 - 2 x 1/2
				"c.d, left":        "14 x 5 3/4 x 1/2",        // as long as its slide, and as deep as the box
				"c.d, bottom":      "26 31/32 x 13 3/4 x 1/4", // 26 1/2 + 2 x 1/4 - 1/32; 14 - 1/2 + 1/4
			},
		},
		{
			name: "sides and back of other stuff, a stated width, a bottom past the back with its grain front to back",
			text: chest("of ash 1/2 ; side ash 5/8 ; back ply ; front ash 3/4 applied ; fit overlay 3/8 ; slide side-slide ; wide 27 ; corner front dovetail ; corner back dovetail ; bottom thin groove 1/4 x 1/4 up 3/8 past-back 1/8 grain behind"),
			sizes: byHand{
				"c.d, front":  "29 1/4 x 6 3/4 x 3/4", // 28 1/2 + 2 x 3/8; 6 + 2 x 3/8
				"c.d, left":   "14 x 5 3/4 x 5/8",
				"c.d, back":   "27 x 5 1/8 x 3/4",       // 5 3/4 - 3/8 - 1/4
				"c.d, bottom": "13 7/8 x 26 7/32 x 1/4", // 14 - 1/2 + 1/4 + 1/8; 25 3/4 + 1/2 - 1/32
			},
		},
		{
			name:  "a slide whose room is not known leaves the box unknown, and no more",
			text:  "slide other { kind side-mount ; long 14 }\n" + chest("of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; slide other ; corner front dovetail ; corner back dado deep 1/4"),
			sizes: byHand{"c.d, front": "28 1/4 x 5 3/4 x 3/4", "c.d, left": "14 x 5 3/4 x 1/2", "c.d, back": "? x 5 3/4 x 1/2"},
		},
	})
}

// Corners are said for each end of the box by itself, also where `each` says the rule.
func TestCorners(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "one end by itself, one setting by itself",
			text: openCase + `each drawer { of ash 1/2 ; front ash 3/4 applied ; fit inset ; reveal 1/8 ; long 14 ; high 5 ; corner front dovetail slope 1:7 ; corner back dado deep 1/4 }
  across { side l ; down { top t ; drawer a 6 ; shelf s ; drawer b 6 { corner back dado deep 1/8 } ; shelf u ; drawer e { corner front box finger 1/2 } ; bottom f } ; side r } }
`,
			// The box is 28 1/2 - 1/16 = 28 7/16 over all, 27 7/16 between the sides.
			sizes: byHand{
				"c.a, back":        "27 15/16 x 5 x 1/2",
				"c.b, back":        "27 11/16 x 5 x 1/2",
				"c.e, back":        "27 15/16 x 5 x 1/2",
				"c.e, inner front": "28 7/16 x 5 x 1/2",
			},
		},
	})
}
