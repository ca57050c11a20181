package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var mitreLength = &Rule{
	Name: "mitre-length", Group: Lengths, Severity: diag.Error,
	Summary: "a mitred part is not cut to its long point",
	Doc: `A mitred part is measured at its long point. A cutting list that gives the sight size, or the rebate's, makes
a frame that is small by the width of its moulding on every side, and nothing can be added to it.

The length is the sight size and the width of the mate at each end. Glass or a panel is cut to the sight size and what lies
in the rebate at each side, less its gap.

Write the length at the long point, or leave it out.`,
	Sources: `Geometry: at a mitre between square corners the two faces meet from the inner to the outer corner, so each end
adds the whole width of its mate.`,
	Sound: `A picture frame whose four parts are cut to their long points, and whose rails are wider than its stiles.`,
	Bad: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8
  across {
    stile left 2
    down { rail head 2 cut 12 ; space sight ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `frame picture {
  wide 14 ; high 18 ; thick 3/4
  joint mitre spline thick 1/8
  across {
    stile left 2
    down { rail head 2 cut 14 ; space sight ; rail foot 2 }
    stile right 2
  }
}
`,
	Check: func(pass *Pass) {
		checkLongs(pass, func(_ *plan.Member, kind string) bool { return kind == plan.Mitre },
			"sight size", noTrim, neverLoose)
	},
}
