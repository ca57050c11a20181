package plan

// What hinges and locks cut into doors and into what they are hung on. A place in a leaf is told
// as in an assembly: from its left, its top and its front.

import "plancheck/internal/wood"

// door places what the hardware of a door cuts.
func (c *cutter) door(d *Door) {
	hung, known := hinged[d.Hang.Is]
	if !known {
		return
	}
	for _, use := range d.Hinges {
		if use.Hinge != nil {
			c.hinge(d, use, hung)
		}
	}
	for _, use := range d.Latches {
		if use.Latch == nil || use.Latch.Body.Wide.How == Unknown {
			continue
		}
		at := hung.Opposite()
		switch use.On.Is {
		case "head":
			at = Upper
		case "foot":
			at = Lower
		}
		body := use.Latch.Body // wide x high x deep
		for _, along := range d.Along(use, at) {
			var box Box
			depth := begin(body.Long)
			box[Down-at.Axis()] = about(along, body.Wide)
			box[Behind] = round(half(d.Thick()), body.Thick)
			c.leaf(d, use, at, cutting{kind: CutLockBody, enters: at}, depth, box)
		}
		if at.Axis() == Across && use.Keeper.How != Unknown { // how wide its opening is, nothing says
			along := round(less(d.Size[1], use.Keeper), use.Latch.KeeperHigh)
			c.beside(d, use, at, cutting{kind: CutKeeper, enters: at.Opposite()}, along, Extent{}, use.Latch.KeeperDeep)
		}
	}
}

// hinged are the edges on which a door, or a lid, can be hung.
var hinged = map[string]Side{"left": Left, "right": Right, "top": Upper, "bottom": Lower, "back": Upper}

// Thick is how thick the leaf stands.
func (d *Door) Thick() Length {
	switch leaf := &d.Leaf; {
	case leaf.Thick.How != Unknown:
		return leaf.Thick
	case leaf.Frame != nil:
		return leaf.Frame.Outside[Behind]
	case leaf.Part != nil:
		return leaf.Part.Size.Thick
	case leaf.Material != nil:
		return leaf.Material.Thickness()
	}
	return Length{}
}

// Hung is the edge at which a door is hung; false where it swings on none of its four.
func (d *Door) Hung() (Side, bool) {
	side, known := hinged[d.Hang.Is]
	return side, known
}

// Along is where a piece of hardware sits along an edge: the middle of each, as extents of no
// size on the axis along which the edge runs, from the leaf's upper or left end. Unsaid places are
// unknown.
func (d *Door) Along(use *HardwareUse, edge Side) []Extent {
	size, far := d.Size[1], true // from the lower end
	if edge.Axis() == Down {
		size, far = d.Size[0], false
	}
	var all []Extent
	add := func(at Length) {
		if far {
			at = less(size, at)
		}
		all = append(all, round(at, derived(0)))
	}
	for _, at := range use.At[:min(len(use.At), mostCuts)] {
		add(at)
	}
	switch n := use.Count.Or(2); {
	case len(all) > 0:
	case use.FromTop.How != Unknown:
		add(less(size, use.FromTop))
	case use.Centred.On:
		add(half(size))
	case use.Hinge != nil && use.Hinge.Along().Known() && n > 1 && n <= mostCuts:
		near, end := use.Ends, less(size, use.Ends)
		if use.InLine.On && edge.Axis() == Across {
			near, end = d.InsideRails()
		}
		first, last := addUp(near, half(use.Hinge.Along())), less(end, half(use.Hinge.Along()))
		for i := range n {
			if at := first; last.Known() && at.Known() {
				at.Length += (last.Length - first.Length) * wood.Length(i) / wood.Length(n-1)
				all = append(all, round(at, derived(0)))
			}
		}
	}
	return all
}

// InsideRails are the inner edges of the highest and the lowest rail of a framed leaf, from its
// upper end: between them lie hinges that are in line with the rails.
func (d *Door) InsideRails() (upper, lower Length) {
	f := d.Leaf.Frame
	if f == nil || !f.Outside[Down].Known() {
		return Length{}, Length{}
	}
	for _, m := range f.Members {
		at := m.Body[Down]
		if m.Grain != Across || !at.Known() {
			continue
		}
		if wood.Same(at.From, 0) {
			upper = derived(at.To())
		}
		if wood.Same(at.To(), f.Outside[Down].Length) {
			lower = derived(at.From)
		}
	}
	return upper, lower
}

