package plan

// What panels, backs and panes cut into the members round them.

import "plancheck/internal/wood"

// panel places the grooves of a panel, or the rabbets or grooves of a back, and the tongues on a
// panel's edges.
func (c *cutter) panel(p *Panel) {
	for side := Left; side <= Lower; side++ {
		e := p.Edges[side]
		if e == nil || e.Free || len(e.Mates) == 0 {
			continue
		}
		from := len(c.made)
		switch {
		case p.Word == "back":
			c.back(p, e)
		case p.Joint != nil:
			c.rebated(e, p.Joint, c.along(p, e, func(s Side) Length { return p.Into(s) }))
		case p.Groove.Deep.How != Unknown:
			c.groove(p, e)
		}
		c.tongue(p, e)
		c.ends[e] = run{from, len(c.made)}
	}
}

// along is where the edge of a panel or a pane lies along the members that it meets: over its
// place, and over what goes into the members at both ends of that.
func (c *cutter) along(n Node, e *End, into func(Side) Length) Box {
	var at Box
	axis := Down - e.Side.Axis()
	sides := sidesOf(axis)
	cell := It(n).Cell[axis]
	near, far := into(sides[0]), into(sides[1])
	at[axis] = Extent{
		From: cell.From - near.Length, Size: cell.Size + near.Length + far.Length,
		Placed: cell.Placed && near.Known(), Sized: cell.Sized && near.Known() && far.Known(),
	}
	return at
}

// lengthways are the sides at which a groove may run out along its members.
func lengthways(e *End) []Side {
	s := sidesOf(Down - e.Side.Axis())
	return s[:]
}

func (c *cutter) groove(p *Panel, e *End) {
	for i, m := range e.Mates {
		if e.by(i) == nil {
			c.deepest(edge{m, e.Side.Opposite()}, p.Groove.Deep)
		}
	}
	at := c.along(p, e, p.Into)
	at[Behind] = c.line(p, or(or(p.Groove.Across, p.Tongue.Across), p.Size.Thick))
	c.mates(e, cutting{kind: CutGroove, enters: e.Side.Opposite(), runs: lengthways(e)}, begin(p.Groove.Deep), at, Purpose{End: e})
}

// deepest keeps the deepest groove of an edge; unknown if one of them is.
func (c *cutter) deepest(at edge, deep Length) {
	if g, there := c.grooves[at]; there && (!g.Known() || deep.Known() && g.Length >= deep.Length) {
		return
	}
	c.grooves[at] = deep
}

// line is where a panel's grooves lie, front to back. In a frame they lie in line with the
// tenons: where those are set from the face, there; else in the middle of the thinnest stick.
// Elsewhere a panel has a place of its own in a list that runs front to back, or none is known.
func (c *cutter) line(p *Panel, wide Length) Extent {
	if p.In.Kind != Frame {
		if p.Parent != nil && p.Parent.Axis == Behind && p.Cell[Behind].Known() {
			return about(p.Cell[Behind], wide)
		}
		return Extent{}
	}
	thinnest := Extent{}
	for _, e := range p.Edges {
		if e == nil {
			continue
		}
		for i, m := range e.Mates {
			body := m.Body[Behind]
			if e.by(i) != nil || m.In != p.In || !body.Known() {
				continue
			}
			for _, end := range m.Ends {
				if end != nil && end.Joint != nil && end.Joint.Set.Known() && end.Joint.Thick.Known() && m.Flat == Behind {
					set := stretch(derived(body.From+end.Joint.Set.Length), end.Joint.Thick)
					return about(set, wide)
				}
			}
			if !thinnest.Known() || body.Size < thinnest.Size {
				thinnest = body
			}
		}
	}
	return about(thinnest, wide)
}

// back places what a back cuts: a rabbet from the back edge of what it meets, or a groove.
func (c *cutter) back(p *Panel, e *End) {
	if e.Joint == nil {
		return
	}
	at := c.along(p, e, p.Into)
	k := cutting{enters: e.Side.Opposite(), runs: lengthways(e)}
	switch e.Joint.Kind.Is {
	case Rabbet:
		k.kind, k.open = CutRabbet, []Side{Back}
		k.from = &margin{Back, or(e.Joint.Rabbet.Deep, p.Size.Thick)}
		c.mates(e, k, begin(e.Joint.Rabbet.Across), at, Purpose{End: e})
	case Housing, Dado, DropIn:
		k.kind = CutGroove
		at[Behind] = about(p.Cell[Behind], or(e.Joint.SlotWide, p.Size.Thick))
		c.mates(e, k, begin(e.Joint.Deep), at, Purpose{End: e})
	}
}

