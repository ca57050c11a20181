package plan

// What each kind of joint cuts, into the end itself and into what it meets.

import "plancheck/internal/wood"

// mostCuts bounds what one joint cuts: more dowels than that are counted, and not placed.
const mostCuts = 100

// cutter places the cuts of a plan.
type cutter struct {
	*Cuts
	plan    *Plan
	lies    map[*Member]*lies
	grooves map[edge]Length // how deep the panel's groove or the pane's rabbet is in an edge of a member
}

// edge is one side of a member.
type edge struct {
	of   *Member
	side Side
}

// lieOf says how a member lies.
func (c *cutter) lieOf(m *Member) *lies {
	l := c.lies[m]
	if l == nil {
		l = liesOf(m)
		c.lies[m] = l
	}
	return l
}

// cutting says what is to be cut. Sides are those of the assembly in which the end stands.
type cutting struct {
	kind    CutKind
	enters  Side
	round   bool
	stands  bool
	through bool   // it goes through all of the blank, the way that it enters
	open    []Side // where it comes out on purpose, besides the side from which it enters
	runs    []Side // where it runs out if the wood ends first
	from    *margin
}

// margin is a size from a side of the mate, whatever stands there.
type margin struct {
	side Side
	size Length
}

// place keeps a cut in the blank of a member.
func (c *cutter) place(m *Member, by *way, k cutting, at Box, purpose Purpose) *Cut {
	var of any = m
	if m.Part.To != nil {
		of = m.Part.To
	}
	l := c.lieOf(m).blank
	b := c.of[of]
	if b == nil {
		b = c.blank(of, [3]Length{l.size(Long), l.size(Wide), l.size(Thick)})
		if m.Part.To != nil {
			s := m.Part.To.Size
			b.Size = [3]Length{s.Long, s.Wide, s.Thick}
		}
		for d, stated := range []Length{m.Size.Long, m.Size.Wide, m.Size.Thick} {
			if !b.Size[d].Known() {
				b.Size[d] = stated
			}
		}
	}
	cut := c.put(b, Cut{Kind: k.kind, At: at, Round: k.round, Stands: k.stands, For: purpose, Use: m, lie: l, by: by})
	cut.Enters = l.face(by.inner(k.enters))
	cut.Open[cut.Enters] = true
	for _, s := range k.open {
		cut.Open[l.face(by.inner(s))] = true
	}
	for _, s := range k.runs {
		f := l.face(by.inner(s))
		cut.Open[f] = true
		cut.At[f.Dimension()] = clipped(cut.At[f.Dimension()], b.Size[f.Dimension()])
	}
	if k.through {
		cut.Open[cut.Enters.Opposite()] = true
		cut.At[cut.Enters.Dimension()] = begin(b.Size[cut.Enters.Dimension()])
	}
	if k.from != nil {
		f := l.face(by.inner(k.from.side))
		cut.At[f.Dimension()] = b.fromFace(f, begin(k.from.size))
	}
	return cut
}

// blank is a new blank.
func (c *cutter) blank(of any, size [3]Length) *Blank {
	b := &Blank{Of: of, Size: size}
	c.of[of] = b
	c.Blanks = append(c.Blanks, b)
	return b
}

// put keeps a cut in a blank.
func (c *cutter) put(b *Blank, cut Cut) *Cut {
	if len(c.kept) == cap(c.kept) {
		c.kept = make([]Cut, 0, 256)
	}
	cut.In, cut.Times = b, 1
	c.kept = append(c.kept, cut)
	last := &c.kept[len(c.kept)-1]
	c.made = append(c.made, last)
	b.Cuts = append(b.Cuts, last)
	return last
}

// clipped is what of an extent lies in wood of a size.
func clipped(e Extent, size Length) Extent {
	if !e.Known() || !size.Known() {
		return e
	}
	from, to := max(e.From, 0), min(e.To(), size.Length)
	return Extent{From: from, Size: max(to-from, 0), Placed: true, Sized: true}
}

