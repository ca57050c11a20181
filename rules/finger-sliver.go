package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var fingerSliver = &Rule{
	Name: "finger-sliver", Group: Joints, Severity: diag.Warning,
	Summary: "the width of the boards is no whole number of fingers",
	Doc: `Fingers are cut one after another from one edge. Where the board is no whole number of them wide, a sliver is left at
the other edge, which breaks off, or does not meet its fellow on the next corner.

Make the boards as wide as an odd number of fingers, as the finding proposes, and both edges begin alike; or rip the boards to width after
the fingers are cut.`,
	Sources: `Arithmetic.`,
	Sound:   `Boards of just 13 fingers, and of an even number, which has a rule of its own.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 12 ; high 6 ; deep 5
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
			if !ok || agree(p, off, 0) {
				continue
			}
			finger := c.Finger.Length
			whole := c.wide.Length / finger
			pass.Report(diag.Finding{
				Subject: c.subject,
				Span:    c.Finger.Span,
				Message: fmt.Sprintf("fingers %s wide do not divide boards %s wide: %d of them leave a sliver of %s", p.ShowSaid(c.Finger),
					p.Show(c.wide.Length), whole, exact(p, c.wide.Length-whole*finger)),
				Fixes: []diag.Fix{{Title: "make the boards " + oddFingers(p, finger, n) + " wide"}},
			})
		}
	},
}

// fingers is how many fingers come nearest to the width of the boards, and how much wider the
// boards are; ok is false where the plan does not say enough, or there are too many to mean it.
func (c corner) fingers() (n int, off wood.Length, ok bool) {
	const most = 1000
	if !c.Finger.Known() || c.Finger.Length <= 0 || !c.wide.Known() || c.wide.Length <= 0 || c.wide.Length/c.Finger.Length > most {
		return 0, 0, false
	}
	times := (c.wide.Length + c.Finger.Length/2) / c.Finger.Length
	return int(times), c.wide.Length - times*c.Finger.Length, true
}

// oddFingers names the widths, below and above, that are an odd number of fingers: `4 7/8 (13 fingers) or 5 5/8 (15)`.
func oddFingers(p *plan.Plan, finger wood.Length, n int) string {
	below, above := n-1, n+1
	if n%2 != 0 {
		below, above = n, n+2
	}
	at := func(n int) string { return exact(p, wood.Length(n)*finger) }
	if below < 1 {
		return fmt.Sprintf("%s (%d fingers)", at(above), above)
	}
	return fmt.Sprintf("%s (%d fingers) or %s (%d)", at(below), below, at(above), above)
}
