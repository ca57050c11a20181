package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var biscuitTooLong = &Rule{
	Name: "biscuit-too-long", Group: Joints, Severity: diag.Error,
	Summary: "biscuits are longer than the end of the wood is wide",
	Doc: `The cutter plunges in an arc that is longer than the biscuit, and in a narrow rail it comes out at both edges, where a moulding or the
sight line shows it.

Take a smaller biscuit, fewer of them, or a dowel. Common sizes are 15 x 47, 19 x 53 and 23 x 56 mm, all 4 mm thick. The rule looks where no
"at" says where they stand; where it does, "thin-wall" measures what is left at each edge.`,
	Sources: `The sizes: several makers agree. The sum is arithmetic.`,
	Sound:   `A biscuit of 56 mm in a rail of 2 1/2; one of 47 mm in a rail of 2; two of 56 mm in the end of a shelf.`,
	Bad: `biscuit large { long 56mm ; wide 23mm ; thick 4mm }
frame face {
  wide 30 ; high 24 ; thick 3/4
  joint biscuit large count 1
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Good: `biscuit small { long 47mm ; wide 15mm ; thick 4mm }
frame face {
  wide 30 ; high 24 ; thick 3/4
  joint biscuit small count 1
  across { stile left 2 ; down { rail head 2 ; space ; rail foot 2 } ; stile right 2 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.BiscuitJoint) {
			j, wide := t.Joint, t.of.Size.Wide
			of := j.Hardware.To
			if of == nil || !of.Long.Known() || len(j.At) > 0 || !wide.Known() {
				continue
			}
			n := min(max(j.Count.Or(1), 1), 1000)
			all := wood.Length(n) * of.Long.Length
			if !wood.Over(all, wide.Length) {
				continue
			}
			what := "a biscuit " + p.ShowSaid(of.Long) + " long"
			if n > 1 {
				what = fmt.Sprintf("%d biscuits %s long", n, p.ShowSaid(of.Long))
			}
			paper := p.Paper().Start(of.Long.Length, "a biscuit")
			if n > 1 {
				paper.Times(n, "beside one another").Equals("in all")
			}
			pass.Report(diag.Finding{
				Subject: t.subject, Span: fastenerSpan(j),
				Message: fmt.Sprintf("%s will not go into an end %s wide", what, p.Show(wide.Length)),
				Working: paper.Versus(wide.Length, "width of the end").Working(),
				Notes:   []diag.Note{{Span: of.Long.Span, Message: "the biscuit's length"}},
				Fixes:   []diag.Fix{{Title: "take a smaller biscuit, fewer of them, or dowels"}},
			})
		}
	},
}
