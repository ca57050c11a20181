package rules

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var climateUnsaid = &Rule{
	Name: "climate-unsaid", Group: Hygiene, Severity: diag.Advice,
	Summary: "what moves is worked out for an air that the plan does not state",
	Doc: `How wide a solid panel may be in its grooves depends on how moist the wood is on the day it is cut, and how dry and how
humid the room gets. Where a plan does not say, plancheck takes published averages of woodwork indoors: 8 % at work, 6 % at the driest,
11 % at the most humid. A heated house in a cold winter is drier, a house by the sea more humid.

Measure the wood with a meter and the air with a hygrometer, and say so once: "climate { shop 66F 45% ; dry 68F 25% ; humid 77F 62% }". Where
nobody has measured the room, "house" works the driest and the most humid air out of the monthly averages outside that a weather service prints.
This is said where a size in the plan has been worked out from these averages, and once.`,
	Sources: `Averages of interior woodwork: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, figure 13-1; 8, 6 and 11 % are as
a trade page reports it, second-hand.`,
	Sound: `A plan of sheet stock, a solid panel with a stated gap, and one in a plan that states its climate: nothing rests on the
averages.`,
	Bad: `wood cherry { species "black cherry" ; sawn flat }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  across {
    stile left 2
    down { rail head 2 ; panel field { of cherry 1/2 ; groove 1/4 x 3/8 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  across {
    stile left 2
    down { rail head 2 ; panel field { of cherry 1/2 ; groove 1/4 x 3/8 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for panel := range plan.AllOf[*plan.Panel](p) {
			if panel.GapUsed.Across.How != plan.Derived || panel.Of.Material.To == nil {
				continue // it is stated, or a sheet's
			}
			var taken []string
			for _, air := range []struct {
				name string
				plan.Air
				measured bool
			}{
				{"at work", p.Climate.Shop, panel.Of.Material.To.At.Known()},
				{"at the driest", p.Climate.Dry, false},
				{"at the most humid", p.Climate.Humid, false},
			} {
				if air.Moisture.How == plan.Default && !air.measured {
					taken = append(taken, fmt.Sprintf("%g%% %s", air.Moisture.Value, air.name))
				}
			}
			if len(taken) == 0 {
				continue
			}
			pass.Report(diag.Finding{
				Span:    panel.Name.Span,
				Message: fmt.Sprintf("the gap round %s is worked out for wood of %s, since the plan states no other climate", titled(&panel.Item), strings.Join(taken, ", ")),
				Fixes:   []diag.Fix{{Title: "write `climate { shop 8% ; dry 6% ; humid 11% }` with the figures of this shop and this house"}},
			})
			return
		}
	},
}
