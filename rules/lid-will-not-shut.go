package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

var lidWillNotShut = &Rule{
	Name: "lid-will-not-shut", Group: Doors, Severity: diag.Error,
	Summary: "a stay is too long for its lid to shut",
	Doc: `A stay that slides or has a gas spring has a shortest length. Where its two points come nearer than that, the lid stands open by
a hand, and whoever leans on it pulls the screws out.

Move the points farther from the pin or farther from one another, or take a shorter stay. "shut" is the shortest that the stay is between its
points; one that folds up flat has none, and is not asked.`,
	Sources: `Geometry: the third side of a triangle.`,
	Sound:   `A stay that is just at its shortest when the lid is shut; one that folds, of which the plan says no shortest length.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 90deg }
stay arm { lid 7 ; case 2 x 6 ; shut 9 ; open 14 }
case chest {
  of oak 3/4
  wide 30 ; high 18 ; deep 18
  joint housing deep 1/4
  down { lid flap { hang back ; hinge brass ends 3 ; stay arm } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 90deg }
stay arm { lid 7 ; case 2 x 6 ; shut 7 3/4 ; open 14 }
case chest {
  of oak 3/4
  wide 30 ; high 18 ; deep 18
  joint housing deep 1/4
  down { lid flap { hang back ; hinge brass ends 3 ; stay arm } ; across { side left ; open bay ; side right } ; bottom floor }
}
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		for s := range stayedLids(p) {
			shortest := s.use.Stay.Shut
			if !s.placed() || !shortest.Known() {
				continue
			}
			least := s.nearest()
			near := s.apart(least)
			if !wood.Under(near, shortest.Length-p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: s.path,
				Span:    s.use.Span,
				Message: fmt.Sprintf("%s does not shut: the points of stay %s come to %s, and its shortest is %s", titled(&s.Item),
					quote(s.use.Name), exact(p, near), p.Show(shortest.Length)),
				Working: s.working(p, least, "between the two, "+shutBy(least)).Versus(shortest.Length, "its shortest").Working(),
				Notes:   []diag.Note{{Span: standing(s.use.Stay.Name.Span, shortest.Span), Message: "the stay is drawn here"}},
				Fixes: []diag.Fix{
					{Title: fmt.Sprintf("set its points farther apart, or take a stay that shuts to %s", p.Show(p.Tape.Floor(near)))},
				},
			}
			if at := s.stops(shortest.Length); least == 0 && at > 0 && at < s.OpensTo().Value {
				f.Message = fmt.Sprintf("%s stays open by %s: the points of stay %s come to %s when it is shut, and its shortest is %s",
					titled(&s.Item), degrees(math.Ceil(at)), quote(s.use.Name), exact(p, near), p.Show(shortest.Length))
			}
			pass.Report(f)
		}
	},
}

// shutBy says at which angle a lid stands.
func shutBy(at float64) string {
	if at == 0 {
		return "shut"
	}
	return "open by " + degrees(at)
}
