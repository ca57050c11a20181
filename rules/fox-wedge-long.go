package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var foxWedgeLong = &Rule{
	Name: "fox-wedge-long", Group: Tenons, Severity: diag.Error,
	Summary: "a fox wedge is longer than the mortise has room for, so that its joint cannot close",
	Doc: `A fox wedge stands in the end of a blind tenon and is driven by the floor of the mortise as the joint is clamped. When it
reaches the end of its saw cut before the shoulders close, nothing moves any more: the joint stays open, and as it is wedged it does not
come apart again.

Make the wedge shorter than the mortise is deep, less what the saw cut stops short of the shoulder; try the wedges in scrap first.
The rule speaks where the plan says how long they are: "wedged fox stop 1/4 wedge-long 3/4".`,
	Sources: `Geometry. Fox wedging: W. Noyes, Handwork in Wood, 1910, joints no. 34 to 36.`,
	Sound:   `A fox wedge just as long as there is room for; a long wedge in a through tenon, whose end is sawn off.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 mortise deep 1 5/16 { wedged fox stop 1/4 wedge-long 1 1/4 }
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 mortise deep 1 5/16 { wedged fox stop 1/4 wedge-long 3/4 }
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			w, deep := t.Joint.Wedged, t.Joint.Mortise.Deep
			if w == nil || !w.Fox.On || t.Joint.Through.On || !w.Long.Known() || !deep.Known() {
				continue
			}
			paper := p.Paper().Start(deep.Length, "depth of the mortise")
			if w.Stop.Known() {
				paper.Minus(w.Stop.Length, "the saw cut stops short of the shoulder").Equals("room for the wedge")
			}
			room := paper.Result()
			if !wood.Over(w.Long.Length, room) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    w.Long.Span,
				Message: fmt.Sprintf("a fox wedge %s long has room for %s: the shoulders stay open by the rest", p.ShowSaid(w.Long), p.Show(room)),
				Working: paper.Versus(w.Long.Length, "stated").Working(),
				Fixes:   []diag.Fix{{Title: "make the wedges shorter than " + p.Show(room)}},
			})
		}
	},
}