// hinge places a hinge's cuts in the leaf, and its gain in what the door hangs on.
func (c *cutter) hinge(d *Door, use *HardwareUse, hung Side) {
	h := use.Hinge
	for _, along := range d.Along(use, hung) {
		var box Box
		axis := Down - hung.Axis()
		switch h.Kind.Is {
		case "cup": // from the back, so far from the edge
			box[axis] = about(along, h.Bore)
			box[Behind] = stretch(less(d.Thick(), h.Deep), h.Deep)
			depth := stretch(or(use.Rim, h.Rim), h.Bore)
			c.leaf(d, use, hung, cutting{kind: CutHingeBore, enters: Back, round: true}, depth, box)
		case "barrel": // into the middle of the edge
			box[axis] = about(along, h.Bore)
			box[Behind] = round(half(d.Thick()), h.Bore)
			k := cutting{kind: CutHingeBore, enters: hung, round: true}
			c.leaf(d, use, hung, k, begin(h.Deep), box)
			k.enters = hung.Opposite()
			c.beside(d, use, hung, k, box[axis], box[Behind], h.Deep)
		case "butt":
			box[axis] = about(along, h.High)
			if d.Fit.Kind.Is == "overlay" { // between the back of the leaf and the edge of the case
				if use.Gain.Known() {
					box[Behind] = stretch(less(d.Thick(), use.Gain), use.Gain)
					c.leaf(d, use, hung, cutting{kind: CutGain, enters: Back, open: []Side{hung}}, begin(less(half(h.Wide), half(h.Knuckle))), box)
				}
				continue
			}
			leaf := less(half(h.Wide), or(use.Proud, half(h.Knuckle))) // from the front
			box[Behind] = begin(leaf)
			gap := d.Edges[hung].Less
			gain := half(less(h.Knuckle, gap))
			k := cutting{kind: CutGain, enters: hung, open: []Side{Front}}
			c.leaf(d, use, hung, k, begin(or(use.Gain, gain)), box)
			k.enters = hung.Opposite()
			c.beside(d, use, hung, k, about(along, h.High), begin(leaf), or(use.CaseIn, gain))
		}
	}
}

// beside cuts so deep into what stands beside an inset door: along its edge as in the leaf, and
// so far behind its front.
func (c *cutter) beside(d *Door, use *HardwareUse, edge Side, k cutting, along, behind Extent, deep Length) {
	if d.Fit.Kind.Is == "overlay" {
		return
	}
	e := &End{Of: d, Side: edge, Faces: Neighbour(d, edge)}
	e.covering(e.Faces, edge.Opposite(), d.Cell, nil, func(*Assembly) {})
	axis := Down - edge.Axis()
	var at Box
	at[axis] = along.after(d.Cell[axis])
	at[axis].From += d.Edges[axis*2].Less.Length // the leaf begins so far inside its opening
	at[axis].Placed = at[axis].Placed && d.Edges[axis*2].Less.Known()
	at[Behind] = behind.after(d.Cell[Behind])
	c.mates(e, k, begin(deep), at, Purpose{Door: d, Hardware: use})
}

// after is an extent that is measured from where another begins.
func (e Extent) after(first Extent) Extent {
	e.From += first.From
	e.Placed = e.Placed && first.Placed
	return e
}

// leaf cuts into a door's leaf, so deep from one of its edges. Of a pair of frames that are handed
// the second is the mirror image of the first, which is drawn.
func (c *cutter) leaf(d *Door, use *HardwareUse, edge Side, k cutting, depth Extent, at Box) {
	purpose := Purpose{Door: d, Hardware: use}
	if f := d.Leaf.Frame; f != nil {
		if f.Pair.On && len(f.uses) > 0 {
			if first, ok := f.uses[0].(*Door); ok && first.Hang.Is == otherHand(d.Hang.Is) && first.Hang.Is != d.Hang.Is {
				at[Across] = turnedRound(at[Across], d.Size[0])
				edge, k.enters = edge.handed(), k.enters.handed()
			}
		}
		if f.Root == nil {
			return
		}
		m, ok := facingItem(f.Root, edge).(*Member)
		if !ok {
			return
		}
		l := c.lieOf(m).blank
		cut := c.place(m, nil, k, l.inBlank(at), purpose)
		from := l.face(edge)
		cut.At[from.Dimension()] = cut.In.fromFace(from, depth)
		return
	}
	var of any = d
	grain := Down
	size := [3]Length{d.Size[1], d.Size[0], d.Thick()}
	switch {
	case d.Leaf.Part != nil:
		of, size = d.Leaf.Part, [3]Length{d.Leaf.Part.Size.Long, d.Leaf.Part.Size.Wide, d.Leaf.Part.Size.Thick}
	case d.Leaf.Material == nil:
		return
	}
	if d.Leaf.GrainSaid.Is == Across.String() {
		grain, size[Long], size[Wide] = Across, size[Wide], size[Long]
	}
	b := c.of[of]
	if b == nil {
		b = c.blank(of, size)
	}
	zero := plane{known: true}
	l := &lie{axis: [3]Axis{grain, Down - grain, Behind}, near: [3]plane{zero, zero, zero}}
	for d, size := range b.Size {
		l.to[d] = planeAt(size)
	}
	l.far = [3]bool{grain == Down, grain != Down, false}
	cut := c.put(b, Cut{Kind: k.kind, At: l.inBlank(at), Round: k.round, Enters: l.face(k.enters), For: purpose, lie: l})
	cut.Open[cut.Enters] = true
	for _, s := range k.open {
		cut.Open[l.face(s)] = true
	}
	from := l.face(edge)
	cut.At[from.Dimension()] = b.fromFace(from, depth)
}

// handed is a side as the mirror image has it.
func (s Side) handed() Side {
	if s.Axis() == Across {
		return s.Opposite()
	}
	return s
}

// turnedRound is an extent measured from the other end.
func turnedRound(e Extent, size Length) Extent {
	return Extent{From: size.Length - e.To(), Size: e.Size, Placed: e.Known() && size.Known(), Sized: e.Sized}
}
