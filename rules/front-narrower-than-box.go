package rules

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var frontWithinBox = &Figure{
	Name: "most", Why: "how much narrower than its box a front may be that the sides are dovetailed to", Basis: Practice,
	Source: "1/8, which is planed off the sides", Dim: lang.Length, Length: wood.Inch / 8,
}

var frontNarrowerThanBox = &Rule{
	Name: "front-narrower-than-box", Group: Drawers, Severity: diag.Warning,
	Summary: "a front is jointed to the ends of its box, and its reveals make it narrower than the box",
	Doc: `A front that is dovetailed or fingered to the sides is as wide as the box over its sides. Where the plan leaves more round the front than
the box has to spare in its opening, both cannot be: the sides would stand out beside their front.

Make the reveals at the sides half of what the box has to spare in all, or the box narrower. A little is planed off when the drawer is
fitted.`,
	Sources: `Geometry. The figure is as it says.`,
	Sound:   `Reveals of 3/32 round the front of a box with 1/16 to spare; an applied front that is much narrower than its box.`,
	Bad: strings.Replace(inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop`), "reveal 1/16", "reveal 3/16", 1),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop`),
	Figures: []*Figure{frontWithinBox},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			if !endJointed(d) || !d.Slide.Said() && !d.Wide.Known() && !onRunners(d) {
				continue
			}
			front, box := d.Front.Size.Long.Length, d.Box[plan.Across].Length
			if !wood.Over(box-front, pass.Length(frontWithinBox, plan.PathOf(d))) {
				continue
			}
			at := d.Name.Span
			if d.Reveal != nil {
				at = standing(at, d.Reveal.Span)
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    at,
				Message: fmt.Sprintf("the front of %s is jointed to a box %s wide, but its reveals leave it %s: the sides stand out beside it",
					titled(&d.Item), exact(p, box), exact(p, front)),
				Working: p.Paper().Start(box, "box over its sides").Minus(front, "front").Equals("the sides stand out").Working(),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("make its reveals at the sides %s, or the box as wide as the front", exact(p, (d.Cell[plan.Across].Size-box)/2))}},
			}
			said.add(drawerAt{f.Span, d.In.Build, front, box}, f)
		}
		said.report(pass)
	},
}
