package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var rabbetShallow = &Rule{
	Name: "rabbet-shallow", Group: Lengths, Severity: diag.Error,
	Summary: "a back is thicker than its rabbet is deep",
	Doc: `A back that stands out behind the sides keeps the case off the wall, and it rocks there.

A rabbet is written into the thickness x from the edge. From the back edge it must be at least as deep as the back is thick.
A sheet is as thick as it measures, not as it is called: say "actual".`,
	Sources: `Geometry.`,
	Sound:   `A rabbet as deep as the sheet really is thick, and one that is deeper.`,
	Bad: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 6mm ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 3/8 x 3/16 } }
    side right
  }
}
`,
	Good: `sheet ply { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 6mm ; emission "TSCA Title VI" }
wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  across {
    side left
    behind { open ; back rear { of ply ; joint rabbet 3/8 x 1/4 } }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for n := range plan.AllOf[*plan.Panel](p) {
			if n.Word != "back" || !n.Size.Thick.Known() {
				continue
			}
			for _, e := range n.Edges {
				if e == nil || e.Joint == nil || e.Joint.Kind.Is != plan.Rabbet {
					continue
				}
				deep, thick := e.Joint.Rabbet.Deep, n.Size.Thick
				if deep.How != plan.Written || !wood.Under(deep.Length, thick.Length-p.Tape.Tolerance()) {
					continue
				}
				enough := cutTo(p, deep.Span, upTo(p, thick.Length))
				pass.Report(diag.Finding{
					Subject: plan.PathOf(n),
					Span:    deep.Span,
					Message: fmt.Sprintf("the rabbet runs %s from the edge, but %s is %s thick and stands %s out behind",
						p.ShowSaid(deep), titled(&n.Item), p.ShowSaid(thick), exact(p, thick.Length-deep.Length)),
					Fixes: []diag.Fix{{
						Title: "write `" + enough + "` from the edge, or more",
						Edits: []diag.Edit{{Span: deep.Span, Text: enough}},
					}},
				})
				break
			}
		}
	},
}
