package rules

import (
	"fmt"
	"strconv"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var sawNotTrue = &Rule{
	Name: "saw-not-true", Group: Lengths, Severity: diag.Warning,
	Summary: "the saw is not true enough for a mitred frame of so many sides",
	Doc: `An error that nobody sees in one mitre is made at every cut, twice to a joint: a tenth of a degree in a frame of six
sides comes to more than a whole degree at the last joint.

Shoot the mitres on a board, or glue up two halves and plane their meeting ends together. The rule looks where the shop says how
true its saw is: "saw-true 0.1deg".`,
	Sources: `Geometry; what may be off in all stands with the figure of mitre-angle.`,
	Sound:   `A saw true to a twentieth of a degree and a frame of four sides.`,
	Bad: `shop { saw-true 0.1deg }
frame clock {
  sides 6 ; thick 3/4
  joint mitre spline thick 1/8
  rail edge 2
}
`,
	Good: `shop { saw-true 0.02deg }
frame clock {
  sides 6 ; thick 3/4
  joint mitre spline thick 1/8
  rail edge 2
}
`,
	Check: func(pass *Pass) {
		saw := pass.Plan.Shop.SawTrue
		if !saw.Known() {
			return
		}
		warned := make(map[*plan.Assembly]bool)
		for a, j := range mitred(pass.Plan) {
			cuts := 2 * a.Sides.Or(4)
			all := float64(cuts) * saw.Value
			most := pass.Number(mitreOpens, plan.PathOf(a))
			if warned[a] || all <= most {
				continue
			}
			warned[a] = true
			pass.Report(diag.Finding{
				Subject: plan.PathOf(a),
				Span:    j.Span,
				Message: fmt.Sprintf("a saw true to %s may be off by %s in the %d cuts of this frame, and its last joint shows %s",
					degrees(saw.Value), degrees(all), cuts, degrees(most)),
				Working: diag.Working{
					{Value: number(saw.Value), Label: "degrees at each cut"},
					{Op: diag.Times, Value: strconv.Itoa(cuts), Label: "cuts"},
					{Op: diag.Equals, Value: number(all), Label: "degrees in all"},
					{Op: diag.Versus, Value: number(most), Label: "degrees show"},
				},
				Notes: []diag.Note{{Span: saw.Span, Message: "the shop says so here"}},
				Fixes: []diag.Fix{{Title: "shoot the mitres, or plane the meeting ends of two glued halves together"}},
			})
		}
	},
}
