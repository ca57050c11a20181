package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var lapDepths = &Rule{
	Name: "lap-depths", Group: Lengths, Severity: diag.Error,
	Summary: "the two halves of a lap do not add up to the thickness",
	Doc: `Two halves that are together less than the wood leave one part standing proud of the other at every crossing; more
than the wood, and there is a step the other way and a gap in the joint.

What is cut from one and what is cut from the other are together as thick as the wood. Say one depth and leave the other out: it
is then what remains.`,
	Sources: `Geometry; halved joints: W. Noyes, Handwork in Wood, 1910, joints no. 14 to 16.`,
	Sound: `A lap of unequal halves that add up to the thickness, and a rail thinner than its stiles that lies flush with their
faces.`,
	Bad: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint half-lap deep 7/16 own 3/8
  across {
    stile left 2
    down { rail head 2 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint half-lap deep 3/8 own 3/8
  across {
    stile left 2
    down { rail head 2 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for e := range ends(p) {
			j := e.Joint
			m := e.Of.(*plan.Member)
			if j.Kind.Is != plan.HalfLap || j.Deep.How != plan.Written || j.Own.How != plan.Written || !m.Size.Thick.Known() {
				continue
			}
			together, thick := j.Own.Length+j.Deep.Length, m.Size.Thick.Length
			if agree(p, together, thick) || flushWithMates(p, e, together) {
				continue
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(m),
				Span:    j.Own.Span,
				Message: fmt.Sprintf("a lap cut %s into one part and %s into the other is %s in all, but the wood is %s thick: the faces step by %s",
					p.ShowSaid(j.Own), p.ShowSaid(j.Deep), p.Show(together), p.Show(thick), p.Show((together - thick).Abs())),
				Working: p.Paper().Start(j.Own.Length, "cut from the end").Plus(j.Deep.Length, "cut from its mate").Equals("in all").
					Versus(thick, "thickness of "+called(&m.Item)).Working(),
				Fixes: mendOwn(p, j, thick),
			})
		}
	},
}

// flushWithMates reports whether a lap of so much in all lies flush with the far face of each
// mate, which may be thicker than the end.
func flushWithMates(p *plan.Plan, e *plan.End, together wood.Length) bool {
	for _, mate := range e.Mates {
		if !mate.Size.Thick.Known() || !agree(p, together, mate.Size.Thick.Length) {
			return false
		}
	}
	return len(e.Mates) > 0
}

func mendOwn(p *plan.Plan, j *plan.Joint, thick wood.Length) []diag.Fix {
	own := thick - j.Deep.Length
	if !wood.Over(own, 0) {
		return nil
	}
	return []diag.Fix{{Title: "write `own " + cutTo(p, j.Own.Span, own) + "`, or leave `own` out"}}
}
