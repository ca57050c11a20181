package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var bottomBurstsBox = &Rule{
	Name: "bottom-bursts-box", Group: Drawers, Severity: diag.Error,
	Summary: "a bottom of solid wood swells in grooves at both of its edges",
	Doc: `A bottom of solid wood grows across its grain by more than any groove has to spare. With its grain from front to back it
pushes the sides apart until the corners open; with its grain across, but in a groove of the back too, it pushes the back out.

Run its grain across, from side to side, let it into the front and the sides, and let it pass under the back, to which it is screwed in a slot. Or
make it of a sheet.`,
	Sources: `Grain from side to side, and fixed at the front only: W. Noyes, Handwork in Wood, 1910, Drawers; W. Fairham, Woodwork Joints, fig. 368.
` + movementSource,
	Sound: `A solid bottom with its grain across, under the back; a bottom of plywood in grooves all round.`,
	Bad: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom oak 3/8 groove 1/4 x 1/4 up 1/2 grain behind`),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom oak 3/8 groove 1/4 x 1/4 up 1/2 grain across`),
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			if d.Bottom == nil || !d.Bottom.Size.Wide.Known() || !d.BottomAs.Groove.Deep.Known() {
				continue
			}
			lengthways := d.BottomAs.Grain.Is == "behind"
			of, wide, gap := d.Bottom.Of, d.Bottom.Size.Wide.Length, p.DrawerBottomGap()
			humid, _, moves := p.Seasons(of)
			if !moves || !lengthways && !backGrooved(d) {
				continue
			}
			grows := humid.Change(wide)
			if !wood.Over(grows, gap) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d), Span: d.BottomAs.Span, Notes: fromMemory(of, humid),
				Working: growth(p.Paper().Start(wide, "width of the bottom"), wide, of, humid).
					Start(gap, "to spare in its grooves").Minus(grows, "it grows").Equals("left").Working(),
			}
			if lengthways {
				f.Span = d.BottomAs.Grain.Span
				f.Message = fmt.Sprintf("the bottom of %s grows %s between its sides, and has %s to spare: it pushes them apart", titled(&d.Item), exact(p, grows), p.Show(gap))
				f.Fixes = []diag.Fix{{Title: "run its grain from side to side: write `grain across`"}}
			} else {
				f.Message = fmt.Sprintf("the bottom of %s grows %s between its front and its back, and has %s to spare: it pushes the back out", titled(&d.Item), exact(p, grows), p.Show(gap))
				f.Fixes = []diag.Fix{{Title: "let it pass under the back: write `back under`"}}
			}
			said.add(drawerAt{f.Span, d.In.Build, wide, gap}, f)
		}
		said.report(pass)
	},
}
