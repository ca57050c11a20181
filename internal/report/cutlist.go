package report

// The cutting list: every part of the worked-out piece with its finished sizes, how often
// it is cut, from what, and where it belongs.

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// Row is one line of a cutting list: a part, or alike parts of one assembly. Sizes are
// finished sizes, joints and edging included; what could not be worked out is unknown.
type Row struct {
	Names    []string // what the parts are called in In
	In       string   // path of the assembly or drawer; of a declared part, the assemblies that use it
	Count    int      // how many to cut in all
	Material string   // "" where the plan names none
	Grain    string   // which way it runs in the piece: across, down or behind; "" where nothing tells

	Long, Wide, Thick  plan.Length // long is with the grain
	CoreLong, CoreWide plan.Length // without the edging; means something only where Edged
	Edged              bool

	Notes []string
	Span  diag.Span // where the first of them stands
}

// CuttingList lists every part of a piece, grouped by material in the order of the plan and
// in each from thick to thin.
func CuttingList(p *plan.Plan) []Row {
	l := lister{
		plan:   p,
		pieces: p.Pieces(),
		at:     map[string]int{},
	}
	for _, a := range p.Assemblies {
		l.assembly(a)
	}
	for _, m := range p.Tops {
		l.member(m, "", 1)
	}
	for _, part := range p.Parts {
		l.part(part)
	}
	group(l.rows)
	return l.rows
}

// lister gathers rows. Alike parts of one assembly share a row.
type lister struct {
	plan   *plan.Plan
	pieces map[*plan.Assembly]int
	rows   []Row
	at     map[string]int // the row of each sort of part
}

// add puts a part on the row of those that are alike, or on one of its own.
func (l *lister) add(word, name string, r Row) {
	key := fmt.Sprint(word, "\x00", r.In, "\x00", r.Material, "\x00", r.Grain, "\x00", r.Edged, r.Notes,
		sizeKey(r.Long), sizeKey(r.Wide), sizeKey(r.Thick), sizeKey(r.CoreLong), sizeKey(r.CoreWide))
	i, ok := l.at[key]
	if !ok {
		i = len(l.rows)
		l.at[key] = i
		l.rows = append(l.rows, r)
		l.rows[i].Count = 0
	}
	row := &l.rows[i]
	row.Count = atMost(row.Count + r.Count)
	// The things of a row stand next to one another and bear one name.
	if n := len(row.Names); n == 0 || row.Names[n-1] != name {
		row.Names = append(row.Names, name)
	}
}

func sizeKey(l plan.Length) string {
	if !l.Known() {
		return " ?"
	}
	return fmt.Sprint(" ", int64(l.Length))
}

func (l *lister) assembly(a *plan.Assembly) {
	path, pieces := plan.PathOf(a), l.pieces[a]
	if a.Rail != nil {
		l.member(a.Rail, path, atMost(pieces*min(a.Sides.Or(1), mostPieces)))
	}
	for n := range a.Nodes() {
		switch n := n.(type) {
		case *plan.Member:
			if n.Part.To == nil { // a declared part stands on its own row
				l.member(n, path, pieces)
			}
		case *plan.Panel:
			r := Row{In: path, Count: pieces, Grain: n.Grain.String(), Span: n.Span}
			r.size(n.Size)
			r.of(n.Of)
			l.edging(&r, n.Size, n.Grain, plan.Behind, n.Edging)
			l.compare(&r, n.Size, n.Worked)
			r.made(n.Made)
			l.add(n.Word, nameOf(&n.Item), r)
		case *plan.Glass:
			r := Row{In: path, Count: pieces, Material: strings.TrimSpace(n.Kind.Is + " glass"), Span: n.Span}
			r.size(n.Size)
			l.add(n.Word, nameOf(&n.Item), r)
		case *plan.Door:
			l.leaf(n, path, pieces)
		case *plan.Drawer:
			l.drawer(n, pieces)
		}
	}
}

func (l *lister) member(m *plan.Member, in string, pieces int) {
	name := nameOf(&m.Item)
	if m.In == nil {
		name = plan.PathOf(m)
	}
	r := Row{In: in, Count: pieces, Grain: m.Grain.String(), Span: m.Span}
	r.size(m.Size)
	r.of(m.Of)
	l.describe(&r, m)
	l.ends(m, &r)
	l.add(m.Word, name, r)
}

