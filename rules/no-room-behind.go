package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var roomBehind = &Figure{
	Name: "room", Why: "how much room is left behind a drawer at least", Basis: Practice,
	Source: "1/4 (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
}

var noRoomBehind = &Rule{
	Name: "no-room-behind", Group: Drawers, Severity: diag.Error,
	Summary: "a drawer is as deep as its opening, or deeper",
	Doc: `A drawer that meets the back of its case before its front is home stands out at the front, and its slides or its
stops never come into play. A back bows, a bottom of solid wood grows out behind, and a case is rarely just as deep as it was drawn.

Leave 1/4 (6 mm) behind the drawer, a bottom that runs out past its back counted in. Less is a warning, where a back stands there; less than a
bottom of solid wood grows until it is the most humid is an error. How deep the opening
is follows from the case, less its back and what stands before the drawer. A front that laps over the case takes nothing of it.`,
	Sources: `The figure is common practice, no source. The sum is arithmetic.
` + movementSource,
	Sound: `A drawer with just 1/4 behind it; one as deep as a case that is open behind, whose front laps over it.`,
	Bad: inChest(`slide ball { kind side-mount ; long 22 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball`),
	Good: inChest(`slide ball { kind side-mount ; long 20 ; room 1/2 }`, `front oak 3/4 applied ; corner front dovetail slope 1:7
slide ball`),
	Figures: []*Figure{roomBehind},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			opening, in := d.Cell[plan.Behind], depthInside(d)
			if !opening.Sized || !in.Known() || inDepth(d).Known() && wood.Over(in.Length, opening.Size+p.Tape.Tolerance()) {
				continue // a stated depth that is more than the opening is said elsewhere
			}
			past := bottomOf(d).PastBack.Or(0).Length
			left, least := opening.Size-in.Length-past, pass.Length(roomBehind, plan.PathOf(d))
			grows, label := bottomGrows(p, d), "wanted at least"
			if !wood.Under(left, max(least-p.Tape.Tolerance(), grows)) || left >= 0 && plan.Neighbour(d, plan.Back) == nil {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(d),
				Span:    drawerLine(d, d.Long),
				Message: fmt.Sprintf("%s stands out %s: it is %s deep in an opening of %s", titled(&d.Item), exact(p, -left), exact(p, in.Length+past), exact(p, opening.Size)),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("make its sides %s shorter", exact(p, upTo(p, least-left)))}},
			}
			if d.Long.How == plan.Unknown && d.Deep.How != plan.Unknown {
				f.Span = drawerLine(d, d.Deep)
			}
			switch {
			case wood.Under(left, -p.Tape.Tolerance()):
			case wood.Under(left, grows):
				least, label = grows, "its bottom grows"
				f.Message = fmt.Sprintf("the bottom of %s grows %s out behind, and there is %s: it pushes the drawer out", titled(&d.Item), exact(p, grows), exact(p, max(left, 0)))
				f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make the drawer %s shorter, or its bottom of a sheet", exact(p, upTo(p, grows-left)))}}
			default:
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("%s has %s of room behind it: %s is wanted", titled(&d.Item), exact(p, max(left, 0)), p.Show(least))
			}
			paper := p.Paper().Start(opening.Size, "depth of opening "+plan.PathOf(d)).Minus(in.Length, "drawer in it")
			if past > 0 {
				paper.Minus(past, "its bottom past its back")
			}
			f.Working = paper.Equals("left behind it").Versus(least, label).Working()
			said.add(drawerAt{f.Span, d.In.Build, in.Length, opening.Size}, f)
		}
		said.report(pass)
	},
}

// bottomGrows is how far a bottom of solid wood that passes under the back grows out behind it.
func bottomGrows(p *plan.Plan, d *plan.Drawer) wood.Length {
	if d.Bottom == nil || d.BottomAs.Grain.Is == "behind" || backGrooved(d) || !d.Bottom.Size.Wide.Known() {
		return 0
	}
	humid, _, ok := p.Seasons(d.Bottom.Of)
	if !ok {
		return 0
	}
	return max(humid.Change(d.Bottom.Size.Wide.Length), 0)
}
