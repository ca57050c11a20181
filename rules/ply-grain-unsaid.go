package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var plyGrainUnsaid = &Rule{
	Name: "ply-grain-unsaid", Group: Hygiene, Severity: diag.Error,
	Summary: "a ply does not say which way its grain runs",
	Doc: `A pressed board stays flat by its plies pulling against one another, face against back and along against across. A ply
that is laid the wrong way is seen a week after the press is opened, when the board has cupped.

Write "along" or "across" behind the ply's material, as its grain runs to the layup's, or "angle 45deg" for another direction. Boards
without grain, such as fibreboard and particleboard, need none.`,
	Sources: "That every ply has a direction: second-hand, from a general note on aircraft plywood and glossaries of the trade.",
	Sound:   `A core of fibreboard between two faces that say their direction; a ply at an angle.`,
	Bad: `veneer skin { species "black walnut" ; thick 1/42 }
sheet  core { kind plywood ; thick 1/2 ; actual 12mm }
layup  face { ply skin along ; ply core ; ply skin along }
`,
	Good: `veneer skin { species "black walnut" ; thick 1/42 }
sheet  core { kind plywood ; thick 1/2 ; actual 12mm }
layup  face { ply skin along ; ply core across ; ply skin along }
`,
	Check: func(pass *Pass) {
		for _, layup := range pass.Plan.Materials {
			if layup.Name.Text == "" {
				continue // that it has none was reported
			}
			for _, ply := range layup.Plies {
				if ply.Of.To == nil || ply.Run.Is != "" || ply.Angle.How != plan.Unknown || ply.Of.To.Grainless() {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(layup),
					Span:    ply.Of.Span,
					Message: fmt.Sprintf("ply %s of layup %s does not say which way its grain runs", quote(ply.Of.Name), quote(layup.Name.Text)),
					Fixes: []diag.Fix{
						{Title: "write `ply " + ply.Of.Name + " along`"},
						{Title: "write `ply " + ply.Of.Name + " across`"},
					},
				})
			}
		}
	},
}
