package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var behindLeaf = &Figure{
	Name: "behind", Why: "how much room there is between the back of a leaf and the edge of the case that it laps", Basis: Practice,
	Source: "1/32 (1 mm)", Dim: lang.Length, Length: wood.Inch / 32, Metric: wood.Millimetre,
}

var hingeEdgeJams = &Rule{
	Name: "hinge-edge-jams", Group: Doors, Severity: diag.Error,
	Summary: "the hinge edge of a door turns into what it hangs on, or into the front beside it",
	Doc: `A knife or a pivot hinge has its pin within the leaf, so that what lies behind the pin swings the other way: the front corner of the hinge
edge turns into the side. A pin that is set 1/2 in from the edge and 3/8 from the face wants a gap of 1/8 there.

Make the gap at the hinge edge wider, set the pin nearer to the edge, or round the edge about the pin and say "rounded".

A leaf that laps over its case turns about a pin at its back. What lies beyond that pin turns into the edge of the case, so that the pin stands at
the outer edge of the case or outside; and when it is open the leaf stands beside its case, by its thickness and by what the pin is out, where a leaf
that shares the partition has no room for it. Butts hang such a leaf in several ways: it is asked of those of which the plan says how far
"proud" their pin is, below nothing where it stands behind the face.`,
	Sources: `The reach of a corner is geometry. The room behind a leaf is common practice, no source.`,
	Sound: `A pin with just the gap that its corner wants; a hinge edge that is rounded; a pin in front of the face, about which the whole edge
turns away; a leaf whose edge meets nothing; one that laps its case, on pins at the outer edge of that.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge knife { kind knife ; pin 1/2 x 3/8 }
case cupboard {
  wide 14 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge knife count 2 } ; side right }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge knife { kind knife ; pin 1/2 x 3/8 }
case cupboard {
  wide 14 ; high 30 ; deep 12
  of ply
  across { side left ; door only { leaf ply ; fit inset ; reveal 1/16 hinge 1/8 ; hang left ; hinge knife count 2 } ; side right }
}
`,
	Figures: []*Figure{behindLeaf},
	Check: func(pass *Pass) {
		for d := range pass.Plan.Leaves() {
			s, swings := d.Swing()
			switch {
			case !swings || d.Rounded.On || !hungBy(d, "butt", "knife", "pivot"):
			case d.Fit.Kind.Is != "overlay":
				checkHingeEdge(pass, d, s)
			case !checkDigs(pass, d, s):
				checkBesideHinge(pass, d, s)
			}
		}
	},
}

// checkHingeEdge turns the hinge edge of an inset leaf into its gap.
func checkHingeEdge(pass *Pass, d *plan.Door, s plan.Swing) {
	p := pass.Plan
	gap, bounded := freeGap(d, s.Hinge)
	wants := hingeWants(s)
	if !bounded || gap < 0 || !wood.Under(gap, wants) {
		return
	}
	f := diag.Finding{
		Subject: plan.PathOf(d), Span: d.Span,
		Message: fmt.Sprintf("%s wants %s at its hinge edge to turn in, and its gap there is %s: its front corner turns into what it hangs on",
			titled(&d.Item), exact(p, wants), p.Show(gap)),
		Working: p.Paper().Start(wants-s.Out, fmt.Sprintf("from the pin, %s, to the front corner", pinStands(p, s))).
			Minus(-s.Out, "from the pin to the hinge edge").Equals("wanted").Versus(gap, "gap at the hinge edge").Working(),
		Fixes: []diag.Fix{{Title: fmt.Sprintf("make the gap at its hinge edge %s", p.Show(upTo(p, wants)))}},
	}
	if s.Proud >= s.Out { // else the round would not come out at the face
		f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("round its hinge edge to %s about the pin, and say `rounded`", exact(p, -s.Out))})
	}
	pass.Report(f)
}

// checkDigs turns the back of a leaf that laps its case, beyond its pin, into the edge of the case.
func checkDigs(pass *Pass, d *plan.Door, s plan.Swing) bool {
	p := pass.Plan
	over, ok := plan.Neighbour(d, s.Hinge).(*plan.Member)
	if !ok || s.Gap >= 0 || !over.Cell[s.Hinge.Axis()].Sized {
		return false
	}
	from := max(0, -s.Gap-over.Cell[s.Hinge.Axis()].Size) // the leaf stands out so far beside its case
	digs, room := backDigs(s, from), pass.Length(behindLeaf, plan.PathOf(d))
	if !wood.Over(digs, room) {
		return false
	}
	paper := p.Paper().Start(-s.Out, "from the hinge edge to the pin")
	if from > 0 {
		paper.Minus(from, "which the leaf stands out beside its case").Equals("from the case's edge to the pin")
	}
	where := "the edge of the leaf"
	if from > 0 {
		where = "the outer edge of " + called(&over.Item)
	}
	pass.Report(diag.Finding{
		Subject: plan.PathOf(d), Span: d.Span,
		Message: fmt.Sprintf("%s turns about a pin %s in from its edge, and laps %s beyond that: its back turns %s into it", titled(&d.Item), exact(p, -s.Out),
			called(&over.Item), exact(p, digs)),
		Working: paper.Start(digs, fmt.Sprintf("the back turns behind itself, about a pin %s", pinStands(p, s))).
			Versus(room, "taken to be behind the leaf").Working(),
		Fixes: []diag.Fix{
			{Title: fmt.Sprintf("take a hinge whose pin stands at %s or beyond it, and say how far it is `out`", where)},
			{Title: "round the back of its hinge edge, and say `rounded`"},
		},
	})
	return true
}

// checkBesideHinge opens a leaf that laps its case before the front beside it.
func checkBesideHinge(pass *Pass, d *plan.Door, s plan.Swing) {
	p := pass.Plan
	beside, ok := nearestBeside(d, s.Hinge)
	opens := max(90, d.Opens.Or(90))
	wants := hingeReaches(s, opens)
	if !ok || !wood.Under(beside.Apart, wants) {
		return
	}
	next := titled(plan.It(beside.Front))
	pass.Report(diag.Finding{
		Subject: plan.PathOf(d), Span: d.Span,
		Message: fmt.Sprintf("%s reaches %s beyond its hinge edge when it opens to %s, and %s is %s from it: they meet", titled(&d.Item), exact(p, wants),
			degrees(opens), next, exact(p, beside.Apart)),
		Working: p.Paper().Start(wants, fmt.Sprintf("beyond its edge, about a pin %s and %s", pinStands(p, s), outStands(p, s))).
			Versus(beside.Apart, "between them").Working(),
		Fixes: []diag.Fix{
			{Title: fmt.Sprintf("leave %s between them", p.Show(upTo(p, wants)))},
			{Title: "hang it on hinges whose pin stands in front of the face, or on cup hinges"},
		},
	})
}

// outStands says where a pin stands to the hinge edge of its leaf.
func outStands(p *plan.Plan, s plan.Swing) string {
	if s.Out < 0 {
		return p.Show(-s.Out) + " in from its edge"
	}
	return p.Show(s.Out) + " beyond its edge"
}
