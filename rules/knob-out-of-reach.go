package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

const twoBodies = `knob star { thick 1/4 ; long 2 }
case nest { wide 12 ; high 30 ; deep 12 ; across { side left 3/4 ; open ; side right 3/4 } }
assembly cupboard {
  wide 42 3/4 ; high 30 ; deep 12 ; apart by-hand
  across {
    case beside part nest
    side middle 3/4
    down { open ; shelf plank 3/4 { joint knob star count 2 } ; open }
    side outer 3/4
  }
}
`

var knobOutOfReach = &Rule{
	Name: "knob-out-of-reach", Group: Moving, Severity: diag.Error,
	Summary: "a knob, a bolt or a screw goes in from a side on which something stands by then",
	Doc: `A knob goes through one part into the end of another, and is turned from the outside of the first. What was put in before on that
side leaves no room for a hand, or for a driver, and the joint cannot be drawn up.

Put in what is in the way afterwards: change the order of "stand", "fit" and "hang" in the steps. Or turn the joint round.`,
	Sources: `Geometry.`,
	Sound: `Knobs through a side that is free, or beside which something is put later; steps that do not name what is in the way; a joint of which
both parts and what is beside them come in one step.`,
	Bad: twoBodies + `steps "in the room" { stand cupboard.beside ; stand cupboard.middle, cupboard.outer ; fit cupboard.plank }
`,
	Good: twoBodies + `steps "in the room" { stand cupboard.middle, cupboard.outer ; fit cupboard.plank ; stand cupboard.beside }
`,
	Check: func(pass *Pass) {
		order := putTogether(pass.Plan)
		if len(order) == 0 {
			return
		}
		for _, a := range pass.Plan.Assemblies {
			if a.Apart.Is == "" {
				continue
			}
			for _, e := range a.Ends {
				if e == nil || e.Joint == nil {
					continue
				}
				what, ok := map[string]string{plan.Knob: "a knob", plan.BoltJoint: "a bolt", plan.ScrewJoint: "a screw"}[e.Joint.Kind.Is]
				if !ok {
					continue
				}
				of := plan.It(e.Of)
				for _, mate := range hosts(a, e) {
					beyond := againstMate(mate, e)
					drawn, first := order[e.Of], order[beyond]
					if other := order[mate]; other.at > drawn.at {
						drawn = other
					}
					if beyond == nil || order[e.Of].at == 0 || first.at == 0 || first.at >= drawn.at {
						continue
					}
					pass.Report(diag.Finding{
						Subject: plan.PathOf(e.Of),
						Span:    drawn.span,
						Message: fmt.Sprintf("%s into %s goes in through %s, and %s stands before it by then", what, titled(of), titled(plan.It(mate)), titled(plan.It(beyond))),
						Notes:   []diag.Note{{Span: first.span, Message: titled(plan.It(beyond)) + " is put in here"}, {Span: e.Joint.Span, Message: "how they are joined is said here"}},
						Fixes:   []diag.Fix{{Title: fmt.Sprintf("put %s in after %s", titled(plan.It(beyond)), titled(of))}},
					})
					break
				}
			}
		}
	},
}

// hosts are the things of an assembly that an end meets: its mates, or what they are drawn in.
func hosts(a *plan.Assembly, e *plan.End) []plan.Node {
	if placed, ok := e.Faces.(*plan.Placed); ok {
		return []plan.Node{placed}
	}
	var all []plan.Node
	for _, m := range e.Mates {
		if m.In == a {
			all = append(all, m)
		}
	}
	return all
}

// againstMate is what lies against the outside of a mate, over against an end: a board, or a case; nil where nothing is
// known to.
func againstMate(mate plan.Node, e *plan.End) plan.Node {
	n := plan.Neighbour(mate, e.Side)
	switch n := n.(type) {
	case *plan.Member:
		if !n.Board() {
			return nil
		}
	case *plan.Placed:
		if n.Part.To == nil || n.Part.To.Kind != plan.Case {
			return nil
		}
	default:
		return nil
	}
	end, over := plan.It(e.Of).Cell, plan.It(n).Cell
	for axis := range end {
		if plan.Axis(axis) == e.Side.Axis() {
			continue
		}
		if !end[axis].Known() || !over[axis].Known() || end[axis].From < over[axis].From || end[axis].To() > over[axis].To() {
			return nil
		}
	}
	return n
}
