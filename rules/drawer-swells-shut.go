package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var drawerSwellsShut = &Rule{
	Name: "drawer-swells-shut", Group: Drawers, Severity: diag.Error,
	Summary: "the sides of a drawer swell in height until it does not open",
	Doc: `Sides of solid wood stand on edge, and all their movement is in their height. A drawer that is fitted close in a dry
workshop cannot be opened in August, and what is in it cannot be taken out to plane it.

Make the sides as much lower than the opening as they grow from the day they are worked to the most humid that the plan's climate
knows, and 1/32 more. Where less than that is left, it is a warning, if the plan states how humid it gets. How the front of the drawer moves is
judged by itself.`,
	Sources: movementSource + `
What must be left is common practice, no source.`,
	Sound: `Sides of maple 5 high with 3/32 of room where 1/16 would leave too little; sides of plywood, close under the top.`,
	Bad: inChest(`wood maple { species "sugar maple" ; sawn flat }`, `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
side maple 1/2 ; runner oak ; stop ; high 5 15/16`),
	Good: inChest(`wood maple { species "sugar maple" ; sawn flat }`, `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
side maple 1/2 ; runner oak ; stop ; high 5 7/8`),
	Figures: []*Figure{bindSpare},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			opening, high := d.Cell[plan.Down], d.Box[plan.Down]
			of := d.Left.Of
			humid, _, moves := p.Seasons(of)
			if !moves || !opening.Sized || !high.Known() || wood.Over(high.Length, opening.Size+p.Tape.Tolerance()) {
				continue // higher than the opening is said elsewhere
			}
			subject := plan.PathOf(d)
			room, grows, spare := opening.Size-high.Length, humid.Change(high.Length), pass.Length(bindSpare, subject)
			if room > grows && p.Climate.Humid.Moisture.How == plan.Default {
				spare = 0 // an average does not judge what is nearly too little
			}
			if grows <= 0 || !wood.Under(room-grows, spare) {
				continue
			}
			most := opening.Size - pass.Length(bindSpare, subject) // that they come to
			f := diag.Finding{
				Subject: subject, Span: drawerLine(d, d.High), Notes: fromMemory(of, humid),
				Message: fmt.Sprintf("the sides of %s grow %s in height and have %s of room: the drawer swells shut", titled(&d.Item), exact(p, grows), exact(p, room)),
				Working: growth(p.Paper().Start(high.Length, "height of the sides"), high.Length, of, humid).
					Start(opening.Size, "opening "+subject).Minus(high.Length, "height of the sides").Minus(grows, "they grow").Equals("left").
					Versus(spare, "wanted at least").Working(),
				Fixes: []diag.Fix{rewrite(p, d, "high", boxHigh, p.Tape.Floor(most-humid.Change(most)))},
			}
			if room > grows {
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("the sides of %s grow %s in height and have %s of room: less than %s is left", titled(&d.Item), exact(p, grows), exact(p, room), p.Show(spare))
			}
			said.add(drawerAt{f.Span, d.In.Build, high.Length, opening.Size}, f)
		}
		said.report(pass)
	},
}

// growth adds to a working what a size grows to at its most humid.
func growth(paper *plan.Paper, size wood.Length, of *plan.Material, humid wood.Movement) *plan.Paper {
	moves(paper, size, of, humid)
	return paper.Equals("at its most humid")
}
