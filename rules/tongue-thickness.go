package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	tongueThinnest = &Figure{
		Name: "thinnest", Why: "how thick a tongue is at least, as a part of its board", Basis: Practice,
		Source: "a quarter; the rule of thumb is a third", Dim: lang.Plain, Number: 0.25,
	}
	tongueThickest = &Figure{
		Name: "thickest", Why: "how thick a tongue is at most, as a part of its board", Basis: Practice,
		Source: "a half; the rule of thumb is a third", Dim: lang.Plain, Number: 0.5,
	}
)

var tongueThickness = &Rule{
	Name: "tongue-thickness", Group: Joints, Severity: diag.Warning,
	Summary: "a tongue is far from a third of its board's thickness",
	Doc: `A thin tongue breaks off along its whole length when the joint is tapped together; a thick one leaves thin lips beside its groove,
and they spread.

Make it about a third of the board, to suit the cutter that is nearest. From a quarter to a half nothing is said.`,
	Sources: `Common practice, no source.`,
	Sound:   `Tongues of just a quarter, a third and a half of their boards.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint tongue thick 1/8 long 3/16
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Good: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint tongue thick 1/4 long 3/8
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{tongueThinnest, tongueThickest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tongues(p) {
			if !t.Thick.Known() || !t.board.Known() {
				continue
			}
			part := func(f *Figure) wood.Length { return fraction(t.board.Length, pass.Number(f, t.subject)) }
			f := diag.Finding{Subject: t.subject, Span: t.Thick.Span}
			switch {
			case wood.Under(t.Thick.Length, part(tongueThinnest)):
				f.Message = fmt.Sprintf("a tongue %s thick on a board %s thick breaks off", p.ShowSaid(t.Thick), p.Show(t.board.Length))
			case wood.Over(t.Thick.Length, part(tongueThickest)):
				f.Message = fmt.Sprintf("a tongue %s thick on a board %s thick leaves weak lips beside its groove", p.ShowSaid(t.Thick), p.Show(t.board.Length))
			default:
				continue
			}
			f.Working = p.Paper().Start(t.board.Length, "thickness of the board").Over(3, "a third").Equals("about").Versus(t.Thick.Length, "stated").Working()
			f.Fixes = []diag.Fix{{Title: "make it about a third of the board, to suit the nearest cutter"}}
			pass.Report(f)
		}
	},
}
