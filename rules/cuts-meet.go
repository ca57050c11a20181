package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	cutsApart = &Figure{
		Name: "apart", Why: "how much wood is left between two cuts at least", Basis: Practice,
		Source: "1/8 (3 mm), which a chisel and a drill leave standing", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	webLeast = &Figure{
		Name: "web", Why: "how much of a board is left between two housings at least, as a part of it", Basis: Practice,
		Source: "a third", Dim: lang.Plain, Number: 1.0 / 3,
	}
	paneApart = &Figure{
		Name: "glass", Why: "how far what is machined for hardware stays from a glass opening", Basis: Published,
		Source: "Architectural Woodwork Standards, 1st ed., 2009, p. 271: 3/8", Dim: lang.Length, Length: 3 * wood.Inch / 8,
	}
)

var cutsMeet = &Rule{
	Name: "cuts-meet", Group: Cuts, Severity: diag.Error,
	Summary: "two cuts run into each other inside one piece of wood, or leave next to nothing between them",
	Doc: `Two rails that come into a post from two sides are drawn on two sheets, and their mortises meet where no sheet
shows it: the second tenon does not seat, or cuts the first away. So do the housings of shelves at both sides of a divider,
a hinge's bore and the tenon beside it, a lock and the middle rail, dowels and a groove.

Where tenons meet in a post, make them shorter, mitre their tips and say so ("mitred"), or let one rail stand higher than the other. Elsewhere move one of the
two. Two cuts want 1/8 between them, two housings a third of the board, and what is let in for hardware 3/8 to the opening for a pane.
A panel's groove that ends in a mortise and what is cut for one joint are meant to meet, and so are a back's groove and the housings in the same face.`,
	Sources: `That the tenons of a table nearly touch, and are mitred: W. Fairham, Woodwork Joints, Table Framing. When they meet is
geometry. The other figures are as they say.`,
	Sound: `Mitred tenons; tenons that stop 1/8 short of each other; two rails at different heights in one post; housings that leave a
third, or are staggered; a bore 1/8 from a tenon; dowels from both sides that pass each other; a panel's groove that runs into a mortise.`,
	Bad: `part leg x 4 { size 28 x 2 x 2 }
joint corner tenon thick 1/4 set 1/4 haunch 1 deep 1/2 long 1 1/2
frame long x 2 {
  wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg }
}
frame short x 2 {
  wide 30 ; high 28 ; thick 2
  across {
    post left part leg turned
    down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space }
    post right part leg turned
  }
}
`,
	Good: `part leg x 4 { size 28 x 2 x 2 }
joint corner tenon thick 1/4 set 1/4 haunch 1 deep 1/2 long 1
frame long x 2 {
  wide 60 ; high 28 ; thick 2
  across { post left part leg ; down { apron one 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space } ; post right part leg }
}
frame short x 2 {
  wide 30 ; high 28 ; thick 2
  across {
    post left part leg turned
    down { apron two 4 { thick 3/4 ; recess front 1/4 ; joint corner } ; space }
    post right part leg turned
  }
}
`,
	Figures: []*Figure{cutsApart, webLeast, paneApart},
	Check: func(pass *Pass) {
		var all []meeting
		at := make(map[met]int)
		for _, b := range pass.Plan.Cuts().Blanks {
			for _, m := range meetings(pass, b) {
				all = keepWorst(all, at, m.lines(), m)
			}
		}
		for _, m := range all {
			pass.Report(m.finding(pass))
		}
	},
}

// clearance is what two kinds of cut want between them.
type clearance struct {
	a, b  func(*plan.Cut) bool
	wants *Figure
	meant func(plan.Meeting) bool // they may meet: nil where they never may
}

