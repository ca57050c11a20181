package rules

// What the rules about the sizes of panels and backs share.

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// pane is the size of a panel or a back along one axis, and its place there.
type pane struct {
	*plan.Panel
	axis               plan.Axis
	said, worked, gap  plan.Length
	near, far, bottoms wood.Length // into what holds it at each side, and from wall to wall
}

// paneOf is a pane whose place is known; false where it is not.
func paneOf(n *plan.Panel, axis plan.Axis) (pane, bool) {
	s := pane{Panel: n, axis: axis, said: n.Wide, worked: n.Worked.Wide, gap: n.GapUsed.Across}
	if axis == plan.Down {
		s.said = n.High
	}
	if n.Grain == axis {
		s.worked, s.gap = n.Worked.Long, n.GapUsed.Deep
	}
	near, far := n.Into(plan.Side(axis*2)), n.Into(plan.Side(axis*2+1))
	s.near, s.far = near.Length, far.Length
	s.bottoms = n.Cell[axis].Size + s.near + s.far
	return s, n.Cell[axis].Sized && near.Known() && far.Known()
}

// held reports whether it reaches into something at both sides.
func (s pane) held() bool { return s.near > 0 && s.far > 0 }

// setting is what a plan calls its size.
func (s pane) setting() string {
	if s.axis == plan.Down {
		return "high"
	}
	return "wide"
}

// fault is what is wrong with a stated size on the day that it is cut; "" if nothing is. Where the
// plan says no gap, the piece must only have least to spare, and must reach into what holds it.
func (s pane) fault(pass *Pass, least *Figure) string {
	p := pass.Plan
	if s.said.How != plan.Written {
		return ""
	}
	what := titled(&s.Item) + " is " + p.ShowSaid(s.said) + " " + s.setting()
	spare := wood.Length(0)
	if s.held() {
		spare = pass.Length(least, plan.PathOf(s.Panel))
	}
	switch {
	case s.held() && !wood.Over(s.said.Length, s.Cell[s.axis].Size+p.Tape.Tolerance()):
		return what + ", which is no more than shows: nothing reaches into what holds it"
	case s.gap.How == plan.Written && s.worked.Known() && !agree(p, s.said.Length, s.worked.Length):
		return fmt.Sprintf("%s but must be %s with the gap that is stated", what, exact(p, s.worked.Length))
	case s.gap.How == plan.Written || s.said.Length <= s.bottoms-spare || agree(p, s.said.Length, s.bottoms-spare):
		return ""
	case !s.held():
		return fmt.Sprintf("%s, but its place is %s", what, exact(p, s.bottoms))
	}
	return fmt.Sprintf("%s, but there is only %s from wall to wall, and it needs some room", what, exact(p, s.bottoms))
}

// place starts a working with how the pane's place comes about, from wall to wall.
func (s pane) place(p *plan.Plan) *plan.Paper {
	paper := room(p, s.Panel, s.axis, "clear")
	if s.near+s.far > 0 {
		paper.Plus(s.near, "into "+edgeMate(s.Panel, s.axis, 0)).Plus(s.far, "into "+edgeMate(s.Panel, s.axis, 1)).Equals("there is")
	}
	return paper
}

// mend is the fix that gives the pane the size that its place and its gap make.
func (s pane) mend(p *plan.Plan) []diag.Fix {
	alone := s.In.Build == nil && s.Row == ""
	if s.Made.On {
		return stillBoard(p, s.said.Length-s.worked.Length, [...]string{"width", "height"}[s.axis], s.setting(),
			s.said.Span, s.worked.Length, alone, s.axis != s.Grain && solid(s.Of.Material.To))
	}
	write := cutTo(p, s.said.Span, s.worked.Length)
	fix := diag.Fix{Title: "write `" + s.setting() + " " + write + "`, or leave `" + s.setting() + "` out"}
	if alone {
		fix.Edits = []diag.Edit{{Span: s.said.Span, Text: write}}
	}
	return []diag.Fix{fix}
}

// checkPanes holds the stated sizes of all panels, or of all backs, against their places: what is
// clear between the members, what each edge goes in, and the gap.
func checkPanes(pass *Pass, word string, least *Figure) {
	p := pass.Plan
	for n := range plan.AllOf[*plan.Panel](p) {
		if n.Word != word {
			continue
		}
		for axis := plan.Across; axis <= plan.Down; axis++ {
			s, ok := paneOf(n, axis)
			if !ok {
				continue
			}
			fault := s.fault(pass, least)
			if fault == "" {
				continue
			}
			f := diag.Finding{Subject: plan.PathOf(n), Span: standing(n.Span, s.said.Span), Message: fault}
			paper := s.place(p)
			if s.worked.Known() {
				paper.Minus(s.gap.Length, gapOf(s.gap)).Equals("fits")
				f.Fixes = s.mend(p)
			}
			f.Working = paper.Versus(s.said.Length, "stated").Working()
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

// solid reports whether a material is wood, and no sheet; where nothing is said it may be.
func solid(m *plan.Material) bool { return m == nil || m.Kind == plan.Solid }