// part lists a part that is declared by itself. Frames share parts, so it is cut as often as
// the plan says, or as the assembly that uses it most needs.
func (l *lister) part(part *plan.Part) {
	var in []string
	for _, m := range part.Uses {
		if m.In != nil && !slices.Contains(in, plan.PathOf(m.In)) {
			in = append(in, plan.PathOf(m.In))
		}
	}
	r := Row{In: strings.Join(in, ", "), Count: part.Pieces(l.pieces), Span: part.Span}
	r.size(part.Size)
	r.of(part.Of)
	l.describe(&r, &part.Member)
	l.ends(&part.Member, &r)
	l.add(part.Word, plan.PathOf(part), r)
}

func (l *lister) describe(r *Row, m *plan.Member) {
	grain, wide, flat := lies(m)
	l.edging(r, m.Size, grain, flat, m.Edging)
	l.compare(r, m.Size, m.Worked)
	if n := m.Boards.Or(1); n > 1 {
		r.note("glued up from %d boards", n)
	}
	if m.Over != nil && m.Parent != nil {
		r.note("stands over its place of %s x %s", l.cell(m, grain), l.cell(m, wide))
	}
	r.made(m.Made)
}

// compare notes where a size that the plan states is not the one that the rest of it makes.
func (l *lister) compare(r *Row, size, worked plan.Size3) {
	for _, of := range []struct {
		what         string
		said, worked plan.Length
	}{{"long", size.Long, worked.Long}, {"wide", size.Wide, worked.Wide}, {"thick", size.Thick, worked.Thick}} {
		if of.said.Known() && of.worked.Known() && wood.Over((of.said.Length-of.worked.Length).Abs(), l.plan.Tape.Tolerance()) {
			r.note("%s as the plan states; works out as %s", of.what, show(l.plan, of.worked))
		}
	}
}

// lies says how a member lies: which way its grain, its width and its thickness go. What has
// no place in a layout, a declared part or a top by itself, is taken to lie level.
func lies(m *plan.Member) (grain, wide, flat plan.Axis) {
	if m.Grain == m.Flat {
		return plan.Across, plan.Behind, plan.Down
	}
	return m.Grain, plan.Across + plan.Down + plan.Behind - m.Grain - m.Flat, m.Flat
}

func (l *lister) cell(m *plan.Member, a plan.Axis) string {
	if !m.Cell[a].Sized {
		return unknown
	}
	return l.plan.Show(m.Cell[a].Size)
}

// ends takes the breadboard ends of a top off its length, adds the tongues that reach into
// them, and lists the ends themselves.
func (l *lister) ends(m *plan.Member, r *Row) {
	b := m.Breadboard
	if b == nil {
		return
	}
	end := *r
	end.Count = atMost(2 * r.Count)
	end.Edged, end.Notes = false, nil
	end.Long, end.Wide = r.Wide, b.Wide
	_, wide, _ := lies(m)
	end.Grain = wide.String()
	end.In = plan.PathOf(m)
	l.add("breadboard", "breadboard ends", end)

	r.note("between its breadboard ends, tongues included")
	r.Long = m.CoreLong()
}

// leaf lists a door's leaf where it is a board; a frame or a part has rows of its own.
func (l *lister) leaf(d *plan.Door, in string, pieces int) {
	if d.Leaf.Material == nil {
		return
	}
	grain := axisOr(d.Leaf.GrainSaid, plan.Down)
	r := Row{In: in, Count: pieces, Material: d.Leaf.Material.Name.Text, Grain: grain.String(), Span: d.Span}
	r.Long, r.Wide, r.Thick = d.Size[1], d.Size[0], d.Leaf.Thick
	if grain == plan.Across {
		r.Long, r.Wide = r.Wide, r.Long
	}
	if !r.Thick.Known() {
		r.Thick = d.Leaf.Material.Thickness()
	}
	l.add("leaf", nameOf(&d.Item)+" leaf", r)
}

