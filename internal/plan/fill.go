package plan

// What fills an opening takes its size from it: a panel, a pane or a back from the members
// round it, a door's leaf and a drawer's front from the opening less its reveals.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// edges works out what each edge of a door's leaf or a drawer's front takes off its
// opening: a reveal where a member stands, half a reveal where the next opening follows
// with nothing between, less than nothing for a lap, and nothing at the outside.
func (r *resolver) edges(n Node, fit *Fit, reveal *Reveal, hang string) [4]Edge {
	var edges [4]Edge
	for side := Left; side <= Lower; side++ {
		e := Edge{Side: side, Less: derived(0)}
		next, drawn := Neighbour(n, side), side
		if d, ok := n.(*Door); ok {
			drawn = d.drawn(side)
		}
		shared := next != nil && meets(n, facingItem(next, drawn.Opposite()))
		switch {
		case next == nil:
		case shared:
			e.Shared = true
			gap := r.revealAt(reveal, side, hang, true)
			e.Less = Length{Length: (gap.Length + 1) / 2, Span: gap.Span, How: gap.How}
			if side.Far() {
				e.Less.Length = gap.Length / 2
			}
		case fit.Kind.Is == "overlay":
			lap := r.need(fit.Laps.At(side, hang))
			e.Less = Length{Length: -lap.Length, Span: lap.Span, How: lap.How}
		default:
			e.Less = r.revealAt(reveal, side, hang, false)
			if in := r.inGroove(n, side); in.How != Unknown {
				e.Less = Length{Length: -in.Length, Span: in.Span, How: in.How}
			}
		}
		edges[side] = e
	}
	r.missingGap(n, fit, edges)
	return edges
}

// inGroove is how far a leaf that is lifted out is in the groove at one of its edges while it stands; unknown where there is
// none.
func (r *resolver) inGroove(n Node, side Side) Length {
	d, ok := n.(*Door)
	if !ok || d.Grooves == nil {
		return Length{}
	}
	g := d.Grooves
	r.needAll(&g.Top, &g.Bottom, &g.Keeps)
	if g.Keeps.How == Unknown && g.Top.Known() {
		keeps := g.Top.Length - g.Bottom.Or(0).Length - r.plan.byTape(wood.Inch/16, 3*wood.Millimetre/2)
		g.Keeps = Length{Length: max(0, keeps), How: Default}
	}
	switch {
	case side == Lower:
		return g.Bottom
	case side == Upper && g.Top.Known():
		return g.Keeps
	}
	return Length{}
}

// missingGap reports a door or a front, once in its assembly, that does not say how wide the
// gap at one of its edges is, or how far it laps. One of which nothing is said yet may.
func (r *resolver) missingGap(n Node, fit *Fit, edges [4]Edge) {
	it := n.item()
	i := slices.IndexFunc(edges[:], func(e Edge) bool { return e.Less.How == Unknown })
	if i < 0 || r.gapless[it.In] || !begun(n) {
		return
	}
	r.gapless[it.In] = true
	gap, lap := "reveal 3/32", "fit overlay 1/2"
	if r.plan.Tape.Metric {
		gap, lap = "reveal 2", "fit overlay 15"
	}
	var f *fault
	switch {
	case edges[i].Shared:
		f = r.fault(MissingValue, it.Name.Span, "%s needs to say how wide the gap to its neighbour is, since nothing stands between them", it.Called())
		f.Fixes = []diag.Fix{{Title: "write `" + gap + "`"}}
	case fit.Kind.Is == "overlay":
		f = r.fault(MissingValue, it.Name.Span, "%s needs to say how far it laps the edges of its opening", it.Called())
		f.Fixes = []diag.Fix{{Title: "write `" + lap + "`"}}
	default:
		f = r.fault(MissingValue, it.Name.Span, "%s needs to say how wide the gap round it is", it.Called())
		f.Fixes = []diag.Fix{{Title: "write `" + gap + "`"}}
	}
	f.Subject = PathOf(n)
}

