package rules

// What the rules about the sizes of panels and backs share.

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// checkPanes holds the stated sizes of all panels, or of all backs, against their places: what is
// clear between the members, what each edge goes in, and the gap. Where the plan says no gap,
// the piece must only have least to spare, and must reach into what holds it.
func checkPanes(pass *Pass, word string, least *Figure) {
	p := pass.Plan
	for n := range plan.AllOf[*plan.Panel](p) {
		if n.Word != word {
			continue
		}
		for axis := plan.Across; axis <= plan.Down; axis++ {
			said, worked, gap := n.Wide, n.Worked.Wide, n.GapUsed.Across
			if axis == plan.Down {
				said = n.High
			}
			if n.Grain == axis {
				worked, gap = n.Worked.Long, n.GapUsed.Deep
			}
			near, far := n.Into(plan.Side(axis*2)), n.Into(plan.Side(axis*2+1))
			if said.How != plan.Written || !n.Cell[axis].Sized || !near.Known() || !far.Known() {
				continue
			}
			clear := n.Cell[axis].Size
			bottoms := clear + near.Length + far.Length
			held := near.Length > 0 && far.Length > 0
			setting, wide := "wide", "wide"
			if axis == plan.Down {
				setting, wide = "high", "high"
			}
			spare := wood.Length(0)
			if held {
				spare = pass.Length(least, plan.PathOf(n))
			}
			f := diag.Finding{Subject: plan.PathOf(n), Span: standing(n.Span, said.Span)}
			what := titled(&n.Item) + " is " + p.ShowSaid(said) + " " + wide
			switch {
			case held && !wood.Over(said.Length, clear+p.Tape.Tolerance()):
				f.Message = what + ", which is no more than shows: nothing reaches into what holds it"
			case gap.How == plan.Written && worked.Known() && !agree(p, said.Length, worked.Length):
				f.Message = fmt.Sprintf("%s but must be %s with the gap that is stated", what, exact(p, worked.Length))
			case gap.How != plan.Written && said.Length > bottoms-spare && !agree(p, said.Length, bottoms-spare):
				f.Message = fmt.Sprintf("%s, but there is only %s from wall to wall, and it needs some room", what, exact(p, bottoms))
				if !held {
					f.Message = fmt.Sprintf("%s, but its place is %s", what, exact(p, bottoms))
				}
			default:
				continue
			}
			paper := room(p, n, axis, "clear")
			if held || near.Length+far.Length > 0 {
				paper.Plus(near.Length, "into "+edgeMate(n, axis, 0)).Plus(far.Length, "into "+edgeMate(n, axis, 1)).Equals("there is")
			}
			if worked.Known() {
				paper.Minus(gap.Length, gapOf(gap)).Equals("fits")
				write := cutTo(p, said.Span, worked.Length)
				fix := diag.Fix{Title: "write `" + setting + " " + write + "`, or leave `" + setting + "` out"}
				if n.In.Build == nil && n.Row == "" && !n.Made.On {
					fix.Edits = []diag.Edit{{Span: said.Span, Text: write}}
				}
				if !n.Made.On {
					f.Fixes = []diag.Fix{fix}
				}
			}
			f.Working = paper.Versus(said.Length, "stated").Working()
			pass.Report(f)
		}
	}
}

func edgeMate(n *plan.Panel, axis plan.Axis, far int) string {
	e := n.Edges[int(axis)*2+far]
	if e == nil {
		return "its mate"
	}
	return matesOf(e)
}

func gapOf(gap plan.Length) string {
	switch gap.How {
	case plan.Written:
		return "gap"
	case plan.Derived:
		return "gap for the seasons"
	}
	return "gap, unsaid"
}
