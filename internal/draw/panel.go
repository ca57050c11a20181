package draw

// A panel in its grooves through the year, cut across its grain.

import (
	"fmt"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// PanelSection shows a solid panel in its grooves at its driest, as it is cut, and at its most humid; false
// where something of it is not known.
func PanelSection(p *plan.Plan, n *plan.Panel) (Drawing, bool) {
	near, far, bottoms, placed := n.Grooves()
	humid, dry, moves := p.Seasons(n.Of.Material.To)
	width := n.Size.Wide
	if !placed || !moves || !width.Known() || near <= 0 || far <= 0 {
		return Drawing{}, false
	}
	thick := n.Thick
	if n.Tongue.Across.Known() {
		thick = n.Tongue.Across
	}
	if !thick.Known() {
		thick = n.Size.Thick
	}
	s := newSheet()
	title := plan.PathOf(n) + ", in its grooves through the year"
	about := fmt.Sprintf("The panel is cut %s wide; from bottom to bottom of the grooves there is %s.", sized(p, width.Length), sized(p, bottoms))
	const (
		row  = 21.0
		wall = 11.0 // how much of the frame is shown
		span = 86.0 // between the outsides of the frame, broken in the middle
	)
	// One of paper for one of wood where it fits; the middle of the panel is broken out.
	scale := scaleFor(p, max(near, far, thick.Length).Millimetres(), thick.Length.Millimetres(), 18, 10)
	on := func(l wood.Length) float64 { return l.Millimetres() / scale }
	high := max(on(thick.Length), 2.5)
	for i, season := range []struct {
		name  string
		width wood.Length
	}{
		{fmt.Sprintf("at its driest, %s", wood.Percent(dry.To)), width.Length + dry.Change(width.Length)},
		{fmt.Sprintf("as it is cut, %s", wood.Percent(p.Moisture(n.Of.Material.To))), width.Length},
		{fmt.Sprintf("at its most humid, %s", wood.Percent(humid.To)), width.Length + humid.Change(width.Length)},
	} {
		y := float64(i) * row
		room := bottoms - season.width
		left, right := room/2, room-room/2
		if n.Loose() {
			left, right = 0, room
		}
		s.groove(wall, y, on(near), high, -1)
		s.groove(span-wall, y, on(far), high, 1)
		// The panel, broken in the middle.
		from, to, middle := wall-on(near)+on(left), span-wall+on(far)-on(right), span/2
		s.path("cut", true, from, y-high/2, middle-2, y-high/2, middle-3, y, middle-1, y, middle-2, y+high/2, from, y+high/2)
		s.path("cut", true, to, y-high/2, middle+3, y-high/2, middle+2, y, middle+4, y, middle+3, y+high/2, to, y+high/2)
		s.text("start", span+6, y-4, false, season.name)
		s.text("start", span+6, y, false, "wide "+sized(p, season.width))
		in := near - left
		switch {
		case room < 0:
			s.text("start", span+6, y+4, false, sized(p, -room)+" too wide: it bursts the frame")
		case min(in, far-right) < 0:
			s.text("start", span+6, y+4, false, "it is out of its groove")
		default:
			s.text("start", span+6, y+4, false, fmt.Sprintf("in %s, room %s", sized(p, min(in, far-right)), sized(p, room)))
		}
		about += fmt.Sprintf(" %s: %s wide, room %s in all.", season.name, sized(p, season.width), sized(p, room))
	}
	return Drawing{Title: title, About: about, Scale: scaleName(scale), SVG: s.finish(title, about)}, true
}

// groove draws the stick at one side of a panel, with the groove in it. to is -1 where it lies to the left.
func (s *sheet) groove(x, y, deep, high, to float64) {
	const wall, half = 11.0, 8.0
	outer, bottom := x+to*wall, x+to*deep
	s.path("cut", true, outer, y-half, x, y-half, x, y-high/2, bottom, y-high/2, bottom, y+high/2, x, y+high/2, x, y+half, outer, y+half)
}