// begun reports whether a plan says what closes an opening.
func begun(n Node) bool {
	switch n := n.(type) {
	case *Door:
		return n.Leaf.Name != "" || n.Board != nil && (n.Hang.Is != "" || len(n.Hinges) > 0)
	case *Drawer:
		return n.Of.Material.Said() || n.FrontAs != nil
	}
	return false
}

// facingItem goes down into lists on the side that faces, where one item alone does.
func facingItem(n Node, facing Side) Node {
	for {
		l, ok := n.(*List)
		if !ok || len(l.Items) == 0 {
			return n
		}
		i := 0
		if facing.Far() {
			i = len(l.Items) - 1
		}
		if l.Axis != facing.Axis() && len(l.Items) > 1 {
			return n
		}
		n = l.Items[i]
	}
}

// meets reports whether a leaf or a front is beside another, with nothing between them: a lid beside a lid.
func meets(n, next Node) bool {
	if d, ok := n.(*Door); ok && d.Board != nil {
		m, board := next.(*Member)
		return board && m.Lid != nil
	}
	return hasFront(next)
}

// hasFront reports whether an opening is closed by a door or a drawer's front.
func hasFront(n Node) bool {
	switch n := n.(type) {
	case *Door, *Drawer:
		return true
	case *List: // a stack of doors or fronts side by side
		for _, inner := range n.Items {
			if !hasFront(inner) {
				return false
			}
		}
		return len(n.Items) > 0
	}
	return false
}

// revealAt is the reveal at one side: where two meet that of their meeting, else that side's own, else the
// one for all.
func (r *resolver) revealAt(v *Reveal, side Side, hang string, meeting bool) Length {
	switch {
	case v == nil:
		return Length{}
	case meeting && v.Meeting.How != Unknown:
		return r.need(&v.Meeting)
	}
	return r.need(v.At(side, hang))
}

// At is the length at one edge of what is hung so: that of the hinge or the latch edge, else the edge's own,
// else the one for all.
func (v *AtEdges) At(side Side, hang string) *Length {
	if hung, turns := hinged[hang]; turns {
		switch {
		case side == hung && v.Hinge.How != Unknown:
			return &v.Hinge
		case side == hung.Opposite() && v.Latch.How != Unknown:
			return &v.Latch
		}
	}
	if own := [...]*Length{Left: &v.Left, Right: &v.Right, Upper: &v.Top, Lower: &v.Bottom}[side]; own.How != Unknown {
		return own
	}
	return &v.All
}

// doorEdges are a door's edges, worked out once.
func (r *resolver) doorEdges(d *Door) [4]Edge {
	if !d.edged {
		d.edged = true
		d.Edges = r.edges(d, &d.Fit, d.Reveal, d.Hang.Is)
	}
	return d.Edges
}

// leafSize is a leaf's size along an axis: its opening's less what its edges take. The
// opening must be solved along it.
func (r *resolver) leafSize(d *Door, axis Axis) Length {
	return lessEdges(d.Cell[axis], r.doorEdges(d), axis)
}

func lessEdges(opening Extent, edges [4]Edge, axis Axis) Length {
	near, far := edges[axis*2].Less, edges[axis*2+1].Less
	if !opening.Sized || !near.Known() || !far.Known() {
		return Length{}
	}
	return derived(opening.Size - near.Length - far.Length)
}

// leafThick is how thick a door's leaf is.
func (r *resolver) leafThick(d *Door) Length {
	switch leaf := &d.Leaf; {
	case leaf.Thick.How != Unknown:
		return r.need(&leaf.Thick)
	case leaf.Frame != nil:
		return r.own(leaf.Frame, Behind)
	case leaf.Part != nil:
		return leaf.Part.Size.Thick
	case leaf.Material != nil:
		t := leaf.Material.Thickness()
		return r.need(&t)
	}
	return Length{}
}

// fillDoor works out the leaf of a door.
func (r *resolver) fillDoor(d *Door) {
	d.Size = [2]Length{r.leafSize(d, Across), r.leafSize(d, Down)}
}

