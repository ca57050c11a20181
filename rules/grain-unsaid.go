package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var grainUnsaid = &Rule{
	Name: "grain-unsaid", Group: Hygiene, Severity: diag.Advice,
	Summary: "a solid part is wider than it is long, and does not say that it is meant",
	Doc: `A size is written with the grain first. A part of 9 x 14 has its grain along the 9, is weak along the 14, and moves in
the direction that nobody expects; as often as not the two figures were swapped.

Swap them: "size 14 x 9 x 3/4". Where the grain does run the short way, say "grain" in the part, and the advice is gone. A part
that is glued up of several boards says so with "boards", and is taken as meant.`,
	Sources: "Common practice, no source.",
	Sound:   `A square part, one glued up of boards, a short wide one of sheet stock, and one that says its grain.`,
	Bad: `wood cherry { species "black cherry" ; sawn flat }
part lid { of cherry ; size 9 x 14 x 3/4 }
`,
	Good: `wood cherry { species "black cherry" ; sawn flat }
part lid { of cherry ; size 14 x 9 x 3/4 }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for _, part := range p.Parts {
			long, wide := part.Size.Long, part.Size.Wide
			m := part.Of.Material.To
			if part.Name.Text == "" || m == nil || m.Kind != plan.Solid || part.GrainSaid.Is != "" || part.Boards.Or(1) > 1 ||
				!long.Known() || !wide.Known() || !wood.Over(wide.Length, long.Length) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(part),
				Span:    part.Name.Span,
				Message: fmt.Sprintf("part %s is %s across the grain and only %s along it: is that meant?", quote(part.Name.Text),
					p.ShowSaid(wide), p.ShowSaid(long)),
			}
			fix := diag.Fix{Title: "swap the two, since the length with the grain comes first"}
			if long.How == plan.Written && wide.How == plan.Written {
				fix.Edits = []diag.Edit{{Span: long.Span, Text: wide.Span.Text()}, {Span: wide.Span, Text: long.Span.Text()}}
			}
			f.Fixes = []diag.Fix{fix, {Title: "say `grain across` where it is meant"}}
			pass.Report(f)
		}
	},
}
