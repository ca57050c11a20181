package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var drawboreReversed = &Rule{
	Name: "drawbore-reversed", Group: Tenons, Severity: diag.Error,
	Summary: "a drawbored peg pushes its shoulder open",
	Doc: `A drawbored peg draws the shoulder up because its hole in the tenon stands a little nearer to the shoulder than its hole in the
mate. Bored the other way round, every blow on the peg drives the joint apart.

Bore the mate first, put the tenon in, mark the middle of the hole on it with the point of the bit, and bore the tenon a little nearer
to the shoulder than that mark.`,
	Sources: `That the hole in the tenon stands nearer to the shoulder: W. Fairham, Woodwork Joints, The Mortise and Tenon Joint.`,
	Sound:   `A hole in the tenon 1/32 nearer to the shoulder; a peg that does not draw, in a hole bored through both.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/2 peg pin at 1/2 in-tenon 17/32
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/2 peg pin at 1/2 in-tenon 15/32
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
peg pin { thick 1/4 ; long 1 }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			d, ok := t.drawn()
			if !ok || !wood.Under(d.offset, 0) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    d.said.Span,
				Message: fmt.Sprintf("the peg's hole in the tenon is %s farther from the shoulder than that in the mate: the peg drives the joint open", p.Show(-d.offset)),
				Working: d.working(p).Working(),
				Fixes:   []diag.Fix{{Title: "bore the tenon nearer to the shoulder than its mate, such as `draw " + cutTo(p, d.said.Span, pass.Length(drawLeast, t.subject)) + "`"}},
			})
		}
	},
}
