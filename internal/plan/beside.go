package plan

// What stands beside a door's leaf or a drawer's front: the next front, across the members over
// which both of them lap, in the same assembly or in one that is placed beside it.

import (
	"iter"
	"sort"

	"plancheck/internal/wood"
)

// Beside is a front that stands beside another one.
type Beside struct {
	Front   Node   // a *Door or a *Drawer
	Edge    Edge   // the one that faces
	Between []Node // what stands between the two openings; nothing where one gap is shared
	Apart   wood.Length
}

// mostLooked bounds how many things are looked at beside one front.
const mostLooked = 200

// FrontOf is what a door or a drawer says of how it stands to its opening, and what became of its edges;
// nil for anything else.
func FrontOf(n Node) (*Fit, [4]Edge) {
	switch n := n.(type) {
	case *Door:
		return &n.Fit, n.Edges
	case *Drawer:
		return &n.Fit, n.Edges
	}
	return nil, [4]Edge{}
}

// FrontsBeside ranges over the fronts at one side of a front that share some of its height, or of its
// width, and stand in one plane with it. Where a size between them is not known there are none, and beside a lid.
func FrontsBeside(n Node, side Side) iter.Seq[Beside] {
	return func(yield func(Beside) bool) {
		fit, edges := FrontOf(n)
		if d, ok := n.(*Door); fit == nil || !edges[side].Less.Known() || ok && d.Board != nil {
			return
		}
		s := besideSearch{left: mostLooked, yield: yield}
		s.beyond(n, besidePlace{side: side, cell: n.item().Cell, apart: edges[side].Less.Length})
	}
}

// besideSearch is a search for fronts beside one; it ends where nobody wants more of them.
type besideSearch struct {
	left  int
	done  bool
	yield func(Beside) bool
}

// besidePlace is how far a search has come: to which side it goes, where the front is, as the assembly sees it
// in which the search is, and what it has passed.
type besidePlace struct {
	side    Side
	cell    Box
	apart   wood.Length
	between []Node
	within  bool // it went into something placed
}

// beyond goes on from a thing to what is next to it, out of an assembly into the one that it is placed in.
func (s *besideSearch) beyond(n Node, at besidePlace) {
	if next := Neighbour(n, at.side); next != nil {
		s.meet(next, at)
		return
	}
	it := n.item()
	if it.In == nil || at.within {
		return
	}
	for _, use := range it.In.uses {
		p, ok := use.(*Placed)
		if !ok || p.Turned || p.Flat {
			continue
		}
		out := at
		if p.reversed(at.side.Axis()) {
			out.side = at.side.Opposite()
		}
		for axis := Across; axis <= Behind; axis++ {
			place, own := p.Cell[axis], &out.cell[axis]
			if p.reversed(axis) {
				own.From = place.Size - own.To()
				own.Placed = own.Placed && own.Sized && place.Sized
			}
			*own = own.after(place)
		}
		s.beyond(p, out)
	}
}

// meet looks at what comes next.
func (s *besideSearch) meet(n Node, at besidePlace) {
	if s.left--; s.left < 0 || s.done {
		return
	}
	it := n.item()
	switch n := n.(type) {
	case *Door, *Drawer:
		_, edges := FrontOf(n)
		edge, plane, own := edges[at.side.Opposite()], it.Cell[Behind], at.cell[Behind]
		across := Down - at.side.Axis()
		if edge.Less.Known() && overlap(it.Cell[across], at.cell[across]) && (!plane.Placed || !own.Placed || wood.Same(plane.From, own.From)) {
			s.done = !s.yield(Beside{n, edge, at.between, at.apart + edge.Less.Length})
		}
	case *Member:
		s.pass(n, at)
	case *Space:
		if it.Word == "space" && it.Parent.Axis == at.side.Axis() {
			s.pass(n, at)
		}
	case *Placed:
		a := n.Part.To
		switch {
		case n.Turned || n.Flat || a != nil && a.Kind == Frame:
			s.pass(n, at)
		case a != nil && a.Root != nil:
			at.cell, at.side, at.within = n.inside(at.cell), n.inner(at.side), true
			s.meet(a.Root, at)
		}
	case *List:
		switch {
		case len(n.Items) == 0:
		case n.Axis == at.side.Axis() && at.side.Far():
			s.meet(n.Items[0], at)
		case n.Axis == at.side.Axis():
			s.meet(n.Items[len(n.Items)-1], at)
		case n.Axis == Behind: // fronts are in the first layer
			s.meet(n.Items[0], at)
		default:
			for _, inner := range n.Items[firstBeside(n, at.cell[n.Axis]):] {
				cell, place := inner.item().Cell[n.Axis], at.cell[n.Axis]
				if cell.Known() && place.Known() && !wood.Under(cell.From, place.To()) {
					return // as the next ones are
				}
				if _, along := inner.(*Member); !along && overlap(cell, place) { // a shelf between bays
					s.meet(inner, at)
				}
			}
		}
	}
}

// firstBeside is the first thing of a list that shares more than a touch with a place along it.
func firstBeside(l *List, place Extent) int {
	return sort.Search(len(l.Items), func(i int) bool {
		cell := l.Items[i].item().Cell[l.Axis]
		return !cell.Known() || !place.Known() || wood.Over(cell.To(), place.From)
	})
}

// pass goes past what stands between two fronts.
func (s *besideSearch) pass(n Node, at besidePlace) {
	cell := n.item().Cell[at.side.Axis()]
	if !cell.Sized {
		return
	}
	at.apart += cell.Size
	at.between = append(at.between[:len(at.between):len(at.between)], n)
	s.beyond(n, at)
}
