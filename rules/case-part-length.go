package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	shelfPlay = &Figure{
		Name: "play", Why: "how much shorter than its place a shelf may be that no joint holds", Basis: Practice,
		Source: "so that it can be lifted in and out", Dim: lang.Length, Length: wood.Inch / 4,
	}
	cornerTrim = &Figure{
		Name: "corner-trim", Why: "how much longer a board may be at each end that is dovetailed or fingered through", Basis: Practice,
		Source: "left on to be planed flush", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
	}
)

var casePartLength = &Rule{
	Name: "case-part-length", Group: Lengths, Severity: diag.Error,
	Summary: "a board of a case is cut to a length that its place and its joints do not give",
	Doc: `A shelf that is cut to the clear width inside the case drops out of its dadoes, and a divider that is cut to
the clear height stands short of its housings. A board that is too long keeps the sides from closing on their glue.

The length is what is clear between the parts that the board meets, and what each end is let in: the depth of a housing
or a dado, the rabbet into the thickness, the thickness of the mate where it is dovetailed or fingered through; there a little more may be left on, to be planed flush.

Write the length that the working ends with, or leave it out: the cutting list prints it.`,
	Sources: `The sum is arithmetic. Forms of housing and rabbet: W. Noyes, Handwork in Wood, 1910, joints no. 24 to 29.`,
	Sound: `A shelf in dadoes and a divider in housings of another depth, each cut to the sum; a fixed top that runs
over the sides and meets nothing; a shelf on pins, which has a little play; a dovetailed board with 1/16 left on at each end.`,
	Bad: `case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 3/8
  across {
    side left
    down { top roof ; open ; shelf middle { cut 30 } ; open ; bottom floor }
    side right
  }
}
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
`,
	Good: `case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 3/8
  across {
    side left
    down { top roof ; open ; shelf middle { cut 30 3/4 } ; open ; bottom floor }
    side right
  }
}
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
`,
	Figures: []*Figure{shelfPlay, cornerTrim},
	Check: func(pass *Pass) {
		checkLongs(pass, func(m *plan.Member, kind string) bool {
			return m.Board() && kind == ""
		}, "clear between its mates", func(m *plan.Member, _ string) wood.Length {
			for _, e := range m.Ends {
				if e == nil || !throughCorner(e.Joint) {
					return 0
				}
			}
			return pass.Length(cornerTrim, plan.PathOf(m))
		}, func(m *plan.Member) wood.Length {
			if m.Word == "shelf" {
				return pass.Length(shelfPlay, plan.PathOf(m))
			}
			return 0
		})
	},
}

// throughCorner reports whether the end of a board shows on the other side of its mate.
func throughCorner(j *plan.Joint) bool {
	return j != nil && (j.Kind.Is == plan.BoxJoint || j.Kind.Is == plan.Dovetail && j.Lap.Or(0).Length == 0)
}
