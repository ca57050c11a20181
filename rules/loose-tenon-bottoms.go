package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var looseRelief = &Figure{
	Name: "relief", Why: "how much shorter than each mortise its half of a loose tenon is", Basis: Practice,
	Source: "1/32 to 1/16; that a mortise is cut slightly deeper than its tenon: W. Noyes, Handwork in Wood, 1910", Dim: lang.Length, Length: wood.Inch / 32,
}

var looseTenonBottoms = &Rule{
	Name: "loose-tenon-bottoms", Group: Lengths, Severity: diag.Error,
	Summary: "a loose tenon is as long as both its mortises together",
	Doc: `A loose tenon that reaches both floors keeps the shoulders apart, and glue that cannot get away under it keeps them
apart sooner. The clamps then bend the frame, or the rail splits.

Make it shorter than both mortises together by a little at each end, or cut the mortises deeper. The rail itself keeps the length
between its shoulders.`,
	Sources: `The sum is arithmetic; the relief stands with its figure.`,
	Sound:   `A loose tenon 1/16 shorter than each of two mortises, of which one is the shallower.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint loose-tenon thick 1/4 wide 1 1/2 long 2 1/4 mortise deep 1 1/8
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint loose-tenon thick 1/4 wide 1 1/2 long 2 1/8 mortise deep 1 1/8
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Figures: []*Figure{looseRelief},
	Check: func(pass *Pass) {
		p := pass.Plan
		for l := range looseTenons(p) {
			relief := pass.Length(looseRelief, l.subject)
			longest := l.room - 2*relief
			if agree(p, l.long.Length, longest) || l.long.Length < longest {
				continue
			}
			pass.Report(diag.Finding{
				Subject: l.subject,
				Span:    l.long.Span,
				Message: fmt.Sprintf("a loose tenon %s long has %s in its two mortises: make it %s at most",
					p.ShowSaid(l.long), p.Show(l.room), p.Show(longest)),
				Working: l.working(p).Minus(relief, "relief at one end").Minus(relief, "relief at the other").
					Equals("at most").Versus(l.long.Length, "stated").Working(),
				Notes: []diag.Note{{Span: l.deepAt, Message: "the mortise is stated here"}},
				Fixes: []diag.Fix{{
					Title: "write `long " + cutTo(p, l.long.Span, longest) + "`",
					Edits: []diag.Edit{{Span: l.long.Span, Text: cutTo(p, l.long.Span, longest)}},
				}},
			})
		}
	},
}

// loose is a loose tenon and the mortises in both parts.
type loose struct {
	subject   string
	long      plan.Length
	own, deep plan.Length
	room      wood.Length // both mortises together
	deepAt    diag.Span
}

func (l *loose) working(p *plan.Plan) *plan.Paper {
	return p.Paper().Start(l.own.Length, "mortise in the part itself").Plus(l.deep.Length, "mortise in its mate")
}

// looseTenons ranges over the loose tenons whose length and mortises are known.
func looseTenons(p *plan.Plan) func(yield func(*loose) bool) {
	return func(yield func(*loose) bool) {
		for e := range ends(p) {
			j := e.Joint
			if j.Kind.Is != plan.LooseTenon || j.Mortise == nil || !j.Long.Known() || !j.Mortise.Deep.Known() || !j.Mortise.Own.Known() {
				continue
			}
			l := &loose{
				subject: plan.PathOf(e.Of), long: j.Long, own: j.Mortise.Own, deep: j.Mortise.Deep,
				room: j.Mortise.Own.Length + j.Mortise.Deep.Length, deepAt: j.Mortise.Deep.Span,
			}
			if !yield(l) {
				return
			}
		}
	}
}
