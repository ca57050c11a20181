package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var barrelEnd = &Figure{
	Name: "ends", Why: "how many times its diameter the middle of a barrel hinge stays from the ends of a door", Basis: Memory,
	Source: "twice: use the maker's sheet", Dim: lang.Plain, Number: 2,
}

var barrelNearEnd = &Rule{
	Name: "barrel-near-end", Group: Doors, Severity: diag.Warning,
	Summary: "a barrel hinge is bored so near to the end of a door that the end breaks out",
	Doc: `A barrel hinge is let into a round hole in the edge, and holds there by spreading. Near the end of the door only short grain stands beside it, which splits
off as the hinge is spread, or when the door is pulled.

Move it away from the end: its middle twice the diameter of the hole or more.`,
	Sources: `Twice the diameter: from memory, check it against the sheet of the hinge.`,
	Sound:   `A barrel just so far from the end; one in a door of sheet stock that stands farther in.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge barrel { kind barrel ; bore 10mm ; deep 13mm }
case cupboard {
  wide 14 ; high 24 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 3/32 ; hang left ; hinge barrel at 1/2, 21 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge barrel { kind barrel ; bore 10mm ; deep 13mm }
case cupboard {
  wide 14 ; high 24 ; deep 12
  of oak 3/4
  across { side left ; door only { leaf oak 3/4 ; fit inset ; reveal 3/32 ; hang left ; hinge barrel at 3, 21 } ; side right }
}
`,
	Figures: []*Figure{barrelEnd},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			if hung, turns := d.Hung(); turns {
				checkBarrels(pass, d, hung)
			}
		}
	},
}

// checkBarrels holds the barrel hinges of a door against the ends of the edge on which it turns. Those that leave next to
// nothing are said as thin walls.
func checkBarrels(pass *Pass, d *plan.Door, hung plan.Side) {
	p, size := pass.Plan, d.Size[plan.Down-hung.Axis()]
	for _, use := range d.Hinges {
		h := use.Hinge
		if h == nil || h.Kind.Is != "barrel" || !h.Bore.Known() || !size.Known() {
			continue
		}
		wants := fraction(h.Bore.Length, pass.Number(barrelEnd, plan.PathOf(d)))
		for _, e := range d.Along(use, hung) {
			near := min(e.From, size.Length-e.From)
			if !e.Known() || !wood.Under(near, wants) || wood.Under(near-h.Bore.Length/2, barrelWall.in(p)) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(d), Span: use.Span,
				Message: fmt.Sprintf("hinge %s stands %s from the end of %s, and wants %s: the end breaks out", quote(use.Name), p.Show(near), called(&d.Item), p.Show(wants)),
				Working: p.Paper().Start(h.Bore.Length, "diameter of its hole").Times(int(pass.Number(barrelEnd, plan.PathOf(d))), "from the end").Equals("wanted").Versus(near, "from the end to its middle").Working(),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("set its middle %s from the end", p.Show(upTo(p, wants)))}},
			})
			return
		}
	}
}
