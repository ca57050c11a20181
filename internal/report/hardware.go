package report

// The hardware: what to buy for a piece, and where each sits, ready to be marked out.

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// HardwareRow is one thing to buy, for all its uses, and where they sit.
type HardwareRow struct {
	Word, Name string   // hinge, brass
	Figures    []string // as the plan gives them, each in words: "2 1/2 high"
	Count      int      // of slides, pairs
	Pairs      bool
	Notes      []string
	Places     []HardwarePlace
	Span       diag.Span // where it is drawn

	notes map[string]bool
	at    map[string]int // the place of each sort
	named map[placeName]bool
}

// placeName is a part that stands in a place already.
type placeName struct {
	place int
	name  string
}

// HardwarePlace is where a piece sits, or what is cut for it, in one part or in parts that are
// marked out alike.
type HardwarePlace struct {
	Count   int
	Names   []string    // of the parts in In
	In      string      // path of the assembly or drawer; "" of what is declared by itself
	What    string      // hinge gain, dowel hole; slide: what is not cut
	Side    string      // the face into which it is cut, or on which it sits
	Wide    plan.Length // of a bore, its diameter
	Bored   bool
	Deep    plan.Length // of what is cut
	Through bool
	Cut     bool
	Marks   []HardwareMark
}

// HardwareMark is one measure to mark out: so far from something, to the middle of the piece or its
// hole; or, of what reaches to an edge, how wide it is there.
type HardwareMark struct {
	At   plan.Length
	From string // upper end, left edge …
	Wide bool
}

// HardwareList lists what to buy for a piece, in the order in which the plan first uses each.
func HardwareList(p *plan.Plan) []*HardwareRow {
	l := hardwareLister{plan: p, pieces: p.Pieces(), rows: make(map[string]*HardwareRow), of: make(map[any]*HardwareRow), cut: make(map[any]bool)}
	l.cuts()
	for _, a := range p.Assemblies {
		l.assembly(a)
	}
	for _, m := range p.Tops {
		l.member(m, 1)
	}
	for _, part := range p.Parts {
		l.member(&part.Member, part.Count.Or(1))
	}
	for _, f := range p.Fixes {
		l.fixing(f)
	}
	for _, c := range l.kept {
		l.place(c)
	}
	return slices.DeleteFunc(l.all, func(r *HardwareRow) bool { return r.Count == 0 })
}

// hardwareLister gathers hardware. What is alike in its word, its name and its figures is one thing
// to buy.
type hardwareLister struct {
	plan   *plan.Plan
	pieces map[*plan.Assembly]int
	all    []*HardwareRow
	rows   map[string]*HardwareRow
	of     map[any]*HardwareRow // of a *plan.Hinge, *plan.Fastener …, as the plan draws it
	kept   []*plan.Cut          // those that are made for hardware
	cut    map[any]bool         // what something is cut for, as cutFor has it
}

// cutFor is what a cut is made for: a *plan.HardwareUse, *plan.FixingPart or *plan.Joint, and the hardware
// itself; nil where that is none.
func cutFor(c *plan.Cut) (use any, of *plan.Fastener) {
	switch {
	case c.For.Hardware != nil:
		return c.For.Hardware, nil
	case c.With != nil:
		return c.With, c.With.Of.To
	case c.For.Top != nil:
		if c.Kind == plan.CutPeg {
			return c.For.Top, c.For.Top.Breadboard.Peg.Of.To
		}
		return nil, nil
	}
	j := c.Joint()
	if j == nil {
		return nil, nil
	}
	switch c.Kind {
	case plan.CutInsert:
		return j, j.Insert.To
	case plan.CutPeg:
		return j, j.Peg.Of.To
	case plan.CutDowel, plan.CutScrew, plan.CutBolt, plan.CutNut, plan.CutBiscuit, plan.CutMagnet:
		return j, j.Hardware.To
	}
	return nil, nil
}

