package rules

import (
	"fmt"

	"plancheck/internal/diag"
)

var unusedName = &Rule{
	Name: "unused-name", Group: Hygiene, Severity: diag.Warning,
	Summary: "nothing uses what a line declares",
	Doc: `A wood, a hinge or a size that nothing names is left over from an earlier drawing; or it is meant to be used, and what
should name it names another. Then the doors hang on the wrong hinges, and the list of wood to buy is wrong.

Name it where it belongs, or take the line out. A part that nothing names is no such thing: it stands on the cutting list by
itself, as loose shelves do. What comes in from another file by "use" is a shelf to choose from and
never counts, and nor does anything in a file that draws nothing. While some of the plan cannot be read nothing is said.`,
	Sources: "Common practice, no source.",
	Sound: `A wood that only an edging names, a size that only a check names, hardware of a shelf that is taken in, loose shelves that
stand nowhere in a layout.`,
	Bad: `wood maple { species "sugar maple" ; sawn flat }
wood oak   { species "white oak" ; sawn quarter }
frame lattice {
  of   oak
  wide 18 ; high 24 ; thick 3/4
  across { stile left 2 ; space ; stile right 2 }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
frame lattice {
  of   oak
  wide 18 ; high 24 ; thick 3/4
  across { stile left 2 ; space ; stile right 2 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		if pass.Blind || !filesThatDraw(p)[p.File] {
			return
		}
		for d := range supplies(p) {
			if !d.name.Used && d.what != "part" && d.name.Span.File == p.File {
				pass.Report(diag.Finding{
					Subject: d.name.Text,
					Span:    d.name.Span,
					Message: fmt.Sprintf("nothing uses %s", d),
					Fixes:   []diag.Fix{{Title: "name it where it belongs, or take the line out"}},
				})
			}
		}
	},
}
