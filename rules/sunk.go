package rules

// What the rules about housings, dados and rabbets share: every edge or end that is let into the
// wood beside it.

import (
	"iter"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// sunk is an end or an edge that is let into its mate, or a drawer's board that is let into the sides.
type sunk struct {
	*plan.Joint
	subject string
	end     *plan.End      // nil in a drawer
	of      *plan.Material // what is let in
	thick   plan.Length    // of it
	mate    plan.Length    // how much wood it can go into
	flat    bool           // it goes into the face of a board
	what    string         // what is let in, for a message: `shelf`
	into    string         // what it is let into, for a working: `side left`
}

// acrossWood are the kinds of joint that take a whole end in a groove across the mate.
var acrossWood = []string{plan.Housing, plan.Dado, plan.SlidingDovetail}

// housings ranges over what is let into its mate by one of some kinds of joint: ends of members,
// edges of panels and backs, corners of drawers.
func housings(p *plan.Plan, kinds ...string) iter.Seq[sunk] {
	is := func(j *plan.Joint) bool { return j != nil && slices.Contains(kinds, j.Kind.Is) }
	return func(yield func(sunk) bool) {
		for e := range ends(p) {
			m, ok := e.Of.(*plan.Member)
			if ok && is(e.Joint) && len(e.Mates) > 0 && !yield(letIn(e, m.Of.Material.To, m.Size.Thick)) {
				return
			}
		}
		for n := range plan.AllOf[*plan.Panel](p) {
			for _, e := range n.Edges {
				if e != nil && !e.Free && is(e.Joint) && len(e.Mates) > 0 && !yield(letIn(e, n.Of.Material.To, n.Size.Thick)) {
					return
				}
			}
		}
		for d := range plan.AllOf[*plan.Drawer](p) {
			for at, j := range drawerCorners(d) {
				if is(j) && !yield(sunk{
					Joint: j, subject: plan.PathOf(d), of: at.Of, thick: at.Size.Thick, mate: d.Left.Size.Thick, flat: true,
					what: at.Name, into: "side of " + called(&d.Item),
				}) {
					return
				}
			}
		}
	}
}

func letIn(e *plan.End, of *plan.Material, thick plan.Length) sunk {
	mate := e.Mates[0]
	return sunk{
		Joint: e.Joint, subject: plan.PathOf(e.Of), end: e, of: of, thick: thick, mate: e.MateSize(),
		flat: mate.Board() && mate.Flat == e.Side.Axis(), what: plan.It(e.Of).Word, into: called(&mate.Item),
	}
}

// left begins a working with what a cut of some depth leaves of the mate.
func (h sunk) left(p *plan.Plan, deep wood.Length, cut string) *plan.Paper {
	return p.Paper().Start(h.mate.Length, "thickness of "+h.into).Minus(deep, cut).Equals("left behind it")
}

// spoken is a kind of joint in a sentence: `sliding dovetail`.
func spoken(kind string) string { return strings.ReplaceAll(kind, "-", " ") }
