package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var nutFromEnd = &Figure{
	Name: "from-end", Why: "how far from the end a barrel nut stands at least", Basis: Memory,
	Source: "1 1/4 (32 mm)", Dim: lang.Length, Length: 5 * wood.Inch / 4, Metric: 32 * wood.Millimetre,
}

var nutNearEnd = &Rule{
	Name: "nut-near-end", Group: Joints, Severity: diag.Warning,
	Summary: "a barrel nut stands so near to the end that it shears the wood out",
	Doc: `When the bolt is drawn tight, the nut pushes the wood before it towards the end. With little of it there, it shears out along
the grain as a plug.

Set the middle of the nut 1 1/4 (32 mm) from the end at least, and farther in softwood.`,
	Sources: `From memory; see the figure.`,
	Sound:   `A nut just 1 1/4 from the end of a stretcher.`,
	Bad: `bolt bed { thick 3/8 ; long 3 1/2 ; nut 5/8 }
frame side {
  wide 40 ; high 20 ; thick 2
  across { post left 2 ; down { space 6 ; rail low 5 { thick 1 1/4 ; joint bolt bed nut-at 1 deep 1 3/4 at 2 1/2 } ; space } ; post right 2 }
}
`,
	Good: `bolt bed { thick 3/8 ; long 4 ; nut 5/8 }
frame side {
  wide 40 ; high 20 ; thick 2
  across { post left 2 ; down { space 6 ; rail low 5 { thick 1 1/4 ; joint bolt bed nut-at 1 1/4 deep 2 at 2 1/2 } ; space } ; post right 2 }
}
`,
	Figures: []*Figure{nutFromEnd},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.BoltJoint) {
			at := t.Joint.NutAt
			least := pass.Length(nutFromEnd, t.subject)
			if !at.Known() || !wood.Under(at.Length, least) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject, Span: at.Span,
				Message: fmt.Sprintf("a barrel nut %s from the end shears the wood before it out: %s is wanted", p.ShowSaid(at), p.Show(least)),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("write `nut-at %s`, and take a bolt as much longer", p.Show(least))}},
			})
		}
	},
}
