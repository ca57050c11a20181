package plan_test

// Sizes that wait for one another: a loop is reported once, at its first place, and shown
// whole; what only looks like one is worked out.

import (
	"fmt"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

func TestNoLoops(t *testing.T) {
	try(t, layoutMaterials, []trial{
		{
			name: "a stated outside waits for nothing",
			text: `case c { of ply ; wide 30 ; high 20 ; deep c.wide / 2 ; joint dado deep 1/4
  across { side left ; open bay c.wide / 3 ; divider d ; open rest ; side right } }
`,
			sizes: byHand{
				"c":      "30 x 20 x 15",
				"c.bay":  "10 x 20 x 15",
				"c.rest": "17 3/4 x 20 x 15", // 30 - 3 x 3/4 - 10
			},
		},
		{
			name: "a stated width of a rail waits for nothing, and the rail is still worked out",
			text: `frame f { of ash ; wide 20 ; high 30 ; thick 7/8 ; joint tenon thick 5/16 long 1
  across { stile a 2 ; down { rail head 2 ; open bay ; rail foot f.head.wide + 1 } ; stile b f.a.wide } }
`,
			sizes: byHand{
				"f.head": "18 x 2 x 7/8", // 20 - 2 x 2 + 2 x 1
				"f.foot": "18 x 3 x 7/8",
				"f.bay":  "16 x 25 x 7/8",
				"f.b":    "30 x 2 x 7/8",
			},
		},
		{
			name: "a stated opening waits for nothing",
			text: `case c { of ply ; wide 30 ; high 20 ; deep 15 ; joint dado deep 1/4
  across { side left ; open bay 10 ; divider d ; open like c.bay.wide ; divider e ; open rest ; side right } }
`,
			sizes: byHand{"c.like": "10 x 20 x 15", "c.rest": "7 x 20 x 15"}, // 30 - 4 x 3/4 - 20
		},
		{
			name: "one axis may lean on another",
			text: `case c { of ply ; wide 30 ; high c.bay.wide + 1 1/2 ; deep 15 ; joint dado deep 1/4
  across { side left ; down { top t ; open bay ; bottom b } ; side right } }
`,
			sizes: byHand{"c": "30 x 30 x 15", "c.bay": "28 1/2 x 28 1/2 x 15"},
		},
		{
			name: "two pieces may lean on each other's stated sizes",
			text: `case a { of ply ; wide 30 ; high b.high ; deep 15 ; across { side l ; open ; side r } }
case b { of ply ; wide a.wide ; high 20 ; deep a.deep + 1 ; across { side l ; open ; side r } }
`,
			sizes: byHand{"a": "30 x 20 x 15", "b": "30 x 20 x 16"},
		},
		{
			name: "a part's size in the frame that uses it",
			text: `part leg { of ash ; size 28 x 2 x 2 }
frame f { of ash ; wide 20 + leg.wide ; high leg.long ; thick 1 ; joint tenon thick 5/16 long 1
  across { leg a part leg ; down { apron top 4 ; space } ; leg b part leg } }
`,
			sizes: byHand{"f": "22 x 28 x 1", "f.top": "20 x 4 x 1"}, // 22 - 2 x 2 + 2 x 1
		},
	})
}

func TestLoops(t *testing.T) {
	tests := []struct {
		name, text string
		at         string   // where the finding stands
		through    []string // where its notes stand
	}{
		{"a let of itself", "let a = a + 1\n", "a", nil},
		{"two lets", "let a = b\nlet b = a\n", "a", []string{"b"}},
		{"three lets, asked for in the middle", "let z = c\nlet a = b\nlet b = c\nlet c = a\n", "a", []string{"b", "c"}},
		{"an outside of itself", "frame f { wide f.wide }\n", "f.wide", nil},
		{
			"a share of itself",
			"case c { of ply ; wide 30 ; high 20 ; deep 15 ; across { side l ; open a c.b.wide ; divider d ; open b ; side r } }\n",
			"c",
			[]string{"c.b.wide"},
		},
		{
			"two pieces and a let",
			"let play = g.wide\nframe f { wide play ; high 2 }\nframe g { wide f.wide ; high 2 }\n",
			"play",
			[]string{"f.wide", "play"},
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			tree, faults := lang.Parse(diag.NewFile("text.plan", test.text+layoutMaterials))
			_, more := plan.Resolve(tree, nil)
			faults = append(faults, more...)
			if len(faults) != 1 || faults[0].Rule != plan.Loop {
				for _, f := range faults {
					t.Error(f.Message)
				}
				t.Fatal("want one loop")
			}
			var through []string
			for _, n := range faults[0].Notes {
				through = append(through, n.Span.Text())
			}
			if at := faults[0].Span.Text(); at != test.at || fmt.Sprint(through) != fmt.Sprint(test.through) {
				t.Errorf("%q by way of %q, want %q by way of %q", at, through, test.at, test.through)
			}
		})
	}
}

// A long chain of lets is no loop, and no reason to fail.
func TestLongChain(t *testing.T) {
	var text strings.Builder
	const n = 50_000
	for i := range n {
		fmt.Fprintf(&text, "let a%d = a%d + 1\n", i, i+1)
	}
	fmt.Fprintf(&text, "let a%d = 1\n", n)
	p, found := resolveText(text.String())
	if len(found) > 0 || p.Lets[0].Value.Float64() != n+1 {
		t.Errorf("%v, found %q", p.Lets[0].Value.Float64(), found)
	}
}
