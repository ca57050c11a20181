package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var halfDrawn = &Rule{
	Name: "half-drawn", Group: Hygiene, Severity: diag.Advice,
	Summary: "a door has hardware and no leaf, or a drawer has parts and no box",
	Doc: `Hinges are checked against the leaf that they carry, a slide against the box that runs on it: as long as nobody says what that
is of, its sizes are missing from the cutting list, and the hardware is not checked.

Say the door's leaf ("leaf leaf-frame", "leaf cherry 3/4") and what a drawer's box is of ("of oak 1/2"). A door or a drawer of which
nothing is said yet is an opening that waits, and is left alone.`,
	Sources: "Common practice, no source.",
	Sound:   `A door and a drawer of which only the place is drawn; a drawer whose sides and back say each what they are of.`,
	Bad: `hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }
wood oak { species "white oak" ; sawn quarter }
case cupboard {
  of oak 3/4
  wide 20 ; high 30 ; deep 12
  across { side left ; door only { hang left ; hinge brass at 4, 24 } ; side right }
}
`,
	Good: `hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 ; opens 180deg }
wood oak { species "white oak" ; sawn quarter }
case cupboard {
  of oak 3/4
  wide 20 ; high 30 ; deep 12
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left ; hinge brass at 4, 24 } ; side right }
}
`,
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			if d.Leaf.Name == "" && len(d.Hinges)+len(d.Latches)+len(d.Handles) > 0 {
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d),
					Span:    d.Name.Span,
					Message: fmt.Sprintf("%s has hardware and no leaf: its size and its hinges are not checked", titled(&d.Item)),
					Fixes:   []diag.Fix{{Title: "say what closes it, such as `leaf leaf-frame` or `leaf cherry 3/4`"}},
				})
			}
		}
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			parts := d.FrontAs != nil || d.BottomAs != nil || len(d.Corners) > 0 || d.Slide.Said()
			if box := d.Of.Material.Said() || d.SideAs != nil && d.SideAs.Of.Material.Said(); parts && !box {
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d),
					Span:    d.Name.Span,
					Message: fmt.Sprintf("%s does not say what its box is of: its sides and its back are not worked out", titled(&d.Item)),
					Fixes:   []diag.Fix{{Title: "say it, with its thickness, such as `of oak 1/2`"}},
				})
			}
		}
	},
}
