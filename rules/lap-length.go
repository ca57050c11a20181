package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// A little is left on a lapped part, and more on a bridled one, and planed off when the glue is dry.
var (
	lapTrim = &Figure{
		Name: "lap-trim", Why: "how much longer a half-lapped part may be at each end", Basis: Practice,
		Source: "left on to be planed flush", Dim: lang.Length, Length: wood.Inch / 16,
	}
	bridleTrim = &Figure{
		Name: "bridle-trim", Why: "how much longer a bridled part may be at each end", Basis: Published,
		Source: "W. Fairham, Woodwork Joints, The Bridle Joint: a quarter inch is left on each end", Dim: lang.Length, Length: wood.Inch / 4,
	}
)

var lapLength = &Rule{
	Name: "lap-length", Group: Lengths, Severity: diag.Error,
	Summary: "a lapped or bridled part does not keep its full outside length",
	Doc: `Parts that lap over one another at a corner run through to the outside: each keeps the full length of the frame.
One that is cut to what shows between the others has nothing to lap with.

The length is what stands between the mates, and the width of the mate at each end that laps. A little may be left on, to
be planed flush when the joint is glued.

Write the full outside length, or leave it out.`,
	Sources: `The sum is arithmetic; laps and bridles: W. Noyes, Handwork in Wood, 1910, joints no. 14 to 16. What may be left on
stands with each figure.`,
	Sound: `A half-lapped frame with 1/16 left on each end, and a bridled one with 1/4.`,
	Bad: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint half-lap
  across {
    stile left 2
    down { rail head 2 cut 16 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint half-lap
  across {
    stile left 2
    down { rail head 2 cut 20 1/8 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{lapTrim, bridleTrim},
	Check: func(pass *Pass) {
		checkLongs(pass, func(_ *plan.Member, kind string) bool { return kind == plan.HalfLap || kind == plan.Bridle },
			"between its mates", func(m *plan.Member, kind string) wood.Length {
				if kind == plan.Bridle {
					return bridleTrim.Length
				}
				return pass.Length(lapTrim, plan.PathOf(m))
			}, neverLoose)
	},
}