// cuts picks out what is cut for hardware.
func (l *hardwareLister) cuts() {
	for _, c := range l.plan.Cuts().Made() {
		if use, of := cutFor(c); use != nil && (of != nil || c.For.Hardware != nil) {
			l.kept = append(l.kept, c)
			l.cut[use] = true
			if c.Kind == plan.CutKeeper {
				l.cut[keeperOf{c.For.Hardware}] = true
			}
		}
	}
}

// keeperOf stands for the keeper of a lock, which has a cut of its own.
type keeperOf struct{ use *plan.HardwareUse }

// row is the one of a piece of hardware, which n more are bought of.
func (l *hardwareLister) row(of any, word string, name *plan.Name, figures func() []string, n int) *HardwareRow {
	r := l.of[of]
	if r == nil {
		said := figures()
		key := word + "\x00" + name.Text + "\x00" + strings.Join(said, "\x00")
		if r = l.rows[key]; r == nil {
			r = &HardwareRow{
				Word: word, Name: name.Text, Figures: said, Span: name.Span,
				notes: make(map[string]bool), at: make(map[string]int), named: make(map[placeName]bool),
			}
			l.rows[key] = r
			l.all = append(l.all, r)
		}
		l.of[of] = r
	}
	r.Count = atMost(r.Count + n)
	return r
}

// fastener is the row of a screw, a dowel, a bolt …; nil where the plan names none.
func (l *hardwareLister) fastener(of *plan.Fastener, n int) *HardwareRow {
	if of == nil {
		return nil
	}
	return l.row(of, of.Word, &of.Name, func() []string { return fastenerFigures(l.plan, of) }, n)
}

// note says once what the number rests on.
func (r *HardwareRow) note(s string) {
	if !r.notes[s] {
		r.notes[s] = true
		r.Notes = append(r.Notes, s)
	}
}

func (l *hardwareLister) assembly(a *plan.Assembly) {
	n := l.pieces[a]
	for _, e := range a.Ends {
		if e.Joint != nil && len(e.Mates) > 0 {
			l.joint(e.Joint, e, n)
		}
	}
	if a.Rail != nil && a.Joint != nil {
		l.joint(a.Joint, nil, many(n, a.Sides.Or(1)))
	}
	for node := range a.Nodes() {
		switch node := node.(type) {
		case *plan.Member:
			l.member(node, n)
		case *plan.Door:
			l.door(node, n)
		case *plan.Drawer:
			l.drawer(node, n)
		case *plan.Space:
			for _, use := range node.Rods {
				l.rod(node, use, n)
			}
		}
	}
}

// joint counts what holds one end, or a polygon's corner, n times. A joint that does not say how many it
// has is counted as one.
func (l *hardwareLister) joint(j *plan.Joint, e *plan.End, n int) {
	each, said := max(len(j.At), 1), j.Count.Known() || len(j.At) > 0
	if j.Count.Known() {
		each = j.Count.N
	}
	for _, of := range []*plan.Fastener{j.Hardware.To, j.Insert.To} {
		r := l.fastener(of, many(n, each))
		if r == nil {
			continue
		}
		if !said {
			r.note("where a joint does not say how many it has, one is counted")
		}
		if of == j.Hardware.To && !l.cut[j] && e != nil {
			place := l.in(plan.It(e.Of))
			place.Count, place.Side = many(n, each), e.Side.String()+" end"
			place.Marks = statedMarks(j.At, "lower or left edge")
			r.put(place)
		}
	}
	if j.Peg != nil {
		l.fastener(j.Peg.Of.To, many(n, max(len(j.Peg.At), 1)))
	}
}

// in is a place in a thing of a layout.
func (l *hardwareLister) in(it *plan.Item) HardwarePlace {
	if it.In == nil {
		return HardwarePlace{Names: []string{nameOf(it)}}
	}
	return HardwarePlace{In: plan.PathOf(it.In), Names: []string{nameOf(it)}}
}

