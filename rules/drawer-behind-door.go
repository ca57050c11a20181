package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var clearOfDoor = &Figure{
	Name: "clear", Why: "how far a drawer stays clear of an open door beside it", Basis: Practice,
	Source: "1/8 (3 mm): 1/4 (6 mm) between two doors", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
}

var drawerBehindDoor = &Rule{
	Name: "drawer-behind-door", Group: Drawers, Severity: diag.Error,
	Summary: "a drawer behind a door scrapes the open door when it is pulled out",
	Doc: `An inset door that stands open at a right angle does not clear its opening: its own thickness stays in it, and what its pin
stands out. A drawer behind it that is as wide as the opening takes the finish off the door, or does not come out at all.

Make the drawer as much narrower as the open door stands in, and 1/8 more, with a "space" or a filler beside it; or hang the door on hinges by
which it clears its opening. The rule works out where the leaf comes to when it turns about its pin, as far as the plan says that it
"opens". Cup hinges count where they are said to swing in.`,
	Sources: `Geometry: the back corner at the hinge turns about the pin. That stands over the middle of the gap, half a knuckle before the leaf, unless the
plan places it. What is to be clear is common practice, no source.`,
	Sound: `A drawer that is narrower by what both open doors cover, and 1/8 at each side; one behind a door that opens all the way round; one
behind a door that laps over its case.`,
	Bad: behindDoor("", `opens 90deg`, `drawer only`),
	Good: behindDoor("", `opens 90deg`, `across {
        space 1 1/4
        drawer only
      }`),
	Figures: []*Figure{clearOfDoor},
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Drawer](p) {
			for door := range doorsBefore(d) {
				l, ok := openLeaf(door)
				if !ok {
					continue
				}
				subject, it := plan.PathOf(d), plan.It(door)
				from, ok := fromEdge(d, door, l.hinge)
				least := l.covers + pass.Length(clearOfDoor, subject)
				if !ok || l.covers <= 0 || !wood.Under(from, least-p.Tape.Tolerance()) {
					continue
				}
				pass.Report(diag.Finding{
					Subject: subject,
					Span:    d.Name.Span,
					Message: fmt.Sprintf("%s, open %s, stands %s in its opening, and %s begins %s in: it is not clear of the door", titled(it), degrees(l.opens),
						exact(p, l.covers), titled(&d.Item), exact(p, max(from, 0))),
					Working: l.working(p).Plus(pass.Length(clearOfDoor, subject), "to be clear of it").Equals("from the "+sideOf(l.hinge)+" of the opening").
						Versus(from, "there the drawer begins").Working(),
					Notes: []diag.Note{{Span: it.Span, Message: titled(it) + " stands before it"}},
					Fixes: []diag.Fix{{Title: fmt.Sprintf("leave %s beside the drawer at the %s of the opening, or hang the door so that it clears its opening",
						p.Show(upTo(p, least-min(from, drawerStands(d, l.hinge)))), sideOf(l.hinge))}},
				})
			}
		}
	},
}

// behindDoor is a case with a door before what is drawn, for what a rule shows.
func behindDoor(supplies, door, behind string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
sheet ply { kind plywood ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge butt-hinge { kind butt ; knuckle 3/8 }
slide ball { kind side-mount ; long 16 ; room 1/2 }
` + supplies + `case press {
  wide 21 1/2 ; high 7 1/2 ; deep 22
  of oak 3/4
  joint housing deep 1/4
  each drawer {
    of oak 1/2 ; front oak 3/4 applied ; fit inset ; reveal 1/16 ; slide ball
    corner front dovetail slope 1:7 ; corner back dado deep 1/4
  }
  across {
    side left
    down {
      top head
      behind {
        door before { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge butt-hinge ; ` + door + ` }
        space 2
        ` + behind + `
      }
      bottom floor
    }
    side right
  }
}
`
}

// leafOpen is an open door as what is behind it meets it.
type leafOpen struct {
	hinge       plan.Side
	opens       float64
	covers, gap wood.Length // of its opening; between its hinge edge and the opening
	what        string      // what stands in the opening
}

// openLeaf is how a door stands when it is open as far as the plan says; ok is false where that is not known.
func openLeaf(d *plan.Door) (l leafOpen, ok bool) {
	if s, turns := d.Swing(); turns {
		return leafOpen{s.Hinge, s.Opens.Value, s.Covers(), s.Gap, "the leaf stands in from its hinge edge"}, s.Opens.Known()
	}
	side, turns := map[string]plan.Side{"left": plan.Left, "right": plan.Right}[d.Hang.Is]
	thick, gap := d.Thick(), d.Edges[side].Less
	if !turns || !thick.Known() || !gap.Known() || d.Fit.Kind.Is != "inset" {
		return l, false
	}
	for _, use := range d.Hinges {
		if use.Hinge != nil && use.Hinge.SwingsIn.On {
			return leafOpen{side, 90, thick.Length + gap.Length, gap.Length, "thickness of the leaf, which its cup hinges swing in"}, true
		}
	}
	return l, false
}

func (l leafOpen) working(p *plan.Plan) *plan.Paper {
	return p.Paper().Start(l.covers-l.gap, l.what+", open "+degrees(l.opens)).Plus(l.gap, "gap at the hinge edge")
}

// fromEdge is how far from the hinge side of a door's opening a drawer begins: its front or its box, whichever
// is the wider.
func fromEdge(d *plan.Drawer, door *plan.Door, hinge plan.Side) (wood.Length, bool) {
	axis := hinge.Axis()
	cell, opening := d.Cell[axis], door.Cell[axis]
	if !cell.Known() || !opening.Known() || !d.Edges[hinge].Less.Known() {
		return 0, false
	}
	if hinge.Far() {
		return opening.To() - cell.To() + drawerStands(d, hinge), true
	}
	return cell.From - opening.From + drawerStands(d, hinge), true
}

// drawerStands is how far from the edge of its own opening a drawer stands at one side.
func drawerStands(d *plan.Drawer, side plan.Side) wood.Length {
	stands := d.Edges[side].Less.Length
	if box := d.Box[plan.Across]; side.Axis() == plan.Across && box.Known() {
		stands = min(stands, (d.Cell[plan.Across].Size-box.Length)/2)
	}
	return stands
}

// sideOf is what a maker calls a side of an opening.
func sideOf(s plan.Side) string { return [...]string{"left", "right", "top", "bottom"}[s] }
