package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var pinThin = &Figure{
	Name: "thinnest", Why: "how wide a pin, or the root of a tail, is at its narrowest", Basis: Practice,
	Source: "an eighth (3 mm), the narrowest chisel", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var thinPin = &Rule{
	Name: "thin-pin", Group: Joints, Severity: diag.Warning,
	Summary: "a pin or a tail of a dovetail is so thin that it breaks",
	Doc: `A pin that comes to a point at its narrow side holds little and splits off when the joint is tapped home; and a tail
between too many pins has nothing left at its root, where all the pull is.

Make pins 1/8 (3 mm) wide at their narrow side, which is what "pin" says, and leave as much at the root of each tail: take fewer
pins, narrower ones or a flatter slope. Pins as thin as a saw cut are cut for show; say so with "allow". Where no wood is
left at all, it is an error.`,
	Sources: `The least width is common practice, no source. The root of a tail follows from the board's width, the pins and the slope.`,
	Sound:   `Pins of just 1/8; many pins, between which the tails have just 1/8 at their roots.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 1/2
  joint dovetail slope 1:7 pin 1/16
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
  of oak 1/2
  joint dovetail slope 1:7 pin 1/8
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Figures: []*Figure{pinThin},
	Check: func(pass *Pass) {
		p := pass.Plan
		for c := range corners(p, plan.Dovetail) {
			least := pass.Length(pinThin, c.subject)
			if c.Pin.Known() && wood.Under(c.Pin.Length, least) {
				pass.Report(diag.Finding{
					Subject: c.subject,
					Span:    c.Pin.Span,
					Message: fmt.Sprintf("a pin %s wide at its narrow side breaks off: %s is wanted", p.ShowSaid(c.Pin), p.Show(least)),
					Fixes:   []diag.Fix{{Title: "write `pin " + cutTo(p, c.Pin.Span, least) + "`, or more"}},
				})
				continue
			}
			row, ok := c.tails()
			if !ok || !wood.Under(row.root, least) {
				continue
			}
			f := diag.Finding{Subject: c.subject, Span: c.Pins.Span}
			f.Message = fmt.Sprintf("%d pins leave the tails on a board of %s only %s at their roots: %s is wanted",
				c.Pins.N, p.Show(c.wide.Length), exact(p, row.root), p.Show(least))
			if !wood.Over(row.root, 0) {
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("%d pins leave no wood at the roots of the tails on a board of %s", c.Pins.N, p.Show(c.wide.Length))
			}
			paper := c.working(p)
			if row.sloped {
				flare := (row.tip - row.root) / 2
				paper.Minus(flare, "slope on one side").Minus(flare, "slope on the other").Equals("at the root")
			}
			f.Working = paper.Working()
			f.Fixes = []diag.Fix{{Title: "take fewer or narrower pins, or a flatter slope"}}
			pass.Report(f)
		}
	},
}
