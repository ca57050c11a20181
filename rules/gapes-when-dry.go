package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	gapeMost = &Figure{
		Name: "most", Why: "how wide the gap of an inset door is at its driest", Basis: SecondHand,
		Source: "1/8 (3 mm): trade pages, 1/16 to 3/32 at cabinets and 1/8 at doors", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	gapeMore = &Figure{
		Name: "more", Why: "by how much a gap becomes wider than it is drawn before that is seen", Basis: Practice,
		Source: "1/16 (1.5 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
	}
)

var gapesWhenDry = &Rule{
	Name: "gapes-when-dry", Group: Doors, Severity: diag.Advice,
	Summary: "an inset door of solid wood shrinks until it gapes",
	Doc: `A door that is fitted tight in summer shows daylight in winter. It still opens and shuts, and looks as if it were cut too small.

Make a frame and panel of a slab, use wood that is sawn quarter, or fit it when the air is dry. The gaps at both edges are taken
together, since they are planed until they are alike; what the plan itself draws wide is not held against it. The rule is asked where
the plan states how dry it gets.`,
	Sources: movementSource + `
How wide a gap may be is as the figures say.`,
	Sound: `A frame of the same wood; a door whose gap is drawn 1/8 wide; a slab of sheet stock; a slab that laps over.`,
	Bad: `climate { shop 9% ; dry 5% ; humid 9% }
wood oak { species "red oak" ; sawn flat }
case cupboard {
  of oak 3/4
  wide 19 5/8 ; high 30 ; deep 12
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left } ; side right }
}
`,
	Good: `climate { shop 9% ; dry 5% ; humid 9% }
wood oak { species "red oak" ; sawn quarter }
case cupboard {
  of oak 3/4
  wide 13 5/8 ; high 30 ; deep 12
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left } ; side right }
}
`,
	Figures: []*Figure{gapeMost, gapeMore},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range p.Leaves() {
			for axis := plan.Across; axis <= plan.Down; axis++ {
				near, nearBounded := freeGap(d, plan.Side(axis*2))
				far, farBounded := freeGap(d, plan.Side(axis*2)+1)
				if !nearBounded || !farBounded || near <= 0 || far <= 0 || d.Edges[axis*2].Shared || d.Edges[axis*2+1].Shared {
					continue
				}
				paper := p.Paper().Start(near, edgeOf(d.Edges[axis*2], d.Hang.Is)).Plus(far, edgeOf(d.Edges[axis*2+1], d.Hang.Is))
				shrinks, known := yearly(p, d, plan.Side(axis*2)+1, false, paper)
				each := (near + far - shrinks) / 2
				most := max(pass.Length(gapeMost, plan.PathOf(d)), (near+far)/2+pass.Length(gapeMore, plan.PathOf(d)))
				if !known || shrinks >= 0 || !wood.Over(each, most) || binds(pass, d, axis) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: d.Span,
					Message: fmt.Sprintf("%s shrinks %s %s, and gapes by %s at each edge when it is driest", titled(&d.Item), exact(p, -shrinks),
						growing(d, axis), exact(p, each)),
					Working: paper.Equals("gaps at its driest").Over(2, "edges").Equals("each").Versus(most, "at most").Working(),
					Fixes:   []diag.Fix{{Title: "make a frame with a panel of it, or use wood that is sawn quarter"}},
				})
			}
		}
	},
}
