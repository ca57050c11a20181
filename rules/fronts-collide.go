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

Two doors on one partition share it in the same way: one of 19 mm takes 8.5 mm of each with 2 mm between them, and not 17 of both; hinges
with a cranked arm are made for that. The laps on both sides and a gap between them are no more than the member is thick. Make the lap smaller, or the member wider.`,
	Sources: `Arithmetic. That two doors share a partition: makers' sheets of cup hinges. The gap is as it says.`,
	Sound:   `Laps of 5/16 from both sides on a rail of 3/4, and 1/8 between them; two doors on a partition of 3/4 that lap it by 8.5 mm each; a lap beside an inset door.`,
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
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			checkCollide(pass, &said, d, d.Edges)
		}
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			checkCollide(pass, &said, d, d.Edges)
		}
		said.report(pass)
	},
}

// checkCollide holds the laps of a front and of those across from it against what is between them. Of two
// the first says it, of a door and a drawer the drawer.
func checkCollide(pass *Pass, said *onePer[drawerAt], n plan.Node, edges [4]plan.Edge) {
	p, it := pass.Plan, plan.It(n)
	for _, e := range edges {
		between, other, ok := acrossFrom(n, e.Side)
		if !ok || it.Word == other.Word && !e.Side.Far() || it.Word == "door" && other.Word == "drawer" {
			continue
		}
		size := between.Cell[e.Side.Axis()]
		apart := pass.Length(frontsApart, plan.PathOf(n))
		own, its := -e.Less.Length, -other.less.Length
		if !e.Less.Known() || !other.less.Known() || !size.Sized || own <= 0 || its <= 0 || !wood.Over(own+its+apart, size.Size+p.Tape.Tolerance()) {
			continue
		}
		left := size.Size - own - its
		f := diag.Finding{
			Subject: plan.PathOf(n),
			Span:    standing(it.Name.Span, e.Less.Span),
			Message: fmt.Sprintf("the fronts of %s and %s lap over %s from both sides, and run %s into one another", titled(it), titled(other.Item),
				called(&between.Item), exact(p, -left)),
			Working: p.Paper().Start(size.Size, called(&between.Item)).Minus(own, "lap of "+called(it)).Minus(its, "lap of "+called(other.Item)).
				Equals("between the fronts").Versus(apart, "wanted at least").Working(),
			Fixes: []diag.Fix{{Title: fmt.Sprintf("let each lap %s at most", p.Show(p.Tape.Floor((size.Size-apart)/2)))}},
		}
		if left >= 0 {
			f.Severity = diag.Warning
			f.Message = fmt.Sprintf("the fronts of %s and %s lap over %s from both sides, and have %s between them: %s is wanted", titled(it), titled(other.Item),
				called(&between.Item), exact(p, left), p.Show(apart))
		}
		said.add(drawerAt{f.Span, it.In.Build, own + its, size.Size}, f)
	}
}

// facing is a door or a drawer on the other side of a member, and what its edge there takes off its opening.
type facing struct {
	*plan.Item
	less plan.Length
}

// acrossFrom is the member at one side of a front, and the door or the drawer on the other side of it.
func acrossFrom(front plan.Node, side plan.Side) (between *plan.Member, other facing, ok bool) {
	between, ok = plan.Neighbour(front, side).(*plan.Member)
	if !ok {
		return nil, other, false
	}
	switch n := plan.Neighbour(between, side).(type) {
	case *plan.Drawer:
		return between, facing{&n.Item, n.Edges[side.Opposite()].Less}, true
	case *plan.Door:
		return between, facing{&n.Item, n.Edges[side.Opposite()].Less}, true
	}
	return nil, other, false
}
