package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var hingeBound = &Rule{
	Name: "hinge-bound", Group: Doors, Severity: diag.Error,
	Summary: "the gains of a butt hinge do not make the gap that a door has at its hinge edge",
	Doc: `What stands between a door and its stile is what the closed hinge is thick at its knuckle, less what it is let into both. Where
the gains are as deep together as the hinge is thick, nothing is left: the door is hinge-bound, it meets the stile before it is shut, and
springs open or tears its screws out. Gains that are too shallow hold it off, and the other edge is too near.

Let it in so deep that the gap remains: half of what the knuckle is thicker than the gap, in the door and in the case each. Leave "gain"
and "case" away, and that is what the plan says. A bound hinge is packed out with card until it is let in anew. A leaf that laps its case has no
gap there: its hinges may be let in until its back lies on the case, and no deeper.`,
	Sources: `The gains together with the gap are the thickness of the knuckle: W. Noyes, Handwork in Wood, 1910, Hinging. What a bound hinge
does: W. Fairham, Woodwork Joints, the hinged joint.`,
	Sound: `Gains that leave just the gap; all of the hinge let into the door; a hinge of which only one gain is said; all of the hinge
let into the back of a leaf that laps its case.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge thin { kind butt ; high 2 ; wide 1 1/4 ; knuckle 1/8 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 hinge 1/32 ; hang left ; hinge thin ends 3 gain 1/16 case 1/16 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge thin { kind butt ; high 2 ; wide 1 1/4 ; knuckle 1/8 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 hinge 1/32 ; hang left ; hinge thin ends 3 gain 3/64 case 3/64 } ; side right }
}
`,
	Check: func(pass *Pass) {
		for d := range pass.Plan.Leaves() {
			hung, turns := d.Hung()
			gap, bounded := freeGap(d, hung)
			if d.Fit.Kind.Is == "overlay" && !d.Edges[hung].Shared { // its hinges lie between its back and the case
				gap, bounded = 0, true
			}
			for _, use := range d.Hinges {
				if turns && bounded && use.Hinge != nil && use.Hinge.Kind.Is == "butt" && checkGains(pass, d, use, gap) {
					break // of two alike, the first is enough
				}
			}
		}
	},
}

// checkGains holds the gap that the gains of a hinge make against the one that the door has.
func checkGains(pass *Pass, d *plan.Door, use *plan.HardwareUse, gap wood.Length) bool {
	p, h := pass.Plan, use.Hinge
	if !h.Knuckle.Known() || !use.Gain.Known() || !use.CaseIn.Known() {
		return false
	}
	paper := p.Paper().Start(h.Knuckle.Length, "knuckle of "+h.Text).Minus(use.Gain.Length, "let into the door").Minus(use.CaseIn.Length, "let into the case")
	makes := paper.Equals("gap that it makes").Result()
	if agree(p, makes, gap) && makes > 0 || d.Fit.Kind.Is == "overlay" && makes >= 0 {
		return false
	}
	label := "gap at the hinge edge"
	if d.Fit.Kind.Is == "overlay" {
		label = "where its back lies on the case"
	}
	f := diag.Finding{
		Subject: plan.PathOf(d), Span: use.Span,
		Message: fmt.Sprintf("hinge %s makes a gap of %s as it is let in, but %s has %s at its hinge edge", quote(use.Name), p.Show(makes), titled(&d.Item), p.Show(gap)),
		Working: paper.Versus(gap, label).Working(),
	}
	if makes <= 0 {
		f.Message = fmt.Sprintf("%s is hinge-bound: hinge %s is let in %s in all, and is %s thick at its knuckle", titled(&d.Item), quote(use.Name),
			p.Show(use.Gain.Length+use.CaseIn.Length), p.ShowSaid(h.Knuckle))
	}
	if each := (h.Knuckle.Length - gap) / 2; each > 0 {
		f.Fixes = []diag.Fix{{Title: fmt.Sprintf("let it in %s on each side", p.Show(each))}}
	}
	pass.Report(f)
	return true
}
