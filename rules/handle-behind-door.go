package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

var handleBehindDoor = &Rule{
	Name: "handle-behind-door", Group: Drawers, Severity: diag.Error,
	Summary: "the handle of a drawer keeps the door before it from closing",
	Doc: `A drawer behind a door is pulled by a handle that stands before its front, and the closed door stands before that. What is
drawn front to back says how much room there is between them.

Set the drawer back (a "space" between the door and the drawer), or pull it by a hole or a lip in its front.`,
	Sources: `Geometry.`,
	Sound:   `A handle that has just the room that it stands out; a drawer without one, close behind its door.`,
	Bad:     behindDoor("handle bow { projects 2 1/4 }\n", `opens 180deg`, `drawer only { handle bow centred }`),
	Good:    behindDoor("handle bow { projects 1 1/4 }\n", `opens 180deg`, `drawer only { handle bow centred }`),
	Check: func(pass *Pass) {
		p := pass.Plan
		for d := range plan.AllOf[*plan.Drawer](p) {
			use, stands := farthestHandle(d)
			if use == nil || !d.Cell[plan.Behind].Known() {
				continue
			}
			face := d.Cell[plan.Behind].From
			if d.Fit.Kind.Is == "overlay" {
				if !d.Front.Size.Thick.Known() {
					continue
				}
				face -= d.Front.Size.Thick.Length
			}
			for door := range doorsBefore(d) {
				back, ok := backOfLeaf(door)
				if !ok || !wood.Under(face-back, stands-p.Tape.Tolerance()) {
					continue
				}
				it := plan.It(door)
				pass.Report(diag.Finding{
					Subject: plan.PathOf(d),
					Span:    use.Span,
					Message: fmt.Sprintf("handle %s stands out %s, but %s closes %s before %s: the door does not shut", quote(use.Name), exact(p, stands),
						titled(it), exact(p, max(face-back, 0)), titled(&d.Item)),
					Working: p.Paper().Start(face, "face of the drawer, from the front").Minus(back, "back of the closed door").Equals("between them").
						Versus(stands, "handle").Working(),
					Notes: []diag.Note{{Span: it.Span, Message: titled(it) + " stands before it"}},
					Fixes: []diag.Fix{{Title: fmt.Sprintf("set the drawer %s farther back", exact(p, upTo(p, stands-face+back)))}},
				})
			}
		}
	},
}

// farthestHandle is the handle of a drawer that stands out farthest.
func farthestHandle(d *plan.Drawer) (use *plan.HardwareUse, stands wood.Length) {
	for _, u := range d.Handles {
		if u.Handle != nil && u.Handle.Projects.Known() && u.Handle.Projects.Length > stands {
			use, stands = u, u.Handle.Projects.Length
		}
	}
	return use, stands
}

// backOfLeaf is where the back of a closed door is, from the front of what it stands in.
func backOfLeaf(d *plan.Door) (wood.Length, bool) {
	at, thick := d.Cell[plan.Behind], d.Thick()
	if !at.Placed || !thick.Known() {
		return 0, false
	}
	if d.Fit.Kind.Is == "overlay" {
		return at.From, true
	}
	return at.From + thick.Length, true
}
