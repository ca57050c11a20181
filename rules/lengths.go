package rules

// What the rules about lengths share: a stated length held against what its place and its
// joints make of it.

import (
	"fmt"
	"iter"
	"strconv"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

func quote(s string) string { return strconv.Quote(s) }

func itoa(n int) string { return strconv.Itoa(n) }

// agree reports whether a stated length is the one worked out, as closely as the shop
// measures.
func agree(p *plan.Plan, said, worked wood.Length) bool {
	return !wood.Over((said - worked).Abs(), p.Tape.Tolerance())
}

// exact is a worked-out length for a message: where it lies between two marks, with the
// nearest one.
func exact(p *plan.Plan, l wood.Length) string {
	if p.Tape.OnMark(l) {
		return p.Show(l)
	}
	return p.Show(l) + " (≈ " + p.Tape.Nearest(l) + ")"
}

// upTo is a size rounded up to a mark of the tape.
func upTo(p *plan.Plan, l wood.Length) wood.Length {
	down := p.Tape.Floor(l)
	if wood.Over(l, down) {
		return down + p.Tape.Finest()
	}
	return down
}

// ladder is a thickness up to the next that a shop planes to: an eighth, or a millimetre.
func ladder(p *plan.Plan, l wood.Length) wood.Length {
	step := wood.Inch / 8
	if p.Tape.Metric {
		step = wood.Millimetre
	}
	return (l + step - 1) / step * step
}

// cutTo is the length to write in a plan: the nearest mark where that agrees with what is
// worked out. It bears its unit where the place where it is written may have another.
func cutTo(p *plan.Plan, said diag.Span, l wood.Length) string {
	shown := p.Show(l)
	if n := p.Tape.Nearest(l); agree(p, p.Tape.Floor(l+p.Tape.Finest()/2), l) {
		shown = n
	}
	switch {
	case said.File == p.File:
		return shown
	case p.Tape.Metric:
		return shown + " mm"
	}
	return shown + " in"
}

// stated is a length that a plan states: where, and in which words.
type stated struct {
	plan.Length
	setting string     // the setting that states it: cut, long, size
	thing   any        // what states it: the member, or the part that it is
	of      *plan.Item // the same
	made    bool       // it is cut already
}

// statedLongs are the lengths that are stated for a member, the one that the saw follows first.
func statedLongs(m *plan.Member) []stated {
	var all []stated
	add := func(l plan.Length, setting string, thing any, of *plan.Member) {
		if l.Known() {
			all = append(all, stated{l, setting, thing, &of.Item, of.Made.On})
		}
	}
	add(m.Cut, "cut", m, m)
	add(m.Long, "long", m, m)
	if part := m.Part.To; part != nil {
		add(part.Cut, "cut", part, &part.Member)
		add(part.Long, "long", part, &part.Member)
		add(part.Blank.Long, "size", part, &part.Member)
	}
	return all
}

// checkLongs reports every member whose stated length is not what its place and its joints
// make of it. It looks at those that belong to the rule: by the member itself and by the kind
// of joint, if any, by which it is mitred or lapped. trim is how much longer a kind may be at
// each end, to be levelled once it is glued; loose is how much shorter what is not joined may be.
// between is what the working calls the length without the joints.
func checkLongs(pass *Pass, belongs func(m *plan.Member, kind string) bool, between string,
	trim func(m *plan.Member, kind string) wood.Length, loose func(m *plan.Member) wood.Length,
) {
	p := pass.Plan
	seen := make(map[saying]bool) // a length is stated once for all that `each` or a part says it of
	as := cutAs(p)
	var needs map[diag.Span]need // only where there is something to mend
	for m := range p.Members() {
		if !m.Worked.Long.Known() || !meetsMembers(m) {
			continue
		}
		for _, said := range statedLongs(m) {
			needed := m.Worked.Long.Length
			if agree(p, said.Length.Length, needed) || !belongs(m, as[m]) {
				continue
			}
			more := said.Length.Length - needed
			if more > 0 && !wood.Over(more, 2*trim(m, as[m])+2*m.Horns.Or(0).Length+p.Tape.Tolerance()) {
				continue
			}
			if more < 0 && unjoined(m) && !wood.Over(-more, loose(m)+p.Tape.Tolerance()) {
				continue
			}
			if again(seen, said.Span, m.In) {
				break
			}
			paper := room(p, m, m.Grain, between)
			addEnds(paper, m)
			addOver(paper, m)
			addGaps(paper, m)
			paper.Equals("needed")
			f := diag.Finding{
				Subject: plan.PathOf(said.thing),
				Span:    standing(said.of.Span, said.Span),
				Message: fmt.Sprintf("%s %s but must be %s", titled(said.of), saidLong(p, said), exact(p, needed)),
				Working: paper.Working(),
			}
			if said.thing != m {
				f.Notes = append(f.Notes, diag.Note{Span: m.Span, Message: "it is used here as " + titled(&m.Item)})
			}
			if needs == nil {
				needs = neededAt(p)
			}
			f.Fixes = mendLong(p, m, said, needed, needs[said.Span])
			pass.Report(f)
			break
		}
	}
}

// meetsMembers reports whether something stands at each jointed end of a member that the joint can
// go into. Where an opening or a panel does, its length means nothing yet.
func meetsMembers(m *plan.Member) bool {
	for _, e := range m.Ends {
		if e != nil && len(e.Mates) == 0 && e.Adds.Length != 0 {
			return false
		}
	}
	return true
}

// saying is a line that states a size, in what one build made: `each`, a row and a part say it of
// several things.
type saying struct {
	at    diag.Span
	build *plan.Build
}

// again reports whether a line was met before, and takes note of it. What stands in no assembly
// is said of one thing alone.
func again(seen map[saying]bool, at diag.Span, in *plan.Assembly) bool {
	if in == nil {
		return false
	}
	key := saying{at, in.Build}
	before := seen[key]
	seen[key] = true
	return before
}

// addOver adds how far a laid-out top stands beyond its place.
func addOver(paper *plan.Paper, m *plan.Member) {
	if o := m.Over; o != nil && m.Grain == plan.Across && o.Ends.Known() {
		paper.Plus(o.Ends.Length, "over the left end").Plus(o.Ends.Length, "over the right end")
	}
}

// addGaps takes off the gaps of a lid at both of its ends.
func addGaps(paper *plan.Paper, m *plan.Member) {
	if m.Lid == nil {
		return
	}
	axis := min(m.Grain, plan.Down) // of the lid as it is seen from above
	for _, e := range []plan.Edge{m.Lid.Edges[axis*2], m.Lid.Edges[axis*2+1]} {
		if e.Less.Length != 0 {
			paper.Minus(e.Less.Length, edgeOf(e, m.Lid.Hang.Is))
		}
	}
}

func saidLong(p *plan.Plan, said stated) string {
	if said.setting == "cut" {
		return "is cut " + p.ShowSaid(said.Length)
	}
	return "is " + p.ShowSaid(said.Length) + " long"
}

// need is what the members for which one line states a length need.
type need struct {
	length wood.Length
	differ bool
}

// neededAt says of every place that states a length what is needed of it: a line in `each` or in a
// part may speak for several members, and one in a pattern for builds that are still to come.
func neededAt(p *plan.Plan) map[diag.Span]need {
	needs := make(map[diag.Span]need)
	for m := range p.Members() {
		for _, said := range statedLongs(m) {
			n, again := needs[said.Span]
			if again && (!m.Worked.Long.Known() || !wood.Same(n.length, m.Worked.Long.Length)) {
				n.differ = true
			}
			if !again {
				n = need{m.Worked.Long.Length, !m.Worked.Long.Known() || m.In.Build != nil}
			}
			needs[said.Span] = n
		}
	}
	return needs
}

// mendLong proposes the length that is needed, or what can still be done with wood that is cut.
func mendLong(p *plan.Plan, m *plan.Member, said stated, needed wood.Length, n need) []diag.Fix {
	if said.made {
		return stillFits(p, m, said, needed, !n.differ)
	}
	write := cutTo(p, said.Span, needed)
	title := fmt.Sprintf("write `%s %s`", said.setting, write)
	if said.setting == "size" {
		title = fmt.Sprintf("write `%s` for its length", write)
	}
	fix := diag.Fix{Title: title}
	if !n.differ {
		fix.Edits = []diag.Edit{{Span: said.Span, Text: write}}
	}
	return []diag.Fix{fix}
}

func noTrim(*plan.Member, string) wood.Length { return 0 }

func neverLoose(*plan.Member) wood.Length { return 0 }

// unjoined reports whether nothing holds a member at either end, so that it may stop short of
// what it meets.
func unjoined(m *plan.Member) bool {
	for _, e := range m.Ends {
		if e == nil || !e.Free && e.Joint != nil && e.Joint.Kind.Is != plan.Butt && e.Joint.Kind.Is != plan.ShelfPin {
			return false
		}
	}
	return true
}

// cutAs says of the members that are mitred or lapped, at their own ends or by those that meet
// them, by which kind of joint: their lengths have rules of their own.
func cutAs(p *plan.Plan) map[*plan.Member]string {
	as := make(map[*plan.Member]string)
	for e := range ends(p) {
		switch kind := e.Joint.Kind.Is; kind {
		case plan.Mitre, plan.HalfLap, plan.Bridle:
			as[e.Of.(*plan.Member)] = kind
			for _, mate := range e.Mates {
				as[mate] = kind
			}
		}
	}
	return as
}

// ends ranges over the ends of members that meet something and are joined to it.
func ends(p *plan.Plan) iter.Seq[*plan.End] {
	return func(yield func(*plan.End) bool) {
		for _, a := range p.Assemblies {
			for _, e := range a.Ends {
				if e != nil && e.Joint != nil && !yield(e) {
					return
				}
			}
		}
	}
}
