package plan_test

// Names: where they are sought, what they reach, and the sizes that things offer by name.

import "testing"

func TestNames(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "a name is sought from the inside out, a size only after a dot",
			text: `let head = 5
frame f { of ash ; wide 20 ; high 30 ; thick 7/8 ; joint tenon thick 5/16 long 1
  across { stile a 2 ; down { rail head 2 ; open bay 1 + a.wide ; space ; rail foot (head) + 1 } ; stile b 2 } }
`,
			// Inside the frame `head` is the rail, which is no size by itself.
			sizes: byHand{"f.bay": "16 x 3 x 7/8", "f.head": "18 x 2 x 7/8"},
			found: []string{"`head` is a rail: name one of its sizes, such as `head.long`"},
		},
		{
			name: "lists make no scope, and one scope has one space of names",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 7/8
  across { stile a 2 ; down { rail a 2 ; open ; rail b 2 } ; stile c 2 } }
wood f { species "white oak" }
let ash = 3
`,
			found: []string{"`a` names two things here", "`f` names two things here", "`ash` names two things here"},
		},
		{
			name: "the same name in two assemblies is no clash",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 7/8 ; across { stile a 2 ; open ; stile b f.a.wide } }
frame g { of ash ; wide 20 ; high 30 ; thick 7/8 ; across { stile a 3 ; open ; stile b f.a.wide + g.a.wide + a.wide } }
`,
			sizes: byHand{"f.b": "30 x 2 x 7/8", "g.b": "30 x 8 x 7/8"}, // 2 + 3 + 3
		},
		{
			name: "what has a name is found by it alone",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 7/8 ; across { stile a 2 ; open ; stile b 2 } }
let t = f.c.wide
let y = f.a.depth
let z = f
let w = a.wide
let v = ash
set "s" { parts f.a, f.q }
`,
			found: []string{
				"nothing called `q`",
				"nothing called `c`",
				"nothing called `depth`",
				"`f` is a frame: name one of its sizes, such as `f.",
				"nothing is called `a`",
				"`ash` is a wood, and has no size",
			},
		},
		{
			name: "a reference to a thing of another kind",
			text: `hinge brass { kind butt ; high 2 ; wide 1 ; knuckle 1/4 }
case c { of brass ; wide 30 ; high 20 ; deep 15 ; joint brass
  across { side l ; door d { leaf ash 3/4 ; fit inset ; reveal 1/8 ; hinge ash ; latch brass } ; side r } }
`,
			found: []string{
				"`brass` is a hinge, but a material is wanted here",
				"`brass` is a hinge, but a kind of joint",
				"`ash` is a wood, but a hinge is wanted here",
				"`brass` is a hinge, but a latch is wanted here",
			},
		},
		{
			name: "a wrong name silences what leans on it",
			text: `frame f { of ahs 3/4 ; wide 20 ; high 30 ; joint corner
  across { stile a 2 ; down { rail t 2 cut 17 ; panel p { of ash 1/2 ; groove 1/4 x 3/8 } ; rail b 2 } ; stile b 2 } }
`,
			sizes: byHand{"f.t": "17 x 2 x 3/4"},
			found: []string{
				"`b` names two things here",
				"nothing is called `ahs`, and a material is wanted here: did you mean `ash`?",
				"nothing is called `corner`, and a kind of joint",
			},
		},
	})
}

// Blocks that say more of a thing may stand outside its list, in any order.
func TestBlocksOutside(t *testing.T) {
	const chest = `case chest { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side left ; down { top roof ; drawer upper 6 ; shelf middle ; open bay ; bottom floor } ; side right }
}
`
	const upper = "of ash 1/2 ; front ash 3/4 ; fit inset ; reveal 1/8 ; long 14 ; high 5"
	drawer := byHand{
		"chest.upper, front": "28 1/4 x 5 3/4 x 3/4", // 30 - 2 x 3/4 - 2 x 1/8; 6 - 2 x 1/8
		"chest.upper, left":  "14 x 5 x 1/2",
		"chest.middle":       "29 x 15 x 3/4", // 16 - 1
	}
	try(t, layoutMaterials, []trial{
		{
			name:  "after its list",
			text:  chest + "drawer chest.upper { " + upper + " }\nshelf chest.middle { recess front 1 }\n",
			sizes: drawer,
		},
		{
			name:  "before its list",
			text:  "drawer chest.upper { " + upper + " }\nshelf chest.middle recess front 1\n" + chest,
			sizes: drawer,
		},
		{
			name: "inside its assembly",
			text: `case chest { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  shelf chest.middle { recess front 1 }
  across { side left ; down { top roof ; drawer upper 6 ; shelf middle ; open bay ; bottom floor } ; side right }
  drawer chest.upper { ` + upper + ` }
}
`,
			sizes: drawer,
		},
		{
			name: "a setting given twice, a path of another kind, no path",
			text: chest + `drawer chest.upper { ` + upper + ` }
drawer chest.upper { long 15 }
shelf chest.middle { thick 3/4 }
shelf chest.upper { thick 3/4 }
shelf chest.upmost { thick 3/4 }
shelf lonely { thick 3/4 }
rail chest.left { thick 3/4 }
`,
			found: []string{
				"`shelf` does not stand in a plan, but in",
				"`long` is stated twice here",
				"`chest.upper` is a drawer, not a shelf",
				"has nothing called `upmost`",
				"`chest.left` is a side, not a rail",
			},
		},
	})
}

