package report

// The hardware: what to buy for a piece, and where each sits, ready to be marked out.

import (
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
	case plan.CutDowel, plan.CutScrew, plan.CutBolt, plan.CutNut, plan.CutBiscuit, plan.CutMagnet,
		plan.CutPin, plan.CutHook:
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

// fixing counts the fasteners of a line that fastens two things, as often as what is fastened is made.
func (l *hardwareLister) fixing(f *plan.Fixing) {
	n, place := 1, HardwarePlace{Names: []string{f.A.Name}}
	end, edge := "end", "edge" // from which places are measured
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
			switch m, ok := of.(*plan.Member); {
			case ok && m.In == nil: // a top
				end, edge = "left end", "front edge"
			case ok && m.Grain != m.Flat:
				end, edge = nearOf(m.Grain)+" end", nearOf(plan.Across+plan.Down+plan.Behind-m.Grain-m.Flat)+" edge"
			}
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
			place.Marks = append(place.Marks, HardwareMark{At: at, From: end})
		}
		for _, at := range w.At {
			place.Marks = append(place.Marks, HardwareMark{At: at, From: edge})
		}
		if len(place.Marks) == 0 {
			place.Marks = []HardwareMark{{From: end}}
		}
		r.put(place)
		if w.Word == "button" && f.B.To != nil {
			l.buttonGroove(r, f, w, all)
		}
	}
}

// nearOf is the side from which a plan measures along an axis.
func nearOf(axis plan.Axis) string { return [...]string{"left", "lower", "front"}[axis] }

// buttonGroove is what the tongues of buttons go into. How far it is below the top, the button says.
func (l *hardwareLister) buttonGroove(r *HardwareRow, f *plan.Fixing, w *plan.FixingPart, n int) {
	place := HardwarePlace{Count: n, Names: []string{f.B.Name}, What: "groove", Cut: true, Deep: w.Groove, Marks: []HardwareMark{{From: "upper edge"}}}
	if of, ok := f.B.To.Is.(plan.Node); ok {
		in := l.in(plan.It(of))
		place.In, place.Names = in.In, in.Names
	}
	r.put(place)
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
		Count: n, In: in, Names: []string{name}, What: c.Kind.String(), Side: c.FaceName(c.Enters), Cut: c.Kind != plan.CutHook,
		Bored: c.Round, Deep: c.Deep(), Through: c.Through(),
	}
	if j := c.Joint(); j != nil && j.Kind.Is == plan.Pocket { // its jig says how it is bored
		place.What, place.Cut = "pocket screw, where the two meet", false
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
