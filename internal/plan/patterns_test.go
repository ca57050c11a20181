package plan_test

// Patterns: what they take, what they build, how builds are mirrored and nested.

import "testing"

const cabinetDoor = `pattern cabinet-door {
  takes leaf-width
  takes rail-width 2
  let tenon = 1
  frame leaf { of ash ; wide leaf-width ; high 30 ; thick 7/8 ; joint tenon thick 1/4 long tenon
    across { stile hinge 2 ; down { rail head rail-width { end left joint tenon long 2 } ; open bay ; rail foot rail-width + 1 } ; stile latch 3 } }
  check "not too narrow" leaf.bay.wide > 10
}
`

func TestPatterns(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "what is given, what is not, and names reached through the build",
			text: cabinetDoor + `build left from cabinet-door leaf-width 20
build right from cabinet-door leaf-width narrow rail-width 3 mirrored
let narrow = left.leaf.wide - 1 1/2
frame other { of ash ; wide 40 ; high 30 ; thick 1 ; across { stile a left.leaf.head.wide ; open ; stile b 2 } }
`,
			sizes: byHand{
				"left.leaf":       "20 x 30 x 7/8",
				"left.leaf.head":  "18 x 2 x 7/8", // 20 - 5 + 2 + 1
				"left.leaf.foot":  "17 x 3 x 7/8", // 20 - 5 + 2 x 1
				"right.leaf":      "18 1/2 x 30 x 7/8",
				"right.leaf.head": "16 1/2 x 3 x 7/8", // 13 1/2 + 2 + 1
				"other.a":         "30 x 2 x 1",
			},
			named: byHand{
				"left.leaf.hinge.from-left":  "0",
				"left.leaf.bay.from-left":    "2",
				"right.leaf.hinge.from-left": "16 1/2", // mirrored: 18 1/2 - 2
				"right.leaf.bay.from-left":   "3",
			},
		},
		{
			name: "a pattern sees its own file, never its caller's names",
			text: `pattern stick { takes size-of ; frame f { of ash ; wide size-of ; high 30 ; thick inner ; across { stile a 2 ; open ; stile b 2 } } }
pattern pair-of { takes inner ; build one from stick size-of inner }
build both from pair-of inner 20
`,
			found: []string{"nothing is called `inner`"},
		},
		{
			name: "builds in builds, mirrored twice is not mirrored",
			text: `pattern stick { takes size-of ; frame f { of ash ; wide size-of ; high 30 ; thick 1 ; across { stile a 2 ; open ; stile b 3 } } }
pattern pair-of { takes inner ; build one from stick size-of inner ; build two from stick size-of inner + 1 mirrored }
build plain from pair-of inner 20
build turned from pair-of inner 20 mirrored
`,
			named: byHand{
				"plain.one.f.b.from-left":  "17",
				"plain.two.f.b.from-left":  "0",
				"turned.one.f.b.from-left": "0",
				"turned.two.f.b.from-left": "18", // 21 - 3
				"turned.two.f.wide":        "21",
			},
		},
		{
			name: "mirroring turns hang, ends, edgings and the reveals with them",
			text: `pattern bay { case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side l ; down { top t { end left joint dado deep 1/2 ; edging left ash 1/4 } ; across { door d 10 { leaf ash 3/4 ; reveal 1/8 hinge 1/2 ; hang left } ; divider m ; open } ; bottom b } ; side r } } }
build one from bay
build two from bay mirrored
`,
			sizes: byHand{
				"one.c.d": "9 3/8 x 18 1/4", // 10 - 1/2 - 1/8
				"two.c.d": "9 3/8 x 18 1/4",
				"two.c.t": "29 1/4 x 16 x 3/4",
			},
			named: byHand{
				"one.c.d.from-left": "3/4",
				"two.c.d.from-left": "19 1/4", // 30 - 3/4 - 10
			},
		},
		{
			name: "a build stands in a list as what it draws",
			text: `pattern box-of { takes room-of ; case box { of ply ; wide room-of ; joint dado deep 1/4 ; across { side l ; down { top t ; open bay ; bottom b } ; side r } } }
pattern two { frame one { wide 1 } ; frame other { wide 2 } }
assembly row { of ash ; wide 60 ; high 20 ; deep 16
  across { build left from box-of room-of 20 ; open gap ; build right 25 from box-of room-of 24 mirrored }
}
assembly none { of ash ; wide 60 ; high 20 ; deep 16 ; across { build both from two ; open } }
check "reached by its name" row.left.box.bay.wide == 18 1/2
`,
			sizes: byHand{
				"row.left.box":    "20 x 20 x 16",
				"row.left.box.t":  "19 x 16 x 3/4", // 20 - 2 x 3/4 + 2 x 1/4
				"row.gap":         "15 x 20 x 16",  // 60 - 20 - 25
				"row.right.box.l": "20 x 16 x 3/4",
			},
			found: []string{"a build that stands in a list draws one frame, case or assembly, but pattern `two` draws 2"},
		},
		{
			name: "what is wrong with a build",
			text: cabinetDoor + `build a from cabinet-door
build b from cabinet-door leaf-width 20 leaf-width 21
build c from cabinet-door leaf-width
build d from cabinet-door leaf-widht 20
build e from cabinet-dor leaf-width 20
build f from ash
pattern self { build again from self }
build g from self
pattern h { takes high ; takes k ; takes k 2 }
`,
			found: []string{
				"`high` is a setting",
				"`k` is taken twice",
				"build `a` does not say `leaf-width`",
				"`leaf-width` is given twice",
				"`leaf-width` wants a value",
				"pattern `cabinet-door` takes no `leaf-widht`: did you mean `leaf-width`?",
				"nothing is called `cabinet-dor`",
				"`ash` is a wood, but a pattern is wanted here",
				"pattern `self` builds itself",
			},
		},
		{
			name: "a fault in a pattern is said once, however often it is built",
			text: `pattern p { takes w ; frame f { of ahs ; wide w ; high 30 ; thick no-such ; across { stile a 2 ; opne ; stile b 2 } } }
build a from p w 10
build b from p w 11
build c from p w 12
`,
			found: []string{"did you mean `open`", "nothing is called `ahs`", "nothing is called `no-such`"},
		},
	})
}
