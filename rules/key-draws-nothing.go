package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var keyInside = &Figure{
	Name: "inside", Why: "how far inside the outer face of its mate the hole for a key begins at least", Basis: Published,
	Source: "W. Noyes, Handwork in Wood, 1910, joint no. 39: 1/16", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
}

var keyDrawsNothing = &Rule{
	Name: "key-draws-nothing", Group: Tenons, Severity: diag.Warning,
	Summary: "the hole for a key begins level with the face of its mate, so that the key draws nothing",
	Doc: `The key, or wedge, of a tusk tenon pulls the shoulder up by pressing on the outer face of the mate. For that its hole has to
begin inside that face: where it begins level with it, or outside, the key fills its hole and touches nothing, and when the mate
shrinks a little it rattles.

Begin the hole 1/16 (1.5 mm) inside the outer face.`,
	Sources: `See the figure.`,
	Sound:   `A hole that begins just 1/16 inside the face; one that does not say where.`,
	Bad: `frame trestle {
  wide 30 ; high 26 ; thick 1 3/4
  across { leg left 3 ; down { space 12 ; stretcher low 3 { joint wedge tail 2 inside 0 } ; space } ; leg right 3 }
}
`,
	Good: `frame trestle {
  wide 30 ; high 26 ; thick 1 3/4
  across { leg left 3 ; down { space 12 ; stretcher low 3 { joint wedge tail 2 inside 1/16 } ; space } ; leg right 3 }
}
`,
	Figures: []*Figure{keyInside},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.WedgeJoint) {
			inside, least := t.Joint.Inside, pass.Length(keyInside, t.subject)
			if !inside.Known() || !wood.Under(inside.Length, least) {
				continue
			}
			f := diag.Finding{
				Subject: t.subject,
				Span:    inside.Span,
				Message: fmt.Sprintf("the hole for the key begins %s inside the outer face: as the mate shrinks the key draws nothing, %s is wanted", p.ShowSaid(inside), p.Show(least)),
				Fixes: []diag.Fix{{
					Title: "write `inside " + cutTo(p, inside.Span, least) + "`",
					Edits: []diag.Edit{{Span: inside.Span, Text: cutTo(p, inside.Span, least)}},
				}},
			}
			switch {
			case wood.Under(inside.Length, 0):
				f.Message = fmt.Sprintf("the hole for the key begins %s outside the face of the mate, and the key draws nothing", p.Show(-inside.Length))
			case !wood.Over(inside.Length, 0):
				f.Message = "the hole for the key begins level with the outer face of the mate, and the key draws nothing"
			}
			pass.Report(f)
		}
	},
}
