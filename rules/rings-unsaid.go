package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var ringsFrom = &Figure{
	Name: "wide", Why: "from what width on the direction of the rings is worth saying", Basis: Practice,
	Source: "3, below which both directions move about alike", Dim: lang.Length, Length: 3 * wood.Inch, Metric: 75 * wood.Millimetre,
}

var ringsUnsaid = &Rule{
	Name: "rings-unsaid", Group: Movement, Severity: diag.Advice,
	Summary: "wide boards of a wood move as flat-sawn ones, since the plan does not say how they are sawn",
	Doc: `A board sawn flat, its rings along the width, moves about twice as much across its grain as one sawn quarter. Where a plan does not say
which, plancheck takes the greater: every gap comes out on the wide side, and some findings would not stand for quartered boards.

Look at the ends of the boards, and say "sawn flat", "sawn quarter" or "sawn rift" once for the wood. This is said once for each wood of which
something wider than 3 is made, with the figures of the widest.`,
	Sources: movementSource + `
From what width on it is worth saying is common practice, no source.`,
	Sound: `A wood that says how it is sawn, one of which only narrow sticks are made, and one for which the shelf has but one figure.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" }
part slab { of oak ; size 30 x 12 x 3/4 }
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
part slab { of oak ; size 30 x 12 x 3/4 }
`,
	Figures: []*Figure{ringsFrom},
	Check: func(pass *Pass) {
		p := pass.Plan
		widest := widestOf(p)
		for _, m := range p.Materials {
			wide, subject := widest[m], plan.PathOf(m)
			if m.Kind != plan.Solid || m.Sawn.Is != "" || m.Species == nil || !wide.Known() || !wood.Over(wide.Length, pass.Length(ringsFrom, subject)) {
				continue
			}
			flat, change := travel(p, m, wide.Length)
			quarter, ok := m.Species.Moves(wood.Quarter, change.From, change.To)
			if !ok || quarter.Worse || quarter.Change(wide.Length).Abs() >= flat {
				continue
			}
			less := quarter.Change(wide.Length)
			over := fmt.Sprintf("from %s to %s", percent(change.From), percent(change.To))
			pass.Report(diag.Finding{
				Subject: subject, Span: m.Name.Span, Notes: fromMemory(m, change),
				Message: fmt.Sprintf("wood %s does not say how it is sawn: its widest board moves %s if flat, as is taken, and %s if quarter",
					quote(m.Name.Text), exact(p, flat), exact(p, less.Abs())),
				Working: p.Paper().Start(wide.Length, "the widest thing of "+quote(m.Name.Text)).
					Start(flat, fmt.Sprintf("sawn flat, %s: %.3g for each 1%%", over, change.Rate)).
					Start(less.Abs(), fmt.Sprintf("sawn quarter: %.3g for each 1%%", quarter.Rate)).Working(),
				Fixes: []diag.Fix{{Title: "look at the ends of the boards, and write `sawn flat`, `sawn quarter` or `sawn rift`"}},
			})
		}
	},
}
