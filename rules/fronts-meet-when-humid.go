package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var frontsMeetWhenHumid = &Rule{
	Name: "fronts-meet-when-humid", Group: Movement, Severity: diag.Error,
	Summary: "two fronts of solid wood that lap their case swell until they meet",
	Doc: `A front that laps its case has no opening to bind in, but it has neighbours. Two slabs with 1/16 between them meet in July, and the one that is
pulled takes the other along; a stack of drawer fronts, each with its grain from side to side, closes up the same way.

The gap between two fronts loses what both grow towards it: a door that is hung at its side grows all to its free edge, since the hinges hold the
other, and half up and half down; a drawer's front is held in its middle, and grows half to each side. A frame grows by its stiles alone. Where
less than 1/32 is left, that is a warning, if the plan states how humid it gets.

Leave more between them: a smaller lap, or a wider "reveal"; make a frame and panel of a slab; use wood that is sawn quarter.`,
	Sources: movementSource + `
That a front is held in its middle, and what must be left, are common practice, no source.`,
	Sound: `Frames of the same wood with the gap at which slabs meet; slabs of sheet stock; two slabs that are hung where they stand side by side;
inset fronts, which bind in their openings first.`,
	Bad: `climate { shop 8% ; dry 7% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
case cupboard {
  of oak 3/4
  wide 36 ; high 30 ; deep 12
  each door { leaf oak 3/4 ; fit overlay 5/8 ; reveal 1/8 }
  across { side left ; door near { hang left } ; door far { hang right } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 7% ; humid 11% }
wood oak { species "red oak" ; sawn quarter }
case cupboard {
  of oak 3/4
  wide 18 ; high 30 ; deep 12
  each door { leaf oak 3/4 ; fit overlay 5/8 ; reveal 1/8 }
  across { side left ; door near { hang left } ; door far { hang right } ; side right }
}
`,
	Figures: []*Figure{bindSpare},
	Check:   func(pass *Pass) { eachFront(pass, checkSwell) },
}

// checkSwell holds the gaps between a front and those beside it against what both grow into them.
func checkSwell(pass *Pass, said *onePer[drawerAt], n plan.Node) {
	p, it, subject := pass.Plan, plan.It(n), plan.PathOf(n)
	fit, edges := plan.FrontOf(n)
	if fit.Kind.Is != "overlay" || !closed(it) {
		return
	}
	for _, e := range edges {
		for b := range plan.FrontsBeside(n, e.Side) {
			other := plan.It(b.Front)
			if theirs, _ := plan.FrontOf(b.Front); theirs.Kind.Is != "overlay" || !speaks(n, e, b) || !closed(other) || b.Apart <= 0 {
				continue
			}
			grows, known := growsBetween(p, n, e, b, true, p.Paper())
			spare := pass.Length(bindSpare, subject)
			if b.Apart > grows && p.Climate.Humid.Moisture.How == plan.Default {
				spare = 0 // an average does not judge what is nearly too thin
			}
			if !known || grows <= 0 || !wood.Under(b.Apart-grows, spare) {
				continue
			}
			paper := p.Paper().Start(b.Apart, "between "+called(it)+" and "+called(other))
			growsBetween(p, n, e, b, true, paper)
			f := diag.Finding{
				Subject: subject, Span: standing(it.Name.Span, e.Less.Span),
				Message: fmt.Sprintf("%s and %s grow %s towards one another, and have %s between them: they meet when they are most humid", titled(it), titled(other),
					exact(p, grows), exact(p, b.Apart)),
				Working: paper.Equals("left at their most humid").Versus(spare, "wanted at least").Working(),
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("leave %s between them, or use wood that is sawn quarter", p.Show(upTo(p, grows+spare)))}},
			}
			if b.Apart > grows {
				f.Severity = diag.Warning
				f.Message = fmt.Sprintf("%s and %s grow %s towards one another, and have %s between them: less than %s is left", titled(it), titled(other),
					exact(p, grows), exact(p, b.Apart), p.Show(spare))
			}
			said.add(drawerAt{span: f.Span, build: it.In.Build, is: b.Apart}, f)
		}
	}
}

// growsBetween is how much two fronts grow into the gap between them until they are most humid, or driest, and writes
// that down; false where it is not known.
func growsBetween(p *plan.Plan, n plan.Node, e plan.Edge, b plan.Beside, humid bool, paper *plan.Paper) (wood.Length, bool) {
	own, known := growsTo(p, n, e.Side, humid, paper)
	its, also := growsTo(p, b.Front, b.Edge.Side, humid, paper)
	return own + its, known && also
}

// growsTo is how much a front grows towards one of its edges until one end of the year, and writes that down. The hinge
// edge is held, and the other takes all; along the hinges, and of what is not hung, half goes to each.
func growsTo(p *plan.Plan, n plan.Node, edge plan.Side, humid bool, paper *plan.Paper) (wood.Length, bool) {
	var growers []grower
	halves := wood.Length(1) // of the growth
	switch n := n.(type) {
	case *plan.Door:
		growers = leafGrows(n, edge.Axis())
		if hung, turns := n.Hung(); turns && hung.Axis() == edge.Axis() {
			halves = 2
			if hung == edge {
				halves = 0
			}
		}
	case *plan.Drawer:
		if n.Front != nil && edge.Axis() == plan.Down {
			growers = []grower{{"width of the front", n.Front.Of, n.Front.Size.Wide}}
		}
	}
	all := wood.Length(0)
	for _, g := range growers {
		if g.of != nil && g.of.Kind != plan.Solid {
			continue
		}
		m, dry, known := p.Seasons(g.of)
		if !known || !g.wide.Known() {
			return 0, false
		}
		if !humid {
			m = dry
		}
		grows := m.Change(g.wide.Length) * halves / 2
		all += grows
		if grows == 0 {
			continue
		}
		label := fmt.Sprintf("%s, %s, from %s to %s", called(plan.It(n)), g.called, wood.Percent(m.From), wood.Percent(m.To))
		if halves == 1 {
			label += ", half of it"
		}
		paper.Minus(grows, label)
	}
	return all, true
}

// FrontGaps are the gaps between fronts that lap their case, of which one at least is of solid wood, and what the
// seasons leave of them.
func FrontGaps(p *plan.Plan) (all []Room) {
	gaps := func(n plan.Node) {
		fit, edges := plan.FrontOf(n)
		for _, e := range edges {
			for b := range plan.FrontsBeside(n, e.Side) {
				theirs, _ := plan.FrontOf(b.Front)
				if fit.Kind.Is != "overlay" || theirs.Kind.Is != "overlay" || !speaks(n, e, b) {
					continue
				}
				humid, known := growsBetween(p, n, e, b, true, p.Paper())
				dry, also := growsBetween(p, n, e, b, false, p.Paper())
				if known && also && (humid != 0 || dry != 0) {
					all = append(all, Room{
						Path: plan.PathOf(n), Where: "gap to " + plan.PathOf(b.Front),
						Dry: b.Apart - dry, Shop: b.Apart, Humid: b.Apart - humid,
					})
				}
			}
		}
	}
	for d := range plan.AllOf[*plan.Door](p) {
		gaps(d)
	}
	for d := range plan.AllOf[*plan.Drawer](p) {
		gaps(d)
	}
	return all
}
