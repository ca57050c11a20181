package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var fingersEven = &Rule{
	Name: "fingers-even", Group: Joints, Severity: diag.Advice,
	Summary: "an even number of fingers begins with a finger and ends with a slot",
	Doc: `With an odd number both edges of a board are alike: it may be turned over, and the upper edge of the box looks like the
lower. With an even number each board has a finger at one edge and a slot at the other, and a board that is turned over does not
fit.

It holds as well, and some like it, since all four boards are then cut alike. Mark the lower edges, or choose an odd number.`,
	Sources: `Common practice, no source.`,
	Sound:   `13 fingers, and fingers that leave a sliver, which has a rule of its own.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 12 ; high 6 ; deep 5 1/4
  of oak 1/2
  joint box finger 3/8
  across { side left ; down { top head ; open ; bottom floor } ; side right }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 12 ; high 6 ; deep 4 7/8
  of oak 1/2
  joint box finger 3/8
  across { side left ; down { top head ; open ; bottom floor } ; side right }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range corners(p, plan.BoxJoint) {
			n, off, ok := c.fingers()
			if !ok || n%2 != 0 || !agree(p, off, 0) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: c.subject,
				Span:    c.Finger.Span,
				Message: fmt.Sprintf("%d fingers on boards %s wide: the upper edge begins with a finger and the lower with a slot", n, p.Show(c.wide.Length)),
				Fixes:   []diag.Fix{{Title: "make the boards " + oddFingers(p, c.Finger.Length, n) + " wide, or mark their lower edges"}},
			})
		}
	},
}
