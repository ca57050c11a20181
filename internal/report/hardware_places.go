package report

// Where hardware sits that is not let into wood: on leaves, lids and drawers, and on what is beside them.

import (
	"cmp"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// member lists the pegs of a top's breadboard ends, and what hangs a lid.
func (l *hardwareLister) member(m *plan.Member, n int) {
	if b := m.Breadboard; b != nil && b.Peg != nil {
		l.fastener(b.Peg.Of.To, many(n, 2*max(len(b.Peg.At), 1)))
	}
	if m.Lid == nil {
		return
	}
	l.lid(m, n)
}

// lid marks out what hangs a lid, shuts it and opens it along its edges: in the lid, and, where that stands elsewhere, below it.
func (l *hardwareLister) lid(m *plan.Member, n int) {
	lid := m.Lid
	hung, turns := plan.Back, lid.Hang.Is == "back"
	if side, known := lid.Hung(); known && side.Axis() == plan.Across {
		hung, turns = side, true
	}
	axis := plan.Across
	if hung.Axis() == plan.Across {
		axis = plan.Behind
	}
	from := sideOf(axis, false).String() + " end"
	for _, uses := range [][]*plan.HardwareUse{lid.Hinges, lid.Latches, lid.Handles} {
		for _, use := range uses {
			r := l.used(use, n)
			if r == nil {
				continue
			}
			place := l.in(&m.Item)
			place.Count = n
			if turns {
				edge := hung.Opposite()
				if use.Hinge != nil {
					edge = hung
				}
				place.Side = edge.String() + " edge"
			}
			marks := statedMarks(alongLid(m, use, axis), from)
			if marks[0].At.How == plan.Unknown {
				place.Count = many(n, use.Number())
			}
			r.putEach(place, marks)
			if first := m.Body[axis]; use.Hinge != nil && m.In != nil && first.Placed && !wood.Same(first.From, 0) && marks[0].At.Known() {
				place.What, place.Side = "below it", hung.String()
				for i := range marks {
					marks[i].At = plan.Length{Length: marks[i].At.Length + first.From, How: plan.Derived}
					marks[i].From = from + " of " + cmp.Or(plan.PathOf(m.In), "the case")
				}
				r.putEach(place, marks)
			}
		}
	}
	for _, use := range lid.Stays {
		l.stay(use, l.in(&m.Item), lid, n)
	}
}

// alongLid is where hardware stands along an edge of a lid, from its left or front end; nothing where the plan does not say.
func alongLid(m *plan.Member, use *plan.HardwareUse, axis plan.Axis) []plan.Length {
	size := m.Body[axis]
	n := use.Number()
	switch {
	case len(use.At) > 0:
		return use.At
	case use.Centred.On && size.Sized:
		return []plan.Length{{Length: size.Size / 2, How: plan.Derived}}
	case use.Hinge == nil || !use.Ends.Known() || !use.Hinge.Along().Known() || !size.Sized || n < 2 || n > mostBoxes:
		return nil
	}
	all := make([]plan.Length, n)
	first := use.Ends.Length + use.Hinge.Along().Length/2
	for i := range all {
		all[i] = plan.Length{Length: first + (size.Size-2*first)*wood.Length(i)/wood.Length(n-1), How: plan.Derived}
	}
	return all
}

func (l *hardwareLister) door(d *plan.Door, n int) {
	hung, turns := d.Hung()
	for _, use := range d.Hinges {
		r := l.used(use, n)
		if r != nil && turns && use.Hinge.Kind.Is == "cup" {
			l.plates(r, d, use, hung, n)
		}
		switch {
		case r == nil || l.cut[use]:
		case turns && (use.Hinge.Kind.Is == "knife" || use.Hinge.Kind.Is == "pivot"):
			l.pins(r, d, use, hung, n)
		default:
			l.onLeaf(r, d, use, hung, turns, n)
		}
	}
	for _, use := range d.Latches {
		r, edge := l.used(use, n), hung.Opposite()
		switch use.On.Is {
		case "head":
			edge = plan.Upper
		case "foot":
			edge = plan.Lower
		}
		if r == nil {
			continue
		}
		known := turns || use.On.Is == "head" || use.On.Is == "foot"
		if !l.cut[use] {
			l.onLeaf(r, d, use, edge, known, n)
		}
		if known {
			l.key(r, d, use, edge, n)
		}
		if !l.cut[keeperOf{use}] && known {
			l.strike(r, d, use, edge, n)
		}
	}
	for _, use := range d.Handles {
		if r := l.used(use, n); r != nil {
			l.onLeaf(r, d, use, hung.Opposite(), turns, n)
		}
	}
	for _, use := range d.Stays {
		l.stay(use, l.in(&d.Item), d, n)
	}
}

// plateLine is how far behind the back of the leaf the screws of a cup hinge's mounting plate stand: common practice, no source.
const plateLine = 37 * wood.Millimetre

// plates marks out the mounting plates of cup hinges, inside the case.
func (l *hardwareLister) plates(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, hung plan.Side, n int) {
	beside, ok := plan.Neighbour(d, hung).(*plan.Member)
	if !ok {
		return
	}
	front := plan.Length{Length: plateLine, How: plan.Default}
	if thick := d.Thick(); d.Fit.Kind.Is != "overlay" {
		if front.Length += thick.Length; !thick.Known() {
			front = plan.Length{}
		}
	}
	axis := plan.Down - hung.Axis()
	cell, first := d.Cell[axis], d.Edges[axis*2].Less
	for _, at := range d.Along(use, hung) {
		at.From += first.Length
		at.Placed = at.Placed && first.Known()
		place := l.in(&beside.Item)
		place.Count, place.What, place.Side = n, "plate", hung.Opposite().String()+" face"
		place.Marks = []HardwareMark{
			fromNearer(at, plan.Length{Length: cell.Size, How: sized(cell)}, axis, " of the opening"),
			{At: front, From: "front edge to its screws"},
		}
		r.put(place)
	}
}

// pins marks out the pins of knife and pivot hinges, which sit at both ends of the edge on which a leaf turns: in the leaf,
// and in what stands beyond those ends of an inset one.
func (l *hardwareLister) pins(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, hung plan.Side, n int) {
	pin, known := d.Pin(use)
	at := func(size wood.Length) plan.Length {
		if !known {
			return plan.Length{}
		}
		return plan.Length{Length: size, How: plan.Derived}
	}
	axis := plan.Down - hung.Axis()
	ends := [2]plan.Side{sideOf(axis, false), sideOf(axis, true)}
	place := l.in(&d.Item)
	place.Count, place.What = many(n, use.Number()), "pin"
	place.Side = ends[0].String() + " and " + ends[1].String() + " edge"
	place.Marks = []HardwareMark{{At: at(-pin.Out), From: hung.String() + " edge"}, {At: at(-pin.Proud), From: "front face"}}
	r.put(place)
	if d.Fit.Kind.Is == "overlay" {
		return
	}
	in, front := plan.Length{}, plan.Length{}
	if gap := d.Edges[hung].Less; gap.Known() {
		in = at(gap.Length - pin.Out)
	}
	if deep := d.Cell[plan.Behind]; deep.Placed {
		front = at(deep.From - pin.Proud)
	}
	for _, end := range ends {
		if beside, ok := plan.Neighbour(d, end).(*plan.Member); ok {
			place := l.in(&beside.Item)
			place.Count, place.What = n, "pin"
			place.Marks = []HardwareMark{{At: in, From: hung.String() + " end of the opening"}, {At: front, From: "front edge of the case"}}
			r.put(place)
		}
	}
}

// key marks out the middle of the key or the knob of a lock.
func (l *hardwareLister) key(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, edge plan.Side, n int) {
	if use.Latch == nil || use.Latch.Backset.How == plan.Unknown {
		return
	}
	axis := plan.Down - edge.Axis()
	for _, at := range d.Along(use, edge) {
		place := l.in(&d.Item)
		place.Count, place.What, place.Side = n, "key or knob", "front face"
		place.Marks = []HardwareMark{{At: use.Latch.Backset, From: edge.String() + " edge of the leaf"}, fromNearer(at, d.Size[axis], axis, " of the leaf")}
		r.put(place)
	}
}

// onLeaf marks out what sits along an edge of a door and is not let in, from the nearer end of the leaf.
func (l *hardwareLister) onLeaf(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, edge plan.Side, known bool, n int) {
	place := l.in(&d.Item)
	place.Count = n
	if !known {
		place.Marks = []HardwareMark{{From: "end of the leaf"}}
		r.put(place)
		return
	}
	place.Side = edge.String() + " edge"
	axis := plan.Down - edge.Axis()
	all := d.Along(use, edge)
	for _, at := range all {
		place.Marks = []HardwareMark{fromNearer(at, d.Size[axis], axis, " of the leaf")}
		r.put(place)
	}
	if len(all) == 0 {
		place.Count = many(n, use.Number())
		place.Marks = []HardwareMark{{From: sideOf(axis, true).String() + " end of the leaf"}}
		r.put(place)
	}
}

// fromNearer measures a place along an axis from the nearer end of what it lies in.
func fromNearer(at plan.Extent, size plan.Length, axis plan.Axis, of string) HardwareMark {
	m := HardwareMark{From: sideOf(axis, false).String() + " end" + of}
	if !at.Placed {
		return m
	}
	m.At = plan.Length{Length: at.From, How: plan.Derived}
	if size.Known() && 2*at.From > size.Length {
		m.At.Length, m.From = size.Length-at.From, sideOf(axis, true).String()+" end"+of
	}
	return m
}

// sideOf is the near or the far side along an axis.
func sideOf(axis plan.Axis, far bool) plan.Side {
	side := plan.Side(axis * 2)
	if far {
		side++
	}
	return side
}

// strike marks out what the bolt or the ball of a latch meets beside a door, across from the latch, or where
// the plan says that its keeper sits: in what bounds the opening, or in the other leaf of a pair.
func (l *hardwareLister) strike(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, edge plan.Side, n int) {
	axis := plan.Down - edge.Axis()
	all := d.Along(use, edge)
	if size := d.Size[1]; use.Keeper.Known() && axis == plan.Down {
		all = []plan.Extent{{From: size.Length - use.Keeper.Length, Placed: size.Known()}}
	}
	cell := d.Cell[axis]
	whole, of := plan.Length{Length: cell.Size, How: sized(cell)}, " of the opening"
	first := d.Edges[axis*2].Less
	var place HardwarePlace
	switch beside := plan.Neighbour(d, edge).(type) {
	case *plan.Member:
		place = l.in(&beside.Item)
	case *plan.Placed:
		place = l.in(&beside.Item)
	case *plan.Door:
		place = l.in(&beside.Item)
		less := beside.Edges[axis*2].Less
		first.Length -= less.Length
		if !less.Known() {
			first.How = plan.Unknown
		}
		whole, of = beside.Size[axis], " of the leaf"
	default:
		return
	}
	place.Count, place.What = n, "strike"
	for _, at := range all {
		at.From += first.Length
		at.Placed = at.Placed && first.Known()
		place.Marks = []HardwareMark{fromNearer(at, whole, axis, of)}
		r.put(place)
	}
}

func sized(e plan.Extent) plan.How {
	if e.Sized {
		return plan.Derived
	}
	return plan.Unknown
}

// stay lists what holds a door or a lid open. Its points are measured from the hinge's pin; on a leaf of which it
// is known where that stands, from its edge.
func (l *hardwareLister) stay(use *plan.HardwareUse, place HardwarePlace, d *plan.Door, n int) {
	s := use.Stay
	if s == nil {
		return
	}
	n = many(n, use.Number())
	r := l.row(s, "stay", &s.Name, func() []string { return stayFigures(l.plan, s) }, n)
	place.Count, place.What = n, "point on the leaf"
	place.Marks = []HardwareMark{{At: s.Lid, From: "pin"}}
	if hung, turns := d.Hung(); turns && s.Lid.Known() {
		if d.Board != nil && hung == plan.Upper { // a lid is told as it is seen from above
			hung = plan.Back
		}
		for _, hinge := range d.Hinges {
			if pin, known := d.Pin(hinge); known {
				at := plan.Length{Length: s.Lid.Length - pin.Out, How: plan.Derived}
				place.Marks = append(place.Marks, HardwareMark{At: at, From: hung.String() + " edge of the leaf"})
				break
			}
		}
	}
	r.put(place)
	place.What = "point on the case"
	place.Marks = []HardwareMark{{At: s.Case.Across, From: "pin along the shut leaf"}, {At: s.Case.Deep, From: "pin into the case"}}
	r.put(place)
}

// drawer lists its slides, its handles and what holds its corners.
func (l *hardwareLister) drawer(d *plan.Drawer, n int) {
	if d.Slide.To != nil {
		l.slide(d, n)
	}
	for _, use := range d.Handles {
		r := l.used(use, n)
		if r == nil {
			continue
		}
		place := HardwarePlace{Count: n, Names: []string{"front"}, In: plan.PathOf(d)}
		switch f := d.Front; {
		case f != nil && use.Centred.On:
			place.Marks = []HardwareMark{{At: halved(f.Size.Long), From: "left end"}, {At: halved(f.Size.Wide), From: "lower edge"}}
			r.put(place)
		case use.FromTop.How != plan.Unknown:
			r.putEach(place, []HardwareMark{{At: use.FromTop, From: "upper edge"}})
		default:
			r.putEach(place, statedMarks(use.At, "lower or left end"))
		}
	}
	for _, j := range []*plan.Joint{d.FrontJoint, d.BackJoint} {
		if j != nil {
			l.joint(j, nil, many(n, 2))
		}
	}
}

// slide marks out a drawer's slides in the case and on its box. Undermount slides, and one in the middle, lie on the floor
// of the opening: common practice, no source.
func (l *hardwareLister) slide(d *plan.Drawer, n int) {
	s := d.Slide.To
	r := l.row(s, "slide", &s.Name, func() []string { return slideFigures(l.plan, s) }, n)
	r.Pairs = true
	typical := func(size wood.Length) plan.Length { return plan.Length{Length: size, How: plan.Default} }
	line, up, beside := d.SlideLine()
	if !beside && s.Kind.Is != "" {
		up = typical(0)
	}
	place := l.in(&d.Item)
	place.Count, place.What = n, "in the case"
	place.Marks = []HardwareMark{
		{At: up, From: "floor of the opening"},
		{At: above(d), From: "lower end of " + cmp.Or(plan.PathOf(d.In), "the case") + " to that floor"},
	}
	front := HardwareMark{From: "front edge of the case to the slide's front end"}
	switch at := d.Cell[plan.Behind]; {
	case d.Fit.Kind.Is == "overlay":
		front.At = typical(0)
	case d.Front != nil && d.Inner != nil && at.Placed && d.Front.Size.Thick.Known():
		front.At = plan.Length{Length: at.From + d.Front.Size.Thick.Length, How: plan.Derived}
	}
	place.Marks = append(place.Marks, front)
	if s.Kind.Is == "centre" {
		cell := d.Cell[plan.Across]
		place.Marks = append(place.Marks, HardwareMark{At: halved(plan.Length{Length: cell.Size, How: sized(cell)}), From: "left end of the opening"})
	}
	r.put(place)
	if beside {
		place = HardwarePlace{Count: many(n, 2), In: plan.PathOf(d), Names: []string{"left", "right"}, What: "on the box"}
		place.Marks = []HardwareMark{{At: line, From: "lower edge"}, {At: typical(0), From: "front end"}}
		r.put(place)
	}
}

// above is how far the floor of a drawer's opening is above the lower end of what it stands in.
func above(d *plan.Drawer) plan.Length {
	at, whole := d.Cell[plan.Down], d.In.Outside[plan.Down]
	if !at.Known() || !whole.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: whole.Length - at.To(), How: plan.Derived}
}

