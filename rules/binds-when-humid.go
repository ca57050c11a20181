package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var bindSpare = &Figure{
	Name: "spare", Why: "how much of its gaps, in all, an inset door or front has left at its most humid", Basis: Practice,
	Source: "1/32", Dim: lang.Length, Length: wood.Inch / 32,
}

var bindsWhenHumid = &Rule{
	Name: "binds-when-humid", Group: Movement, Severity: diag.Error,
	Summary: "an inset door or drawer front of solid wood swells until it binds in its opening",
	Doc: `A door that is fitted in winter with a gap as thin as a coin sticks every July. Across its grain a slab of solid wood grows by its whole
width; a frame grows by its stiles alone, since its rails keep their length and its panels float; along the grain nothing grows that matters.

The working takes the gaps at both edges together, since a door is planed or its hinges are let in until they are alike, and what the wood grows
from the day it is worked to the most humid that the plan's climate knows. Where less than 1/32 is left of them, that is a
warning, if the plan states how humid it gets.

Make the gaps wider; make a frame and panel of the slab; use wood that is sawn quarter; or build it when the air is humid, and say so in
the climate.`,
	Sources: movementSource + `
What must be left is common practice, no source.`,
	Sound: `A frame of the same wood, with the gaps in which a slab would bind; a slab of sheet stock; a slab that laps over its opening; a
drawer front with its grain across, tight at its ends.`,
	Bad: `climate { shop 8% ; dry 7% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
case cupboard {
  of oak 3/4
  wide 19 5/8 ; high 30 ; deep 12
  joint housing deep 1/4
  across {
    side left
    down { top upper ; door only { leaf oak 3/4 ; fit inset ; reveal 1/16 ; hang left } ; bottom lower }
    side right
  }
}
`,
	Good: `climate { shop 8% ; dry 7% ; humid 11% }
wood oak { species "red oak" ; sawn flat }
case cupboard {
  of oak 3/4
  wide 19 5/8 ; high 30 ; deep 12
  joint housing deep 1/4
  across {
    side left
    down { top upper ; door only { leaf oak 3/4 ; fit inset ; reveal 1/8 ; hang left } ; bottom lower }
    side right
  }
}
`,
	Figures: []*Figure{bindSpare},
	Check: func(pass *Pass) {
		for d := range pass.Plan.Leaves() {
			if d.Fit.Kind.Is != "inset" {
				continue
			}
			what, instead := "the leaf of ", "a frame with a panel, or "
			if d.Board != nil {
				what = ""
			}
			for axis := plan.Across; axis <= plan.Down; axis++ {
				if axis == plan.Down && d.Grooves != nil {
					continue // it has room in its grooves
				}
				checkBinds(pass, inset{d, what, instead, d.Hang.Is, d.Edges, axis, leafGrows(d, axis)})
			}
		}
		for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
			if d.Fit.Kind.Is != "inset" || d.Front == nil {
				continue
			}
			front := grower{"front", d.Front.Of, d.Front.Size.Wide}
			checkBinds(pass, inset{d, "the front of ", "", "", d.Edges, plan.Down, []grower{front}})
		}
	},
}

// grower is a piece of wood that makes a leaf or a front grow along an axis.
type grower struct {
	called string
	of     *plan.Material
	wide   plan.Length
}

// inset is a leaf or a front between two edges of its opening, and what makes it grow there.
type inset struct {
	plan.Node
	what    string // "the leaf of "
	instead string // of a slab
	hang    string
	edges   [4]plan.Edge
	axis    plan.Axis
	growers []grower
}

// checkBinds holds the gaps at both edges against what grows between them.
func checkBinds(pass *Pass, in inset) {
	p, it, subject := pass.Plan, plan.It(in.Node), plan.PathOf(in.Node)
	near, far := in.edges[in.axis*2], in.edges[in.axis*2+1]
	if len(in.growers) == 0 || !near.Less.Known() || !far.Less.Known() || !in.bounded() {
		return
	}
	paper := p.Paper().Start(near.Less.Length, edgeOf(near, in.hang)).Plus(far.Less.Length, edgeOf(far, in.hang)).Equals("in all")
	gaps, grows := near.Less.Length+far.Less.Length, wood.Length(0)
	var notes []diag.Note
	for i, g := range in.growers {
		humid, _, known := p.Seasons(g.of)
		if !known || !g.wide.Known() {
			return
		}
		grows += humid.Change(g.wide.Length)
		if i == 0 {
			notes = fromMemory(g.of, humid)
		}
	}
	spare := pass.Length(bindSpare, subject)
	if gaps > grows && p.Climate.Humid.Moisture.How == plan.Default {
		spare = 0 // an average does not judge what is nearly too thin
	}
	if !wood.Under(gaps-grows, spare) {
		return
	}
	for _, g := range in.growers {
		humid, _, _ := p.Seasons(g.of)
		paper.Start(g.wide.Length, g.called)
		moves(paper, g.wide.Length, g.of, humid)
		paper.Equals("at its most humid")
	}
	what, direction := in.what+titled(it), growing(in.Node, in.axis)
	f := diag.Finding{
		Subject: subject, Span: it.Span, Notes: notes,
		Message: fmt.Sprintf("%s grows %s %s, but its gaps are %s in all: it binds in its opening", what, exact(p, grows), direction, exact(p, gaps)),
		Working: paper.Start(gaps, "gaps").Minus(grows, "it grows").Equals("left").Versus(spare, "wanted at least").Working(),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("make the gaps %s each, or use %swood that is sawn quarter", p.Show(upTo(p, (grows+spare+1)/2)), in.instead)}},
	}
	if gaps > grows {
		f.Severity = diag.Warning
		f.Message = fmt.Sprintf("%s grows %s %s, and its gaps are %s in all: less than %s is left", what, exact(p, grows), direction, exact(p, gaps), p.Show(spare))
	}
	pass.Report(f)
}

// growing says in which direction a leaf or a front grows.
func growing(n plan.Node, axis plan.Axis) string {
	switch d, door := n.(*plan.Door); {
	case axis == plan.Across:
		return "in width"
	case door && d.Board != nil:
		return "from front to back"
	}
	return "in height"
}

// bounded reports whether something stands at both edges, so that it can bind.
func (in inset) bounded() bool {
	return plan.Neighbour(in.Node, in.edges[in.axis*2].Side) != nil && plan.Neighbour(in.Node, in.edges[in.axis*2+1].Side) != nil
}

// leafGrows is what makes a door's leaf grow along an axis, by name.
func leafGrows(d *plan.Door, axis plan.Axis) (growers []grower) {
	for _, g := range d.Grows(axis) {
		name := "the leaf"
		switch {
		case d.Board != nil:
			name = called(&d.Item)
		case g.Item != nil:
			name = called(g.Item)
		}
		growers = append(growers, grower{"width of " + name, g.Of, g.Wide})
	}
	return growers
}