// fromFace is a stretch that is measured from a face inwards.
func (b *Blank) fromFace(f Face, e Extent) Extent {
	size := b.Size[f.Dimension()]
	if !f.Far() {
		return e
	}
	return Extent{From: size.Length - e.To(), Size: e.Size, Placed: e.Known() && size.Known(), Sized: e.Sized}
}

// mates cuts into all that an end, or the edge of a panel or a pane, meets. deep is measured from
// the face that it meets inwards; at says where it lies along the other two axes. Of several
// mates it is cut into those that it is known to reach.
func (c *cutter) mates(e *End, k cutting, deep Extent, at Box, purpose Purpose) {
	for i, m := range e.Mates {
		by := e.by(i)
		l := c.lieOf(m).blank
		place := by.inside(at)
		box := l.inBlank(place)
		f := l.face(by.inner(e.Side.Opposite()))
		if len(e.Mates) > 1 && (!l.reaches(box, f.Dimension()) || m.tenonAt(place[m.Grain])) {
			continue
		}
		cut := c.place(m, by, k, box, purpose)
		if !k.through || cut.Enters.Dimension() != f.Dimension() {
			cut.At[f.Dimension()] = cut.In.fromFace(f, deep)
		}
	}
}

// tenonAt reports whether a stretch along a member lies in one of its tenons, beyond its shoulders: what is cut there is
// cut into the member's mate.
func (m *Member) tenonAt(at Extent) bool {
	for _, e := range m.Ends {
		if e == nil || e.Joint == nil || e.Joint.Kind.Is != Tenon {
			return false
		}
	}
	cell := m.Cell[m.Grain]
	return at.Known() && cell.Known() && !shared(at, cell)
}

// by is the way to one of an end's mates.
func (e *End) by(mate int) *way {
	if mate < len(e.ways) {
		return e.ways[mate]
	}
	return nil
}

// reaches reports whether a place is known to meet the blank, seen along one dimension.
func (l *lie) reaches(at Box, along Dimension) bool {
	for _, d := range along.others() {
		blank := begin(l.size(d))
		if !shared(at[d], blank) {
			return false
		}
	}
	return true
}

// seat is an end of a member that is joined. Widths and thicknesses are measured in the end's own
// frame, lengths from its shoulder: outwards, into the mate, they are above zero.
type seat struct {
	*cutter
	end   *End
	of    *Member
	joint *Joint
	lie   *lie
}

// member places what the joints at a member's ends cut.
func (c *cutter) member(m *Member) {
	for _, e := range m.Ends {
		if e == nil || e.Free || e.Joint == nil || len(e.Mates) == 0 {
			continue
		}
		from := len(c.made)
		s := &seat{c, e, m, e.Joint, c.lieOf(m).stands}
		s.cut()
		c.ends[e] = run{from, len(c.made)}
	}
}

// box is a place in the end's assembly.
func (s *seat) box(out, wide, thick Extent) Box {
	var at Box
	at[s.lie.axis[Wide]] = s.lie.inAssembly(Wide, wide)
	at[s.lie.axis[Thick]] = s.lie.inAssembly(Thick, thick)
	cell := s.of.Cell[s.lie.axis[Long]]
	if s.end.Side.Far() {
		out.From += cell.To()
		out.Placed = out.Placed && cell.Known()
	} else {
		out.From = cell.From - out.To()
		out.Placed = out.Known() && cell.Placed
	}
	at[s.lie.axis[Long]] = out
	return at
}

// own cuts into the end itself.
func (s *seat) own(k cutting, out, wide, thick Extent) {
	at := s.lieOf(s.of).blank.inBlank(s.box(out, wide, thick))
	s.place(s.of, nil, k, at, Purpose{End: s.end})
}

// into cuts into what the end meets.
func (s *seat) into(k cutting, deep, wide, thick Extent) {
	s.mates(s.end, k, deep, s.box(Extent{}, wide, thick), Purpose{End: s.end})
}