// statedMarks are the places that the plan says, or one that it does not.
func statedMarks(at []plan.Length, from string) (marks []HardwareMark) {
	for _, a := range at {
		marks = append(marks, HardwareMark{At: a, From: from})
	}
	if len(marks) == 0 {
		return []HardwareMark{{From: from}}
	}
	return marks
}

// member lists the pegs of a top's breadboard ends, and what hangs a lid.
func (l *hardwareLister) member(m *plan.Member, n int) {
	if b := m.Breadboard; b != nil && b.Peg != nil {
		l.fastener(b.Peg.Of.To, many(n, 2*max(len(b.Peg.At), 1)))
	}
	if m.Lid == nil {
		return
	}
	for _, uses := range [][]*plan.HardwareUse{m.Lid.Hinges, m.Lid.Latches, m.Lid.Handles} {
		for _, use := range uses {
			if r := l.used(use, n); r != nil {
				place := l.in(&m.Item)
				place.Count = n
				r.putEach(place, statedMarks(use.At, "lower or left end"))
			}
		}
	}
	for _, use := range m.Lid.Stays {
		l.stay(use, l.in(&m.Item), n)
	}
}

// used is the row of a piece of hardware, one more time for each that is used, in n things alike.
func (l *hardwareLister) used(use *plan.HardwareUse, n int) *HardwareRow {
	n = many(n, use.Number())
	switch {
	case use.Hinge != nil:
		r := l.row(use.Hinge, "hinge", &use.Hinge.Name, func() []string { return hingeFigures(l.plan, use.Hinge) }, n)
		if !use.Count.Known() && len(use.At) == 0 && use.Number() == 2 {
			r.note("where a door does not say how many it has, two are counted")
		}
		return r
	case use.Latch != nil:
		return l.row(use.Latch, use.Latch.Word, &use.Latch.Name, func() []string { return latchFigures(l.plan, use.Latch) }, n)
	case use.Handle != nil:
		return l.row(use.Handle, "handle", &use.Handle.Name, func() []string { return handleFigures(l.plan, use.Handle) }, n)
	case use.Rod != nil:
		return l.row(use.Rod, "rod", &use.Rod.Name, func() []string { return rodFigures(l.plan, use.Rod) }, n)
	}
	return l.fastener(use.Bolt, n)
}

func (l *hardwareLister) door(d *plan.Door, n int) {
	hung, turns := d.Hung()
	for _, use := range d.Hinges {
		if r := l.used(use, n); r != nil && !l.cut[use] {
			l.onLeaf(r, d, use, hung, turns, n)
		}
	}
	for _, use := range d.Latches {
		r, edge := l.used(use, n), hung.Opposite()
		switch use.On.Is {
		case "head":
			edge = plan.Upper
		case "foot":
			edge = plan.Lower
		}
		if r == nil {
			continue
		}
		if !l.cut[use] {
			l.onLeaf(r, d, use, edge, turns || use.On.Is == "head" || use.On.Is == "foot", n)
		}
		if !l.cut[keeperOf{use}] && turns {
			l.strike(r, d, use, edge, n)
		}
	}
	for _, use := range d.Handles {
		if r := l.used(use, n); r != nil {
			l.onLeaf(r, d, use, hung.Opposite(), turns, n)
		}
	}
	for _, use := range d.Stays {
		l.stay(use, l.in(&d.Item), n)
	}
}

// onLeaf marks out what sits along an edge of a door and is not let in, from the nearer end of the leaf.
func (l *hardwareLister) onLeaf(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, edge plan.Side, known bool, n int) {
	place := l.in(&d.Item)
	place.Count = n
	if !known {
		place.Marks = []HardwareMark{{From: "end of the leaf"}}
		r.put(place)
		return
	}
	place.Side = edge.String() + " edge"
	axis := plan.Down - edge.Axis()
	all := d.Along(use, edge)
	for _, at := range all {
		place.Marks = []HardwareMark{fromNearer(at, d.Size[axis], axis, " of the leaf")}
		r.put(place)
	}
	if len(all) == 0 {
		place.Count = many(n, use.Number())
		place.Marks = []HardwareMark{{From: sideOf(axis, true).String() + " end of the leaf"}}
		r.put(place)
	}
}