// clearances are the pairs of kinds that are to be kept apart; the first that fits counts.
var clearances = []clearance{
	{socket, socket, cutsApart, tipsMeet},
	{socket, hole, cutsApart, nil},
	{socket, bore, cutsApart, nil},
	{hole, hole, cutsApart, oneBolt},
	{hole, bore, cutsApart, nil},
	{bore, bore, cutsApart, nil},
	{tenonStands, hole, cutsApart, nil},
	{tenonStands, bore, cutsApart, nil},
	{grooved, socket, cutsApart, sameFace},
	{grooved, hole, cutsApart, nil},
	{grooved, bore, cutsApart, nil},
	{grooved, grooved, cutsApart, sameFace},
	{housed, housed, webLeast, webSaid},
	{housed, socket, cutsApart, sameFace},
	{housed, grooved, cutsApart, sameFace},
	{housed, bore, cutsApart, nil},
	{paned, bore, paneApart, nil},
}

func tenonStands(c *plan.Cut) bool { return c.Kind == plan.CutTenon }

func grooved(c *plan.Cut) bool { return c.Kind == plan.CutGroove && c.For.Drawer == nil }

func housed(c *plan.Cut) bool { return c.Kind == plan.CutHousing && c.For.Drawer == nil }

// paned reports whether a pane lies in a cut.
func paned(c *plan.Cut) bool {
	if c.Kind != plan.CutRabbet || c.For.End == nil {
		return false
	}
	_, glass := c.For.End.Of.(*plan.Glass)
	return glass
}

// tipsMeet reports whether two tenons are meant to meet: their tips are mitred; or they stand one
// above the other in one long mortise.
func tipsMeet(m plan.Meeting) bool {
	for _, c := range []*plan.Cut{m.A, m.B} {
		if j := c.Joint(); j != nil && j.Mitred.On {
			return true
		}
	}
	return m.A.Enters == m.B.Enters && m.Along == plan.Long && !wood.Under(m.Gap, 0) && !widthsSaid(m)
}

func widthsSaid(m plan.Meeting) bool { return widthSaid(m.A.Joint()) || widthSaid(m.B.Joint()) }

// oneBolt reports whether two holes are those of one bolt, which goes through what is between.
func oneBolt(m plan.Meeting) bool {
	if m.A.Kind != plan.CutBolt || m.B.Kind != plan.CutBolt || !m.A.Through() || !m.B.Through() {
		return false
	}
	for d := range m.A.At {
		if !wood.Same(m.A.At[d].From, m.B.At[d].From) || !wood.Same(m.A.At[d].Size, m.B.At[d].Size) {
			return false
		}
	}
	return true
}

// shortPeg reports whether a cut is a peg's hole that need not reach as far as another cut, or of which
// nothing says how far it goes.
func shortPeg(c, other *plan.Cut) bool {
	j := c.Joint()
	if c.Kind != plan.CutPeg || j == nil || j.Peg == nil {
		return false
	}
	long, d := j.Peg.Of.To.Long, c.Enters.Dimension()
	from := other.At[d].From
	if size := c.In.Size[d]; c.Enters.Far() {
		from = size.Length - other.At[d].To()
	}
	return !long.Known() || !wood.Under(from, long.Length)
}

func sameFace(m plan.Meeting) bool { return m.A.Enters == m.B.Enters }

// webSaid reports whether there is no web between two housings, or one of them is too deep by itself.
func webSaid(m plan.Meeting) bool {
	most := fraction(m.A.In.Size[plan.Thick].Length, housingDeepest.Number)
	return !opposed(m) || wood.Over(m.A.Deep().Length, most) || wood.Over(m.B.Deep().Length, most)
}

// opposed reports whether two cuts come towards each other from opposite faces.
func opposed(m plan.Meeting) bool {
	d := m.A.Enters.Dimension()
	return m.B.Enters == m.A.Enters.Opposite() && m.Apart[(d+1)%3] < 0 && m.Apart[(d+2)%3] < 0
}

// meeting is two cuts that come too near each other.
type meeting struct {
	plan.Meeting
	wants  wood.Length
	figure *Figure
}

// met is the two lines of a plan that make two cuts meet: of what meets in several places because
// of them, the worst is said.
type met struct {
	a, b         diag.Span
	kindA, kindB plan.CutKind
	build        *plan.Build
}

func (m *meeting) lines() met {
	return met{m.A.Span(), m.B.Span(), m.A.Kind, m.B.Kind, buildOf(m.B)}
}

