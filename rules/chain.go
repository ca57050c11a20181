package rules

// The chain: how the room for a thing comes about, from the outside of the piece inwards.
// The working of every rule about a length begins with it. Climbing from the thing, each
// list that runs along the axis bounds it: what is fixed in that list comes off, and the
// rest is shared; the outermost list has the size of its assembly, which is stated, or
// taken from the opening or the place that the assembly fills.

import (
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// room starts a working with how a thing's cell along an axis comes about; name is what the
// working calls the cell. The cell must be sized.
func room(p *plan.Plan, n plan.Node, axis plan.Axis, name string) *plan.Paper {
	it := plan.It(n)
	c := chain{axis: axis, paper: p.Paper()}
	if c.cell(it) && wood.Same(c.paper.Result(), it.Cell[axis].Size) {
		if c.open {
			c.paper.Equals(name)
		}
		return c.paper
	}
	return p.Paper().Start(it.Cell[axis].Size, name)
}

// mostShown is how many things of a list a chain shows one by one; a working of more is not read.
const mostShown = 60

// chain is a working of one axis while it is written.
type chain struct {
	paper *plan.Paper
	axis  plan.Axis
	open  bool // there are lines below the last result
}

func (c *chain) start(l wood.Length, label string) { c.paper.Start(l, label) }

func (c *chain) minus(l wood.Length, label string) {
	c.paper.Minus(l, label)
	c.open = true
}

func (c *chain) equals(label string) {
	if c.open {
		c.paper.Equals(label)
		c.open = false
	}
}

// cell writes how a thing's cell comes about, and reports whether it is known.
func (c *chain) cell(it *plan.Item) bool {
	l := it.Parent
	switch {
	case l == nil:
		return it.In != nil && c.outside(it.In)
	case l.Axis != c.axis:
		return c.cell(&l.Item)
	case !it.Shared:
		c.start(it.Cell[c.axis].Size, called(it))
		return it.Cell[c.axis].Sized
	case !c.cell(&l.Item):
		return false
	}
	if len(l.Items) > mostShown {
		c.minus(l.Sum.Fixed, "all that has a size beside "+called(it))
	} else {
		for s := range sizesIn(l) {
			if !s.shared {
				c.minus(s.size, s.label)
			}
		}
	}
	if own, all := it.Share.Or(1), l.Sum.Shares; all > own {
		c.equals("to share")
		c.paper.Over(all, "equal shares")
		if own > 1 {
			c.paper.Times(own, "shares of "+called(it))
		}
		c.open = true
	}
	return true
}

// outside writes how an assembly's size comes about.
func (c *chain) outside(a *plan.Assembly) bool {
	out := a.Outside[c.axis]
	d, ok := a.Filled.(*plan.Door)
	if !ok || out.How != plan.Derived || c.axis == plan.Behind || !wood.Same(out.Length, d.Size[c.axis].Length) {
		c.start(out.Length, measure(a, c.axis))
		return out.Known()
	}
	c.leaf(d)
	c.equals(measure(a, c.axis))
	return true
}

// leaf writes an opening and what the edges of its leaf take off or lap over.
func (c *chain) leaf(d *plan.Door) {
	c.start(d.Cell[c.axis].Size, "opening "+plan.PathOf(d))
	for _, e := range d.Edges {
		if e.Side.Axis() == c.axis && e.Less.Length != 0 {
			c.minus(e.Less.Length, edgeOf(e, d.Hang.Is))
		}
	}
}

// edgeOf names what one edge of a leaf takes off its opening.
func edgeOf(e plan.Edge, hang string) string {
	side := map[plan.Side]string{plan.Left: "left", plan.Right: "right", plan.Upper: "top", plan.Lower: "bottom"}[e.Side]
	if hang == "back" { // a lid, as it is seen from above
		side = map[plan.Side]string{plan.Left: "left", plan.Right: "right", plan.Upper: "back", plan.Lower: "front"}[e.Side]
	}
	if opposite := map[string]string{"left": "right", "right": "left", "top": "bottom", "bottom": "top", "back": "front"}[hang]; hang != "" {
		switch side {
		case hang:
			side = "hinge side"
		case opposite:
			side = "latch side"
		}
	}
	switch {
	case e.Shared:
		return "half the reveal, " + side
	case e.Less.Length < 0 && hang == "lift-out":
		return "in the groove, " + side
	case e.Less.Length < 0:
		return "lap, " + side
	}
	return "reveal, " + side
}

// measure names an assembly's size along an axis: `width of leaf-frame`.
func measure(a *plan.Assembly, axis plan.Axis) string {
	what := [...]string{"width", "height", "depth"}[axis]
	if a.Kind == plan.Frame && axis == plan.Behind {
		what = "thickness"
	}
	return what + " of " + plan.PathOf(a)
}

// summand is one thing of a list, or all the alike things of a row, in a sum.
type summand struct {
	size   wood.Length
	label  string
	shared bool
	known  bool
}

// sizesIn are the sizes along a list, in order. The alike things of a row, and the gaps
// between them, are taken together where the row begins.
func sizesIn(l *plan.List) func(yield func(summand) bool) {
	var sums []summand
	rows := map[string]int{}  // where each row stands in sums
	times := map[string]int{} // how many of it there are
	for _, n := range l.Items {
		it := plan.It(n)
		cell := it.Cell[l.Axis]
		s := summand{cell.Size, called(it), it.Shared, cell.Sized}
		if it.Row == "" {
			sums = append(sums, s)
			continue
		}
		if i, ok := rows[it.Row]; ok && sums[i].known == s.known {
			sums[i].size += s.size
			times[it.Row]++
			sums[i].label = called(it) + ", " + itoa(times[it.Row]) + " of them"
			continue
		}
		rows[it.Row], times[it.Row] = len(sums), 1
		sums = append(sums, s)
	}
	return func(yield func(summand) bool) {
		for _, s := range sums {
			if !yield(s) {
				return
			}
		}
	}
}

// called is what a working calls a thing: `stile hinge-side`, `slat lath` for one of a row.
func called(it *plan.Item) string {
	switch {
	case it.Row != "":
		return it.Word + " " + it.Row
	case it.Name.Text != "":
		return it.Word + " " + it.Name.Text
	case it.Word == "across" || it.Word == "down" || it.Word == "behind":
		return it.Word + " list"
	}
	return it.Word
}

// titled is what a message calls a thing, or all the alike things of a row: `rail "head"`.
func titled(it *plan.Item) string {
	if it.Row != "" {
		return it.Word + " " + quote(it.Row)
	}
	return it.Called()
}

// addEnds adds what the joints at a member's ends take of its length.
func addEnds(paper *plan.Paper, m *plan.Member) {
	for _, e := range m.Ends {
		if e != nil && e.Adds.Length != 0 {
			paper.Plus(e.Adds.Length, goesInto(e))
		}
	}
}

// goesInto names what an end's joint adds: `tenon into hinge-side`.
func goesInto(e *plan.End) string {
	mate := matesOf(e)
	switch e.Joint.Kind.Is {
	case plan.Stub:
		return "stub tenon into the groove of " + mate
	case plan.Housing, plan.Dado, plan.Rabbet, plan.DropIn:
		return e.Joint.Kind.Is + " in " + mate
	case plan.HalfLap, plan.Bridle:
		return "lap over " + mate
	case plan.Mitre:
		return "width of " + mate + ", to the long point"
	case plan.BoxJoint:
		return "fingers through " + mate
	case plan.WedgeJoint:
		return "through " + mate + ", and the tail"
	case plan.SlidingDovetail:
		return "sliding dovetail in " + mate
	}
	return e.Joint.Kind.Is + " into " + mate
}

// matesOf names what an end meets.
func matesOf(e *plan.End) string {
	var names []string
	for _, m := range e.Mates {
		name := m.Name.Text
		switch {
		case name == "":
			name = m.Word
		case m.In != plan.It(e.Of).In: // in a frame that is drawn elsewhere
			name = plan.PathOf(m)
		}
		names = append(names, name)
	}
	switch len(names) {
	case 0:
		return "its mate"
	case 1, 2:
		return strings.Join(names, " and ")
	}
	return names[0] + " and others"
}

// standing is where a finding about a stated size stands: at the word that heads the thing,
// or, where the size stands on a line of its own, at the size.
func standing(head, said diag.Span) diag.Span {
	if !said.Known() {
		return head
	}
	line, _ := said.Position()
	if at, _ := head.Position(); at == line && head.File == said.File {
		return head
	}
	return said
}
