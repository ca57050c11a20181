package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	tightScrapes = &Figure{
		Name: "scrapes", Why: "how much thicker than its mortise a tenon is at most", Basis: Practice,
		Source: "0.008 (0.2 mm), twice what the trials found best", Dim: lang.Length, Length: 8 * wood.Inch / 1000, Metric: 200 * wood.Micrometre,
	}
	tightSplits = &Figure{
		Name: "splits", Why: "beyond which the mortise splits", Basis: Practice,
		Source: "0.012 (0.3 mm)", Dim: lang.Length, Length: 12 * wood.Inch / 1000, Metric: 300 * wood.Micrometre,
	}
)

var tenonTight = &Rule{
	Name: "tenon-tight", Group: Tenons, Severity: diag.Warning,
	Summary: "a tenon is so much thicker than its mortise that it scrapes the glue off, or splits it",
	Doc: `A tenon that has to be driven scrapes the glue from the walls of its mortise and closes dry; a thicker one spreads the stile until
it splits. A tenth of a millimetre over, which the wood gives, was the strongest fit in trials.

Plane the cheeks until the tenon goes in with some effort of the hand, or a light tap.`,
	Sources: `Strongest at 0.1 mm of tightness: Elek et al., European Journal of Wood and Wood Products 78(2), 2020; Liu et al., Forests
15(9):1612, 2024. The limits are ours.`,
	Sound: `A tenon 0.004 thicker than its mortise, which trials found best; one just 0.008 thicker.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 0.39 long 1 1/4 mortise thick 0.375
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 1
  joint tenon thick 0.379 long 1 1/4 mortise thick 0.375
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{tightScrapes, tightSplits},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			slack, ok := t.slack()
			if !ok || !wood.Over(-slack, pass.Length(tightScrapes, t.subject)) {
				continue
			}
			f := fitFinding(t)
			f.Message = fmt.Sprintf("a %s %s thick is %s too thick for a mortise of %s", t.called(), p.ShowSaid(t.Joint.Thick), p.Show(-slack), p.ShowSaid(t.Joint.Mortise.Thick))
			if wood.Over(-slack, pass.Length(tightSplits, t.subject)) {
				f.Severity = diag.Error
				f.Message += ": it splits"
			} else {
				f.Message += ": it scrapes the glue off"
			}
			f.Working = p.Paper().Start(t.Joint.Thick.Length, "tenon").Minus(t.Joint.Mortise.Thick.Length, "mortise").
				Versus(pass.Length(tightScrapes, t.subject), "thicker at most").Working()
			f.Fixes = []diag.Fix{{Title: "plane the cheeks until it goes in by hand with some effort"}}
			pass.Report(f)
		}
	},
}
