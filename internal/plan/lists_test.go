package plan_test

// How an assembly gets its outside, and how a list is dealt out: from the outside inwards,
// from the inside out, by shares, and where the sum does not come out.

import (
	"testing"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

func TestOutsides(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "from the inside out where all items are fixed",
			text: `frame f { of ash ; thick 1 ; joint tenon thick 5/16 long 1
  across { stile a 2 ; down 16 { rail t 2 ; open bay 20 ; rail b 3 } ; stile c 2 } }
`,
			sizes: byHand{
				"f":     "20 x 25 x 1", // 2 + 16 + 2; 2 + 20 + 3
				"f.a":   "25 x 2 x 1",
				"f.t":   "18 x 2 x 1", // 16 + 2 x 1
				"f.bay": "16 x 20 x 1",
			},
		},
		{
			name: "unknown where an item shares and nothing says the whole",
			text: `frame f { of ash ; thick 1 ; high 30 ; across { stile a 2 ; open bay ; stile c 2 } }
`,
			sizes: byHand{"f": "? x 30 x 1", "f.a": "30 x 2 x 1", "f.bay": "? x 30 x 1"},
		},
		{
			name: "a leaf takes the first opening that it fills",
			text: `case c { of ply ; wide 40 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each door { leaf leaf ; fit inset ; reveal 1/8 }
  across { side l ; door one 12 ; divider a ; door two 14 ; divider b ; open ; side r } }
frame leaf { of ash ; thick 3/4 ; joint tenon thick 1/4 long 1 ; across { stile a 2 ; down { rail t 2 ; open ; rail b 2 } ; stile c 2 } }
`,
			sizes: byHand{
				"c.one":  "11 3/4 x 20", // 12 - 2 x 1/8; above and below there is no member
				"c.two":  "13 3/4 x 20",
				"leaf":   "11 3/4 x 20 x 3/4",
				"leaf.t": "9 3/4 x 2 x 3/4", // 11 3/4 - 4 + 2
			},
		},
		{
			name: "what stands in a piece fills its cell, and gives its own size along the list",
			text: `frame end { of ash ; thick 7/8 ; across { stile front 2 ; open ; stile back 2 } }
case box { of ply ; wide 12 ; high 10 ; deep 9 ; across { side l ; open ; side r } }
assembly a { of ash ; high 30 ; deep 18
  across {
    frame left part end
    case mid part box
    case again 14 part box
    down 6 { open bay }
    frame right 1 part end
  }
}
`,
			sizes: byHand{
				"end":   "18 x 30 x 7/8", // turned: its left is the front
				"a":     "33 7/8 x 30 x 18",
				"a.bay": "6 x 30 x 18", // 7/8 + 12 + 14 + 6 + 1 = 33 7/8
			},
		},
		{
			name: "a thing drawn elsewhere without a size takes a share",
			text: `case inner { of ply ; joint dado deep 1/4 ; across { side l ; down { top t ; open ; bottom b } ; side r } }
case outer { of ply ; wide 42 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side l ; case one part inner ; divider d ; open bay share 2 ; side r } }
`,
			// 42 - 3 x 3/4 = 39 3/4, a third of it 13 1/4
			sizes: byHand{"inner": "13 1/4 x 20 x 16", "outer.bay": "26 1/2 x 20 x 16", "inner.t": "12 1/4 x 16 x 3/4"},
		},
		{
			name: "a frame laid flat fills the plane of its list",
			text: `frame top-frame { of ash ; thick 7/8 ; joint tenon thick 1/4 long 1 ; across { stile l 3 ; down { rail back 4 ; open ; rail front 2 } ; stile r 3 } }
assembly a { of ash ; wide 40 ; high 30 ; deep 18 ; down { frame lid part top-frame ; open bay } }
`,
			sizes: byHand{
				"top-frame":       "40 x 18 x 7/8",
				"top-frame.l":     "18 x 3 x 7/8",
				"top-frame.front": "36 x 2 x 7/8", // 40 - 6 + 2
				"a.bay":           "40 x 29 1/8 x 18",
			},
		},
		{
			name: "a stated outside carries on where the inside says otherwise",
			text: `frame f { of ash ; wide 21 ; high 30 ; thick 1 ; across { stile a 2 ; open bay 16 ; stile c 2 } }
check "the stated one" f.wide == 21
`,
			sizes: byHand{"f": "21 x 30 x 1", "f.bay": "16 x 30 x 1"},
		},
		{
			name:  "a frame is as thick as the stuff it is of",
			text:  "frame f { of ash 7/8 ; wide 20 ; high 30 ; across { stile a 2 ; open ; stile c 2 { thick 1/2 } } }\n",
			sizes: byHand{"f": "20 x 30 x 7/8", "f.a": "30 x 2 x 7/8", "f.c": "30 x 2 x 1/2"},
		},
	})
}

