package rules

import (
	"fmt"
	"iter"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	plateReaches = &Figure{
		Name: "plate", Why: "how far along the side a mounting plate reaches from the middle of its hinge", Basis: Memory,
		Source: "16 mm: its screws are 32 mm apart", Dim: lang.Length, Length: 16 * wood.Millimetre,
	}
	plateDeep = &Figure{
		Name: "deep", Why: "how far behind the front edge of the case the screws of a mounting plate sit", Basis: Memory,
		Source: "37 mm, in line with the holes of shelf pins", Dim: lang.Length, Length: 37 * wood.Millimetre,
	}
)

var plateMeetsShelf = &Rule{
	Name: "plate-meets-shelf", Group: Doors, Severity: diag.Error,
	Summary: "the mounting plate of a cup hinge would sit where a shelf, or the end of the case, stands",
	Doc: `The cup is bored into the door, and its plate is screwed to the side of the case at the same height: 32 mm of it, at the least. Where a
shelf is housed into the side there, the plate cannot be screwed on, and the cup is bored already. On a leaf that laps far over the bottom of its
case, a hinge that is near its end comes before the bottom itself.

Move the hinge along the door ("at 100"), or the shelf. A shelf that stands behind the plate is clear of it, and a shelf on pins is moved in a
minute: only what is joined to the case is asked about.`,
	Sources: `Geometry: the height of the hinge on the leaf, less what the leaf laps there, is its height in the opening. The figures are as they say.`,
	Sound: `A hinge just clear of a shelf; a shelf that stands back from the front; shelves on pins; hinges of a door with nothing behind
it.`,
	Bad:     doorBefore("at 4, 14 1/4, 25"),
	Good:    doorBefore("at 4, 16 1/2, 25"),
	Figures: []*Figure{plateReaches, plateDeep},
	Check: func(pass *Pass) {
		for d := range plan.AllOf[*plan.Door](pass.Plan) {
			hung, turns := d.Hung()
			for _, use := range d.Hinges {
				if turns && use.Hinge != nil && use.Hinge.Kind.Is == "cup" && closed(&d.Item) {
					checkPlates(pass, d, use, hung)
				}
			}
		}
	},
}

// doorBefore is a case with a door before a housed shelf, its middle 15 from the lower end of the leaf, for what a
// rule shows.
func doorBefore(at string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge cup { kind cup ; bore 35mm ; deep 12.5mm ; rim 4mm ; plate 0 }
case cupboard {
  wide 20 ; high 30 ; deep 12
  of ply
  joint dado deep 1/4
  down {
    top head
    across {
      side left
      behind { door only { leaf ply ; fit overlay 17mm bottom 3/4 ; hang left ; hinge cup ` + at + ` } ; down { open ; shelf middle ; open 13 1/2 } }
      side right
    }
    bottom floor
  }
}
`
}

// checkPlates holds where the plates of a hinge come to against what stands beside them in the case. The first that
// meets something is said.
func checkPlates(pass *Pass, d *plan.Door, use *plan.HardwareUse, hung plan.Side) {
	p, subject := pass.Plan, plan.PathOf(d)
	axis := plan.Down - hung.Axis() // along which the hinges sit
	near := d.Edges[plan.Side(axis*2)].Less
	opening := d.Cell[axis]
	if !near.Known() || !opening.Known() {
		return
	}
	reach := pass.Length(plateReaches, subject)
	for _, along := range d.Along(use, hung) {
		if !along.Placed {
			continue
		}
		at := opening.From + near.Length + along.From
		for m := range besidePlates(d, hung, pass.Length(plateDeep, subject)) {
			stands := m.Cell[axis]
			apart := max(stands.From-at, at-stands.To())
			if !stands.Known() || !wood.Under(apart, reach-p.Tape.Tolerance()) {
				continue
			}
			end, from, lap := plan.Side(axis*2), along.From, near
			if far := d.Edges[plan.Side(axis*2)+1]; axis == plan.Down && far.Less.Known() && d.Size[axis].Known() { // told from the lower end, as `at` is
				end, from, lap = far.Side, d.Size[axis].Length-along.From, far.Less
			}
			paper := p.Paper().Start(from, "from the "+sideOf(end)+" of the leaf to the middle of the hinge")
			if lap.Length < 0 {
				paper.Minus(-lap.Length, "lap there")
			} else {
				paper.Plus(lap.Length, "reveal there")
			}
			face := stands.From
			if at > stands.From && (at >= stands.To() || end.Far()) {
				face = stands.To()
			}
			to := face - opening.From
			if end.Far() {
				to = opening.To() - face
			}
			what := p.Show(max(apart, 0)) + " from " + called(&m.Item)
			if apart <= 0 {
				what = "before " + called(&m.Item)
			}
			pass.Report(diag.Finding{
				Subject: subject, Span: use.Span,
				Message: fmt.Sprintf("a plate of hinge %s of %s would sit %s in the case: it wants %s", quote(use.Name), titled(&d.Item), what, bored(reach)),
				Working: paper.Equals("from the "+sideOf(end)+" of the opening").Versus(to, "face of "+called(&m.Item)).Working(),
				Notes:   []diag.Note{{Span: m.Span, Message: called(&m.Item) + " stands here"}},
				Fixes:   []diag.Fix{{Title: fmt.Sprintf("move the hinge %s along the door, or the shelf", p.Show(upTo(p, min(reach-(stands.From-at), reach-(at-stands.To())))))}},
			})
			return
		}
	}
}

// liftedOut are the joints out of which a shelf is lifted.
var liftedOut = []string{plan.ShelfPin, plan.DropIn}

// besidePlates ranges over what could be in the way of the plates of a door: what stands at both ends of its
// hinge edge, and what is joined to that side behind it, as far to the front as plates are screwed.
func besidePlates(d *plan.Door, hung plan.Side, deep wood.Length) iter.Seq[*plan.Member] {
	return func(yield func(*plan.Member) bool) {
		if d.In.Kind == plan.Frame {
			return // on a face frame plates are screwed to that
		}
		axis := plan.Down - hung.Axis()
		for _, side := range [2]plan.Side{plan.Side(axis * 2), plan.Side(axis*2) + 1} {
			if m, ok := plan.Neighbour(d, side).(*plan.Member); ok && !yield(m) {
				return
			}
		}
		behind := plan.Neighbour(d, plan.Back)
		if behind == nil || !plan.It(behind).Cell[plan.Behind].Placed {
			return
		}
		front := plan.It(behind).Cell[plan.Behind].From
		for n := range nearDrawer(behind) {
			m, ok := n.(*plan.Member)
			if !ok || m.Flat != axis || m.Grain != hung.Axis() || !m.Body[plan.Behind].Placed || wood.Over(m.Body[plan.Behind].From-front, deep) {
				continue
			}
			end, reaches := m.Ends[0], wood.Same(m.Cell[hung.Axis()].From, d.Cell[hung.Axis()].From)
			if hung.Far() {
				end, reaches = m.Ends[1], wood.Same(m.Cell[hung.Axis()].To(), d.Cell[hung.Axis()].To())
			}
			if reaches && end != nil && end.Joint != nil && !slices.Contains(liftedOut, end.Joint.Kind.Is) && !yield(m) {
				return
			}
		}
	}
}
