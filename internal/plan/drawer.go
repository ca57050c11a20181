package plan

// A drawer's box is worked out from its opening, its slide and its corners.

import (
	"plancheck/internal/wood"
)

// fillDrawer works out a drawer: the front from the opening, then the box, then its parts.
func (r *resolver) fillDrawer(d *Drawer) {
	r.needDrawer(d)
	d.Edges = r.edges(d, &d.Fit, d.Reveal, "")
	front := [2]Length{lessEdges(d.Cell[Across], d.Edges, Across), lessEdges(d.Cell[Down], d.Edges, Down)}
	sideOf := d.Of
	if d.SideAs != nil && d.SideAs.Of.Material.Said() {
		sideOf = d.SideAs.Of
	}
	side := r.thick(sideOf)
	if side.How == Unknown {
		side = r.thick(d.Of)
	}
	box := r.boxWide(d, side)
	high := r.boxHigh(d)

	frontOf, applied := d.Of, false
	if d.FrontAs != nil && d.FrontAs.Of.Material.Said() {
		frontOf, applied = d.FrontAs.Of, d.FrontAs.Applied.On
	}
	closing := frontOf // the board that closes the box in front
	if applied {
		closing = d.Of
	}
	d.FrontJoint, d.BackJoint = r.cornerJoint(d, "front"), r.cornerJoint(d, "back")
	frontJoint, backJoint := d.FrontJoint, d.BackJoint
	lap := Length{How: Derived}
	if frontJoint != nil && frontJoint.Kind.Is == Dovetail {
		lap = frontJoint.Lap.Or(0)
	}
	frontBeyond := beyondSide(frontJoint, r.thick(closing), lap, applied)
	long := d.Long
	switch {
	case long.How != Unknown:
	case d.Deep.Known() && frontBeyond.Known():
		long = derived(d.Deep.Length - frontBeyond.Length)
	case d.Slide.To != nil:
		long = d.Slide.To.Long
	}
	deep := d.Deep
	if deep.How == Unknown {
		deep = addUp(long, frontBeyond)
	}
	d.Box = [3]Length{box, high, deep}

	part := func(name string, of Stuff, said *DrawerPart, size Size3) *BoxPart {
		b := &BoxPart{Name: name, Of: of.Material.To, Size: size, Drawer: d, Span: d.Name.Span}
		if said != nil {
			b.Cut, b.Span = said.Cut, said.Span
		}
		return b
	}
	d.Left = part("left", sideOf, d.SideAs, Size3{long, high, side})
	d.Right = part("right", sideOf, d.SideAs, Size3{long, high, side})

	between := less(box, side, side) // the sides
	switch {
	case applied:
		d.Front = part("front", frontOf, d.FrontAs, Size3{front[0], front[1], r.thick(frontOf)})
		d.Inner = part("inner front", d.Of, nil, Size3{r.between(box, between, frontJoint), high, r.thick(d.Of)})
	default:
		d.Front = part("front", frontOf, d.FrontAs, Size3{front[0], front[1], r.thick(frontOf)})
	}

	backOf := d.Of
	if d.BackAs != nil && d.BackAs.Of.Material.Said() {
		backOf = d.BackAs.Of
	}
	backHigh := high
	grooved := d.BackAs != nil && d.BackAs.Back.Is == "grooved"
	if b := d.BottomAs; b != nil && !grooved {
		backHigh = less(high, b.Up, r.grooveWide(b))
	}
	d.Back = part("back", backOf, d.BackAs, Size3{r.between(box, between, backJoint), backHigh, r.thick(backOf)})

	if b := d.BottomAs; b != nil {
		d.Bottom = r.bottom(d, b, between, long, frontBeyond, r.thick(closing), r.thick(backOf), grooved)
	}
}

// needDrawer works out what a drawer states and what it takes from its slide: it may be asked
// for before everything stated is worked out.
func (r *resolver) needDrawer(d *Drawer) {
	r.needAll(&d.SetIn, &d.Long, &d.Deep, &d.High, &d.Wide, &d.Gap)
	for _, part := range []*DrawerPart{d.FrontAs, d.BackAs, d.SideAs} {
		if part != nil {
			r.needAll(&part.Cut, &part.Notch.Across, &part.Notch.Deep)
		}
	}
	if b := d.BottomAs; b != nil {
		r.needAll(&b.Groove.Across, &b.Groove.Deep, &b.Up, &b.PastBack)
	}
	if s := d.Slide.To; s != nil {
		r.needAll(&s.Long, &s.Room, &s.Less, &s.HighLess)
	}
}

// boxWide is the box over its sides: as stated, else the opening less the slide's room, or
// less a gap where it runs on wood.
func (r *resolver) boxWide(d *Drawer, side Length) Length {
	opening := d.Cell[Across]
	switch {
	case d.Wide.How != Unknown:
		return d.Wide
	case !opening.Sized:
		return Length{}
	case d.Slide.To != nil && d.Slide.To.Less.Known():
		return addUp(derived(opening.Size-d.Slide.To.Less.Length), side, side)
	case d.Slide.To != nil && d.Slide.To.Room.Known():
		return derived(opening.Size - 2*d.Slide.To.Room.Length)
	case d.Slide.Said():
		return Length{} // hung on a slide whose room is not known
	}
	return derived(opening.Size - d.Gap.Or(r.plan.byTape(wood.Inch/16, 3*wood.Millimetre/2)).Length)
}

