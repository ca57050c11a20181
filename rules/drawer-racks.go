package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	racksWide = &Figure{
		Name: "widest", Why: "how many times as wide as it is deep a drawer on wooden runners is at most", Basis: Practice,
		Source: "twice", Dim: lang.Plain, Number: 2,
	}
	racksAdvice = &Figure{
		Name: "wide", Why: "beyond how many times as wide as it is deep it is worth a word", Basis: Practice,
		Source: "one and a half", Dim: lang.Plain, Number: 1.5,
	}
)

var drawerRacks = &Rule{
	Name: "drawer-racks", Group: Drawers, Severity: diag.Warning,
	Summary: "a drawer on wooden runners is so wide for its depth that it jams askew",
	Doc: `Pulled at one end, a wide and shallow drawer turns in its opening until its corners bite, and then no pull moves it. The
narrower it is for its depth, the longer its sides lead it.

Make two drawers of it, or lead it by one runner in the middle of its bottom; or hang it on slides. From one and a half times as wide as deep it is a
word of advice.`,
	Sources: `Runners and guides: W. Noyes, Handwork in Wood, 1910, Drawers. The figures are common practice, no source.`,
	Sound:   `A drawer just one and a half times as wide as it is deep; a wider one on slides.`,
	Bad: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 9
runner oak ; stop`),
	Good: inChest("", `front oak 3/4 ; corner front dovetail slope 1:7 lap 1/4 ; long 18
runner oak ; stop`),
	Figures: []*Figure{racksWide, racksAdvice},
	Check: func(pass *Pass) {
		p := pass.Plan
		var racks onePer[stacked]
		for d := range plan.AllOf[*plan.Drawer](p) {
			wide, deep := d.Box[plan.Across], d.Box[plan.Behind]
			if !onRunners(d) || !wide.Known() || !deep.Known() || deep.Length <= 0 {
				continue
			}
			subject := plan.PathOf(d)
			times := float64(wide.Length) / float64(deep.Length)
			most, advice := pass.Number(racksWide, subject), pass.Number(racksAdvice, subject)
			if times <= min(most, advice) {
				continue
			}
			f := diag.Finding{
				Subject: subject,
				Span:    d.Name.Span,
				Message: fmt.Sprintf("%s is %s wide and %s deep, %s times as wide as deep: pulled at one end it jams", titled(&d.Item),
					exact(p, wide.Length), exact(p, deep.Length), significant(times, 3)),
				Fixes: []diag.Fix{{Title: "make two drawers of it, lead it by a runner in the middle, or hang it on slides"}},
			}
			if times <= most {
				f.Severity = diag.Advice
			}
			racks.add(stacked{d.Parent, wide.Length, deep.Length}, f)
		}
		racks.report(pass)
	},
}

// stacked are the drawers of one list that are of one size over the sides: one mistake makes them all jam.
type stacked struct {
	in         *plan.List
	wide, deep wood.Length
}