func (l *lister) drawer(d *plan.Drawer, pieces int) {
	in := plan.PathOf(d)
	bottom := plan.Across
	if d.BottomAs != nil {
		bottom = axisOr(d.BottomAs.Grain, plan.Across)
	}
	for _, b := range []struct {
		part  *plan.BoxPart
		word  string
		grain plan.Axis
	}{
		{d.Front, "front", plan.Across},
		{d.Inner, "inner front", plan.Across},
		{d.Left, "side", plan.Behind},
		{d.Right, "side", plan.Behind},
		{d.Back, "back", plan.Across},
		{d.Bottom, "bottom", bottom},
	} {
		if b.part == nil {
			continue
		}
		r := Row{In: in, Count: pieces, Grain: b.grain.String(), Span: b.part.Span}
		if b.part.Of != nil {
			r.Material = b.part.Of.Name.Text
		}
		r.size(b.part.Size)
		if b.part == d.Back && d.BackAs != nil && d.BackAs.Notch.Deep.Known() {
			notch := d.BackAs.Notch
			r.note("notch %s x %s at both lower corners", l.plan.ShowSaid(notch.Across), l.plan.ShowSaid(notch.Deep))
		}
		r.made(d.Made)
		l.add(b.word, b.part.Name, r)
	}
}

func (r *Row) size(s plan.Size3) { r.Long, r.Wide, r.Thick = s.Long, s.Wide, s.Thick }

// of names the stuff, and has its thickness as the plan writes it (`18mm`) where it is that.
func (r *Row) of(s plan.Stuff) {
	r.Material = materialOf(s)
	if t := s.Thick(); t.Known() && r.Thick.Known() && wood.Same(t.Length, r.Thick.Length) {
		r.Thick = t
	}
}

func (r *Row) note(format string, args ...any) {
	r.Notes = append(r.Notes, fmt.Sprintf(format, args...))
}

func (r *Row) made(made plan.Flag) {
	if made.On {
		r.note("made already")
	}
}

// edging works out the core: what is cut before the edging goes on.
func (l *lister) edging(r *Row, size plan.Size3, grain, flat plan.Axis, edging []*plan.Edging) {
	if len(edging) == 0 {
		return
	}
	r.Edged, r.CoreLong, r.CoreWide = true, size.Long, size.Wide
	for _, e := range edging {
		thick := e.Of.Thick()
		long, wide := e.Strips(grain, flat)
		for range long {
			r.CoreLong = less(r.CoreLong, thick)
		}
		for range wide {
			r.CoreWide = less(r.CoreWide, thick)
		}
		r.note("edging %s", strings.TrimSpace(fmt.Sprint(e.Edge.Is, " ", materialOf(e.Of), " ", show(l.plan, thick))))
	}
}

func less(l, off plan.Length) plan.Length {
	off.Length = -off.Length
	return more(l, off)
}

// more is l and what is added to it; unknown if either is.
func more(l, add plan.Length) plan.Length {
	if !l.Known() || !add.Known() {
		return plan.Length{}
	}
	return plan.Length{Length: l.Length + add.Length, How: plan.Derived}
}

func axisOr(said plan.Choice, unsaid plan.Axis) plan.Axis {
	for _, a := range []plan.Axis{plan.Across, plan.Down, plan.Behind} {
		if said.Is == a.String() {
			return a
		}
	}
	return unsaid
}

// materialOf names what a thing is made of, as the plan does.
func materialOf(s plan.Stuff) string {
	if s.Material.To != nil {
		return s.Material.To.Name.Text
	}
	return s.Material.Name
}

func nameOf(i *plan.Item) string {
	return cmp.Or(i.Row, i.Name.Text, i.Word)
}

// mostPieces bounds how often a part is cut, so that counts of counts stay numbers.
const mostPieces = 1_000_000_000

func atMost(n int) int { return min(n, mostPieces) }

// group sorts rows by material, in the order in which the plan first needs each, and from
// thick to thin; rows of one sort stay in the plan's order.
func group(rows []Row) {
	first := map[string]int{}
	for i, r := range rows {
		if _, seen := first[r.Material]; !seen {
			first[r.Material] = i
		}
	}
	slices.SortStableFunc(rows, func(a, b Row) int {
		return cmp.Or(
			cmp.Compare(first[a.Material], first[b.Material]),
			cmp.Compare(thickness(b), thickness(a)),
		)
	})
}

// thickness sorts what is unknown behind what is known.
func thickness(r Row) wood.Length {
	if !r.Thick.Known() {
		return -1
	}
	return r.Thick.Length
}
