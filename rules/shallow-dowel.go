package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var dowelGrip = &Figure{
	Name: "grip", Why: "how many times its thickness a dowel goes into each part at least", Basis: Practice,
	Source: "one and a half times", Dim: lang.Plain, Number: 1.5,
}

var shallowDowel = &Rule{
	Name: "shallow-dowel", Group: Joints, Severity: diag.Warning,
	Summary: "a dowel does not go far enough into one of its parts",
	Doc: `Glue holds a dowel by its sides alone. One that goes in little farther than it is thick comes out like a cork as soon as the joint
is bent.

Let it go into each part one and a half times its thickness at least. In a thin board take a thinner dowel: 1/4 where 3/8 finds no depth.`,
	Sources: `See the figure.`,
	Sound:   `A dowel of 3/8 just 9/16 deep in a side of 3/4; a dowel of 8 mm and 30 long whose holes are left to the rule.`,
	Bad: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 10
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 3/8 own 1 3/16 count 3 } ; open }
    side right 3/4
  }
}
`,
	Good: `dowel peg { thick 3/8 ; long 1 1/2 }
case shelves {
  wide 24 ; high 30 ; deep 10
  across {
    side left 3/4
    down { open ; shelf one 3/4 { joint dowel peg deep 9/16 own 1 count 3 } ; open }
    side right 3/4
  }
}
`,
	Figures: []*Figure{dowelGrip},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.Dowel) {
			j := t.Joint
			of := j.Hardware.To
			if of == nil || !of.Thick.Known() || !of.Long.Known() || bottoms(p, j) {
				continue
			}
			least := fraction(of.Thick.Length, pass.Number(dowelGrip, t.subject))
			into, at := j.Deep.Or(of.Long.Length/2), "its mate"
			if own := j.Own.Or(of.Long.Length / 2); own.Known() && into.Known() && own.Length < into.Length {
				into, at = own, "the end itself"
			}
			if !into.Known() || !wood.Under(into.Length, least-p.Tape.Tolerance()) {
				continue
			}
			span := into.Span
			if !span.Known() {
				span = fastenerSpan(j)
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    span,
				Message: fmt.Sprintf("a dowel %s thick goes %s into %s: %s at least is wanted", p.ShowSaid(of.Thick), p.Show(into.Length), at, p.Show(least)),
				Working: p.Paper().Start(of.Thick.Length, "thickness of the dowel").Plus(least-of.Thick.Length, "and half of it").
					Equals("into each part at least").Versus(into.Length, "into "+at).Working(),
				Fixes: []diag.Fix{{Title: "bore deeper or take a longer dowel; where the wood is too thin for that, take a thinner one"}},
			})
		}
	},
}
