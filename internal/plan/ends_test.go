package plan_test

// What each end meets, which joint holds it there, and what that adds to its length.

import (
	"strings"
	"testing"

	"plancheck/internal/plan"
)

// matesOf are the members that each end of a member meets, by the side of the end.
func matesOf(p *plan.Plan, path string) string {
	var shown []string
	for m := range p.Members() {
		if plan.PathOf(m) != path {
			continue
		}
		for _, e := range m.Ends {
			var mates []string
			for _, mate := range e.Mates {
				mates = append(mates, plan.PathOf(mate))
			}
			if e.Free {
				mates = append(mates, "free")
			}
			shown = append(shown, e.Side.String()+" "+strings.Join(mates, "+"))
		}
	}
	return strings.Join(shown, ", ")
}

func TestMates(t *testing.T) {
	tests := []struct {
		name, text string
		mates      map[string]string
	}{
		{
			name: "four legs with rails both ways",
			text: `assembly base { of ash ; wide 60 ; high 28 ; deep 30 ; joint tenon thick 5/16 long 1 ; each apron thick 7/8 ; each leg wide 2
  across {
    behind { leg fl 2 ; down { apron left 4 ; space } ; leg bl 2 }
    behind { down { apron front 4 ; space } ; space ; down { apron back 4 ; space } }
    behind { leg fr 2 ; down { apron right 4 ; space } ; leg br 2 }
  }
}`,
			mates: map[string]string{
				"base.left":  "front base.fl, back base.bl",
				"base.right": "front base.fr, back base.br",
				"base.front": "left base.fl, right base.fr",
				"base.back":  "left base.bl, right base.br",
				"base.fl":    "upper free, lower free",
			},
		},
		{
			name: "a rail between two pedestals",
			text: `case pedestal { of ply ; wide 16 ; high 28 ; deep 20 ; joint dado deep 1/4 ; across { side l ; down { top t ; open ; bottom b } ; side r } }
assembly desk { of ash ; wide 60 ; high 28 ; deep 20 ; joint butt ; across { case left part pedestal ; down { rail front 4 { thick 1 } ; space } ; case right part pedestal } }`,
			mates: map[string]string{
				"desk.front": "left pedestal.r, right pedestal.l",
				"pedestal.t": "left pedestal.l, right pedestal.r",
			},
		},
		{
			name: "a shelf between end frames meets their stiles, and a rail where it covers the end",
			text: `frame end { of ash ; thick 7/8 ; joint tenon thick 1/4 long 1
  across { stile front 2 ; down { rail head 3 ; panel field { of ash 1/2 ; groove 1/4 x 3/8 } ; rail foot 4 } ; stile back 2 } }
assembly case { of ash ; wide 40 ; high 30 ; deep 16 ; joint dado deep 1/4
  across { frame left part end ; down { open 1 ; shelf high { of ply } ; open ; shelf mid { of ply } ; open ; shelf low { of ply } } ; frame right part end } }`,
			mates: map[string]string{
				"case.high": "left end.front+end.head+end.back, right end.front+end.head+end.back",
				"case.mid":  "left end.front+end.back, right end.front+end.back",
				"case.low":  "left end.front+end.foot+end.back, right end.front+end.foot+end.back",
			},
		},
		{
			name: "a mirrored end frame keeps its front at the front",
			text: `frame end { of ash ; thick 7/8 ; across { stile front 2 ; open ; post mid 3 ; open 1 ; stile back 2 } }
assembly case { of ash ; wide 40 ; high 30 ; deep 16 ; joint dado deep 1/4
  across { frame left part end ; behind { down { shelf s { of ply } ; open } ; open 6 } ; frame right part end mirrored } }`,
			mates: map[string]string{"case.s": "left end.front, right end.front"},
		},
		{
			name: "the top of a frame laid flat is the back",
			text: `frame lid { of ash ; thick 7/8 ; across { stile l 3 ; down { rail head 4 ; open ; rail foot 2 } ; stile r 3 } }
assembly a { of ash ; wide 40 ; high 30 ; deep 30 ; joint butt
  behind { rail front 5 { grain behind ; wide 7/8 } ; down { frame flat part lid ; space } ; rail back 5 { grain behind ; wide 7/8 } } }`,
			mates: map[string]string{
				"a.front": "front free, back lid.l+lid.foot+lid.r",
				"a.back":  "front lid.l+lid.head+lid.r, back free",
			},
		},
		{
			name: "climbing: the roof of a case is what an inner upright meets",
			text: `case c { of ply ; wide 40 ; high 30 ; deep 16 ; joint dado deep 1/4
  across { side l ; down { top t ; across { open ; divider d ; down { open ; shelf s ; open } } ; bottom b } ; side r } }`,
			mates: map[string]string{
				"c.d": "upper c.t, lower c.b",
				"c.s": "left c.d, right c.r",
				"c.t": "left c.l, right c.r",
				"c.l": "upper free, lower free",
			},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, found := resolveText(layoutMaterials + test.text)
			if len(found) > 0 {
				t.Errorf("found %q", found)
			}
			for path, want := range test.mates {
				if got := matesOf(p, path); got != want {
					t.Errorf("%s: got %q, want %q", path, got, want)
				}
			}
		})
	}
}