// Each thing offers its sizes by name.
func TestNamedSizes(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "of members, openings, doors, drawers and assemblies",
			text: `let tenon = 1
let box = 1/2
hinge brass { kind butt ; high 2 ; wide 1 ; knuckle 1/4 ; opens 180deg }
case c { of ply ; wide 40 ; high 20 ; deep 16 ; joint dado deep groove-deep
  across {
    side left
    down {
      top roof
      across {
        door d 12 { leaf leaf ; fit inset ; reveal play ; hang left ; hinge brass ; opens 90deg }
        divider mid
        down {
          drawer e 6 { of ash box ; front ash 3/4 applied ; fit inset ; reveal play ; long box * 28 ; high 5 ; gap play ; bottom ply groove 1/4 x tenon / 4 up box
            corner front box ; corner back dado deep tenon / 4 }
          shelf s { recess front play ; proud back play * 2 }
          open bay
        }
      }
      bottom floor
    }
    side right
  }
}
frame leaf { of ash ; thick 3/4 ; joint tenon thick 1/4 long tenon
  across { stile a 2 ; down { rail head 2 ; panel p { of ash 1/2 ; groove 1/4 x play * 3 ; gap play x play } ; rail foot 3 } ; stile b 2 } }
let play = 1/8
let groove-deep = 1/4
`,
			named: byHand{
				"c.wide":   "40",
				"c.high":   "20",
				"c.deep":   "16",
				"c.d.wide": "12",
				"c.d.high": "18 1/2", // 20 - 2 x 3/4
				"c.d.deep": "16",

				"c.d.leaf.wide":       "11 3/4", // 12 - 2 x 1/8
				"c.d.leaf.high":       "18 1/4",
				"c.d.leaf.thick":      "3/4",
				"c.d.leaf.head.long":  "9 3/4", // 11 3/4 - 2 x 2 + 2 x 1
				"c.d.leaf.head.span":  "7 3/4",
				"leaf.head.long":      "9 3/4",
				"leaf.a.long":         "18 1/4",
				"leaf.thick":          "3/4",
				"leaf.foot.from-left": "2",

				"c.d.clear.wide": "11 1/16", // the pin stands 1/16 from the side, and 3/4 + 1/8 from the leaf's back

				"c.mid.long":       "19",     // 18 1/2 + 2 x 1/4
				"c.mid.wide":       "16",     // the depth
				"c.mid.thick":      "3/4",    //
				"c.mid.from-left":  "12 3/4", // 3/4 + 12
				"c.mid.from-floor": "3/4",
				"c.s.span":         "25 3/4", // 40 - 3 x 3/4 - 12
				"c.s.long":         "26 1/4",
				"c.s.wide":         "16 1/8", // 16 - 1/8 + 1/4
				"c.s.from-front":   "1/8",
				"c.s.from-floor":   "12 1/2", // 20 - 3/4 - 6 - 3/4
				"c.bay.high":       "11 3/4", // 18 1/2 - 6 - 3/4
				"c.bay.from-floor": "3/4",
				"c.e.wide":         "25 3/4",
				"c.e.from-left":    "13 1/2", // 3/4 + 12 + 3/4

				"c.e.front.long":  "25 1/2", // 25 3/4 - 2 x 1/8
				"c.e.front.wide":  "5 3/4",
				"c.e.left.long":   "14",
				"c.e.left.wide":   "5",
				"c.e.left.thick":  "1/2",
				"c.e.back.long":   "25 1/8",  // 25 3/4 - 1/8 - 2 x 1/2 + 2 x 1/4
				"c.e.back.wide":   "4 1/4",   // 5 - 1/2 - 1/4
				"c.e.bottom.long": "25 3/32", // 24 5/8 + 2 x 1/4 - 1/32
			},
		},
		{
			name: "a thing stands where its wood is",
			text: `assembly base { of ash ; wide 60 ; high 28 ; deep 30 ; joint butt
  across {
    leg a 2 { thick 2 }
    down { apron front 4 { thick 1 ; recess front 1/4 } ; space }
    leg b 2 { thick 2 ; flush back }
    down { apron mid 4 { thick 1 ; centred } ; space }
    leg c 2 { thick 2 ; recess back 1 ; flush back }
  }
}
`,
			named: byHand{
				"base.front.from-front": "1/4",
				"base.a.from-front":     "0",
				"base.b.from-front":     "28",     // 30 - 2
				"base.mid.from-front":   "14 1/2", // (30 - 1) / 2
				"base.c.from-front":     "27",     // 30 - 2 - 1
				"base.mid.from-floor":   "24",
				"base.mid.from-left":    "31", // 2 + (60 - 3 x 2) / 2 + 2
			},
		},
	})
}
