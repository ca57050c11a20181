package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	tailWidest = &Figure{
		Name: "widest", Why: "how wide a tail is at most", Basis: Published,
		Source: "W. Noyes, Handwork in Wood, 1910, joints no. 48 and 49: 1 3/4", Dim: lang.Length, Length: 7 * wood.Inch / 4, Metric: 45 * wood.Millimetre,
	}
	tailTimes = &Figure{
		Name: "times", Why: "how many times as wide as the space for a pin a tail is at most", Basis: Published,
		Source: "W. Noyes, Handwork in Wood, 1910, joints no. 48 and 49: four times", Dim: lang.Plain, Number: 4,
	}
)

var wideTail = &Rule{
	Name: "wide-tail", Group: Joints, Severity: diag.Warning,
	Summary: "the tails of a dovetail are so wide that few pins hold the board",
	Doc: `A board that cups between two pins opens the joint there, and what holds it is the glued sides of the pins: wide tails
have few of them. The wider the board, the more pins it wants.

Keep tails to 1 3/4 (45 mm): say more "pins". That they are at most four times as wide as the space for a pin is advice: fine drawers
have narrower pins. The space is measured where it is widest.`,
	Sources: `See the figures. How wide a tail is follows from the width of the board, the pins and their narrow side, with half pins at
both edges.`,
	Sound: `Tails of just 1 3/4; a wide board of which the number of pins is not said.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 3/4
  joint dovetail slope 1:7 pins 5 pin 3/8
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 3/4
  joint dovetail slope 1:7 pins 7 pin 3/8
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Figures: []*Figure{tailWidest, tailTimes},
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range corners(p, plan.Dovetail) {
			row, ok := c.tails()
			if !ok {
				continue
			}
			widest := pass.Length(tailWidest, c.subject)
			f := diag.Finding{Subject: c.subject, Span: c.Pins.Span}
			paper := c.working(p)
			switch {
			case wood.Over(row.tip, widest):
				f.Message = fmt.Sprintf("%d pins leave tails %s wide on a board of %s: keep them to %s", c.Pins.N, exact(p, row.tip), p.Show(c.wide.Length), p.Show(widest))
				paper.Versus(widest, "at most")
				if n := pinsFor(c, widest); n > 0 {
					f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `pins %d`, or more", n)}}
				}
			case row.sloped && wood.Over(row.tip, fraction(row.space, tailTimes.Number)):
				f.Severity = diag.Advice
				f.Message = fmt.Sprintf("tails %s wide are more than four times as wide as the spaces for their pins, which are %s at their widest", exact(p, row.tip), exact(p, row.space))
			default:
				continue
			}
			f.Working = paper.Working()
			pass.Report(f)
		}
	},
}

// pinsFor is how many pins keep the tails of a corner to a width; 0 where it would take very many.
func pinsFor(c corner, widest wood.Length) int {
	const most = 200
	for n := c.Pins.N + 1; n <= most; n++ {
		if !wood.Over(c.wide.Length/wood.Length(n-1)-c.Pin.Length, widest) {
			return n
		}
	}
	return 0
}
