package plan_test

// Small layouts, each of which shows one thing: how its members lie, and what they come to.

import (
	"strings"
	"testing"

	"plancheck/internal/plan"
)

const layoutMaterials = `
wood ash { species "white ash" ; sawn flat }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; size 48 x 96 }
`

func TestLayouts(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "aprons run both ways between four legs",
			text: `part leg x 4 { of ash ; size 28 x 2 x 2 }
assembly base { of ash ; wide 60 ; high 28 ; deep 30 ; joint tenon thick 5/16 long 1
  across {
    behind { leg a part leg ; down { apron left 4 { thick 7/8 } ; space } ; leg b part leg }
    behind { down { apron front 4 { thick 7/8 } ; space } ; space ; down { apron back 4 { thick 7/8 } ; space } }
    behind { leg c part leg ; down { apron right 4 { thick 7/8 } ; space } ; leg d part leg }
  }
}`,
			sizes: byHand{
				"base.left":  "28 x 4 x 7/8", // 30 - 2 x 2 + 2 x 1
				"base.right": "28 x 4 x 7/8",
				"base.front": "58 x 4 x 7/8", // 60 - 2 x 2 + 2 x 1
				"base.back":  "58 x 4 x 7/8",
			},
		},
		{
			name: "a rail of a case runs from side to side, whatever stands behind it",
			text: `case chest { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across {
    side left
    behind { down { top roof ; open ; rail low 2 { of ash 3/4 } ; bottom floor } ; back rear { of ply } }
    side right
  }
}`,
			sizes: byHand{"chest.low": "29 x 2 x 3/4"}, // 30 - 2 x 3/4 + 2 x 1/4
		},
		{
			name: "overlay doors stand before the case, inset doors within its depth",
			text: `case a { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across {
    side left
    behind { door over { leaf ash 3/4 ; fit overlay 1/2 } ; down { top roof ; open ; bottom floor } }
    side right
  }
}
case b { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across {
    side left
    behind { door inset { leaf ash 3/4 ; fit inset ; reveal 1/8 } ; down { top roof ; open ; bottom floor } }
    side right
  }
}`,
			sizes: byHand{
				"a.roof": "29 x 16 x 3/4",
				"b.roof": "29 x 15 1/4 x 3/4", // deep 16 - 3/4
				"a.over": "29 1/2 x 20",       // 30 - 2 x 3/4 + 2 x 1/2
			},
		},
		{
			name: "a lid opens, and no joint of the chest holds it",
			text: `case chest { of ply ; wide 30 ; high 20 ; deep 16 ; joint housing deep 1/4
  down { lid cover ; across { side left ; behind { front fascia ; open ; back rear { of ply ; joint rabbet 1/2 x 3/8 } } ; side right } ; bottom floor }
}
case box { of ply ; wide 30 ; high 20 ; deep 16 ; joint housing deep 1/4
  across { side left ; down { lid inset ; across { open ; divider one { end upper joint dado deep 1/8 } ; open } ; bottom floor } ; side right }
}`,
			sizes: byHand{
				"chest.left": "18 3/4 x 16 x 3/4",         // 20 - 2 x 3/4, and 1/4 into the floor
				"chest.rear": "29 15/32 x 18 31/32 x 3/4", // 30 - 2 x 3/4 + 2 x 1/2 - 1/32; 20 - 2 x 3/4 + 1/2 - 1/32, into the floor
				"box.inset":  "28 1/2 x 16 x 3/4",         // 30 - 2 x 3/4
				"box.one":    "18 7/8 x 16 x 3/4",         // 20 - 2 x 3/4, 1/8 as it says itself, and 1/4 into the floor
			},
		},
		{
			name: "lids are cut to their gaps, and lie beside one another",
			text: `hinge brass { kind butt } case chest { of ply ; wide 30 ; high 20 ; deep 16
  across { side left ; behind { front face ; down { lid inset { hang back ; hinge brass ; reveal 1/16 top 1/8 } ; open ; bottom floor } ; front rear } ; side right }
}
case seat { of ply ; wide 60 ; high 20 ; deep 16 ; each lid { hang back ; hinge brass ; reveal 1/16 }
  down { across { lid near ; lid far } ; across { side left ; open ; side right } ; bottom floor }
}
case row { of ply ; wide 60 ; high 20 ; deep 16
  down { across { lid one { hang back ; hinge brass ; reveal 1/16 ; count 2 } } ; across { side left ; open ; side right } ; bottom floor }
}`,
			sizes: byHand{
				"chest.inset": "28 3/8 x 14 5/16 x 3/4", // 30 - 2 x 3/4 - 2 x 1/16, and 16 - 2 x 3/4 - 1/16 - 1/8
				"seat.near":   "29 31/32 x 16 x 3/4",    // half of the gap of 1/16
				"seat.far":    "29 31/32 x 16 x 3/4",
				"row.one-1":   "29 31/32 x 16 x 3/4",
			},
		},
		{
			name: "slats and runners lie flat in the plane of their list",
			text: `assembly bed { of ash ; wide 40 ; high 10 ; deep 80
  across {
    rail left 1
    down { space ; behind { slat lath 3 { thick 3/4 } ; space ; slat last 3 { thick 3/4 } } ; space 4 }
    rail right 1
  }
}
assembly guide { wide 20 ; high 1 ; deep 16 ; across { runner left 2 { of ash } ; space ; runner right 2 { of ash } } }
frame gate { of ash ; thick 1 ; wide 40 ; high 30 ; across { slat one 4 ; space ; slat two 4 } }`,
			sizes: byHand{
				"bed.lath":   "38 x 3 x 3/4", // 40 - 2 x 1
				"bed.last":   "38 x 3 x 3/4",
				"guide.left": "16 x 2 x 1",
				"gate.one":   "30 x 4 x 1",
			},
		},
		{
			name: "fronts that touch want a gap, once for an assembly",
			text: `case chest { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  each drawer { of ash 1/2 ; front ash 3/4 applied ; fit overlay 5/8 }
  across { side left ; down { top roof ; drawer one ; drawer two ; bottom floor } ; side right }
}`,
			found: []string{"drawer \"one\" needs to say how wide the gap to its neighbour is"},
		},
		{
			name: "an inset door wants a reveal, an overlay door a lap",
			text: `case a { of ply ; wide 30 ; high 20 ; deep 16
  across { side left ; door one { leaf ash 3/4 } ; side right }
}
case b { of ply ; wide 30 ; high 20 ; deep 16
  across { side left ; door two { leaf ash 3/4 ; fit overlay } ; side right }
}
case c { of ply ; wide 30 ; high 20 ; deep 16
  across { side left ; door later ; side right }
}`,
			found: []string{
				"door \"one\" needs to say how wide the gap round it is",
				"door \"two\" needs to say how far it laps the edges of its opening",
			},
		},
		{
			name: "a stick never takes a share of the room",
			text: `assembly chest { of ash ; wide 44 ; high 20 ; deep 20
  across {
    behind { post a 2 ; space ; post b 2 { wide 2 } }
    space
    behind { post c 2 { wide 2 } ; down { rail low 3 { thick 1 } ; space } ; post d 2 { wide 2 } }
  }
}
frame gate { of ash ; thick 1 ; wide 40 ; high 30 ; across { stile l 2 ; slat s count 4 ; stile r 2 } }`,
			found: []string{
				"post \"a\" needs to say how wide it is",
				"slat \"s-1\" needs to say how wide it is along its list",
			},
		},
		{
			name: "an upright stick between panels that stand one above the other",
			text: `frame gate { of ash ; thick 1 ; wide 40 ; high 30 ; joint tenon thick 5/16 long 1
  across { stile l 2 ; down { rail t 2 ; panel p count 3 between muntin 2 { of ash 1/2 ; groove 5/16 x 3/8 } ; rail b 2 } ; stile r 2 }
}`,
			found: []string{"muntin \"muntin-1\" does not stand here: it is upright, and its list goes down"},
		},
		{
			name: "a misspelt word is read as what it was meant to be",
			text: `case a { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side left ; down { top roof ; open bay ; botom floor } ; side right }
}`,
			sizes: byHand{"a.floor": "29 x 16 x 3/4", "a.bay": "28 1/2 x 18 1/2 x 16"}, // high 20 - 2 x 3/4
			found: []string{"`botom` does not stand in `down`: did you mean `bottom`?"},
		},
		{
			name: "what cannot be read leaves a gap in its list",
			text: `case a { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4
  across { side left ; down { top roof ; open bay ; widget floor ; open more } ; side right }
}
check "more than nothing" a.floor.high > 0`,
			sizes: byHand{"a.roof": "29 x 16 x 3/4", "a.bay": "28 1/2 x ? x 16"},
			found: []string{"`widget` is no word that stands in `down`"},
		},
		{
			name: "a panel that would face sideways",
			text: `assembly chest { of ash ; wide 44 ; high 20 ; deep 20 ; joint tenon thick 3/8 long 1
  across {
    behind { post a 2 { wide 2 } ; down { rail t 3 { thick 1 } ; panel side-panel { of ash 1/2 ; groove 3/8 x 3/8 } ; rail b 3 { thick 1 } } ; post c 2 { wide 2 } }
    space
    behind { post d 2 { wide 2 } ; space ; post e 2 { wide 2 } }
  }
}`,
			found: []string{"panel \"side-panel\" does not stand here: it would face sideways"},
		},
		{
			name:  "a frame of six sides draws its one rail in no list",
			text:  `frame hexagon { of ash ; thick 3/4 ; sides 6 ; joint mitre ; across { rail edge 2 { long 12 } } }`,
			found: []string{"a frame of 6 sides has no list: its one rail stands for all"},
		},
	})
}

