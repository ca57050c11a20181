package rules

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	offMiddle = &Figure{
		Name: "off-middle", Why: "how far from the middle of its moisture in use wood is worked", Basis: Practice,
		Source: "2 points", Dim: lang.Percent, Number: 2,
	}
	betweenWoods = &Figure{
		Name: "between", Why: "how far apart in moisture the woods of one piece are worked", Basis: Practice,
		Source: "2 points", Dim: lang.Percent, Number: 2,
	}
)

var notAcclimated = &Rule{
	Name: "not-acclimated", Group: Movement, Severity: diag.Warning,
	Summary: "wood is worked far moister or drier than it will be in use, or two woods of one piece are",
	Doc: `Wood that comes to the bench at 12 % and then stands in a room at 7 % shrinks once and for good: joints loosen, glue lines stand proud,
gaps open in the first winter. Wood that is worked too dry swells as much. Every gap that is worked out for it is off to one side besides.

Stack it with stickers in the shop, or better in the room, until the meter reads within 2 % of the middle between its driest and its most humid
in use; or state the climate as it is. Parts of one piece want to be within 2 % of one another.

The rule looks at what the plan states: a moisture that was measured ("at 12%"), or a climate with a shop. Where neither is said it is
silent.`,
	Sources: movementSource + `
Furniture and cabinets indoors want 6 to 8 % in most of the United States: the handbook, chapter 13; averages by region, second-hand. The bands are
common practice, no source.`,
	Sound: `Wood measured within 2 % of the middle, wood of which nothing is measured in a plan without a climate, and moist wood that nothing is
made of.`,
	Bad: `climate { shop 7% ; dry 5% ; humid 9% }
wood walnut { species "black walnut" ; sawn flat ; at 12% }
part board { of walnut ; size 30 x 8 x 3/4 }
`,
	Good: `climate { shop 7% ; dry 5% ; humid 9% }
wood walnut { species "black walnut" ; sawn flat ; at 8% }
part board { of walnut ; size 30 x 8 x 3/4 }
`,
	Figures: []*Figure{offMiddle, betweenWoods},
	Check: func(pass *Pass) {
		p := pass.Plan
		middle := (p.Climate.Dry.Moisture.Value + p.Climate.Humid.Moisture.Value) / 2
		widest := widestOf(p)
		var right []*plan.Material // those that are not off by themselves
		shopSaid := false
		for _, m := range p.Materials {
			if m.Kind != plan.Solid || !widest[m].Known() {
				continue
			}
			at, subject := p.Moisture(m), plan.PathOf(m)
			off := math.Abs(at-middle) > pass.Number(offMiddle, subject)
			switch {
			case !off:
				right = append(right, m)
			case m.At.Known():
				pass.Report(unacclimated(p, m, widest[m].Length, m.At.Span, "wood "+quote(m.Name.Text)+" is worked at", at, middle))
			case p.Climate.Shop.Moisture.How != plan.Default && !shopSaid:
				shopSaid = true
				pass.Report(unacclimated(p, m, widest[m].Length, p.Climate.Shop.Span, "the shop brings wood to", at, middle))
			}
		}
		checkTogether(pass, right)
	},
}

// widestOf is the widest thing that is made of each solid material.
func widestOf(p *plan.Plan) map[*plan.Material]plan.Length {
	widest := make(map[*plan.Material]plan.Length)
	for w := range p.Workpieces() {
		if wide := w.Size.Wide; wide.Known() && w.Of.Kind == plan.Solid && (!widest[w.Of].Known() || wide.Length > widest[w.Of].Length) {
			widest[w.Of] = wide
		}
	}
	return widest
}

// unacclimated is a finding about wood that is worked at another moisture than it will have.
func unacclimated(p *plan.Plan, m *plan.Material, wide wood.Length, at diag.Span, says string, worked, middle float64) diag.Finding {
	f := diag.Finding{
		Subject: plan.PathOf(m), Span: at,
		Message: fmt.Sprintf("%s %s, but in use it goes about %s, from %s to %s", says, wood.Percent(worked), wood.Percent(middle),
			wood.Percent(p.Climate.Dry.Moisture.Value), wood.Percent(p.Climate.Humid.Moisture.Value)),
		Fixes: []diag.Fix{{Title: "let it come to about " + wood.Percent(middle) + " before it is worked, or state the climate as it is"}},
	}
	if m.Species == nil {
		return f
	}
	if change, ok := m.Species.Moves(m.Rings(), worked, middle); ok {
		paper := p.Paper().Start(wide, "the widest thing of "+quote(m.Name.Text))
		moves(paper, wide, m, change)
		f.Working = paper.Equals("in the middle of the year").Working()
		f.Notes = fromMemory(m, change)
	}
	return f
}

// checkTogether reports the driest and the moistest of the woods that are right by themselves, where they
// are too far apart.
func checkTogether(pass *Pass, woods []*plan.Material) {
	p := pass.Plan
	if len(woods) == 0 {
		return
	}
	by := func(a, b *plan.Material) int { return cmp.Compare(p.Moisture(a), p.Moisture(b)) }
	m, other := slices.MaxFunc(woods, by), slices.MinFunc(woods, by)
	if p.Moisture(m)-p.Moisture(other) <= pass.Number(betweenWoods, plan.PathOf(m)) {
		return
	}
	if !m.At.Known() {
		m, other = other, m // one of the two was measured, since the others are all as the shop is
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(m), Span: m.At.Span,
		Message: fmt.Sprintf("wood %s is worked at %s and wood %s at %s: they move apart in one piece", quote(m.Name.Text), wood.Percent(p.Moisture(m)),
			quote(other.Name.Text), wood.Percent(p.Moisture(other))),
		Notes: []diag.Note{{Span: other.Name.Span, Message: "this is the other"}},
		Fixes: []diag.Fix{{Title: "let both lie in one room until a meter reads them alike"}},
	})
}