// inText puts the cut first for which the plan asks first.
func inText(m plan.Meeting) plan.Meeting {
	a, b := m.A.Span(), m.B.Span()
	if b.File == a.File && (b.Start < a.Start || b.Start == a.Start && m.B.Kind < m.A.Kind) {
		m.A, m.B = m.B, m.A
	}
	return m
}

// short is how much too near they come.
func (m *meeting) short() wood.Length { return m.wants - m.Gap }

// keepWorst adds a meeting, or puts it in the place of one of the same key that is less bad.
func keepWorst[K comparable](all []meeting, at map[K]int, key K, m meeting) []meeting {
	i, again := at[key]
	switch {
	case !again:
		at[key] = len(all)
		return append(all, m)
	case wood.Over(m.short(), all[i].short()), wood.Same(m.short(), all[i].short()) && m.names() < all[i].names():
		all[i] = m
	}
	return all
}

// names are the things that a meeting is about, by which the first of several alike is told.
func (m *meeting) names() string { return blankName(m.A.In) + cutName(m.A) + cutName(m.B) }

// meetings are the cuts of one piece of wood that come too near each other: of two joints the
// two cuts that do so most.
func meetings(pass *Pass, b *plan.Blank) []meeting {
	var all []meeting
	at := make(map[[2]plan.Purpose]int)
	thick := b.Size[plan.Thick]
	within := max(pass.Most(cutsApart), pass.Most(paneApart))
	if thick.Known() && count(b, housed) > 1 {
		within = max(within, thick.Length/2)
	}
	for near := range b.Near(within) {
		if m, tooNear := tooNear(pass, near); tooNear && inClosedLists(m.A) && inClosedLists(m.B) {
			all = keepWorst(all, at, [2]plan.Purpose{m.A.For, m.B.For}, m)
		}
	}
	return all
}

// count is how many cuts of a kind a blank has.
func count(b *plan.Blank, is func(*plan.Cut) bool) int {
	n := 0
	for _, c := range b.Cuts {
		if is(c) {
			n++
		}
	}
	return n
}

// tooNear says how much two cuts that are near each other want between them, if they have less.
func tooNear(pass *Pass, m plan.Meeting) (meeting, bool) {
	if m = inText(m); shortPeg(m.A, m.B) || shortPeg(m.B, m.A) {
		return meeting{}, false
	}
	for i := range clearances {
		c := &clearances[i]
		if !(c.a(m.A) && c.b(m.B) || c.a(m.B) && c.b(m.A)) {
			continue
		}
		subject := cutSubject(m.B)
		var wants wood.Length
		switch c.wants {
		case webLeast:
			wants = fraction(m.A.In.Size[plan.Thick].Length, pass.Number(webLeast, subject))
		case paneApart: // the opening ends where the rabbet begins
			pane := m.A
			if !paned(pane) {
				pane = m.B
			}
			wants = max(pass.Length(cutsApart, subject), pass.Length(paneApart, subject)-pane.Deep().Length)
		default:
			wants = pass.Length(c.wants, subject)
		}
		return meeting{m, wants, c.wants}, wood.Under(m.Gap, wants) && (c.meant == nil || !c.meant(m))
	}
	return meeting{}, false
}

func (m *meeting) finding(pass *Pass) diag.Finding {
	p, a, b := pass.Plan, m.A, m.B
	in, at := blankName(a.In), m.movable()
	f := diag.Finding{
		Subject: cutSubject(at),
		Span:    at.Span(),
		Notes: []diag.Note{
			{Span: a.Span(), Message: section(p, a)},
			{Span: b.Span(), Message: section(p, b)},
			{Span: blankSpan(a.In), Message: "both are cut into " + in},
		},
	}
	both, where := cutName(a)+" and "+cutName(b), whereAlong(p, a, b)
	if opposed(m.Meeting) && !m.moves() { // how deep they overlap, whatever they do beside that
		m.Along = a.Enters.Dimension()
		m.Gap = m.Apart[m.Along]
	}
	switch {
	case wood.Under(m.Gap, 0):
		f.Message = fmt.Sprintf("%s run into each other in %s by %s, %s", both, in, exact(p, -m.Gap), where)
	case wood.Same(m.Gap, 0):
		f.Message = fmt.Sprintf("%s leave nothing between them in %s, %s", both, in, where)
	default:
		f.Message = fmt.Sprintf("%s leave %s between them in %s, %s: %s is wanted", both, exact(p, m.Gap), in, where, exact(p, m.wants))
		if m.figure != webLeast || !wood.Under(m.Gap, m.wants/2) {
			f.Severity = diag.Warning
		}
	}
	switch {
	case opposed(m.Meeting) && !m.moves():
		m.web(pass, &f)
	case m.inPost():
		m.post(pass, &f)
	default:
		m.beside(p, &f)
	}
	return f
}

