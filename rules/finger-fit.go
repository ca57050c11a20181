package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	fingerTight = &Figure{
		Name: "tight", Why: "how much narrower than its slot a finger is at least", Basis: Practice,
		Source: "0.002 (0.05 mm), which glue needs", Dim: lang.Length, Length: wood.Inch / 500, Metric: 50 * wood.Micrometre,
	}
	fingerLoose = &Figure{
		Name: "loose", Why: "how much narrower than its slot a finger is at most", Basis: Practice,
		Source: "0.006 (0.15 mm), which glue fills", Dim: lang.Length, Length: 6 * wood.Inch / 1000, Metric: 150 * wood.Micrometre,
	}
)

var fingerFit = &Rule{
	Name: "finger-fit", Group: Joints, Severity: diag.Warning,
	Summary: "fingers fit too tightly for glue, or too loosely for it to hold",
	Doc: `A corner of fingers is held by the glue on their sides alone. With no gap the glue is wiped off as the joint goes together, and what
is too tight in each finger adds up until the corner does not close; with more than a hair the glue does not reach across.

Leave 0.002 to 0.006 (0.05 to 0.15 mm) at each finger.`,
	Sources: `The bounds are common practice, no source. That most glues are best in a line of 0.002 to 0.006: a column of a wood scientist
(second-hand).`,
	Sound: `Gaps of just 0.002 and 0.006, and none said.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 12 ; high 6 ; deep 4 7/8
  of oak 1/2
  joint box finger 3/8 gap 1/64
  across { side left ; down { top head ; open ; bottom floor } ; side right }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 12 ; high 6 ; deep 4 7/8
  of oak 1/2
  joint box finger 3/8 gap 0.004
  across { side left ; down { top head ; open ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{fingerTight, fingerLoose},
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range corners(p, plan.BoxJoint) {
			if !c.Gap.Known() {
				continue
			}
			least, most := pass.Length(fingerTight, c.subject), pass.Length(fingerLoose, c.subject)
			f := diag.Finding{Subject: c.subject, Span: c.Gap.Span}
			switch {
			case wood.Under(c.Gap.Length, least):
				f.Message = fmt.Sprintf("fingers with a gap of %s wipe off their glue, and the corner does not close", p.ShowSaid(c.Gap))
			case wood.Over(c.Gap.Length, most):
				f.Message = fmt.Sprintf("fingers with a gap of %s are too loose for glue to hold", p.ShowSaid(c.Gap))
			default:
				continue
			}
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("leave from %s to %s, such as `gap %s`", p.Show(least), p.Show(most), p.Show((least+most)/2))}}
			pass.Report(f)
		}
	},
}
