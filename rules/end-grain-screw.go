package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var endGrainScrew = &Rule{
	Name: "end-grain-screw", Group: Joints, Severity: diag.Error,
	Summary: "screws in end grain hold a part that is pulled",
	Doc: `A thread in end grain cuts its fibres off short. It holds what rests on it, such as a shelf, but handbooks allow it nothing against
being pulled out: a stretcher or a rail that is screwed through the leg into its end comes loose as soon as the piece is racked.

Take a tenon, dowels, a bolt with a barrel nut, or screws from a pocket, which go into the side grain of the leg. The rule looks at rails, aprons
and stretchers of solid wood; in a case, where a board's end is carried by its sides, it only warns.`,
	Sources: `No withdrawal in end grain: a structural handbook, ch. 6, and an engineering reference; what lag screws keep of it there, about
three quarters, is no measure for wood screws.`,
	Sound: `A stretcher with a bolt and a barrel nut; the rails of a face frame with pocket screws; shelves screwed through their sides; a stretcher
of sheet stock.`,
	Bad: `wood ash { species "white ash" ; sawn flat }
screw no10 { gauge 10 ; long 3 ; head flat }
frame stand {
  of ash
  wide 30 ; high 28 ; thick 1 1/2
  across { leg left 2 ; down { space ; stretcher low 2 { joint screw no10 at 1 pilot 1/8 } ; space 4 } ; leg right 2 }
}
`,
	Good: `wood ash { species "white ash" ; sawn flat }
bolt long { thick 3/8 ; long 4 ; nut 5/8 }
frame stand {
  of ash
  wide 30 ; high 28 ; thick 1 1/2
  across { leg left 2 ; down { space ; stretcher low 2 { joint bolt long at 1 nut-at 1 1/2 deep 2 1/4 } ; space 4 } ; leg right 2 }
}
`,
	Check: func(pass *Pass) {
		for d := range screws(pass.Plan) {
			if !d.endGrain || !pulledStick[d.into.Word] {
				continue
			}
			f := diag.Finding{
				Subject: d.subject, Span: d.span,
				Message: fmt.Sprintf("screws in the end grain of %s hold nothing when it is pulled", titled(&d.into.Item)),
				Fixes:   []diag.Fix{{Title: "use a tenon, dowels, pocket screws, or a bolt with a barrel nut"}},
			}
			if in := d.into.In; in != nil && in.Kind == plan.Case {
				f.Severity = diag.Warning
			}
			pass.Report(f)
		}
	},
}

// pulledStick lists the sticks that hold others together, and are pulled at their ends.
var pulledStick = map[string]bool{"rail": true, "apron": true, "stretcher": true}
