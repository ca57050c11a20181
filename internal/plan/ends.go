package plan

// Ends and edges: what each of them meets, which joint holds it there, and what that
// joint adds to its length.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// meetPanel finds what the four edges of a panel or a back meet, and a back's joints.
func (r *resolver) meetPanel(p *Panel) {
	r.facesFront(p)
	for side := Left; side <= Lower; side++ {
		e := r.end(p, side)
		if p.Word == "back" && !e.Free {
			if !e.underLid() {
				e.Joint = r.joined(e, jointSaid{edge: p.Joint, assembly: p.In.Joint})
			}
			e.Adds = r.adds(e)
		}
		p.Edges[side] = e
	}
}

// meetGlass finds what the four edges of a pane meet.
func (r *resolver) meetGlass(g *Glass) {
	r.facesFront(g)
	for side := Left; side <= Lower; side++ {
		e := r.end(g, side)
		e.Joint = r.mergeJoints(g.Joint)
		e.Adds = r.adds(e)
		g.Edges[side] = e
	}
}

// facesFront reports a panel or a pane that stands between what is before it and what is
// behind it. One in a frame faces the front of that frame, whichever way the frame turns.
func (r *resolver) facesFront(n Node) {
	it := n.item()
	if it.In.Kind == Frame || !between(n, Behind) || between(n, Across) {
		return
	}
	f := r.fault(UnknownWord, it.Name.Span, "%s does not stand here: it would face sideways, between what is before it and what is behind it", it.Called())
	f.Subject = PathOf(n)
	f.Fixes = []diag.Fix{{Title: "draw that side as a frame of its own, and place it: `frame left part end-frame`"}}
}

// sidesOf are the two sides at the ends of an axis.
func sidesOf(axis Axis) [2]Side { return [2]Side{Side(axis * 2), Side(axis*2) + 1} }

func (r *resolver) end(n Node, side Side) *End {
	e := &End{Of: n, Side: side, Faces: Neighbour(n, side)}
	e.Free = e.Faces == nil
	if !e.Free {
		e.covering(e.Faces, side.Opposite(), It(n).Cell, nil, r.solveAll)
	}
	return e
}

// way is how an end reaches a mate that is drawn elsewhere: what is placed there, and the way
// to that where it stands in something placed itself.
type way struct {
	placed *Placed
	from   *way
}

// meets takes note of a mate and of the way to it.
func (e *End) meets(m *Member, by *way) {
	if by != nil {
		for len(e.ways) < len(e.Mates) {
			e.ways = append(e.ways, nil)
		}
		e.ways = append(e.ways, by)
	}
	e.Mates = append(e.Mates, m)
}

// solveAll works out an assembly along every axis.
func (r *resolver) solveAll(a *Assembly) {
	for axis := Across; axis <= Behind; axis++ {
		r.solve(a, axis)
	}
}

// covering gathers the members of a neighbour that cover a cell's end, going down into
// lists and into what is drawn elsewhere on the side that faces it. What is drawn elsewhere is
// first solved.
func (e *End) covering(n Node, facing Side, cell Box, by *way, solve func(*Assembly)) {
	switch n := n.(type) {
	case *Member:
		e.meets(n, by)
	case *List:
		if len(n.Items) == 0 {
			return
		}
		if n.Axis == facing.Axis() {
			i := 0
			if facing.Far() {
				i = len(n.Items) - 1
			}
			e.covering(n.Items[i], facing, cell, by, solve)
			return
		}
		for _, inner := range n.Items {
			if overlap(It(inner).Cell[n.Axis], cell[n.Axis]) {
				e.covering(inner, facing, cell, by, solve)
			}
		}
	case *Placed:
		a := n.Part.To
		if a == nil || a.Root == nil {
			return
		}
		solve(a)
		e.covering(a.Root, n.inner(facing), n.inside(cell), &way{n, by}, solve)
	}
}

// inside is a place in the assembly in which something placed stands, as that sees it.
func (p *Placed) inside(outer Box) Box {
	var box Box
	for axis := Across; axis <= Behind; axis++ {
		own, place := outer[p.HostAxis(axis)], p.Cell[p.HostAxis(axis)]
		own.From -= place.From
		own.Placed = own.Placed && place.Placed
		if p.reversed(axis) {
			own.From = place.Size - own.To()
			own.Placed = own.Placed && own.Sized && place.Sized
		}
		box[axis] = own
	}
	return box
}

// Outer is a place in what is placed, as the assembly sees it in which that stands.
func (p *Placed) Outer(own Box) Box {
	var box Box
	for axis := Across; axis <= Behind; axis++ {
		at, place := own[axis], p.Cell[p.HostAxis(axis)]
		if p.reversed(axis) {
			at.From = place.Size - at.To()
			at.Placed = at.Placed && at.Sized && place.Sized
		}
		at.From += place.From
		at.Placed = at.Placed && place.Placed
		box[p.HostAxis(axis)] = at
	}
	return box
}

// inner is a side of the assembly in which something placed stands, as that sees it.
func (p *Placed) inner(outer Side) Side {
	axis := p.HostAxis(outer.Axis())
	side := Side(axis * 2)
	if outer.Far() != p.reversed(axis) {
		side++
	}
	return side
}

