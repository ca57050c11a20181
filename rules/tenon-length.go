package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	tenonShortest = &Figure{
		Name: "shortest", Why: "how long a tenon is at least", Basis: Practice,
		Source: "an inch (25 mm) in furniture", Dim: lang.Length, Length: wood.Inch, Metric: 25 * wood.Millimetre,
	}
	tenonThicknesses = &Figure{
		Name: "thicknesses", Why: "how many times its own thickness a tenon is long at least", Basis: Practice,
		Source: "three times, so that the glued cheeks are larger than the tenon's root", Dim: lang.Plain, Number: 3,
	}
	tenonIntoMate = &Figure{
		Name: "into-mate", Why: "what part of its mate's width is enough for a tenon of an inch and more, however thick it is", Basis: Practice,
		Source: "two thirds", Dim: lang.Plain, Number: 2. / 3,
	}
	stubLongest = &Figure{
		Name: "stub", Why: "below which length a tenon counts as a stub, which a glued panel may replace", Basis: Practice,
		Source: "three quarters of an inch (19 mm)", Dim: lang.Length, Length: 3 * wood.Inch / 4, Metric: 19 * wood.Millimetre,
	}
)

var tenonLength = &Rule{
	Name: "tenon-length", Group: Tenons, Severity: diag.Warning,
	Summary: "a tenon is too short to keep its frame square",
	Doc: `A frame is pulled out of square by its own weight at each opening, and a short tenon has little glued cheek to hold
against it: the joint works loose. In trials of chair joints those with longer and wider tenons were the stronger.

Make it an inch (25 mm) or three times its thickness, whichever is more, but no more than two thirds of its mate for its thickness alone; where
its mate is too narrow for an inch, as long as a mortise in it may be deep. A stub of less than 3/4 serves where a panel of sheet stock, glued all round, keeps the frame square.
The rule looks at the sticks by which a frame stands square, not at slats and muntins that fill it, and lets tenons be that meet others in a
post, where there is no room for longer ones: mitre their tips, and they may be as long. It does not judge how
hard the frame is racked.`,
	Sources: `Longer and wider tenons are stronger: Kasal et al., BioResources (chair joints of 30-50 mm); best at 40 long and 35 wide:
Liu et al., Forests 15(9):1612, 2024. The least length, three times the thickness and two thirds of the mate are common practice, no source.`,
	Sound: `A tenon of just an inch and three times its thickness; a thick one that goes two thirds into its post; slats in short tenons; a stub beside a glued sheet; a through tenon in
a thin post; aprons that meet in a slender leg.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 5/8
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{tenonShortest, tenonThicknesses, tenonIntoMate, stubLongest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			j := t.Joint
			if !j.Long.Known() || j.Through.On || !racked[t.of.Word] {
				continue
			}
			least := pass.Length(tenonShortest, t.subject)
			paper := p.Paper().Start(least, "at least")
			if times := pass.Number(tenonThicknesses, t.subject); j.Thick.Known() && !t.fat(pass) && wood.Over(fraction(j.Thick.Length, times), least) {
				least = fraction(j.Thick.Length, times)
				paper = p.Paper().Start(j.Thick.Length, "thickness of the tenon")
				if n := int(times); float64(n) == times {
					paper.Times(n, "").Equals("at least")
				} else {
					paper.Plus(least-j.Thick.Length, fmt.Sprintf("to make it %g times", times)).Equals("at least")
				}
			}
			if mate := t.MateSize(); mate.Known() {
				enough := max(p.Tape.Floor(fraction(mate.Length, pass.Number(tenonIntoMate, t.subject))), pass.Length(tenonShortest, t.subject))
				if wood.Under(enough, least) {
					least = enough
					paper = p.Paper().Start(enough, fmt.Sprintf("enough in %s, %s wide", called(&t.Mates[0].Item), p.Show(mate.Length)))
				}
				deepest := min(fraction(mate.Length, mortiseDeepest.Number), mate.Length-pass.Length(mortiseWall, t.subject))
				if room := p.Tape.Floor(deepest - p.Relief()); wood.Under(room, least) {
					least = room
					paper = p.Paper().Start(deepest, "as deep as "+called(&t.Mates[0].Item)+" may be mortised").
						Minus(p.Relief(), "left empty below it").Equals("as long as there is room for")
				}
			}
			if !wood.Under(j.Long.Length, least) || j.Long.Length < pass.Length(stubLongest, t.subject) && tiedBySheet(t.of) {
				continue
			}
			if crowded(p, t.End, least-j.Long.Length) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    j.Long.Span,
				Message: fmt.Sprintf("a tenon %s long works loose: make it %s at least", p.ShowSaid(j.Long), p.Show(least)),
				Working: paper.Versus(j.Long.Length, "stated").Working(),
			})
		}
	},
}

// crowded reports whether a mortise from another side of its mate leaves a tenon no room to be longer
// by so much: that two tenons in a post are short is what keeps them apart. Mitred tips may meet.
func crowded(p *plan.Plan, e *plan.End, longer wood.Length) bool {
	if e.Joint.Mitred.On {
		return false
	}
	for _, c := range p.Cuts().Of(e) {
		if c.Kind != plan.CutMortise || !c.Known() {
			continue
		}
		for m := range c.In.Near(longer + cutsApart.Length) {
			alike := func(d *plan.Cut) bool { return d.At == c.At && d.Enters == c.Enters } // of several uses of a part one is kept
			if (alike(m.A) || alike(m.B)) && socket(m.A) && socket(m.B) && m.A.Enters != m.B.Enters {
				return true
			}
		}
	}
	return false
}

// tiedBySheet reports whether a glued sheet beside a stick keeps its frame square.
func tiedBySheet(m *plan.Member) bool {
	for _, panel := range panelsBeside(m) {
		if gluedSheet(panel) {
			return true
		}
	}
	return false
}
