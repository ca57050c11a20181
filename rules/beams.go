package rules

// Level members as beams: what carries them and how far that is apart, how stiff they are along it, and how far they
// sag. loads.go has what lies on them.

import (
	"cmp"
	"slices"
	"sort"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// stiffness is how stiff a material is in bending, along a span.
type stiffness struct {
	pascals  float64
	from     string // where the figure comes from: "red oak along the grain"
	weakness string // in what it is weaker than a figure that was read; "" if in nothing
}

// stiffnessOf is how stiff a thickness of a material is along its grain or across it: as the plan says, else as
// the shelf has it. Along the grain of solid wood that is the MOE of the tables, of a sheet the middle of
// its kind, of a layup what its plies make of it, up to a tenth more than the MOE of the tables, which has shear in
// it, of which thin boards have little. Across the grain of solid wood the ratios of Tables 5-1 and
// 5-2 serve. A plan says it along the grain, and across it the shelf's ratio is taken.
func stiffnessOf(p *plan.Plan, of *plan.Material, thick wood.Length, along bool) (s stiffness, ok bool) {
	if of == nil {
		return s, false
	}
	var layup wood.Layup
	var moe wood.Figure // along the grain, of what is no layup
	s.from = materialSaid(of)
	switch of.Kind {
	case plan.Layup:
		if layup, ok = p.Pressed(of); !ok {
			return s, false
		}
	case plan.Sheet:
		sheet, found := wood.FindSheet(of.SheetKind.Is)
		if !found {
			return s, false
		}
		layup = wood.Layup{{Material: wood.Board{Sheet: sheet}, Thick: thick}}
		moe = wood.Figure{Value: (sheet.MOE.Least + sheet.MOE.Greatest) / 2, Status: sheet.Status}
		s.from += ", the middle of its kind"
	case plan.Solid:
		if of.Species != nil && of.Species.MOE.Known() {
			layup = wood.Layup{{Material: wood.Solid{Species: of.Species, Cut: of.Rings()}, Thick: thick}}
			moe = of.Species.MOE
		}
	}
	known, rests := moe.Known(), wood.Footing{Status: moe.Status}
	said := of.Stiff.How != plan.Unknown
	if said {
		s.pascals, s.from = of.Stiff.Value, quote(of.Name.Text)+", as the plan says"
		if known = of.Stiff.Known() && s.pascals > 0; along || !known {
			return s, known
		}
	} else {
		s.pascals = moe.Value
	}
	if !along || !known { // what the plies make of it
		var moduli wood.Moduli
		moduli, known = layup.Moduli()
		rests = layup.Footing()
		switch {
		case said:
			s.pascals *= moduli.BendAcross / moduli.BendAlong
		case along:
			s.pascals = moduli.BendAlong
		default:
			s.pascals = moduli.BendAcross
		}
	}
	switch {
	case of.Kind == plan.Sheet && of.Grainless():
	case along:
		s.from += ", along its grain"
	default:
		s.from += ", across its grain"
	}
	s.weakness = rests.Weakness()
	return s, known && s.pascals > 0
}

// materialSaid is what a material is, for a working.
func materialSaid(of *plan.Material) string {
	if of.Kind == plan.Layup {
		return "layup " + quote(of.Name.Text)
	}
	return stuffNamed(of)
}

// beams is what a plan says of how its members lie and what stiffens them.
type beams struct {
	plan  *plan.Plan
	flat  map[*plan.Assembly]bool // placed lying flat, or in such a thing
	fixed map[*plan.Member][]any  // what lines of their own fasten to a member; nil is the wall
}

func newBeams(p *plan.Plan) *beams {
	b := &beams{plan: p, flat: make(map[*plan.Assembly]bool), fixed: make(map[*plan.Member][]any)}
	for placed := range plan.AllOf[*plan.Placed](p) {
		if placed.Flat {
			b.lies(placed.Part.To)
		}
	}
	for _, f := range p.Fixes {
		if f.Wall.On {
			b.fasten(f.A.To, nil)
		} else if f.A.To != nil && f.B.To != nil {
			b.fasten(f.A.To, f.B.To.Is)
			b.fasten(f.B.To, f.A.To.Is)
		}
	}
	return b
}

// fasten takes down what is fastened to a member, or to the part that members are.
func (b *beams) fasten(to *plan.Thing, other any) {
	if to == nil {
		return
	}
	switch t := to.Is.(type) {
	case *plan.Member:
		b.fixed[t] = append(b.fixed[t], other)
	case *plan.Part:
		for _, m := range t.Uses {
			b.fixed[m] = append(b.fixed[m], other)
		}
	}
}

// lies takes down that an assembly lies flat, and what is placed in it.
func (b *beams) lies(a *plan.Assembly) {
	if a == nil || b.flat[a] {
		return
	}
	b.flat[a] = true
	for n := range a.Nodes() {
		if inner, ok := n.(*plan.Placed); ok {
			b.lies(inner.Part.To)
		}
	}
}

// beam is a level member that something carries at two places or more.
type beam struct {
	*plan.Member
	of          *plan.Material
	axis        plan.Axis   // along which it spans
	spans       []clearSpan // between what carries it
	whole       wood.Length // how long it is along that, without what goes into its joints
	wide, thick wood.Length // across the span, and in the direction of the load
	along       bool        // its grain runs along the span
	stiffness
}

// clearSpan is what lies between two things that carry a member.
type clearSpan struct {
	long     wood.Length
	from, to string // what carries it: `side "left"`
}

// widest is its widest span.
func (b *beam) widest() clearSpan {
	return slices.MaxFunc(b.spans, func(x, y clearSpan) int { return cmp.Compare(x.long, y.long) })
}

// sag is how far it sags under so many newtons for each metre, at once, with its ends free to turn.
func (b *beam) sag(span, thick wood.Length, perMetre float64) wood.Length {
	return wood.Beam{Span: span, Wide: b.wide, Thick: thick, E: b.pascals}.Sag(wood.Uniform, perMetre*span.Metres())
}

// of is a member as a beam; false where it is none, or where the plan does not tell what carries it: where
// nothing is drawn under it, so that it may rest on the floor; where something stands on it between what carries it, or
// runs along it and stiffens it, above, below, before or behind, or is fastened to it; where it is held along all four edges; and
// where it is shaped along its length. What overhangs is no span.
func (b *beams) of(m *plan.Member) (*beam, bool) {
	if m.Shape != nil && (m.Arch.Said() || m.Taper.Said() || m.Notch.Across.Said()) {
		return nil, false
	}
	if m.Parent == nil {
		return b.ofTop(m)
	}
	if b.flat[m.In] || plan.Neighbour(m, plan.Lower) == nil || slices.ContainsFunc(m.Cell[:], func(e plan.Extent) bool { return !e.Known() }) {
		return nil, false
	}
	axis, ends, ok := spanned(m)
	if !ok {
		return nil, false
	}
	at := m.Body[axis]
	if axis == m.Grain {
		at = m.Cell[axis]
	}
	if !at.Known() || m.Flat == axis {
		return nil, false
	}
	c := carriers{axis: axis, from: at.From, to: at.To()}
	for i, end := range ends {
		if end != "" {
			c.end(i == 1, end)
		}
	}
	for _, side := range []plan.Side{plan.Upper, plan.Front, plan.Back} {
		for _, n := range against(m, side) {
			if c.stiffens(n, m, side) {
				return nil, false
			}
		}
	}
	for _, n := range against(m, plan.Lower) {
		if !c.carries(n) {
			return nil, false
		}
	}
	for _, n := range against(m, plan.Upper) {
		if post, ok := n.(*plan.Member); ok && !c.under(post) {
			return nil, false
		}
	}
	return b.finish(m, &c)
}

// ofTop is a top that stands alone, over what carries it; its boards run along the ends of that.
func (b *beams) ofTop(m *plan.Member) (*beam, bool) {
	if m.Over == nil || m.Over.Of.To == nil || m.Over.Of.To.Root == nil || b.flat[m.Over.Of.To] {
		return nil, false
	}
	a := m.Over.Of.To
	if !a.Outside[plan.Across].Known() {
		return nil, false
	}
	c := carriers{axis: plan.Across, to: a.Outside[plan.Across].Length}
	for _, n := range showing(a.Root, plan.Upper, plan.Box{}) {
		if !c.carries(n) {
			return nil, false
		}
	}
	return b.finish(m, &c)
}

// finish makes a beam of a member and what carries it.
func (b *beams) finish(m *plan.Member, c *carriers) (*beam, bool) {
	for _, f := range b.fixed[m] {
		if f == nil || c.along(f) {
			return nil, false
		}
	}
	made := &beam{Member: m, of: stuffOf(m), axis: c.axis, spans: c.spans()}
	grain, flat := m.Grain, m.Flat
	if m.Parent == nil {
		grain, flat = plan.Across, plan.Down
	}
	long, wide, thick := m.Size.Long, m.Size.Wide, m.Size.Thick
	if c.axis != grain {
		long, wide = wide, long
	}
	if flat != plan.Down { // it stands on edge
		wide, thick = thick, wide
	}
	if len(made.spans) == 0 || !long.Known() || !wide.Known() || !thick.Known() {
		return nil, false
	}
	made.whole, made.wide, made.thick = c.to-c.from, wide.Length, thick.Length
	if m.Parent == nil {
		made.whole = long.Length
	}
	if made.wide <= 0 || made.thick <= 0 {
		return nil, false
	}
	var ok bool
	made.along = c.axis == grain
	made.stiffness, ok = stiffnessOf(b.plan, made.of, made.thick, made.along)
	return made, ok
}

// spanned is the axis along which a level member spans, and what carries it at both ends; "" where nothing does. It is
// not known where all four edges are carried. A board spans across its grain where only the ends of that are held.
func spanned(m *plan.Member) (axis plan.Axis, ends [2]string, ok bool) {
	if m.Grain == plan.Down {
		return 0, ends, false
	}
	beside := plan.Behind - m.Grain // the other level axis
	ends, edges := carriedAt(m, m.Grain), carriedAt(m, beside)
	switch held := edges[0] != "" && edges[1] != ""; {
	case held && ends[0] != "" && ends[1] != "":
		return 0, ends, false
	case held && m.Board():
		return beside, edges, true
	}
	return m.Grain, ends, true
}

// carriedAt is what carries a member at both of its ends along an axis.
func carriedAt(m *plan.Member, axis plan.Axis) (ends [2]string) {
	for i, side := range [2]plan.Side{plan.Side(axis * 2), plan.Side(axis*2) + 1} {
		for _, n := range against(m, side) {
			switch n.(type) {
			case *plan.Member, *plan.Placed:
				ends[i] = titled(plan.It(n))
			}
		}
	}
	return ends
}

// carriers are what carries a member, along one axis.
type carriers struct {
	axis     plan.Axis
	from, to wood.Length
	at       []carrier
}

type carrier struct {
	from, to wood.Length
	called   string
}

// end adds what carries an end.
func (c *carriers) end(far bool, called string) {
	at := c.from
	if far {
		at = c.to
	}
	c.at = append(c.at, carrier{at, at, called})
}

// carries takes in what stands under a member: uprights carry it, and what lies level under an end of a span does.
// It is false where something runs along under it, or lies across under its middle, since nobody says how much that
// carries.
func (c *carriers) carries(n plan.Node) bool {
	at := plan.It(n).Cell[c.axis]
	switch n := n.(type) {
	case *plan.Placed:
	case *plan.Member:
		at = n.Body[c.axis]
		if c.along(n) {
			return false
		}
		if !standsUp(n) && c.inside(at) {
			return false
		}
	default:
		return true
	}
	if !at.Known() {
		return false
	}
	c.at = append(c.at, carrier{max(at.From, c.from), min(at.To(), c.to), titled(plan.It(n))})
	return true
}

// under reports whether an upright that stands on a member stands over one that carries it, or over an end.
func (c *carriers) under(post *plan.Member) bool {
	at := post.Body[c.axis]
	return at.Known() && (!c.inside(at) || slices.ContainsFunc(c.at, func(below carrier) bool {
		return wood.Under(max(at.From, below.from), min(at.To(), below.to))
	}))
}

// stiffens reports whether something on, before or behind a member may stiffen it or hold it up: what runs along
// it, and, before and behind it, what stands upright between its ends. A frame before it or behind it does so by what of it lies at its
// height.
func (c *carriers) stiffens(n plan.Node, m *plan.Member, side plan.Side) bool {
	switch n := n.(type) {
	case *plan.Member:
		return c.along(n) || side != plan.Upper && standsUp(n) && c.inside(n.Body[c.axis])
	case *plan.Placed:
		if n.Part.To == nil || n.Part.To.Kind != plan.Frame || n.Turned || n.Flat || n.Mirrored.On || c.axis != plan.Across {
			return true
		}
		for inner := range n.Part.To.Nodes() {
			if _, deeper := inner.(*plan.Placed); deeper {
				return true
			}
			stick, ok := inner.(*plan.Member)
			if !ok {
				continue
			}
			across, down := movedBy(stick.Body[plan.Across], n.Cell[plan.Across]), movedBy(stick.Body[plan.Down], n.Cell[plan.Down])
			if standsUp(stick) && c.inside(across) || !standsUp(stick) && (!m.Cell[plan.Down].Known() || !down.Known() || shareRoom(down, m.Cell[plan.Down])) {
				return true
			}
		}
	}
	return false
}

// movedBy is a place in something placed, in the assembly round it.
func movedBy(at, cell plan.Extent) plan.Extent {
	at.From += cell.From
	at.Placed = at.Placed && cell.Placed
	return at
}

// standsUp reports whether a member stands, whichever way its grain runs.
func standsUp(m *plan.Member) bool { return m.Grain == plan.Down || m.Board() && m.Flat != plan.Down }

// inside reports whether something stands between the ends.
func (c *carriers) inside(at plan.Extent) bool {
	return !at.Known() || wood.Over(at.From, c.from) && wood.Under(at.To(), c.to)
}

// along reports whether something runs along a member. A sheet and a part of which nobody says how it lies are taken
// to do so.
func (c *carriers) along(thing any) bool {
	switch t := thing.(type) {
	case *plan.Member:
		return t.Parent == nil || t.Grain == c.axis || t.Board() && t.Flat != c.axis
	case *plan.Panel, *plan.Part:
		return true
	}
	return false
}

// spans are the clear ones between what carries a member, in order.
func (c *carriers) spans() (all []clearSpan) {
	slices.SortFunc(c.at, func(x, y carrier) int { return cmp.Or(cmp.Compare(x.from, y.from), cmp.Compare(x.to, y.to)) })
	for i, next := range c.at {
		if i > 0 {
			last := c.at[i-1]
			if wood.Over(next.from, last.to) {
				all = append(all, clearSpan{next.from - last.to, last.called, next.called})
			} else if last.to > next.to {
				c.at[i].from, c.at[i].to, c.at[i].called = last.from, last.to, last.called
			}
		}
	}
	return all
}

// against are the things that lie against one side of a thing. What is drawn elsewhere is one of them, and not
// gone into.
func against(n plan.Node, side plan.Side) []plan.Node {
	next := plan.Neighbour(n, side)
	if next == nil {
		return nil
	}
	return showing(next, side.Opposite(), plan.It(n).Cell)
}

// showing are the things of a neighbour that show on one side of it, over a cell.
func showing(n plan.Node, side plan.Side, cell plan.Box) (all []plan.Node) {
	l, ok := n.(*plan.List)
	switch {
	case !ok:
		return []plan.Node{n}
	case len(l.Items) == 0:
		return nil
	case l.Axis == side.Axis() && side.Far():
		return showing(l.Items[len(l.Items)-1], side, cell)
	case l.Axis == side.Axis():
		return showing(l.Items[0], side, cell)
	}
	items, over := l.Items, cell[l.Axis]
	if state := l.Sum.State; over.Known() && (state == plan.Closed || state == plan.TooMuch || state == plan.TooLittle) { // all are placed, in order
		items = items[sort.Search(len(items), func(i int) bool { return wood.Over(plan.It(items[i]).Cell[l.Axis].To(), over.From) }):]
		items = items[:sort.Search(len(items), func(i int) bool { return !wood.Under(plan.It(items[i]).Cell[l.Axis].From, over.To()) })]
	}
	for _, inner := range items {
		if at := plan.It(inner).Cell[l.Axis]; !at.Known() || !over.Known() || wood.Under(max(at.From, over.From), min(at.To(), over.To())) {
			all = append(all, showing(inner, side, cell)...)
		}
	}
	return all
}
