package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var bridleLeft = &Figure{
	Name: "left", Why: "how much deeper than its mate is wide a bridle's slot may be, to be planed off", Basis: Published,
	Source: "W. Fairham, Woodwork Joints, The Bridle Joint: a quarter inch is left on each end", Dim: lang.Length, Length: wood.Inch / 4,
}

var bridleDepths = &Rule{
	Name: "bridle-depths", Group: Lengths, Severity: diag.Error,
	Summary: "a bridle's slot is not as deep as its mate is wide",
	Doc: `The slot of a bridle takes the whole width of the part that goes into it. A shallower one keeps the shoulders open
by what is missing; a deeper one leaves a hole at the bottom.

Saw the slot as deep as the mate is wide, and what is left on to be planed off besides. Unsaid, it is as deep as the mate is wide.`,
	Sources: `Geometry; bridle joints: W. Noyes, Handwork in Wood, 1910, joints no. 14 to 16, and W. Fairham, Woodwork Joints.`,
	Sound:   `A slot 1/4 deeper than its mate is wide, with a part that is as much longer.`,
	Bad: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint bridle deep 1 3/4 thick 1/4
  across {
    stile left 2
    down { rail head 2 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Good: `frame screen {
  wide 20 ; high 30 ; thick 3/4
  joint bridle deep 2 thick 1/4
  across {
    stile left 2
    down { rail head 2 ; space middle ; rail foot 2 }
    stile right 2
  }
}
`,
	Figures: []*Figure{bridleLeft},
	Check: func(pass *Pass) {
		p := pass.Plan
		for e := range ends(p) {
			j := e.Joint
			if j.Kind.Is != plan.Bridle || j.Deep.How != plan.Written || !e.Adds.Known() {
				continue
			}
			wide := e.Adds.Length // a bridle adds the width of its mate
			off := j.Deep.Length - wide
			if agree(p, off, 0) || off > 0 && !wood.Over(off, bridleLeft.Length+p.Tape.Tolerance()) {
				continue
			}
			what := "is %s too shallow"
			if off > 0 {
				what = "is %s too deep"
			}
			pass.Report(diag.Finding{
				Subject: plan.PathOf(e.Of),
				Span:    j.Deep.Span,
				Message: fmt.Sprintf("a bridle's slot %s deep "+what+" for a mate that is %s wide",
					p.ShowSaid(j.Deep), p.Show(off.Abs()), p.Show(wide)),
				Notes: []diag.Note{{Span: e.Mates[0].Span, Message: titled(&e.Mates[0].Item) + " goes into it"}},
				Fixes: []diag.Fix{{Title: "write `deep " + cutTo(p, j.Deep.Span, wide) + "`, or leave `deep` out"}},
			})
		}
	},
}
