package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var noRoomToLower = &Rule{
	Name: "no-room-to-lower", Group: Moving, Severity: diag.Error,
	Summary: "what is lowered into its place comes after what lies above it",
	Doc: `What drops in is held above its place and lowered into it, as deep as its joint. Where a board lies right above it by then, it cannot be
lifted so far, and what was put in last has to come out again.

Put it in before what lies above it: change the order of "stand", "fit" and "hang" in the steps.`,
	Sources: `Geometry.`,
	Sound: `A back that drops in before the top is laid over it; a rail that drops in under a board that is well above it; steps that do not name
both.`,
	Bad: droppedIn + `steps "in the room" { stand box.left, box.right ; fit box.floor, box.roof ; fit box.rear }
`,
	Good: droppedIn + `steps "in the room" { stand box.left, box.right ; fit box.floor ; fit box.rear ; fit box.roof }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		order := putTogether(p)
		if len(order) == 0 {
			return
		}
		for _, a := range p.Assemblies {
			for n := range a.Nodes() {
				deep, ok := droppedBy(n)
				own, stated := order[n]
				if !ok || !stated {
					continue
				}
				above, gap := overhead(n, deep)
				before, known := order[above]
				if above == nil || !known || before.at >= own.at || !wood.Under(gap, deep) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(n),
					Span:    own.span,
					Message: fmt.Sprintf("%s is lowered %s into its place, and %s lies %s above it by then",
						titled(plan.It(n)), p.Show(deep), titled(plan.It(above)), aboveBy(p, gap)),
					Notes: []diag.Note{{Span: before.span, Message: titled(plan.It(above)) + " is put in here"}},
					Fixes: []diag.Fix{{Title: "put " + titled(plan.It(n)) + " in before " + titled(plan.It(above))}},
				})
			}
		}
	},
}

const droppedIn = `knob star { thick 1/4 ; long 2 }
case box {
  wide 30 ; high 30 ; deep 12 ; apart by-hand
  across {
    side left 3/4
    down {
      top roof 3/4 { joint knob star count 2 }
      behind { open ; back rear { thick 1/4 ; joint drop-in deep 3/8 } }
      bottom floor 3/4 { joint knob star count 2 }
    }
    side right 3/4
  }
}
`

// droppedBy is how far something is lowered into its place; false where it does not drop in.
func droppedBy(n plan.Node) (wood.Length, bool) {
	var joints []*plan.Joint
	switch n := n.(type) {
	case *plan.Member:
		for _, e := range n.Ends {
			if e != nil && e.Joint != nil {
				joints = append(joints, e.Joint)
			}
		}
	case *plan.Panel:
		joints = append(joints, n.Joint)
	}
	for _, j := range joints {
		if j != nil && j.Kind.Is == plan.DropIn && j.Deep.Known() {
			return j.Deep.Length, true
		}
	}
	return 0, false
}

// overhead is the member that lies over something in its layout, and how much is left between them: nothing, or
// what is open there. It is nil where none is known within reach.
func overhead(n plan.Node, reach wood.Length) (*plan.Member, wood.Length) {
	gap := wood.Length(0)
	for at := plan.Neighbour(n, plan.Upper); at != nil && wood.Under(gap, reach); at = plan.Neighbour(at, plan.Upper) {
		switch above := at.(type) {
		case *plan.Member:
			return above, gap
		case *plan.Space:
			high := above.Cell[plan.Down]
			if !high.Sized || high.Size <= 0 {
				return nil, 0
			}
			gap += high.Size
		default:
			return nil, 0
		}
	}
	return nil, 0
}

func aboveBy(p *plan.Plan, gap wood.Length) string {
	if wood.Same(gap, 0) {
		return "right"
	}
	return p.Show(gap)
}
