package plan_test

// What `each` and the assembly say for all, and where it does not reach.

import "testing"

func TestEach(t *testing.T) {
	try(t, layoutMaterials+"wood cherry { species \"black cherry\" ; sawn flat }\n", []trial{
		{
			name: "setting by setting, for one word and for a list of words, in either order",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint butt
  each stile, rail thick 7/8
  across { stile l 2 ; down { rail t 2 ; rail m 2 { thick 1/2 } ; open ; rail b 2 of cherry 3/4 } ; stile r 2 }
  each rail joint tenon long 1
}
`,
			sizes: byHand{
				"f.l": "30 x 2 x 7/8",
				"f.t": "18 x 2 x 7/8",
				"f.m": "18 x 2 x 1/2",
				"f.b": "18 x 2 x 7/8", // its thickness is said for each
			},
		},
		{
			name: "it does not reach into what is drawn elsewhere",
			text: `case inner { of ply ; joint dado deep 1/4 ; across { side l ; down { top t ; shelf s ; open ; bottom b } ; side r } }
case outer { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/2 ; each shelf recess front 2
  across { side l ; down { shelf s ; case in part inner } ; side r } }
`,
			sizes: byHand{
				"outer.s": "29 1/2 x 14 x 3/4",
				"inner.s": "27 1/2 x 16 x 3/4", // 28 1/2 - 2 x 3/4 + 2 x 1/4
			},
		},
		{
			name: "two spellings of one word decode alike",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each divider { recess front 1 } ; each kick thick 1/2
  across { side l ; open ; partition p ; down { open ; toe-kick k 3 } ; side r } }
`,
			sizes: byHand{"c.p": "20 x 15 x 3/4", "c.k": "14 3/8 x 3 x 1/2"}, // (30 - 3 x 3/4) / 2 + 2 x 1/4
		},
		{
			name: "each said twice adds up, and twice the same is a fault",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint butt ; each rail thick 7/8 ; each rail joint tenon long 1 ; each rail thick 3/4
  across { stile l 2 ; down { rail t 2 ; open } ; stile r 2 } }
`,
			sizes: byHand{"f.t": "18 x 2 x 7/8"},
			found: []string{"`thick` is stated twice here"},
		},
		{
			name: "a fault in what is said for several words is said once",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each side, top, bottom edging front chery 1/4
  across { side l ; down { top t ; open ; bottom b } ; side r } }
case d { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each side, top, bottom edgin front cherry 1/4
  across { side l ; down { top t ; open ; bottom b } ; side r } }
case e { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each side, across, tpo thick 1/4
  across { side l ; down { top t ; open ; bottom b } ; side r } }
`,
			found: []string{
				"`edgin` does not stand in `side`: did you mean `edging`?",
				"`each` wants what stands in a list",
				"`each` wants what stands in a list, such as `rail`, not `tpo`",
				"nothing is called `chery`",
			},
		},
		{
			name: "what stands in a list may be said beforehand",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 16 ; joint dado deep 1/4 ; each open, space holds books ; each back { of ply ; joint rabbet 3/8 x 3/4 }
  across { side l ; behind { open bay ; back rear } ; side r } }
`,
			sizes: byHand{"c.rear": "29 7/32 x 19 31/32 x 3/4"},
		},
	})
}
