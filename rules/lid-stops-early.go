package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var lidStopsEarly = &Rule{
	Name: "lid-stops-early", Group: Doors, Severity: diag.Error,
	Summary: "a stay is too short to let its lid open as far as it should",
	Doc: `A stay ends where it is drawn out to its length. Screwed too far from the hinge, on the lid or on the case, it stops the lid half
open: over a chest it then falls again, since it has not passed the upright.

Move the points nearer to the pin, take a longer stay, or let the lid open less. The rule takes the pin as the middle of a circle on which the
point on the lid runs, "lid 7" from it; the point on the case stands fast, "case 2 x 6": along the shut lid, and square to it into the
case. It looks at every angle up to the one to which the lid opens, since a stay may be drawn out most before that.`,
	Sources: `Geometry: the third side of a triangle.`,
	Sound:   `A stay that is just drawn out when the lid stands open; one that passes its greatest length on the way and has it.`,
	Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
hinge brass { kind butt ; high 2 ; wide 1 3/8 ; knuckle 1/4 ; opens 90deg }
stay arm { lid 7 ; case 2 x 6 ; shut 7 ; open 12 }
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
stay arm { lid 5 3/4 ; case 2 x 6 ; shut 6 ; open 12 }
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
			longest := s.use.Stay.Open
			if !s.placed() || !longest.Known() {
				continue
			}
			most := s.farthest()
			far := s.apart(most)
			if !wood.Over(far, longest.Length+p.Tape.Tolerance()) {
				continue
			}
			f := diag.Finding{
				Subject: s.path,
				Span:    s.use.Span,
				Message: fmt.Sprintf("%s stops at %s, not at %s: stay %s would have to be %s long, and draws out to %s",
					titled(&s.Item), degrees(math.Floor(s.stops(longest.Length))), degrees(s.OpensTo().Value), quote(s.use.Name), exact(p, far), p.Show(longest.Length)),
				Working: s.working(p, most, "between the two, open by "+degrees(most)).
					Versus(longest.Length, "its longest").Working(),
				Notes: []diag.Note{{Span: standing(s.use.Stay.Name.Span, longest.Span), Message: "the stay is drawn here"}},
			}
			if wood.Over(s.apart(0), longest.Length) {
				f.Message = fmt.Sprintf("the points of stay %s are %s apart when %s is shut, and it draws out to %s", quote(s.use.Name),
					exact(p, s.apart(0)), titled(&s.Item), p.Show(longest.Length))
			}
			if at, ok := s.nearer(p); ok {
				f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("set its point on the %s nearer to the pin: `lid %s`", s.leaf(), p.Show(at))})
			}
			f.Fixes = append(f.Fixes, diag.Fix{Title: fmt.Sprintf("take a stay that draws out to %s", p.Show(upTo(p, far)))})
			pass.Report(f)
		}
	},
}

// nearer is how far from the pin a stay's point on the lid may be at most so that the lid opens, and still
// shuts; false where no such place is on a mark.
func (s stayed) nearer(p *plan.Plan) (wood.Length, bool) {
	stay := *s.use.Stay
	use := *s.use
	use.Stay, s.use = &stay, &use
	fits := func(l wood.Length) bool {
		stay.Lid.Length = l
		return l > 0 && !wood.Over(s.apart(s.farthest()), stay.Open.Length)
	}
	least, most := wood.Length(0), stay.Lid.Length
	for most-least > p.Tape.Finest()/4 { // the points come apart as the one on the lid goes out
		if middle := (least + most) / 2; fits(middle) {
			least = middle
		} else {
			most = middle
		}
	}
	at := p.Tape.Floor(least)
	return at, fits(at) && !(stay.Shut.Known() && wood.Under(s.apart(s.nearest()), stay.Shut.Length))
}
