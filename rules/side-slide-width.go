package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	slideRoom = &Figure{
		Name: "room", Why: "how much room a side-mount slide takes at each side, where it does not say", Basis: SecondHand,
		Source: "1/2, as trade pages have it; its maker's sheet wins", Dim: lang.Length, Length: wood.Inch / 2,
	}
	slidePlay = &Figure{
		Name: "play", Why: "how much narrower than its place between side-mount slides a box may be", Basis: SecondHand,
		Source: "1/32 (0.8 mm): trade pages; one maker takes 1 1/16 off the opening for slides of 1/2", Dim: lang.Length, Length: wood.Inch / 32, Metric: 8 * wood.Millimetre / 10,
	}
)

var sideSlideWidth = &Rule{
	Name: "side-slide-width", Group: Drawers, Severity: diag.Error,
	Summary: "a drawer's box is wider or narrower than its side-mount slides take",
	Doc: `Slides at the sides fill what is left between the box and its opening, and they give nothing: a box that is 1/16 too wide
pinches the balls and runs hard, one that is as much too narrow lets the two halves of the slide part, and the drawer drops out.

Make the box as wide as its opening less the room of both slides, as their maker's sheet says it ("room"), and up to 1/32 narrower.
Leave "wide" out and it follows. A box that is too narrow is a warning: it can be packed out behind the slides. So is one whose slides
do not say what they want.`,
	Sources: `The figures are as they say; no standard was seen. The sum is arithmetic.`,
	Sound:   `A box as wide as its opening less the room of both slides, and one 1/32 narrower; one on slides that want more room than usual.`,
	Bad: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball ; wide 19 1/4`),
	Good: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball ; wide 19`),
	Figures: []*Figure{slideRoom, slidePlay},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			slide, kind := slideOf(d)
			opening := d.Cell[plan.Across]
			if kind != sideMount || !d.Wide.Known() || !opening.Sized || wood.Over(d.Wide.Length, opening.Size+p.Tape.Tolerance()) {
				continue // wider than the opening is said elsewhere
			}
			subject := plan.PathOf(d)
			wants := slide.Room.Or(pass.Length(slideRoom, subject))
			if !wants.Known() {
				continue
			}
			room := wants.Length
			paper := p.Paper().Start(opening.Size, "opening "+subject).
				Minus(room, "room for the slide, left").Minus(room, "room for the slide, right").Equals("box over its sides")
			box := paper.Result()
			f := diag.Finding{
				Subject: subject,
				Span:    drawerLine(d, d.Wide),
				Working: paper.Versus(d.Wide.Length, "stated").Working(),
				Fixes:   []diag.Fix{rewrite(p, d, "wide", boxWide, box)},
			}
			switch {
			case wood.Over(d.Wide.Length, box+p.Tape.Tolerance()):
				f.Message = fmt.Sprintf("the box of %s is %s wide, but only %s fits between its slides: it binds", titled(&d.Item), p.ShowSaid(d.Wide), exact(p, box))
			case wood.Under(d.Wide.Length, box-pass.Length(slidePlay, subject)):
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("the box of %s is %s wide, and its slides are %s apart: they may part, or must be packed out", titled(&d.Item), p.ShowSaid(d.Wide), exact(p, box))
			default:
				continue
			}
			usual(&f, slide, "room", slide.Room, "what is usual")
			said.add(drawerAt{f.Span, d.In.Build, d.Wide.Length, box}, f)
		}
		said.report(pass)
	},
}
