package rules

// What is carried to its room: the piece as it stands, or, where it comes apart, each thing that it comes
// apart into. What joints that do not come apart hold together is carried as one.

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// carried is one thing that is carried.
type carried struct {
	subject string
	called  string
	span    diag.Span
	size    [3]wood.Length // from the least to the greatest; means something only where sized
	sized   bool
	weight  float64 // kilograms; means something only where weighed
	weighed bool
	one     bool           // one piece of wood, which does not come apart
	legs    bool           // a table, a desk, a chair or a bench: there is room between its legs
	of      *plan.Assembly // that is drawn elsewhere and placed here
	in      *plan.Assembly // in whose lists it stands
	nodes   []plan.Node    // that it is made of; several in a row are several things
	count   int
}

// shown begins what is said of it, with its sizes from the greatest.
func (c *carried) shown(p *plan.Plan) string {
	return fmt.Sprintf("%s is %s x %s x %s", c.called, p.Show(c.size[2]), p.Show(c.size[1]), p.Show(c.size[0]))
}

// notApart is what to do about something that is too large, or too heavy.
func (c *carried) notApart() string {
	if c.one {
		return "make " + c.called + " of two that are joined in the room"
	}
	return "let " + c.called + " come apart into smaller things"
}

// windingThrough is how bad it is that something does not go through as a block of its size: what stands on legs
// may be wound through.
func (c *carried) windingThrough() diag.Severity {
	if c.legs {
		return diag.Warning
	}
	return diag.Error
}

// carriedOn are the things that are carried on the way of a plan; none where it says no way, or of what
// has no name, which is said elsewhere. Of things alike one stands for all.
func carriedOn(p *plan.Plan) []*carried {
	if p.Way == nil || p.Way.Of.Text == "" {
		return nil
	}
	all := takenApart(p, p.Way.Of)
	alike, placed := map[[3]wood.Length]float64{}, map[*plan.Assembly]bool{}
	return slices.DeleteFunc(all, func(c *carried) bool {
		w, seen := alike[c.size]
		alike[c.size] = c.weight
		twice := c.of != nil && placed[c.of]
		placed[c.of] = true
		return twice || c.sized && seen && w == c.weight
	})
}

// takenApart are the things that an assembly is carried as, with the tops over it.
func takenApart(p *plan.Plan, a *plan.Assembly) []*carried {
	var all []*carried
	if a.Apart.Is == "" {
		all = append(all, whole(p, a))
	} else {
		all = inPieces(p, a, map[*plan.Assembly]bool{})
	}
	for _, top := range p.TopsOver(a) {
		if a.Apart.Is == "" && gluedDown(p, top) {
			all[0].takes(p, a, top)
			continue
		}
		all = append(all, single(p, top))
	}
	return all
}

func whole(p *plan.Plan, a *plan.Assembly) *carried {
	c := &carried{subject: plan.PathOf(a), called: a.Kind.String() + " " + quote(a.Text), span: a.Name.Span, in: a, count: 1}
	c.legs = slices.Contains([]string{"table", "desk", "chair", "bench"}, a.Use.Is)
	c.sizes(a.Outside[0], a.Outside[1], a.Outside[2])
	w, ok := p.Weight(a)
	c.weight, c.weighed = w.Kilograms, ok
	return c
}

// gluedDown reports whether a top is glued to what it lies on; whatever else holds one is undone.
func gluedDown(p *plan.Plan, top *plan.Member) bool {
	return slices.ContainsFunc(p.Fixes, func(f *plan.Fixing) bool {
		return len(f.Glue) > 0 && (f.A.To != nil && f.A.To.Is == top || f.B.To != nil && f.B.To.Is == top)
	})
}

// takes makes a piece as large and as heavy as it is with a top that stays on it.
func (c *carried) takes(p *plan.Plan, a *plan.Assembly, top *plan.Member) {
	across, behind, high := top.Reaches(plan.Across), top.Reaches(plan.Behind), a.Outside[plan.Down]
	known := c.sized && across.Known() && behind.Known() && top.Size.Thick.Known()
	round := func(e plan.Extent, out plan.Length) plan.Length {
		return plan.Length{Length: max(e.To(), out.Length) - min(e.From, 0), How: plan.Derived}
	}
	high.Length += top.Size.Thick.Length
	c.sizes(round(across, a.Outside[plan.Across]), round(behind, a.Outside[plan.Behind]), high)
	c.sized = known
	w, ok := p.WeightOf(top)
	c.weight, c.weighed = c.weight+w.Kilograms, c.weighed && ok
}

func (c *carried) sizes(all ...plan.Length) {
	c.sized = true
	for i, l := range all {
		c.size[i], c.sized = l.Length, c.sized && l.Known()
	}
	slices.Sort(c.size[:])
}

// single is one thing of a layout that is carried by itself.
func single(p *plan.Plan, n plan.Node) *carried {
	it := plan.It(n)
	c := &carried{subject: plan.PathOf(n), called: titled(it), span: it.Name.Span, in: it.In, nodes: []plan.Node{n}, count: 1}
	switch n := n.(type) {
	case *plan.Member:
		c.one = true
		c.sizes(n.Size.Long, n.Size.Wide, n.Size.Thick)
	case *plan.Panel:
		c.sizes(n.Size.Long, n.Size.Wide, n.Size.Thick)
	case *plan.Glass:
		c.sizes(n.Size.Long, n.Size.Wide, n.Size.Thick)
	case *plan.Door:
		c.sizes(n.Size[0], n.Size[1], n.Thick())
	case *plan.Placed:
		if n.Part.To != nil {
			c.of = n.Part.To
			c.sizes(n.Part.To.Outside[0], n.Part.To.Outside[1], n.Part.To.Outside[2])
		}
	}
	w, ok := p.WeightOf(n)
	c.weight, c.weighed = w.Kilograms, ok
	return c
}

