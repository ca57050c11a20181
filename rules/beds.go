package rules

// Beds: the slats that lie under a mattress, and what carries them. A plan says where a mattress lies ("holds mattress"): in
// an open bay or a space, whose slats lie right under it, or on the frame, the case or the assembly that has them.

import (
	"cmp"
	"iter"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// deck is a row of slats that lie under a mattress, as they lie in the outermost assembly of the bed.
type deck struct {
	list  *plan.List
	slats []timber
	along plan.Axis // which way they run
	row   plan.Axis // which way they follow one another
	up    plan.Axis
	in    *walk // with the other wood of the bed

	legs map[plan.Node]bool // of rails that were looked at: whether they stand
	to   map[any][]any      // see fastened
}

// timber is a piece of wood as it lies in a bed.
type timber struct {
	plan.Node
	at    plan.Box
	grain plan.Axis     // of a member: along which it runs there
	held  []plan.Extent // of a slat: where its ends meet something, along it
	low   plan.Extent   // of a slat: its place in height, which may go down below its wood
}

// mattress is where a mattress lies, in the outermost assembly of its bed.
type mattress struct {
	bed    *plan.Assembly
	at     plan.Box
	up     plan.Axis
	within bool // what holds it is the assembly that has the slats, and no empty place over them
}

// decks ranges over the rows of slats under the mattresses of a plan, each once.
func decks(p *plan.Plan) iter.Seq[*deck] {
	return func(yield func(*deck) bool) {
		var placed map[*plan.Assembly]*plan.Placed
		seen, walks := map[*plan.List]bool{}, map[*plan.Assembly]*walk{}
		for a, holder := range mattresses(p) {
			if placed == nil {
				placed = placedAt(p)
			}
			m := outermost(a, holder, placed)
			if walks[m.bed] == nil {
				walks[m.bed] = walked(m.bed)
			}
			for _, d := range walks[m.bed].under(m) {
				if !seen[d.list] && !yield(d) {
					return
				}
				seen[d.list] = true
			}
		}
	}
}

// mattresses ranges over what a plan says holds one: a space, or nil where the assembly itself does.
func mattresses(p *plan.Plan) iter.Seq2[*plan.Assembly, *plan.Space] {
	on := func(holds []*plan.Holds) bool {
		return slices.ContainsFunc(holds, func(h *plan.Holds) bool { return h.What.Is == "mattress" })
	}
	return func(yield func(*plan.Assembly, *plan.Space) bool) {
		for _, a := range p.Assemblies {
			if on(a.Holds) && !yield(a, nil) {
				return
			}
		}
		for s := range plan.AllOf[*plan.Space](p) {
			if on(s.Holds) && !yield(s.In, s) {
				return
			}
		}
	}
}

// placedAt is where assemblies stand in others: the first place of each.
func placedAt(p *plan.Plan) map[*plan.Assembly]*plan.Placed {
	at := map[*plan.Assembly]*plan.Placed{}
	for n := range plan.AllOf[*plan.Placed](p) {
		if n.Part.To != nil && at[n.Part.To] == nil {
			at[n.Part.To] = n
		}
	}
	return at
}

// outermost finds where a mattress lies in the assembly in which all the rest of its bed stands. A frame that
// holds one is drawn as it lies, its face up.
func outermost(a *plan.Assembly, holder *plan.Space, placed map[*plan.Assembly]*plan.Placed) mattress {
	m := mattress{bed: a, up: plan.Down, within: holder == nil}
	if a.Kind == plan.Frame {
		m.up = plan.Behind
	}
	if holder != nil {
		m.at = holder.Cell
	} else {
		for axis, l := range a.Outside {
			m.at[axis] = plan.Extent{Size: l.Length, Placed: true, Sized: l.Known()}
		}
	}
	for seen := map[*plan.Assembly]bool{}; !seen[m.bed]; {
		seen[m.bed] = true
		by := placed[m.bed]
		if by == nil {
			break
		}
		m.bed, m.at, m.up = by.In, by.Outer(m.at), by.HostAxis(m.up)
	}
	return m
}

// walk takes down the wood of a bed, and the rows of slats in it that lie level.
type walk struct {
	up    plan.Axis
	floor plan.Length // how far down the bed goes
	cot   bool
	wood  []timber
	decks []*deck
}

func walked(bed *plan.Assembly) *walk {
	w := &walk{up: plan.Down, floor: bed.Outside[plan.Down], cot: bed.Use.Is == "cot"}
	if bed.Kind == plan.Frame {
		w.up, w.floor = plan.Behind, plan.Length{}
	}
	things, all := bed.Within(mostWithin)
	if !all {
		return &walk{}
	}
	for _, t := range things {
		switch n := t.Node.(type) {
		case *plan.Member:
			if n.Word != "slat" {
				w.wood = append(w.wood, timber{Node: n, at: t.Box(n.Body), grain: t.Along(n.Grain)})
			}
		case *plan.Panel:
			w.wood = append(w.wood, timber{Node: n, at: t.Box(n.Cell)})
		case *plan.List:
			w.takeRow(n, t)
		}
	}
	return w
}

// under are the rows of slats on which a mattress lies; none where more than one level of them can be meant, or
// something lies between.
func (w *walk) under(m mattress) []*deck {
	if m.up != w.up {
		return nil
	}
	var under []*deck
	for _, d := range w.decks {
		if first := d.slats[0]; overlapping(first.at[d.along], m.at[d.along]) && d.overlaps(m.at[d.row]) && m.on(first.at[w.up]) && !w.covers(d, m) {
			under = append(under, d)
		}
	}
	level := func(d *deck) plan.Extent { return d.slats[0].at[w.up] }
	slices.SortStableFunc(under, func(a, b *deck) int { return cmp.Compare(level(a).From, level(b).From) })
	for i, d := range under {
		switch {
		case overlapping(level(d), level(under[0])):
		case m.within:
			return nil
		default:
			return under[:i]
		}
	}
	return under
}

// overlaps reports whether any of its slats lies within a stretch of their row.
func (d *deck) overlaps(e plan.Extent) bool {
	return slices.ContainsFunc(d.slats, func(s timber) bool { return overlapping(s.at[d.row], e) })
}

// on reports whether a mattress lies right on what is so high: within what holds it, or not more than 1 in below
// the empty place.
func (m mattress) on(level plan.Extent) bool {
	at := m.at[m.up]
	if m.within {
		return overlapping(level, at)
	}
	return at.Known() && (level.From-at.To()).Abs() <= wood.Inch
}

// takeRow takes down a list if it is a row of slats that lie level.
func (w *walk) takeRow(l *plan.List, t plan.Within) {
	d := &deck{list: l, up: w.up, row: t.Along(l.Axis), in: w}
	for _, n := range l.Items {
		m, ok := n.(*plan.Member)
		if !ok || m.Word != "slat" {
			continue
		}
		s := timber{Node: m, at: t.Box(m.Body), grain: t.Along(m.Grain), low: t.Box(m.Cell)[w.up]}
		for i, e := range m.Ends {
			if e != nil && len(e.Mates) > 0 {
				end := m.Body
				if i == 1 {
					end[m.Grain].From = end[m.Grain].To()
				}
				end[m.Grain].Size = 0
				s.held = append(s.held, t.Box(end)[s.grain])
			}
		}
		if !s.at[0].Known() || !s.at[1].Known() || !s.at[2].Known() {
			return
		}
		d.slats = append(d.slats, s)
		d.along = s.grain
	}
	if len(d.slats) > 1 && d.row != w.up && d.along != w.up && d.row != d.along {
		w.decks = append(w.decks, d)
	}
}

// covers reports whether a board or a panel lies between a row of slats and the mattress.
func (w *walk) covers(d *deck, m mattress) bool {
	first, last := d.slats[0], d.slats[len(d.slats)-1]
	return slices.ContainsFunc(w.wood, func(x timber) bool {
		if member, ok := x.Node.(*plan.Member); ok && !member.Board() {
			return false
		}
		at := x.at[w.up]
		level := at.Known() && !wood.Over(at.To(), first.at[w.up].From) && (m.within || !wood.Under(at.From, m.at[w.up].To()))
		return level && overlapping(x.at[d.along], first.at[d.along]) && (overlapping(x.at[d.row], first.at[d.row]) || overlapping(x.at[d.row], last.at[d.row]))
	})
}

// overlapping reports whether two extents are known, and share more than a touch.
func overlapping(a, b plan.Extent) bool {
	return a.Known() && b.Known() && wood.Under(max(a.From, b.From), min(a.To(), b.To()))
}

// How a slat is judged by the rules about what carries it.
var (
	slatLoad = &Figure{
		Name: "load", Why: "what presses on the middle of one slat", Basis: Practice,
		Source: "75 lb (34 kg): a heavy sleeper on three slats", Dim: lang.Weight, Number: 75 * wood.Pound,
	}
	slatBend = &Figure{
		Name: "bend", Why: "how far a slat bends under that at most", Basis: Practice,
		Source: "5/8 in (16 mm): a little more than the usual slats of a single bed come to, 3/4 x 3 1/2 of white pine over 37 1/2", Dim: lang.Length, Length: 5 * wood.Inch / 8, Metric: 16 * wood.Millimetre,
	}
	railSlats = &Figure{
		Name: "slats", Why: "how many such slats press on the middle of a rail that has no leg", Basis: Practice,
		Source: "6: two sleepers side by side", Dim: lang.Plain, Number: 6,
	}
)

// carriedSlat is a slat, the widest stretch over which nothing carries it, and how stiff it is.
type carriedSlat struct {
	*plan.Member
	long, wide, thick wood.Length  // clear, across the stretch, in the direction of the load
	idle              *plan.Member // a rail under it that stands on nothing, and is too weak for that
	idleBends         wood.Length  // how far that would bend; 0 where nobody can tell
	stiffness
	stiff bool // how stiff it is is known
	cot   bool // of a small child
}

// carriedSlats ranges over the slats under mattresses of which the plan tells what carries them at two places or
// more. A slat that is arched is sprung, and bends on purpose.
func carriedSlats(pass *Pass) iter.Seq[*carriedSlat] {
	return func(yield func(*carriedSlat) bool) {
		var fixed map[plan.Node][]any
		for d := range decks(pass.Plan) {
			if fixed == nil {
				fixed = fixedTo(pass.Plan)
			}
			d.legs, d.to = map[plan.Node]bool{}, d.fastened(fixed)
			var last *carriedSlat
			for _, s := range d.slats {
				c, ok := d.carry(pass, s, fixed)
				if !ok {
					continue
				}
				if last != nil && last.Span != c.Span { // of what one line draws, the one with the widest stretch
					if !yield(last.stiffly(pass.Plan)) {
						return
					}
					last = nil
				}
				if last == nil || c.long > last.long {
					last = c
				}
			}
			if last != nil && !yield(last.stiffly(pass.Plan)) {
				return
			}
		}
	}
}

// fixedTo is what lines of their own fasten to members, both ways.
func fixedTo(p *plan.Plan) map[plan.Node][]any {
	to := map[plan.Node][]any{}
	add := func(a, b plan.Ref[plan.Thing]) {
		if a.To == nil || b.To == nil {
			return
		}
		if m, ok := a.To.Is.(*plan.Member); ok {
			to[m] = append(to[m], b.To.Is)
		}
	}
	for _, f := range p.Fixes {
		add(f.A, f.B)
		add(f.B, f.A)
	}
	return to
}

// carry finds the widest stretch over which nothing carries a slat; false where the plan does not tell.
func (d *deck) carry(pass *Pass, s timber, fixed map[plan.Node][]any) (*carriedSlat, bool) {
	p, m := pass.Plan, s.Node.(*plan.Member)
	own := s.at[d.along]
	if m.Arch.Said() {
		return nil, false
	}
	at := make([]plan.Extent, 0, len(s.held)+2)
	at = append(at, s.held...)
	under := d.under(p, s)
	c := &carriedSlat{Member: m, wide: s.at[d.row].Size, thick: s.at[d.up].Size, cot: d.in.cot}
	for i, x := range under {
		e := x.at[d.along]
		outermost := !wood.Over(e.From, own.From) || !wood.Under(e.To(), own.To()) || len(s.held) == 0 && (i == 0 || i == len(under)-1)
		if !outermost && !d.stands(pass, x, fixed) {
			c.idle, _ = x.Node.(*plan.Member)
			c.idleBends = d.bends(pass, x).bends
			continue
		}
		at = append(at, e)
	}
	if len(at) < 2 || !d.seen(s, under) {
		return nil, false
	}
	slices.SortFunc(at, func(a, b plan.Extent) int { return cmp.Compare(a.From, b.From) })
	to := at[0].To()
	for _, e := range at[1:] {
		c.long = max(c.long, e.From-to)
		to = max(to, e.To())
	}
	return c, c.long > 0 && c.wide > 0 && c.thick > 0
}

// stiffly is a slat with how stiff it is.
func (c *carriedSlat) stiffly(p *plan.Plan) *carriedSlat {
	c.stiffness, c.stiff = stiffnessOf(p, stuffOf(c.Member), c.thick, true)
	return c
}

// stuffOf is what a member is of, which its part says where it is one.
func stuffOf(m *plan.Member) *plan.Material {
	if m.Part.To != nil {
		return m.Part.To.Of.Material.To
	}
	return m.Of.Material.To
}

// under are the things on which a slat lies, from one end of it to the other.
func (d *deck) under(p *plan.Plan, s timber) (all []timber) {
	for _, x := range d.in.wood {
		at := x.at[d.up]
		touches := at.Placed && (agree(p, at.From, s.at[d.up].To()) || s.low.Known() && agree(p, at.From, s.low.To()))
		if touches && overlapping(x.at[d.along], s.at[d.along]) && overlapping(x.at[d.row], s.at[d.row]) {
			all = append(all, x)
		}
	}
	slices.SortStableFunc(all, func(a, b timber) int { return cmp.Compare(a.at[d.along].From, b.at[d.along].From) })
	return all
}

// fastened is what lines of their own fasten to slats, by their row or, where they stand in none, by themselves.
func (d *deck) fastened(fixed map[plan.Node][]any) map[any][]any {
	to := map[any][]any{}
	for _, s := range d.slats {
		if with := fixed[s.Node]; len(with) > 0 {
			to[rowOf(s)] = append(to[rowOf(s)], with...)
		}
	}
	return to
}

// rowOf is the name of the row that a slat is one of, else the slat itself.
func rowOf(s timber) any {
	if row := plan.It(s.Node).Row; row != "" {
		return row
	}
	return s.Node
}

// seen reports whether a slat, and the row that it is one of, is fastened to nothing but what it is seen to lie on.
func (d *deck) seen(s timber, under []timber) bool {
	return !slices.ContainsFunc(d.to[rowOf(s)], func(to any) bool {
		return !slices.ContainsFunc(under, func(x timber) bool { return x.Node == to })
	})
}

// stands reports whether a rail under the middle of slats carries them: it stands on a leg, or on anything else between
// its ends, or it is stiff enough to do without.
func (d *deck) stands(pass *Pass, rail timber, fixed map[plan.Node][]any) bool {
	does, known := d.legs[rail.Node]
	if !known {
		bends := d.bends(pass, rail).bends
		stiff := bends > 0 && !wood.Over(bends, pass.Length(slatBend, plan.PathOf(rail.Node)))
		does = stiff || d.onLeg(pass.Plan, rail) || slices.ContainsFunc(fixed[rail.Node], upright)
		d.legs[rail.Node] = does
	}
	return does
}

// upright reports whether something that is fastened to a rail may be its leg.
func upright(thing any) bool {
	switch t := thing.(type) {
	case *plan.Part:
		return true
	case *plan.Member:
		return t.Grain == plan.Down
	}
	return false
}

// onLeg reports whether something under a rail, or beside it and reaching below it, carries it between its ends, or it
// goes down to the floor itself.
func (d *deck) onLeg(p *plan.Plan, rail timber) bool {
	low := rail.at[d.up]
	if d.in.floor.Known() && low.Known() && agree(p, low.To(), d.in.floor.Length) {
		return true
	}
	middle := rail.at[d.row]
	middle.From, middle.Size = middle.From+middle.Size/4, middle.Size/2
	touch := func(a, b plan.Extent) bool {
		return a.Known() && b.Known() && !wood.Over(a.From, b.To()+p.Tape.Tolerance()) && !wood.Over(b.From, a.To()+p.Tape.Tolerance())
	}
	return slices.ContainsFunc(d.in.wood, func(x timber) bool {
		return x.Node != rail.Node && overlapping(x.at[d.row], middle) && touch(x.at[d.along], rail.at[d.along]) &&
			touch(x.at[d.up], low) && wood.Over(x.at[d.up].To(), low.To())
	})
}

// railBend is how far a rail bends, from end to end, under the slats that two sleepers press on its middle: nothing
// where nobody can tell.
type railBend struct {
	long, wide, thick wood.Length
	newtons           float64
	stiffness
	bends wood.Length
}

func (d *deck) bends(pass *Pass, rail timber) (b railBend) {
	m, ok := rail.Node.(*plan.Member)
	if !ok || !rail.at[d.row].Sized || !rail.at[d.along].Sized || !rail.at[d.up].Sized {
		return b
	}
	b.long, b.wide, b.thick = rail.at[d.row].Size, rail.at[d.along].Size, rail.at[d.up].Size
	subject := plan.PathOf(m)
	b.newtons = pass.Number(slatLoad, subject) * wood.Gravity * pass.Number(railSlats, subject)
	if b.stiffness, ok = stiffnessOf(pass.Plan, stuffOf(m), b.thick, rail.grain == d.row); ok {
		b.bends = wood.Beam{Span: b.long, Wide: b.wide, Thick: b.thick, E: b.pascals}.Sag(wood.Midpoint, b.newtons)
	}
	return b
}

// beamBetween is a rail at which two rows of slats meet, and which stands on nothing and is not stiff enough to do without.
type beamBetween struct {
	*plan.Member
	railBend
}

// beamsBetween ranges over the rails between two rows of slats that do not carry them.
func beamsBetween(pass *Pass) iter.Seq[*beamBetween] {
	return func(yield func(*beamBetween) bool) {
		meets := map[*plan.Member][2]bool{} // whether slats end at it before it, and behind it
		var fixed map[plan.Node][]any
		for d := range decks(pass.Plan) {
			if fixed == nil {
				fixed = fixedTo(pass.Plan)
			}
			d.legs = map[plan.Node]bool{}
			for _, s := range d.slats {
				for i, e := range s.Node.(*plan.Member).Ends {
					if e == nil {
						continue
					}
					for _, rail := range e.Mates {
						sides := meets[rail]
						if sides[i] {
							continue
						}
						sides[i] = true
						meets[rail] = sides
						if !sides[0] || !sides[1] {
							continue
						}
						if b, ok := d.between(pass, rail, fixed); ok && !yield(b) {
							return
						}
					}
				}
			}
		}
	}
}

// between finds a rail in the bed that runs along the row, and does not carry what ends at it.
func (d *deck) between(pass *Pass, rail *plan.Member, fixed map[plan.Node][]any) (*beamBetween, bool) {
	i := slices.IndexFunc(d.in.wood, func(x timber) bool { return x.Node == plan.Node(rail) })
	if i < 0 || d.in.wood[i].grain != d.row || !d.in.wood[i].at[d.row].Sized || d.stands(pass, d.in.wood[i], fixed) {
		return nil, false
	}
	return &beamBetween{rail, d.bends(pass, d.in.wood[i])}, true
}
