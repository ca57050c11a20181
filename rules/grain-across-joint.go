package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var grainAcrossJoint = &Rule{
	Name: "grain-across-joint", Group: Tenons, Severity: diag.Error,
	Summary: "the grain of a loose tenon, a tongue or a spline does not run through its joint",
	Doc: `Wood is strong along its grain and snaps across it. A loose tenon, a loose tongue or a spline whose grain runs
along the line of the joint breaks there at the first knock, however well it is glued.

Cut the strip so that its grain runs from one part into the other: short lengths off the end of a wide board. A strip of plywood, which
has grain both ways, is "grain along" too.`,
	Sources: `That the grain of a loose piece crosses the joint is common practice, no source.`,
	Sound:   `Loose tenons and splines whose grain runs through, said or unsaid.`,
	Bad: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8 grain across
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Good: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8 grain along
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Check: func(pass *Pass) {
		for e := range ends(pass.Plan) {
			what, grain := e.Joint.Kind.Is, e.Joint.Grain
			if what == plan.LooseTenon {
				what = "loose tenon"
			}
			if s := e.Joint.Spline; s != nil {
				what, grain = "spline", s.Grain
			}
			if grain.Is != "across" {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(e.Of),
				Span:    grain.Span,
				Message: "a " + what + " whose grain runs along the joint snaps there",
				Fixes: []diag.Fix{{
					Title: "cut it with its grain through the joint: write `grain along`",
					Edits: []diag.Edit{{Span: grain.Span, Text: "along"}},
				}},
			})
		}
	},
}
