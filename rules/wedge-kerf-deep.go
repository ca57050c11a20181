package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var kerfStop = &Figure{
	Name: "stop", Why: "how far short of the shoulder a wedge's saw cut stops at least", Basis: Practice,
	Source: "1/4 (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
}

var wedgeKerfDeep = &Rule{
	Name: "wedge-kerf-deep", Group: Tenons, Severity: diag.Warning,
	Summary: "the saw cut for a wedge runs too near to the tenon's shoulder",
	Doc: `The saw cut is where the wedge starts a split, and the split runs on. With sound wood left below the cut it stops in the tenon;
without, it runs past the shoulder into the rail, where it shows and where the joint is to be strong.

Stop the saw cut 1/4 (6 mm) short of the shoulder, and drill a small hole at its end where the wood splits easily.`,
	Sources: `See the figures.`,
	Sound:   `A saw cut that stops just 1/4 short of the shoulder; one that does not say where it stops.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 stop 1/8
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2 stop 1/4
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{kerfStop},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			w := t.Joint.Wedged
			if w == nil || !w.Stop.Known() {
				continue
			}
			least := pass.Length(kerfStop, t.subject)
			if !wood.Under(w.Stop.Length, least) {
				continue
			}
			runs := fmt.Sprintf("stops %s short of the shoulder", p.ShowSaid(w.Stop))
			if !wood.Over(w.Stop.Length, 0) {
				runs = "runs up to the shoulder"
			}
			pass.Report(diag.Finding{
				Subject: t.subject,
				Span:    w.Stop.Span,
				Message: fmt.Sprintf("a wedge's saw cut %s, and the split runs on into the stick: leave %s", runs, p.Show(least)),
				Fixes: []diag.Fix{{
					Title: "write `stop " + cutTo(p, w.Stop.Span, least) + "`",
					Edits: []diag.Edit{{Span: w.Stop.Span, Text: cutTo(p, w.Stop.Span, least)}},
				}},
			})
		}
	},
}
