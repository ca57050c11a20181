package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	underLess = &Figure{
		Name: "less", Why: "how much narrower than its opening a box is inside on undermount slides, where they do not say", Basis: Published,
		Source: "1 5/8 (41 mm): a maker of drawers takes 5/8 off the opening with sides of 1/2, and 3/8 with sides of 5/8", Dim: lang.Length,
		Length: 13 * wood.Inch / 8, Metric: 41 * wood.Millimetre,
	}
	underPlay = &Figure{
		Name: "play", Why: "how far from that a box may be", Basis: Practice,
		Source: "1/32 (0.8 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: 8 * wood.Millimetre / 10,
	}
)

var underSlideWidth = &Rule{
	Name: "under-slide-width", Group: Drawers, Severity: diag.Error,
	Summary: "a drawer's box is wider or narrower inside than its undermount slides take",
	Doc: `Undermount slides stand below the bottom, between the sides, and their catches meet the box at its front corners. So it is
the inside of the box that counts, whatever the sides measure: with other sides the same slides want another box.

Make the inside as wide as the opening less what the slides want ("less"); the box over all is that and both sides. Leave "wide" out and
it follows. Where the slides do not say what they want, this is a warning.`,
	Sources: `The figures are as they say. The sum is arithmetic.`,
	Sound:   `Boxes with sides of 1/2 and of 5/8 that have the same width inside; a box 1/32 off.`,
	Bad: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; wide 19 1/2`),
	Good: inChest(`slide under { kind undermount ; long 18 ; less 1 5/8 ; high-less 13/16 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide under ; wide 19 3/8`),
	Figures: []*Figure{underLess, underPlay},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			slide, kind := slideOf(d)
			opening := d.Cell[plan.Across]
			if kind != undermount || !d.Wide.Known() || !opening.Sized || !d.Left.Size.Thick.Known() || wood.Over(d.Wide.Length, opening.Size+p.Tape.Tolerance()) {
				continue // wider than the opening is said elsewhere
			}
			subject, side := plan.PathOf(d), d.Left.Size.Thick.Length
			less := slide.Less.Or(pass.Length(underLess, subject))
			inside, needed := d.Wide.Length-2*side, opening.Size-less.Length
			if !less.Known() || !wood.Over((inside-needed).Abs(), pass.Length(underPlay, subject)) {
				continue
			}
			f := diag.Finding{
				Subject: subject,
				Span:    drawerLine(d, d.Wide),
				Message: fmt.Sprintf("the box of %s is %s wide inside, but its slides want %s", titled(&d.Item), exact(p, inside), exact(p, needed)),
				Working: p.Paper().Start(opening.Size, "opening "+subject).Minus(less.Length, "its slides want it less").Equals("inside of the box").
					Plus(side, "left side").Plus(side, "right side").Equals("box over its sides").Versus(d.Wide.Length, "stated").Working(),
				Fixes: []diag.Fix{rewrite(p, d, "wide", boxWide, needed+2*side)},
			}
			usual(&f, slide, "less", slide.Less, "what one maker of drawers takes")
			said.add(drawerAt{f.Span, d.In.Build, inside, needed}, f)
		}
		said.report(pass)
	},
}