// fillPanel works out a panel or a back: the clear place, plus what each edge goes into
// its groove or rabbet, less the gap.
func (r *resolver) fillPanel(p *Panel) {
	r.needAll(&p.Gap.Across, &p.Gap.Deep, &p.Groove.Deep)
	if p.Joint != nil {
		r.need(&p.Joint.Rabbet.Deep)
	}
	p.Grain = panelGrain(p)
	p.Size.Thick = r.panelThick(p)
	p.Worked.Thick = p.Size.Thick
	across, along := &p.GapUsed.Across, &p.GapUsed.Deep
	*across, *along = p.Gap.Across, p.Gap.Deep
	if p.Gap.Deep.How != Unknown && p.Gap.Across.How == Unknown {
		*across = p.Gap.Deep // one gap for both ways
	}
	small := Length{Length: r.plan.byTape(wood.Inch/32, wood.Millimetre), How: Default}
	if along.How == Unknown {
		*along = small
	}
	if across.How == Unknown {
		*across = small
		if p.Word == "panel" && p.Of.Material.To != nil && p.Of.Material.To.Kind == Solid {
			*across = r.plan.seasonsGap(p)
		}
	}
	for axis := Across; axis <= Down; axis++ {
		gap := *across
		if axis == p.Grain {
			gap = *along
		}
		size := r.paneSize(p.Cell[axis], p.Into(Side(axis*2)), p.Into(Side(axis*2)+1), gap)
		said := &p.Wide
		if axis == Down {
			said = &p.High
		}
		if axis == p.Grain {
			p.Worked.Long, p.Size.Long = size, r.stated(said, size)
		} else {
			p.Worked.Wide, p.Size.Wide = size, r.stated(said, size)
		}
	}
}

// panelThick is how thick a panel or a back is: as it says, else as its material stands.
func (r *resolver) panelThick(p *Panel) Length {
	if p.Thick.How != Unknown {
		return r.need(&p.Thick)
	}
	return r.thick(p.Of)
}

func (r *resolver) paneSize(clear Extent, near, far, gap Length) Length {
	if !clear.Sized || !near.Known() || !far.Known() || !gap.Known() {
		return Length{}
	}
	return derived(clear.Size + near.Length + far.Length - gap.Length)
}

// panelGrain is upright for a panel; a back's runs along its longer side.
func panelGrain(p *Panel) Axis {
	switch {
	case p.GrainSaid.Is == "across":
		return Across
	case p.GrainSaid.Is == "down":
		return Down
	case p.Word == "back" && p.Cell[Across].Known() && p.Cell[Down].Known() && p.Cell[Across].Size > p.Cell[Down].Size:
		return Across
	}
	return Down
}

// Into is how far one edge of a panel or a back goes into what it meets: its groove or
// its rabbet; nothing at the outside.
func (p *Panel) Into(side Side) Length {
	e := p.Edges[side]
	switch {
	case e == nil || e.Free || len(e.Mates) == 0:
		return derived(0)
	case p.Word == "back":
		return e.Adds
	case p.Joint != nil:
		return p.Joint.Rabbet.Deep
	case p.Groove.Deep.How == Unknown:
		return derived(0)
	}
	return p.Groove.Deep
}

// fillGlass works out a pane: the sight size, and what lies in each rabbet, less a gap of
// 1/8 (3 mm) in all unless another is said: common practice, no source.
func (r *resolver) fillGlass(g *Glass) {
	gap := Length{Length: r.plan.byTape(wood.Inch/8, 3*wood.Millimetre), How: Default}
	g.GapUsed = Pair{Across: gap, Deep: gap}
	if r.needAll(&g.Gap.Across, &g.Gap.Deep); g.Gap.Deep.How != Unknown {
		g.GapUsed = g.Gap
		if g.Gap.Across.How == Unknown {
			g.GapUsed.Across = g.Gap.Deep
		}
	}
	g.Size = Size3{
		Wide:  r.paneSize(g.Cell[Across], g.Edges[Left].Adds, g.Edges[Right].Adds, g.GapUsed.Across),
		Long:  r.paneSize(g.Cell[Down], g.Edges[Upper].Adds, g.Edges[Lower].Adds, g.GapUsed.Deep),
		Thick: r.need(&g.Thick),
	}
}
