package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	reliefLeast = &Figure{
		Name: "least", Why: "how much deeper than its tenon a mortise is at least", Basis: Practice,
		Source: "1/32 (0.8 mm); 1/16 is usual", Dim: lang.Length, Length: wood.Inch / 32, Metric: 800 * wood.Micrometre,
	}
	reliefMost = &Figure{
		Name: "most", Why: "how much deeper than its tenon a mortise is at most", Basis: Practice,
		Source: "1/4 (6 mm): what is deeper weakens the stick and holds nothing", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
)

var tenonBottoms = &Rule{
	Name: "tenon-bottoms", Group: Tenons, Severity: diag.Error,
	Summary: "a tenon reaches the floor of its mortise before its shoulders close, or leaves it half empty",
	Doc: `Glue is driven before the tenon and has nowhere to go; chips lie on the floor of the mortise. A tenon as long as its
mortise is deep holds its shoulders open, and under the clamps the stile splits.

Make the mortise 1/16 (1.5 mm) deeper than the tenon: that is what plancheck takes where no depth is stated. Less than 1/32 is a
warning, and so is more than 1/4, which weakens the stick for nothing.`,
	Sources: `That a mortise is cut deeper than its tenon: W. Noyes, Handwork in Wood, 1910, Mortise and Tenon Joints. The amounts are
common practice, no source.`,
	Sound: `A mortise 1/32 deeper than its tenon, one 1/4 deeper, one whose depth is left to the rule, and a through tenon.`,
	Bad: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 mortise deep 1 1/4
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Good: `frame leaf {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 3/16 mortise deep 1 1/4
  across { stile left 2 1/4 ; down { rail head 2 1/4 ; space ; rail foot 3 } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{reliefLeast, reliefMost},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			j := t.Joint
			if j.Through.On || j.Mortise == nil || j.Mortise.Deep.How != plan.Written || !j.Long.Known() {
				continue
			}
			long, deep := j.Long, j.Mortise.Deep
			left := deep.Length - long.Length
			f := diag.Finding{Subject: t.subject, Span: deep.Span, Severity: diag.Warning}
			switch {
			case !wood.Over(left, 0):
				f.Severity = diag.Error
				f.Message = fmt.Sprintf("a tenon %s long bottoms in a mortise %s deep: its shoulders cannot close", p.ShowSaid(long), p.ShowSaid(deep))
			case wood.Under(left, pass.Length(reliefLeast, t.subject)):
				f.Message = fmt.Sprintf("a mortise %s deep leaves only %s below a tenon %s long for glue and chips", p.ShowSaid(deep), p.Show(left), p.ShowSaid(long))
			case halfEmpty(pass, t.End):
				f.Message = fmt.Sprintf("a mortise %s deep leaves %s empty below a tenon %s long", p.ShowSaid(deep), p.Show(left), p.ShowSaid(long))
			default:
				continue
			}
			f.Working = p.Paper().Start(long.Length, "tenon").Plus(p.Relief(), "for glue and chips").Equals("depth of the mortise").
				Versus(deep.Length, "stated").Working()
			if long.Span.Known() {
				f.Notes = []diag.Note{{Span: long.Span, Message: "the tenon's length"}}
			}
			f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write `mortise deep %s`", cutTo(p, deep.Span, long.Length+p.Relief()))}}
			pass.Report(f)
		}
	},
}

// halfEmpty reports whether a mortise that ends inside its stick is stated much deeper than its
// tenon is long.
func halfEmpty(pass *Pass, e *plan.End) bool {
	j, mate := e.Joint, e.MateSize()
	return j.Kind.Is == plan.Tenon && j.Mortise.Deep.How == plan.Written && j.Long.Known() &&
		wood.Over(j.Mortise.Deep.Length-j.Long.Length, pass.Length(reliefMost, plan.PathOf(e.Of))) &&
		(!mate.Known() || wood.Under(j.Mortise.Deep.Length, mate.Length))
}
