package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	endLeast = &Figure{
		Name: "least", Why: "how far a mortise stays from the end of its stick at least", Basis: Practice,
		Source: "1/2 (13 mm)", Dim: lang.Length, Length: wood.Inch / 2, Metric: 13 * wood.Millimetre,
	}
	endPart = &Figure{
		Name: "part", Why: "the same as a part of the rail's width", Basis: Practice,
		Source: "a quarter: the tenon at an end is narrowed towards half of its rail", Dim: lang.Plain, Number: 0.25,
	}
	endNarrow = &Figure{
		Name: "narrow", Why: "which part of a narrow rail's width is enough", Basis: Practice,
		Source: "a third, so that a tenon is left", Dim: lang.Plain, Number: 1.0 / 3,
	}
)

var mortiseNearEnd = &Rule{
	Name: "mortise-near-end", Group: Cuts, Severity: diag.Error,
	Summary: "a mortise lies too near to the end of its stick, and is not haunched",
	Doc: `Beyond a mortise near its end a stile has little wood, and all of its grain ends there: it shears out when the joint is
levered, or under the wedge. A mortise that is open at the end is none: nothing holds the tenon in the width of its rail.

Make the tenon narrower at that edge, half an inch or a quarter of the rail; the rail's full width is kept from twisting by a
haunch, a short part of the tenon in a shallow socket that may be open. Say it as "haunch 5/8". Less than half of what is
wanted is an error. A tenon whose width the plan does not say is as wide as there is room for, and is judged only where its rail
stands a little way from the end.`,
	Sources: `That the tenon at an end is narrowed and haunched: W. Noyes, Handwork in Wood, 1910, joint no. 42; W. Fairham, Woodwork
Joints, The Mortise and Tenon Joint. The figures are common practice, no source.`,
	Sound: `A haunched tenon at the very end; a shoulder of just half an inch; a rail well away from the end; a narrow rail with a
third of it left.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 shoulder 1/8
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 haunch 5/8 deep 3/8
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{endLeast, endPart, endNarrow},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[thinAt]
		for c := range p.Cuts().All() {
			if c.Kind != plan.CutMortise || !jointIs(c, plan.Tenon) || !intoMate(c) || cheek(c, plan.Long) || !inClosedLists(c) {
				continue
			}
			rail := c.For.End.Of.(*plan.Member)
			for face, left := range c.Walls() {
				if face.Dimension() != plan.Long || face == c.Enters.Opposite() || haunchedAt(p, c, face) ||
					!wood.Over(left, 0) && !widthSaid(c.Joint()) || !rail.Size.Wide.Known() {
					continue
				}
				subject, wide := plan.PathOf(rail), rail.Size.Wide.Length
				least, paper := farFromEnd(pass, subject, wide, widthSaid(c.Joint()))
				if !wood.Under(left, least) {
					continue
				}
				f := diag.Finding{
					Subject: subject,
					Span:    widthSpan(c.Joint()),
					Message: fmt.Sprintf("%s begins %s from the %s of %s: %s is wanted", cutName(c), p.Show(left),
						c.FaceName(face), blankName(c.In), exact(p, least)),
					Working: paper.Versus(left, "left beyond the mortise").Working(),
					Notes:   []diag.Note{{Span: blankSpan(c.In), Message: "it is cut into " + blankName(c.In)}},
					Fixes: []diag.Fix{
						{Title: fmt.Sprintf("haunch it: `haunch %s`", p.Show(upTo(p, least)))},
						{Title: fmt.Sprintf("make the tenon %s narrower at that edge", p.Show(upTo(p, least-left)))},
					},
				}
				if !wood.Over(left, 0) {
					f.Message = fmt.Sprintf("%s is open at the %s of %s: %s is wanted beyond it", cutName(c), c.FaceName(face),
						blankName(c.In), exact(p, least))
				}
				if !wood.Under(left, least/2) {
					f.Severity = diag.Warning
				}
				said.add(thinAt{widthSpan(c.Joint()), buildOf(c), c.Kind, left, least}, f)
			}
		}
		said.report(pass)
	},
}

// farFromEnd is how far a mortise is to stay from an end, by the width of its rail; said is whether
// the plan says the tenon's width, which may then be narrowed.
func farFromEnd(pass *Pass, subject string, wide wood.Length, said bool) (wood.Length, *plan.Paper) {
	paper := pass.Plan.Paper()
	part, narrow := pass.Number(endPart, subject), pass.Number(endNarrow, subject)
	switch least := pass.Length(endLeast, subject); {
	case wood.Over(least, fraction(wide, narrow)):
		return fraction(wide, narrow), paper.Start(fraction(wide, narrow), "wanted: a third of a narrow rail")
	case said && wood.Under(least, fraction(wide, part)):
		return fraction(wide, part), paper.Start(fraction(wide, part), "wanted: a quarter of the rail's width")
	default:
		return least, paper.Start(least, "wanted at least")
	}
}

// haunchedAt reports whether a mortise has the socket of a haunch at the side of an end.
func haunchedAt(p *plan.Plan, c *plan.Cut, face plan.Face) bool {
	for _, h := range p.Cuts().Of(c.For.End) {
		at, of := h.At[plan.Long], c.At[plan.Long]
		if h.Kind == plan.CutHaunch && h.In == c.In && h.Use == c.Use && at.Known() && face.Far() == (at.From+at.Size/2 > of.From+of.Size/2) {
			return true
		}
	}
	return false
}

// widthSpan is where a plan says how wide a tenon is.
func widthSpan(j *plan.Joint) diag.Span {
	for _, l := range []plan.Length{j.Wide, j.Shoulder, j.Apart} {
		if l.Span.Known() {
			return l.Span
		}
	}
	return j.Span
}
