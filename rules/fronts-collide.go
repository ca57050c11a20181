package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var frontsApart = &Figure{
	Name: "apart", Why: "how far fronts that lap over one member are apart at least", Basis: SecondHand,
	Source: "1/16 (1.5 mm): reveals of 1/16 to 3/32 on trade pages", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
}

var frontsCollide = &Rule{
	Name: "fronts-collide", Group: Drawers, Severity: diag.Error,
	Summary: "two fronts lap over more of the member between them than it has",
	Doc: `Each front of a stack laps over the rails above and below it, and two of them share each rail: laps that were taken from the
rails at the outside, which they have to themselves, are too much there. The last front does not go on, or the one above it does not open.

The laps on both sides and a gap between them are no more than the member is thick. Make the lap smaller, or the member wider.`,
	Sources: `Arithmetic. The gap is as it says.`,
	Sound:   `Laps of 5/16 from both sides on a rail of 3/4, and 1/8 between them; a lap beside an inset door.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
slide ball { kind side-mount ; long 18 ; room 1/2 }
case chest {
  wide 21 1/2 ; high 15 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  each drawer {
    of oak 1/2 ; front oak 3/4 applied ; fit overlay 1/2 ; slide ball
    corner front dovetail slope 1:7 ; corner back dado deep 1/4
  }
  across { side left ; down { top head ; drawer upper ; shelf middle ; drawer lower ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
slide ball { kind side-mount ; long 18 ; room 1/2 }
case chest {
  wide 21 1/2 ; high 15 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  each drawer {
    of oak 1/2 ; front oak 3/4 applied ; fit overlay 5/16 ; slide ball
    corner front dovetail slope 1:7 ; corner back dado deep 1/4
  }
  across { side left ; down { top head ; drawer upper ; shelf middle ; drawer lower ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{frontsApart},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			for _, e := range d.Edges {
				between, other, ok := acrossFrom(d, e.Side)
				if _, drawer := other.node.(*plan.Drawer); !ok || drawer && !e.Side.Far() {
					continue // of two drawers the first says it
				}
				size := plan.It(between).Cell[e.Side.Axis()]
				apart := pass.Length(frontsApart, plan.PathOf(d))
				own, its := -e.Less.Length, -other.less.Length
				if !e.Less.Known() || !other.less.Known() || !size.Sized || own <= 0 || its <= 0 || !wood.Over(own+its+apart, size.Size+p.Tape.Tolerance()) {
					continue
				}
				it, left := plan.It(other.node), size.Size-own-its
				f := diag.Finding{
					Subject: plan.PathOf(d),
					Span:    standing(d.Name.Span, e.Less.Span),
					Message: fmt.Sprintf("the fronts of %s and %s lap over %s from both sides, and run %s into one another", titled(&d.Item), titled(it),
						called(plan.It(between)), exact(p, -left)),
					Working: p.Paper().Start(size.Size, called(plan.It(between))).Minus(own, "lap of "+called(&d.Item)).Minus(its, "lap of "+called(it)).
						Equals("between the fronts").Versus(apart, "wanted at least").Working(),
					Fixes: []diag.Fix{{Title: fmt.Sprintf("let each lap %s at most", p.Show(p.Tape.Floor((size.Size-apart)/2)))}},
				}
				if left >= 0 {
					f.Severity = diag.Warning
					f.Message = fmt.Sprintf("the fronts of %s and %s lap over %s from both sides, and have %s between them: %s is wanted", titled(&d.Item), titled(it),
						called(plan.It(between)), exact(p, left), p.Show(apart))
				}
				said.add(drawerAt{f.Span, d.In.Build, own + its, size.Size}, f)
			}
		}
		said.report(pass)
	},
}

// facing is a door or a drawer on the other side of a member, and what its edge there takes off its opening.
type facing struct {
	node plan.Node
	less plan.Length
}

// acrossFrom is the member at one side of a drawer, and the door or the drawer on the other side of it.
func acrossFrom(d *plan.Drawer, side plan.Side) (between *plan.Member, other facing, ok bool) {
	between, ok = plan.Neighbour(d, side).(*plan.Member)
	if !ok {
		return nil, other, false
	}
	switch n := plan.Neighbour(between, side).(type) {
	case *plan.Drawer:
		return between, facing{n, n.Edges[side.Opposite()].Less}, true
	case *plan.Door:
		return between, facing{n, n.Edges[side.Opposite()].Less}, true
	}
	return nil, other, false
}