func (s *seat) whole(d Dimension) Extent { return begin(s.lie.size(d)) }

func (s *seat) side(f Face) Side { return s.lie.side(f) }

func (s *seat) sides(d Dimension) []Side {
	return []Side{s.side(Face(d * 2)), s.side(Face(d*2) + 1)}
}

// facing is the side from which the mate is entered.
func (s *seat) facing() Side { return s.end.Side.Opposite() }

// read turns round what is measured from the left of a build that is mirrored.
func (s *seat) read(d Dimension, e Extent) Extent {
	if s.lie.axis[d] != Across || s.of.In.Build == nil || !s.of.In.Build.Mirrored.On {
		return e
	}
	size := s.lie.size(d)
	return Extent{From: size.Length - e.To(), Size: e.Size, Placed: e.Known() && size.Known(), Sized: e.Sized}
}

// cut places what one kind of joint cuts.
func (s *seat) cut() {
	j := s.joint
	switch j.Kind.Is {
	case Tenon:
		s.tenon()
	case LooseTenon:
		s.looseTenon()
	case Stub:
		// Its groove is the panel's.
		s.own(cutting{kind: CutTenon, enters: s.end.Side, stands: true, open: []Side{s.facing()}},
			begin(s.end.Adds), s.room(), s.grooveLine())
	case Tongue:
		s.tongue()
	case Housing, Dado, SlidingDovetail, DropIn:
		s.housing()
	case Rabbet:
		s.rabbet()
	case HalfLap:
		s.halfLap()
	case Bridle:
		s.bridle()
	case Dovetail, BoxJoint:
		open := []Side{Left, Right, Upper, Lower, Front, Back}
		k := cutting{kind: CutTails, enters: s.end.Side, open: open}
		s.own(k, begin(s.end.Adds), s.whole(Wide), s.whole(Thick))
		k.enters = s.facing()
		s.into(k, begin(s.end.Adds), s.whole(Wide), s.whole(Thick))
	case Dowel, ScrewJoint, Pocket, BoltJoint, Knob, Magnet, Hook, BiscuitJoint:
		s.fasteners()
	case ShelfPin:
		s.pins()
	case Mitre:
		s.mitre()
	case Scarf:
		s.scarf()
	case WedgeJoint: // how thick and wide its tenon is, nothing says
		s.into(cutting{kind: CutMortise, enters: s.facing(), through: true}, Extent{}, Extent{}, Extent{})
	}
}

// thickness is where something so thick lies in the end's thickness: as set from its face;
// against its back, where it has one shoulder; else in the middle.
func (s *seat) thickness(thick Length) Extent {
	size := s.lie.size(Thick)
	switch {
	case s.joint.Set.Known():
		return s.read(Thick, stretch(s.joint.Set, thick))
	case s.joint.Set.How != Unknown:
		return Extent{}
	case s.joint.Barefaced.On:
		return s.read(Thick, stretch(less(size, thick), thick))
	}
	return round(half(size), thick)
}

// about is an extent of another size about the same middle.
func about(e Extent, size Length) Extent {
	if !size.Known() {
		return Extent{}
	}
	e.From += (e.Size - size.Length) / 2
	e.Size = size.Length
	e.Placed, e.Sized = e.Placed && e.Sized, true
	return e
}

// inset is how far a tenon stands in from an edge of its stick: its shoulder as said, else what
// the panel's groove takes.
func (s *seat) inset(f Face) Length {
	if s.joint.Shoulder.How != Unknown {
		return s.joint.Shoulder
	}
	return s.grooveAt(f)
}

// grooveAt is how deep the groove in an edge of the stick is; nought where there is none.
func (s *seat) grooveAt(f Face) Length {
	if g, there := s.grooves[edge{s.of, s.side(f)}]; there {
		return g
	}
	return derived(0)
}

// room is what shoulders and grooves leave of the stick's width.
func (s *seat) room() Extent {
	near, far := s.inset(NearEdge), s.inset(FarEdge)
	return stretch(near, less(s.lie.size(Wide), near, far))
}

