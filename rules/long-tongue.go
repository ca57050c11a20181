package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var tongueLongest = &Figure{
	Name: "longest", Why: "how many times as long as thick a tongue is at most", Basis: Practice,
	Source: "one and a half times", Dim: lang.Plain, Number: 1.5,
}

var longTongue = &Rule{
	Name: "long-tongue", Group: Joints, Severity: diag.Warning,
	Summary: "a tongue is long for its thickness",
	Doc: `A tongue is there to keep two boards level: a short one does that as well as a long one, wastes less wood, and does not break off. A long
one also cuts its groove deep into the other board.

Make it one and a half times as long as thick at most. Where the joint has to carry, take a tenon or a housing.`,
	Sources: `That a shallow tongue aligns as well and wastes less: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, chapter
10. The bound is common practice, no source.`,
	Sound: `A tongue of just one and a half times its thickness; the tongue of a breadboard end, which is long because it has to carry.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint tongue thick 1/4 long 1/2
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
	Figures: []*Figure{tongueLongest},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tongues(p) {
			if t.Long.How != plan.Written || !t.Thick.Known() {
				continue
			}
			most := fraction(t.Thick.Length, pass.Number(tongueLongest, t.subject))
			if !wood.Over(t.Long.Length, most) {
				continue
			}
			f := diag.Finding{
				Subject: t.subject,
				Span:    t.Long.Span,
				Message: fmt.Sprintf("a tongue %s thick and %s long breaks off: %s is long enough", p.ShowSaid(t.Thick), p.ShowSaid(t.Long), exact(p, most)),
			}
			if write := p.Tape.Floor(most); write > 0 {
				f.Fixes = []diag.Fix{{Title: "write `long " + cutTo(p, t.Long.Span, write) + "`, or less"}}
			}
			pass.Report(f)
		}
	},
}
