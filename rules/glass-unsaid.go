package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	paneLow = &Figure{
		Name: "low", Why: "how high above the floor the lower edge of a pane is that is asked about in a piece that is no door", Basis: SecondHand,
		Source: "18 in (457 mm): International Residential Code, R308.4.3, on windows, from a page that quotes it", Dim: lang.Length, Length: 18 * wood.Inch, Metric: 457 * wood.Millimetre,
	}
	onFloorFrom = &Figure{
		Name: "tall", Why: "from which height a piece is taken to stand on the floor, and not on something", Basis: Practice,
		Source: "24 in (600 mm)", Dim: lang.Length, Length: 24 * wood.Inch, Metric: 600 * wood.Millimetre,
	}
)

var glassUnsaid = &Rule{
	Name: "glass-unsaid", Group: Structure, Severity: diag.Advice,
	Summary: "a plan does not say what sort of glass is in a door, or near the floor",
	Doc: `Ordinary glass breaks into long blades. A door is slammed, and what is near the floor is within reach of feet, of a vacuum cleaner and of small
children. Tempered glass is made to its size and cannot be cut afterwards, so that it is ordered before the frame is closed.

Ask what the standard and the code of the place want there, and say what is ordered: "kind tempered", "kind laminated" or "kind float". The rule
asks once for each frame, about doors and about panes that begin low in a piece that stands on the floor. It does not judge what is said: which
glass is wanted in furniture, how thick and how marked, is for the standard, the local code and the glazier.`,
	Sources: `For doors and windows in buildings in the United States: 16 CFR 1201 (safety standard for architectural glazing materials), whose scope names
doors; for panes near the floor as the figure says. Neither was written for furniture.`,
	Sound:   `A door whose glass is said to be tempered; a pane high up in a piece that is no door; a picture frame; a small case that stands on something.`,
	Bad:     glazed("glass pane { thick 1/8 ; joint rabbet 3/8 x 3/8 }"),
	Good:    glazed("glass pane { thick 1/8 ; kind tempered ; joint rabbet 3/8 x 3/8 }"),
	Figures: []*Figure{paneLow, onFloorFrom},
	Check: func(pass *Pass) {
		p := pass.Plan
		asked := map[diag.Span]bool{} // frames, of which it asks once
		ask := func(g *plan.Glass, where string) {
			if g.Kind.Is != "" || asked[g.In.Name.Span] {
				return
			}
			asked[g.In.Name.Span] = true
			pass.Report(diag.Finding{
				Subject: plan.PathOf(g), Span: g.Name.Span,
				Message: fmt.Sprintf("%s %s, and the plan does not say what sort of glass it is", titled(&g.Item), where),
				Fixes:   []diag.Fix{{Title: "ask what the standard and the local code want there, and say `kind tempered`, `kind laminated` or `kind float`"}},
			})
		}
		for d := range plan.AllOf[*plan.Door](p) {
			if d.Leaf.Frame == nil {
				continue
			}
			things, _ := d.Leaf.Frame.Within(mostWithin)
			for _, w := range things {
				if g, ok := w.Node.(*plan.Glass); ok {
					ask(g, "is in "+titled(&d.Item))
				}
			}
		}
		for s := range piecesIn(p, func(a *plan.Assembly, _ []*plan.Member) bool { return standsTall(pass, a) }) {
			if s.anchored() != nil {
				continue // it may hang
			}
			for _, w := range s.things {
				g, ok := w.Node.(*plan.Glass)
				if !ok || !w.Box(g.Cell)[plan.Down].Known() {
					continue
				}
				above := s.Outside[plan.Down].Length - w.Box(g.Cell)[plan.Down].To()
				if above >= 0 && above < pass.Length(paneLow, s.subject) {
					ask(g, "begins "+exact(p, above)+" above the floor")
				}
			}
		}
	},
}

// standsTall reports whether a piece is so high that it is taken to stand on the floor. A frame by itself is a picture's,
// or a mirror's.
func standsTall(pass *Pass, a *plan.Assembly) bool {
	high := a.Outside[plan.Down]
	return a.Kind != plan.Frame && high.Known() && high.Length >= pass.Length(onFloorFrom, plan.PathOf(a))
}
