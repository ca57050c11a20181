package rules

// Boards of solid wood that are fastened to what does not move with them: where such a board
// is held, and how far a place on it travels through the year.

import (
	"fmt"
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// How far apart wood that is held fast at two places may want to move: what gives, and what splits.
var (
	heldGives = &Figure{
		Name: "gives", Why: "how far wood that is held fast may want to move", Basis: Practice,
		Source: "1/32, which the wood and its fastenings give", Dim: lang.Length, Length: wood.Inch / 32,
	}
	heldSplits = &Figure{
		Name: "splits", Why: "beyond which wood that is held fast is an error", Basis: Practice,
		Source: "1/16", Dim: lang.Length, Length: wood.Inch / 16,
	}
)

// board is a board of solid wood that moves where a line of the plan fastens it, or where it
// fastens to it what crosses its grain.
type board struct {
	*plan.Member
	subject string
	of      *plan.Material
	fast    lying          // what is fastened: the board itself, or what crosses it
	axis    plan.Axis      // across the grain of the board
	wide    wood.Length    // of what is fastened, along that
	line    [2]wood.Length // between which it is held, from the front or left of what is fastened
	held    string         // where that is
}

// fastened ranges over the fixings that fasten a solid board of known width to what does not
// move as it does, or such a thing to a board.
func fastened(p *plan.Plan) iter.Seq2[board, *plan.Fixing] {
	return func(yield func(board, *plan.Fixing) bool) {
		for _, f := range p.Fixes {
			for _, s := range seamsOf(f) {
				b, ok := boardOf(f, s)
				if _, _, moves := p.Seasons(b.of); !ok || !moves || !b.hold(f) {
					continue
				}
				if !yield(b, f) {
					return
				}
			}
		}
	}
}

// boardOf is the board that moves in a seam of a fixing; false where that is no board, or where
// it is not known how wide it is fastened.
func boardOf(f *plan.Fixing, s seam) (board, bool) {
	b := board{Member: s.moves.board, subject: s.moves.subject, of: s.moves.of, fast: s.moves, axis: s.axis}
	if s.moves.subject != f.A.To.Path {
		b.fast = s.stays
	}
	size := b.fast.size[b.axis]
	b.wide = size.Length
	return b, b.Member != nil && size.Known()
}

// places are where a fastener stands across the grain of the board.
func (b *board) places(w *plan.FixingPart) []plan.Length {
	if b.fast.grain == b.axis {
		return w.Along
	}
	return w.At
}

// hold finds where a fixing holds its board: as it says, else where it is glued, else in the
// middle. A board that is glued all over is held everywhere, and that is another fault.
func (b *board) hold(f *plan.Fixing) bool {
	wide := b.wide
	strip := wood.Length(0)
	b.held = f.Fixed.Or("centre")
	if f.Fixed.Is == "" && len(f.Glue) > 0 {
		g := f.Glue[0]
		b.held = g.Where.Or("all")
		strip = min(g.Wide.Or(0).Length, wide)
	}
	switch b.held {
	case "front":
		b.line = [2]wood.Length{0, strip}
	case "back":
		b.line = [2]wood.Length{wide - strip, wide}
	case "centre":
		b.line = [2]wood.Length{wide / 2, wide / 2}
	default:
		return false
	}
	return true
}

// from is how far a place is from where the board is held.
func (b *board) from(at wood.Length) wood.Length {
	return max(b.line[0]-at, at-b.line[1], 0)
}

// farthest is the distance from where the board is held to the farthest of some places. It is
// false where they do not lie across the board.
func (b *board) farthest(at []plan.Length) (wood.Length, bool) {
	d := wood.Length(0)
	for _, l := range at {
		if !l.Known() || l.Length < 0 || wood.Over(l.Length, b.wide) {
			return 0, false
		}
		d = max(d, b.from(l.Length))
	}
	return d, len(at) > 0
}

// edges are the edges of what a board lies on, from its own front edge.
func (b *board) edges() []plan.Length {
	if b.fast.subject != b.subject {
		return nil
	}
	front, back := plan.Length{}.Or(0), b.Size.Wide
	if b.Over != nil && b.Grain == plan.Across {
		front = b.Over.Front.Or(0)
		back.Length -= b.Over.Back.Or(0).Length
	}
	return []plan.Length{front, back}
}

// stiff reports whether a thing is known not to move with a board that is fastened to it: a
// frame, or what has no boards of solid wood, whose width would go the same way.
func stiff(thing any) bool {
	switch t := thing.(type) {
	case *plan.Placed:
		return t.Part.To != nil && stiff(t.Part.To)
	case *plan.Assembly:
		if t.Kind == plan.Frame {
			return true
		}
		for n := range t.Nodes() {
			switch n := n.(type) {
			case *plan.Placed:
				if !stiff(n) {
					return false
				}
			case *plan.Member:
				if of := n.Of.Material.To; n.Board() && (of == nil || of.Kind == plan.Solid) {
					return false
				}
			}
		}
		return true
	}
	return false
}

// travel is how far a place moves at some distance from where a board is held, in the season
// that moves it most.
func travel(p *plan.Plan, of *plan.Material, distance wood.Length) (wood.Length, wood.Movement) {
	humid, dry, _ := p.Seasons(of)
	grows, shrinks := humid.Change(distance).Abs(), dry.Change(distance).Abs()
	if grows < shrinks {
		return shrinks, dry
	}
	return grows, humid
}

// travels begins a working with a travel.
func travels(p *plan.Plan, of *plan.Material, distance wood.Length, m wood.Movement) *plan.Paper {
	t := m.Change(distance)
	paper := p.Paper().Start(distance, "from where it is held")
	moves(paper, distance, of, m)
	return paper.Equals("after it").Start(t.Abs(), "it travels")
}

// slot adds to a working what a slot needs, so that what stands in it can travel both ways.
func slot(paper *plan.Paper, thick, t wood.Length) *plan.Paper {
	return paper.Plus(t, "and the other way").Plus(thick, "what stands in it")
}

// heldFast judges what is held fast and wants to travel; the severity is zero where it may.
func heldFast(pass *Pass, t wood.Length, subject string) diag.Severity {
	switch {
	case wood.Over(t, pass.Length(heldSplits, subject)):
		return diag.Error
	case wood.Over(t, pass.Length(heldGives, subject)):
		return diag.Warning
	}
	return 0
}

// distant says a distance from where a board is held.
func (b *board) distant(p *plan.Plan, d wood.Length) string {
	what := "the board"
	if b.fast.subject != b.subject {
		what = b.fast.called
	}
	if b.held == "centre" {
		return fmt.Sprintf("%s from the middle of %s", exact(p, d), what)
	}
	return fmt.Sprintf("%s from where it is held at the %s", exact(p, d), b.held)
}
