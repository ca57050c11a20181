package rules

// What stands on the floor by itself: what is in it and on it, where its feet are, what it weighs and where it
// balances, and whether a wall holds it.

import (
	"iter"
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// onFloor is one piece.
type onFloor struct {
	*plan.Assembly
	subject  string
	tops     []*plan.Member // that lie over it
	things   []plan.Within
	balance  plan.Balance
	balanced bool // the balance is known
	walls    map[any]*plan.Fixing
}

// mostWithin bounds the work on one piece: of one in which more stands nothing is said.
const mostWithin = 2000

// piecesIn ranges over the assemblies that stand by themselves, and in which not too much stands to be looked at. wanted
// says which are worth a look.
func piecesIn(p *plan.Plan, wanted func(*plan.Assembly, []*plan.Member) bool) iter.Seq[*onFloor] {
	return func(yield func(*onFloor) bool) {
		walls := fixedToWall(p)
		for _, a := range p.Assemblies {
			if a.Text == "" || a.Used() || !wanted(a, p.TopsOver(a)) {
				continue
			}
			things, ok := a.Within(mostWithin)
			if !ok {
				continue
			}
			s := &onFloor{Assembly: a, subject: plan.PathOf(a), tops: p.TopsOver(a), things: things, walls: walls}
			s.balance, s.balanced = p.Balance(a)
			if !yield(s) {
				return
			}
		}
	}
}

// called is what a message calls it: what it is for, where the plan says so.
func (s *onFloor) called() string {
	if s.Use.Is != "" {
		return s.Use.Is + " " + quote(s.Text)
	}
	return s.Kind.String() + " " + quote(s.Text)
}

// feet are what it stands on, seen from above: across, and from front to back. One that has no lists stands on its
// whole outside. They are not known where something at the floor has no place.
func (s *onFloor) feet() (feet [][2]plan.Extent, known bool) {
	if s.Root == nil {
		across, behind := s.Outside[plan.Across], s.Outside[plan.Behind]
		whole := [2]plan.Extent{{Size: across.Length, Placed: true, Sized: across.Known()}, {Size: behind.Length, Placed: true, Sized: behind.Known()}}
		return [][2]plan.Extent{whole}, across.Known() && behind.Known()
	}
	floor := s.Outside[plan.Down]
	for _, w := range s.things {
		box, stands := footing(w)
		if !stands {
			continue
		}
		for _, at := range box {
			if !at.Known() || !floor.Known() {
				return nil, false
			}
		}
		if !wood.Under(box[plan.Down].To(), floor.Length) {
			feet = append(feet, [2]plan.Extent{box[plan.Across], box[plan.Behind]})
		}
	}
	return feet, len(feet) > 0
}

// footing is the place of something that may stand on the floor: of wood, or of a frame of which one side in many is
// drawn.
func footing(w plan.Within) (plan.Box, bool) {
	switch n := w.Node.(type) {
	case *plan.Member:
		at := n.Body
		at[n.Grain] = n.Cell[n.Grain]
		return w.Box(at), true
	case *plan.Placed:
		return w.Box(n.Cell), n.Part.To == nil || n.Part.To.Root == nil
	}
	return plan.Box{}, false
}

// onLegs reports whether it stands on legs, or on sides that are drawn beside it.
func (s *onFloor) onLegs() bool {
	return s.Root == nil || slices.ContainsFunc(s.things, func(w plan.Within) bool {
		m, ok := w.Node.(*plan.Member)
		return ok && (m.Word == "leg" || m.Word == "post")
	})
}

// holds ranges over what it, and everything in it, is said to hold.
func (s *onFloor) holds(what string) bool {
	says := func(all []*plan.Holds) bool {
		return slices.ContainsFunc(all, func(h *plan.Holds) bool { return h.What.Is == what })
	}
	return says(s.Holds) || slices.ContainsFunc(s.things, func(w plan.Within) bool {
		switch n := w.Node.(type) {
		case *plan.Member:
			return says(n.Holds)
		case *plan.Drawer:
			return says(n.Holds)
		case *plan.Space:
			return says(n.Holds)
		case *plan.Placed:
			return n.Part.To != nil && says(n.Part.To.Holds)
		}
		return false
	})
}

// drawers are those that pull out to the front.
func (s *onFloor) drawers() []plan.Within {
	var all []plan.Within
	for _, w := range s.things {
		if _, ok := w.Node.(*plan.Drawer); ok && w.Faces() {
			all = append(all, w)
		}
	}
	return all
}

// inPieceAt is where a point of the assembly in which something stands lies in the piece, along an axis that both have alike.
func inPieceAt(w plan.Within, axis plan.Axis, at plan.Length) plan.Length {
	var box plan.Box
	box[axis] = plan.Extent{From: at.Length, Placed: at.Known(), Sized: true}
	e := w.Box(box)[axis]
	if !e.Placed {
		return plan.Length{}
	}
	return plan.Length{Length: e.From, How: plan.Derived}
}

// fixedToWall is what a plan fixes to the wall, or has something in it that is: assemblies, and tops that stand alone.
func fixedToWall(p *plan.Plan) map[any]*plan.Fixing {
	walls := map[any]*plan.Fixing{}
	for _, f := range p.Fixes {
		if !f.Wall.On || f.A.To == nil {
			continue
		}
		fixed := f.A.To.Is
		if n, ok := fixed.(plan.Node); ok && plan.It(n).In != nil {
			fixed = plan.It(n).In
		}
		if walls[fixed] == nil {
			walls[fixed] = f
		}
	}
	return walls
}

// anchored is where the plan fastens it, or something in it or on it, to the wall; nil where it does not.
func (s *onFloor) anchored() *plan.Fixing {
	if len(s.walls) == 0 {
		return nil
	}
	if at := s.walls[s.Assembly]; at != nil {
		return at
	}
	for _, top := range s.tops {
		if at := s.walls[top]; at != nil {
			return at
		}
	}
	for _, w := range s.things {
		if placed, ok := w.Node.(*plan.Placed); ok && s.walls[placed.Part.To] != nil {
			return s.walls[placed.Part.To]
		}
	}
	return nil
}

// fixToWall is a line that fixes it to the wall, for a message.
func (s *onFloor) fixToWall() string {
	return "`fix " + s.subject + " to wall { … }`"
}

// about remarks on a weight that rests on a figure from memory.
func about(working diag.Working, w plan.Weight) diag.Working {
	if !w.Status.Verified() {
		working = append(working, diag.Step{Label: "how heavy is a figure from memory, check it"})
	}
	return working
}
