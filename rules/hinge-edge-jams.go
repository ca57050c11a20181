package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var hingeEdgeJams = &Rule{
	Name: "hinge-edge-jams", Group: Doors, Severity: diag.Error,
	Summary: "the hinge edge of a door on knife or pivot hinges turns into what it hangs on",
	Doc: `A knife or a pivot hinge has its pin within the leaf, so that what lies behind the pin swings the other way: the front corner of the hinge
edge turns into the side. A pin that is set 1/2 in from the edge and 3/8 from the face wants a gap of 1/8 there.

Make the gap at the hinge edge wider, set the pin nearer to the edge, or round the edge about the pin and say "rounded".`,
	Sources: `The reach of a corner is geometry.`,
	Sound: `A pin with just the gap that its corner wants; a hinge edge that is rounded; a pin in front of the face, about which the whole edge
turns away; a leaf whose edge meets nothing.`,
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
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			s, swings := d.Swing()
			if !swings || d.Rounded.On || !hungBy(d, "butt", "knife", "pivot") {
				continue
			}
			gap, bounded := freeGap(d, s.Hinge)
			wants := hingeWants(s)
			if !bounded || gap < 0 || !wood.Under(gap, wants) {
				continue
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
	},
}
