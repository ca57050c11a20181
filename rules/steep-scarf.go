package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

var (
	scarfSteepest = &Figure{
		Name: "steepest", Why: "the steepest slope of a scarf, as one in so many", Basis: Practice,
		Source: "1 in 8", Dim: lang.Plain, Number: 8,
	}
	scarfArea = &Figure{
		Name: "area", Why: "how many times the section of the wood the glued face of a scarf is at least", Basis: Published,
		Source: "Wood Handbook, FPL-GTR-190, ch. 10: ten times", Dim: lang.Plain, Number: 10,
	}
)

var steepScarf = &Rule{
	Name: "steep-scarf", Group: Joints, Severity: diag.Error,
	Summary: "a scarf is too steep to hold",
	Doc: `The steeper a scarf, the more of its glued face is end grain, which glue does not hold. The joint breaks where the lamp or the beam
hangs on it.

Cut it 1 in 8 at the steepest; 1 in 12 is the strongest. From 1 in 8 to 1 in 10 its face is less than ten times the section of the wood, and
the rule says so as advice.`,
	Sources: `Wood Handbook, FPL-GTR-190, ch. 10: a face of ten times the section; 1 in 12 is the strongest.`,
	Sound:   `Scarfs of 1 in 10 and of 1 in 12; one of which no slope is said.`,
	Bad: `frame gate {
  wide 90 ; high 30 ; thick 1 1/2
  across { rail one 45 { grain across ; joint scarf slope 1:6 } ; rail two 45 { grain across } }
}
`,
	Good: `frame gate {
  wide 90 ; high 30 ; thick 1 1/2
  across { rail one 45 { grain across ; joint scarf slope 1:12 } ; rail two 45 { grain across } }
}
`,
	Figures: []*Figure{scarfSteepest, scarfArea},
	Check: func(pass *Pass) {
		for t := range joinedBy(pass.Plan, plan.Scarf) {
			slope := t.Joint.Slope
			if !slope.Known() || slope.Value <= 0 {
				continue
			}
			n := 1 / slope.Value
			f := diag.Finding{Subject: t.subject, Span: slope.Span, Fixes: []diag.Fix{{Title: "write `slope 1:12`"}}}
			steepest := pass.Number(scarfSteepest, t.subject)
			switch {
			case n < steepest*(1-slopeSlack):
				f.Message = fmt.Sprintf("a scarf of %s is too steep to hold: %s at the steepest, and 1 in 12 is the strongest", oneIn(n), oneIn(steepest))
			case n < pass.Number(scarfArea, t.subject)*(1-slopeSlack):
				f.Severity = diag.Advice
				f.Message = fmt.Sprintf("a scarf of %s has a glued face of about %s times its section: ten times is wanted", oneIn(n), number(n))
			default:
				continue
			}
			pass.Report(f)
		}
	},
}
