package rules

// Two things that are glued or fastened to one another, and where one of them moves while the
// other stays as it is.

import (
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// lying is a thing with its grain, in the assembly in which it lies.
type lying struct {
	called      string       // `side "left"`
	board       *plan.Member // nil where it is none
	subject     string
	of          *plan.Material
	in          *plan.Assembly // nil where nothing places it
	grain, wide plan.Axis
	size        [3]plan.Length // by axis
	still       bool           // a sheet or a frame, which no season moves
}

// lie is how a thing lies; false where the plan does not tell whether it moves.
func lie(thing any) (lying, bool) {
	switch t := thing.(type) {
	case *plan.Part:
		l := lieOfMember(&t.Member)
		l.subject, l.in = plan.PathOf(t), nil
		return l, true
	case *plan.Member:
		return lieOfMember(t), true
	case *plan.Panel:
		l := lying{called: titled(&t.Item), subject: plan.PathOf(t), of: t.Of.Material.To, in: t.In, grain: t.Grain, wide: t.Across()}
		l.size[l.grain], l.size[l.wide] = t.Size.Long, t.Size.Wide
		l.still = l.of != nil && l.of.Kind != plan.Solid
		return l, l.of != nil
	case *plan.Placed:
		l := lying{called: titled(&t.Item), subject: plan.PathOf(t), in: t.In, still: true}
		for axis, cell := range t.Cell {
			if cell.Sized {
				l.size[axis] = plan.Length{Length: cell.Size, How: plan.Derived}
			}
		}
		return l, stiff(t)
	case *plan.Assembly:
		return lying{called: entitled(t), subject: plan.PathOf(t), in: t, size: t.Outside, still: true}, stiff(t)
	}
	return lying{}, false
}

// lieOfMember is how a member lies. A top that stands alone lies on what it covers, its boards
// along the ends of that; a part has no place, and is taken to lie as a top does. One of which nobody says what
// it is of keeps its length, whatever that is.
func lieOfMember(m *plan.Member) lying {
	l := lying{called: titled(&m.Item), board: m, subject: plan.PathOf(m), of: m.Of.Material.To, in: m.In, grain: m.Grain, wide: 3 - m.Grain - m.Flat}
	flat := m.Flat
	if m.Parent == nil {
		l.grain, l.wide, flat = plan.Across, plan.Behind, plan.Down
		if m.Over != nil {
			l.in = m.Over.Of.To
		}
	}
	l.size[l.grain], l.size[l.wide], l.size[flat] = m.Size.Long, m.Size.Wide, m.Size.Thick
	l.still = l.of != nil && l.of.Kind != plan.Solid
	return l
}

// seam is a line along which something moves across its grain, and what is held to it does not.
type seam struct {
	moves, stays lying
	axis         plan.Axis // in the assembly of what moves
	long         wood.Length
}

// beside makes the seam along one axis where one thing moves and the other stays; false where
// there is none, or its length is not known.
func beside(moves, stays lying, axis plan.Axis) (seam, bool) {
	if moves.still || moves.wide != axis || !stays.still && stays.grain != axis || !moves.size[axis].Known() {
		return seam{}, false
	}
	s := seam{moves: moves, stays: stays, axis: axis, long: moves.size[axis].Length}
	if over := stays.size[axis]; over.Known() {
		s.long = min(s.long, over.Length)
	}
	return s, true
}

// seamsOf are the seams of a fixing: what is fastened crosses the grain of what it is fastened
// to, or one of them is a sheet or a frame.
func seamsOf(f *plan.Fixing) []seam {
	if f.A.To == nil || f.B.To == nil {
		return nil
	}
	a, okA := lie(f.A.To.Is)
	b, okB := lie(f.B.To.Is)
	if placed, ok := f.B.To.Is.(*plan.Placed); ok && !okB {
		b, okB = sideFacing(placed, f.A.To.Is)
	}
	if !okA || !okB || a.still && b.still {
		return nil
	}
	switch placed := a.in != nil && a.in == b.in; {
	case !a.still && !b.still && f.Grain.Is != "":
		b = b.turnedTo(a, f.Grain.Is == "across")
	case placed:
	case a.still:
		a.size = [3]plan.Length{} // how far it reaches along the other is not known
	case b.still:
		b.size = [3]plan.Length{}
	default:
		return nil // nobody says how they lie to one another
	}
	var all []seam
	for axis := plan.Across; axis <= plan.Behind; axis++ {
		if s, ok := beside(a, b, axis); ok {
			all = append(all, s)
		}
		if s, ok := beside(b, a, axis); ok {
			all = append(all, s)
		}
	}
	return all
}

// sideFacing is the side of something placed that a member beside it touches, as it lies in the assembly
// of both. It is false for what is turned or laid flat, and where no one board closes that side.
func sideFacing(placed *plan.Placed, thing any) (lying, bool) {
	m, isMember := thing.(*plan.Member)
	a := placed.Part.To
	if !isMember || a == nil || a.Root == nil || len(a.Root.Items) == 0 || placed.Turned || placed.Flat || placed.Mirrored.On {
		return lying{}, false
	}
	for side := plan.Left; side <= plan.Back; side++ {
		if plan.Neighbour(m, side) != plan.Node(placed) || a.Root.Axis != side.Axis() {
			continue
		}
		touched := a.Root.Items[0]
		if !side.Far() { // what stands to the left of the member shows it its last board
			touched = a.Root.Items[len(a.Root.Items)-1]
		}
		l, ok := lie(touched)
		seen, inside := l.seenFrom(placed)
		seen.called = seen.subject // "left" is a side of each
		return seen, ok && inside
	}
	return lying{}, false
}

// glued is how far apart the farthest two places are at which a fixing glues a seam: a strip counts
// from the front or the back, and the front of what no layout places is one end of it.
func (s seam) glued(f *plan.Fixing) wood.Length {
	runs := plan.Behind
	if a, _ := lie(f.A.To.Is); a.in == nil {
		runs = a.grain
	}
	from, to := s.long, wood.Length(0)
	for _, g := range f.Glue {
		start, end := wood.Length(0), s.long
		strip := min(g.Wide.Or(0).Length, s.long)
		switch where := g.Where.Is; {
		case where == "centre":
			start, end = s.long/2, s.long/2
		case s.axis != runs:
		case where == "front":
			end = strip
		case where == "back":
			start = s.long - strip
		}
		from, to = min(from, start), max(to, end)
	}
	return max(to-from, 0)
}

// turnedTo is a thing laid upon another, with its grain along or across that of a.
func (l lying) turnedTo(a lying, across bool) lying {
	turned := l
	turned.grain, turned.wide = a.grain, a.wide
	if across {
		turned.grain, turned.wide = a.wide, a.grain
	}
	turned.size = [3]plan.Length{}
	turned.size[turned.grain], turned.size[turned.wide] = l.size[l.grain], l.size[l.wide]
	return turned
}

// seenFrom is how what stands in something placed lies in the assembly round that.
func (l lying) seenFrom(n plan.Node) (lying, bool) {
	placed, ok := n.(*plan.Placed)
	if !ok || placed.Part.To != l.in {
		return l, false
	}
	size := l.size
	for axis := plan.Across; axis <= plan.Behind; axis++ {
		l.size[placed.HostAxis(axis)] = size[axis]
	}
	l.in, l.grain, l.wide = placed.In, placed.HostAxis(l.grain), placed.HostAxis(l.wide)
	return l, true
}
