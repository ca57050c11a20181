package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var tongueRoom = &Figure{
	Name: "room", Why: "how much deeper than its tongue a groove is at least", Basis: Practice,
	Source: "1/32 (0.8 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: 800 * wood.Micrometre,
}

var tongueBottoms = &Rule{
	Name: "tongue-bottoms", Group: Joints, Severity: diag.Error,
	Summary: "a tongue reaches the floor of its groove before its shoulders close",
	Doc: `A tongue as long as its groove is deep stands on the floor of it, with glue and dust below, and its shoulders stay open along
the whole joint, where everybody sees it.

Make the groove 1/32 (0.8 mm) deeper than the tongue: that is what plancheck takes where no depth is stated. Less is a warning.`,
	Sources: `Geometry; the room is common practice, no source.`,
	Sound:   `A groove just 1/32 deeper than its tongue; one of which no depth is said.`,
	Bad: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint tongue thick 1/4 long 3/8 groove deep 3/8
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Good: `wood pine { species "eastern white pine" ; sawn flat }
climate { shop 8% ; dry 6% ; humid 11% }
case books {
  wide 31 1/2 ; high 36 ; deep 11
  of pine 3/4
  joint tongue thick 1/4 long 3/8 groove deep 13/32
  across { side left ; down { top roof ; open ; bottom floor } ; side right }
}
`,
	Figures: []*Figure{tongueRoom},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tongues(p) {
			long, deep := t.Long, t.Groove.Deep
			if deep.How != plan.Written || !long.Known() {
				continue
			}
			room := pass.Length(tongueRoom, t.subject)
			left := deep.Length - long.Length
			f := diag.Finding{Subject: t.subject, Span: deep.Span}
			switch {
			case !wood.Over(left, 0):
				f.Message = fmt.Sprintf("a tongue %s long bottoms in a groove %s deep: its shoulders cannot close", p.ShowSaid(long), p.ShowSaid(deep))
			case wood.Under(left, room):
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("a groove %s deep leaves only %s below a tongue %s long for glue and dust", p.ShowSaid(deep), p.Show(left), p.ShowSaid(long))
			default:
				continue
			}
			f.Working = p.Paper().Start(long.Length, "tongue").Plus(room, "for glue and dust").Equals("depth of the groove").
				Versus(deep.Length, "stated").Working()
			f.Notes = []diag.Note{{Span: long.Span, Message: "the tongue's length"}}
			write := cutTo(p, deep.Span, upTo(p, long.Length+room))
			f.Fixes = []diag.Fix{{Title: "write `groove deep " + write + "`, or leave its depth out", Edits: []diag.Edit{{Span: deep.Span, Text: write}}}}
			pass.Report(f)
		}
	},
}
