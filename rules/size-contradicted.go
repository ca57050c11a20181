package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var sizeContradicted = &Rule{
	Name: "size-contradicted", Group: Hygiene, Severity: diag.Error,
	Summary: "two statements of one size disagree, or a size is more than its place",
	Doc: `One of the two is what will be cut, and the other is what the joints, the neighbours and the hardware were worked out for.
The usual slips: a size that was changed in the part and not where it is used; a sheet that is sold as 3/4 and is 23/32; a stick
that is thicker than the frame that it stands in.

State each size once, where it belongs, and leave it out everywhere else: the checker works it out. What "each" or an assembly says is a
default, and a thing's own statement replaces it without a finding.`,
	Sources: "Arithmetic.",
	Sound: `A thickness of its own where the assembly gives another for all; sizes that differ by half a mark; a stick thinner than its
frame; a board that stands proud and says so.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
part leg x 2 { of oak ; size 30 x 2 x 2 }
frame end {
  of   oak
  wide 18 ; high 30 ; thick 2
  across { leg front 1 3/4 part leg ; space ; leg back 2 part leg }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
part leg x 2 { of oak ; size 30 x 2 x 2 }
frame end {
  of   oak
  wide 18 ; high 30 ; thick 2
  across { leg front part leg ; space ; leg back part leg }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		seen := make(map[diag.Span]bool) // said once of all that a line speaks for
		for s := range statements(p) {
			first, other, differ := disagree(p, s)
			if !differ || seen[first.Span] || inRatio(first.Length.Length, other.Length.Length) {
				continue
			}
			seen[first.Span] = true
			pass.Report(diag.Finding{
				Subject: s.subject,
				Span:    standing(s.at, first.Span),
				Message: fmt.Sprintf("%s is %s %s by %s, but %s by %s", s.called, p.ShowSaid(first.Length), s.what, first.by, p.ShowSaid(other.Length), other.by),
				Notes:   []diag.Note{{Span: other.Span, Message: "the other is stated here"}},
				Fixes:   []diag.Fix{{Title: "state it once, and leave the other out"}},
			})
		}
		for m := range p.Members() {
			tooThick(pass, m, seen)
		}
	},
}

// disagree is the first statement of a size, and the first other that it does not agree with.
func disagree(p *plan.Plan, s sized) (first, other statement, differ bool) {
	first = s.said[0]
	for _, other := range s.said[1:] {
		if !agree(p, first.Length.Length, other.Length.Length) {
			return first, other, true
		}
	}
	return first, other, false
}

// tooThick reports a member that is stated wider or thicker than its place, and does not say
// that it stands proud of it.
func tooThick(pass *Pass, m *plan.Member, seen map[diag.Span]bool) {
	p := pass.Plan
	if m.Parent == nil || m.Over != nil {
		return
	}
	for _, d := range []struct {
		axis plan.Axis
		size plan.Length
		what string
	}{{m.Flat, m.Size.Thick, "thick"}, {3 - m.Flat - m.Grain, m.Size.Wide, "wide"}} {
		cell := m.Cell[d.axis]
		if d.axis == m.Parent.Axis || !cell.Sized || !d.size.Known() || !d.size.Span.Known() || seen[d.size.Span] {
			continue
		}
		room := cell.Size
		if d.axis == plan.Behind {
			room += m.Proud.Front.Or(0).Length + m.Proud.Back.Or(0).Length
		}
		if agree(p, d.size.Length, room) || !wood.Over(d.size.Length, room) || inRatio(d.size.Length, room) {
			continue
		}
		seen[d.size.Span] = true
		paper := roomFor(p, m, d.axis)
		f := diag.Finding{
			Subject: plan.PathOf(m),
			Span:    standing(m.Name.Span, d.size.Span),
			Message: fmt.Sprintf("%s is %s %s, but its place is only %s: %s too much", titled(&m.Item), p.ShowSaid(d.size), d.what,
				exact(p, room), p.Show(d.size.Length-room)),
			Working: paper.Versus(d.size.Length, "stated").Working(),
		}
		if m.Part.To != nil {
			f.Span = m.Name.Span
			f.Notes = []diag.Note{{Span: d.size.Span, Message: titled(&m.Part.To.Item) + " states it here"}}
		}
		pass.Report(f)
	}
}

// roomFor starts a working with the place that a member has along an axis.
func roomFor(p *plan.Plan, m *plan.Member, axis plan.Axis) *plan.Paper {
	paper := room(p, m, axis, "its place")
	if axis == plan.Behind {
		if proud := m.Proud.Front.Or(0).Length + m.Proud.Back.Or(0).Length; proud != 0 {
			paper.Plus(proud, "stands proud").Equals("in all")
		}
	}
	return paper
}
