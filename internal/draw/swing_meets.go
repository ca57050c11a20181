package draw

// What a door meets, or how far it stays from it, as it opens.

import (
	"fmt"
	"math"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// corner is a corner of a shape seen from above, as a swing has them: from the hinge edge of the shut leaf, and back
// from its face.
type corner [2]wood.Length

// near is something beside a door that opens: the member beside an inset one, the next front, or a wall.
type near struct {
	of    plan.Node // nil of a wall
	named string
	shape []corner
	edge  wood.Length // of it that faces the leaf
	// How near the leaf comes to it, and how far it is open by then; meets where it comes no further.
	least   wood.Length
	degrees float64
	meets   bool
}

// turns is in how many steps a leaf is looked at as it opens.
const turns = 240

// beside are what stands beside a door at both edges, as far as that is known, and how near the leaf comes to it. An edge
// that is rounded, or meets its partner aslant, is not looked at.
func beside(d *plan.Door, s plan.Swing) []near {
	var all []near
	add := func(of plan.Node, named string, side plan.Side, apart, wide, from, thick wood.Length) {
		if side == s.Hinge && d.Rounded.On || side != s.Hinge && d.Meeting.Is != "" && d.Meeting.Is != "square" {
			return
		}
		a, b := s.Wide+apart, s.Wide+apart+wide
		edge := a
		if side == s.Hinge {
			a, b = -apart-wide, -apart
			edge = b
		}
		n := near{of: of, named: named, edge: edge, shape: []corner{{a, from}, {b, from}, {b, from + thick}, {a, from + thick}}}
		if n.turn(d, s); n.meets || n.least > 0 { // else it turns away from what it laps
			all = append(all, n)
		}
	}
	for _, side := range []plan.Side{s.Hinge, s.Hinge.Opposite()} {
		gap := s.Gap
		if side != s.Hinge {
			gap = s.Free
		}
		if m, ok := plan.Neighbour(d, side).(*plan.Member); ok && m.Cell[plan.Across].Sized {
			from, thick := wood.Length(0), max(s.Thick, wood.Inch/2)
			if d.Fit.Kind.Is == "overlay" { // it stands behind the leaf
				from = s.Thick
			}
			add(m, m.Called(), side, gap, m.Cell[plan.Across].Size, from, thick)
		}
		for b := range plan.FrontsBeside(d, side) {
			wide, thick := sizeOfFront(b.Front)
			if len(b.Between) > 0 && d.Fit.Kind.Is != "overlay" {
				break // what stands between is nearer
			}
			if wide.Known() && thick.Known() {
				add(b.Front, plan.It(b.Front).Called(), side, b.Apart, wide.Length, 0, thick.Length)
				break
			}
		}
		if wall, known := wallBeside(d, side); known && wall < s.Wide {
			add(nil, "the wall", side, wall, max(s.Thick, wood.Inch/2), -s.Wide, s.Wide+s.Thick)
		}
	}
	return all
}

// wallBeside is how far the edge of a shut leaf is from the wall at that side of its assembly; false where the plan
// states none.
func wallBeside(d *plan.Door, side plan.Side) (wood.Length, bool) {
	wall, less, cell, out := d.In.WallAt(side), d.Edges[side].Less, d.Cell[plan.Across], d.In.Outside[plan.Across]
	apart := cell.From
	if side.Far() {
		apart = out.Length - cell.To()
	}
	return apart + less.Length + wall.Length, wall.Known() && less.Known() && cell.Known() && out.Known()
}

// sizeOfFront is how wide and how thick a door or the front of a drawer is.
func sizeOfFront(n plan.Node) (wide, thick plan.Length) {
	switch n := n.(type) {
	case *plan.Door:
		return n.Size[plan.Across], n.Thick()
	case *plan.Drawer:
		if n.Front != nil {
			return n.Front.Size.Long, n.Front.Size.Thick
		}
	}
	return plan.Length{}, plan.Length{}
}

// leafShape is the leaf as it is shut: its free edge may slope.
func leafShape(d *plan.Door, s plan.Swing) []corner {
	back := s.Wide
	if d.Bevel.Known() && d.Bevel.Value > 0 && d.Bevel.Value < 45 {
		back -= wood.Length(float64(s.Thick) * math.Tan(d.Bevel.Value*math.Pi/180))
	}
	return []corner{{0, 0}, {s.Wide, 0}, {back, s.Thick}, {0, s.Thick}}
}

// turn opens the leaf, and keeps how near it comes. What it laps lies against its back; that is no meeting.
func (n *near) turn(d *plan.Door, s plan.Swing) {
	shut := leafShape(d, s)
	opens := s.Opens.Or(90)
	for i := range turns + 1 {
		degrees := opens * float64(i) / turns
		turned := make([]corner, len(shut))
		for i, c := range shut {
			turned[i][0], turned[i][1] = s.Corner(c[0], c[1], degrees)
		}
		apart, over := between(turned, n.shape)
		switch {
		case i == 0:
			n.least = apart
		case over > wood.Slack:
			n.least, n.degrees, n.meets = 0, degrees, true
			return
		case wood.Under(apart, n.least):
			n.least, n.degrees = apart, degrees
		}
	}
}

// between is how far two shapes are apart, or how far the one reaches into the other: over is then above nought. Both
// are convex, and go round the same way.
func between(a, b []corner) (apart, over wood.Length) {
	least := math.Inf(1)
	into := math.Inf(1) // the least way out
	for _, pair := range [2][2][]corner{{a, b}, {b, a}} {
		of, to := pair[0], pair[1]
		for i, from := range of {
			next := of[(i+1)%len(of)]
			dx, dy := float64(next[0]-from[0]), float64(next[1]-from[1])
			long := math.Hypot(dx, dy)
			if long == 0 {
				continue
			}
			deepest := math.Inf(-1) // of the other, inside this edge
			for _, c := range to {
				x, y := float64(c[0]-from[0]), float64(c[1]-from[1])
				deepest = max(deepest, (dx*y-dy*x)/long)
				t := min(max((x*dx+y*dy)/(long*long), 0), 1)
				least = min(least, math.Hypot(x-t*dx, y-t*dy))
			}
			into = min(into, deepest)
		}
	}
	if into > 0 {
		return 0, wood.Length(into)
	}
	return wood.Length(math.Round(least)), 0
}

// cutShort is what of it is drawn: no more than so much of its width.
func (n *near) cutShort(most wood.Length) []corner {
	short := append([]corner{}, n.shape...)
	for i := range short {
		if wide := short[i][0] - n.edge; wide.Abs() > most {
			short[i][0] = n.edge + most
			if wide < 0 {
				short[i][0] = n.edge - most
			}
		}
	}
	return short
}

// said is what became of it: "stays 1/16 clear of side "left"".
func (n *near) said(p *plan.Plan) string {
	switch {
	case n.meets:
		return fmt.Sprintf("meets %s when it is open by %.0f degrees", n.named, n.degrees)
	case n.degrees > 0:
		return fmt.Sprintf("comes within %s of %s, open by %.0f degrees", sized(p, n.least), n.named, n.degrees)
	}
	return fmt.Sprintf("stays %s clear of %s", sized(p, n.least), n.named)
}
