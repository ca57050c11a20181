package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	shoulderLeast = &Figure{
		Name: "least", Why: "how wide a shoulder is at least at a face that shows", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	shoulderThin = &Figure{
		Name: "thin", Why: "which part of a thin stick suffices as a shoulder where it is less than that", Basis: WorkedOut,
		Source: "a quarter, which the thickest tenon, of a half, leaves at both sides", Dim: lang.Plain, Number: 0.25,
	}
)

var narrowShoulder = &Rule{
	Name: "narrow-shoulder", Group: Tenons, Severity: diag.Warning,
	Summary: "a shoulder is too narrow to close on its mate",
	Doc: `The shoulder is what brings a rail square to its stile and hides the edge of the mortise. One that is a sliver crushes under
the clamps, and leaves nothing to trim when it does not close.

Set the tenon nearer to the middle of its stick; or, where it must lie at one face, make it bare-faced and say so. In thin stuff a quarter
of the stick is enough. Where the mortise's wall beside it is as thin, or the tenon too thick for its stick, those are said instead.`,
	Sources: `See the figures.`,
	Sound: `A tenon set 1/8 in; one of a half in a stick 3/8 thick, whose shoulders are 3/32; a bare-faced one; a through slat that goes in
whole.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 1 1/2
  each rail thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 1/16
  across { stile left 2 1/4 ; down { space 4 ; rail middle 2 1/4 { centred } ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 1 1/2
  each rail thick 3/4
  joint tenon thick 1/4 long 1 1/4 set 3/16
  across { stile left 2 1/4 ; down { space 4 ; rail middle 2 1/4 { centred } ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{shoulderLeast, shoulderThin},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			thick, stick := t.Joint.Thick, t.of.Size.Thick
			own := p.Cuts().Own(t.End, plan.CutTenon)
			if own == nil || !thick.Known() || !stick.Known() || t.fat(pass) || thinWalled(p, t.End) {
				continue
			}
			least := min(pass.Length(shoulderLeast, t.subject), fraction(stick.Length, shoulderThin.Number))
			d := t.thickness(own)
			for _, face := range []plan.Face{plan.Face(d * 2), plan.Face(d*2) + 1} {
				left := own.Wall(face)
				if own.Open[face] || !left.Known() || !wood.Under(left.Length, least) {
					continue
				}
				f := diag.Finding{
					Subject: t.subject,
					Span:    t.at(t.Joint.Set),
					Message: fmt.Sprintf("a tenon %s thick leaves a shoulder of %s at the %s of a stick %s thick: %s is wanted", p.ShowSaid(thick),
						p.Show(left.Length), own.FaceName(face), p.Show(stick.Length), p.Show(least)),
					Fixes: []diag.Fix{{Title: "set it nearer to the middle, or make it bare-faced: `barefaced`"}},
				}
				if !wood.Over(left.Length, 0) {
					f.Message = fmt.Sprintf("a tenon %s thick leaves no shoulder at the %s of a stick %s thick: say `barefaced` if that is meant",
						p.ShowSaid(thick), own.FaceName(face), p.Show(stick.Length))
				}
				if other := own.Wall(face.Opposite()); other.Known() {
					f.Working = p.Paper().Start(stick.Length, "thickness of "+called(&t.of.Item)).Minus(thick.Length, "tenon").
						Minus(other.Length, "its other shoulder").Equals("this one").Versus(least, "wanted at least").Working()
				}
				pass.Report(f)
				break
			}
		}
	},
}

// thinWalled reports whether a mortise of an end leaves too thin a wall beside it.
func thinWalled(p *plan.Plan, e *plan.End) bool {
	for _, c := range p.Cuts().Of(e) {
		if c.Kind != plan.CutMortise {
			continue
		}
		for face, left := range c.Walls() {
			beside := face.Dimension() != plan.Long && face.Dimension() != c.Enters.Dimension()
			if beside && wood.Under(left, mortiseWall.Length) {
				return true
			}
		}
	}
	return false
}
