package plan_test

// What fills an opening: doors and their reveals, panels and backs with their gaps, glass.

import "testing"

// A case of 3/4 ply, 30 x 20 x 16: inside 28 1/2 wide and 18 1/2 high.
const openCase = "case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4\n"

func TestDoors(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "an edge may have its own reveal",
			text: openCase + `across { side l ; down { top t ; across {
    door a 8 { leaf ash 3/4 ; reveal 1/8 top 1/4 bottom 1/2 hinge 1/16 latch 3/16 ; hang left } ; divider m
    door b 8 { leaf ash 3/4 ; reveal 1/8 top 1/4 hinge 1/16 ; hang right } ; divider n
    door d { leaf ash 3/4 ; reveal 1/8 hinge 1/16 top 1/4 ; hang top } } ; bottom b2 } ; side r } }
`,
			sizes: byHand{
				"c.a": "7 3/4 x 17 3/4",   // 8 - 1/16 - 3/16; 18 1/2 - 1/4 - 1/2
				"c.b": "7 13/16 x 18 1/8", // 8 - 1/16 - 1/8; 18 1/2 - 1/4 - 1/8
				"c.d": "10 3/4 x 18 5/16", // 28 1/2 - 16 - 2 x 3/4 - 2 x 1/8; its hinge edge is the upper: 18 1/2 - 1/16 - 1/8
			},
		},
		{
			name: "between two openings one reveal is shared",
			text: openCase + `across { side l ; door a { leaf ash 3/4 ; reveal 1/8 meeting 1/16 ; hang left } ; door b { leaf ash 3/4 ; reveal 1/8 meeting 1/16 ; hang right } ; side r } }
case d { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each door { leaf ash 3/4 ; reveal 1/8 }
  across { side l ; down { top t ; door a 6 ; across { door b ; door e } ; bottom f } ; side r } }
`,
			sizes: byHand{
				"c.a": "14 3/32 x 20",      // 28 1/2 / 2 - 1/8 - 1/32
				"c.b": "14 3/32 x 20",      //
				"d.a": "28 1/4 x 5 13/16",  // 6 - 1/8 - 1/16
				"d.b": "14 1/16 x 12 5/16", // 14 1/4 - 1/8 - 1/16; 12 1/2 - 1/16 - 1/8
				"d.e": "14 1/16 x 12 5/16",
			},
		},
		{
			name: "overlays add at each member, and share a reveal where they meet",
			text: openCase + `each door { leaf ash 3/4 ; fit overlay 1/2 ; reveal 1/8 }
  across { side l ; down { top t ; across { door a ; door b } ; bottom f } ; side r } }
`,
			sizes: byHand{"c.a": "14 11/16 x 19 1/2"}, // 14 1/4 + 1/2 - 1/16; 18 1/2 + 2 x 1/2
		},
		{
			name: "an edge may have its own lap, which comes before what each has",
			text: openCase + `each door { leaf ash 3/4 ; fit overlay 5/8 top 1/8 bottom 3/4 latch 5/16 }
  across { side l ; down { top t ; across {
    door a 8 { hang left } ; divider m ; door b 8 { hang right ; fit overlay hinge 3/8 } ; divider n
    door d { hang top ; fit overlay left 1/4 right 1/2 bottom 1/2 latch (-1/4) } } ; bottom b2 } ; side r } }
`,
			sizes: byHand{
				"c.a": "8 15/16 x 19 3/8", // 8 + 5/8 + 5/16; 18 1/2 + 1/8 + 3/4
				"c.b": "8 11/16 x 19 3/8", // 8 + 3/8 + 5/16
				"c.d": "11 3/4 x 18 3/8",  // 28 1/2 - 16 - 2 x 3/4 + 1/4 + 1/2; 18 1/2 + 1/8 - 1/4: its latch edge is the lower
			},
		},
		{
			name: "fronts, what is between them and what shows of the case make its height",
			text: openCase + `each drawer { of ash 1/2 ; front ash 3/4 applied ; fit overlay 5/8 top 1/8 bottom 3/4 right 5/16 ; reveal 1/8 }
  down { top t ; across { side l ; down { drawer a 4 ; drawer b 6 ; drawer d } ; side r } ; bottom b2 } }
`,
			named: byHand{ // 20 = 5/8 of the top shows, 4 1/16 + 5 7/8 + 9 3/16 of fronts, 2 gaps of 1/8
				"c.a.front.long": "29 7/16", // 28 1/2 + 5/8 + 5/16
				"c.a.front.wide": "4 1/16",  // 4 + 1/8 - 1/16
				"c.b.front.wide": "5 7/8",   // 6 - 2 x 1/16
				"c.d.front.wide": "9 3/16",  // 18 1/2 - 4 - 6 - 1/16 + 3/4
			},
		},
		{
			name: "left and right of what is mirrored change places, where two share what each says too",
			text: `pattern bay { takes across-all
  case box { of ply ; wide across-all ; high 20 ; deep 16 ; joint dado deep 1/4
  each door { leaf ash 3/4 ; hang top ; reveal 1/8 left 1/4 }
  across { side l ; door a 8 { fit overlay 1/2 left 1/4 right 5/8 } ; door b 8 { fit inset } ; divider n ; open ; side r } } }
build one from bay across-all 30
build two from bay across-all 30 mirrored
`,
			named: byHand{
				"one.box.a.leaf.wide": "8 3/16", "two.box.a.leaf.wide": "8 3/16", // 8 + 1/4 - 1/16
				"one.box.b.leaf.wide": "7 3/4", "two.box.b.leaf.wide": "7 3/4", // 8 - 1/8 - 1/8
			},
		},
		{
			name: "a drawer has no hinge edge, and a value below nothing stands in brackets",
			text: openCase + `across { side l ; drawer a { of ash 1/2 ; fit overlay 1/2 hinge 1/4 ; reveal 1/8 latch 1/4 } ; divider m
  door b { leaf ash 3/4 ; hang left ; fit overlay 1/2 bottom -1/4 } ; side r } }
`,
			found: []string{
				"`bottom -1/4` reads two ways", "`hinge` does not stand in `fit`", "`latch` does not stand in `reveal`",
			},
		},
		{
			name: "a leaf is a frame, a part or a board",
			text: `part slab { of ash ; size 18 1/4 x 9 x 7/8 }
` + openCase + `each door { fit inset ; reveal 1/8 }
  across { side l ; down { top t ; across { door a { leaf slab } ; divider m ; door b { leaf leaf } ; divider n ; door d { leaf ash 5/8 } } ; bottom f } ; side r } }
frame leaf { of ash ; thick 1 ; across { stile a 2 ; open ; stile b 2 } }
`,
			named: byHand{
				"c.a.leaf.thick":  "7/8",
				"c.b.leaf.thick":  "1",
				"c.d.leaf.thick":  "5/8",
				"c.b.leaf.high":   "18 1/4",
				"c.b.leaf.a.long": "18 1/4",
				"leaf.wide":       "8 3/4", // (28 1/2 - 2 x 3/4) / 3 - 2 x 1/8
			},
		},
	})
}

