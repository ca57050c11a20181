package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var noStop = &Rule{
	Name: "no-stop", Group: Drawers, Severity: diag.Advice,
	Summary: "nothing stops an inset drawer on wooden runners",
	Doc: `A drawer on wood runs on until something stops it: pushed home it goes in behind the face of the case, or its back beats against
that of the case and knocks it loose.

Let a front lap over the case, or glue blocks to the rail below it or behind it against which it stops, and say "stop". Slides have stops of
their own.`,
	Sources: `Common practice, no source.`,
	Sound:   `A drawer with a stop; one whose front laps over the case; one on slides.`,
	Bad: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak`),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop`),
	Check: func(pass *Pass) {
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			if d.Stop.On || d.Fit.Kind.Is == "overlay" || !onRunners(d) || !d.Front.Size.Long.Known() {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    standing(d.Name.Span, d.Runner.Span),
				Message: fmt.Sprintf("nothing stops %s: it runs in behind the face of its case", titled(&d.Item)),
				Fixes:   []diag.Fix{{Title: "glue in blocks against which it stops, and write `stop`"}},
			}
			said.add(drawerAt{span: f.Span, build: d.In.Build}, f)
		}
		said.report(pass)
	},
}
