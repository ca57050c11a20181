package rules

// Where people sit: how high the tops of tables and the seats of benches are, and what is over the knees.

import (
	"cmp"
	"iter"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var perPlace = &Figure{
	Name: "place", Why: "how much of the edge of a table one place takes", Basis: SecondHand,
	Source: "24 in (600 mm): several pages for makers and diners; 21 in at least and 25 usual: a page on the space that dining takes", Dim: lang.Length, Length: 24 * wood.Inch, Metric: 600 * wood.Millimetre,
}

// satAt ranges over the pieces that stand on the floor by themselves and at which, or on which, people sit. What is fixed to a
// wall may hang anywhere.
func satAt(pass *Pass) iter.Seq[*onFloor] {
	pieces := piecesIn(pass.Plan, func(a *plan.Assembly, _ []*plan.Member) bool {
		switch a.Use.Is {
		case "table", "desk", "counter", "bench", "chair":
			return a.Outside[plan.Down].Known()
		}
		return false
	})
	return func(yield func(*onFloor) bool) {
		for s := range pieces {
			if s.anchored() == nil && !yield(s) {
				return
			}
		}
	}
}

// surface is what one sits at or on: the highest top or lid, and the height of its upper face above the floor.
type surface struct {
	of    *plan.Member
	high  wood.Length // above the floor
	under wood.Length // its lower face
	at    [2]plan.Extent
}

// surfaces are the tops of a piece, and the lids that lie level, the highest first.
func (s *onFloor) surfaces() []surface {
	var all []surface
	floor := s.Outside[plan.Down].Length
	for _, top := range s.tops {
		if thick := top.Size.Thick; thick.Known() {
			all = append(all, surface{top, floor + thick.Length, floor, [2]plan.Extent{top.Reaches(plan.Across), top.Reaches(plan.Behind)}})
		}
	}
	for _, w := range s.things {
		m, ok := w.Node.(*plan.Member)
		if !ok || m.Word != "top" && m.Word != "lid" || m.Flat != plan.Down || !w.Faces() {
			continue
		}
		at := w.Box(m.Body)
		if down := at[plan.Down]; down.Known() {
			sf := surface{m, floor - down.From, floor - down.To(), [2]plan.Extent{at[plan.Across], at[plan.Behind]}}
			if m.Over != nil {
				sf.at = [2]plan.Extent{s.reaches(m, plan.Across), s.reaches(m, plan.Behind)}
			}
			all = append(all, sf)
		}
	}
	slices.SortStableFunc(all, func(a, b surface) int { return cmp.Compare(b.high, a.high) })
	return all
}

// long reports whether a top is longer from left to right than from front to back.
func (f surface) long() bool { return f.at[0].Size >= f.at[1].Size }

// places is how many sit at the long edges of a top, and at its short ones, with so much for each.
func (f surface) places(s *onFloor, each, slack wood.Length) (along, ends int) {
	long, wide := f.at[0].Size, f.at[1].Size
	if !f.long() {
		long, wide = wide, long
	}
	along, ends = int((long+slack)/each), int((wide+slack)/each)
	switch s.Use.Is {
	case "bench", "chair":
		return along, 0
	case "desk":
		return 2 * along, 0
	}
	return 2 * along, 2 * ends
}

// overKnees is something that hangs over the knees along an edge.
type overKnees struct {
	along plan.Extent
	low   wood.Length // its lower edge, above the floor
	it    *plan.Item
}

// hangs is what there is between the top and the floor within so far of one edge of the top: seen along that edge.
func (s *onFloor) hangs(p *plan.Plan, f surface, side plan.Side, within wood.Length) []overKnees {
	if s.Root == nil {
		return s.drawnSide(p, f, side, within)
	}
	axis, floor := side.Axis(), s.Outside[plan.Down].Length
	edge := f.at[axis/2] // across, or behind
	strip := plan.Extent{From: edge.From, Size: within, Placed: true, Sized: true}
	if side.Far() {
		strip.From = edge.To() - within
	}
	var all []overKnees
	for _, w := range s.things {
		at, is := inTheWayOfKnees(w.Node)
		if !is || w.Node == plan.Node(f.of) {
			continue
		}
		box := w.Box(at)
		down := box[plan.Down]
		if !overlapping(box[axis], strip) || !down.Known() || floor-down.From < footRail {
			continue
		}
		all = append(all, overKnees{box[plan.Behind-axis], floor - down.To(), plan.It(w.Node)})
	}
	return all
}

// drawnSide is hangs for a piece whose sides are drawn by themselves, as frames of its height and as long as the
// side of it.
func (s *onFloor) drawnSide(p *plan.Plan, f surface, side plan.Side, within wood.Length) []overKnees {
	axis, floor := side.Axis(), s.Outside[plan.Down]
	over := -f.at[axis/2].From
	if side.Far() {
		over = f.at[axis/2].To() - s.Outside[axis].Length
	}
	if over >= within {
		return nil
	}
	var all []overKnees
	for _, frame := range p.Assemblies {
		wide, high := frame.Outside[plan.Across], frame.Outside[plan.Down]
		if frame.Kind != plan.Frame || frame.Used() || !wide.Known() || !high.Known() || !wood.Same(high.Length, floor.Length) || !wood.Same(wide.Length, s.Outside[plan.Behind-axis].Length) {
			continue
		}
		for _, m := range frame.Members {
			if down := m.Body[plan.Down]; down.Known() && floor.Length-down.From >= footRail {
				all = append(all, overKnees{m.Body[plan.Across], floor.Length - down.To(), &m.Item})
			}
		}
	}
	return all
}

const (
	footRail = 12 * wood.Inch // what ends below is under the knees: common practice, no source
	kneeBay  = 18 * wood.Inch // nobody sits where there is less room from side to side: common practice, no source
	stands   = 16 * wood.Inch // what comes farther down than this is a leg or a pedestal, and nobody sits there: common practice, no source
)

// inTheWayOfKnees is the place of what is in the way of knees.
func inTheWayOfKnees(n plan.Node) (plan.Box, bool) {
	switch n := n.(type) {
	case *plan.Member:
		return n.Body, true
	case *plan.Panel:
		return n.Cell, true
	case *plan.Drawer:
		return n.Cell, true
	case *plan.Door:
		return n.Cell, true
	}
	return plan.Box{}, false
}

// lowest is what hangs lowest over the knees of anyone who sits at an edge: between what stands on the floor, where there is
// room to sit. It is nil where nothing hangs there, or where a place is not known.
func lowest(hangs []overKnees, edge plan.Extent) *overKnees {
	for _, h := range hangs {
		if !h.along.Known() {
			return nil
		}
	}
	posts := slices.DeleteFunc(slices.Clone(hangs), func(h overKnees) bool { return h.low >= stands })
	slices.SortFunc(posts, func(a, b overKnees) int { return cmp.Compare(a.along.From, b.along.From) })
	var found *overKnees
	from := edge.From
	for i := range len(posts) + 1 {
		bay := plan.Extent{From: from, Size: edge.To() - from, Placed: true, Sized: true}
		if i < len(posts) {
			bay.Size = posts[i].along.From - from
			from = max(from, posts[i].along.To())
		}
		if bay.Size < kneeBay {
			continue
		}
		for j := range hangs {
			if h := &hangs[j]; h.low >= stands && overlapping(h.along, bay) && (found == nil || h.low < found.low) {
				found = h
			}
		}
	}
	return found
}
