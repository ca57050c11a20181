package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var paneHold = &Figure{
	Name: "hold", Why: "how far a pane still lies behind the lip of its rabbet when it has moved to the other side", Basis: Practice,
	Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var glassSlipsOut = &Rule{
	Name: "glass-slips-out", Group: Lengths, Severity: diag.Warning,
	Summary: "the rabbets of a pane are too narrow to hold it",
	Doc: `A pane is smaller than its place, and lies where it likes: down at the bottom, and to one side as the door swings. At the other edge it lies behind
the lip by the width of the rabbet less all of the gap. Where that is next to nothing, a pane that is cut a little short drops out of the frame.

Cut the rabbet wider: 3/8 from the edge is usual, and 1/4 is enough with a gap of 1/8. A rabbet is written into the thickness x from the edge. A
pane without a rabbet is made smaller than the opening in which it stands, and nothing holds it; so is one whose rabbet does not say how far
from the edge it goes.`,
	Sources: `Arithmetic. How much is to be held is common practice, no source.`,
	Sound:   `A rabbet of 1/4 and a gap of 1/8, which leaves just 1/8; a narrower one with a smaller gap.`,
	Bad:     glazed("glass pane { thick 1/8 ; kind tempered ; joint rabbet 3/8 x 3/16 }"),
	Good:    glazed("glass pane { thick 1/8 ; kind tempered ; joint rabbet 3/8 x 1/4 }"),
	Figures: []*Figure{paneHold},
	Check: func(pass *Pass) {
		var said onePer[diag.Span]
		for g := range plan.AllOf[*plan.Glass](pass.Plan) {
			switch {
			case !closed(&g.Item):
			case !checkRebated(&said, g):
				checkPaneHeld(pass, &said, g)
			}
		}
		said.report(pass)
	},
}

// checkRebated asks for the rabbet of a pane that has none, or that goes nobody knows how far.
func checkRebated(said *onePer[diag.Span], g *plan.Glass) bool {
	f := diag.Finding{Subject: plan.PathOf(g), Span: g.Name.Span, Fixes: []diag.Fix{{Title: "say `joint rabbet` with how far it goes into the thickness x from the edge"}}}
	switch {
	case !liesIn(g):
		return false
	case g.Joint == nil:
		f.Message = fmt.Sprintf("%s has no rabbet: it is made smaller than its opening, and nothing holds it", titled(&g.Item))
	case g.Joint.Kind.Is == plan.Rabbet && g.Joint.Rabbet.Across.Said() && !g.Joint.Rabbet.Deep.Said():
		f.Severity = diag.Advice
		f.Message = fmt.Sprintf("the rabbet of %s does not say how far from the edge it goes, so that nobody can tell how large the pane is", titled(&g.Item))
	default:
		return false
	}
	said.add(f.Span, f)
	return true
}

// checkPaneHeld lets a pane move to one side, and looks how far it is held at the other.
func checkPaneHeld(pass *Pass, said *onePer[diag.Span], g *plan.Glass) {
	p, subject := pass.Plan, plan.PathOf(g)
	least := pass.Length(paneHold, subject)
	for _, axis := range []plan.Axis{plan.Across, plan.Down} {
		near, far, ok := rebatesAlong(g, axis)
		gap := gapAlong(g, axis)
		held := min(near, far) - gap.Length
		if !ok || !gap.Known() || gap.Length < 0 || !wood.Under(held, least-p.Tape.Tolerance()) {
			continue
		}
		f := diag.Finding{
			Subject: subject, Span: standing(g.Name.Span, g.Joint.Rabbet.Deep.Span),
			Message: fmt.Sprintf("%s lies in rabbets of %s and is %s smaller than its place: moved to one side it is held by only %s at the other",
				titled(&g.Item), p.Show(min(near, far)), p.Show(gap.Length), exact(p, held)),
			Working: p.Paper().Start(min(near, far), "rabbet, from the edge").Minus(gap.Length, "gap in all").Equals("held").Versus(least, "wanted at least").Working(),
			Fixes:   []diag.Fix{{Title: fmt.Sprintf("cut the rabbet %s from the edge, or wider", p.Show(upTo(p, least+gap.Length)))}},
		}
		if held <= 0 {
			f.Severity = diag.Error
			f.Message = fmt.Sprintf("%s lies in rabbets of %s and is %s smaller than its place: moved to one side it falls out at the other",
				titled(&g.Item), p.Show(min(near, far)), p.Show(gap.Length))
		}
		said.add(f.Span, f)
		return
	}
}
