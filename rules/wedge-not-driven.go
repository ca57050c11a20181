package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var wedgeNotDriven = &Rule{
	Name: "wedge-not-driven", Group: Tenons, Severity: diag.Error,
	Summary: "nothing can drive the wedges of a tenon",
	Doc: `Wedges are driven with a hammer into the end of a tenon that comes through its mate. In a blind mortise nobody gets at them:
there they are fox wedges, which the floor of the mortise drives as the joint is clamped. A fox wedge that is no longer than the room below
the tenon, or that stands in a tenon without a floor below it, stays as it is and spreads nothing.

Say "through" or "fox", whichever is meant, and give a fox wedge the length to reach the floor well before the shoulders close.`,
	Sources: `Geometry. Wedged and fox-wedged tenons: W. Noyes, Handwork in Wood, 1910, joints no. 34 to 36.`,
	Sound:   `A through tenon with wedges; a blind one with fox wedges that reach the floor.`,
	Bad: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4 wedged count 2
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Good: `frame gate {
  wide 18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 through wedged count 2
  across { stile left 2 1/4 ; down { space 4 ; rail head 2 1/4 ; space } ; stile right 2 1/4 }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for t := range tenons(p) {
			w, long, deep := t.Joint.Wedged, t.Joint.Long, t.Joint.Mortise.Deep
			if w == nil || !long.Known() {
				continue
			}
			f := diag.Finding{Subject: t.subject, Span: w.Span}
			switch mate := t.MateSize(); {
			case w.Fox.On && t.Joint.Through.On:
				f.Message = "fox wedges in a through tenon: it has no floor below it that drives them"
				f.Fixes = []diag.Fix{{Title: "leave `fox` out and drive them from outside, or leave `through` out"}}
			case w.Fox.On && w.Long.Known() && deep.Known() && !wood.Over(w.Long.Length, deep.Length-long.Length):
				f.Span = w.Long.Span
				f.Message = fmt.Sprintf("a fox wedge %s long does not reach the floor of the mortise before the shoulders close", p.ShowSaid(w.Long))
				f.Working = p.Paper().Start(deep.Length, "depth of the mortise").Minus(long.Length, "tenon").Equals("room below it").
					Versus(w.Long.Length, "the wedge").Working()
				f.Fixes = []diag.Fix{{Title: "make the wedges longer than the room below the tenon by what the saw cut is to open"}}
			case !w.Fox.On && !t.Joint.Through.On && mate.Known() && wood.Under(long.Length, mate.Length):
				f.Message = fmt.Sprintf("nobody can drive wedges into a tenon that ends inside its mate: it is %s long, and the mate %s", p.ShowSaid(long), p.Show(mate.Length))
				f.Notes = matesNamed(t.End)
				f.Fixes = []diag.Fix{{Title: "let the tenon go through, `through`, or make them fox wedges, `fox`"}}
			default:
				continue
			}
			pass.Report(f)
		}
	},
}

// matesNamed points at what an end goes into.
func matesNamed(e *plan.End) []diag.Note {
	var notes []diag.Note
	for _, m := range e.Mates {
		notes = append(notes, diag.Note{Span: m.Span, Message: "it goes into " + titled(&m.Item)})
	}
	return notes
}
