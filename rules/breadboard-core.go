package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var breadboardCore = &Rule{
	Name: "breadboard-core", Group: Lengths, Severity: diag.Error,
	Summary: "the boards of a top are not cut for the tongues that go into its breadboard ends",
	Doc: `Boards that are crosscut to what shows between the breadboard ends have no tongue left, and the whole glued-up top is
short by both tongues.

The boards are as long as the top, less both ends, and both tongues. Write the core that the working ends with, or leave it out: the
cutting list prints it.`,
	Sources: `The sum is arithmetic; the construction: W. Fairham, Woodwork Joints, under clamping, and W. Noyes, Handwork in Wood, 1910,
fig. 280c.`,
	Sound: `A top of 60 with ends of 3 and tongues of 1, and boards of 56.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
top slab {
  of oak ; thick 1 ; long 60 ; wide 34 ; core 54 x 34
  breadboard 3 { tongue 3/8 x 1 }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
top slab {
  of oak ; thick 1 ; long 60 ; wide 34 ; core 56 x 34
  breadboard 3 { tongue 3/8 x 1 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for m, thing := range boardsOf(p) {
			b, said := m.Breadboard, m.Core.Across
			if b == nil || said.How != plan.Written || !m.Size.Long.Known() || !b.Wide.Known() || !b.Tongue.Deep.Known() {
				continue
			}
			tongue := b.Tongue.Deep.Length
			between := m.Size.Long.Length - 2*b.Wide.Length
			needed := between + 2*tongue
			if agree(p, said.Length, needed) {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(thing),
				Span:    standing(m.Span, said.Span),
				Message: fmt.Sprintf("the core of %s is %s long but must be %s", titled(&m.Item), p.ShowSaid(said), exact(p, needed)),
				Working: p.Paper().Start(m.Size.Long.Length, "finished length").
					Minus(b.Wide.Length, "breadboard, left").Minus(b.Wide.Length, "breadboard, right").Equals("between the ends").
					Plus(tongue, "tongue, left").Plus(tongue, "tongue, right").Equals("core").Versus(said.Length, "stated").Working(),
				Fixes: []diag.Fix{{Title: "write `" + cutTo(p, said.Span, needed) + "`, or leave `core` out"}},
			}
			if m.Made.On {
				f.Fixes = stillBoard(p, said.Length-needed, "length", "size", said.Span, needed, false, false)
			}
			if agree(p, said.Length, between) {
				f.Notes = []diag.Note{{Span: said.Span, Message: "this is what shows between the ends, without a tongue"}}
			}
			pass.Report(f)
		}
	},
}
