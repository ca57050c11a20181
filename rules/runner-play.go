package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	runnerLeast = &Figure{
		Name: "least", Why: "how much narrower than its opening a drawer on wooden runners is at least", Basis: Practice,
		Source: "1/32 (0.8 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: 8 * wood.Millimetre / 10,
	}
	runnerMost = &Figure{
		Name: "most", Why: "how much narrower than its opening a drawer on wooden runners is at most", Basis: Practice,
		Source: "1/16 (1.6 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 16 * wood.Millimetre / 10,
	}
)

var runnerPlay = &Rule{
	Name: "runner-play", Group: Drawers, Severity: diag.Warning,
	Summary: "a drawer on wooden runners has too much play in its width, or too little",
	Doc: `On wood the sides of the opening, or guides, lead the drawer. With much play it turns a little as it is pulled at one side,
and jams like a crooked book on a full shelf; with none it has to be planed to go in, and sticks when the air is humid.

Make the box 1/32 to 1/16 narrower than its opening, in all; leave "wide" out and say the "gap". The front may be wider.`,
	Sources: `Slightly narrower than its opening, the front rebated wider: W. Noyes, Handwork in Wood, 1910, Drawers. The figures are common
practice, no source.`,
	Sound: `A drawer with 1/16 to spare in its width, and one with 1/32; a drawer that does not say what it runs on.`,
	Bad: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop ; wide 19 7/8`),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop ; wide 19 15/16`),
	Figures: []*Figure{runnerLeast, runnerMost},
	Check: func(pass *Pass) {
		p := pass.Plan
		var said onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			opening, box := d.Cell[plan.Across], d.Box[plan.Across]
			if !onRunners(d) || !opening.Sized || !box.Known() || wood.Over(box.Length, opening.Size+p.Tape.Tolerance()) {
				continue // wider than the opening is said elsewhere
			}
			subject, at, setting, field := plan.PathOf(d), d.Gap, "gap", func(d *plan.Drawer) plan.Length { return d.Gap }
			if d.Wide.Known() {
				at, setting, field = d.Wide, "wide", boxWide
			}
			least, most := pass.Length(runnerLeast, subject), pass.Length(runnerMost, subject)
			play := opening.Size - box.Length
			wants := most
			f := diag.Finding{Subject: subject, Span: drawerLine(d, at)}
			switch {
			case wood.Over(play, most+p.Tape.Tolerance()):
				f.Message = fmt.Sprintf("%s has %s of play in its width: it turns, and jams", titled(&d.Item), exact(p, play))
			case wood.Under(play, least-p.Tape.Tolerance()):
				wants = least
				f.Message = fmt.Sprintf("%s has only %s of play in its width: it sticks", titled(&d.Item), exact(p, max(play, 0)))
			default:
				continue
			}
			f.Working = p.Paper().Start(opening.Size, "opening "+subject).Minus(box.Length, "box over its sides").Equals("play").
				Versus(least, "wanted at least").Versus(most, "wanted at most").Working()
			if setting == "wide" {
				wants = opening.Size - wants
			}
			f.Fixes = []diag.Fix{rewrite(p, d, setting, field, wants)}
			said.add(drawerAt{f.Span, d.In.Build, play, wants}, f)
		}
		said.report(pass)
	},
}
