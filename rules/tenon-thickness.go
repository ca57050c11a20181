package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	tenonThinnest = &Figure{
		Name: "thinnest", Why: "how thick a tenon is at least, as a part of its stick", Basis: Practice,
		Source: "a quarter; the rule of thumb is a third", Dim: lang.Plain, Number: 0.25,
	}
	tenonThickest = &Figure{
		Name: "thickest", Why: "how thick a tenon is at most, as a part of its stick", Basis: Practice,
		Source: "a half; the rule of thumb is a third", Dim: lang.Plain, Number: 0.5,
	}
	tenonBreaks = &Figure{
		Name: "breaks", Why: "below which part of its stick a tenon is an error", Basis: Practice,
		Source: "a fifth, at which a tenon is a veneer between two shoulders", Dim: lang.Plain, Number: 0.2,
	}
)

var tenonThickness = &Rule{
	Name: "tenon-thickness", Group: Tenons, Severity: diag.Warning,
	Summary: "a tenon is far from a third of its stick's thickness",
	Doc: `A thin tenon snaps at the shoulder; a thick one leaves cheeks beside the mortise that split when the joint is driven
home. About a third makes the tenon as strong as the two walls round it, and suits the chisel that is nearest.

Up to a half is fine where the mortised part is the thicker one, and a bare-faced tenon, which has one shoulder, may be
thicker still. Below a fifth it is an error.`,
	Sources: `A third: W. Fairham, Woodwork Joints, The Mortise and Tenon Joint; W. Noyes, Handwork in Wood, 1910, joint no. 42. That
thickness counts first in bending: Li et al., Forests 12(4):478, 2021. The edges of the band are common practice, no source.`,
	Sound: `Tenons of a quarter, a third and a half of the rail; a bare-faced one of more than a half, in a thicker stile.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/2 long 1 1/2
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/2
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{tenonThinnest, tenonThickest, tenonBreaks},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			thick, stick := t.Joint.Thick, t.of.Size.Thick
			if !thick.Known() || !stick.Known() {
				continue
			}
			f := diag.Finding{Subject: t.subject, Span: thick.Span}
			below := func(limit *Figure) bool {
				return wood.Under(thick.Length, fraction(stick.Length, pass.Number(limit, t.subject)))
			}
			switch {
			case below(tenonBreaks):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a tenon %s thick on a stick %s thick snaps off at the shoulder", p.ShowSaid(thick), p.Show(stick.Length))
			case below(tenonThinnest):
				f.Message = fmt.Sprintf("a tenon %s thick is thin for a stick %s thick", p.ShowSaid(thick), p.Show(stick.Length))
			case t.fat(pass):
				f.Message = fmt.Sprintf("a tenon %s thick on a stick %s thick leaves weak walls beside its mortise", p.ShowSaid(thick), p.Show(stick.Length))
			default:
				continue
			}
			f.Working = p.Paper().Start(stick.Length, "thickness of "+called(&t.of.Item)).Over(3, "a third").Equals("about").
				Versus(thick.Length, "stated").Working()
			f.Fixes = []diag.Fix{{Title: "make it about a third of the stick, to suit the nearest chisel or cutter"}}
			pass.Report(f)
		}
	},
}

// fat reports whether a tenon is too thick for its stick, both known. A bare-faced one has one shoulder, and
// may be thicker.
func (t tenon) fat(pass *Pass) bool {
	return !t.Joint.Barefaced.On && wood.Over(t.Joint.Thick.Length, fraction(t.of.Size.Thick.Length, pass.Number(tenonThickest, t.subject)))
}
