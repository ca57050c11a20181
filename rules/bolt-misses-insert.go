package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var insertTurns = &Figure{
	Name: "turns", Why: "how many times its thickness a bolt or a knob goes into its thread at least", Basis: Practice,
	Source: "once its own thickness", Dim: lang.Plain, Number: 1,
}

var boltMissesInsert = &Rule{
	Name: "bolt-misses-insert", Group: Joints, Severity: diag.Error,
	Summary: "a bolt or a knob does not reach into its thread, or stops at the end of its hole",
	Doc: `What is meant to come apart is screwed up many times. A bolt that catches two turns of its insert strips them on the third evening, and
one that is longer than its hole jacks the joint open, or pushes the insert out at the back.

Behind its mate the bolt is to go into the thread as far as it is thick, at least; where the insert is shorter than that, through all of it. Bore the hole
behind the insert as deep as the bolt goes, and say "deep".`,
	Sources: `Arithmetic; see the figure.`,
	Sound:   `A bolt of 6 mm that goes 12 mm into an insert; one that goes beyond a short insert into a hole that is deep enough; a knob of 2 through a side of 7/8.`,
	Bad: `bolt   m6  { thick 6mm ; long 25mm }
insert nut { thick 10mm ; long 13mm }
frame side {
  wide 40 ; high 20 ; thick 1
  across { post left 1 ; down { space 6 ; rail low 5 { joint bolt m6 insert nut at 2 1/2 } ; space } ; post right 1 }
}
`,
	Good: `bolt   m6  { thick 6mm ; long 35mm }
insert nut { thick 10mm ; long 13mm }
frame side {
  wide 40 ; high 20 ; thick 1
  across { post left 1 ; down { space 6 ; rail low 5 { joint bolt m6 insert nut at 2 1/2 } ; space } ; post right 1 }
}
`,
	Figures: []*Figure{insertTurns},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.BoltJoint, plan.Knob) {
			j, mate := t.Joint, t.MateSize()
			bolt, sunk := j.Hardware.To, j.Counterbore.Or(0)
			if bolt == nil || !bolt.Long.Known() || !mate.Known() || !sunk.Known() || j.Kind.Is == plan.BoltJoint && j.Insert.To == nil {
				continue
			}
			goes := bolt.Long.Length + sunk.Length - mate.Length
			least := wood.Length(0)
			if bolt.Thick.Known() {
				least = fraction(bolt.Thick.Length, pass.Number(insertTurns, t.subject))
			}
			thread := "the wood"
			if insert := j.Insert.To; insert != nil {
				thread = "its insert"
				if insert.Long.Known() {
					least = min(least, insert.Long.Length)
				}
			}
			f := diag.Finding{Subject: t.subject, Span: fastenerSpan(j), Notes: screwNotes(bolt)}
			paper := p.Paper().Start(bolt.Long.Length, "the "+bolt.Word)
			if sunk.Length != 0 {
				paper.Plus(sunk.Length, "its head is sunk")
			}
			paper.Minus(mate.Length, "through the mate").Equals("goes into the end")
			switch {
			case !wood.Over(goes, 0):
				f.Message = fmt.Sprintf("a %s %s long does not come through its mate, which is %s thick", bolt.Word, p.ShowSaid(bolt.Long), p.Show(mate.Length))
				paper.Versus(least, "wanted")
			case wood.Under(goes, least):
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("a %s %s long goes only %s into %s: %s is wanted", bolt.Word, p.ShowSaid(bolt.Long), exact(p, goes), thread, exact(p, least))
				paper.Versus(least, "wanted")
			case j.Deep.Known() && wood.Over(goes, j.Deep.Length):
				f.Message = fmt.Sprintf("a %s %s long stops at the end of a hole %s deep before it draws", bolt.Word, p.ShowSaid(bolt.Long), p.ShowSaid(j.Deep))
				paper.Versus(j.Deep.Length, "depth of the hole")
			default:
				continue
			}
			f.Working = paper.Working()
			pass.Report(f)
		}
	},
}
