package rules

// What the rules about the tools for mortises share.

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// mortise is one as a cutter makes it.
type mortise struct {
	wide wood.Length // across the tenon's thickness
	deep wood.Length // from the face from which it is cut
	both bool        // it goes through, and is cut from both faces
	at   diag.Span   // where the plan says how deep it is
}

// mortises are the mortises of a joint whose sizes are known: in its mate, and of a loose tenon in the end itself.
func (t tenon) mortises() []mortise {
	wide, m := t.slotWide(), t.Joint.Mortise
	if !wide.Known() || m == nil {
		return nil
	}
	var all []mortise
	switch through := t.Joint.Through.On; {
	case through:
		if mate := t.MateSize(); mate.Known() {
			all = append(all, mortise{wide.Length, mate.Length / 2, true, t.Joint.Through.Span})
		}
	case m.Deep.Known():
		at := m.Deep.Span
		if !at.Known() {
			at = t.at(t.Joint.Long)
		}
		all = append(all, mortise{wide.Length, m.Deep.Length, false, at})
	}
	if t.Joint.Kind.Is == plan.LooseTenon && m.Own.How == plan.Written {
		all = append(all, mortise{wide.Length, m.Own.Length, false, m.Own.Span})
	}
	return all
}

// slotWide is how wide a joint's mortise is, across the tenon's thickness.
func (t tenon) slotWide() plan.Length {
	if m := t.Joint.Mortise; m != nil && m.Thick.How != plan.Unknown {
		return m.Thick
	}
	return t.Joint.Thick
}

// cuttersFor are the cutters of the shop that go into a slot so wide; false where the plan does not say what
// cutters there are.
func cuttersFor(p *plan.Plan, wide wood.Length) (fit []*plan.Cutter, stated bool) {
	for _, c := range p.Shop.Cutters {
		if !c.Wide.Known() {
			return nil, false
		}
		if !wood.Over(c.Wide.Length, wide+p.Tape.Tolerance()) {
			fit = append(fit, c)
		}
	}
	return fit, len(p.Shop.Cutters) > 0
}

// farthest is the cutter that reaches deepest; nil where one of them does not say how deep.
func farthest(cutters []*plan.Cutter) *plan.Cutter {
	var best *plan.Cutter
	for _, c := range cutters {
		if !c.Reach.Known() {
			return nil
		}
		if best == nil || c.Reach.Length > best.Reach.Length {
			best = c
		}
	}
	return best
}

// tooShort is the cutter that reaches deepest, where it does not reach the floor of a slot; nil where one does,
// or nothing says so.
func tooShort(p *plan.Plan, s mortise) *plan.Cutter {
	fit, _ := cuttersFor(p, s.wide)
	if c := farthest(fit); c != nil && wood.Under(c.Reach.Length, s.deep) {
		return c
	}
	return nil
}
