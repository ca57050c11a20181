package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var slideTooLong = &Rule{
	Name: "slide-too-long", Group: Drawers, Severity: diag.Error,
	Summary: "a slide is longer than the side of the drawer that it is fixed to",
	Doc: `A slide that is longer than its drawer stands out behind it, and the hooks or screws at its end find no wood. The front of
the side does not count where it is let into the front: the slide begins behind that.

Take a slide of the next shorter length, or make the drawer deeper.`,
	Sources: `Geometry.`,
	Sound:   `A slide as long as the side of its drawer, and a shorter one.`,
	Bad: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball ; long 16`),
	Good: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball ; long 18`),
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			s, side := d.Slide.To, d.Left.Size.Long
			if s == nil || !s.Long.Known() || !side.Known() || !inDepth(d).Known() {
				continue
			}
			paper := p.Paper().Start(side.Length, "side")
			if d.Inner == nil && d.Box[plan.Behind].Known() && d.Front.Size.Thick.Known() && !frontTooWide(d) {
				if covered := d.Front.Size.Thick.Length - (d.Box[plan.Behind].Length - side.Length); covered > 0 {
					paper.Minus(covered, "of it in the front").Equals("behind the front")
				}
			}
			if !wood.Over(s.Long.Length, paper.Result()+p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    standing(d.Name.Span, d.Slide.Span),
				Message: fmt.Sprintf("slide %s is %s long, but the sides of %s give it %s", quote(d.Slide.Name), p.ShowSaid(s.Long), titled(&d.Item), exact(p, paper.Result())),
				Working: paper.Versus(s.Long.Length, "slide").Working(),
				Notes:   []diag.Note{{Span: s.Long.Span, Message: "the slide says its length here"}},
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("take a slide of %s at most, or make the sides %s longer", exact(p, p.Tape.Floor(paper.Result())), exact(p, s.Long.Length-paper.Result()))}},
			}
			said.add(drawerAt{f.Span, d.In.Build, side.Length, s.Long.Length}, f)
		}
		said.report(pass)
	},
}
