package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var stubUnglued = &Rule{
	Name: "stub-unglued", Group: Tenons, Severity: diag.Warning,
	Summary: "stub tenons hold a frame whose panel is not glued in",
	Doc: `A stub tenon is as long as the panel's groove is deep, 3/8 or so: by itself it lets go when the frame is racked. It serves
where a panel of plywood or another sheet is glued into the groove all round, for then the sheet keeps the frame square. A solid
panel must be free to move, and ties nothing.

A frame that lies level between the sides of a case, as a dust frame under a drawer, is kept square by the case, and the rule lets it be.

Glue the sheet in and say so: "glue edges"; or give the rails tenons of a full length, or loose tenons beside the stubs.`,
	Sources: `Common practice, no source.`,
	Sound:   `Stubs round a plywood panel that is glued; full tenons round a solid one; a dust frame that lies level in a case.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood cherry { species "black cherry" ; sawn flat }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint stub
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; panel field { of cherry 1/2 ; groove 1/4 x 3/8 ; float } ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Good: `sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint stub
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; panel field { of thin ; groove 1/4 x 3/8 ; glue edges } ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		kept := make(map[*plan.Assembly]bool) // square, by the case in which they lie level
		for in := range plan.AllOf[*plan.Placed](p) {
			if in.Flat && in.In.Kind == plan.Case {
				kept[in.Part.To] = true
			}
		}
		for e := range ends(p) {
			m, ok := e.Of.(*plan.Member)
			if !ok || e.Joint.Kind.Is != plan.Stub || !e.Adds.Known() || tiedBySheet(m) || kept[m.In] {
				continue
			}
			panels := panelsBeside(m)
			if len(panels) == 0 || panels[0].Of.Material.To == nil {
				continue
			}
			f := diag.Finding{
				Subject: plan.PathOf(m),
				Span:    e.Joint.Span,
				Message: fmt.Sprintf("stub tenons %s long hold this frame alone: no sheet is glued in beside them", p.Show(e.Adds.Length)),
				Notes:   []diag.Note{{Span: panels[0].Span, Message: titled(&panels[0].Item) + " stands here"}},
				Fixes:   []diag.Fix{{Title: "give it tenons of full length, or loose ones beside the stubs"}},
			}
			if panels[0].Of.Material.To.Kind != plan.Solid {
				f.Fixes = append(f.Fixes, diag.Fix{Title: "glue the sheet in all round, and say `glue edges`"})
			}
			pass.Report(f)
		}
	},
}
