package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var endWithoutMate = &Rule{
	Name: "end-without-mate", Group: Hygiene, Severity: diag.Error,
	Summary: "an end that is to be joined faces an opening or a panel",
	Doc: `A shelf that is housed in a divider needs the divider. In the drawing it ends where an open bay begins, so that its joint would hang in the
air; or it ends at a panel, which floats in its grooves and holds nothing.

Put a member between: a divider, a muntin, a post. Where the end does stand free, or is fastened in another way, say "end right joint
butt", or say with "fix" what holds it.`,
	Sources: `Common practice, no source. That a panel stands free in its frame: W. Noyes, Handwork in Wood, 1910, ch. VIII.`,
	Sound: `A foot that stands over a space, a shelf between dividers, an end that is butted on purpose, a member that is fixed
on.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
case books {
  of oak 3/4
  wide 40 ; high 30 ; deep 11
  joint housing deep 1/4
  across {
    side left
    down { open upper ; shelf middle ; open lower }
    open bay 16
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
case books {
  of oak 3/4
  wide 40 ; high 30 ; deep 11
  joint housing deep 1/4
  across {
    side left
    down { open upper ; shelf middle ; open lower }
    divider between
    open bay 16
    side right
  }
}
`,
	Check: func(pass *Pass) {
		fixed := make(map[any]bool)
		for _, f := range pass.Plan.Fixes {
			if f.A.To != nil {
				fixed[f.A.To.Is] = true
			}
		}
		for e := range ends(pass.Plan) {
			m, ok := e.Of.(*plan.Member)
			if !ok || len(e.Mates) > 0 || e.Joint.Kind.Is == plan.Butt || e.Joint.Kind.Is == "" || fixed[m] {
				continue
			}
			faces, holds := emptyFace(e, saidForEnd(m, e))
			if holds {
				continue
			}
			it := plan.It(faces)
			f := diag.Finding{
				Subject: plan.PathOf(m),
				Span:    m.Name.Span,
				Message: fmt.Sprintf("the %s end of %s has a %s joint, but ends at %s, which holds none: put a member between", e.Side, titled(&m.Item), e.Joint.Kind.Is, titled(it)),
				Notes:   []diag.Note{{Span: it.Span, Message: titled(it) + " stands here"}, {Span: e.Joint.Span, Message: "the joint is said here"}},
				Fixes: []diag.Fix{
					{Title: "put a divider, a post or a muntin between"},
					{Title: fmt.Sprintf("say `end %s joint butt` where it is held in another way", e.Side)},
				},
			}
			if _, panel := faces.(*plan.Panel); panel {
				f.Message = fmt.Sprintf("the %s end of %s has a %s joint, but ends at %s, which floats and holds none: put a member between", e.Side, titled(&m.Item), e.Joint.Kind.Is, titled(it))
			}
			pass.Report(f)
		}
	},
}

// saidForEnd reports whether a joint is said for that very end.
func saidForEnd(m *plan.Member, e *plan.End) bool {
	for _, j := range m.EndJoints {
		if j.End.Is == e.Side.String() {
			return true
		}
	}
	return false
}

// emptyFace is what an end without a mate faces. holds is true where that may be meant: a joint that is the rule for
// all ends says nothing of one that stands over a space, or upright over an opening.
func emptyFace(e *plan.End, said bool) (faces plan.Node, holds bool) {
	faces = e.Faces
	for {
		l, ok := faces.(*plan.List)
		if !ok {
			break
		}
		if len(l.Items) == 0 {
			return faces, true
		}
		faces = l.Items[0]
		if l.Axis == e.Side.Axis() && !e.Side.Far() {
			faces = l.Items[len(l.Items)-1]
		}
	}
	level := e.Side.Axis() != plan.Down
	switch n := faces.(type) {
	case *plan.Space:
		return faces, !said && (n.Word == "space" || !level)
	case *plan.Door, *plan.Drawer, *plan.Glass:
		return faces, !said && !level
	case *plan.Panel:
		return faces, n.Word == "back" || gluedSheet(n)
	}
	return faces, true
}
