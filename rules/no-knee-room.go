package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	kneesHigh = &Figure{
		Name: "knees", Why: "how high the room is that knees want under a table", Basis: SecondHand,
		Source: "24 in (610 mm): pages for makers, 23 to 25; W. Noyes, Handwork in Wood, 1910, has 25 under the rails", Dim: lang.Length, Length: 24 * wood.Inch, Metric: 610 * wood.Millimetre,
	}
	kneesDeep = &Figure{
		Name: "deep", Why: "how far in from the edge of the top that room is looked at", Basis: Published,
		Source: "8 in (205 mm), the least depth at the height of the knees: ABA Accessibility Standards, 306.3.3", Dim: lang.Length, Length: 8 * wood.Inch, Metric: 205 * wood.Millimetre,
	}
)

var noKneeRoom = &Rule{
	Name: "no-knee-room", Group: Structure, Severity: diag.Advice,
	Summary: "an apron or a drawer leaves no room for the knees of those who sit there",
	Doc: `A deep apron looks well, and nobody can sit at it: knees strike it, or the chair has to stand far out.

Make the apron or the drawer lower, or the table higher: 24 from the floor is the least, 25 is better. The rule looks under desks, at their front, and under
tables and counters up to 32 high that say how many "places" they have, at their long edges; at the ends only where somebody must sit there. It takes what
hangs within 8 of the edge of the top, between legs and pedestals that stand at least 18 apart. Where a table must be accessible, the standard
and the local code go before this: 27 clear for knees (306.3).`,
	Sources: `As the figures say.`,
	Sound:   `An apron of 4 under a top of 1 at 29, which leaves just 24; drawers beside the knees; a beam far in under the top; a low table.`,
	Bad:     dinner(28, "places 4"),
	Good:    dinner(29, "places 4"),
	Figures: []*Figure{kneesHigh, kneesDeep, perPlace},
	Check: func(pass *Pass) {
		for s := range satAt(pass) {
			checkKnees(pass, s)
		}
	},
}

// kneesUnder is how high a table is at which one sits on a chair, and not on a stool: common practice, no source.
const kneesUnder = 32 * wood.Inch

func checkKnees(pass *Pass, s *onFloor) {
	p, tops := pass.Plan, s.surfaces()
	if s.Use.Is == "bench" || s.Use.Is == "chair" || s.Use.Is != "desk" && !s.Places.Known() {
		return
	}
	if len(tops) == 0 || tops[0].high > kneesUnder || !tops[0].at[0].Known() || !tops[0].at[1].Known() {
		return
	}
	top := tops[0]
	sides := []plan.Side{plan.Front}
	if s.Use.Is != "desk" {
		long, ends := []plan.Side{plan.Front, plan.Back}, []plan.Side{plan.Left, plan.Right}
		if !top.long() {
			long, ends = ends, long
		}
		sides = long
		if along, _ := top.places(s, max(1, pass.Length(perPlace, s.subject)), p.Tape.Tolerance()); s.Places.N > along {
			sides = append(sides, ends...)
		}
	}
	least := pass.Length(kneesHigh, s.subject)
	for _, side := range sides {
		low := lowest(s.hangs(p, top, side, pass.Length(kneesDeep, s.subject)), top.at[(plan.Behind-side.Axis())/2])
		if low == nil || !wood.Under(low.low, least-p.Tape.Tolerance()) {
			continue
		}
		pass.Report(diag.Finding{
			Subject: s.subject, Span: low.it.Name.Span,
			Message: fmt.Sprintf("%s leaves %s for the knees of those who sit at %s: %s is wanted", titled(low.it), exact(p, low.low), s.called(), p.Show(least)),
			Working: p.Paper().Start(top.under, "from the floor to the underside of the top").Minus(top.under-low.low, "taken by "+called(low.it)+" and what is over it").
				Equals("left for the knees").Versus(least, "wanted at least").Working(),
			Fixes: []diag.Fix{{Title: fmt.Sprintf("take %s off its height, or make the %s so much higher", exact(p, least-low.low), s.Use.Is)}},
		})
		return
	}
}
