package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	housingShallowest = &Figure{
		Name: "shallowest", Why: "how deep a housing or a dado in a board is at least, as a part of the board", Basis: Practice,
		Source: "a quarter; a third is usual", Dim: lang.Plain, Number: 0.25,
	}
	housingEnough = &Figure{
		Name: "enough", Why: "how deep a housing is deep enough in any board", Basis: Practice,
		Source: "a quarter inch (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
)

var shallowHousing = &Rule{
	Name: "shallow-housing", Group: Joints, Severity: diag.Warning,
	Summary: "a housing is too shallow to carry the board in it",
	Doc: `A shelf stands on the ledge that its dado makes. A shallow one is soon crushed, a side that cups by half of it lets go, and it
holds nothing square.

Cut housings and dados a quarter of the side deep at least; a third is usual, and 1/4 (6 mm) serves in any board. A board that is screwed
or cleated as well only needs to be found by its dado: say so with "allow".`,
	Sources: `Common practice, no source.`,
	Sound:   `A dado of just a quarter of the side; one of 1/4 in a thick board; a shelf housed 1/4 into posts.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint dado deep 1/8
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
	Figures: []*Figure{housingShallowest, housingEnough},
	Check: func(pass *Pass) {
		p := pass.Plan
		for h := range housings(p, plan.Housing, plan.Dado) {
			if _, back := panelOf(h); back || !h.flat || !h.Deep.Known() || !h.mate.Known() {
				continue
			}
			least := min(fraction(h.mate.Length, pass.Number(housingShallowest, h.subject)), pass.Length(housingEnough, h.subject))
			if !wood.Under(h.Deep.Length, least) {
				continue
			}
			third := upTo(p, h.mate.Length/3)
			pass.Report(diag.Finding{
				Subject: h.subject,
				Span:    h.Deep.Span,
				Message: fmt.Sprintf("a %s %s deep in a board %s thick gives little to stand on: make it %s at least",
					h.Kind.Is, p.ShowSaid(h.Deep), p.Show(h.mate.Length), exact(p, least)),
				Fixes: []diag.Fix{{Title: "write `deep " + cutTo(p, h.Deep.Span, third) + "`, about a third"}},
			})
		}
	},
}

// panelOf is the panel or the back whose edge is let in, if it is one.
func panelOf(h sunk) (*plan.Panel, bool) {
	if h.end == nil {
		return nil, false
	}
	n, ok := h.end.Of.(*plan.Panel)
	return n, ok
}
