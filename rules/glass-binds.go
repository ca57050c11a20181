package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var paneRoom = &Figure{
	Name: "room", Why: "how much room a pane has at each edge", Basis: SecondHand,
	Source: "1/16 (1.5 mm), which makes the pane 1/8 smaller than its place: several pages on glazing cabinet doors", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
}

var glassBinds = &Rule{
	Name: "glass-binds", Group: Lengths, Severity: diag.Warning,
	Summary: "a pane of glass has no room at its edges",
	Doc: `Glass does not give. A pane that is cut to the size of its rabbets touches them at a corner that is not quite square, or when the frame racks as
the door is slammed, and cracks from there.

Cut it 1/16 smaller at each edge, which is a "gap" of 1/8 in all, and what is taken where nothing is said. The sticks round a pane hold their
length along the grain, so that its place hardly changes through the year.`,
	Sources: `See the figure.`,
	Sound:   `A gap of 1/8 in all, said or not; of 3 in a plan in millimetres.`,
	Bad:     glazed("glass pane { thick 1/8 ; kind tempered ; joint rabbet 3/8 x 3/8 ; gap 1/32 }"),
	Good:    glazed("glass pane { thick 1/8 ; kind tempered ; joint rabbet 3/8 x 3/8 ; gap 1/8 }"),
	Figures: []*Figure{paneRoom},
	Check: func(pass *Pass) {
		var said onePer[diag.Span]
		for g := range plan.AllOf[*plan.Glass](pass.Plan) {
			checkPaneRoom(pass, &said, g)
		}
		said.report(pass)
	},
}

// checkPaneRoom looks at the two edges of a pane that have the least room.
func checkPaneRoom(pass *Pass, said *onePer[diag.Span], g *plan.Glass) {
	p, subject := pass.Plan, plan.PathOf(g)
	axis := plan.Across
	if gapAlong(g, plan.Down).Length < gapAlong(g, axis).Length {
		axis = plan.Down
	}
	near, far, ok := rebatesAlong(g, axis)
	gap, least := gapAlong(g, axis), pass.Length(paneRoom, subject)
	place := g.Cell[axis]
	if !ok || !gap.Known() || !place.Sized || !closed(&g.Item) || !wood.Under(gap.Length, 2*least-p.Tape.Tolerance()) {
		return
	}
	f := diag.Finding{
		Subject: subject, Span: standing(g.Name.Span, gap.Span),
		Message: fmt.Sprintf("%s has %s at each edge in its rabbets: glass that touches wood cracks", titled(&g.Item), exact(p, gap.Length/2)),
		Working: p.Paper().Start(place.Size, "sight size").Plus(near, "rabbet").Plus(far, "rabbet").Equals("from rabbet to rabbet").
			Minus(place.Size+near+far-gap.Length, "pane").Equals("room in all").Over(2, "edges").Equals("at each").Versus(least, "wanted at least").Working(),
		Fixes: []diag.Fix{{Title: fmt.Sprintf("write `gap %s`, in all", p.Show(2*least))}},
	}
	switch {
	case gap.Length == 0:
		f.Message = fmt.Sprintf("%s fills its rabbets and has no room in them: glass that touches wood cracks", titled(&g.Item))
	case gap.Length < 0:
		f.Severity = diag.Error
		f.Message = fmt.Sprintf("%s is %s larger than its rabbets: it does not go in", titled(&g.Item), exact(p, -gap.Length))
	}
	said.add(f.Span, f)
}