// fromNearer measures a place along an axis from the nearer end of what it lies in.
func fromNearer(at plan.Extent, size plan.Length, axis plan.Axis, of string) HardwareMark {
	m := HardwareMark{From: sideOf(axis, false).String() + " end" + of}
	if !at.Placed {
		return m
	}
	m.At = plan.Length{Length: at.From, How: plan.Derived}
	if size.Known() && 2*at.From > size.Length {
		m.At.Length, m.From = size.Length-at.From, sideOf(axis, true).String()+" end"+of
	}
	return m
}

// sideOf is the near or the far side along an axis.
func sideOf(axis plan.Axis, far bool) plan.Side {
	side := plan.Side(axis * 2)
	if far {
		side++
	}
	return side
}

// strike marks out what the bolt or the ball of a latch meets in the member beside a door, across from the
// latch, or where the plan says that its keeper sits.
func (l *hardwareLister) strike(r *HardwareRow, d *plan.Door, use *plan.HardwareUse, edge plan.Side, n int) {
	beside, ok := plan.Neighbour(d, edge).(*plan.Member)
	if !ok || d.Fit.Kind.Is == "overlay" || use.Latch == nil {
		return
	}
	axis := plan.Down - edge.Axis()
	all := d.Along(use, edge)
	if size := d.Size[1]; use.Keeper.Known() && axis == plan.Down {
		all = []plan.Extent{{From: size.Length - use.Keeper.Length, Placed: size.Known()}}
	}
	first := d.Edges[axis*2].Less
	for _, at := range all {
		at.From += first.Length
		at.Placed = at.Placed && first.Known()
		cell := d.Cell[axis]
		place := l.in(&beside.Item)
		place.Count, place.What = n, "strike"
		place.Marks = []HardwareMark{fromNearer(at, plan.Length{Length: cell.Size, How: sized(cell)}, axis, " of the opening")}
		r.put(place)
	}
}

func sized(e plan.Extent) plan.How {
	if e.Sized {
		return plan.Derived
	}
	return plan.Unknown
}

// stay lists what holds a door or a lid open; its points are measured from the hinge's pin.
func (l *hardwareLister) stay(use *plan.HardwareUse, place HardwarePlace, n int) {
	s := use.Stay
	if s == nil {
		return
	}
	n = many(n, use.Number())
	r := l.row(s, "stay", &s.Name, func() []string { return stayFigures(l.plan, s) }, n)
	place.Count, place.What = n, "point on the leaf"
	place.Marks = []HardwareMark{{At: s.Lid, From: "pin"}}
	r.put(place)
	place.What = "point on the case"
	place.Marks = []HardwareMark{{At: s.Case.Across, From: "pin along the shut leaf"}, {At: s.Case.Deep, From: "pin into the case"}}
	r.put(place)
}

