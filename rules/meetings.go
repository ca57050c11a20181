package rules

// Two cuts that come too near each other in one piece of wood: which of them are said, and what
// would keep them apart.

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

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

// inOrder puts the cut first whose thing has the first name, so that a finding stands at the same
// thing in whatever order the plan says them.
func inOrder(m plan.Meeting) plan.Meeting {
	a, b := cutSubject(m.A), cutSubject(m.B)
	if b < a || b == a && m.B.Kind < m.A.Kind {
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
	var at map[[2]plan.Purpose]int
	thick := b.Size[plan.Thick]
	within := max(pass.Most(cutsApart), pass.Most(paneApart))
	if thick.Known() && count(b, housed) > 1 {
		within = max(within, thick.Length/2)
	}
	for near := range b.Near(within) {
		if m, tooNear := tooNear(pass, near); tooNear && inClosedLists(m.A) && inClosedLists(m.B) {
			if at == nil { // most pieces have none
				at = make(map[[2]plan.Purpose]int)
			}
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
	if m = inOrder(m); shortPeg(m.A, m.B) || shortPeg(m.B, m.A) {
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
	room := p.Tape.Floor((size.Length - m.wants) / 2)
	if m.tenons() {
		if shorter, ok := m.shorter(pass, [2]wood.Length{tenonIn(p, a, room), tenonIn(p, b, room)}); ok {
			f.Fixes = append(f.Fixes, shorter)
		}
	} else if room > 0 {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make both %s deep at most", p.Show(room))})
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: "let one stand higher than the other"})
}

// tenons reports whether both cuts are mortises for tenons.
func (m *meeting) tenons() bool {
	return m.A.Kind == plan.CutMortise && m.B.Kind == plan.CutMortise && jointIs(m.A, plan.Tenon) && jointIs(m.B, plan.Tenon)
}

// tenonIn is how long the tenon is of which the mortise is so deep.
func tenonIn(p *plan.Plan, mortise *plan.Cut, deep wood.Length) wood.Length {
	if long := mortise.Joint().Long; long.Known() {
		deep -= mortise.Deep().Length - long.Length
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
		fits[i] = tenonIn(p, c, paper.Result())
	}
	f.Working = paper.Working()
	if m.tenons() {
		if shorter, ok := m.shorter(pass, fits); ok {
			f.Fixes = append(f.Fixes, shorter)
		}
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

// movable is the one of two cuts that is the more easily moved: hardware, else a hole, else the
// second.
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
