package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var drawerTooLarge = &Rule{
	Name: "drawer-too-large", Group: Hygiene, Severity: diag.Error,
	Summary: "a drawer's stated size is more than its opening",
	Doc: `A box that is larger than its opening was measured before the opening was changed, or against the outside of the case. It
does not go in at all; how much smaller than its opening a box must be is another question, which slides and runners answer.

Leave "wide", "high", "long" and "deep" out where they follow from the opening and the slide; or change the opening. An applied
inset front stands in the opening too, and counts; a front that laps over the case does not.`,
	Sources: `Arithmetic.`,
	Sound: `A box a little smaller than its opening all round; a drawer as deep as its case, whose front laps over the case; sizes that
are worked out.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
case chest {
  of oak 3/4
  wide 20 1/2 ; high 30 ; deep 18
  across {
    side left
    down {
      drawer upper 6 { of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; long 18 ; corner front dovetail slope 1:7 lap 1/4 }
      open bay
    }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
case chest {
  of oak 3/4
  wide 20 1/2 ; high 30 ; deep 18
  across {
    side left
    down {
      drawer upper 6 { of oak 1/2 ; front oak 3/4 ; fit inset ; reveal 1/16 ; long 17 ; corner front dovetail slope 1:7 lap 1/4 }
      open bay
    }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		var large onePer[drawerAt]
		for d := range plan.AllOf[*plan.Drawer](p) {
			for axis, said := range []plan.Length{d.Wide, d.High, inDepth(d)} {
				opening := d.Cell[axis]
				if !said.Known() || !opening.Sized || !wood.Over(said.Length, opening.Size+p.Tape.Tolerance()) {
					continue
				}
				much := [...]string{"wide", "high", "deep"}[axis]
				less := fmt.Sprintf("make it %s less %s", p.Show(upTo(p, said.Length-opening.Size)), much)
				if plan.Axis(axis) == plan.Behind && d.Slide.Said() {
					less += ", on slides that are as much shorter"
				}
				f := diag.Finding{
					Subject: plan.PathOf(d),
					Span:    standing(d.Name.Span, said.Span),
					Message: fmt.Sprintf("%s is %s %s, but its opening only %s", titled(&d.Item), exact(p, said.Length), much, exact(p, opening.Size)),
					Working: room(p, d, plan.Axis(axis), "opening").Versus(said.Length, "it is").Working(),
					Fixes:   []diag.Fix{{Title: less}},
				}
				large.add(drawerAt{span: f.Span, build: d.In.Build, is: said.Length, wants: opening.Size}, f)
			}
		}
		large.report(pass)
	},
}

// inDepth is how much of a drawer whose depth is stated stands in its opening, and where that is stated.
func inDepth(d *plan.Drawer) plan.Length {
	in := depthInside(d)
	switch {
	case d.Long.Known():
		in.Span = d.Long.Span
	case d.Deep.Known():
		in.Span = d.Deep.Span
	default:
		return plan.Length{}
	}
	return in
}
