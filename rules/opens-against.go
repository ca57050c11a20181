package rules

import (
	"fmt"
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var opensAgainst = &Rule{
	Name: "opens-against", Group: Doors, Severity: diag.Error,
	Summary: "a door or a lid meets something before it is open",
	Doc: `What stands beside a door and farther out than its face stops it: the wall of a corner, a neighbour that is deeper, the handle on the next
front. A chest that stands against a wall has a lid that does not stay up. The door springs its hinges on it, or the drawer behind does not come out.

The rule opens each leaf about its pin, with what its handle stands out, as far as the door says that it "opens"; one that does not say is taken
to open to a right angle, or nearly, and then this is a warning, as it is where it opens past a right angle. It looks at what is drawn beside it in the same piece and before its face, with handles, and at the
walls that a plan states: "wall left 2 back 1/2" is how far they are from the outside. What a leaf lies in front of when it is shut is taken to open
first. A handle is taken to sit near the free edge. Hinges whose pin does not stand still, and butts of an overlay of which the plan does not say where
their pin stands, are taken to turn the leaf about the corner of its face, which asks for less than they do.

Hang the door on its other edge, move it or the piece away from there, take a handle that stands out less, or say how far it can open: "opens 85deg".`,
	Sources: `Geometry. Where a handle sits is common practice, no source.`,
	Sound: `A door that opens to a right angle in a corner, with room for its handle; a neighbour that stands just as far out as the face of the door; a lid
that is to open only as far as the wall lets it.`,
	Bad:  inCorner("wall left 1/2", "opens 90deg"),
	Good: inCorner("wall left 1 1/2", "opens 90deg"),
	Check: func(pass *Pass) {
		var said onePer[diag.Span]
		for s := range piecesIn(pass.Plan, func(a *plan.Assembly, _ []*plan.Member) bool { return a.Root != nil }) {
			leaves := s.leaves(pass.Plan)
			if len(leaves) == 0 {
				continue
			}
			in := s.inTheWay()
			for i := range leaves {
				checkOpens(pass, &said, &leaves[i], in)
			}
		}
		said.report(pass)
	},
}

// inCorner is a cupboard with one door beside a wall, for what a rule shows.
func inCorner(wall, door string) string {
	return `climate { shop 8% ; dry 6% ; humid 11% }
sheet ply { kind plywood ; species "yellow birch" ; thick 3/4 ; actual 3/4 ; emission "TSCA Title VI" }
hinge brass { kind butt ; high 2 ; wide 1 1/2 ; knuckle 1/4 }
handle bow { projects 2 }
case cupboard {
  of ply
  wide 18 ; high 24 ; deep 12
  ` + wall + `
  across {
    side left
    down { top roof ; door only { leaf ply ; fit inset ; reveal 1/16 ; hang left ; hinge brass ends 3 ; handle bow at 12 ; ` + door + ` } ; bottom floor }
    side right
  }
}
`
}

// A door of which nothing is said is taken to open to a right angle. So far short of that, or past it of what is said, does no
// harm, and where handles sit is not known so well: common practice, no source.
const (
	rightAngle = 90
	shortOfIt  = 5
)

func checkOpens(pass *Pass, said *onePer[diag.Span], l *opening, in []standsBy) {
	p, d := pass.Plan, l.door
	opens, stated := d.Opens.Value, d.Opens.Known()
	switch {
	case !stated && d.Opens.How != plan.Unknown:
		return
	case !stated:
		opens = min(rightAngle, d.OpensTo().Or(rightAngle))
	}
	if opens <= 0 || opens > 360 {
		return
	}
	stop, ok := l.stops(opens, in)
	short := opens - stop.degrees
	if !ok || short < 1 || short < shortOfIt && (!stated || stop.degrees >= rightAngle) {
		return
	}
	to := math.Floor(stop.degrees)
	f := diag.Finding{
		Subject: plan.PathOf(d), Span: standing(d.Name.Span, d.Opens.Span),
		Message: fmt.Sprintf("%s is to open by %s, and at %s its %s meets %s", titled(&d.Item), degrees(opens), degrees(to), stop.with, stop.by.called),
		Fixes:   []diag.Fix{{Title: fmt.Sprintf("hang it on another edge, move it away from there, or let it open less: `opens %s`", degrees(to))}},
	}
	if stop.with == "handle" {
		f.Fixes = append(f.Fixes, diag.Fix{Title: "take a handle that stands out less"})
	}
	if stop.by.span.Known() && stop.by.span != f.Span {
		f.Notes = []diag.Note{{Span: stop.by.span, Message: "it stands here"}}
	}
	if stop.degrees >= rightAngle {
		f.Severity = diag.Warning
	}
	if !stated {
		f.Severity = diag.Warning
		f.Message = fmt.Sprintf("%s does not open to %s: at %s its %s meets %s", titled(&d.Item), degrees(opens), degrees(to), stop.with, stop.by.called)
	}
	at, reach := l.inLeaf(stop.by), l.reach(opens)
	for i, r := range reach {
		reach[i] = p.Tape.Floor(r + p.Tape.Finest()/2)
	}
	beside, before := -at[0].To(), -at[1].To()
	switch {
	case beside >= 0:
		f.Working = p.Paper().Start(beside, "from its hinge edge to "+stop.by.called).Versus(reach[0], "its leaf and its handle reach there, open "+degrees(opens)).Working()
	case before >= 0:
		f.Working = p.Paper().Start(before, "from its face to "+stop.by.called).Versus(reach[1], "its leaf and its handle reach before it at most").Working()
	}
	said.add(f.Span, f)
}
