package plan_test

// Expressions and their units: what they come to, and what is refused.

import "testing"

func TestValues(t *testing.T) {
	try(t, "", []trial{
		{
			name: "bare numbers meet lengths",
			text: "let play = 3/32\nlet wide = 2ft\n",
			named: byHand{
				"2 * play":              "3/16",
				"play * 2":              "3/16",
				"play + 1/32in":         "1/8",
				"wide / 2 - play":       "11 29/32", // 24 / 2 - 3/32
				"2 * (wide - 1) / 4":    "11 1/2",
				"-(1 - 3)":              "2",
				"wide / 8in":            "3", // a ratio, a plain number
				"max(1, 30mm, 1 1/16)":  "1.1811",
				"min(1, 30mm, 1 1/16)":  "1",
				"abs(1 - 2 1/2)":        "1 1/2",
				"round(10 / 3, 1/16)":   "3 5/16", // 3.333 = 53.33 / 16
				"round(wide / 7, 1/16)": "3 7/16", // 3.4286 = 54.86 / 16
				"(1 / 3) * 3":           "1",
				`2' 6 1/2" + 27 1/2"`:   "58",
				"1.8cm + 2mm":           "0.7874",
			},
		},
		{
			name: "quantities that do not go together",
			text: `let a = 3in + 45deg
let b = 3in * 2in
let c = 3in / 0
let d = 45deg / 2in
let e = abs(1, 2)
let f = round(3)
let g = sqrt(2)
let h = round(3, 0)
let i = "three"
let j = min(1in, 20deg)
`,
			found: []string{
				"`sqrt` is no function",
				"a length and an angle cannot be taken together",
				"a length times a length is no size",
				"nothing can be divided by 0",
				"an angle divided by a length is no size",
				"`abs` takes one value",
				"`round` takes a value and a step",
				"a step must be more than 0",
				"a number is wanted here, but this is a text",
				"a length and an angle cannot be taken together",
			},
		},
		{
			name: "what leans on a fault is silent",
			text: `let a = nothing + 1
let b = a + 1
let c = b + 3lb
let d = c + no-such
check "silent" a + b > c
`,
			found: []string{"nothing is called `nothing`", "nothing is called `no-such`"},
		},
		{
			name: "a setting gets a quantity of another kind",
			text: `wood oak { species "white oak" }
let slant = 45deg
let heavy = 3lb
part a { of oak ; long slant ; wide 3 ; thick 1 }
part b { of oak ; long 30 ; wide 3 ; thick 1 ; boards 2 1/2 }
part c { of oak ; long 30 ; wide 3 ; thick 1 ; boards heavy }
part d { of oak ; long 2000m ; wide 3 ; thick 1 ; bevel 3 }
part e { of oak ; long 45deg ; wide 3 ; thick 1 }
`,
			found: []string{
				"a whole number from 1 up is wanted here",
				"more than 1 km",
				"`bevel` wants an angle",
				"a size is wanted here, such as `16 13/16`, but this is an angle",
				"a size is wanted here, such as `16 13/16`, but this is an angle",
				"a number of things is wanted here, such as `4`, but this is a weight",
			},
		},
		{
			name:  "subtraction has blanks on both sides",
			text:  "let play = 1/2\nlet a = 3 + play-1\n",
			found: []string{"nothing is called `play-1`"},
		},
		{
			name: "a misspelt name is answered once wherever it is said once",
			text: `wood oak { species "white oak" }
frame f { of oak ; wide 20 ; high 30 ; thick 7/8 ; joint tenon thick 5/16 long tenno ; each stile, rail thick plya
  across { stile a 2 ; down { rail t 2 ; open ; rail b 2 } ; stile c 2 } }
`,
			found: []string{"nothing is called `tenno`", "nothing is called `plya`"},
		},
	})
}

// What cannot be worked out is counted.
func TestUnchecked(t *testing.T) {
	p, _ := resolveText(layoutMaterials + `let a = nothing + 1
frame f { of ash ; wide 20 ; high 30 ; thick 1 ; across { stile l 2 ; down { rail t 2 cut a ; open } ; stile r 2 * a } }
check "silent" f.t.long > 3
`)
	if p.Unchecked != 3 { // cut, the stile's number, and the check
		t.Errorf("%d unchecked", p.Unchecked)
	}
}

// A name that is also a setting stands in brackets where a setting could be meant.
func TestNamesThatAreSettings(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "in brackets its value is meant",
			text: `let wide = 3
frame f { of ash ; wide 20 ; high 30 ; thick 7/8 ; across { stile a (wide) ; open ; stile b 3 wide } }
`,
			sizes: byHand{"f.a": "30 x 3 x 7/8"},
			found: []string{"`wide` wants a size: write `wide 2 1/4`"},
		},
		{
			name:  "after the setting it is its value",
			text:  "let wide = 3\npart a { of ash 1 ; wide wide ; long 2 * wide }\n",
			sizes: byHand{"a": "6 x 3 x 1"},
		},
	})
}

// A check compares within half a mark of the tape, or as it says.
func TestChecks(t *testing.T) {
	tests := []struct {
		relation string
		holds    bool
	}{
		{"1 == 1", true},
		{"1in == 1 1/64", true},  // half of 1/32
		{"1in == 1 1/63", false}, // a little more
		{"1in != 1 1/64", false}, //
		{"1in == 1 1/16 within 1/16", true},
		{"1in == 1 1/8 within 1/16", false},
		{"1in > 1", false},
		{"1in >= 1", true},
		{"3 * (1in / 3) >= 1", true}, // 1/3 in is no whole number of nanometres
		{"3 * (1in / 3) > 1", false},
		{"1in < 1 1/64", true}, // only == allows half a mark
		{"2 == 2 1/64", false}, // plain numbers are exact
		{"45deg < 46deg", true},
		{"25.4mm == 1", true},
		{"min(2, 1in) <= 1", true},
	}
	for _, test := range tests {
		p, found := resolveText(`check "why" ` + test.relation)
		if len(found) > 0 || len(p.Checks) != 1 || !p.Checks[0].Known || p.Checks[0].Holds != test.holds {
			t.Errorf("%s: known %t, holds %t, want %t; found %q", test.relation, p.Checks[0].Known, p.Checks[0].Holds, test.holds, found)
		}
	}
	try(t, "", []trial{
		{
			name:  "sides that cannot be compared",
			text:  "check \"a\" 3in > 45deg\ncheck \"b\" 3in\ncheck \"c\" 3 > 2 > 1\n",
			found: []string{"", "", "a length and an angle cannot be taken together"},
		},
	})
}
