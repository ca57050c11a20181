package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var wedgeSplits = &Rule{
	Name: "wedge-splits", Group: Tenons, Severity: diag.Error,
	Summary: "wedges spread a tenon across the grain of its mate",
	Doc: `A driven wedge pushes with the force of the hammer, many times over. Along the grain it presses on the end grain of the
mortise, which takes it; across the grain it opens the stile or the slab as a froe opens a billet.

Saw the kerfs so that the wedges spread the tenon along the grain of its mate: square to that grain, where the tenon is wide enough,
and at a slant where it is not.`,
	Sources: `Wedged tenons: W. Noyes, Handwork in Wood, 1910, joints no. 34 to 36. The direction is common practice, no source.`,
	Sound:   `Wedges that spread along the grain, said or unsaid; wedges across a side of plywood, which does not split so.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 spread across
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 spread along
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			w := t.Joint.Wedged
			if w == nil || w.Spread.Is != "across" || len(t.Mates) == 0 {
				continue
			}
			mate := t.Mates[0]
			if of := mate.Of.Material.To; of != nil && of.Kind != plan.Solid {
				continue
			}
			f := diag.Finding{
				Subject: t.subject,
				Span:    w.Spread.Span,
				Message: "wedges that spread a tenon across the grain of its mate split it",
				Notes:   []diag.Note{{Span: mate.Span, Message: "they would split " + titled(&mate.Item)}},
				Fixes: []diag.Fix{{
					Title: "turn the saw cuts so that they spread along the mate's grain: write `spread along`",
					Edits: []diag.Edit{{Span: w.Spread.Span, Text: "along"}},
				}},
			}
			if mate.Size.Thick.Known() {
				f.Message = fmt.Sprintf("wedges that spread a tenon across the grain split a mate %s thick", p.Show(mate.Size.Thick.Length))
			}
			pass.Report(f)
		}
	},
}
