package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var buttOverhangs = &Rule{
	Name: "butt-overhangs", Group: Doors, Severity: diag.Warning,
	Summary: "a butt hinge is wider than the edge of the case on which its door lies",
	Doc: `Butts that hang a door over the edge of its case lie between the back of the door and that edge. Two doors that share a partition have half of
its edge each, and a hinge that is right for a whole side stands over into the opening there, with its inner screws in the air.

Take a narrower hinge, or lap more of the edge. The rule is asked of butts whose pin the plan says to stand behind the face of the door ("proud" below
nothing): other hinges are screwed to the side itself.`,
	Sources: `Geometry: a leaf of a butt is half of its width opened flat, from the middle of its pin.`,
	Sound:   `A hinge that just reaches the opening; one whose pin stands farther outside; butts of which the pin is not said; an inset door.`,
	Bad:     onButts(`fit overlay 5/16`),
	Good:    onButts(`fit overlay 3/4 latch 5/16`),
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Door](p) {
			hung, turns := d.Hung()
			lap := d.Edges[hung].Lap()
			over, stands := plan.Neighbour(d, hung).(*plan.Member)
			if !turns || !stands || d.Fit.Kind.Is != "overlay" || !lap.Known() || lap.Length <= 0 {
				continue
			}
			for _, use := range d.Hinges {
				if use.Hinge == nil || use.Hinge.Kind.Is != "butt" || !use.Hinge.Wide.Known() || !use.Proud.Known() || use.Proud.Length >= 0 {
					continue
				}
				pin, known := d.Pin(use)
				paper := p.Paper().Start(use.Hinge.Wide.Length/2, "one leaf of "+use.Name+", from its pin").Minus(pin.Out, "the pin is outside the edge of the door").Equals("from the edge of the door")
				reaches := paper.Result()
				if !known || !wood.Over(reaches, lap.Length+p.Tape.Tolerance()) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d), Span: use.Span,
					Message: fmt.Sprintf("hinge %s lies on %s of the edge of %s, of which %s laps %s: it stands %s over into the opening", quote(use.Name), exact(p, reaches),
						called(&over.Item), titled(&d.Item), exact(p, lap.Length), exact(p, reaches-lap.Length)),
					Working: paper.Versus(lap.Length, "lap at the hinge edge").Working(),
					Fixes:   []diag.Fix{{Title: fmt.Sprintf("take one that is %s wide or less, opened flat", p.Show(p.Tape.Floor(2*(lap.Length+pin.Out))))}},
				})
				break
			}
		}
	},
}

// onButts is a case with a door that laps it on butts, for what a rule shows.
func onButts(fit string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 }
case cupboard {
  of ply
  wide 14 ; high 30 ; deep 12
  across { side left ; door only { leaf ply ; ` + fit + ` ; hang left ; hinge brass ends 3 proud (-3/4) } ; side right }
}
`
}
