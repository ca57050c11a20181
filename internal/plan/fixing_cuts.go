package plan

// What is bored where two things that touch are fastened to each other, outside any joint.

import "plancheck/internal/wood"

// fixing places the holes of a member that is fastened to what it touches in its assembly: those
// of dowels and pegs half in each, those of screws and bolts as deep as their length tells which
// way they go. The groove for a button's tongue has a face that nothing says.
func (c *cutter) fixing(f *Fixing) {
	if f.A.To == nil || f.B.To == nil {
		return
	}
	m, member := f.A.To.Is.(*Member)
	to, node := f.B.To.Is.(Node)
	if !member || !node || m.In == nil || It(to).In != m.In {
		return
	}
	side, touch := touching(m.Body, bodyOf(to))
	l := c.lieOf(m).stands
	if !touch || side.Axis() == l.axis[Long] { // on an end, both ways are across the grain
		return
	}
	e := &End{Of: m, Side: side, Faces: to}
	e.covering(to, side.Opposite(), m.Body, nil, func(*Assembly) {})
	if len(e.Mates) == 0 {
		return
	}
	s := &seat{cutter: c, end: e, of: m, lie: l}
	across := Wide
	if side.Axis() == l.axis[Wide] {
		across = Thick
	}
	for _, w := range f.With {
		if w.Of.To == nil || w.Word == "button" {
			continue
		}
		from := len(c.made)
		for _, at := range w.places() {
			hole := func(size Length) (box Box) {
				box[l.axis[Long]] = l.inAssembly(Long, s.read(Long, round(at[0], size)))
				box[l.axis[across]] = l.inAssembly(across, s.read(across, round(at[1], size)))
				return box
			}
			size := w.Of.To.Diameter()
			s.fastened(f, w, hole(size), hole(or(w.Pilot, size)))
		}
		for _, cut := range c.made[from:] {
			cut.With = w
		}
	}
}

// bodyOf is the wood of a member, and the place of what is drawn elsewhere.
func bodyOf(n Node) Box {
	if m, ok := n.(*Member); ok {
		return m.Body
	}
	return It(n).Cell
}

// touching is the side of one box at which another lies against it; false where none is known.
func touching(a, b Box) (Side, bool) {
	for side := Left; side <= Back; side++ {
		d := side.Axis()
		o := Dimension(d).others()
		if !shared(a[o[0]], b[o[0]]) || !shared(a[o[1]], b[o[1]]) || !a[d].Known() || !b[d].Known() {
			continue
		}
		if side.Far() && wood.Same(a[d].To(), b[d].From) || !side.Far() && wood.Same(a[d].From, b[d].To()) {
			return side, true
		}
	}
	return 0, false
}

// shared reports whether two extents are known to share more than a touch.
func shared(a, b Extent) bool { return a.Known() && b.Known() && overlap(a, b) }

// places are where fasteners stand, along the grain and across it: in pairs where there are as
// many as of each, and else in a grid.
func (w *FixingPart) places() [][2]Length {
	along, across := w.Along, w.At
	n := w.Count.Or(max(len(along), len(across), 1))
	if len(along) == 0 {
		along = make([]Length, 1)
	}
	if len(across) == 0 {
		across = make([]Length, 1)
	}
	var all [][2]Length
	switch {
	case n > mostCuts:
	case len(along) == n && len(across) == n:
		for i := range along {
			all = append(all, [2]Length{along[i], across[i]})
		}
	case len(along)*len(across) == n:
		for _, l := range along {
			for _, a := range across {
				all = append(all, [2]Length{l, a})
			}
		}
	default:
		all = make([][2]Length, n)
	}
	return all
}

// fastened bores for one fastener through the side at which a member is fastened; the pilot is
// where it holds.
func (s *seat) fastened(f *Fixing, w *FixingPart, shank, pilot Box) {
	side, purpose := s.end.Side, Purpose{End: s.end, Fixing: f}
	own := func(k cutting, deep Extent, at Box) {
		cut := s.place(s.of, nil, k, s.lieOf(s.of).blank.inBlank(at), purpose)
		if !k.through {
			from := s.lieOf(s.of).blank.face(side)
			cut.At[from.Dimension()] = cut.In.fromFace(from, deep)
		}
	}
	into := func(k cutting, deep Extent, at Box) { s.mates(s.end, k, deep, at, purpose) }
	long := w.Of.To.Long
	if w.Word == Dowel || w.Word == "peg" {
		kind := CutDowel
		if w.Word == "peg" {
			kind = CutPeg
		}
		deep := begin(addUp(half(long), s.relief()))
		own(cutting{kind: kind, enters: side, round: true}, deep, shank)
		into(cutting{kind: kind, enters: side.Opposite(), round: true}, deep, shank)
		return
	}
	kind := CutScrew
	if w.Word == BoltJoint {
		kind = CutBolt
	}
	reach := addUp(long, w.Counterbore.Or(0))
	fast, mate := s.lieOf(s.of).stands.size(s.lieOf(s.of).stands.dimension(side.Axis())), s.end.MateSize()
	beyondFast, beyondMate := less(reach, fast), less(reach, mate) // with its head in the one, and in the other
	switch fromFast, fromMate := beyondFast.Length > 0, beyondMate.Length > 0; {
	case !beyondFast.Known() || !beyondMate.Known() || fromFast == fromMate: // it could go either way, or neither
	case fromFast:
		own(cutting{kind: kind, enters: side.Opposite(), round: true, through: true}, Extent{}, shank)
		into(cutting{kind: kind, enters: side.Opposite(), round: true}, begin(beyondFast), pilot)
	default:
		own(cutting{kind: kind, enters: side, round: true}, begin(beyondMate), pilot)
		into(cutting{kind: kind, enters: side, round: true, through: true}, Extent{}, shank)
	}
}