// outer is the edge, or the face, of the stick that lies nearer to an end of its mate; ok is
// false where neither does.
func (s *seat) outer(d Dimension) (f Face, ok bool) {
	near, far := s.beyond(Face(d*2)), s.beyond(Face(d*2)+1)
	switch {
	case !near.Known() || !far.Known() || wood.Same(near.Length, far.Length):
		return 0, false
	case near.Length < far.Length:
		return Face(d * 2), true
	}
	return Face(d*2) + 1, true
}

// beyond is how much of the mate there is beyond an edge or a face of the stick.
func (s *seat) beyond(f Face) Length {
	by := s.end.by(0)
	l := s.lieOf(s.end.Mates[0]).blank
	at := l.inBlank(by.inside(s.box(Extent{}, s.whole(Wide), s.whole(Thick))))
	looks := l.face(by.inner(s.side(f)))
	e := at[looks.Dimension()]
	switch size := l.size(looks.Dimension()); {
	case !e.Known() || looks.Far() && !size.Known():
		return Length{}
	case looks.Far():
		return derived(size.Length - e.To())
	}
	return derived(e.From)
}

func (s *seat) tenon() {
	j := s.joint
	thick := s.thickness(j.Thick)
	hole := about(thick, j.Mortise.Thick)
	room := s.room()
	var outer Face
	haunched := j.Haunch != nil
	if haunched {
		var ok bool
		if outer, ok = s.outer(Wide); !ok {
			room.Placed = false
		} else {
			s.haunch(outer, room, thick, hole)
		}
		room.Size -= j.Haunch.Wide.Length
		room.Sized = room.Sized && j.Haunch.Wide.Known()
		if outer == NearEdge {
			room.From += j.Haunch.Wide.Length
		}
	}
	tenon := cutting{kind: CutTenon, enters: s.end.Side, stands: true, open: []Side{s.facing()}}
	if j.Barefaced.On {
		tenon.open = append(tenon.open, s.bareFace(thick))
	}
	mortise := cutting{kind: CutMortise, enters: s.facing(), through: j.Through.On}
	widths := s.widths(room, haunched, outer)
	for _, wide := range widths {
		s.own(tenon, begin(j.Long), wide, thick)
		s.into(mortise, begin(j.Mortise.Deep), s.slotFor(wide), hole)
	}
	if j.Peg != nil {
		wide := Extent{}
		if len(widths) == 1 {
			wide = widths[0]
		}
		s.pegs(wide)
	}
}

// slotFor is where the mortise lies along the width of its tenon: about the tenon's middle.
func (s *seat) slotFor(tenon Extent) Extent {
	if m := s.joint.Mortise; m != nil && m.Wide.How != Unknown {
		return about(tenon, m.Wide)
	}
	return tenon
}

// bareFace is the side at which a tenon has no shoulder.
func (s *seat) bareFace(thick Extent) Side {
	if thick.Placed && thick.From <= wood.Slack {
		return s.side(NearFace)
	}
	return s.side(FarFace)
}

// widths are the tenons of a joint across the width of their stick, one beside the other. One
// that is narrower than its room stands beside the haunch, or the groove, where there is one
// of them, and else in the middle.
func (s *seat) widths(room Extent, haunched bool, outer Face) []Extent {
	j := s.joint
	if len(j.At) > 0 {
		return s.placed(j.Wide)
	}
	n := min(j.Count.Or(1), mostCuts)
	wide, apart := j.Wide, j.Apart
	switch {
	case !room.Known():
		return make([]Extent, n)
	case n > 1:
		return several(n, room, wide, apart)
	case wide.How == Unknown:
		return []Extent{room}
	case !wide.Known():
		return []Extent{{}}
	}
	spare := room.Size - wide.Length
	nearFirst := haunched && outer == NearEdge || !haunched && s.inset(NearEdge).Length > 0 && s.inset(FarEdge).Length == 0
	farFirst := haunched && outer == FarEdge || !haunched && s.inset(FarEdge).Length > 0 && s.inset(NearEdge).Length == 0
	from := room.From
	switch {
	case nearFirst && spare >= 0, farFirst && spare < 0: // too wide, it takes the wood beside the groove
	case nearFirst, farFirst:
		from += spare
	default:
		from += spare / 2
	}
	return []Extent{stretch(derived(from), wide)}
}

