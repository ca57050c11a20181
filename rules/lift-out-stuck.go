package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var liftOutStuck = &Rule{
	Name: "lift-out-stuck", Group: Doors, Severity: diag.Error,
	Summary: "a leaf cannot be lifted so far that it comes out of its lower groove",
	Doc: `A leaf without hinges is pushed up into a deep groove above it, swung in over the sill, and let down into a shallow one. To come out it has to rise
by what it stands in the lower groove, and the upper one must have room for that, above what the leaf is in it already.

Make the upper groove deeper, the lower one shallower, or the leaf less high ("keeps"). A leaf whose grain runs across, or whose rails are wide, grows in
height: where it is free as it is made and not when it is most humid, that is a warning.`,
	Sources: `The sum of the depths. ` + movementSource,
	Sound:   `An upper groove just so deep as the lower one and what the leaf keeps in it; a leaf of which one groove alone is said.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 3/8 bottom 1/4 keeps 1/4 } ; bottom floor } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
sheet thin { kind plywood ; species "yellow birch" ; thick 1/4 ; actual 1/4 ; emission "TSCA Title VI" }
case cupboard {
  of ply
  wide 20 ; high 24 ; deep 12
  across { side left ; down { top roof ; door front { leaf thin ; fit inset ; reveal 1/16 ; hang lift-out ; grooves top 1/2 bottom 1/4 keeps 3/16 } ; bottom floor } ; side right }
}
`,
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			if l, ok := inGrooves(d); ok {
				checkLift(pass, l)
			}
		}
	},
}

// lift is a leaf that stands in a lower groove and is lifted out of it into an upper one.
type lift struct {
	*plan.Door
	top, bottom, keeps plan.Length
}

// inGrooves is how a leaf is lifted out; false where it is not, or one of its grooves is not said.
func inGrooves(d *plan.Door) (lift, bool) {
	g := d.Grooves
	if g == nil || d.Hang.Is != "lift-out" || !g.Top.Known() || !g.Bottom.Known() || !g.Keeps.Known() || !closed(&d.Item) {
		return lift{}, false
	}
	return lift{d, g.Top, g.Bottom, g.Keeps}, true
}

// grows is by how much its leaf grows in height to one end of the year; it writes that down.
func (l lift) grows(p *plan.Plan, humid bool, paper *plan.Paper) wood.Length {
	air, grows := p.Climate.Dry, wood.Length(0)
	if humid {
		air = p.Climate.Humid
	}
	if air.Moisture.How == plan.Default {
		return 0
	}
	for _, g := range leafGrows(l.Door, plan.Down) {
		wet, dry, known := p.Seasons(g.of)
		if !known || !g.wide.Known() {
			return 0
		}
		m := dry
		if humid {
			m = wet
		}
		paper.Plus(m.Change(g.wide.Length), g.called+", from "+wood.Percent(m.From)+" to "+wood.Percent(m.To))
		grows += m.Change(g.wide.Length)
	}
	return grows
}

// checkLift lifts a leaf out of its lower groove, as it is made and when it is most humid.
func checkLift(pass *Pass, l lift) {
	p := pass.Plan
	f := diag.Finding{Subject: plan.PathOf(l.Door), Span: l.Grooves.Span}
	paper := p.Paper().Start(l.keeps.Length, "of it in the upper groove").Plus(l.bottom.Length, "it is lifted out of the lower one")
	rises := l.keeps.Length + l.bottom.Length
	switch grown := rises + l.grows(p, true, p.Paper()); {
	case wood.Over(rises, l.top.Length):
		f.Message = fmt.Sprintf("%s stands %s in its lower groove and is %s in its upper one, which is %s deep: it cannot be lifted out", titled(&l.Item), p.ShowSaid(l.bottom),
			p.Show(l.keeps.Length), p.ShowSaid(l.top))
	case wood.Over(grown, l.top.Length):
		l.grows(p, true, paper)
		f.Severity = diag.Warning
		f.Message = fmt.Sprintf("%s grows in height when it is most humid, and wants an upper groove %s deep to be lifted out: it is %s deep", titled(&l.Item), exact(p, grown), p.ShowSaid(l.top))
		rises = grown
	default:
		return
	}
	f.Working = paper.Equals("of it in the upper groove when it is free").Versus(l.top.Length, "depth of the upper groove").Working()
	f.Fixes = []diag.Fix{{Title: fmt.Sprintf("make the upper groove %s deep: `top %s`", p.Show(upTo(p, rises)), p.Show(upTo(p, rises)))}}
	if keeps := p.Tape.Floor(l.keeps.Length - (rises - l.top.Length)); !wood.Under(keeps, keepsLeast.in(p)) {
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make the leaf less high: `keeps %s`", p.Show(keeps))})
	}
	pass.Report(f)
}
