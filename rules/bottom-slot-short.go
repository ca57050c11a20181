package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var bottomScrew = &Figure{
	Name: "screw", Why: "how thick the screw is that holds a bottom to the back", Basis: Practice,
	Source: "a #8, which is 0.164 (4.2 mm)", Dim: lang.Length, Length: wood.ScrewDiameter(8),
}

var bottomSlotShort = &Rule{
	Name: "bottom-slot-short", Group: Drawers, Severity: diag.Error,
	Summary: "the slot at the back of a solid bottom is shorter than the bottom moves",
	Doc: `A bottom of solid wood is held at the front and moves at the back. The screw there stands in a slot, and where the slot ends
the bottom is held at both ends: it splits along its middle in winter, or pushes the front off in summer.

The slot is as long as the bottom moves between the driest and the most humid of the plan's climate, the screw and 1/16. Put the screw where
it has as much of that before it as the season leaves to come. Let the bottom run out past the back a little ("past-back"). The
rule speaks where a slot is said.`,
	Sources: `Fixed at the front only: W. Noyes, Handwork in Wood, 1910, Drawers; W. Fairham, Woodwork Joints, fig. 368. The diameter of a screw is 0.060 and
0.013 in for each number, as screw tables have it. The room in a slot is common practice, no source.
` + movementSource,
	Sound: `A slot as long as the movement, the screw and 1/16; a bottom of plywood in a short slot.`,
	Bad: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom oak 3/8 groove 1/4 x 1/4 up 1/2 slot 1/4`),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
bottom oak 3/8 groove 1/4 x 1/4 up 1/2 slot 7/16`),
	Figures: []*Figure{bottomScrew, slotSpare},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			if d.Bottom == nil || !d.Bottom.Size.Wide.Known() || !d.BottomAs.Slot.Known() || d.BottomAs.Grain.Is == "behind" || backGrooved(d) {
				continue
			}
			of, wide, subject := d.Bottom.Of, d.Bottom.Size.Wide.Length, plan.PathOf(d)
			humid, dry, ok := p.Seasons(of)
			if !ok {
				continue
			}
			paper := growth(p.Paper().Start(wide, "bottom, front to back"), wide, of, humid)
			if dry.Change(wide) != 0 {
				moves(paper.Start(wide, "bottom, front to back"), wide, of, dry)
				paper.Equals("at its driest")
			}
			travels := humid.Change(wide) - dry.Change(wide)
			screw, spare := pass.Length(bottomScrew, subject), pass.Length(slotSpare, subject)
			needed := travels + screw + spare
			slot := d.BottomAs.Slot
			if !wood.Under(slot.Length, needed-p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: subject, Span: slot.Span, Notes: fromMemory(of, humid),
				Message: fmt.Sprintf("the bottom of %s moves %s at its back, and wants a slot of %s: it has one of %s", titled(&d.Item), exact(p, travels), exact(p, needed), p.ShowSaid(slot)),
				Working: paper.Start(travels, "it moves in all").Plus(screw, "screw").Plus(spare, "to spare").
					Equals("slot").Versus(slot.Length, "stated").Working(),
				Fixes: []diag.Fix{rewrite(p, d, "slot", bottomSlot, upTo(p, needed))},
			}
			if !wood.Under(slot.Length, travels+screw) {
				f.Severity = diag.Warning
			}
			said.add(drawerAt{f.Span, d.In.Build, slot.Length, needed}, f)
		}
		said.report(pass)
	},
}
