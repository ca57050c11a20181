package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var pressWeak = &Rule{
	Name: "press-weak", Group: Layups, Severity: diag.Warning,
	Summary: "a press does not press a layup hard enough",
	Doc: `Where veneer is not pressed down everywhere, the glue dries in a thick film: it blisters in the middle or lifts at the edges, often months
later. A vacuum bag presses with the weight of the air at most, and with less where its pump or its seam is poor.

Pump the bag further down, press a smaller panel at a time, or add clamps and cauls. The pressure of a bag is its vacuum; that of a screw
press is its force over the panel. A glue that says that it wants less is held to that; one that
wants more under clamps is not, since no bag could give it.`,
	Sources: `1 inch of mercury is 0.4912 psi, 70.73 pounds on a square foot: a table of vacuum. See the figure, which the findings name.`,
	Sound:   `A bag at 21 inches of mercury, which is 10.3 psi; a screw press of enough force; a press of which nothing is said but its size.`,
	Bad: `shop { press 48 x 96 { vacuum 18inHg } }
veneer skin { species "black walnut" ; thick 1/42 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 60 ; wide 20 }
`,
	Good: `shop { press 48 x 96 { vacuum 21inHg } }
veneer skin { species "black walnut" ; thick 1/42 }
sheet fibre { kind mdf ; thick 3/4 }
layup face { ply skin along ; ply fibre ; ply skin along }
part slab { of face ; long 60 ; wide 20 }
`,
	Figures: []*Figure{pressVeneer},
	Check: func(pass *Pass) {
		press := pass.Plan.Shop.Press
		if press == nil || press.Vacuum.Known() == press.Force.Known() {
			return
		}
		worst := make(map[*plan.Material]plan.Workpiece) // the largest of each layup
		var order []*plan.Material
		for w := range intoPress(pass.Plan) {
			before, seen := worst[w.Of]
			if !seen {
				order = append(order, w.Of)
			}
			if !seen || area(w.Size.Long.Length, w.Size.Wide.Length) > area(before.Size.Long.Length, before.Size.Wide.Length) {
				worst[w.Of] = w
			}
		}
		for _, m := range order {
			if checkPress(pass, press, worst[m]) && press.Vacuum.Known() {
				return // it is one pump for all
			}
		}
	},
}

// checkPress reports a press that is too weak for a layup, over the largest thing that is made of
// it, and whether it is.
func checkPress(pass *Pass, press *plan.Press, w plan.Workpiece) (weak bool) {
	p := pass.Plan
	wants, memory := wantedInPress(pass, w.Of, w.Of.Name.Text)
	gives := press.Vacuum.Or(0)
	working := diag.Working{{Value: pressure(p, gives), Label: "the vacuum"}}
	if press.Force.Known() {
		on := area(w.Size.Long.Length, w.Size.Wide.Length)
		if on <= 0 {
			return false
		}
		gives = press.Force.Value / on
		working = diag.Working{
			{Value: force(p, press.Force.Value), Label: "the press"},
			{Label: fmt.Sprintf("over %s, %s x %s", w.Path, exact(p, w.Size.Long.Length), exact(p, w.Size.Wide.Length))},
			{Op: diag.Equals, Value: pressure(p, gives)},
		}
	}
	if gives >= wants {
		return false
	}
	working = append(working, diag.Step{Op: diag.Versus, Value: pressure(p, wants), Label: "wanted"})
	if memory {
		working = append(working, diag.Step{Label: "how hard veneers are pressed is a figure from memory, check it"})
	}
	pass.Report(diag.Finding{
		Subject: w.Of.Name.Text,
		Span:    press.Span,
		Message: fmt.Sprintf("the press gives %s on %s, and layup %s wants %s", pressure(p, gives), w.Path, quote(w.Of.Name.Text), pressure(p, wants)),
		Working: working,
		Notes:   []diag.Note{{Span: w.Of.Name.Span, Message: "the layup stands here"}},
		Fixes:   []diag.Fix{{Title: "draw the bag further down, press less at a time, or add cauls and clamps"}},
	})
	return true
}
