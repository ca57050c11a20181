package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var panelSpare = &Figure{
	Name: "spare", Why: "how much smaller than its place, in all, a panel is at least", Basis: Practice,
	Source: "1/32 to 1/16 for a panel that does not move", Dim: lang.Length, Length: wood.Inch / 32,
}

var panelSize = &Rule{
	Name: "panel-size", Group: Lengths, Severity: diag.Error,
	Summary: "a panel is cut to what shows, or to the very bottoms of its grooves",
	Doc: `A panel that is cut to what shows falls out of its frame; one that is cut from bottom to bottom of its grooves
keeps the joints of the frame open when it is glued up, and one of solid wood bursts them in the first damp summer.

The place is what shows and the groove at each side. From it comes the gap: as stated, else 1/32 (1 mm) for a sheet, and for solid
wood across its grain what the seasons ask for. How wide a solid panel may be through the year is judged by rules of its own.

Leave the size out, and the panel is worked out; or write what the finding proposes.`,
	Sources: `The sum is arithmetic; the least gap stands with its figure.`,
	Sound:   `A solid panel 1/4 smaller than its place, one with the gap that it states, and a sheet with 1/32 to spare.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame leaf {
  of oak
  wide 16 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 12 3/4 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame leaf {
  of oak
  wide 16 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 12 1/2 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{panelSpare},
	Check:   func(pass *Pass) { checkPanes(pass, "panel", panelSpare) },
}
