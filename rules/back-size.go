package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var backSpare = &Figure{
	Name: "spare", Why: "how much smaller than its rabbets, in all, a back is at least", Basis: Practice,
	Source: "1/32 to 1/16", Dim: lang.Length, Length: wood.Inch / 32,
}

var backSize = &Rule{
	Name: "back-size", Group: Lengths, Severity: diag.Error,
	Summary: "a back does not fit its rabbets",
	Doc: `A back that is cut to the inside of the case falls through it, and one that is cut to the very walls of its rabbets
does not go in, or spreads the sides.

The place is what is clear between the sides and the rabbet into each of them. From it comes the gap: as stated, else 1/32 (1 mm).

Leave the size out, and the back is worked out; or write what the finding proposes.`,
	Sources: `The sum is arithmetic; the least gap stands with its figure. Rabbets: W. Noyes, Handwork in Wood, 1910, joints no. 24 to 29.`,
	Sound:   `A back 1/16 smaller than its rabbets; one planted on, as large as the case.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 3/8 x 1/4 ; wide 30 7/8 } }
    side right
  }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 3/8 x 1/4 ; wide 30 11/16 } }
    side right
  }
}
`,
	Figures: []*Figure{backSpare},
	Check:   func(pass *Pass) { checkPanes(pass, "back", backSpare) },
}
