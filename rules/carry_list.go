package rules

// The list of what is carried to the room, for the bench: the rules judge the same things.

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// ToCarry is one thing that is carried to the room, or several alike that stand in a row.
type ToCarry struct {
	Path, Called string
	Count        int
	Size         []wood.Length // from the greatest; nothing where one is not known
	Weighs       string        // each, about; "" where it is not known
	Step         int           // in which step it is put in, from 1; 0 where the steps do not say
	Does         string        // stand, fit or hang
	Held         []HeldBy      // what holds it there
	Span         diag.Span
}

// HeldBy is what holds something that comes apart, and what that is undone with.
type HeldBy struct {
	Count int // of each of the things that are alike
	By    string
	With  string // by hand, screwdriver …
}

const withHand = "by hand"

// CarryList is what each assembly of a plan that comes apart is carried as, and the one that has a way to go, in the
// order in which the steps put it together. What they do not name comes last, in the order of the plan.
func CarryList(p *plan.Plan) []*ToCarry {
	var all []*ToCarry
	pieces, order, fixed, steps := p.Pieces(), putTogether(p), fastenedTo(p), map[int]int{}
	for _, a := range carriedWhole(p) {
		for _, c := range takenApart(p, a) {
			t := &ToCarry{Path: c.subject, Called: c.called, Count: c.count, Span: c.span}
			if c.in != nil {
				t.Count *= pieces[c.in]
			}
			if c.in != nil && c.in != a {
				t.Called += " of " + plan.PathOf(c.in)
			}
			if c.sized {
				t.Size = []wood.Length{c.size[2], c.size[1], c.size[0]}
			}
			if c.weighed {
				t.Weighs = heft(p, c.weight)
			}
			for _, n := range c.nodes {
				if put := order[n]; put.at > 0 && (t.Step == 0 || put.at < t.Step) {
					t.Step, t.Does = put.at, put.verb
				}
			}
			t.Held = heldBy(c, fixed)
			all = append(all, t)
		}
	}
	slices.SortStableFunc(all, func(a, b *ToCarry) int {
		switch {
		case a.Step == b.Step:
			return 0
		case b.Step == 0 || a.Step != 0 && a.Step < b.Step:
			return -1
		}
		return 1
	})
	for _, t := range all { // counted anew: what the steps put in elsewhere is not on this list
		if t.Step > 0 {
			if steps[t.Step] == 0 {
				steps[t.Step] = len(steps) + 1
			}
			t.Step = steps[t.Step]
		}
	}
	return all
}

// carriedWhole are the assemblies that stand in none of the others which come apart.
func carriedWhole(p *plan.Plan) []*plan.Assembly {
	within := map[*plan.Assembly]bool{}
	for _, a := range p.Assemblies {
		if a.Apart.Is == "" {
			continue
		}
		for n := range a.Nodes() {
			if placed, ok := n.(*plan.Placed); ok && placed.Part.To != nil && placed.Part.To != a {
				within[placed.Part.To] = true
			}
		}
	}
	var all []*plan.Assembly
	for _, a := range p.Assemblies {
		goes := p.Way != nil && p.Way.Of == a && a.Text != ""
		if (a.Apart.Is != "" || goes) && !within[a] {
			all = append(all, a)
		}
	}
	return all
}

// fastenedTo are the fixings of each thing that is fastened by screws and the like, and not glued.
func fastenedTo(p *plan.Plan) map[plan.Node][]*plan.Fixing {
	all := map[plan.Node][]*plan.Fixing{}
	for _, f := range p.Fixes {
		if len(f.Glue) > 0 || f.A.To == nil {
			continue
		}
		if n, ok := f.A.To.Is.(plan.Node); ok {
			all[n] = append(all[n], f)
		}
	}
	return all
}

// heldBy is what holds each of some things that are alike, and comes apart.
func heldBy(c *carried, fixed map[plan.Node][]*plan.Fixing) []HeldBy {
	h := holds{of: max(c.count, 1)}
	mine := map[plan.Node]bool{}
	for _, n := range c.nodes {
		mine[n] = true
	}
	if c.in != nil && len(mine) > 0 {
		for _, e := range c.in.Ends {
			if e == nil || e.Joint == nil || len(e.Mates) == 0 || !mine[e.Of] || !comesApart(e.Joint) || mine[e.Faces] {
				continue
			}
			h.joint(e.Joint)
		}
	}
	for _, n := range c.nodes {
		if d, ok := n.(*plan.Door); ok {
			for _, use := range d.Hinges {
				h.add(use.Number(), "hinge "+use.Name, "screwdriver")
			}
		}
		for _, f := range fixed[n] {
			for _, w := range f.With {
				each := w.Count.Or(max(len(w.At), len(w.Along), 1))
				h.add(each, w.Word+" "+w.Of.Name, toolFor(w.Word))
			}
		}
	}
	for i := range h.all {
		h.all[i].Count = (h.all[i].Count + h.of - 1) / h.of
	}
	return h.all
}

// holds gathers what holds something, alike by alike.
type holds struct {
	of  int
	all []HeldBy
}

func (h *holds) add(n int, by, with string) {
	for i := range h.all {
		if h.all[i].By == by {
			h.all[i].Count += n
			return
		}
	}
	h.all = append(h.all, HeldBy{n, by, with})
}

// joint adds what a joint is held by: its hardware by name, else what it is.
func (h *holds) joint(j *plan.Joint) {
	each, with := max(len(j.At), j.Count.Or(1), 1), toolFor(j.Kind.Is)
	switch of, insert := j.Hardware.To, j.Insert.To; {
	case j.Kind.Is == plan.Butt: // nothing holds it
	case of != nil && insert != nil:
		h.add(each, fmt.Sprintf("%s %s into insert %s", of.Word, of.Text, insert.Text), with)
	case of != nil:
		h.add(each, of.Word+" "+of.Text, with)
	case j.Dry.On:
		h.add(1, "dry "+j.Kind.Is, with)
	default:
		h.add(1, j.Kind.Is, with)
	}
}

// toolFor is what a joint or a fastener is undone with.
func toolFor(word string) string {
	switch word {
	case plan.ScrewJoint, plan.Pocket, "button":
		return "screwdriver"
	case plan.BoltJoint:
		return "spanner or key"
	}
	return withHand
}
