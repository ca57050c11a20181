package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var biscuitPitch = &Figure{
	Name: "pitch", Why: "how far apart biscuits stand at most", Basis: Practice,
	Source: "6 to 8 in (200 mm)", Dim: lang.Length, Length: 8 * wood.Inch, Metric: 200 * wood.Millimetre,
}

var fewBiscuits = &Rule{
	Name: "few-biscuits", Group: Joints, Severity: diag.Warning,
	Summary: "biscuits stand too far apart",
	Doc: `Between two biscuits the boards are held flush by glue and luck. Farther apart than 8 in they step, and the step is sanded through
the veneer.

Put one for each 8 in (200 mm) of the joint begun, 6 in if the boards are thin.`,
	Sources: `See the figure.`,
	Sound:   `Two biscuits in the end of a shelf 12 deep; one in a rail; three just 8 apart.`,
	Bad: `biscuit large { long 56mm ; wide 23mm ; thick 4mm }
case shelves {
  wide 24 ; high 30 ; deep 12
  across { side left 7/8 ; down { open ; shelf one 7/8 { joint biscuit large count 1 } ; open } ; side right 7/8 }
}
`,
	Good: `biscuit large { long 56mm ; wide 23mm ; thick 4mm }
case shelves {
  wide 24 ; high 30 ; deep 12
  across { side left 7/8 ; down { open ; shelf one 7/8 { joint biscuit large count 2 } ; open } ; side right 7/8 }
}
`,
	Figures: []*Figure{biscuitPitch},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.BiscuitJoint) {
			j, wide := t.Joint, t.of.Size.Wide
			if !wide.Known() {
				continue
			}
			pitch := max(pass.Length(biscuitPitch, t.subject), 1)
			if apart, at, far := farthestApart(j.At); far && wood.Over(apart, pitch) {
				pass.Report(diag.Finding{
					Subject: t.subject, Span: at,
					Message: fmt.Sprintf("two biscuits stand %s apart: %s at most is wanted", p.Show(apart), p.Show(pitch)),
					Fixes:   []diag.Fix{{Title: "put another between them"}},
				})
				continue
			}
			n, at, said := howMany(j)
			least := int((wide.Length - wood.Slack + pitch - 1) / pitch)
			if !said || n < 1 || n >= least {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject, Span: at,
				Message: fmt.Sprintf("%s in a joint %s wide: %d are wanted", counted(n, "biscuit"), p.Show(wide.Length), least),
				Working: diag.Working{
					{Value: p.Show(wide.Length), Label: "wide"},
					{Op: diag.Over, Value: p.Show(pitch), Label: "apart at most"},
					{Op: diag.Equals, Value: itoa(least), Label: "biscuits, rounded up"},
					{Op: diag.Versus, Value: itoa(n), Label: "stated"},
				},
			})
		}
	},
}