// drawer lists its slides, its handles and what holds its corners. Where in its opening a slide is screwed, its
// maker's sheet says.
func (l *hardwareLister) drawer(d *plan.Drawer, n int) {
	if s := d.Slide.To; s != nil {
		r := l.row(s, "slide", &s.Name, func() []string { return slideFigures(l.plan, s) }, n)
		r.Pairs = true
		place := l.in(&d.Item)
		place.Count, place.What = n, "opening"
		place.Marks = []HardwareMark{{At: above(d), From: "lower end of " + cmp.Or(plan.PathOf(d.In), "the case") + " to the floor of its opening"}}
		if front := d.Front; front != nil && d.Inner != nil && d.Fit.Kind.Is != "overlay" {
			m := HardwareMark{From: "front edge of the case to the slide"}
			if at := d.Cell[plan.Behind]; at.Placed && front.Size.Thick.Known() {
				m.At = plan.Length{Length: at.From + front.Size.Thick.Length, How: plan.Derived}
			}
			place.Marks = append(place.Marks, m)
		}
		place.Marks = append(place.Marks, HardwareMark{From: "floor of the opening up to the slide"})
		r.put(place)
	}
	for _, use := range d.Handles {
		r := l.used(use, n)
		if r == nil {
			continue
		}
		place := HardwarePlace{Count: n, Names: []string{"front"}, In: plan.PathOf(d)}
		switch f := d.Front; {
		case f != nil && use.Centred.On:
			place.Marks = []HardwareMark{{At: halved(f.Size.Long), From: "left end"}, {At: halved(f.Size.Wide), From: "lower edge"}}
			r.put(place)
		case use.FromTop.How != plan.Unknown:
			r.putEach(place, []HardwareMark{{At: use.FromTop, From: "upper edge"}})
		default:
			r.putEach(place, statedMarks(use.At, "lower or left end"))
		}
	}
	for _, j := range []*plan.Joint{d.FrontJoint, d.BackJoint} {
		if j != nil {
			l.joint(j, nil, many(n, 2))
		}
	}
}

// above is how far the floor of a drawer's opening is above the lower end of what it stands in.
func above(d *plan.Drawer) plan.Length {
	at, whole := d.Cell[plan.Down], d.In.Outside[plan.Down]
	if !at.Known() || !whole.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: whole.Length - at.To(), How: plan.Derived}
}

func halved(l plan.Length) plan.Length {
	if !l.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: l.Length / 2, How: plan.Derived}
}

func (l *hardwareLister) rod(bay *plan.Space, use *plan.HardwareUse, n int) {
	r := l.used(use, n)
	if r == nil {
		return
	}
	place := l.in(&bay.Item)
	place.Count = many(n, use.Number())
	switch {
	case use.FromTop.How != plan.Unknown:
		place.Marks = []HardwareMark{{At: use.FromTop, From: "upper end of the bay"}}
	case use.Centred.On && bay.Cell[plan.Down].Sized:
		place.Marks = []HardwareMark{{At: plan.Length{Length: bay.Cell[plan.Down].Size / 2, How: plan.Derived}, From: "upper end of the bay"}}
	default:
		place.Marks = statedMarks(use.At, "lower end of the bay")
	}
	r.put(place)
}

// fixing counts the fasteners of a line that fastens two things, as often as what is fastened is made.
func (l *hardwareLister) fixing(f *plan.Fixing) {
	n, place := 1, HardwarePlace{Names: []string{f.A.Name}}
	if f.A.To != nil {
		switch of := f.A.To.Is.(type) {
		case *plan.Assembly:
			n = l.pieces[of]
		case *plan.Part:
			n = of.Count.Or(1)
		case plan.Node:
			if in := plan.It(of).In; in != nil {
				n = l.pieces[in]
			}
			place = l.in(plan.It(of))
		}
	}
	for _, w := range f.With {
		all := many(n, w.Count.Or(max(len(w.At), len(w.Along), 1)))
		r := l.fastener(w.Of.To, all)
		if r == nil || l.cut[w] {
			continue
		}
		place := place
		place.Count = all
		if f.Wall.On {
			place.What = "into the wall"
		}
		for _, at := range w.Along {
			place.Marks = append(place.Marks, HardwareMark{At: at, From: "front, left or lower end"})
		}
		for _, at := range w.At {
			place.Marks = append(place.Marks, HardwareMark{At: at, From: "front, left or lower edge"})
		}
		if len(place.Marks) == 0 {
			place.Marks = []HardwareMark{{From: "end"}}
		}
		r.put(place)
	}
}