// Each kind of joint adds what the reference says. The rail lies between stiles of 3 x 1,
// 20 - 2 x 3 = 14 apart; the shelf between sides of 3/4, 28 1/2 apart.
func TestJointsAdd(t *testing.T) {
	rails := map[string]string{
		"tenon long 1":                 "16",
		"tenon through":                "20 1/8", // 14 + 2 x (3 + 1/16)
		"tenon through long 3 1/4":     "20 1/2",
		"tenon count 2 apart 2 long 1": "16",
		"loose-tenon long 2 thick 3/8": "14",
		"stub":                         "14 3/4", // the groove is 3/8 deep
		"tongue thick 1/4 long 3/8":    "14 3/4",
		"half-lap":                     "20",
		"bridle":                       "20",
		"mitre":                        "20",
		"rabbet 1/4 x 3/8":             "14 3/4", // in one plane: from the edge
		"dowel pin deep 3/4":           "14",
		"biscuit pin":                  "14",
		"butt":                         "14",
		"wedge tail 2":                 "24", // 14 + 2 x (3 + 2)
		"scarf slope 1:8":              "14",
	}
	shelves := map[string]string{
		"housing deep 3/16":          "28 7/8",
		"dado deep 3/8":              "29 1/4",
		"sliding-dovetail deep 3/8":  "29 1/4",
		"rabbet 1/4 x 3/4":           "29", // at right angles: into the thickness
		"rabbet deep 1/4":            "29",
		"dovetail slope 1:7":         "30",
		"dovetail slope 1:7 lap 1/4": "29 1/2",
		"box finger 3/8":             "30",
		"pin count 2":                "28 1/2",
		"tongue thick 1/4 long 1/4":  "29",
		"drop-in deep 1/2":           "29 1/2",
		"screw pin":                  "28 1/2",
		"pocket pin":                 "28 1/2",
		"bolt pin":                   "28 1/2",
		"knob pin":                   "28 1/2",
		"hook pin":                   "28 1/2",
		"magnet pin":                 "28 1/2",
		"butt":                       "28 1/2",
	}
	const hardware = "dowel pin { thick 3/8 ; long 2 }\nscrew no8 { gauge 8 ; long 2 }\n"
	for joint, want := range rails {
		p, _ := resolveText(layoutMaterials + hardware + `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint ` + joint + `
  across { stile a 3 ; down { rail t 2 ; panel p { of ash 1/2 ; groove 1/4 x 3/8 } ; rail b 2 } ; stile c 3 } }`)
		if got := sizesOf(p)["f.t"]; got != want+" x 2 x 1" {
			t.Errorf("joint %s: got %q, by hand %s", joint, got, want)
		}
	}
	for joint, want := range shelves {
		p, _ := resolveText(layoutMaterials + hardware + `case c { of ply ; wide 30 ; high 30 ; deep 10 ; joint ` + joint + `
  across { side a ; down { open ; shelf s ; open } ; side b } }`)
		if got := sizesOf(p)["c.s"]; got != want+" x 10 x 3/4" {
			t.Errorf("joint %s: got %q, by hand %s", joint, got, want)
		}
	}
}

