package plan

// A member's finished sizes: from its layout and joints, and as stated.

// shaped makes sure that a member's shape can be read.
func (m *Member) shaped() {
	if m.Shape == nil {
		m.Shape = &plain
	}
}

// fillMember works out a member's sizes, once. Asked while its assembly is still being
// solved along another axis, it leaves what depends on that for later.
func (r *resolver) fillMember(m *Member) {
	if m.filled {
		return
	}
	m.filled = true
	for axis := Across; axis <= Behind; axis++ {
		if m.In.state[axis] == busy {
			defer func() { m.filled = false }()
			continue
		}
		r.solve(m.In, axis)
	}
	if m.Parent == nil {
		r.fillRail(m)
		return
	}
	width := m.width()
	m.Worked.Thick = onAxis(m, m.Flat)
	m.Worked.Wide = addUp(onAxis(m, width), r.beyond(m.Over, width))
	m.Size.Thick = r.stated(&m.Thick, m.Worked.Thick)
	m.Size.Wide = r.stated(&m.Wide, m.Worked.Wide)

	span := m.Body[m.Grain]
	total := Length{Length: span.Size, How: Derived}
	if !span.Sized {
		total.How = Unknown
	}
	for i, side := range sidesOf(m.Grain) {
		e := r.end(m, side)
		if !e.Free {
			e.Joint = r.jointAt(m, e)
		}
		e.Adds = r.adds(e)
		m.Ends[i] = e
		total = addUp(total, e.Adds)
	}
	total = addUp(total, r.beyond(m.Over, m.Grain))
	if m.Parent.Axis != m.Grain {
		m.Worked.Long = total
	} else if m.Along.Known() || m.Shared {
		m.Worked.Long = total // its number is between the shoulders too
	}
	m.Size.Long = r.stated(&m.Cut, r.stated(&m.Long, m.Worked.Long))
	if m.Part.To != nil {
		m.Size = Size3{r.partSize(m, "long"), r.partSize(m, "wide"), r.partSize(m, "thick")}
	}
	if m.Lid != nil {
		m.fillLid()
	}
}

// beyond is how far a top stands beyond what it lies on, at both sides along an axis together.
func (r *resolver) beyond(o *Over, axis Axis) Length {
	switch {
	case o == nil:
	case axis == Across:
		ends := r.need(&o.Ends).Or(0)
		return addUp(ends, ends)
	case axis == Behind:
		return addUp(r.need(&o.Front).Or(0), r.need(&o.Back).Or(0))
	}
	return derived(0)
}

// width is the axis along which a member's width lies.
func (m *Member) width() Axis { return 3 - m.Flat - m.Grain }

// fillRail works out the one rail of a polygon, whose length must be said: no list tells it.
func (r *resolver) fillRail(m *Member) {
	m.filled = true
	m.Size = Size3{
		Long:  r.stated(&m.Cut, r.need(&m.Long)),
		Wide:  r.stated(&m.Wide, r.need(&m.Along)),
		Thick: r.stated(&m.Thick, m.In.Outside[Behind]),
	}
}

// onAxis is how much wood a member has along an axis.
func onAxis(m *Member, axis Axis) Length {
	if b := m.Body[axis]; b.Sized {
		return derived(b.Size)
	}
	return Length{}
}

// stated is the size that the plan states, else the one worked out.
func (r *resolver) stated(said *Length, worked Length) Length {
	if r.need(said).How != Unknown {
		return *said
	}
	return worked
}

// fillTop works out a top that stands alone: what it lies on, and how far it stands
// beyond that; its boards are glued edge to edge along the ends.
func (r *resolver) fillTop(m *Member) {
	if m.filled {
		return
	}
	m.filled = true
	m.shaped()
	m.Worked.Thick = r.thick(m.Of)
	m.Size.Thick = r.stated(&m.Thick, m.Worked.Thick)
	if o := m.Over; o != nil && o.Of.To != nil && r.solve(o.Of.To, Across) && r.solve(o.Of.To, Behind) {
		m.Worked.Long = addUp(o.Of.To.Outside[Across], r.beyond(o, Across))
		m.Worked.Wide = addUp(o.Of.To.Outside[Behind], r.beyond(o, Behind))
	}
	m.Size.Long = r.stated(&m.Long, m.Worked.Long)
	m.Size.Wide = r.stated(&m.Wide, m.Worked.Wide)
}

// CoreLong is the length of a top's boards: what its breadboard ends leave, and the
// tongues that go into them; the whole length where it has none.
func (m *Member) CoreLong() Length {
	b := m.Breadboard
	if b == nil {
		return m.Size.Long
	}
	tongue := b.Tongue.Deep
	return less(addUp(m.Size.Long, tongue, tongue), b.Wide, b.Wide)
}

// fillPart works out the size of a part that is declared by itself.
func (r *resolver) fillPart(p *Part) {
	p.shaped()
	use := &Member{Shape: &plain, Part: Ref[Part]{To: p}}
	p.Size = Size3{r.partSize(use, "long"), r.partSize(use, "wide"), r.partSize(use, "thick")}
}

// Board reports whether a member is a board, and not a stick.
func (m *Member) Board() bool { return boards[m.Word] }

// Strips is how many strips of an edging come off the length, and off the width, of a board whose
// grain runs along one axis and whose thickness lies along another. One on a face, or one that
// does not say where it is, counts as none.
func (e *Edging) Strips(grain, flat Axis) (long, wide int) {
	axis, n := Across, 1
	switch e.Edge.Is {
	case "front", "back":
		axis = Behind
	case "left", "right":
	case "ends":
		axis, n = grain, 2
	default:
		return 0, 0
	}
	switch axis {
	case grain:
		return n, 0
	case flat:
		return 0, 0
	}
	return 0, n
}
