package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var freeEdgeCatches = &Rule{
	Name: "free-edge-catches", Group: Doors, Severity: diag.Error,
	Summary: "a door catches its own back corner as it opens",
	Doc: `A leaf turns about its pins, and the corner at the back of its free edge is farther from them than the edge is. As it opens,
that corner swings out past the gap; a thick and narrow leaf meets what it closes against, and is planed in a hurry with its hinges on.

Plane a bevel towards the back of the free edge and say "bevel 3deg", or make the gap there wider. The rule works out how far the corner
reaches, from where the pin stands: half the knuckle in front of the face and over the middle of the gap, unless the plan says
otherwise. Where the plan states how humid it gets, it asks again when the leaf has grown, all of it towards the free edge, since
the hinges hold the other: then it warns. Hinges whose pin wanders, cups and barrels, are left alone; so are butts of a leaf that laps its
case, unless the plan says how far "proud" their pin is. Such a leaf is held against the front beside it.`,
	Sources: `The reach of a corner is geometry. The usual bevel, 1/8 in 2 1/4 or 3/32 in 2 1/4 at each leaf: Building Trades Pocketbook, "Doors",
before 1910.`,
	Sound: `A door of usual width, with 1/16 at its edge; a thick and narrow one with a bevel; a pair that is bevelled or rebated where it
meets; a leaf that laps over its opening.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
case cupboard {
  wide 7 5/8 ; high 30 ; deep 12
  of oak 3/4
  across {
    side left
    door narrow { leaf oak 1 ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 3 }
    side right
  }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
case cupboard {
  wide 7 5/8 ; high 30 ; deep 12
  of oak 3/4
  across {
    side left
    door narrow { leaf oak 1 ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 3 ; bevel 5deg }
    side right
  }
}
`,
	Check: func(pass *Pass) {
		for d := range pass.Plan.Leaves() {
			checkFreeEdge(pass, d)
		}
	},
}

// checkFreeEdge lets a door swing, as it is hung and at its most humid.
func checkFreeEdge(pass *Pass, d *plan.Door) {
	p, it := pass.Plan, &d.Item
	s, swings := d.Swing()
	if !swings || !hungBy(d, "butt", "knife", "pivot") || partner(d) != nil && d.Meeting.Is != "" && d.Meeting.Is != "square" && !d.Bevel.Known() {
		return
	}
	edge := s.Hinge.Opposite()
	gap, bounded := freeGap(d, edge)
	grows := func(paper *plan.Paper) (wood.Length, bool) { return yearly(p, d, edge, true, paper) }
	if beside, ok := nearestBeside(d, edge); ok {
		gap, bounded = beside.Apart, true
		grows = func(paper *plan.Paper) (wood.Length, bool) {
			return growsBetween(p, d, d.Edges[edge], beside, true, paper)
		}
	}
	wants := freeWants(s, d.Bevel.Or(0))
	if !bounded || gap <= 0 || s.Wide <= 0 || s.Thick <= 0 {
		return
	}
	paper := p.Paper().Start(s.Wide, "from its hinge edge to the free one")
	if s.Out != 0 {
		paper.Plus(s.Out, "from its hinge edge to the pin").Equals("from the pin to the free edge")
	}
	if b := d.Bevel.Or(0); b > 0 {
		paper.Remark(fmt.Sprintf("a bevel of %gdeg takes its back corner %s back", b, p.Show(tangent(s.Thick, b))))
	}
	paper.Start(wants+s.Wide+s.Out, fmt.Sprintf("from the pin, %s, to where the back corner passes", pinStands(p, s))).
		Minus(s.Wide+s.Out, "to the free edge").Equals("wanted")
	f := diag.Finding{Subject: plan.PathOf(d), Span: d.Span}
	left := gap
	if g, known := grows(p.Paper()); known && g > 0 && p.Climate.Humid.Moisture.How != plan.Default && !bindsAt(pass, d, edge, gap-g) {
		left -= g
	}
	switch {
	case wood.Under(gap, wants):
		paper.Versus(gap, "gap at the free edge")
		f.Message = fmt.Sprintf("%s wants %s at its free edge to turn in, and its gap is %s: its back corner catches", titled(it), exact(p, wants), p.Show(gap))
	case wood.Under(left, wants):
		paper.Start(gap, "gap at the free edge")
		grows(paper)
		paper.Equals("left at its most humid")
		f.Severity = diag.Warning
		f.Message = fmt.Sprintf("%s wants %s at its free edge to turn in, and %s is left there of %s when it is most humid: its back corner catches",
			titled(it), exact(p, wants), exact(p, left), p.Show(gap))
		if left <= 0 {
			f.Message = fmt.Sprintf("%s grows past the gap of %s at its free edge when it is most humid, since its hinges hold the other: it does not open", titled(it), p.Show(gap))
		}
	default:
		return
	}
	f.Working = paper.Working()
	if b := clearingBevel(s, left); b > 0 && b <= mostBevel && left > 0 {
		half := math.Ceil(b*2-1e-9) / 2
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("plane a bevel of %s over its thickness towards its back, and say `bevel %gdeg`", p.Show(upTo(p, tangent(s.Thick, half))), half)})
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("make the gap at its free edge %s", p.Show(upTo(p, gap+wants-left)))})
	pass.Report(f)
}

// mostBevel is the steepest edge that is proposed, in degrees: beyond it the gap shows. Common practice, no source.
const mostBevel = 7.0

// tangent is how far an edge that is sloped by so many degrees falls back over a thickness.
func tangent(thick wood.Length, degrees float64) wood.Length {
	return wood.Length(math.Round(float64(thick) * math.Tan(degrees*math.Pi/180)))
}

// pinStands says where a pin stands to the face of its leaf.
func pinStands(p *plan.Plan, s plan.Swing) string {
	if s.Proud < 0 {
		return p.Show(-s.Proud) + " behind the face"
	}
	return p.Show(s.Proud) + " in front of the face"
}

// bindsAt reports whether a leaf grows until it binds, or nearly, or meets the front beside it, so that this is said
// already.
func bindsAt(pass *Pass, d *plan.Door, edge plan.Side, left wood.Length) bool {
	if d.Fit.Kind.Is == "overlay" {
		return wood.Under(left, pass.Length(bindSpare, plan.PathOf(d)))
	}
	return binds(pass, d, edge.Axis())
}

// binds reports whether a leaf grows until it binds, or nearly, so that this is said already.
func binds(pass *Pass, d *plan.Door, axis plan.Axis) bool {
	gaps := d.Edges[axis*2].Less.Length + d.Edges[axis*2+1].Less.Length
	for _, g := range leafGrows(d, axis) {
		if wet, _, known := pass.Plan.Seasons(g.of); known && g.wide.Known() {
			gaps -= wet.Change(g.wide.Length)
		}
	}
	return wood.Under(gaps, pass.Length(bindSpare, plan.PathOf(d)))
}