// rebated places the rabbet of a pane, or of a panel that lies in one: from the back.
func (c *cutter) rebated(e *End, j *Joint, at Box) {
	if j.Kind.Is != Rabbet {
		return
	}
	for i, m := range e.Mates {
		if e.by(i) == nil {
			c.deepest(edge{m, e.Side.Opposite()}, j.Rabbet.Deep)
		}
	}
	k := cutting{kind: CutRabbet, enters: e.Side.Opposite(), open: []Side{Back}, runs: lengthways(e), from: &margin{Back, j.Rabbet.Across}}
	c.mates(e, k, begin(j.Rabbet.Deep), at, Purpose{End: e})
}

// glass places the rabbets of a pane.
func (c *cutter) glass(g *Glass) {
	for side := Left; side <= Lower; side++ {
		e := g.Edges[side]
		if e == nil || e.Free || e.Joint == nil || len(e.Mates) == 0 {
			continue
		}
		from := len(c.made)
		c.rebated(e, e.Joint, c.along(g, e, func(s Side) Length {
			if g.Edges[s] == nil {
				return Length{}
			}
			return g.Edges[s].Adds
		}))
		c.ends[e] = run{from, len(c.made)}
	}
}

// tongue places what stands along an edge of a panel that is worked to a tongue. Where that lies
// in the panel's thickness nothing says, unless it is all of it.
func (c *cutter) tongue(p *Panel, e *End) {
	if p.Tongue.Deep.How == Unknown {
		return
	}
	b := c.of[p]
	if b == nil {
		b = c.blank(p, [3]Length{p.Size.Long, p.Size.Wide, p.Size.Thick})
	}
	d := Wide
	if e.Side.Axis() == p.Grain {
		d = Long
	}
	f := Face(d * 2)
	if e.Side.Far() != (e.Side.Axis() == Down) {
		f++
	}
	at := Box{begin(b.Size[Long]), begin(b.Size[Wide]), Extent{Size: p.Tongue.Across.Length, Sized: p.Tongue.Across.Known()}}
	at[d] = b.fromFace(f, begin(p.Tongue.Deep))
	if t := p.Tongue.Across; t.How == Unknown || t.Known() && b.Size[Thick].Known() && wood.Same(t.Length, b.Size[Thick].Length) {
		at[Thick] = begin(b.Size[Thick])
	}
	cut := c.put(b, Cut{Kind: CutTongue, At: at, Stands: true, Enters: f, For: Purpose{End: e}, lie: standing(p.Grain, Down-p.Grain, Behind)})
	for f := NearEnd; f <= FarEdge; f++ {
		cut.Open[f] = true
	}
}

// breadboard places the tongues on the ends of a top, the grooves of its breadboard ends, and the
// pegs through both. A groove has the usual relief, and one place stands for both ends. How far
// from the shoulder the pegs stand, nothing says.
func (c *cutter) breadboard(m *Member, b *Breadboard) {
	if b.Tongue.Deep.How == Unknown {
		return
	}
	core := c.blank(m, [3]Length{m.CoreLong(), m.Size.Wide, m.Size.Thick})
	end := c.blank(BreadboardEnd{m}, [3]Length{m.Size.Wide, b.Wide, m.Size.Thick})
	put := func(of *Blank, cut Cut, open ...Face) {
		cut.For, cut.lie = Purpose{Top: m}, standing(Across, Behind, Down)
		if of == end {
			cut.lie = standing(Behind, Across, Down)
		} else {
			cut.Use = m
		}
		for _, f := range open {
			cut.Open[f] = true
		}
		c.put(of, cut)
	}
	thick := round(half(m.Size.Thick), b.Tongue.Across)
	for _, f := range []Face{NearEnd, FarEnd} {
		at := Box{core.fromFace(f, begin(b.Tongue.Deep)), begin(m.Size.Wide), thick}
		put(core, Cut{Kind: CutTongue, At: at, Stands: true, Enters: f}, NearEnd, FarEnd, NearEdge, FarEdge)
	}
	groove := Box{begin(end.Size[Long]), begin(addUp(b.Tongue.Deep, c.relief())), thick}
	put(end, Cut{Kind: CutGroove, At: groove, Enters: NearEdge}, NearEnd, FarEnd, NearEdge)
	if b.Peg == nil || b.Peg.Of.To == nil {
		return
	}
	for _, at := range b.Peg.At[:min(len(b.Peg.At), mostCuts)] {
		size, through := b.Peg.Of.To.Thick, begin(m.Size.Thick)
		peg := Cut{Kind: CutPeg, Enters: NearFace, Round: b.Peg.Slotted.How == Unknown}
		peg.At = Box{Thick: through, Wide: round(at, or(b.Peg.Slotted, size))}
		put(core, peg, NearFace, FarFace)
		peg.At, peg.Round = Box{Long: round(at, size), Thick: through}, true
		put(end, peg, NearFace, FarFace)
	}
}

// relief is how much deeper than a tongue its groove usually is.
func (c *cutter) relief() Length { return derived(c.plan.byTape(wood.Inch/32, 4*wood.Millimetre/5)) }
