package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	mortiseDeepest = &Figure{
		Name: "deepest", Why: "how deep a blind mortise is at most, as a part of its stick", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, The Mortise and Tenon Joint: about seven eighths", Dim: lang.Plain, Number: 0.875,
	}
	mortiseWall = &Figure{
		Name: "wall", Why: "how much wood is left behind a blind mortise at least", Basis: Practice,
		Source: "3/16 (5 mm), which a chisel does not drive through", Dim: lang.Length, Length: 3 * wood.Inch / 16, Metric: 5 * wood.Millimetre,
	}
)

var mortiseDepth = &Rule{
	Name: "mortise-depth", Group: Tenons, Severity: diag.Warning,
	Summary: "a blind mortise comes too near to the far side of its stick",
	Doc: `The last blow of the chisel, or the point of the bit, comes through on the edge that shows; and a thin wall behind the
mortise is pushed out by the glue that the tenon drives before it.

Keep a blind mortise to seven eighths of its stick, with 3/16 (5 mm) left behind it. Where the tenon needs to be longer, let it go
through, and say so: "through".`,
	Sources: `See the figures.`,
	Sound:   `A mortise of seven eighths of its stick; a through tenon; a mortise in a thin stick with just 3/16 behind it.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 15/16 mortise deep 2
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 3/4 mortise deep 1 13/16
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{mortiseDeepest, mortiseWall},
	Check: func(pass *Pass) {
		p := pass.Plan
		for e := range ends(p) {
			j, mate := e.Joint, e.MateSize()
			if j.Kind.Is != plan.Tenon && j.Kind.Is != plan.LooseTenon || j.Through.On || j.Mortise == nil ||
				!j.Mortise.Deep.Known() || !mate.Known() {
				continue
			}
			deep, subject := j.Mortise.Deep, plan.PathOf(e.Of)
			at := deep.Span
			if !at.Known() { // it follows from the tenon
				at = j.Long.Span
			}
			f := diag.Finding{Subject: subject, Span: at}
			eighths, wall := fraction(mate.Length, mortiseDeepest.Number), pass.Length(mortiseWall, subject)
			paper := p.Paper().Start(mate.Length, "width of "+called(&e.Mates[0].Item)).Minus(deep.Length, "mortise").Equals("left behind it")
			switch {
			case !wood.Under(deep.Length, mate.Length):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a blind mortise %s deep comes through a stick of %s: say `through` if it is meant to", p.Show(deep.Length), p.Show(mate.Length))
			case halfEmpty(pass, e):
				continue // a mortise as its tenon wants it may be well
			case wood.Under(mate.Length-deep.Length, wall):
				f.Message = fmt.Sprintf("a mortise %s deep leaves %s behind it in a stick of %s: %s is wanted", p.Show(deep.Length),
					p.Show(mate.Length-deep.Length), p.Show(mate.Length), p.Show(wall))
			case wood.Over(deep.Length, eighths):
				f.Message = fmt.Sprintf("a mortise %s deep is more than seven eighths of a stick of %s", p.Show(deep.Length), p.Show(mate.Length))
				paper.Versus(mate.Length-eighths, "an eighth of it")
			default:
				continue
			}
			f.Working = paper.Working()
			pass.Report(f)
		}
	},
}