// web shows what two cuts from opposite faces leave of the wood.
func (m *meeting) web(pass *Pass, f *diag.Finding) {
	p, a, b := pass.Plan, m.A, m.B
	size := a.In.Size[m.Along]
	if !size.Known() || a.Stands || b.Stands {
		m.beside(p, f)
		return
	}
	f.Working = p.Paper().Start(size.Length, m.Along.String()+" of "+blankName(a.In)).
		Minus(a.Deep().Length, a.Kind.String()+" from the "+a.FaceName(a.Enters)).
		Minus(b.Deep().Length, b.Kind.String()+" from the "+b.FaceName(b.Enters)).
		Equals("left between them").Versus(m.wants, "wanted").Working()
	room := (size.Length - m.wants) / 2
	if socket(a) && socket(b) {
		if shorter, ok := m.shorter(pass, [2]wood.Length{m.tenonIn(p, a, room), m.tenonIn(p, b, room)}); ok {
			f.Fixes = append(f.Fixes, shorter)
		}
	} else if room > 0 {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make both %s deep at most", p.Show(p.Tape.Floor(room)))})
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: "let one stand higher than the other"})
}

// tenonIn is how long the tenon is of which the mortise is so deep.
func (m *meeting) tenonIn(p *plan.Plan, c *plan.Cut, deep wood.Length) wood.Length {
	if long := c.Joint().Long; long.Known() {
		deep -= c.Deep().Length - long.Length
	}
	return p.Tape.Floor(deep)
}

// inPost reports whether two mortises come from neighbouring faces along the length of a post.
func (m *meeting) inPost() bool {
	a, b := m.A.Enters.Dimension(), m.B.Enters.Dimension()
	return socket(m.A) && socket(m.B) && a != b && a != plan.Long && b != plan.Long
}

// post works out how deep each of two mortises may be, so that it stops short of the other.
func (m *meeting) post(pass *Pass, f *diag.Finding) {
	p := pass.Plan
	paper := p.Paper()
	var fits [2]wood.Length // how long the tenons may be
	for i, c := range []*plan.Cut{m.A, m.B} {
		other := m.B
		if c == m.B {
			other = m.A
		}
		d := c.Enters.Dimension()
		size, at := c.In.Size[d], other.At[d]
		if !c.Enters.Far() {
			paper.Start(at.From, fmt.Sprintf("from the %s to %s", c.FaceName(c.Enters), cutName(other)))
		} else {
			paper.Start(size.Length, d.String()+" of "+blankName(c.In)).
				Minus(at.To(), fmt.Sprintf("to the far side of %s", cutName(other)))
		}
		paper.Minus(m.wants, "left between them").Equals(fmt.Sprintf("room for %s", cutName(c))).
			Versus(c.Deep().Length, "its depth")
		fits[i] = m.tenonIn(p, c, paper.Result())
	}
	f.Working = paper.Working()
	if shorter, ok := m.shorter(pass, fits); ok {
		f.Fixes = append(f.Fixes, shorter)
	}
	if jointIs(m.A, plan.Tenon) && jointIs(m.B, plan.Tenon) {
		f.Fixes = append(f.Fixes, diag.Fix{Title: "mitre the tips of both, and say `mitred`"})
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: "let one stand higher than the other, or nearer to the face"})
}

