package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var nearlyInLine = &Figure{
	Name: "nearly", Why: "how far two edges are out of line that were meant to be in line", Basis: Practice,
	Source: "1/2 (12 mm)", Dim: lang.Length, Length: wood.Inch / 2, Metric: 12 * wood.Millimetre,
}

var frontsOutOfLine = &Rule{
	Name: "fronts-out-of-line", Group: Doors, Severity: diag.Advice,
	Summary: "the edges of two fronts side by side are nearly in line, and not quite",
	Doc: `A door that laps the bottom by 5/8 beside a stack of drawers that laps it by 5/16 works, and looks wrong from the far end of the room: the
eye runs along the lower edges of a row of fronts, and stops at the step.

Give fronts that stand side by side the same lap at the top and at the bottom: say it once, of "each" door and of "each" drawer. Edges that are
farther apart are meant to be so, and edges that meet another front are left alone.`,
	Sources: `Common practice, no source.`,
	Sound: `Fronts whose edges are in line though they lap members of unlike thickness; a short door beside a tall one; gaps of two stacks that are
not in line; an inset front beside one that laps.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of ply
  joint dado deep 1/4
  each door { leaf ply ; fit overlay 5/16 bottom 5/8 }
  down { top head ; across { side left ; door near { hang left } ; divider middle ; door far { hang right ; fit overlay bottom 3/8 } ; side right } ; bottom floor }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
case cupboard {
  wide 40 ; high 30 ; deep 12
  of ply
  joint dado deep 1/4
  each door { leaf ply ; fit overlay 5/16 bottom 5/8 }
  down { top head ; across { side left ; door near { hang left } ; divider middle ; door far { hang right } ; side right } ; bottom floor }
}
`,
	Figures: []*Figure{nearlyInLine},
	Check:   func(pass *Pass) { eachFront(pass, checkInLine) },
}

// checkInLine holds the upper and the lower edge of a front against those of the fronts at its sides. Of two the one is
// told that reaches farther.
func checkInLine(pass *Pass, said *onePer[drawerAt], n plan.Node) {
	p, it := pass.Plan, plan.It(n)
	fit, edges := plan.FrontOf(n)
	if fit.Kind.Is != "overlay" || !closed(it) {
		return
	}
	for side := plan.Left; side <= plan.Right; side++ {
		for b := range plan.FrontsBeside(n, side) {
			other := plan.It(b.Front)
			theirs, those := plan.FrontOf(b.Front)
			if theirs.Kind.Is != "overlay" || other.In != it.In || !closed(other) {
				continue
			}
			for end := plan.Upper; end <= plan.Lower; end++ {
				reaches := farther(n, b.Front, edges[end], those[end])
				if !wood.Over(reaches, p.Tape.Tolerance()) || wood.Over(reaches, pass.Length(nearlyInLine, plan.PathOf(n))) {
					continue
				}
				f := diag.Finding{
					Subject: plan.PathOf(n), Span: standing(it.Name.Span, edges[end].Less.Span),
					Message: fmt.Sprintf("%s reaches %s farther %s than %s beside it: their edges are nearly in line, and not quite", titled(it), exact(p, reaches),
						[...]string{"up", "down"}[end-plan.Upper], titled(other)),
					Working: p.Paper().Start(endsAt(n, edges[end]), "from the top of "+plan.PathOf(it.In)+" to the edge of "+called(it)).Versus(endsAt(b.Front, those[end]), "to that of "+called(other)).Working(),
					Fixes:   []diag.Fix{{Title: "let both end in one line"}},
				}
				said.add(drawerAt{f.Span, it.In.Build, reaches, wood.Length(end)}, f)
			}
		}
	}
}

// farther is how much farther up or down one front reaches than another of its assembly; nought where one of them meets
// another front there, or ends with its case.
func farther(n, other plan.Node, edge, its plan.Edge) wood.Length {
	own, there := plan.It(n).Cell[plan.Down], plan.It(other).Cell[plan.Down]
	if edge.Shared || its.Shared || !own.Known() || !there.Known() || !edge.Less.Known() || !its.Less.Known() ||
		plan.Neighbour(n, edge.Side) == nil || plan.Neighbour(other, its.Side) == nil {
		return 0
	}
	if edge.Side == plan.Upper {
		return endsAt(other, its) - endsAt(n, edge)
	}
	return endsAt(n, edge) - endsAt(other, its)
}

// endsAt is how far below the top of its assembly the upper or the lower edge of a front is.
func endsAt(n plan.Node, edge plan.Edge) wood.Length {
	cell := plan.It(n).Cell[plan.Down]
	if edge.Side == plan.Upper {
		return cell.From + edge.Less.Length
	}
	return cell.To() - edge.Less.Length
}
