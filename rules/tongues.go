package rules

// What the rules about tongues share.

import (
	"iter"

	"plancheck/internal/plan"
)

// tongued is a tongue along an end of a board, or at the corner of a drawer.
type tongued struct {
	*plan.Joint
	subject string
	board   plan.Length // thickness of the board that has it
}

// tongues ranges over the ends of members, and the corners of drawers, that have a tongue.
func tongues(p *plan.Plan) iter.Seq[tongued] {
	return func(yield func(tongued) bool) {
		for e := range ends(p) {
			if m, ok := e.Of.(*plan.Member); ok && e.Joint.Kind.Is == plan.Tongue && !yield(tongued{e.Joint, plan.PathOf(m), m.Size.Thick}) {
				return
			}
		}
		for d := range plan.AllOf[*plan.Drawer](p) {
			for at, j := range drawerCorners(d) {
				if j.Kind.Is == plan.Tongue && !yield(tongued{j, plan.PathOf(d), at.Size.Thick}) {
					return
				}
			}
		}
	}
}
