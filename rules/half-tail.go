package rules

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var halfTail = &Rule{
	Name: "half-tail", Group: Joints, Severity: diag.Warning,
	Summary: "a row of dovetails begins with a tail in place of a half pin",
	Doc: `A half pin at each edge is held between the board and its tail, and keeps the edge of the other board from cupping away.
A tail at the very edge is glued on one side only: the board cups away from it there and the joint opens.

Leave "starts" out: a row then begins and ends with half pins. Where a groove for the bottom wants a wide half pin below, that is
still a half pin.`,
	Sources: `Common practice, no source.`,
	Sound:   `A row that says nothing and one that says that it starts with a pin.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 1/2
  joint dovetail slope 1:7 starts tail
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Good: `wood oak { species "white oak" ; sawn quarter }
climate { shop 8% ; dry 6% ; humid 11% }
case box {
  wide 16 ; high 8 ; deep 10
  of oak 1/2
  joint dovetail slope 1:7 starts pin
  across {
    side left
    down { top lid ; open ; bottom floor }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		for c := range corners(pass.Plan, plan.Dovetail) {
			if c.Starts.Is != "tail" {
				continue
			}
			pass.Report(diag.Finding{
				Subject: c.subject,
				Span:    c.Starts.Span,
				Message: "the row of dovetails begins with a tail: the other board cups away from it at the edge",
				Fixes: []diag.Fix{{
					Title: "write `starts pin`, or leave `starts` out",
					Edits: []diag.Edit{{Span: c.Starts.Span, Text: "pin"}},
				}},
			})
		}
	},
}
