package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var stayWeak = &Rule{
	Name: "stay-weak", Group: Doors, Severity: diag.Warning,
	Summary: "a lid is heavier than its stays hold",
	Doc: `A lid turns about its hinge with its weight at half of its depth, and most when it lies level. Stays that hold less let it slam: on the
rim of a chest, and on fingers. Lids of toy chests and the like have to follow the safety standard and the law of the place; this
rule does not judge that.

Take stronger stays, or two of them ("stay soft count 2"), or make the lid lighter. The rule asks what turns the lid when it is level; where it opens
only part of that way, as far as it goes. What lies on an open flap is not counted.`,
	Sources: `Statics: the weight times half the depth. What woods and sheets weigh: Wood Handbook, USDA Forest Products Laboratory,
FPL-GTR-190, 2010, chapter 4 and tables 5-3a and 12-1. Glass: EN 572-1, from pages that quote it.`,
	Sound: `A lid that two stays hold together; a flap that opens a little; a stay of which the plan does not say what it holds.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
stay soft { holds 60inlb }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  joint housing deep 1/4
  down { lid flap { hang back ; stay soft } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
stay soft { holds 60inlb }
case chest {
  of oak 3/4
  wide 24 ; high 18 ; deep 18
  joint housing deep 1/4
  down { lid flap { hang back ; stay soft count 2 } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range stayedLids(p) {
			held := 0.0
			for _, use := range s.Stays {
				if use.Stay == nil || !use.Stay.Holds.Known() {
					held = math.Inf(1)
					break
				}
				held += use.Stay.Holds.Value * float64(use.Number())
			}
			weight, known := p.WeightOf(s.Door)
			if s.use != s.Stays[0] || !known || !s.deep.Known() {
				continue
			}
			turns := weight.Kilograms * wood.Gravity * s.deep.Metres() / 2 * s.level90()
			if turns <= held || torque(p, turns) == torque(p, held) {
				continue
			}
			f := diag.Finding{
				Subject: s.path,
				Span:    s.use.Span,
				Message: fmt.Sprintf("%s weighs about %s and turns with %s, and its stays hold %s: it slams", titled(&s.Item), heft(p, weight.Kilograms),
					torque(p, turns), torque(p, held)),
				Working: diag.Working{
					{Value: heft(p, weight.Kilograms), Label: "what the " + s.leaf() + " weighs, with what is screwed to it"},
					{Op: diag.Times, Value: p.Show(s.deep.Length / 2), Label: "half of its depth, " + exact(p, s.deep.Length)},
				},
				Fixes: []diag.Fix{{Title: fmt.Sprintf("take stays that hold %s in all, or a lighter %s", torque(p, turns), s.leaf())}},
			}
			if part := s.level90(); part < 1 {
				f.Working = append(f.Working, diag.Step{Label: fmt.Sprintf("it opens by %s: %.0f%% of what it would be level", degrees(s.OpensTo().Value), 100*part)})
			}
			f.Working = append(f.Working,
				diag.Step{Op: diag.Equals, Value: torque(p, turns), Label: "turns it"},
				diag.Step{Op: diag.Versus, Value: torque(p, held), Label: "held"})
			f.Working = about(f.Working, weight)
			pass.Report(f)
		}
	},
}

// level90 is which part of its weight turns it at most between shut and open: all of it where it lies level.
func (s stayed) level90() float64 {
	if opens := s.OpensTo(); !s.level() && opens.Known() && opens.Value < 90 {
		return math.Sin(max(0, opens.Value) * math.Pi / 180)
	}
	return 1
}