// several shares a room out to tenons that stand apart.
func several(n int, room Extent, wide, apart Length) []Extent {
	all := make([]Extent, n)
	many := wood.Length(n)
	switch {
	case wide.Known() && apart.How == Unknown:
		apart = derived((room.Size - many*wide.Length) / (many - 1))
	case apart.Known() && wide.How == Unknown:
		wide = derived((room.Size - (many-1)*apart.Length) / many)
	}
	if !wide.Known() || !apart.Known() {
		return all
	}
	from := room.From + (room.Size-many*wide.Length-(many-1)*apart.Length)/2
	for i := range all {
		all[i] = stretch(derived(from), wide)
		from += wide.Length + apart.Length
	}
	return all
}

// placed are the places along the width that `at` names, or as many of unknown place as there are.
func (s *seat) placed(size Length) []Extent {
	j := s.joint
	if len(j.At) == 0 {
		all := make([]Extent, min(j.Count.Or(1), mostCuts))
		for i := range all {
			all[i].Size, all[i].Sized = size.Length, size.Known()
		}
		return all
	}
	var all []Extent
	for _, at := range j.At[:min(len(j.At), mostCuts)] {
		all = append(all, s.read(Wide, round(at, size)))
	}
	return all
}

// haunch is the short part of a tenon, between it and the outer edge of its stick.
func (s *seat) haunch(outer Face, room, thick, hole Extent) {
	h := s.joint.Haunch
	deep := h.Deep
	if deep.How == Unknown {
		if deep = s.grooveAt(outer.Opposite()); deep.Length == 0 {
			deep = Length{}
		}
	}
	wide := stretch(derived(room.From), h.Wide)
	wide.Placed = room.Placed
	if outer == FarEdge {
		wide.From = room.To() - h.Wide.Length
		wide.Placed = room.Known() && h.Wide.Known()
	}
	s.own(cutting{kind: CutHaunch, enters: s.end.Side, stands: true, open: []Side{s.facing(), s.side(outer)}}, begin(deep), wide, thick)
	s.into(cutting{kind: CutHaunch, enters: s.facing(), open: []Side{s.side(outer)}}, begin(deep), wide, hole)
}

// pegs go through the mate and the tenon, across the tenon's thickness. One that is drawn has its
// hole in the tenon nearer to the shoulder. One peg stands in the middle of its tenon; where
// several stand across it, nothing says.
func (s *seat) pegs(wide Extent) {
	p := s.joint.Peg
	if p.Of.To == nil {
		return
	}
	thick := p.Of.To.Thick
	k := cutting{kind: CutPeg, enters: s.side(NearFace), round: true, through: true}
	for i, at := range p.At[:min(len(p.At), mostCuts)] {
		in := less(at, p.Draw.Or(0))
		if p.InTenon.How != Unknown && i == 0 {
			in = p.InTenon
		}
		s.own(k, round(in, thick), about(wide, thick), Extent{})
		s.into(k, round(at, thick), about(wide, thick), Extent{})
	}
}

func (s *seat) looseTenon() {
	j := s.joint
	m := j.Mortise
	if m == nil {
		m = &Mortise{}
	}
	slot := m.Thick
	if slot.How == Unknown {
		slot = j.Thick
	}
	thick := about(s.thickness(j.Thick), slot)
	room := s.room()
	widths := []Extent{{}}
	if j.Wide.How != Unknown || len(j.At) > 0 {
		widths = s.widths(room, false, 0)
	}
	for _, wide := range widths {
		wide = s.slotFor(wide)
		s.own(cutting{kind: CutMortise, enters: s.end.Side}, inwards(m.Own), wide, thick)
		s.into(cutting{kind: CutMortise, enters: s.facing(), through: j.Through.On}, begin(m.Deep), wide, thick)
	}
}

