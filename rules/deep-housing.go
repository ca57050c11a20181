package rules

import (
	"fmt"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var housingDeepest = &Figure{
	Name: "deepest", Why: "how deep a housing or a dado is at most, as a part of the wood that it is cut into", Basis: Practice,
	Source: "a half; a third is usual", Dim: lang.Plain, Number: 0.5,
}

var deepHousing = &Rule{
	Name: "deep-housing", Group: Joints, Severity: diag.Warning,
	Summary: "a housing takes more than half of the wood that it is cut into",
	Doc: `A side is as strong as what is left behind its deepest dado: one that is cut through two thirds of its thickness bends or
breaks there when the case is lifted.

Cut housings and dados a third deep, and no more than half. One as deep as the wood is thick cuts it in two: that is an error, as it is of the slot for what is dropped in.`,
	Sources: `Common practice, no source.`,
	Sound:   `Dados of just half the side, in a case and in the sides of a drawer.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 1/2
  across {
    side left
    down { top roof ; open ; shelf middle ; open ; bottom floor }
    side right
  }
}
`,
	Good: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 1/4
  across {
    side left
    down { top roof ; open ; shelf middle ; open ; bottom floor }
    side right
  }
}
`,
	Figures: []*Figure{housingDeepest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for h := range housings(p, append(slices.Clone(acrossWood), plan.DropIn)...) {
			if !h.Deep.Known() || !h.mate.Known() {
				continue
			}
			deep, kind := h.Deep.Length, spoken(h.Kind.Is)
			if h.Kind.Is == plan.DropIn {
				kind = "slot"
			}
			most := fraction(h.mate.Length, pass.Number(housingDeepest, h.subject))
			f := diag.Finding{Subject: h.subject, Span: h.Deep.Span}
			switch {
			case !wood.Under(deep, h.mate.Length):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a %s %s deep cuts through wood %s thick", kind, p.ShowSaid(h.Deep), p.Show(h.mate.Length))
			case h.Kind.Is != plan.DropIn && wood.Over(deep, most): // what is dropped in holds little
				f.Message = fmt.Sprintf("a %s %s deep in wood %s thick leaves too little behind it: a third is enough", kind, p.ShowSaid(h.Deep), p.Show(h.mate.Length))
			default:
				continue
			}
			f.Working = h.left(p, deep, kind).Versus(h.mate.Length-most, "wanted at least").Working()
			if third := p.Tape.Floor(h.mate.Length / 3); third > 0 {
				f.Fixes = []diag.Fix{{Title: "write `deep " + cutTo(p, h.Deep.Span, third) + "`, about a third"}}
			}
			pass.Report(f)
		}
	},
}
