package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var slideHeight = &Rule{
	Name: "slide-height", Group: Drawers, Severity: diag.Error,
	Summary: "the sides of a drawer are higher than its slides leave room for",
	Doc: `Undermount slides stand below the box and lift it while it goes in: sides that are cut to the opening less a little do not go
in over the slides at all.

Make the sides as high as the opening less what the slides want ("high-less"), or lower. Leave "high" out and it follows. Where the
slides do not say it, this is a warning.`,
	Sources: `13/16 (21 mm) for undermount slides that do not say: a maker of drawers. The sum is arithmetic.`,
	Sound:   `Sides just as high as the slides allow, and lower ones; sides on side-mount slides that are nearly as high as the opening.`,
	Bad: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; high 5 1/2`),
	Good: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; high 5 3/16`),
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			opening := d.Cell[plan.Down]
			less := p.SlideHighLess(d.Slide.To)
			if !less.Known() || !d.High.Known() || !opening.Sized || wood.Over(d.High.Length, opening.Size+p.Tape.Tolerance()) {
				continue // higher than the opening is said elsewhere
			}
			paper := p.Paper().Start(opening.Size, "opening "+plan.PathOf(d)).Minus(less.Length, "its slides want it less").Equals("sides at most")
			most := paper.Result()
			if !wood.Over(d.High.Length, most+p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    drawerLine(d, d.High),
				Message: fmt.Sprintf("the sides of %s are %s high, but its slides leave room for %s", titled(&d.Item), p.ShowSaid(d.High), exact(p, most)),
				Working: paper.Versus(d.High.Length, "stated").Working(),
				Fixes:   []diag.Fix{rewrite(p, d, "high", boxHigh, p.Tape.Floor(most))},
			}
			usual(&f, d.Slide.To, "high-less", d.Slide.To.HighLess, "what one maker of drawers takes")
			said.add(drawerAt{f.Span, d.In.Build, d.High.Length, most}, f)
		}
		said.report(pass)
	},
}
