package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var dowelBottoms = &Rule{
	Name: "dowel-bottoms", Group: Joints, Severity: diag.Error,
	Summary: "a dowel is as long as both its holes together",
	Doc: `A dowel that reaches both floors keeps the joint open, and the glue before it has nowhere to go: the clamps then burst the wood round
the hole, or the joint stays open by a hair that the finish shows.

Bore the two holes 1/16 (1.5 mm) deeper together than the dowel is long. Where the plan says of neither how deep it is, half the dowel and a
little more is meant, and the rule says nothing.`,
	Sources: `The sum is arithmetic. That a dowel wants a groove for its glue and a countersunk hole: W. Fairham, Woodwork Joints, and W. Noyes,
Handwork in Wood, 1910, no. 75. The amount is common practice, no source.`,
	Sound: `A dowel of 2 in two holes of 1 1/16; one that goes deeper into the rail than into the side; a dowel whose holes are left to the rule.`,
	Bad: `dowel peg { thick 3/8 ; long 2 }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint dowel peg deep 1 own 1 count 2
  across { stile left 3 ; down { rail head 3 ; space ; rail foot 3 } ; stile right 3 }
}
`,
	Good: `dowel peg { thick 3/8 ; long 2 }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint dowel peg deep 1 1/16 own 1 1/16 count 2
  across { stile left 3 ; down { rail head 3 ; space ; rail foot 3 } ; stile right 3 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Dowel) {
			j := t.Joint
			if !bottoms(p, j) {
				continue
			}
			long := j.Hardware.To.Long
			paper := p.Paper().Start(long.Length, "the dowel").Plus(p.Relief(), "for glue and chips").Equals("both holes together").
				Versus(j.Deep.Length+j.Own.Length, "stated")
			own := cutTo(p, j.Own.Span, upTo(p, long.Length+p.Relief()-j.Deep.Length))
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    j.Own.Span,
				Message: fmt.Sprintf("a dowel %s long has holes of %s and %s: it bottoms before the joint closes", p.ShowSaid(long), p.ShowSaid(j.Deep), p.ShowSaid(j.Own)),
				Working: paper.Working(),
				Notes:   []diag.Note{{Span: j.Deep.Span, Message: "the hole in its mate"}, {Span: long.Span, Message: "the dowel's length"}},
				Fixes:   []diag.Fix{{Title: "write `own " + own + "`, or bore both deeper", Edits: []diag.Edit{{Span: j.Own.Span, Text: own}}}},
			})
		}
	},
}

// bottoms reports whether a dowel is too long for holes of which the plan says how deep both are.
func bottoms(p *plan.Plan, j *plan.Joint) bool {
	of := j.Hardware.To
	return of != nil && of.Long.Known() && j.Deep.Known() && j.Own.Known() &&
		wood.Under(j.Deep.Length+j.Own.Length, of.Long.Length+p.Relief()-p.Tape.Tolerance())
}
