package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var liftGrooveDeep = &Rule{
	Name: "lift-groove-deep", Group: Doors, Severity: diag.Error,
	Summary: "the groove for a leaf that is lifted out goes through what it is cut into, or nearly",
	Doc: `The upper groove has to be as deep as the lower one and a little more, and is easily drawn deeper than the board above has wood. What is left over it
breaks when the leaf is pushed up.

Make the lower groove shallower, and the upper one by as much; or lay a strip under the board above, and cut the groove into that as well. Less than 1/8
left is a warning.`,
	Sources: `As the figure says.`,
	Sound:   `A groove that leaves 1/8; a groove in a thick rail.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 3/4 bottom 3/8 } ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 5/8 bottom 3/8 } ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{lipLeast},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			if d.Grooves == nil {
				continue
			}
			for _, g := range []struct {
				side plan.Side
				deep plan.Length
			}{{plan.Upper, d.Grooves.Top}, {plan.Lower, d.Grooves.Bottom}} {
				m, ok := plan.Neighbour(d, g.side).(*plan.Member)
				if !ok || !g.deep.Known() || !m.Body[plan.Down].Known() {
					continue
				}
				left, least := m.Body[plan.Down].Size-g.deep.Length, pass.Length(lipLeast, plan.PathOf(d))
				if !wood.Under(left, least) {
					continue
				}
				f := diag.Finding{
					Subject: plan.PathOf(d), Span: d.Grooves.Span,
					Message: fmt.Sprintf("the groove for %s leaves %s of %s", titled(&d.Item), exact(p, left), called(&m.Item)),
					Working: p.Paper().Start(m.Body[plan.Down].Size, "thickness of "+called(&m.Item)).Minus(g.deep.Length, "groove").Equals("left").Versus(least, "wanted").Working(),
					Fixes:   []diag.Fix{{Title: "make both grooves shallower, or what they are cut into thicker"}},
				}
				if left > 0 {
					f.Severity = diag.Warning
				} else {
					f.Message = fmt.Sprintf("the groove for %s goes through %s", titled(&d.Item), called(&m.Item))
				}
				pass.Report(f)
				break
			}
		}
	},
}
