package plan_test

// Files that take in other files.

import "testing"

func TestUse(t *testing.T) {
	const metric = "units mm\nsheet ply { kind plywood ; thick 18 ; size 1220 x 2440 }\nwood oak { species \"white oak\" }\n"
	try(t, "", []trial{
		{
			name: "bare numbers keep the unit of the file that wrote them",
			text: `use "shop.plan"
units in
frame f { of oak ; wide 20 ; high 30 ; thick 1 ; across { stile l ply-thick ; slat s ply-thick count laths ; stile r 2 } }
check "a metric thickness" ply-thick < 1
`,
			files: map[string]string{"shop.plan": metric + "let ply-thick = 18\nlet laths = 3\n"},
			named: byHand{ // 18 / 25.4 = 0.70866
				"ply-thick":             "0.7087",
				"2 * ply-thick":         "1.4173",
				"ply-thick * 2":         "1.4173",
				"ply-thick + 1":         "1.7087",
				"ply-thick / 2":         "0.3543",
				"max(ply-thick, 1)":     "1",
				"round(ply-thick, 1/8)": "3/4",
				"laths * 4":             "0.4724", // 12 mm, should a length be wanted
				"1in * laths":           "3",
				"12in / laths":          "4",
				"f.s-3.wide":            "0.7087",
			},
		},
		{
			name: "a pattern keeps its file's unit, and what it is given that of its caller",
			text: `use "shop.plan"
units in
build one from stick wide-of 20
`,
			files: map[string]string{"shop.plan": metric + "pattern stick { takes wide-of ; takes more 10 ; frame f { of oak ; wide wide-of + more ; high 762 ; thick 25.4 ; across { stile a 50.8 ; open bay ; stile b 50.8 } } }\n"},
			sizes: byHand{"one.f": "20.3937 x 30 x 1", "one.f.a": "30 x 2 x 1"}, // 20 + 10 / 25.4
		},
		{
			name: "a file reached twice is taken once, and names in one flat space",
			text: "use \"a.plan\"\nuse \"b.plan\"\nlet z = w1 + y\n",
			files: map[string]string{
				"a.plan": "use \"b.plan\"\nlet w1 = y + 1\n",
				"b.plan": "let y = w\n",
				"c.plan": "",
			},
			found: []string{"nothing is called `w`"},
		},
		{
			name:  "a used file sees the names of the one that uses it",
			text:  "use \"b.plan\"\nlet w = 3\n",
			files: map[string]string{"b.plan": "let y = w + 1\n"},
			named: byHand{"y": "4"},
		},
		{
			name:  "one name in two files",
			text:  "use \"a.plan\"\nlet play = 3\n",
			files: map[string]string{"a.plan": "let play = 2\n"},
			found: []string{"`play` names two things here"},
		},
		{
			name:  "files in a ring, a file that is not there, no name",
			text:  "use \"a.plan\"\nuse \"no.plan\"\nuse a\n",
			files: map[string]string{"a.plan": "use \"b.plan\"\n", "b.plan": "use \"a.plan\"\n"},
			found: []string{
				"`a.plan` is already being taken in",
				"`no.plan` cannot be taken in: there is no such file",
				"`use` wants the name of a file",
			},
		},
		{
			name: "climate, shop and tape stand once in a plan; each file may say its units and its title",
			text: `plan "Cabinet" { units in ; tape 1/32 }
use "a.plan"
climate { shop 8% }
shop { kerf 1/8 }
`,
			files: map[string]string{"a.plan": "plan \"Shelf\" { units mm ; tape 1mm }\nclimate { shop 7% }\nshop { kerf 3 }\n"},
			found: []string{"`tape` is stated twice", "`climate` is stated twice", "`shop` is stated twice"},
		},
		{
			name:  "a fault stands in the file where it is",
			text:  "use \"a.plan\"\nlet y = slant\n",
			files: map[string]string{"a.plan": "let slant = 3in + 45deg\nfram f { }\nlet q = \n"},
			found: []string{"", "did you mean `frame`", "cannot be taken together"},
		},
	})
}
