package plan_test

// Rows: several things alike, with something between them or equal gaps.

import "testing"

func TestRows(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "panels between muntins",
			text: `frame f { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1 ; each panel { of ply ; groove 3/4 x 3/8 } ; each muntin joint tenon long 1/2
  across { stile l 2 ; down { rail t 2 ; across { panel field count 3 between muntin 2 1/4 } ; rail b 2 } ; stile r 2 } }
let middle = f.field-2.wide
`,
			sizes: byHand{
				"f.field-1":  "26 23/32 x 11 7/32 x 3/4", // (40 - 4 - 4 1/2) / 3 = 10 1/2; + 2 x 3/8 - 1/32
				"f.field-2":  "26 23/32 x 11 7/32 x 3/4",
				"f.field-3":  "26 23/32 x 11 7/32 x 3/4",
				"f.muntin-1": "27 x 2 1/4 x 1", // 26 + 2 x 1/2
				"f.muntin-2": "27 x 2 1/4 x 1",
			},
			named: byHand{
				"f.field-2.wide":       "10 1/2",
				"f.field.wide":         "10 1/2", // the row's own name stands for the first
				"f.field.from-left":    "2",
				"f.field-3.from-left":  "27 1/2", // 2 + 2 x (10 1/2 + 2 1/4)
				"f.muntin-1.from-left": "12 1/2",
				"f.muntin-2.long":      "27",
			},
		},
		{
			name: "slats with equal gaps, also to what bounds the row",
			text: `frame gate { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; down { rail t 2 ; across { slat lath 3 count 5 } ; rail b 2 } ; stile r 2 } }
frame open-gate { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; slat lath 3 count 5 ; stile r 2 } }
`,
			// In a list of its own the row starts and ends without a gap: (36 - 15) / 4 = 5 1/4 between.
			// Between stiles there are gaps at both ends too: (36 - 15) / 6 = 3 1/2.
			named: byHand{
				"gate.lath-1.from-left":      "2",
				"gate.lath-2.from-left":      "10 1/4",
				"gate.lath-5.from-left":      "35",
				"open-gate.lath-1.from-left": "5 1/2",
				"open-gate.lath-5.from-left": "31 1/2",
				"open-gate.lath.wide":        "3",
			},
			sizes: byHand{"gate.lath-3": "28 x 3 x 1"},
		},
		{
			name: "a row's block holds for all of it, inside and outside, and a count may be worked out",
			text: `let n = 2
frame f { of ash ; wide 40 ; high 60 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; down { rail r 2 count n + 1 { joint tenon long 1/2 } ; open } ; stile r2 2 } }
case c { of ply ; wide 30 ; high 40 ; deep 16 ; joint dado deep 1/4
  across { side l ; down { top t ; drawer d 6 count n * 2 between shelf { of ash 1/2 ; front ash 3/4 applied ; reveal 1/8 } ; open rest ; bottom b } ; side r } }
drawer c.d { long 14 ; high 5 }
`,
			sizes: byHand{
				"f.r-1":        "37 x 2 x 1",
				"f.r-3":        "37 x 2 x 1",
				"c.d-4, left":  "14 x 5 x 1/2",
				"c.d-4, front": "28 1/4 x 5 3/4 x 3/4", // a reveal also where an open bay follows
				"c.d-1, front": "28 1/4 x 5 3/4 x 3/4",
				"c.shelf-1":    "29 x 16 x 3/4",
				"c.rest":       "28 1/2 x 12 1/4 x 16", // 40 - 2 x 3/4 - 4 x 6 - 3 x 3/4
			},
		},
		{
			name: "what can be named once the rows stand",
			text: `frame f { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; slat lath 3 count 3 ; stile r 2 } }
set "laths" { parts f.lath-1, f.lath-3, f.lath }
allow list-sum "as drawn" { on f.lath-2 }
`,
		},
		{
			name: "what may not stand between, and what is no count",
			text: `frame f { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; panel a count 2 between mutnin 2 { of ply } ; stile r 2 } }
frame g { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; slat s 2 count g.bay.wide / 2in ; open bay ; stile r 2 } }
`,
			found: []string{"`between` wants", "a number of things cannot follow from `g.wide`"},
		},
		{
			name: "a gap that was asked for stands in every row of slats as it is",
			text: `frame f { of ash ; wide 40 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 2 ; slat s 2 count 4 between space ; stile r 2 } }
`,
			found: []string{"without `between`, sticks and boards in a row have equal gaps"},
		},
	})
}