func TestPanels(t *testing.T) {
	// Between stiles of 2 in a frame of 20: 16 wide; between rails of 2 in 30: 26 high.
	framed := func(panel string) string {
		return "frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint tenon long 1\n  across { stile l 2 ; down { rail t 2 ; " + panel + " ; rail b 2 } ; stile r 2 } }\n"
	}
	try(t, layoutMaterials, []trial{
		{
			name:  "a gap across and along the grain",
			text:  framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; gap 1/8 x 1/16 }"),
			sizes: byHand{"f.p": "26 11/16 x 16 5/8 x 1/2"}, // 26 + 2 x 3/8 - 1/16; 16 + 2 x 3/8 - 1/8
		},
		{
			name:  "one gap is for both ways",
			text:  framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; gap 1/8 }"),
			sizes: byHand{"f.p": "26 5/8 x 16 5/8 x 1/2"},
		},
		{
			name:  "its grain may run across",
			text:  framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; gap 1/8 x 1/16 ; grain across }"),
			sizes: byHand{"f.p": "16 11/16 x 26 5/8 x 1/2"},
		},
		{
			name:  "a sheet is 1/32 smaller, and as thick as it is measured",
			text:  framed("panel p { of ply ; groove 3/4 x 3/8 }"),
			sizes: byHand{"f.p": "26 23/32 x 16 23/32 x 3/4"},
		},
		{
			name: "a solid one is as wide as the middle of what the seasons allow, on the mark below",
			text: "climate { shop 8% ; dry 6% ; humid 11% }\n" + framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; float }"),
			// White ash sawn flat moves 0.00274 of its width a point: 0.00822 wider, 0.00548 narrower.
			// Between the groove bottoms 16 3/4. Widest (16.75 - 1/32) / 1.00822 = 16.5824, narrowest
			// (16.75 - 1/2) / 0.99452 = 16.3395; the middle is 16.4610, and the mark below 16 7/16.
			sizes: byHand{"f.p": "26 23/32 x 16 7/16 x 1/2"},
		},
		{
			name: "one that is not kept in the middle",
			text: "climate { shop 8% ; dry 6% ; humid 11% }\n" + framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; float loose }"),
			// Narrowest (16.75 - 1/4) / 0.99452 = 16.5909, which is more than the widest: 16.5824.
			sizes: byHand{"f.p": "26 23/32 x 16 9/16 x 1/2"},
		},
		{
			name:  "what it states is what it is",
			text:  framed("panel p { of ash 1/2 ; groove 1/4 x 3/8 ; wide 16 1/2 ; high 26 }"),
			sizes: byHand{"f.p": "26 x 16 1/2 x 1/2"},
		},
		{
			name: "a stub tenon is as long as its panel's groove is deep",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint stub ; each panel groove 1/4 x 1/2
  across { stile l 2 ; down { rail t 2 ; across { panel a { of ply } ; muntin m 2 ; panel b { of ply } } ; rail b2 2 } ; stile r 2 } }
