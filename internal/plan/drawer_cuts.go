package plan

// What the corners and the bottom of a drawer cut into its box. A side is measured from its
// front end, its lower edge and its left face; a front or a back from its left end, its lower edge
// and its front face.

// How the parts of a drawer's box stand.
var (
	alongDrawer  = standing(Behind, Down, Across)
	acrossDrawer = standing(Across, Down, Behind)
)

// drawer places the bottom's grooves, the corners and the notches for a slide. Where a front that
// closes its box stands above the lower edge of the sides is known where they run on wood, which
// lies level with the opening.
func (c *cutter) drawer(d *Drawer) {
	if d.Left == nil {
		return
	}
	grooved := d.BackAs != nil && d.BackAs.Back.Is == "grooved"
	if b := d.BottomAs; b != nil {
		wide := or(b.Groove.Across, b.Of.Thick())
		up := stretch(b.Up, wide)
		ends := []Face{NearEnd, FarEnd}
		for _, side := range []*BoxPart{d.Left, d.Right} {
			c.box(d, side, CutGroove, inner(side), nil, b.Groove.Deep, ends, begin(side.Size.Long), up)
		}
		if d.Inner != nil {
			c.box(d, d.Inner, CutGroove, FarFace, nil, b.Groove.Deep, ends, begin(d.Inner.Size.Long), up)
		} else {
			first := d.Edges[Lower].Less
			up.From -= first.Length
			up.Placed = up.Placed && first.Known() && !d.Slide.Said()
			c.box(d, d.Front, CutGroove, FarFace, nil, b.Groove.Deep, ends, d.acrossFront(b.Groove.Deep), up)
		}
		if grooved {
			c.box(d, d.Back, CutGroove, NearFace, nil, b.Groove.Deep, ends, begin(d.Back.Size.Long), stretch(b.Up, wide))
		}
	}
	c.notches(d, grooved)
	closing := d.Front
	if d.Inner != nil {
		closing = d.Inner
	}
	c.corner(d, d.FrontJoint, closing, NearEnd, derived(0))
	c.corner(d, d.BackJoint, d.Back, FarEnd, d.SetIn.Or(0))
}

// acrossFront is where the bottom's groove lies along a front that closes its box, which stands in
// the middle of its opening.
func (d *Drawer) acrossFront(deep Length) Extent {
	side := d.Left.Size.Thick
	wide := d.Cell[Across]
	if !wide.Sized {
		return Extent{}
	}
	first := half(less(derived(wide.Size), d.Box[0]))
	return stretch(less(addUp(first, side), deep, d.Edges[Left].Less), addUp(less(d.Box[0], side, side), deep, deep))
}

// notches are cut for a slide from the lower corners of a back that reaches so far down. From
// where their width is measured, nothing says.
func (c *cutter) notches(d *Drawer, grooved bool) {
	slide, b := d.Slide.To, d.BottomAs
	if slide == nil || slide.Notch.Deep.How == Unknown || d.Back == nil {
		return
	}
	high := slide.Notch.Deep
	if b != nil && !grooved {
		high = less(high, b.Up, or(b.Groove.Across, b.Of.Thick()))
	}
	if high.Known() && high.Length <= 0 {
		return
	}
	back := c.boxBlank(d.Back)
	long := Extent{Size: slide.Notch.Across.Length, Sized: slide.Notch.Across.Known()}
	for _, end := range []Face{NearEnd, FarEnd} {
		c.boxCut(d, back, Cut{Kind: CutNotch, Enters: NearEdge, At: Box{long, begin(high), begin(back.Size[Thick])}}, nil, []Face{end, NearFace, FarFace})
	}
}

// inner is the face of a side that looks into the drawer.
func inner(side *BoxPart) Face {
	if side.Name == "left" {
		return FarFace
	}
	return NearFace
}

// corner places what joins a board across to both sides, so far in from their ends.
func (c *cutter) corner(d *Drawer, j *Joint, board *BoxPart, end Face, in Length) {
	if j == nil || board == nil {
		return
	}
	all := []Face{NearEnd, FarEnd, NearEdge, FarEdge, NearFace, FarFace}
	for _, side := range []*BoxPart{d.Left, d.Right} {
		b := c.boxBlank(side)
		switch j.Kind.Is {
		case Dovetail, BoxJoint:
			long := board.Size.Thick
			if j.Kind.Is == Dovetail {
				long = less(long, j.Lap.Or(0))
			}
			c.boxCut(d, b, Cut{Kind: CutTails, Enters: end, At: Box{b.fromFace(end, begin(long)), begin(b.Size[Wide]), begin(b.Size[Thick])}}, j, all)
			f := NearEnd
			if side == d.Right {
				f = FarEnd
			}
			of := c.boxBlank(board)
			thick := stretch(less(of.Size[Thick], long), long) // the lap is in front of the tails
			if end == FarEnd {
				thick = begin(long)
			}
			c.boxCut(d, of, Cut{Kind: CutTails, Enters: f, At: Box{of.fromFace(f, begin(side.Size.Thick)), begin(of.Size[Wide]), thick}}, j, all)
		case Housing, Dado, SlidingDovetail:
			face := inner(side)
			slot := or(j.SlotWide, board.Size.Thick)
			wide := begin(b.Size[Wide])
			if board == d.Back { // level with the upper edge of the sides
				wide = b.fromFace(FarEdge, begin(board.Size.Wide))
			}
			c.boxCut(d, b, Cut{Kind: CutHousing, Enters: face, At: Box{
				b.fromFace(end, about(stretch(in, board.Size.Thick), slot)), wide, b.fromFace(face, begin(j.Deep)),
			}}, j, []Face{NearEdge, FarEdge})
		}
	}
}

// box cuts into a part of a drawer's box, so deep from one of its faces.
func (c *cutter) box(d *Drawer, part *BoxPart, kind CutKind, enters Face, corner *Joint, deep Length, open []Face, long, wide Extent) {
	if part == nil {
		return
	}
	b := c.boxBlank(part)
	c.boxCut(d, b, Cut{Kind: kind, Enters: enters, At: Box{long, wide, b.fromFace(enters, begin(deep))}}, corner, open)
}

func (c *cutter) boxCut(d *Drawer, b *Blank, cut Cut, corner *Joint, open []Face) {
	cut.For = Purpose{Drawer: d, Corner: corner}
	cut.lie = acrossDrawer
	if b.Of == d.Left || b.Of == d.Right {
		cut.lie = alongDrawer
	}
	cut.Open[cut.Enters] = true
	for _, f := range open {
		cut.Open[f] = true
	}
	c.put(b, cut)
}

func (c *cutter) boxBlank(part *BoxPart) *Blank {
	if b := c.of[part]; b != nil {
		return b
	}
	return c.blank(part, [3]Length{part.Size.Long, part.Size.Wide, part.Size.Thick})
}
