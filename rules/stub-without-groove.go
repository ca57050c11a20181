package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var stubWithoutGroove = &Rule{
	Name: "stub-without-groove", Group: Tenons, Severity: diag.Error,
	Summary: "a stub tenon has no panel groove to go into",
	Doc: `A stub is the short tenon that goes into the groove in which the panel stands, and is as long as that is deep. Where no
panel beside the rail has a groove, nobody knows how long the rail is.

Say the panel's groove: "panel field { groove 1/4 x 3/8 }"; or give the rail a tenon of its own.`,
	Sources: "The language itself.",
	Sound:   `Stubs beside a panel with a groove, beside a row of panels, and where the groove is said once for each panel.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 { joint stub } ; space ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 { joint stub } ; panel field { groove 1/4 x 3/8 } ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Check: func(pass *Pass) {
		for e := range ends(pass.Plan) {
			if m, ok := e.Of.(*plan.Member); ok && e.Joint.Kind.Is == plan.Stub && e.Adds.How == plan.Unknown {
				pass.Report(diag.Finding{
					Subject: plan.PathOf(m),
					Span:    m.Name.Span,
					Message: fmt.Sprintf("%s has a stub tenon, and no panel beside it has a groove that it could go into", titled(&m.Item)),
					Notes:   []diag.Note{{Span: e.Joint.Span, Message: "the joint is said here"}},
					Fixes:   []diag.Fix{{Title: "say the panel's groove, such as `groove 1/4 x 3/8`, or give it a tenon"}},
				})
			}
		}
	},
}