`,
			sizes: byHand{
				"f.t": "17 x 2 x 1",               // 16 + 2 x 1/2
				"f.m": "27 x 2 x 1",               // 26 + 2 x 1/2
				"f.a": "26 31/32 x 7 31/32 x 3/4", // (16 - 2) / 2 + 2 x 1/2 - 1/32
			},
		},
	})
}

func TestBacks(t *testing.T) {
	try(t, layoutMaterials+"sheet thin { kind plywood ; thick 1/4 ; actual 1/4 ; size 48 x 96 }\n", []trial{
		{
			name: "in rabbets of the sides, free above and below; its grain along its longer side",
			text: openCase + `across { side l ; behind { down { top t ; open bay ; bottom f } ; back rear { of thin ; joint rabbet 3/8 x 1/4 } } ; side r } }
`,
			sizes: byHand{
				"c.rear": "29 7/32 x 19 31/32 x 1/4", // 28 1/2 + 2 x 3/8 - 1/32; 20 - 1/32
				"c.bay":  "28 1/2 x 18 1/2 x 15 3/4",
				"c.t":    "29 x 15 3/4 x 3/4",
			},
		},
		{
			name: "in rabbets all round",
			text: openCase + `across { side l ; down { top t ; behind { open bay ; back rear { of thin ; joint rabbet 3/8 ; gap 1/16 } } ; bottom f } ; side r } }
`,
			sizes: byHand{"c.rear": "29 3/16 x 19 3/16 x 1/4"}, // 28 1/2 + 3/4 - 1/16; 18 1/2 + 3/4 - 1/16
		},
		{
			name: "by the rule for every end",
			text: openCase + `across { side l ; behind { down { top t ; open ; bottom f } ; back rear { of thin } } ; side r } }
`,
			sizes: byHand{"c.rear": "28 31/32 x 19 31/32 x 1/4"}, // dado deep 1/4: 28 1/2 + 1/2 - 1/32
		},
	})
}

func TestGlass(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "in a rabbet: from the edge, less its gap in all",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint tenon long 1 ; each glass { thick 1/8 ; joint rabbet 1/2 x 3/8 }
  across { stile l 2 ; down { rail t 2 ; glass a 10 ; rail m 2 ; glass b { gap 1/16 } ; rail b2 2 } ; stile r 2 } }
`,
			sizes: byHand{
				"f.a": "10 5/8 x 16 5/8 x 1/8", // high x wide: 10 + 2 x 3/8 - 1/8; 16 + 2 x 3/8 - 1/8
				"f.b": "14 11/16 x 16 11/16 x 1/8",
			},
		},
	})
}

// In a plan that is measured in millimetres what is unsaid is metric too.
func TestMetricDefaults(t *testing.T) {
	try(t, "units mm\nsheet ply { kind plywood ; thick 18 ; size 1220 x 2440 }\nwood oak { species \"white oak\" }\n", []trial{
		{
			name: "gaps of 1 and 3, trim of 1.5",
			text: `frame f { of oak ; wide 500 ; high 800 ; thick 25 ; joint tenon through
  across { stile l 50 ; down { rail t 50 ; panel p { of ply ; groove 18 x 10 } ; rail m 50 ; glass g 200 { thick 4 ; joint rabbet 12 x 8 } ; rail b 50 } ; stile r 50 } }
`,
			sizes: byHand{
				"f.t": "503 x 50 x 25",  // 400 + 2 x (50 + 1.5)
				"f.p": "469 x 419 x 18", // high 800 - 150 - 200 = 450 + 20 - 1; wide 400 + 20 - 1
				"f.g": "213 x 413 x 4",  // 200 + 16 - 3
			},
		},
	})
}
