package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var boltMissesNut = &Rule{
	Name: "bolt-misses-nut", Group: Joints, Severity: diag.Error,
	Summary: "a bolt does not reach through its barrel nut, or stops at the end of its hole",
	Doc: `A bolt that ends in the middle of its barrel nut strips the few threads that it has; one that is longer than its hole stops against
the wood before it draws the joint together.

From under its head the bolt goes through the mate, then along the rail to the middle of the nut and half of it farther. It is to be as long as that, and shorter than the mate
and the hole together. The rule looks where the plan says "nut-at", from the end to the middle of the nut.`,
	Sources: `Arithmetic.`,
	Sound:   `A bolt of 4 through 2 1/4, sunk 3/8, with a nut of 5/8 whose middle is 1 3/4 from the end: 3 15/16 is wanted; its hole half an inch deeper.`,
	Bad: `bolt bed { thick 3/8 ; long 3 1/2 ; nut 5/8 }
frame side {
  wide 40 ; high 20 ; thick 2 1/4
  across { post left 2 1/4 ; down { space 6 ; rail low 5 { thick 1 1/4 ; joint bolt bed counterbore 3/8 nut-at 1 3/4 deep 2 1/2 at 2 1/2 } ; space } ; post right 2 1/4 }
}
`,
	Good: `bolt bed { thick 3/8 ; long 4 ; nut 5/8 }
frame side {
  wide 40 ; high 20 ; thick 2 1/4
  across { post left 2 1/4 ; down { space 6 ; rail low 5 { thick 1 1/4 ; joint bolt bed counterbore 3/8 nut-at 1 3/4 deep 2 1/2 at 2 1/2 } ; space } ; post right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range joinedBy(p, plan.BoltJoint) {
			j, mate := t.Joint, t.MateSize()
			bolt, sunk := j.Hardware.To, j.Counterbore.Or(0)
			if bolt == nil || !bolt.Long.Known() || !bolt.Nut.Known() || !j.NutAt.Known() || !mate.Known() || !sunk.Known() {
				continue
			}
			least := mate.Length - sunk.Length + j.NutAt.Length + bolt.Nut.Length/2
			f := diag.Finding{Subject: t.subject, Span: fastenerSpan(j), Notes: screwNotes(bolt)}
			paper := throughMate(p, mate, sunk)
			switch hole := j.Deep; {
			case wood.Under(bolt.Long.Length, least):
				f.Message = fmt.Sprintf("a bolt %s long does not reach through its nut: it must be %s at least", p.ShowSaid(bolt.Long), exact(p, least))
				paper.Plus(j.NutAt.Length, "to the middle of the nut").Plus(bolt.Nut.Length/2, "half of the nut").Equals("at least")
			case hole.Known() && wood.Over(bolt.Long.Length, mate.Length-sunk.Length+hole.Length):
				f.Message = fmt.Sprintf("a bolt %s long stops at the end of its hole before it draws: it may be %s at most", p.ShowSaid(bolt.Long), exact(p, mate.Length-sunk.Length+hole.Length))
				paper.Plus(hole.Length, "depth of the hole").Equals("at most")
			default:
				continue
			}
			f.Working = paper.Versus(bolt.Long.Length, "the bolt").Working()
			title := "take a bolt " + p.Show(upTo(p, least)) + " long at least"
			if j.Deep.Known() {
				title = fmt.Sprintf("take a bolt from %s to %s long", p.Show(upTo(p, least)), p.Show(p.Tape.Floor(mate.Length-sunk.Length+j.Deep.Length)))
				if wood.Under(mate.Length-sunk.Length+j.Deep.Length, least) {
					title = "bore the hole past the nut: `deep " + p.Show(upTo(p, j.NutAt.Length+bolt.Nut.Length/2)) + "` at least"
				}
			}
			f.Fixes = []diag.Fix{{Title: title}}
			pass.Report(f)
		}
	},
}

// throughMate begins a working with what a bolt goes through before it comes to the end that it holds.
func throughMate(p *plan.Plan, mate, sunk plan.Length) *plan.Paper {
	paper := p.Paper().Start(mate.Length, "through the mate")
	if sunk.Length != 0 {
		paper.Minus(sunk.Length, "its head is sunk")
	}
	return paper
}