// A frame that is 10 x 20 and 1 thick has a rail of 3 at its top, 2 from its left.
func TestOuter(t *testing.T) {
	const end = `frame end { wide 10 ; high 20 ; thick 1 ; across { post left 2 ; down { rail head 3 ; space } ; post right 3 } }
`
	tests := []struct{ name, text, at string }{
		{"as it is drawn", `assembly a { down { space 4 ; across { space 6 ; behind { frame f part end } } } }`, "8 to 13, 4 to 7, 0 to 1"},
		{"mirrored", `assembly a { down { space 4 ; across { space 6 ; behind { frame f part end mirrored } } } }`, "9 to 14, 4 to 7, 0 to 1"},
		{"turned, its left to the front", `assembly a { deep 12 ; across { space 6 ; behind { space 2 ; across { frame f part end ; space 1 } } } }`, "6 to 7, 0 to 3, 4 to 9"},
		{"lying, its top at the back", `assembly a { deep 20 ; down { space 4 ; across { space 6 ; down { frame f part end } } } }`, "8 to 13, 4 to 5, 17 to 20"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, faults := resolveText("plan \"Ends\" { units in }\n" + end + test.text)
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			for placed := range plan.AllOf[*plan.Placed](p) {
				for m := range p.Members() {
					if m.Name.Text != "head" {
						continue
					}
					var shown []string
					for _, e := range placed.Outer(m.Body) {
						shown = append(shown, p.Show(e.From)+" to "+p.Show(e.To()))
					}
					if got := strings.Join(shown, ", "); got != test.at {
						t.Errorf("got %s, want %s (turned %t, flat %t)", got, test.at, placed.Turned, placed.Flat)
					}
				}
			}
		})
	}
}