// Which joint holds an end: its own, its part's, the rule for its word, the rule for all. One
// of the same kind adds to the next setting by setting, another kind replaces it whole.
func TestJointsMerge(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "setting by setting, and whole",
			text: `joint corner tenon thick 5/16 long 3/4
joint longer tenon long 1 1/2
frame f { of ash ; wide 20 ; high 60 ; thick 1 ; joint tenon thick 1/4 long 1 shoulder 1/4 ; each rail joint tenon thick 3/8
  across { stile l 3 ; down {
    rail plain 2
    rail own 2 { joint tenon long 1 1/4 }
    rail other 2 { joint dado deep 1/2 }
    rail end-own 2 { end left joint tenon long 1/2 }
    rail end-other 2 { joint tenon long 2 ; end right joint butt }
    rail both 2 { end left joint tenon long 1/2 ; end right joint tenon long 1/4 }
    rail named 2 { joint corner }
    rail named-more 2 { joint corner long 1 3/4 }
    rail named-less 2 { joint longer }
    rail end-named 2 { end left joint corner }
    open
  } ; stile r 3 } }
`,
			sizes: byHand{ // 20 - 2 x 3 = 14
				"f.plain":      "16 x 2 x 1",
				"f.own":        "16 1/2 x 2 x 1",
				"f.other":      "15 x 2 x 1",
				"f.end-own":    "15 1/2 x 2 x 1", // 1/2 + 1
				"f.end-other":  "16 x 2 x 1",     // 2 + 0
				"f.both":       "14 3/4 x 2 x 1",
				"f.named":      "15 1/2 x 2 x 1",
				"f.named-more": "17 1/2 x 2 x 1",
				"f.named-less": "17 x 2 x 1",
				"f.end-named":  "15 3/4 x 2 x 1", // 3/4 + 1
			},
		},
		{
			name: "an end said for all of a word, and the other end by itself",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint butt ; each rail { end left joint tenon long 1 ; end right joint tenon long 2 }
  across { stile l 3 ; down { rail a 2 ; open ; rail b 2 { end right joint dado deep 1/4 } ; rail c 2 { end left joint tenon thick 1/4 } } ; stile r 3 } }
`,
			sizes: byHand{"f.a": "17 x 2 x 1", "f.b": "15 1/4 x 2 x 1", "f.c": "17 x 2 x 1"},
		},
		{
			name: "a name that nothing bears leaves the joint unknown, and says so once",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint tenon long 1
  across { stile l 3 ; down { rail a 2 { joint corner long 1 } ; open ; rail b 2 } ; stile r 3 } }
`,
			sizes: byHand{"f.a": "? x 2 x 1", "f.b": "16 x 2 x 1"},
			found: []string{"nothing is called `corner`"},
		},
		{
			name: "joints at plan level that are each other",
			text: `joint a b long 1
joint b a long 2
frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint a
  across { stile l 3 ; down { rail t 2 ; open } ; stile r 3 } }
`,
			found: []string{"joint `a` takes after itself"},
		},
	})
	figures := []struct {
		joint string // of the rail
		want  string // thick, shoulder, mortise deep, haunch
	}{
		{"", "1/4 1/4 1 1/16 ?"},
		{"joint tenon thick 3/8", "3/8 1/4 1 1/16 ?"},
		{"joint tenon haunch 1/2", "1/4 1/4 1 1/16 1/2"},
		{"joint tenon long 2", "1/4 1/4 2 1/16 ?"},
		{"joint tenon mortise deep 3", "1/4 1/4 3 ?"},
		{"joint loose-tenon thick 3/8 mortise deep 1", "3/8 ? 1 ?"},
	}
	for _, test := range figures {
		p, found := resolveText(layoutMaterials + `frame f { of ash ; wide 20 ; high 30 ; thick 1 ; joint tenon thick 1/4 long 1 shoulder 1/4
  across { stile l 3 ; down { rail a 2 { ` + test.joint + ` } ; open ; rail b 2 } ; stile r 3 } }`)
		j := p.Assemblies[0].Members[1].Ends[0].Joint
		show := func(l plan.Length) string {
			if !l.Known() {
				return "?"
			}
			return p.Show(l.Length)
		}
		haunch := "?"
		if j.Haunch != nil {
			haunch = show(j.Haunch.Wide)
		}
		got := strings.Join([]string{show(j.Thick), show(j.Shoulder), show(j.Mortise.Deep), haunch}, " ")
		if got != test.want || len(found) > 0 {
			t.Errorf("%s: got %q, want %q; found %q", test.joint, got, test.want, found)
		}
	}
}
