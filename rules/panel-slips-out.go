package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var slipHold = &Figure{
	Name: "hold", Why: "how far a panel still reaches into its grooves at its driest", Basis: Practice,
	Source: "1/8", Dim: lang.Length, Length: plan.PanelHold,
}

var panelSlipsOut = &Rule{
	Name: "panel-slips-out", Group: Movement, Severity: diag.Error,
	Summary: "a solid panel shrinks out of its grooves",
	Doc: `In a heated room in winter a panel shrinks across its grain. Where its grooves are shallow its edge comes out of one: there is
daylight, it rattles, and it drops.

A panel that is kept in the middle, by a pin or by spacers, loses half of the gap at each side; that is what "float" says, and
what is taken where nothing is said. One that lies as it likes ("float loose") may lose all of it at one side. Where it stays in by less
than 1/8, that is a warning.

Pin it in the middle, make the grooves deeper, use wood that is sawn quarter, or make narrower panels.`,
	Sources: movementSource + `
That a loose panel may lie at the bottom of one groove is arithmetic. The least hold is common practice, no source.`,
	Sound: `A panel kept in the middle that would slip out if it lay loose, a loose one in deep grooves, and one worked out for the seasons.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 16 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 12 1/2 ; float loose } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 16 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 12 1/2 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{slipHold},
	Check: func(pass *Pass) {
		p := pass.Plan
		solidPanes(pass, func(s solidPane) {
			subject := plan.PathOf(s.Panel)
			dried := s.dried()
			hold, least := s.hold(dried), pass.Length(slipHold, subject)
			if s.Word != "panel" || !wood.Under(hold, least) {
				return // a back is held by what it is nailed with
			}
			how := "even in the middle of its place"
			if s.Loose() {
				how = "lying to one side"
			}
			f := diag.Finding{
				Subject: subject, Span: s.at(), Severity: diag.Warning,
				Message: fmt.Sprintf("%s shrinks to %s: %s it stays in its groove by only %s", titled(&s.Item), exact(p, dried), how, exact(p, hold)),
				Notes:   fromMemory(s.of, s.dry),
				Fixes:   s.mends(p),
			}
			if hold <= 0 {
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("%s shrinks to %s: %s it comes out of its groove", titled(&s.Item), exact(p, dried), how)
			}
			paper := s.place(p).Start(s.width, "width of "+called(&s.Item))
			moves(paper, s.width, s.of, s.dry)
			paper.Equals("at its driest").Start(s.bottoms, "there is").Minus(dried, "the panel").Equals("gap in all")
			gap := s.bottoms - dried
			if !s.Loose() {
				gap /= 2
				paper.Over(2, "at each side").Equals("gap")
			}
			f.Working = paper.Start(min(s.near, s.far), "depth of the groove").Minus(gap, "gap").Equals("stays in").
				Versus(least, "wanted at least").Working()
			pass.Report(f)
		})
	},
}