func TestDealing(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "a nested list takes its number, the greatest that its own items fix, or a share",
			text: `part post-a { of ash ; size 30 x 3 x 3 }
assembly a { of ash ; wide 60 ; high 30 ; deep 20
  across {
    down 10 { open said }
    behind { post p part post-a ; space ; post q part post-a }
    down { open half ; rail r 2 }
    behind { divider d { of ply } ; open before ; divider e { of ply } }
    open other
  }
}
`,
			sizes: byHand{
				"a.said":   "10 x 30 x 20",
				"a.p":      "30 x 3 x 3",
				"a.half":   "15.6667 x 28 x 20", // (60 - 10 - 3) / 3, with the dividers' list and the bay
				"a.before": "15.6667 x 30 x 18 1/2",
				"a.other":  "15.6667 x 30 x 20",
			},
		},
		{
			name: "shares are said or one each, and the remainder is dealt from the first",
			text: `frame f { of ash ; wide 10 ; high 30 ; thick 1 ; across { open a ; open b ; open c } }
frame g { of ash ; wide 23 ; high 30 ; thick 1 ; across { stile s 2 ; open a share 2 ; open b 1 ; open c share 3 ; open d ; stile t 2 } }
check "all of it" f.a.wide + f.b.wide + f.c.wide == 10 within 0
`,
			sizes: byHand{
				"g.a": "6 x 30 x 1", // (23 - 2 x 2 - 1) x 2 / 6
				"g.b": "1 x 30 x 1",
				"g.c": "9 x 30 x 1",
				"g.d": "3 x 30 x 1",
			},
		},
		{
			name: "a space takes what it says, a share where it says nothing",
			text: `assembly a { of ash ; wide 20 ; high 30 ; deep 20 ; across { space foot 2 1/2 ; space rest ; space half share 1 } }
`,
			sizes: byHand{"a.foot": "2 1/2 x 30 x 20", "a.rest": "8 3/4 x 30 x 20", "a.half": "8 3/4 x 30 x 20"},
		},
		{
			name: "doors that lead a list leave the rest of the depth",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side l ; behind { down { door a { leaf ash 3/4 } ; door b { leaf ash 7/8 } } ; down { top t ; open bay ; bottom b2 } } ; side r }
  each door { fit inset ; reveal 1/8 }
}
`,
			sizes: byHand{"c.bay": "28 1/2 x 18 1/2 x 15 1/8"}, // 16 - 7/8
		},
	})
}

// A list says how its sum comes out, for the rules.
func TestSums(t *testing.T) {
	const inch = wood.Inch
	tests := []struct {
		list  string
		state plan.SumState
		fixed wood.Length
		share int
	}{
		{"stile a 2 ; open ; stile b 3", plan.Closed, 5 * inch, 1},
		{"stile a 2 ; open 15 ; stile b 3", plan.Closed, 20 * inch, 0},
		{"stile a 2 ; open 14 ; stile b 3", plan.TooLittle, 19 * inch, 0},
		{"stile a 2 ; open 16 ; stile b 3", plan.TooMuch, 21 * inch, 0},
		{"stile a 10 ; open share 4 ; open ; stile b 10", plan.NothingLeft, 20 * inch, 5},
		{"stile a 12 ; open ; stile b 12", plan.NothingLeft, 24 * inch, 1},
		{"stile a -2 ; open ; stile b 12", plan.Unsolved, 12 * inch, 1},
		{"stile a ; open ; stile b 12", plan.Unsolved, 12 * inch, 1},
		{"stile a no-such ; open 3 ; stile b 12", plan.Unsolved, 15 * inch, 0},
	}
	for _, test := range tests {
		p, _ := resolveText(layoutMaterials + "frame f { of ash ; wide 20 ; high 30 ; thick 1 ; across { " + test.list + " } }")
		sum := p.Assemblies[0].Root.Sum
		want := plan.Sum{State: test.state, Whole: 20 * inch, Fixed: test.fixed, Shares: test.share}
		if sum != want {
			t.Errorf("%s: got %+v, want %+v", test.list, sum, want)
		}
	}
}

// Grain, width and thickness lie by the word and the list.
func TestOrientation(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "of boards in every list",
			text: `assembly a { of ply ; wide 40 ; high 30 ; deep 20 ; joint butt
  across {
    side s
    down { shelf sh ; open ; shelf lie 3/4 { grain behind } ; top t ; bottom b }
    behind { divider front ; space ; divider back }
    shelf upright
    side s2
  }
}
`,
			sizes: byHand{
				"a.s":       "30 x 20 x 3/4",     // high x deep
				"a.sh":      "18 7/8 x 20 x 3/4", // (40 - 3 x 3/4) / 2, wide x deep
				"a.lie":     "20 x 18 7/8 x 3/4", // deep x wide
				"a.front":   "30 x 18 7/8 x 3/4", // high x wide
				"a.upright": "20 x 30 x 3/4",     // a level board on edge: its grain runs front to back
			},
		},
		{
			name: "of sticks in every list",
			text: `assembly a { of ash ; wide 40 ; high 30 ; deep 20 ; joint butt
  across {
    rail one 3 { wide 1 }
    down { rail two 3 { thick 1 } ; space ; stile up 4 { wide 2 ; thick 1 } ; rail turned 2 { grain behind ; thick 1 } }
    behind { rail three 3 { wide 1 } ; space ; stile four 3 { wide 1 } ; rail five 2 { grain down ; wide 1 } }
    stile six 3 { thick 1 }
  }
}
`,
			sizes: byHand{
				"a.one":    "20 x 1 x 3", // front to back; the list goes through its thickness
				"a.two":    "17 x 3 x 1", // (40 - 6) / 2; its number is its width
				"a.up":     "4 x 2 x 1",  // its number is along its grain
				"a.turned": "20 x 2 x 1", // its number is its width
				"a.three":  "17 x 1 x 3", // behind: its number is its thickness
				"a.four":   "30 x 1 x 3",
				"a.five":   "30 x 1 x 2",
				"a.six":    "30 x 3 x 1",
			},
		},
		{
			name: "front to back a board is cut, a stick is moved",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side l ; down { top t { recess front 1/2 ; proud back 1/8 } ; open ; shelf s { wide 10 ; centred } ; shelf u { wide 10 ; flush back ; recess back 1 } ; bottom b { proud front 1 } } ; side r } }
`,
			sizes: byHand{
				"c.t": "29 x 15 5/8 x 3/4", // 16 - 1/2 + 1/8
				"c.s": "29 x 10 x 3/4",
				"c.b": "29 x 17 x 3/4",
			},
			named: byHand{"c.t.from-front": "1/2", "c.s.from-front": "3", "c.u.from-front": "5", "c.b.from-front": "-1"},
		},
		{
			name: "a laid-out top stands beyond its cell",
			text: `assembly a { of ash ; wide 40 ; high 30 ; deep 20 ; down { top t { of ash 1 ; over ends 1 front 3/4 back 1/4 } ; top u { of ash 1 ; grain behind ; over ends 1 front 3/4 } ; open } }
`,
			sizes: byHand{
				"a.t": "42 x 21 x 1",     // 40 + 2; 20 + 3/4 + 1/4
				"a.u": "20 3/4 x 42 x 1", // its grain runs front to back
			},
			named: byHand{"a.t.deep": "20", "a.u.deep": "20"},
		},
	})
}
