package rules

// Panes of glass, and the rabbets that they lie in.

import (
	"iter"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// rebate is the rabbet at one edge of a pane.
type rebate struct {
	*plan.End
	into, from plan.Length // the thickness, and from the edge
	thick      plan.Length // of the wood that it is cut into; unknown where that is drawn elsewhere
}

// liesIn reports whether a pane lies in something at all, as every one in a frame does.
func liesIn(g *plan.Glass) bool {
	for _, e := range g.Edges {
		if e != nil && !e.Free && len(e.Mates) > 0 {
			return true
		}
	}
	return false
}

// rebates ranges over the rabbets of a pane.
func rebates(g *plan.Glass) iter.Seq[rebate] {
	return func(yield func(rebate) bool) {
		for _, e := range g.Edges {
			if e == nil || e.Free || len(e.Mates) == 0 || e.Joint == nil || e.Joint.Kind.Is != plan.Rabbet {
				continue
			}
			r := rebate{End: e, into: e.Joint.Rabbet.Across, from: e.Joint.Rabbet.Deep}
			if m := e.Mates[0]; m.In == g.In && m.Body[plan.Behind].Sized {
				r.thick = plan.Length{Length: m.Body[plan.Behind].Size, How: plan.Derived}
			}
			if !yield(r) {
				return
			}
		}
	}
}

// rebatesAlong are the rabbets at both ends of a pane along an axis; false where one of them is missing, or
// does not say how far it goes.
func rebatesAlong(g *plan.Glass, axis plan.Axis) (near, far wood.Length, ok bool) {
	var found [2]bool
	for r := range rebates(g) {
		if r.Side.Axis() != axis || !r.from.Known() {
			continue
		}
		if found[r.Side%2] = true; r.Side.Far() {
			far = r.from.Length
		} else {
			near = r.from.Length
		}
	}
	return near, far, found[0] && found[1]
}

// gapAlong is how much smaller a pane is than its place along an axis, in all.
func gapAlong(g *plan.Glass, axis plan.Axis) plan.Length {
	if axis == plan.Across {
		return g.GapUsed.Across
	}
	return g.GapUsed.Deep
}

// glazed is a plan with a cupboard behind a door of glass, for what a rule shows.
func glazed(pane string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
case cupboard {
  of oak 3/4
  wide 19 1/2 ; high 30 ; deep 12
  joint housing deep 1/4
  across {
    side left
    down { top roof ; door only { leaf glazed ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 3 } ; bottom floor }
    side right
  }
}
frame glazed {
  of oak ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across { stile left 2 ; down { rail head 2 ; ` + pane + ` ; rail foot 2 } ; stile right 2 }
}
`
}