// overlap reports whether two extents share more than a touch; unknown ones may.
func overlap(a, b Extent) bool {
	if !a.Known() || !b.Known() {
		return true
	}
	return wood.Under(max(a.From, b.From), min(a.To(), b.To()))
}

// jointAt is the joint at a member's end: what is said for that end, then for the member,
// then for the whole assembly. A joint of the same kind adds to the next, another kind
// replaces it.
func (r *resolver) jointAt(m *Member, e *End) *Joint {
	said := jointSaid{member: m.Joint, assembly: m.In.Joint}
	if m.Word == "lid" {
		said.assembly = nil // it opens, and is joined to nothing unless it says so itself
	}
	if e.underLid() {
		said.member, said.assembly = nil, nil
	}
	for _, j := range m.EndJoints {
		if j.End.Is == e.Side.String() {
			said.edge = j.Joint
		}
	}
	return r.joined(e, said)
}

// underLid reports whether an end or an edge meets a lid, which opens.
func (e *End) underLid() bool {
	m, ok := e.Faces.(*Member)
	return ok && m.Word == "lid"
}

// jointSaid is what is said of a joint, the most particular first, and what its unsaid
// figures follow from. Ends of which all this is the same share one joint.
type jointSaid struct {
	edge, member, assembly *Joint
	mate, thick            Length
}

// joined is the joint at an end, its unsaid figures filled in.
func (r *resolver) joined(e *End, said jointSaid) *Joint {
	said.mate = e.MateSize()
	if m, ok := e.Of.(*Member); ok {
		said.thick = m.Size.Thick
		said.thick.Span = diag.Span{}
	}
	j, known := r.joints[said]
	if !known {
		if j = said.alone(); j == nil {
			j = r.mergeJoints(said.edge, said.member, said.assembly)
		}
		if j != nil {
			r.fillJoint(j, said.mate, said.thick)
		}
		r.joints[said] = j
	}
	return j
}

// alone is the first joint that is said, where none of the others adds to it and nothing of it
// follows from what it joins: it then serves as it stands, for any number of ends.
func (s jointSaid) alone() *Joint {
	var one *Joint
	for _, j := range []*Joint{s.edge, s.member, s.assembly} {
		switch {
		case j == nil:
		case j.From.Said() || one != nil && one.Kind.Is == j.Kind.Is:
			return nil
		case one == nil:
			one = j
		}
	}
	if one == nil || slices.Contains([]string{Tenon, LooseTenon, HalfLap, Bridle}, one.Kind.Is) {
		return nil
	}
	return one
}

// mergeJoints takes the most particular joint first. The result is a joint of its own; its
// kind is unknown where the first names one that is not there.
func (r *resolver) mergeJoints(joints ...*Joint) *Joint {
	var merged *Joint
	for _, j := range joints {
		for j != nil && j.From.To != nil {
			base := j.From.To
			joined := &Joint{Span: j.Span, Kind: base.Kind}
			r.inherit(InJoint, jointSlots(), joined, j)
			r.inherit(InJoint, jointSlots(), joined, base)
			joined.From = base.From
			j = joined
		}
		switch {
		case j == nil:
		case merged == nil:
			merged = &Joint{Name: j.Name, Kind: j.Kind, From: j.From, Span: j.Span}
			if j.Mortise != nil { // it may be given figures of its own
				merged.Mortise = &Mortise{Span: j.Mortise.Span}
			}
			if j.Haunch != nil {
				merged.Haunch = &Haunch{Span: j.Haunch.Span}
			}
			r.inherit(InJoint, jointSlots(), merged, j)
		case merged.Kind.Is == j.Kind.Is:
			r.inherit(InJoint, jointSlots(), merged, j)
		}
	}
	return merged
}

// cutJointRings reports joints at plan level that take after one another in a ring.
func (r *resolver) cutJointRings() {
	checked := make(map[*Joint]bool)
	for _, first := range r.plan.JointNamed {
		var chain []*Joint
		for j := first; j != nil && !checked[j]; j = j.From.To {
			if i := slices.Index(chain, j); i >= 0 {
				f := r.fault(Loop, j.Name.Span, "joint `%s` takes after itself", j.Name.Text)
				for _, through := range chain[i:] {
					f.note(through.From.Span, "`"+through.Name.Text+"` takes after `"+through.From.Name+"`")
				}
				j.From.To = nil
				break
			}
			chain = append(chain, j)
		}
		for _, j := range chain {
			checked[j] = true
		}
	}
}

// Relief is what a mortise is deeper than its tenon where the plan does not say, for glue
// and chips, and what a through tenon stands beyond its mate, to be levelled: 1/16 (1.5 mm).
func (p *Plan) Relief() wood.Length { return p.byTape(wood.Inch/16, 3*wood.Millimetre/2) }

// byTape is one default for plans in inches and its like for plans in millimetres.
func (p *Plan) byTape(inch, metric wood.Length) wood.Length {
	if p.Tape.Metric {
		return metric
	}
	return inch
}

