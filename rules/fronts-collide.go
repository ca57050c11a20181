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
with a cranked arm are made for that. The laps on both sides and a gap between them are no more than what stands between the openings: a
member, or the two sides of cabinets that are placed side by side, and what is between those. Fronts that have no member between them are
as far apart as their "reveal" says. Make the lap smaller, or the member wider.`,
	Sources: `Arithmetic. That two doors share a partition: makers' sheets of cup hinges. The gap is as it says.`,
	Sound: `Laps of 5/16 from both sides on a rail of 3/4, and 1/8 between them; two doors on a partition of 3/4 that lap it by 8.5 mm each; a lap beside an inset door;
doors of two cabinets that end 1 mm short of their sides.`,
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
	Check:   func(pass *Pass) { eachFront(pass, checkCollide) },
}

// checkCollide holds the laps of a front and of those beside it against what is between them.
func checkCollide(pass *Pass, said *onePer[drawerAt], n plan.Node) {
	p, it := pass.Plan, plan.It(n)
	fit, edges := plan.FrontOf(n)
	if fit.Kind.Is != "overlay" || !closed(it) {
		return
	}
	for _, e := range edges {
		for b := range plan.FrontsBeside(n, e.Side) {
			other := plan.It(b.Front)
			theirs, _ := plan.FrontOf(b.Front)
			inset := theirs.Kind.Is != "overlay"
			if !inset && !speaks(n, e, b) || !closed(other) {
				continue
			}
			apart := pass.Length(frontsApart, plan.PathOf(n))
			if inset {
				apart = 0 // it opens past the edge of the other
			}
			if !wood.Under(b.Apart, apart-p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(n),
				Span:    standing(it.Name.Span, e.Less.Span),
				Working: gapBetween(p, n, e, b).Versus(apart, "wanted at least").Working(),
			}
			both := titled(it) + " and " + titled(other)
			if titled(it) == titled(other) { // of two cabinets that are alike
				both = it.Word + " " + quote(plan.PathOf(n)) + " and " + other.Word + " " + quote(plan.PathOf(b.Front))
			}
			switch {
			case inset:
				f.Message = fmt.Sprintf("%s laps %s over the opening of %s, which is inset and does not open", titled(it), exact(p, -b.Apart), titled(other))
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let it lap %s at most", p.Show(p.Tape.Floor(e.Lap().Length+b.Apart)))}}
			case e.Shared:
				f.Message = fmt.Sprintf("the fronts of %s have %s between them: %s is wanted", both, exact(p, b.Apart), p.Show(apart))
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make the `reveal` between them %s", p.Show(apart))}}
			default:
				over := "one another's case"
				if len(b.Between) == 1 {
					over = called(plan.It(b.Between[0]))
				}
				f.Message = fmt.Sprintf("the fronts of %s lap over %s from both sides, and run %s into one another", both, over, exact(p, -b.Apart))
				if b.Apart >= 0 {
					f.Message = fmt.Sprintf("the fronts of %s lap over %s from both sides, and have %s between them: %s is wanted", both, over, exact(p, b.Apart), p.Show(apart))
				}
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let each lap %s at most", p.Show(p.Tape.Floor((b.Apart+e.Lap().Length+b.Edge.Lap().Length-apart)/2)))}}
			}
			if b.Apart > 0 {
				f.Severity = diag.Warning
			}
			said.add(drawerAt{f.Span, it.In.Build, e.Lap().Length + b.Edge.Lap().Length, b.Apart}, f)
		}
	}
}

// speaks reports whether of two fronts beside one another it is this one of which a finding speaks: the one that
// laps more; else the first, or of a door and a drawer the drawer.
func speaks(n plan.Node, e plan.Edge, b plan.Beside) bool {
	it, other := plan.It(n), plan.It(b.Front)
	switch {
	case !e.Shared && !wood.Same(e.Less.Length, b.Edge.Less.Length):
		return e.Less.Length < b.Edge.Less.Length
	case it.Word != other.Word:
		return it.Word == "drawer"
	case it.In == other.In && n != b.Front:
		return e.Side.Far()
	}
	return plan.PathOf(n) < plan.PathOf(b.Front) || n == b.Front && e.Side.Far()
}

// gapBetween writes down what is between two fronts: what stands there, less both laps.
func gapBetween(p *plan.Plan, n plan.Node, e plan.Edge, b plan.Beside) *plan.Paper {
	paper := p.Paper()
	if e.Shared {
		return paper.Start(b.Apart, "reveal between them")
	}
	for i, between := range b.Between {
		it := plan.It(between)
		size := it.Cell[e.Side.Axis()].Size
		if i == 0 {
			paper.Start(size, called(it))
		} else {
			paper.Plus(size, called(it))
		}
	}
	for _, lap := range []struct {
		edge plan.Edge
		of   *plan.Item
	}{{e, plan.It(n)}, {b.Edge, plan.It(b.Front)}} {
		if l := lap.edge.Lap().Length; l < 0 {
			paper.Plus(-l, "reveal of "+called(lap.of))
		} else {
			paper.Minus(l, "lap of "+called(lap.of))
		}
	}
	return paper.Equals("between the fronts")
}
