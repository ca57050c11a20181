package rules

// Leaves that open in the piece in which they stand, and what stands in their way.

import (
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// opening is a door or a lid as it opens, seen along its pin. Its own measures begin at its hinge edge and at its face:
// towards its free edge, and backwards.
type opening struct {
	door              *plan.Door
	node              plan.Node
	swing             plan.Swing
	across, back, pin plan.Axis // of the piece: from edge to edge, from face to back, along the pin
	edge, face        wood.Length
	turned            bool        // its free edge is at the left of its hinge edge, above it, or before it
	along             plan.Extent // its place along the pin
	knobs             []knob
}

// knob is a handle on a leaf, as it is seen along the pin.
type knob struct {
	from, stands wood.Length // from the hinge edge; before the face
	along        plan.Extent
}

// standsBy is something beside a leaf: a place in the piece, of which the axis without a size goes on and on.
type standsBy struct {
	at     plan.Box
	node   plan.Node // nil of a wall
	front  bool      // it opens itself
	called string
	span   diag.Span
}

const (
	knobIn   = wood.Inch     // how far from the free edge a handle sits: common practice, no source
	knobWide = wood.Inch / 4 // how wide a handle is taken to be, which is less than it is
	farAway  = 100 * wood.Metre
)

// leaves are the doors and the lids of a piece that face its front or lie level, as far as their places are known.
func (s *onFloor) leaves(p *plan.Plan) []opening {
	var all []opening
	for _, w := range s.things {
		if !w.Faces() {
			continue
		}
		d, ok := w.Node.(*plan.Door)
		if m, board := w.Node.(*plan.Member); board && m.Lid != nil && m.Flat == plan.Down {
			d, ok = m.Lid, true
		}
		if !ok || !closed(&d.Item) {
			continue
		}
		if l, known := openingOf(w, d); known {
			all = append(all, l)
		}
	}
	return all
}

// openingOf tells how a leaf opens; false where something of it is not known.
func openingOf(w plan.Within, d *plan.Door) (opening, bool) {
	hung, turns := d.Hung()
	box, known := leafBox(d)
	if !turns || !known {
		return opening{}, false
	}
	l := opening{door: d, node: w.Node, across: hung.Axis(), back: plan.Behind, pin: plan.Down - hung.Axis()}
	far := hung.Far()
	if d.Board != nil {
		l.back = plan.Down
		if l.across, l.pin = plan.Across, plan.Behind; hung == plan.Upper { // the back of a lid
			l.across, l.pin, far = plan.Behind, plan.Across, true
		}
	}
	size, thick := box[l.across].Size, box[l.back].Size
	outer := w.Box(box)
	l.turned = far != (l.across == plan.Across && w.Mirrored())
	if l.edge = outer[l.across].From; l.turned {
		l.edge = outer[l.across].To()
	}
	l.face, l.along = outer[l.back].From, outer[l.pin]
	l.swing = plan.Swing{Thick: thick, Wide: size}
	if s, ok := d.Swing(); ok && hungBy(d, "butt", "knife", "pivot") {
		l.swing = s
	}
	for _, k := range knobsOf(d, size, box[l.pin], l.pin) {
		place := box
		place[l.pin] = k.along
		k.along = w.Box(place)[l.pin]
		l.knobs = append(l.knobs, k)
	}
	return l, outer[0].Known() && outer[1].Known() && outer[2].Known()
}

// leafBox is where a leaf or a drawer's front stands in its own assembly when it is shut.
func leafBox(d *plan.Door) (plan.Box, bool) {
	if m := d.Board; m != nil {
		box := m.Body
		return box, box[0].Known() && box[1].Known() && box[2].Known()
	}
	box, known := frontBox(&d.Item, d.Edges, d.Thick())
	if d.Fit.Kind.Is == "overlay" {
		box[plan.Behind].From -= d.Thick().Length
	}
	return box, known
}

// frontBox is the place of a front that begins where its opening does.
func frontBox(it *plan.Item, edges [4]plan.Edge, thick plan.Length) (plan.Box, bool) {
	box := it.Cell
	for _, e := range edges {
		if !e.Less.Known() {
			return box, false
		}
		own := &box[e.Side.Axis()]
		own.Size -= e.Less.Length
		if !e.Side.Far() {
			own.From += e.Less.Length
		}
	}
	box[plan.Behind].Size, box[plan.Behind].Sized = thick.Length, thick.Known()
	return box, box[0].Known() && box[1].Known() && box[2].Known()
}

// knobsOf are the handles of a leaf that is so wide from its hinge edge on, and lies so along its pin.
func knobsOf(d *plan.Door, wide wood.Length, along plan.Extent, pin plan.Axis) []knob {
	var all []knob
	for _, use := range d.Handles {
		for _, at := range handlesAt(use, along, pin) {
			all = append(all, knob{from: max(wide/2, wide-knobIn), stands: use.Handle.Projects.Length, along: at})
		}
	}
	return all
}

// handlesAt are the places of handles along an axis: as the plan says, else in the middle; none where it is not
// known how far they stand out, or where they sit.
func handlesAt(use *plan.HardwareUse, along plan.Extent, axis plan.Axis) []plan.Extent {
	if use.Handle == nil || !use.Handle.Projects.Known() {
		return nil
	}
	var all []plan.Extent
	place := func(from wood.Length) {
		if axis == plan.Down {
			from = along.Size - from
		}
		all = append(all, plan.Extent{From: along.From + from - knobWide/2, Size: knobWide, Placed: along.Placed, Sized: true})
	}
	for _, at := range use.At {
		if at.Known() {
			place(at.Length)
		}
	}
	switch {
	case use.FromTop.Known():
		place(along.Size - use.FromTop.Length)
	case len(use.At) == 0 && use.Number() == 1 && !use.FromTop.Said():
		place(along.Size / 2)
	}
	return all
}

// inTheWay is what stands in a piece, on it and beside it, with the handles of its fronts.
func (s *onFloor) inTheWay() []standsBy {
	var all []standsBy
	for _, w := range s.things {
		it := plan.It(w.Node)
		add := func(box plan.Box, called string, front bool) {
			all = append(all, standsBy{at: w.Box(box), node: w.Node, front: front, called: called, span: it.Span})
		}
		switch n := w.Node.(type) {
		case *plan.Member:
			add(n.Body, titled(it), n.Lid != nil)
		case *plan.Panel:
			add(n.Cell, titled(it), false)
		case *plan.Door:
			box, _ := leafBox(n)
			add(box, titled(it), true)
			if l, known := openingOf(w, n); known {
				for _, k := range l.knobs {
					all = append(all, standsBy{at: l.knobBox(k), node: n, front: true, called: "the handle of " + titled(it), span: it.Span})
				}
			}
		case *plan.Drawer:
			box, known := shutDrawer(n)
			add(box, titled(it), true)
			for _, use := range n.Handles {
				for _, at := range handlesAt(use, box[plan.Across], plan.Across) {
					knob, stands, down := box, use.Handle.Projects.Length, box[plan.Down]
					knob[plan.Across] = at
					knob[plan.Down] = plan.Extent{From: down.From + (down.Size-knobWide)/2, Size: knobWide, Placed: known, Sized: known}
					knob[plan.Behind] = plan.Extent{From: box[plan.Behind].From - stands, Size: stands, Placed: known, Sized: known}
					add(knob, "the handle of "+titled(it), true)
				}
			}
		case *plan.Placed:
			if n.Part.To == nil || n.Part.To.Root == nil {
				add(n.Cell, titled(it), false)
			} else if n.Part.To.Walls != nil && w.Faces() {
				all = append(all, wallsOf(n.Part.To, w.Outside(), w.Mirrored() != n.Mirrored.On)...)
			}
		}
	}
	for _, top := range s.tops {
		box := plan.Box{top.Reaches(plan.Across), {}, top.Reaches(plan.Behind)}
		if thick := top.Size.Thick; thick.Known() {
			box[plan.Down] = plan.Extent{From: -thick.Length, Size: thick.Length, Placed: true, Sized: true}
		}
		all = append(all, standsBy{at: box, node: top, called: titled(&top.Item), span: top.Span})
	}
	var outside plan.Box
	for axis, l := range s.Outside {
		outside[axis] = plan.Extent{Size: l.Length, Placed: true, Sized: l.Known()}
	}
	return append(all, wallsOf(s.Assembly, outside, false)...)
}

// wallsOf are the walls round an assembly that stands so in its piece.
func wallsOf(a *plan.Assembly, at plan.Box, mirrored bool) []standsBy {
	var all []standsBy
	for side, called := range []string{"the wall at its left", "the wall at its right", "what is above it", "", "what is before it", "the wall behind it"} {
		said := plan.Side(side)
		if mirrored && said.Axis() == plan.Across {
			said = said.Opposite()
		}
		by, axis := a.WallAt(said), plan.Side(side).Axis()
		if !by.Known() || !at[axis].Known() {
			continue
		}
		wall := standsBy{called: called, span: by.Span}
		for i := range wall.at {
			wall.at[i] = plan.Extent{From: -farAway, Size: 2 * farAway, Placed: true, Sized: true}
		}
		wall.at[axis] = plan.Extent{From: at[axis].From - by.Length - farAway, Size: farAway, Placed: true, Sized: true}
		if plan.Side(side).Far() {
			wall.at[axis].From = at[axis].To() + by.Length
		}
		all = append(all, wall)
	}
	return all
}

// shutDrawer is where the front of a shut drawer stands in its own assembly.
func shutDrawer(d *plan.Drawer) (plan.Box, bool) {
	var thick plan.Length
	if d.Front != nil {
		thick = d.Front.Size.Thick
	}
	box, known := frontBox(&d.Item, d.Edges, thick)
	if d.Fit.Kind.Is == "overlay" {
		box[plan.Behind].From -= thick.Length
	}
	return box, known
}

// knobBox is where a handle is in the piece when its leaf is shut.
func (l *opening) knobBox(k knob) (box plan.Box) {
	box[l.pin] = k.along
	box[l.back] = plan.Extent{From: l.face - k.stands, Size: k.stands, Placed: true, Sized: true}
	at := plan.Extent{From: l.edge + k.from - knobWide/2, Size: knobWide, Placed: true, Sized: true}
	if l.turned {
		at.From = l.edge - k.from - knobWide/2
	}
	box[l.across] = at
	return box
}

// inLeaf is a place in the piece as a leaf measures: from its hinge edge on, and from its face backwards.
func (l *opening) inLeaf(by standsBy) [2]plan.Extent {
	x, y := by.at[l.across], by.at[l.back]
	y.From -= l.face
	if x.From -= l.edge; l.turned {
		x.From = -x.To()
	}
	return [2]plan.Extent{x, y}
}

// stop is where a leaf meets something.
type stop struct {
	degrees float64
	with    string // what of the leaf
	by      standsBy
}

// before is how far something must stand before the face of a leaf to be in its way, and touch how far two things must
// run into each other to meet.
const (
	before = wood.Inch / 32
	touch  = wood.Inch / 64
)

// stops is what a leaf meets first while it opens so far; false where there is nothing.
func (l *opening) stops(degrees float64, in []standsBy) (first stop, ok bool) {
	parts := l.parts()
	radius := l.radius(parts)
	first.degrees = degrees
	for _, by := range in {
		at := l.inLeaf(by)
		if by.node == l.node || !at[0].Known() || !at[1].Known() || !l.near(at, radius) {
			continue
		}
		if by.node != nil { // no wall
			if at[0].From+touch < l.swing.Wide && at[0].To()-touch > 0 {
				continue // it lies before the leaf, and opens before it
			}
			if at[1].Size = min(at[1].To(), -before) - at[1].From; at[1].Size <= touch {
				continue
			}
		}
		for _, part := range parts {
			if !overlapping(by.at[l.pin], part.along) {
				continue
			}
			if turned, meets := l.meets(part, at, first.degrees); meets && (!ok || turned < first.degrees) {
				first, ok = stop{turned, l.meetsWith(part, at, turned), by}, true
			}
		}
	}
	return first, ok
}

// radius is how far from its pin a leaf reaches.
func (l *opening) radius(parts []leafPart) wood.Length {
	farthest := 0.0
	for _, part := range parts {
		for _, c := range part.corners {
			farthest = max(farthest, math.Hypot(float64(c[0]+l.swing.Out), float64(c[1]+l.swing.Proud)))
		}
	}
	return wood.Length(math.Ceil(farthest))
}

// near reports whether a place is so near to the pin that the leaf may meet it.
func (l *opening) near(at [2]plan.Extent, radius wood.Length) bool {
	pin := [2]wood.Length{-l.swing.Out, -l.swing.Proud}
	for i, e := range at {
		if e.From > pin[i]+radius || e.To() < pin[i]-radius {
			return false
		}
	}
	return true
}

// leafPart is a part of a leaf that may meet something: it, or one of its handles.
type leafPart struct {
	called  string // "" of the leaf itself
	along   plan.Extent
	corners [4][2]wood.Length
}

func (l *opening) parts() []leafPart {
	part := func(called string, along plan.Extent, from, to, front, back wood.Length) leafPart {
		return leafPart{called, along, [4][2]wood.Length{{from, front}, {to, front}, {to, back}, {from, back}}}
	}
	all := []leafPart{part("", l.along, 0, l.swing.Wide, 0, l.swing.Thick)}
	for _, k := range l.knobs {
		all = append(all, part("handle", k.along, k.from-knobWide/2, k.from+knobWide/2, -k.stands, 0))
	}
	return all
}

// meets is at how many degrees a part of a leaf first meets a place, up to so many.
func (l *opening) meets(part leafPart, at [2]plan.Extent, degrees float64) (float64, bool) {
	clear := 0.0
	for turned := range openingTo(degrees) {
		if !l.runsInto(part, at, turned) {
			clear = turned
			continue
		}
		for range 8 { // between the two
			if middle := (clear + turned) / 2; l.runsInto(part, at, middle) {
				turned = middle
			} else {
				clear = middle
			}
		}
		return clear, true
	}
	return 0, false
}

// meetsWith is what of a leaf meets a place at so many degrees.
func (l *opening) meetsWith(part leafPart, at [2]plan.Extent, degrees float64) string {
	if part.called != "" {
		return part.called
	}
	for i, c := range part.corners {
		x, y := l.swing.Corner(c[0], c[1], degrees+1)
		if x > at[0].From && x < at[0].To() && y > at[1].From && y < at[1].To() {
			return [...]string{"hinge edge", "free edge", "free edge", "hinge edge"}[i]
		}
	}
	return "leaf"
}

// runsInto reports whether a part of a leaf that is turned so far lies in a place, by more than a touch: whether along none
// of the four directions of their edges there is room between the two.
func (l *opening) runsInto(part leafPart, at [2]plan.Extent, degrees float64) bool {
	var own [4][2]float64
	for i, c := range part.corners {
		x, y := l.swing.Corner(c[0], c[1], degrees)
		own[i] = [2]float64{float64(x), float64(y)}
	}
	from, to := [2]float64{float64(at[0].From), float64(at[1].From)}, [2]float64{float64(at[0].To()), float64(at[1].To())}
	other := [4][2]float64{from, {to[0], from[1]}, to, {from[0], to[1]}}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	for _, along := range [4][2]float64{{1, 0}, {0, 1}, {cos, -sin}, {sin, cos}} {
		a, b := spread(own, along), spread(other, along)
		if min(a[1], b[1])-max(a[0], b[0]) <= float64(touch) {
			return false
		}
	}
	return true
}

// spread is from where to where corners lie along a direction.
func spread(corners [4][2]float64, along [2]float64) [2]float64 {
	s := [2]float64{math.Inf(1), math.Inf(-1)}
	for _, c := range corners {
		v := c[0]*along[0] + c[1]*along[1]
		s = [2]float64{min(s[0], v), max(s[1], v)}
	}
	return s
}

// reach is how far a leaf and its handles reach beyond its hinge edge, and before its face, while it opens so far.
func (l *opening) reach(degrees float64) (farthest [2]wood.Length) {
	for _, part := range l.parts() {
		for turned := range openingTo(degrees) {
			for _, c := range part.corners {
				x, y := l.swing.Corner(c[0], c[1], turned)
				farthest = [2]wood.Length{max(farthest[0], -x), max(farthest[1], -y)}
			}
		}
	}
	return farthest
}