// place marks out a cut that is made for a piece of hardware.
func (l *hardwareLister) place(c *plan.Cut) {
	var r *HardwareRow
	if use, of := cutFor(c); of != nil {
		r = l.fastener(of, 0)
	} else {
		r = l.used(use.(*plan.HardwareUse), 0)
	}
	n := atMost(piecesOf(l.pieces, c))
	if r == nil || n == 0 {
		return
	}
	in, name := partOf(c)
	place := HardwarePlace{
		Count: n, In: in, Names: []string{name}, What: c.Kind.String(), Side: c.FaceName(c.Enters), Cut: true,
		Bored: c.Round, Deep: c.Deep(), Through: c.Through(),
	}
	for _, d := range []plan.Dimension{plan.Long, plan.Wide, plan.Thick} {
		if d == c.Enters.Dimension() {
			continue
		}
		at := c.At[d]
		if c.Round && at.Sized {
			place.Wide = plan.Length{Length: at.Size, How: plan.Derived}
		}
		near, far := plan.Face(d*2), plan.Face(d*2)+1
		switch {
		case c.Open[near] && c.Open[far]:
		case c.Open[near] || c.Open[far]:
			face := near
			if c.Open[far] {
				face = far
			}
			m := HardwareMark{From: c.FaceName(face), Wide: true}
			if at.Sized {
				m.At = plan.Length{Length: at.Size, How: plan.Derived}
			}
			place.Marks = append(place.Marks, m)
		default:
			face := nearer(c, d)
			m := HardwareMark{At: c.Wall(face), From: c.FaceName(face)}
			if m.At.Known() && at.Sized {
				m.At = plan.Length{Length: m.At.Length + at.Size/2, How: plan.Derived}
			} else {
				m.At = plan.Length{}
			}
			place.Marks = append(place.Marks, m)
		}
	}
	r.put(place)
	if c.For.Hardware != nil {
		r.screws(place, c.For.Hardware.Hinge)
	}
}

// screws marks out the two screws of a cup hinge, beside its bore.
func (r *HardwareRow) screws(bore HardwarePlace, h *plan.Hinge) {
	if h == nil || !h.Fixings.Across.Known() || len(bore.Marks) != 2 {
		return
	}
	along, in := bore.Marks[0], bore.Marks[1]
	if along.From == bore.Side || strings.HasSuffix(along.From, "end") == strings.HasSuffix(in.From, "end") {
		return
	}
	bore.Count, bore.What, bore.Cut, bore.Bored = many(bore.Count, 2), "screws", false, false
	apart := halved(h.Fixings.Across)
	in.At = more(in.At, h.Fixings.Deep)
	bore.Marks = []HardwareMark{in, {At: apart, From: "middle of the bore, to both sides"}}
	r.put(bore)
}

// putEach keeps a place for each of several marks.
func (r *HardwareRow) putEach(p HardwarePlace, marks []HardwareMark) {
	for _, m := range marks {
		p.Marks = []HardwareMark{m}
		r.put(p)
	}
}

// put keeps a place: with those that are marked out alike in the parts of one assembly.
func (r *HardwareRow) put(p HardwarePlace) {
	var key strings.Builder
	fmt.Fprint(&key, p.In, "\x00", p.What, "\x00", p.Side, "\x00", p.Bored, sizeKey(p.Wide), sizeKey(p.Deep), p.Through)
	for _, m := range p.Marks {
		fmt.Fprint(&key, sizeKey(m.At), m.From, m.Wide)
	}
	i, ok := r.at[key.String()]
	if !ok {
		i = len(r.Places)
		r.at[key.String()] = i
		r.Places = append(r.Places, p)
		r.Places[i].Count, r.Places[i].Names = 0, nil
	}
	with := &r.Places[i]
	with.Count = atMost(with.Count + p.Count)
	for _, name := range p.Names {
		if at := (placeName{i, name}); !r.named[at] {
			r.named[at] = true
			with.Names = append(with.Names, name)
		}
	}
}

// many is how many there are of what n things have so many of each.
func many(n, each int) int { return atMost(n * min(max(each, 0), mostPieces)) }
