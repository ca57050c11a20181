package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var frontBeyondBox = &Figure{
	Name: "most", Why: "how much wider than its box a front may be that the sides are dovetailed to", Basis: Practice,
	Source: "1/8 (3 mm), which is planed off", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var frontWiderThanBox = &Rule{
	Name: "front-wider-than-box", Group: Drawers, Severity: diag.Error,
	Summary: "a front is jointed to the ends of its box, but must be wider than the box to fill its opening",
	Doc: `Slides take an inch or so of the width of an opening, and the box is narrower by that. A front that is dovetailed or fingered
to the sides is as wide as the box: the room of the slides stays open at both sides of it, and the slides show.

Say that the front is "applied": the box gets a front of its own, and the one that shows is screwed on before it, as wide as the opening wants.
Or hang the drawer on wooden runners.`,
	Sources: `Geometry.`,
	Sound:   `A dovetailed front on wooden runners; an applied front before a box on slides; a front that is rabbeted, and is wider than its box.`,
	Bad: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4
slide ball`),
	Good: inChest(`slide ball { kind side-mount ; long 18 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball`),
	Figures: []*Figure{frontBeyondBox},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			if !frontTooWide(d) {
				continue
			}
			front, box := d.Front.Size.Long.Length, d.Box[plan.Across].Length
			if !wood.Over(front-box, pass.Length(frontBeyondBox, plan.PathOf(d))) {
				continue
			}
			at := d.Name.Span
			if d.FrontAs != nil {
				at = standing(at, d.FrontAs.Span)
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    at,
				Message: fmt.Sprintf("the front of %s is jointed to a box %s wide, but is %s wide itself: the room of its slides stays open beside it",
					titled(&d.Item), exact(p, box), exact(p, front)),
				Working: p.Paper().Start(front, "front").Minus(box, "box over its sides").Equals("open beside it").Working(),
				Fixes:   []diag.Fix{{Title: "say that the front is `applied`, before a box that has a front of its own"}},
			}
			said.add(drawerAt{f.Span, d.In.Build, front, box}, f)
		}
		said.report(pass)
	},
}

// frontTooWide reports whether a front on slides is jointed to the ends of its box and wider than it.
func frontTooWide(d *plan.Drawer) bool {
	return d.Slide.To != nil && endJointed(d) && wood.Over(d.Front.Size.Long.Length, d.Box[plan.Across].Length)
}

// endJointed reports whether the front that shows is dovetailed or fingered to the sides, so that it is as wide
// as the box, and both widths are known.
func endJointed(d *plan.Drawer) bool {
	if d.Inner != nil || d.Front == nil || d.FrontJoint == nil {
		return false
	}
	kind := d.FrontJoint.Kind.Is
	return (kind == plan.Dovetail || kind == plan.BoxJoint) && d.Front.Size.Long.Known() && d.Box[plan.Across].Known()
}
