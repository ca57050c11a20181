package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var looseShort = &Figure{
	Name: "short", Why: "how much shorter than both its mortises together a loose tenon may be", Basis: Practice,
	Source: "more is glue surface thrown away", Dim: lang.Length, Length: wood.Inch / 4,
}

var looseTenonShort = &Rule{
	Name: "loose-tenon-short", Group: Lengths, Severity: diag.Warning,
	Summary: "a loose tenon is much shorter than its mortises",
	Doc: `Where a loose tenon can slide in its mortises, it may stand almost wholly in one of them, and hardly hold in the
other; and the deep mortise has weakened the stile for nothing.

Make it longer, or the mortises shallower.`,
	Sources: `Common practice, no source.`,
	Sound:   `A loose tenon 1/4 shorter than both its mortises together, which is the most that is left.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint loose-tenon thick 1/4 wide 1 1/2 long 1 3/4 mortise deep 1 1/8
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
	Figures: []*Figure{looseShort},
	Check: func(pass *Pass) {
		p := pass.Plan
		for l := range looseTenons(p) {
			short := pass.Length(looseShort, l.subject)
			least := l.room - short
			if agree(p, l.long.Length, least) || l.long.Length > least {
				continue
			}
			pass.Report(diag.Finding{
				Subject: l.subject,
				Span:    l.long.Span,
				Message: fmt.Sprintf("a loose tenon %s long slides in mortises that are %s deep together: make it %s at least",
					p.ShowSaid(l.long), p.Show(l.room), p.Show(least)),
				Working: l.working(p).Minus(short, "left empty at most").Equals("at least").Versus(l.long.Length, "stated").Working(),
				Notes:   []diag.Note{{Span: l.deepAt, Message: "the mortise is stated here"}},
			})
		}
	},
}