// boxHigh is how high the sides stand: as stated, else the opening less what the slide
// wants. Another slide or a runner that says nothing is given 1/4 (6 mm): common practice, no source.
func (r *resolver) boxHigh(d *Drawer) Length {
	opening := d.Cell[Down]
	switch {
	case d.High.How != Unknown:
		return d.High
	case !opening.Sized:
		return Length{}
	}
	room := r.plan.SlideHighLess(d.Slide.To).Or(r.plan.byTape(wood.Inch/4, 6*wood.Millimetre))
	return derived(opening.Size - room.Length)
}

// SlideHighLess is how much lower than its opening the sides of a drawer are on a slide: as that says, for
// an undermount slide that does not 13/16 (21 mm), as a maker of drawers has it; else unknown.
func (p *Plan) SlideHighLess(s *Slide) Length {
	switch {
	case s == nil:
		return Length{}
	case s.HighLess.How == Unknown && s.Kind.Is == "undermount":
		return Length{Length: p.byTape(13*wood.Inch/16, 21*wood.Millimetre), How: Default}
	}
	return s.HighLess
}

// SlideLine is how high the middle of a drawer's side-mount slides is: above the lower edge of its sides, and above
// the floor of its opening. Where the plan does not say, it is at half of the sides' height, and the box has as much
// room above it as below: common practice, no source. False of other slides.
func (d *Drawer) SlideLine() (side, opening Length, ok bool) {
	s := d.Slide.To
	if s == nil || s.Kind.Is != "side-mount" && (s.Kind.Is != "" || !s.Room.Known()) {
		return Length{}, Length{}, false
	}
	typical := func(l Length) Length {
		if l.Known() {
			l.How = Default
		}
		return l
	}
	side = d.Line
	if side.How == Unknown {
		side = typical(half(d.Box[1]))
	}
	if cell := d.Cell[Down]; cell.Sized {
		opening = typical(addUp(half(less(derived(cell.Size), d.Box[1])), side))
	}
	return side, opening, true
}

// cornerJoint is the joint between the sides and the front or the back.
func (r *resolver) cornerJoint(d *Drawer, at string) *Joint {
	for _, c := range d.Corners {
		if c.At.Is == at {
			j := jointSaid{edge: c.Joint}.alone()
			if j == nil {
				j = r.mergeJoints(c.Joint)
			}
			r.needAll(&j.Deep, &j.Long, &j.Lap, &j.Rabbet.Across)
			return j
		}
	}
	return nil
}

// beyondSide is how far the board that closes the box stands beyond the ends of the sides:
// a dovetail's lap, what is left of a rabbeted front, nothing where it stands between them or
// runs through them, and its whole thickness where it lies before them. Behind an applied
// front it is a board of the box, and as short as the back is (see between).
func beyondSide(j *Joint, thick, lap Length, applied bool) Length {
	kind := ""
	if j != nil {
		kind = j.Kind.Is
	}
	switch kind {
	case Dovetail:
		return lap
	case Rabbet:
		return less(thick, j.Rabbet.Across)
	case BoxJoint, Housing, Dado, SlidingDovetail:
		return derived(0)
	}
	if applied {
		return derived(0)
	}
	return thick
}

// between is the length of a board that joins two sides: between them and what its joint
// goes into each, or over all where the joint runs through.
func (r *resolver) between(over, clear Length, j *Joint) Length {
	if j == nil {
		return clear
	}
	switch j.Kind.Is {
	case Dovetail, BoxJoint, Rabbet:
		return over
	case Housing, Dado, SlidingDovetail:
		return addUp(clear, j.Deep, j.Deep)
	case Tongue:
		return addUp(clear, j.Long, j.Long)
	}
	return clear
}

// grooveWide is how wide a bottom's groove is: as stated, else as thick as the bottom.
func (r *resolver) grooveWide(b *DrawerBottom) Length {
	if b.Groove.Across.How != Unknown {
		return b.Groove.Across
	}
	return r.thick(b.Of)
}

// DrawerBottomGap is how much a bottom is smaller than its place between two grooves: common practice,
// no source.
func (p *Plan) DrawerBottomGap() wood.Length { return p.byTape(wood.Inch/32, wood.Millimetre) }

// bottom is a drawer's bottom: between the sides and into their grooves less a gap, from
// the groove of the front to the end of the sides, or into a groove of the back.
func (r *resolver) bottom(d *Drawer, b *DrawerBottom, between, long, beyond, frontThick, backThick Length, grooved bool) *BoxPart {
	gap := Length{Length: r.plan.DrawerBottomGap(), How: Default}
	wide := less(addUp(between, b.Groove.Deep, b.Groove.Deep), gap)
	inside := less(addUp(long, beyond), frontThick) // behind the front, to the end of the sides
	deep := addUp(inside, b.Groove.Deep)
	if grooved {
		deep = less(addUp(deep, b.Groove.Deep), backThick, d.SetIn.Or(0), gap)
	} else if b.PastBack.Known() {
		deep = addUp(deep, b.PastBack)
	}
	size := Size3{wide, deep, r.thick(b.Of)}
	if b.Grain.Is == "behind" {
		size.Long, size.Wide = deep, wide
	}
	return &BoxPart{Name: "bottom", Of: b.Of.Material.To, Size: size, Drawer: d, Span: b.Span}
}

// sum adds lengths; it is unknown if one of them is.
func addUp(lengths ...Length) Length {
	total := wood.Length(0)
	for _, l := range lengths {
		if !l.Known() {
			return Length{}
		}
		total += l.Length
	}
	return derived(total)
}

// less takes lengths off the first; it is unknown if one of them is.
func less(from Length, lengths ...Length) Length {
	taken := addUp(lengths...)
	if !from.Known() || !taken.Known() {
		return Length{}
	}
	return derived(from.Length - taken.Length)
}
