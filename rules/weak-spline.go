package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var weakSpline = &Rule{
	Name: "weak-spline", Group: Joints, Severity: diag.Error,
	Summary: "the grain of a spline or a loose tenon runs along the joint",
	Doc: `A strip of wood splits along its grain with two fingers. Where its grain runs along the joint, that is just where the joint opens, and
the spline holds nothing but its own place.

Cut it so that its grain runs through the joint, from one part into the other: across a strip that is ripped from a board's end, or a
piece of plywood. "grain along" says that, and it is what plancheck takes where nothing is said.`,
	Sources: `Common practice, no source.`,
	Sound:   `Splines and loose tenons whose grain runs through the joint, said or unsaid.`,
	Bad: `frame picture {
  wide 18 ; high 24 ; thick 3/4
  joint mitre spline thick 1/8 grain across
  across {
    stile left 2
    down { rail head 2 ; space ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `frame picture {
  wide 18 ; high 24 ; thick 3/4
  joint mitre spline thick 1/8 grain along
  across {
    stile left 2
    down { rail head 2 ; space ; rail foot 2 }
    stile right 2
  }
}
`,
	Check: func(pass *Pass) {
		for e := range ends(pass.Plan) {
			grain, what := e.Joint.Grain, "loose tenon"
			switch {
			case e.Joint.Spline != nil:
				grain, what = e.Joint.Spline.Grain, "spline"
			case e.Joint.Kind.Is == plan.Tongue:
				what = "loose tongue"
			}
			if grain.Is != "across" {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(e.Of),
				Span:    grain.Span,
				Message: "the grain of the " + what + " runs along the joint: it splits there",
				Fixes: []diag.Fix{{
					Title: "write `grain along`: it then runs through the joint",
					Edits: []diag.Edit{{Span: grain.Span, Text: "along"}},
				}},
			})
		}
	},
}