// inwards is so far into the end, from its shoulder.
func inwards(deep Length) Extent {
	return Extent{From: -deep.Length, Size: deep.Length, Placed: deep.Known(), Sized: deep.Known()}
}

// grooveLine is where the grooves in the edges of the stick lie in its thickness, in which a stub
// tenon fits: in line with the cuts that are in its edges already.
func (s *seat) grooveLine() Extent {
	if b := s.In(s.of); b != nil {
		for _, c := range b.Cuts {
			if c.Kind == CutGroove && c.Use == s.of && c.Enters.Dimension() == Wide {
				return c.At[Thick]
			}
		}
	}
	return Extent{}
}

func (s *seat) tongue() {
	j := s.joint
	thick := s.thickness(j.Thick)
	slot, deep := j.Groove.Across, j.Groove.Deep
	if slot.How == Unknown {
		slot = j.Thick
	}
	if deep.How == Unknown { // the usual relief
		deep = addUp(j.Long, s.relief())
	}
	s.own(cutting{kind: CutTongue, enters: s.end.Side, stands: true, open: append(s.sides(Wide), s.facing())}, begin(j.Long), s.whole(Wide), thick)
	s.into(cutting{kind: CutGroove, enters: s.facing(), open: s.sides(Wide)}, begin(deep), s.whole(Wide), about(thick, slot))
}

// housing takes a board's whole end, from one edge to the other. One that is stopped begins so far
// behind the front, and the board is notched there.
func (s *seat) housing() {
	j := s.joint
	wide, open := s.whole(Wide), s.sides(Wide)
	if j.Stopped.How != Unknown {
		if s.lie.axis[Wide] != Behind {
			wide = Extent{}
		} else {
			wide = stretch(j.Stopped, less(s.lie.size(Wide), j.Stopped))
			open = open[1:]
			s.own(cutting{kind: CutNotch, enters: Front, open: append(s.sides(Thick), s.end.Side)}, begin(j.Deep), begin(j.Stopped), s.whole(Thick))
		}
	}
	thick := s.whole(Thick)
	k := cutting{kind: CutHousing, enters: s.facing(), open: open}
	if j.SlotWide.How != Unknown {
		thick = about(thick, j.SlotWide)
		for f := NearFace; f <= FarFace; f++ { // at the very end of its mate it is a step
			if end := s.beyond(f); end.Known() && wood.Same(end.Length, 0) {
				k.runs = append(k.runs, s.side(f))
			}
		}
	}
	s.into(k, begin(j.Deep), wide, thick)
}

// rabbet steps the end, or the back, of the mate.
func (s *seat) rabbet() {
	into, from := s.joint.Rabbet.Across, s.joint.Rabbet.Deep
	k := cutting{kind: CutRabbet, enters: s.facing(), open: s.sides(Wide)}
	if s.end.inOnePlane() {
		back := s.side(FarFace)
		k.open = append(k.open, back)
		k.from = &margin{back, into}
		s.into(k, begin(from), s.whole(Wide), s.whole(Thick))
		return
	}
	if from.How == Unknown {
		from = s.lie.size(Thick)
	}
	if outer, ok := s.outer(Thick); ok {
		k.open = append(k.open, s.side(outer))
		k.from = &margin{s.side(outer), from}
	}
	s.into(k, begin(into), s.whole(Wide), s.whole(Thick))
}

// halfLap takes the back of the end and the front of its mate.
func (s *seat) halfLap() {
	j := s.joint
	over := s.end.MateSize()
	s.own(cutting{kind: CutLap, enters: s.side(FarFace), open: append(s.sides(Wide), s.end.Side)},
		begin(over), s.whole(Wide), stretch(less(s.lie.size(Thick), j.Own), j.Own))
	s.into(cutting{kind: CutLap, enters: s.side(NearFace), open: append(s.sides(Wide), s.end.Side, s.facing())},
		begin(over), s.whole(Wide), begin(j.Deep))
}

