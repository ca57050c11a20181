package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var panelGlued = &Rule{
	Name: "panel-glued", Group: Movement, Severity: diag.Error,
	Summary: "a solid panel is glued at its edges",
	Doc: `A panel of solid wood that is glued along both edges cannot shrink: it splits down its middle in the first dry winter, or
pulls the frame apart.

Let it float: keep glue out of the grooves, and finish the panel before it goes in. One spot of glue, or a pin, in the middle
of its ends keeps it centred: "glue centre". A sheet, which hardly moves, may be glued all round.`,
	Sources: `That the panel is kept free, and the corners of the grooves soaped so that glue does not hold it: W. Noyes, Handwork in Wood, 1910,
joint no. 42.`,
	Sound: `A panel that floats, one that is glued at its centre, and a sheet that is glued all round.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 16 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; glue all } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 16 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; glue centre } ; rail foot 2 }
    stile right 2
  }
}
`,
	Check: func(pass *Pass) {
		for n := range plan.AllOf[*plan.Panel](pass.Plan) {
			if !gluedFast(n) {
				continue
			}
			where := "at its edges"
			if n.GlueAt.Is == "all" {
				where = "all round"
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(n), Span: n.GlueAt.Span,
				Message: fmt.Sprintf("%s is of solid wood and glued %s: it splits when it shrinks", titled(&n.Item), where),
				Notes:   []diag.Note{{Span: n.Of.Material.To.Name.Span, Message: "this is solid wood"}},
				Fixes:   []diag.Fix{{Title: "write `float` in place of it, or `glue centre` for one spot in the middle"}},
			})
		}
	},
}