// shorter mends two tenons that meet by making one of them, or both where one line says their
// length, only as long as there is room for.
func (m *meeting) shorter(pass *Pass, fits [2]wood.Length) (diag.Fix, bool) {
	p, a, b := pass.Plan, m.A.Joint().Long, m.B.Joint().Long
	switch {
	case !a.Known() || !b.Known() || max(fits[0], fits[1]) <= 0:
		return diag.Fix{}, false
	case a.Span == b.Span && a.Span.Known():
		long := max(fits[0], fits[1])
		fix := diag.Fix{Title: fmt.Sprintf("write `long %s`", cutTo(p, a.Span, long))}
		if a.How == plan.Written && m.deepFollows() && !wood.Under(long, pass.Length(tenonShortest, "")) {
			fix.Edits = []diag.Edit{{Span: a.Span, Text: cutTo(p, a.Span, long)}}
		}
		return fix, true
	case opposed(m.Meeting) && fits[0] == fits[1]:
		return diag.Fix{Title: fmt.Sprintf("make both tenons %s long at most", p.Show(fits[0]))}, true
	case opposed(m.Meeting):
		return diag.Fix{Title: fmt.Sprintf("make the tenons %s and %s long at most", p.Show(fits[0]), p.Show(fits[1]))}, true
	case fits[1]-b.Length >= fits[0]-a.Length: // the one that loses less
		return diag.Fix{Title: fmt.Sprintf("make the tenon of %s %s long at most", titled(plan.It(m.B.For.End.Of)), p.Show(fits[1]))}, true
	}
	return diag.Fix{Title: fmt.Sprintf("make the tenon of %s %s long at most", titled(plan.It(m.A.For.End.Of)), p.Show(fits[0]))}, true
}

// deepFollows reports whether both mortises are as deep as their tenons ask for.
func (m *meeting) deepFollows() bool {
	a, b := m.A.Joint().Mortise, m.B.Joint().Mortise
	return a != nil && b != nil && a.Deep.How == plan.Default && b.Deep.How == plan.Default
}

// movable is the one of two cuts that is the more easily moved: hardware, else a hole, else what
// the plan says last.
func (m *meeting) movable() *plan.Cut {
	if bore(m.A) && !bore(m.B) || hole(m.A) && !hole(m.B) && !bore(m.B) {
		return m.A
	}
	return m.B
}

// moves reports whether two cuts are mended by moving one of them along the wood: a hole or a bore
// beside what does not run along all of it.
func (m *meeting) moves() bool {
	a, b := m.A, m.B
	switch {
	case grooved(a) || grooved(b) || paned(a) || paned(b) || hole(a) && hole(b) && opposed(m.Meeting):
		return false
	}
	return hole(a) || bore(a) || hole(b) || bore(b)
}

// beside shows how far two cuts are apart where they are the farthest apart.
func (m *meeting) beside(p *plan.Plan, f *diag.Finding) {
	d, apart := m.Along, m.Gap
	if m.moves() {
		d = plan.Long
	}
	first, second := m.A, m.B
	if !wood.Same(second.At[d].From-first.At[d].To(), m.Apart[d]) {
		first, second = second, first
	}
	paper := p.Paper()
	if m.Gap <= 0 || wood.Same(m.Gap, m.Apart[d]) {
		apart = m.Apart[d]
		from := first.FaceName(plan.Face(d * 2))
		paper.Start(second.At[d].From, fmt.Sprintf("from the %s to %s", from, cutName(second))).
			Minus(first.At[d].To(), fmt.Sprintf("to the end of %s", cutName(first))).Equals("left between them")
	} else {
		paper.Start(m.Gap, "left between them, aslant")
	}
	f.Working = paper.Versus(m.wants, "wanted").Working()
	lacks := p.Show(upTo(p, m.wants-apart))
	at, other := m.movable(), m.A
	if at == m.A {
		other = m.B
	}
	title := fmt.Sprintf("move %s %s further from %s", cutName(at), lacks, cutName(other))
	if d == plan.Long {
		title = fmt.Sprintf("move %s %s along the length", cutName(at), lacks)
	}
	f.Fixes = []diag.Fix{{Title: title}}
}