func halved(l plan.Length) plan.Length {
	if !l.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: l.Length / 2, How: plan.Derived}
}

// rod marks out a pole's sockets on both sides of its bay. Where it hangs front to back no plan says: the middle is common
// practice, no source.
func (l *hardwareLister) rod(bay *plan.Space, use *plan.HardwareUse, n int) {
	r := l.used(use, n)
	if r == nil {
		return
	}
	place := l.in(&bay.Item)
	place.Count, place.What = many(n, use.Number()), "left and right of it, a socket each"
	deep := HardwareMark{From: "front of the bay"}
	if cell := bay.Cell[plan.Behind]; cell.Sized {
		deep.At = plan.Length{Length: cell.Size / 2, How: plan.Default}
	}
	marks := statedMarks(use.At, "lower end of the bay")
	switch {
	case use.FromTop.How != plan.Unknown:
		marks = []HardwareMark{{At: use.FromTop, From: "upper end of the bay"}}
	case use.Centred.On && bay.Cell[plan.Down].Sized:
		marks = []HardwareMark{{At: plan.Length{Length: bay.Cell[plan.Down].Size / 2, How: plan.Derived}, From: "upper end of the bay"}}
	}
	if len(marks) > 1 {
		place.Count = n
	}
	for _, m := range marks {
		place.Marks = []HardwareMark{m, deep}
		r.put(place)
	}
}
