package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slotPlay = &Figure{
	Name: "play", Why: "how much wider than what goes into it a slot is at most", Basis: Practice,
	Source: "0.020 (0.5 mm); up to 0.010 (0.25 mm) is a good fit", Dim: lang.Length, Length: wood.Inch / 50, Metric: 500 * wood.Micrometre,
}

var slotLoose = &Rule{
	Name: "slot-loose", Group: Joints, Severity: diag.Warning,
	Summary: "a groove or a dado is wider than what goes into it",
	Doc: `A sheet that is called 3/4 is thinner than that. In a dado of 3/4 it rattles: the glue does not reach across, the shelf
tips, and a dark line shows above it.

Measure the sheet and say how thick it is ("actual"). Then cut the slot to that, with a cutter that suits it or in two passes. Up to 0.010
(0.25 mm) of play is a good fit, and 0.020 (0.5 mm) is the most.`,
	Sources: `The play is common practice, no source; why sheets are thinner than they are called: see sheet-unmeasured.`,
	Sound:   `A dado 0.020 wider than its sheet; a dado of which no width is said; a solid panel that is worked down to its groove.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 23/32 ; actual 0.703 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 3/4
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 23/32 ; actual 0.703 ; emission "TSCA Title VI" }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of ply
  joint dado deep 1/4 wide 23/32
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{slotPlay},
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range slots(p) {
			if s.called() || !wood.Over(s.play(), pass.Length(slotPlay, s.subject)) {
				continue
			}
			f := s.finding(p, fmt.Sprintf("a %s %s wide is loose on a %s %s thick: it rattles", s.cut, p.ShowSaid(s.slot), s.what, p.ShowSaid(s.thick)))
			f.Working = p.Paper().Start(s.slot.Length, s.cut).Minus(s.thick.Length, s.what).Equals("play").
				Versus(pass.Length(slotPlay, s.subject), "at most").Working()
			pass.Report(f)
		}
	},
}
