package rules

import (
	"fmt"

	"plancheck/internal/diag"
)

var noCutter = &Rule{
	Name: "no-cutter", Group: Tenons, Severity: diag.Error,
	Summary: "a mortise is narrower than every cutter and chisel of the shop",
	Doc: `A mortise is as wide as the chisel or the bit that is in the drawer. One that is narrower than all of them cannot be cut, and is
found out when the tenons have been.

Make the tenon and its mortise as wide as a cutter that is there, or say the one that is missing: "cutter 5/16 reach 2". A wider mortise is cut
in two passes, and is not a fault. The rule speaks where the plan says which cutters there are.`,
	Sources: `Geometry.`,
	Sound:   `Mortises as wide as a cutter, and wider; one of 5/16 where there is a cutter of 8 mm; a shop that says nothing of cutters.`,
	Bad: `shop { cutter 3/8 reach 2 ; cutter 1/2 reach 2 }
frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 5/16 long 1 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `shop { cutter 3/8 reach 2 ; cutter 1/2 reach 2 }
frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 3/8 long 1 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			wide := t.slotWide()
			if !wide.Known() {
				continue
			}
			if fit, stated := cuttersFor(p, wide.Length); !stated || len(fit) > 0 {
				continue
			}
			narrowest := p.Shop.Cutters[0]
			for _, c := range p.Shop.Cutters {
				if c.Wide.Length < narrowest.Wide.Length {
					narrowest = c
				}
			}
			at := wide.Span
			if !at.Known() {
				at = t.at(t.Joint.Thick)
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    at,
				Message: fmt.Sprintf("no cutter of the shop cuts a mortise of %s: the narrowest is %s", p.Show(wide.Length), p.ShowSaid(narrowest.Wide)),
				Notes:   []diag.Note{{Span: narrowest.Span, Message: "the narrowest cutter"}},
				Fixes:   []diag.Fix{{Title: "make tenon and mortise as wide as a cutter that is there, or say the one that is missing"}},
			})
		}
	},
}
