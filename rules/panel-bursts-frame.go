package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var burstSpare = &Figure{
	Name: "spare", Why: "how much room, in all, a panel has left at its most humid", Basis: Practice,
	Source: "1/32, the thinnest gap that is surely one", Dim: lang.Length, Length: plan.PanelSpare,
}

var panelBurstsFrame = &Rule{
	Name: "panel-bursts-frame", Group: Movement, Severity: diag.Error,
	Summary: "a solid panel swells past the bottoms of its grooves",
	Doc: `In the first humid summer a panel that fills its grooves pushes the stiles apart: the joints of the frame open, or a stile
splits. Nothing shows on the day it is glued up.

Wood moves across its grain alone. The working takes the panel's width from the moisture at which it is worked to the most humid that
the plan's climate knows, and holds it against the place from bottom to bottom. Where less than 1/32 is left, that is a warning.

Leave the width out, and the panel is worked out for the seasons; or make it narrower.`,
	Sources: movementSource + `
Panels that are free in their frames: W. Noyes, Handwork in Wood, 1910, chapter VIII. The least room is common practice, no source.`,
	Sound: `A panel 1/4 narrower than its place, one of quarter-sawn wood with less, one worked out for the seasons, and one that is tight
along its grain.`,
	Bad: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 21 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 17.70 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `climate { shop 8% ; dry 5% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
frame leaf {
  of oak
  wide 21 ; high 30 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2
    down { rail head 2 ; panel field { thick 3/8 ; groove 3/8 ; wide 17 1/2 ; float } ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{burstSpare},
	Check: func(pass *Pass) {
		p := pass.Plan
		solidPanes(pass, func(s solidPane) {
			subject := plan.PathOf(s.Panel)
			wet := s.wet()
			spare := pass.Length(burstSpare, subject)
			if !wood.Over(wet, s.bottoms-spare) {
				return
			}
			f := diag.Finding{
				Subject: subject, Span: s.at(),
				Message: fmt.Sprintf("%s swells to %s, but there is only %s for it: it bursts what holds it", titled(&s.Item), exact(p, wet), exact(p, s.bottoms)),
				Notes:   fromMemory(s.of, s.humid),
				Fixes:   s.mends(p),
			}
			if !wood.Over(wet, s.bottoms) {
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("%s swells to %s of %s: less than %s is left", titled(&s.Item), exact(p, wet), exact(p, s.bottoms), p.Show(spare))
			}
			paper := s.place(p).Start(s.width, "width of "+called(&s.Item))
			moves(paper, s.width, s.of, s.humid)
			f.Working = paper.Equals("at its most humid").Versus(s.bottoms, "there is").Working()
			pass.Report(f)
		})
	},
}
