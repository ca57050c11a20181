package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var keyTail = &Figure{
	Name: "tail", Why: "how far a keyed tenon stands out behind its mate at least", Basis: Practice,
	Source: "3/4 (19 mm)", Dim: lang.Length, Length: 3 * wood.Inch / 4, Metric: 19 * wood.Millimetre,
}

var keyTailShort = &Rule{
	Name: "key-tail-short", Group: Tenons, Severity: diag.Warning,
	Summary: "a keyed tenon stands out too little behind its mate",
	Doc: `The key presses on the end of its hole, and the wood behind the hole shears out along the grain when there is too little of it.

Let the tenon stand out 3/4 (19 mm) at least, and more for a thick key or a wood that splits: the wood that counts is what is left
behind the hole.`,
	Sources: `See the figure.`,
	Sound:   `A tail of just 3/4; a long one.`,
	Bad: `frame trestle {
  wide 30 ; high 26 ; thick 1 3/4
  across { leg left 3 ; down { space 12 ; stretcher low 3 { joint wedge tail 1/2 inside 1/16 } ; space } ; leg right 3 }
}
`,
	Good: `frame trestle {
  wide 30 ; high 26 ; thick 1 3/4
  across { leg left 3 ; down { space 12 ; stretcher low 3 { joint wedge tail 1 1/2 inside 1/16 } ; space } ; leg right 3 }
}
`,
	Figures: []*Figure{keyTail},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.WedgeJoint) {
			tail, least := t.Joint.Tail, pass.Length(keyTail, t.subject)
			if !tail.Known() || !wood.Under(tail.Length, least) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    tail.Span,
				Message: fmt.Sprintf("a tail of %s shears out behind its key: let the tenon stand out %s at least", p.ShowSaid(tail), p.Show(least)),
				Fixes:   []diag.Fix{{Title: "write `tail " + cutTo(p, tail.Span, least) + "`, or more"}},
			})
		}
	},
}