// inPieces takes an assembly apart, and what stands in it that comes apart as well, once, however often it is placed. Drawers
// are pulled out first; they are smaller than what they come out of.
func inPieces(p *plan.Plan, a *plan.Assembly, done map[*plan.Assembly]bool) []*carried {
	done[a] = true
	var nodes []plan.Node
	at := map[plan.Node]int{}
	for n := range a.Nodes() {
		switch n.(type) {
		case *plan.List, *plan.Space, *plan.Drawer:
		default:
			at[n] = len(nodes)
			nodes = append(nodes, n)
		}
	}
	j := newJoined(p, a, nodes, at)
	var all []*carried
	rows := map[diag.Span]*carried{}
	for i, n := range nodes {
		if j.first(i) != i {
			continue
		}
		line := plan.It(n).Name.Span
		if c := rows[line]; c != nil && plan.It(n).Row != "" {
			c.count++
			c.nodes = append(c.nodes, j.with[i]...)
			continue
		}
		var c *carried
		placed, ok := n.(*plan.Placed)
		switch {
		case len(j.with[i]) > 1:
			c = together(p, j.with[i])
		case ok && placed.Part.To != nil && placed.Part.To.Apart.Is != "":
			if !done[placed.Part.To] {
				all = append(all, inPieces(p, placed.Part.To, done)...)
			}
			continue
		default:
			c = single(p, n)
		}
		rows[line] = c
		all = append(all, c)
	}
	return all
}

// joined says which things of an assembly stay together when it comes apart.
type joined struct {
	to   []int // towards the first of those that stay together
	with map[int][]plan.Node
}

func newJoined(p *plan.Plan, a *plan.Assembly, nodes []plan.Node, at map[plan.Node]int) *joined {
	j := &joined{to: make([]int, len(nodes)), with: map[int][]plan.Node{}}
	for i := range j.to {
		j.to[i] = i
	}
	for _, e := range a.Ends {
		if e == nil || e.Joint == nil || comesApart(e.Joint) {
			continue
		}
		for _, m := range e.Mates {
			var mate plan.Node = m
			if m.In != a {
				mate = e.Faces
			}
			j.join(at, e.Of, mate)
		}
	}
	for _, f := range p.Fixes {
		if len(f.Glue) > 0 && fixedIn(f.A) == a && fixedIn(f.B) == a {
			j.join(at, f.A.To.Is.(plan.Node), f.B.To.Is.(plan.Node))
		}
	}
	for i, n := range nodes {
		first := j.first(i)
		j.with[first] = append(j.with[first], n)
	}
	return j
}

// first is the first of those that stay with a thing.
func (j *joined) first(i int) int {
	for j.to[i] != i {
		j.to[i] = j.to[j.to[i]]
		i = j.to[i]
	}
	return i
}

func (j *joined) join(at map[plan.Node]int, n, mate plan.Node) {
	a, known := at[n]
	b, alsoKnown := at[mate]
	if !known || !alsoKnown {
		return
	}
	a, b = j.first(a), j.first(b)
	j.to[max(a, b)] = min(a, b)
}

// comesApart reports whether a joint is one that is taken apart again.
func comesApart(j *plan.Joint) bool {
	return j.Dry.On || byHand(j) || slices.Contains([]string{plan.ScrewJoint, plan.Pocket, plan.BoltJoint}, j.Kind.Is)
}

// byHand reports whether a joint is undone without a tool: it is turned or lifted by hand, or nothing holds
// it.
func byHand(j *plan.Joint) bool {
	return slices.Contains([]string{plan.Knob, plan.Hook, plan.Magnet, plan.WedgeJoint, plan.DropIn, plan.ShelfPin, plan.Butt}, j.Kind.Is)
}

// together is what stays joined: as large as the box round it, and called by the heaviest of it.
func together(p *plan.Plan, nodes []plan.Node) *carried {
	heaviest, most := nodes[0], 0.0
	for _, n := range nodes {
		if w, ok := p.WeightOf(n); ok && w.Kilograms > most {
			heaviest, most = n, w.Kilograms
		}
	}
	c := single(p, heaviest)
	c.called = fmt.Sprintf("%s and what stays joined to it", c.called)
	c.weight, c.weighed, c.one, c.of, c.nodes = 0, true, false, nil, nodes
	var size [3]plan.Length
	for axis := range size {
		from, to, known := wood.Length(0), wood.Length(0), true
		for i, n := range nodes {
			at := plan.It(n).Cell[axis]
			if m, ok := n.(*plan.Member); ok {
				at = m.Body[axis]
			}
			known = known && at.Known()
			if i == 0 {
				from, to = at.From, at.To()
			}
			from, to = min(from, at.From), max(to, at.To())
		}
		if known {
			size[axis] = plan.Length{Length: to - from, How: plan.Derived}
		}
	}
	c.sizes(size[0], size[1], size[2])
	for _, n := range nodes {
		w, ok := p.WeightOf(n)
		c.weight, c.weighed = c.weight+w.Kilograms, c.weighed && ok
	}
	return c
}
