package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var hookTooLong = &Rule{
	Name: "hook-too-long", Group: Joints, Severity: diag.Error,
	Summary: "a hook is longer than the end that it is let into is wide",
	Doc: `The plate of a bed hook is let into the end of its rail, over most of the rail's width. One that is as long as the rail is
wide leaves no wood above and below it, and its screws stand at the very edge.

Take a shorter hook, or a wider rail.`,
	Sources: `Arithmetic.`,
	Sound:   `A hook of 5 in a rail of 6; two of 2 in one of 5.`,
	Bad: `hook plate { long 5 }
frame side {
  wide 75 ; high 20 ; thick 2
  across { post head 2 ; down { space 6 ; rail low 4 { thick 1 ; joint hook plate } ; space } ; post foot 2 }
}
`,
	Good: `hook plate { long 5 }
frame side {
  wide 75 ; high 20 ; thick 2
  across { post head 2 ; down { space 6 ; rail low 6 { thick 1 ; joint hook plate } ; space } ; post foot 2 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Hook) {
			j, wide := t.Joint, t.of.Size.Wide
			hook := j.Hardware.To
			if hook == nil || !hook.Long.Known() || !wide.Known() {
				continue
			}
			n := min(max(j.Count.Or(1), 1), 1000)
			paper := p.Paper().Start(hook.Long.Length, "a hook")
			if n > 1 {
				paper.Times(n, "one above the other").Equals("in all")
			}
			if wood.Under(paper.Result(), wide.Length) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject, Span: fastenerSpan(j),
				Message: fmt.Sprintf("%s %s long will not go into an end %s wide", counted(n, "hook"), p.ShowSaid(hook.Long), p.Show(wide.Length)),
				Working: paper.Versus(wide.Length, "width of the end").Working(),
				Notes:   screwNotes(hook),
			})
		}
	},
}
