package plan

// How a blank lies in its assembly, and the way of a place from an assembly into a blank.

import "plancheck/internal/wood"

// lie is how a blank lies in an assembly, by its Dimension: along which axis, between which two
// planes, and whether it is measured from the far one.
type lie struct {
	axis     [3]Axis
	near, to [3]plane
	far      [3]bool
}

// plane is where one side of a blank lies along an axis, if that is known. Every member has six of
// them, which is why it is no Length.
type plane struct {
	at    wood.Length
	known bool
}

// planeAt is a plane at a length.
func planeAt(l Length) plane { return plane{l.Length, l.Known()} }

// out is a plane moved by a length.
func (p plane) out(by Length) plane { return plane{p.at + by.Length, p.known && by.Known()} }

// in is a plane moved back by a length.
func (p plane) in(by Length) plane { return plane{p.at - by.Length, p.known && by.Known()} }

// lies are the two ways in which a member is measured: as it stands, in which the figures of its
// joints are read; and as its blank is, which differs where it is a part drawn by itself.
type lies struct {
	stands, blank *lie
}

// liesOf says how a member lies. Measures start at the left, the lower end and the front.
func liesOf(m *Member) *lies {
	l := &lie{axis: [3]Axis{m.Grain, Axis(3 - m.Flat - m.Grain), m.Flat}}
	for d, axis := range l.axis {
		e := m.Body[axis]
		if Dimension(d) == Long {
			e = m.Cell[axis]
		}
		if e.Placed {
			l.near[d] = plane{e.From, true}
		}
		if e.Known() {
			l.to[d] = plane{e.To(), true}
		}
		l.far[d] = axis == Down
	}
	if m.Ends[0] != nil && m.Ends[1] != nil {
		l.near[Long], l.to[Long] = l.near[Long].in(m.Ends[0].Adds), l.to[Long].out(m.Ends[1].Adds)
	}
	if o := m.Over; o != nil && l.axis[Long] == Across && l.axis[Wide] == Behind {
		l.near[Long], l.to[Long] = l.near[Long].in(o.Ends.Or(0)), l.to[Long].out(o.Ends.Or(0))
		l.near[Wide], l.to[Wide] = l.near[Wide].in(o.Front.Or(0)), l.to[Wide].out(o.Back.Or(0))
	}
	if m.Part.To == nil {
		return &lies{l, l}
	}
	part := *l
	for _, d := range []Dimension{Wide, Thick} {
		sides := sidesOf(part.axis[d])
		switch near, far := Neighbour(m, sides[0]) == nil, Neighbour(m, sides[1]) == nil; {
		case near && !far:
			part.far[d] = false
		case far && !near:
			part.far[d] = true
		}
	}
	if m.Turned.On {
		part.axis[Wide], part.axis[Thick] = part.axis[Thick], part.axis[Wide]
		part.near[Wide], part.near[Thick] = part.near[Thick], part.near[Wide]
		part.to[Wide], part.to[Thick] = part.to[Thick], part.to[Wide]
		part.far[Wide], part.far[Thick] = part.far[Thick], part.far[Wide]
	}
	return &lies{l, &part}
}

// standing is how a blank stands of which only its faces are to be named.
func standing(long, wide, thick Axis) *lie {
	return &lie{axis: [3]Axis{long, wide, thick}, far: [3]bool{long == Down, wide == Down, thick == Down}}
}

// size is the size of a blank in one dimension.
func (l *lie) size(d Dimension) Length {
	if !l.to[d].known || !l.near[d].known {
		return Length{}
	}
	return derived(l.to[d].at - l.near[d].at)
}

// dimension is the one that lies along an axis.
func (l *lie) dimension(axis Axis) Dimension {
	for d, a := range l.axis {
		if a == axis {
			return Dimension(d)
		}
	}
	return Long
}

// face is the face of the blank that looks to a side of the assembly.
func (l *lie) face(s Side) Face {
	d := l.dimension(s.Axis())
	f := Face(d * 2)
	if s.Far() != l.far[d] {
		f++
	}
	return f
}

// side is the side of the assembly to which a face of the blank looks.
func (l *lie) side(f Face) Side {
	d := f.Dimension()
	s := Side(l.axis[d] * 2)
	if f.Far() != l.far[d] {
		s++
	}
	return s
}

// inBlank is a place in the assembly, in the frame of the blank.
func (l *lie) inBlank(at Box) Box {
	var box Box
	for d, axis := range l.axis {
		e := at[axis]
		if l.far[d] {
			box[d] = Extent{From: l.to[d].at - e.To(), Size: e.Size, Placed: e.Known() && l.to[d].known, Sized: e.Sized}
		} else {
			box[d] = Extent{From: e.From - l.near[d].at, Size: e.Size, Placed: e.Placed && l.near[d].known, Sized: e.Sized}
		}
	}
	return box
}

// inAssembly is a stretch of one dimension of the blank, along the axis on which it lies.
func (l *lie) inAssembly(d Dimension, e Extent) Extent {
	if l.far[d] {
		return Extent{From: l.to[d].at - e.To(), Size: e.Size, Placed: e.Known() && l.to[d].known, Sized: e.Sized}
	}
	return Extent{From: l.near[d].at + e.From, Size: e.Size, Placed: e.Placed && l.near[d].known, Sized: e.Sized}
}

// inside is a place in the assembly of an end, as the assembly of its mate sees it.
func (w *way) inside(at Box) Box {
	if w == nil {
		return at
	}
	return w.placed.inside(w.from.inside(at))
}

// inner is a side of the assembly of an end, as the assembly of its mate sees it.
func (w *way) inner(s Side) Side {
	if w == nil {
		return s
	}
	return w.placed.inner(w.from.inner(s))
}

// stretch is an extent of which the beginning, the size, or both may be unknown.
func stretch(from, size Length) Extent {
	return Extent{From: from.Length, Size: size.Length, Placed: from.Known(), Sized: size.Known()}
}

// round is an extent of one size about a middle.
func round(middle, size Length) Extent {
	e := stretch(middle, size)
	e.From -= size.Length / 2
	e.Placed = middle.Known() && size.Known()
	return e
}

// begin is an extent from nought on.
func begin(size Length) Extent { return stretch(derived(0), size) }

// half is half of a length.
func half(l Length) Length {
	l.Length /= 2
	return l
}
