package rules

// What the rules about doors share: what stands beside a leaf, how it swings, and how its gaps change
// through the year.

import (
	"iter"
	"math"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// hungBy reports whether a door has hinges, all of them of kinds whose pin stands still where the
// plan says it does. Butts hang a leaf that laps its opening in several ways, of which the plan must say one.
func hungBy(d *plan.Door, kinds ...string) bool {
	for _, use := range d.Hinges {
		if use.Hinge == nil || !slices.Contains(kinds, use.Hinge.Kind.Is) {
			return false
		}
		if use.Hinge.Kind.Is == "butt" && !use.Proud.Known() && (d.Fit.Kind.Is == "overlay" || !use.Hinge.Knuckle.Known()) {
			return false
		}
	}
	return len(d.Hinges) > 0
}

// partner is the door that a leaf meets at its free edge, with nothing between them.
func partner(d *plan.Door) *plan.Door {
	hung, turns := d.Hung()
	if !turns || !d.Edges[hung.Opposite()].Shared {
		return nil
	}
	other, _ := plan.Neighbour(d, hung.Opposite()).(*plan.Door)
	return other
}

// freeGap is the gap at one edge of an inset leaf on the day that it is hung: all of it, where two
// leaves share it. False where it laps, or nothing stands there.
func freeGap(d *plan.Door, edge plan.Side) (wood.Length, bool) {
	e := d.Edges[edge]
	next := plan.Neighbour(d, edge)
	if next == nil || !e.Less.Known() || !closed(&d.Item) || !e.Shared && d.Fit.Kind.Is == "overlay" {
		return 0, false
	}
	gap := e.Less.Length
	if other, ok := next.(*plan.Door); ok && e.Shared {
		if !other.Edges[edge.Opposite()].Less.Known() {
			return 0, false
		}
		gap += other.Edges[edge.Opposite()].Less.Length
	} else if e.Shared {
		return 0, false
	}
	return gap, true
}

// nearestBeside is the nearest front beside an edge of a leaf that laps its opening; false where the leaf is inset, or no
// front is beside it.
func nearestBeside(d *plan.Door, edge plan.Side) (nearest plan.Beside, ok bool) {
	if d.Fit.Kind.Is != "overlay" || !closed(&d.Item) {
		return nearest, false
	}
	for b := range plan.FrontsBeside(d, edge) {
		if !ok || b.Apart < nearest.Apart {
			nearest, ok = b, true
		}
	}
	return nearest, ok
}

// yearly is how much the leaves at a gap grow from the day that they are made to one end of the year;
// false where that is not known, or where the plan does not state that end. It writes them down.
func yearly(p *plan.Plan, d *plan.Door, edge plan.Side, humid bool, paper *plan.Paper) (wood.Length, bool) {
	air := p.Climate.Dry
	if humid {
		air = p.Climate.Humid
	}
	if air.Moisture.How == plan.Default {
		return 0, false
	}
	leaves := []*plan.Door{d}
	if other, ok := plan.Neighbour(d, edge).(*plan.Door); ok && d.Edges[edge].Shared {
		leaves = append(leaves, other)
	}
	grows := wood.Length(0)
	for _, leaf := range leaves {
		for _, g := range leafGrows(leaf, edge.Axis()) {
			wet, dry, known := p.Seasons(g.of)
			if !known || !g.wide.Known() {
				return 0, false
			}
			m := dry
			if humid {
				m = wet
			}
			grows += m.Change(g.wide.Length)
			paper.Minus(m.Change(g.wide.Length), g.called+", from "+wood.Percent(m.From)+" to "+wood.Percent(m.To))
		}
	}
	return grows, true
}

// freeWants is the gap that a leaf wants at its free edge to turn in. Its back corner reaches
// farthest as it passes the face of what it closes against, or, about a pin within the leaf, the line of the
// pin. A bevel takes that corner back.
func freeWants(s plan.Swing, bevel float64) wood.Length {
	wide, thick, proud := float64(s.Wide+s.Out), float64(s.Thick), float64(s.Proud)
	x, y := wide-thick*math.Tan(bevel*math.Pi/180), max(0, thick+proud)
	reach := math.Hypot(x, y)
	if proud > 0 {
		reach = math.Sqrt(x*x + thick*thick + 2*thick*proud)
	}
	return max(0, wood.Length(math.Round(reach-wide)))
}

// clearingBevel is the slope in degrees, from the face to the back, at which a leaf just turns in a gap.
func clearingBevel(s plan.Swing, gap wood.Length) float64 {
	wide, thick, proud := float64(s.Wide+s.Out), float64(s.Thick), float64(s.Proud)
	within := math.Pow(wide+float64(gap), 2) - thick*thick - 2*thick*proud
	if proud < 0 {
		within = math.Pow(wide+float64(gap), 2) - math.Pow(max(0, thick+proud), 2)
	}
	return math.Atan2(wide-math.Sqrt(max(0, within)), thick) * 180 / math.Pi
}

// hingeWants is the gap that the hinge edge of a leaf wants whose pin stands within it: its front
// corner turns round the pin into what it hangs on.
func hingeWants(s plan.Swing) wood.Length {
	if s.Out >= 0 || s.Proud >= 0 {
		return 0
	}
	return wood.Length(math.Round(math.Hypot(float64(s.Out), float64(s.Proud)))) + s.Out
}

// hingeReaches is how far a leaf reaches beyond its hinge edge while it turns so far, behind the faces of the
// fronts beside it: with its front corner; where that is before them with its edge, and past a right angle with its face.
func hingeReaches(s plan.Swing, degrees float64) wood.Length {
	farthest := wood.Length(0)
	for turned := range openingTo(min(degrees, 175)) { // farther on, it would lie before them
		x, y := s.Corner(0, 0, turned)
		switch slope := math.Tan(turned * math.Pi / 180); {
		case y >= 0 && turned > 90:
			x += wood.Length(float64(y) / slope)
		case y < 0 && turned < 90:
			x -= wood.Length(max(float64(y)*slope, float64(x)))
		case y < 0:
			continue
		}
		farthest = max(farthest, -x)
	}
	return farthest
}

// backDigs is how far the back of a leaf that laps its case turns into the edge of the case until it stands at a right
// angle to it. The outer face of the case is so far in from the hinge edge.
func backDigs(s plan.Swing, from wood.Length) wood.Length {
	deepest := 0.0
	for turned := range openingTo(89.5) { // at 90 it lies beside the case, or not
		x, y := s.Corner(0, s.Thick, turned)
		deep := float64(y - s.Thick)
		if x < from { // beside the case: farther on, the back passes its outer corner
			deep -= float64(from-x) * math.Tan(turned*math.Pi/180)
		}
		deepest = max(deepest, deep)
	}
	return wood.Length(math.Round(deepest))
}

// openingTo ranges over the degrees through which a leaf turns, up to the last.
func openingTo(degrees float64) iter.Seq[float64] {
	return func(yield func(float64) bool) {
		const step = 0.5
		for turned := step; turned < degrees; turned += step {
			if !yield(turned) {
				return
			}
		}
		yield(degrees)
	}
}

// eachFront looks at every front of a drawer and every door, and reports what is alike once.
func eachFront(pass *Pass, check func(*Pass, *onePer[drawerAt], plan.Node)) {
	var said onePer[drawerAt]
	for d := range plan.AllOf[*plan.Drawer](pass.Plan) {
		check(pass, &said, d)
	}
	for d := range plan.AllOf[*plan.Door](pass.Plan) {
		check(pass, &said, d)
	}
	said.report(pass)
}
