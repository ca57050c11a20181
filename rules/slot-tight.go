package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slotPress = &Figure{
	Name: "press", Why: "how much narrower than what goes into it a slot may be", Basis: Practice,
	Source: "0.002 (0.05 mm), which wood gives and a caliper hardly reads", Dim: lang.Length, Length: wood.Inch / 500, Metric: 50 * wood.Micrometre,
}

var slotTight = &Rule{
	Name: "slot-tight", Group: Joints, Severity: diag.Error,
	Summary: "a groove or a dado is narrower than what goes into it",
	Doc: `A sheet does not go into a dado that is narrower than itself: it is planed at its end, which shows its plies, or hammered in
dry, and stands there without glue.

Measure the sheet ("actual"), and cut the slot to that. A little play, up to 0.010 (0.25 mm), leaves room for glue.`,
	Sources: `Geometry.`,
	Sound:   `A dado just as wide as its sheet; one narrower than the sheet is called, but as wide as it is.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 25/32 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 3/4
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 25/32 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 25/32
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{slotPress},
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range slots(p) {
			if s.called() || !wood.Under(s.play(), -pass.Length(slotPress, s.subject)) {
				continue
			}
			f := s.finding(p, fmt.Sprintf("a %s %s wide does not take the %s: that is %s thick", s.cut, p.ShowSaid(s.slot), s.what, p.ShowSaid(s.thick)))
			f.Working = p.Paper().Start(s.thick.Length, s.what).Versus(s.slot.Length, s.cut).Working()
			pass.Report(f)
		}
	},
}