// bridle slots the end and takes both cheeks of its mate.
func (s *seat) bridle() {
	j := s.joint
	slot := s.thickness(j.Thick)
	over := s.end.MateSize()
	s.own(cutting{kind: CutSlot, enters: s.end.Side, open: s.sides(Wide)}, stretch(less(over, j.Deep), j.Deep), s.whole(Wide), slot)
	open := append(s.sides(Wide), s.end.Side, s.facing())
	from, to := Length{}, Length{}
	if slot.Known() {
		from, to = derived(slot.From), derived(slot.To())
	}
	s.into(cutting{kind: CutLap, enters: s.side(NearFace), open: open}, begin(over), s.whole(Wide), begin(from))
	s.into(cutting{kind: CutLap, enters: s.side(FarFace), open: open}, begin(over), s.whole(Wide), stretch(to, less(s.lie.size(Thick), to)))
}

// mitre places what is let in across a mitre, which lies aslant: where it stands in the thickness
// is known, and no more. How thick its keys are, nothing says.
func (s *seat) mitre() {
	j := s.joint
	kind, size := CutSpline, Length{}
	switch f := j.Hardware.To; {
	case j.Spline != nil:
		size = j.Spline.Thick
	case f == nil:
		return
	case f.Word == Dowel:
		kind, size = CutDowel, f.Thick
	default:
		kind, size = CutBiscuit, f.Thick
	}
	thick := s.middle(size)
	open := append(s.sides(Wide), s.end.Side, s.facing())
	many := 1
	if kind != CutSpline {
		many = max(len(j.At), j.Count.Or(1))
	}
	for range min(many, mostCuts) {
		s.own(cutting{kind: kind, enters: s.end.Side, open: open}, Extent{}, Extent{}, thick)
		s.into(cutting{kind: kind, enters: s.facing(), open: open}, Extent{}, Extent{}, thick)
	}
}

// scarf slopes both ends through the whole thickness. How much of the slope lies on either side of
// where they meet, nothing says.
func (s *seat) scarf() {
	long := Extent{}
	if slope, thick := s.joint.Slope, s.lie.size(Thick); slope.Known() && slope.Value > 0 && thick.Known() {
		long = Extent{Size: wood.Length(float64(thick.Length) / slope.Value), Sized: true}
	}
	open := append(append(s.sides(Wide), s.sides(Thick)...), s.end.Side, s.facing())
	s.own(cutting{kind: CutScarf, enters: s.end.Side, open: open}, long, s.whole(Wide), s.whole(Thick))
	s.into(cutting{kind: CutScarf, enters: s.facing(), open: open}, long, s.whole(Wide), s.whole(Thick))
}

// middle is where something round, or a slot, lies in the end's thickness: its middle is as far
// from the face as set, else halfway.
func (s *seat) middle(size Length) Extent {
	return s.read(Thick, round(or(s.joint.Set, half(s.lie.size(Thick))), size))
}

// fasteners are placed by their middle: from the face as set, along the width as `at` says.
func (s *seat) fasteners() {
	j, f := s.joint, s.joint.Hardware.To
	if f == nil {
		return
	}
	size := f.Diameter()
	along := size
	switch j.Kind.Is {
	case BiscuitJoint:
		size, along = f.Thick, f.Long
	case Hook:
		size, along = f.Thick.Or(0), f.Long.Or(0)
	}
	thick := s.middle(size)
	for _, wide := range s.placed(along) {
		s.fastener(f, wide, thick)
	}
}

