package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var dowelFirst = &Figure{
	Name: "first", Why: "how far from the edge of a case's board its first dowel is at least", Basis: SecondHand,
	Source: "1 in (25 mm)", Dim: lang.Length, Length: wood.Inch, Metric: 25 * wood.Millimetre,
}

var dowelNearEdge = &Rule{
	Name: "dowel-near-edge", Group: Joints, Severity: diag.Advice,
	Summary: "the first dowel of a case's board stands close to its edge",
	Doc: `A hole close to the edge of a board lets the drill wander out, and a swelling dowel splits the narrow wood beside it.

Begin an inch (25 mm) from the edge. The rule looks at boards of a case, wide enough for that; how much wood is left beside a dowel in a rail
says "thin-wall".`,
	Sources: `See the figure.`,
	Sound:   `A shelf whose first dowel is just an inch in; two dowels in a rail of 2 1/4, half an inch from its edges.`,
	Bad: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 10
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 9/16 own 1 at 1/2, 5, 9 } ; open }
    side right 3/4
  }
}
`,
	Good: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 10
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 9/16 own 1 at 1, 5, 9 } ; open }
    side right 3/4
  }
}
`,
	Figures: []*Figure{dowelFirst},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Dowel) {
			j, wide := t.Joint, t.of.Size.Wide
			of := j.Hardware.To
			least := pass.Length(dowelFirst, t.subject)
			if !t.of.Board() || of == nil || !of.Thick.Known() || !wide.Known() || wood.Under(wide.Length, 4*least) {
				continue
			}
			for _, at := range j.At {
				left := min(at.Length, wide.Length-at.Length)
				if !at.Known() || !wood.Under(left, least) || wood.Under(left, of.Thick.Length) { // nearer than its thickness, its wall is thin
					continue
				}
				pass.Report(diag.Finding{
					Subject: t.subject,
					Span:    at.Span,
					Message: fmt.Sprintf("a dowel %s from the edge of a board is close to it: %s is wanted", p.Show(left), p.Show(least)),
				})
				break
			}
		}
	},
}
