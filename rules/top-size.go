package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var topSize = &Rule{
	Name: "top-size", Group: Lengths, Severity: diag.Error,
	Summary: "a top is not as large as what it lies on and what it stands over",
	Doc: `A top that is drawn by itself, and said to stand so far over its base, is stated twice: once as a size, once as the base
and the overhang. Where the two differ, one of them is cut wrong.

Write the size that the working ends with, leave the size out, or mend the overhang.`,
	Sources: `The sum is arithmetic.`,
	Sound:   `A top that is as long as its base and twice the overhang, and as wide as the base with a front overhang alone.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
assembly base { wide 37 ; high 28 ; deep 20 ; across { leg left 2 ; space ; leg right 2 } }
top slab { of oak ; thick 1 ; long 41 ; over base ends 3 front 1 back 1 }
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
assembly base { wide 37 ; high 28 ; deep 20 ; across { leg left 2 ; space ; leg right 2 } }
top slab { of oak ; thick 1 ; long 43 ; over base ends 3 front 1 back 1 }
`,
	Check: func(pass *Pass) {
		for _, m := range pass.Plan.Tops {
			if m.Over == nil || m.Over.Of.To == nil {
				continue
			}
			checkTop(pass, m, m.Long, m.Worked.Long, plan.Across)
			checkTop(pass, m, m.Wide, m.Worked.Wide, plan.Behind)
		}
	},
}

func checkTop(pass *Pass, m *plan.Member, said, worked plan.Length, axis plan.Axis) {
	p, o := pass.Plan, m.Over
	if said.How != plan.Written || !worked.Known() || agree(p, said.Length, worked.Length) {
		return
	}
	near, far, labels, what := o.Ends, o.Ends, [2]string{"over the left end", "over the right end"}, "long"
	if axis == plan.Behind {
		near, far, labels, what = o.Front, o.Back, [2]string{"over the front", "over the back"}, "wide"
	}
	paper := p.Paper().Start(o.Of.To.Outside[axis].Length, measure(o.Of.To, axis))
	for i, over := range []wood.Length{near.Or(0).Length, far.Or(0).Length} {
		if over != 0 {
			paper.Plus(over, labels[i])
		}
	}
	write := cutTo(p, said.Span, worked.Length)
	fixes := []diag.Fix{{
		Title: "write `" + what + " " + write + "`, or leave `" + what + "` out",
		Edits: []diag.Edit{{Span: said.Span, Text: write}},
	}}
	if m.Made.On {
		fixes = stillBoard(p, said.Length-worked.Length, [...]string{"length", "", "width"}[axis], what, said.Span, worked.Length, true, axis == plan.Behind && solid(m.Of.Material.To))
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(m),
		Span:    standing(m.Span, said.Span),
		Message: fmt.Sprintf("%s is %s %s but must be %s", titled(&m.Item), p.ShowSaid(said), what, exact(p, worked.Length)),
		Working: paper.Equals("needed").Versus(said.Length, "stated").Working(),
		Fixes:   fixes,
	})
}
