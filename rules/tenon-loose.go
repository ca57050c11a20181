package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	looseStarves = &Figure{
		Name: "starves", Why: "how much thinner than its mortise a tenon is at most", Basis: Practice,
		Source: "0.006 (0.15 mm); a column on wood science calls 0.002 to 0.006 a glue line ideal", Dim: lang.Length,
		Length: 6 * wood.Inch / 1000, Metric: 150 * wood.Micrometre,
	}
	looseHoldsNot = &Figure{
		Name: "holds-not", Why: "beyond which only a glue that fills gaps holds", Basis: Practice,
		Source: "0.015 (0.4 mm)", Dim: lang.Length, Length: 15 * wood.Inch / 1000, Metric: 400 * wood.Micrometre,
	}
)

var tenonLoose = &Rule{
	Name: "tenon-loose", Group: Tenons, Severity: diag.Warning,
	Summary: "a tenon is thinner than its mortise by more than its glue fills",
	Doc: `Most glues hold in a thin line and shrink as they dry: in a gap they pull away from the wood and leave bubbles, and the joint holds
by habit. In trials mortises and tenons were strongest where the tenon was about a tenth of a millimetre thicker than its mortise.

Cut the tenon to push in by hand with some effort. If it has come out thin, glue a shaving or a veneer to its cheek and fit it again; or use
a glue that fills such a gap, and say so: "kind epoxy", or "fills" with the figure of its label. A joint that is "dry" is not judged.`,
	Sources: `Strongest at 0.1 mm of tightness: Elek et al., European Journal of Wood and Wood Products 78(2), 2020; Liu et al., Forests
15(9):1612, 2024. That most wood glues fill no gaps: Wood Handbook, FPL-GTR-190, 2010, chapter 10. Which kinds do: a woodworking glue
chart. The limits are ours.`,
	Sound: `A tenon just 0.006 thinner than its mortise; one 0.012 thinner with epoxy; one whose glue fills 1/32 and that is 1/32 thinner; a
dry one.`,
	Bad: `glue white { kind pva }
frame gate {
  glue white
  wide 18 ; high 24 ; thick 1
  joint tenon thick 0.355 long 1 1/4 mortise thick 0.375
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `glue white { kind pva }
frame gate {
  glue white
  wide 18 ; high 24 ; thick 1
  joint tenon thick 0.375 long 1 1/4 mortise thick 0.375
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Figures: []*Figure{looseStarves, looseHoldsNot},
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range mortised(p) {
			slack, ok := t.slack()
			if !ok || t.Joint.Dry.On || !wood.Over(slack, pass.Length(looseStarves, t.subject)) {
				continue
			}
			glue, limit := t.of.In.Glue.To, pass.Length(looseStarves, t.subject)
			wide := wood.Over(slack, pass.Length(looseHoldsNot, t.subject))
			if fills(glue, slack) || !wide && fillsGaps(glue) {
				continue
			}
			f := fitFinding(t)
			f.Message = fmt.Sprintf("a %s %s thick is %s loose in a mortise of %s: ", t.called(), p.ShowSaid(t.Joint.Thick), p.Show(slack), p.ShowSaid(t.Joint.Mortise.Thick))
			f.Fixes = []diag.Fix{{Title: "leave the tenon thicker, to push in by hand, or use a glue that fills the gap"}}
			switch {
			case glue == nil:
				f.Message += "most glues do not fill that"
			case fillsGaps(glue):
				f.Message += "that is much even for a glue that fills gaps"
				f.Fixes = []diag.Fix{{Title: "leave the tenon thicker, to push in by hand"}}
			default:
				f.Message += "glue " + quote(glue.Name.Text) + " does not fill that"
				f.Notes = append(f.Notes, diag.Note{Span: glue.Name.Span, Message: "the glue is said here"})
				if wide {
					f.Severity = diag.Error
				}
			}
			f.Working = p.Paper().Start(t.Joint.Mortise.Thick.Length, "mortise").Minus(t.Joint.Thick.Length, "tenon").
				Versus(limit, "loose at most").Working()
			pass.Report(f)
		}
	},
}

// slack is by how much a mortise is wider than its tenon is thick, where the plan states both; below
// zero, by how much it is tighter.
func (t tenon) slack() (wood.Length, bool) {
	m := t.Joint.Mortise
	if m == nil || m.Thick.How != plan.Written || !t.Joint.Thick.Known() {
		return 0, false
	}
	return m.Thick.Length - t.Joint.Thick.Length, true
}

// fitFinding is a finding about how a tenon fits its mortise.
func fitFinding(t tenon) diag.Finding {
	f := diag.Finding{Subject: t.subject, Span: t.Joint.Mortise.Thick.Span}
	if at := t.Joint.Thick.Span; at.Known() {
		f.Notes = []diag.Note{{Span: at, Message: "the tenon's thickness"}}
	}
	return f
}

// fills reports whether a glue's label says that it fills such a gap.
func fills(glue *plan.Glue, gap wood.Length) bool {
	return glue != nil && glue.Fills.Known() && !wood.Over(gap, glue.Fills.Length)
}

// fillsGaps reports whether a glue of that kind fills gaps, where its label says no figure.
func fillsGaps(glue *plan.Glue) bool {
	if glue == nil || glue.Fills.Known() {
		return false
	}
	family, _ := wood.FindGlue(glue.Kind.Is)
	return family.Fills == "good" || family.Fills == "excellent"
}
