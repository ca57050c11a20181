package rules

import (
	"fmt"

	"plancheck/internal/diag"
)

var cutterShort = &Rule{
	Name: "cutter-short", Group: Tenons, Severity: diag.Error,
	Summary: "no cutter that goes into a mortise reaches its floor",
	Doc: `A mortise can be no deeper than the bit is long below its shank. Pulling a bit out of the collet to gain the rest is how bits are
bent and hands are hurt: the maker of the machine says how much of the shank the collet must hold.

Make the joint shorter, go in from both faces where it goes through, finish the floor with a chisel, or say the longer cutter. The rule
speaks where the plan says how deep its cutters reach; a through mortise is taken to be cut from both faces.`,
	Sources: `Geometry.`,
	Sound:   `A mortise just as deep as a cutter reaches; a through one twice as deep; a narrower cutter that reaches deeper.`,
	Bad: `shop { cutter 3/8 reach 1 }
frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 3/8 long 1 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `shop { cutter 3/8 reach 1 1/2 }
frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 3/8 long 1 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			for _, s := range t.mortises() {
				cutter := tooShort(p, s)
				if cutter == nil {
					continue
				}
				f := diag.Finding{
					Subject: t.subject,
					Span:    s.at,
					Message: fmt.Sprintf("a mortise %s deep is deeper than a cutter of %s reaches: %s", p.Show(s.deep), p.ShowSaid(cutter.Wide), p.ShowSaid(cutter.Reach)),
					Notes:   []diag.Note{{Span: cutter.Span, Message: "the cutter that reaches deepest"}},
					Fixes:   []diag.Fix{{Title: "make the joint shorter, chop its floor with a chisel, or say the longer cutter"}},
				}
				if s.both {
					f.Message = fmt.Sprintf("a mortise through %s, cut from both faces, is deeper at each than a cutter of %s reaches: %s",
						p.Show(2*s.deep), p.ShowSaid(cutter.Wide), p.ShowSaid(cutter.Reach))
				}
				pass.Report(f)
			}
		}
	},
}
