package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var pegFromEnd = &Figure{
	Name: "diameters", Why: "how many times its diameter the middle of a peg is from the end of its tenon at least", Basis: Practice,
	Source: "twice", Dim: lang.Plain, Number: 2,
}

var pegTearsOut = &Rule{
	Name: "peg-tears-out", Group: Tenons, Severity: diag.Warning,
	Summary: "a peg stands too near to the end of its tenon",
	Doc: `The peg holds the joint by the wood between its hole and the end of the tenon, whose grain runs straight out. With too little of
it a plug shears out of the tenon's end, at the latest when the rail shrinks, and the peg holds nothing.

Bore nearer to the shoulder, make the tenon longer or take a thinner peg: twice the peg's diameter from the middle of the hole to the
tenon's end. A peg that does not meet the tenon, or comes out of its end, is an error.`,
	Sources: `See the figure.`,
	Sound:   `A peg just twice its diameter from the end of the tenon; one near the end of a through tenon, which stands out.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 peg pin at 7/8
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 peg pin at 3/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Figures: []*Figure{pegFromEnd},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			peg, long := t.Joint.Peg, t.Joint.Long
			if peg == nil || !long.Known() {
				continue
			}
			thick := fastenerThick(peg.Of.To)
			if !thick.Known() {
				continue
			}
			least := fraction(thick.Length, pass.Number(pegFromEnd, t.subject))
			for i, at := range peg.At {
				if !at.Known() {
					continue
				}
				hole := at.Length - peg.Draw.Or(0).Length
				if i == 0 && peg.InTenon.Known() {
					hole = peg.InTenon.Length
				}
				left := long.Length - hole
				if !wood.Under(left, least) {
					continue
				}
				f := diag.Finding{
					Subject: t.subject, Span: at.Span,
					Message: fmt.Sprintf("a peg %s thick stands %s from the end of its tenon: %s is wanted, or the end shears out", p.ShowSaid(thick), p.Show(left), p.Show(least)),
					Working: p.Paper().Start(long.Length, "tenon").Minus(hole, "shoulder to the hole in the tenon").Equals("behind its middle").
						Versus(least, "wanted at least").Working(),
					Fixes: []diag.Fix{{Title: fmt.Sprintf("bore no more than %s from the shoulder, or make the tenon longer", p.Show(max(long.Length-least, 0)))}},
				}
				if !wood.Over(left, thick.Length/2) {
					f.Severity = diag.Error
					f.Message = fmt.Sprintf("a peg %s thick comes out of the end of a tenon %s long", p.ShowSaid(thick), p.ShowSaid(long))
				}
				if !wood.Over(left, -thick.Length/2) {
					f.Message = fmt.Sprintf("a peg %s from the shoulder does not meet a tenon %s long", p.ShowSaid(at), p.ShowSaid(long))
				}
				pass.Report(f)
			}
		}
	},
}