// fillJoint gives a joint the figures that its kind works out from what it joins: how much
// of its mate it goes through, and how thick its own part is.
func (r *resolver) fillJoint(j *Joint, mate, thick Length) {
	r.needAll(&j.Long, &j.Deep, &j.Own, &j.Thick)
	if m := j.Mortise; m != nil {
		r.needAll(&m.Deep, &m.Own, &m.Thick)
	}
	switch j.Kind.Is {
	case Tenon:
		if j.Through.On && mate.Known() {
			j.Long = j.Long.Or(mate.Length + r.plan.Relief())
		}
		if j.Mortise == nil {
			j.Mortise = &Mortise{Span: j.Span}
		}
		if j.Long.Known() && !j.Through.On {
			j.Mortise.Deep = j.Mortise.Deep.Or(j.Long.Length + r.plan.Relief())
		}
		if j.Thick.Known() {
			j.Mortise.Thick = j.Mortise.Thick.Or(j.Thick.Length)
		}
	case LooseTenon:
		if j.Mortise != nil && j.Mortise.Deep.Known() {
			j.Mortise.Own = j.Mortise.Own.Or(j.Mortise.Deep.Length)
		}
	case HalfLap:
		if thick.Known() {
			j.Deep = j.Deep.Or(thick.Length / 2)
			if j.Deep.Known() {
				j.Own = j.Own.Or(thick.Length - j.Deep.Length)
			}
		}
	case Bridle:
		if mate.Known() {
			j.Deep = j.Deep.Or(mate.Length)
		}
		if thick.Known() {
			j.Thick = j.Thick.Or(thick.Length / 3)
		}
	}
}

// MateSize is how much wood an end's joint can go into: its mate's size in the direction of
// the end. Unknown where mates differ, or there are none.
func (e *End) MateSize() Length {
	var size Length
	for i, m := range e.Mates {
		s := e.sizeFacing(m)
		if !s.Known() || i > 0 && !wood.Same(s.Length, size.Length) {
			return Length{}
		}
		size = s
	}
	return size
}

// sizeFacing is a mate's size in the direction of an end.
func (e *End) sizeFacing(mate *Member) Length {
	axis := e.Side.Axis()
	if p, ok := e.Faces.(*Placed); ok {
		axis = p.HostAxis(axis)
	}
	b := mate.Body[axis]
	if !b.Sized {
		b = mate.Cell[axis]
	}
	if !b.Sized {
		return Length{}
	}
	return derived(b.Size)
}

// adds is what an end's joint adds to the length: nothing where it is free.
func (r *resolver) adds(e *End) Length {
	j := e.Joint
	if e.Free || j == nil {
		return derived(0)
	}
	r.needAll(&j.Long, &j.Deep, &j.Rabbet.Across, &j.Rabbet.Deep, &j.Lap, &j.Tail)
	switch j.Kind.Is {
	case "":
		return Length{} // what it is could not be read, and that was reported
	case Tenon, Tongue:
		return j.Long
	case Stub:
		return r.grooveBeside(e)
	case Housing, Dado, SlidingDovetail, DropIn:
		return j.Deep
	case Rabbet:
		if e.inOnePlane() {
			return j.Rabbet.Deep
		}
		return j.Rabbet.Across
	case HalfLap, Bridle, Mitre, BoxJoint:
		return e.MateSize()
	case Dovetail:
		mate := e.MateSize()
		mate.Length -= j.Lap.Length
		return mate
	case WedgeJoint:
		mate := e.MateSize()
		mate.Length += j.Tail.Length
		if !j.Tail.Known() {
			mate.How = Unknown
		}
		return mate
	}
	return derived(0)
}

// inOnePlane reports whether an end and its mate lie in one plane, as glass in a frame
// does; a board that meets another at right angles does not.
func (e *End) inOnePlane() bool {
	m, ok := e.Of.(*Member)
	if !ok {
		_, glass := e.Of.(*Glass)
		return glass
	}
	for _, mate := range e.Mates {
		if mate.Flat != m.Flat {
			return false
		}
	}
	return true
}

// grooveBeside is how deep the panel groove runs that a stub tenon fits into: that of the
// panel next to the stick in its list.
func (r *resolver) grooveBeside(e *End) Length {
	it := It(e.Of)
	if it.Parent == nil {
		return Length{}
	}
	for _, i := range []int{it.Index - 1, it.Index + 1} {
		if i < 0 || i >= len(it.Parent.Items) {
			continue
		}
		if g, ok := r.firstGroove(it.Parent.Items[i]); ok {
			return g
		}
	}
	if each, ok := it.In.Each["panel"].(*Panel); ok {
		return r.need(&each.Groove.Deep)
	}
	return Length{}
}

func (r *resolver) firstGroove(n Node) (Length, bool) {
	switch n := n.(type) {
	case *Panel:
		return r.need(&n.Groove.Deep), n.Groove.Deep.How != Unknown
	case *List:
		for _, inner := range n.Items {
			if g, ok := r.firstGroove(inner); ok {
				return g, true
			}
		}
	}
	return Length{}, false
}