func (s *seat) fastener(f *Fastener, wide, thick Extent) {
	j := s.joint
	own := func(kind CutKind, deep, size Length) {
		s.own(cutting{kind: kind, enters: s.end.Side, round: kind != CutBiscuit}, inwards(deep), about(wide, size), about(thick, size))
	}
	into := func(kind CutKind, deep Length) {
		s.into(cutting{kind: kind, enters: s.facing(), round: kind != CutBiscuit}, begin(deep), wide, thick)
	}
	through := func(kind CutKind) { // from the outside of the mate
		s.into(cutting{kind: kind, enters: s.end.Side, round: true, through: true}, Extent{}, wide, thick)
	}
	size := f.Diameter()
	beyond := less(addUp(f.Long, j.Counterbore.Or(0)), s.end.MateSize()) // of what goes through the mate
	switch j.Kind.Is {
	case Dowel:
		deep := addUp(half(f.Long), s.relief())
		into(CutDowel, or(j.Deep, deep))
		own(CutDowel, or(j.Own, deep), size)
	case BiscuitJoint: // half of it, and a little, into each
		deep := addUp(half(f.Wide), derived(4*wood.Millimetre/5))
		into(CutBiscuit, deep)
		s.own(cutting{kind: CutBiscuit, enters: s.end.Side}, inwards(deep), wide, thick)
	case ScrewJoint:
		through(CutScrew)
		own(CutScrew, beyond, or(j.Pilot, size))
	case Pocket: // it runs aslant, from the face in which its pocket is
		own(CutScrew, Length{}, size)
		into(CutScrew, Length{})
	case Knob:
		through(CutBolt)
		if insert := j.Insert.To; insert != nil {
			own(CutInsert, insert.Long, insert.Thick)
			if behind := or(j.Deep, beyond); behind.Known() && insert.Long.Known() && behind.Length > insert.Long.Length {
				own(CutBolt, behind, size)
			}
			return
		}
		own(CutBolt, or(j.Deep, beyond), size)
	case Magnet:
		into(CutMagnet, f.Long)
		own(CutMagnet, f.Long, size)
	case Hook: // half of it on the end, half on what that meets
		s.into(cutting{kind: CutHook, enters: s.facing()}, Extent{}, wide, thick)
		s.own(cutting{kind: CutHook, enters: s.end.Side}, Extent{}, wide, thick)
	case BoltJoint:
		through(CutBolt)
		if insert := j.Insert.To; insert != nil {
			own(CutInsert, insert.Long, insert.Thick)
			if behind := or(j.Deep, beyond); behind.Known() && insert.Long.Known() && behind.Length > insert.Long.Length {
				own(CutBolt, behind, size)
			}
			return
		}
		own(CutBolt, j.Deep, size)
		if j.NutAt.How != Unknown { // from the far face, until the bolt is in the middle of the nut
			at := j.NutAt
			at.Length = -at.Length
			deep := Extent{}
			if whole := s.lie.size(Thick); thick.Known() {
				from := less(derived(thick.From+thick.Size/2), half(f.NutLong))
				deep = stretch(from, less(whole, from))
			}
			s.own(cutting{kind: CutNut, enters: s.side(FarFace), round: true}, round(at, f.Nut), about(wide, f.Nut), deep)
		}
	}
}

// pins are the holes in what stands beside a shelf, for the pins on which it lies: just below it.
func (s *seat) pins() {
	j, f := s.joint, s.joint.Hardware.To
	if f == nil || s.lie.axis[Thick] != Down {
		return
	}
	for _, wide := range s.placed(f.Thick) {
		below := Extent{From: -f.Thick.Length, Size: f.Thick.Length, Placed: f.Thick.Known(), Sized: f.Thick.Known()}
		s.into(cutting{kind: CutPin, enters: s.facing(), round: true}, begin(j.Deep), wide, below)
	}
}

// or is l where the plan says it, else other.
func or(l, other Length) Length {
	if l.How != Unknown {
		return l
	}
	return other
}

// Diameter is that of a fastener's shank: as said, else by its gauge.
func (f *Fastener) Diameter() Length {
	if f.Thick.How == Unknown && f.Gauge.Known() {
		return derived(wood.ScrewDiameter(f.Gauge.N))
	}
	return f.Thick
}
