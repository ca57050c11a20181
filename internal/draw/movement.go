package draw

// How much each solid part grows and shrinks across its grain through the year.

import (
	"cmp"
	"fmt"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// mostBars is how many parts a plot of movement shows: those that move most.
const mostBars = 24

// Moves is how much a part changes across its grain: below zero, it is narrower than it is cut.
type Moves struct {
	Name       string
	Dry, Humid wood.Length
}

// Movement is a plot of the widths of solid parts through the year: how much narrower each gets at its
// driest, and how much wider at its most humid, than it is cut. False where nothing moves.
func Movement(p *plan.Plan, parts []Moves) (Drawing, bool) {
	bars := slices.Clone(parts)
	span := func(b Moves) wood.Length { return max(b.Humid, 0) - min(b.Dry, 0) }
	bars = slices.DeleteFunc(bars, func(b Moves) bool { return span(b) == 0 })
	if len(bars) == 0 {
		return Drawing{}, false
	}
	slices.SortStableFunc(bars, func(a, b Moves) int { return cmp.Compare(span(b), span(a)) })
	left := len(bars) - mostBars
	bars = bars[:min(len(bars), mostBars)]

	s := newSheet()
	const row, names = 6.0, 46.0
	reach := wood.Length(1)
	for _, b := range bars {
		reach = max(reach, b.Humid.Abs(), b.Dry.Abs())
	}
	scale := scaleFor(p, reach.Millimetres(), reach.Millimetres(), 34, 34)
	title := "Widths through the year"
	about := ""
	zero := names + 16 + reach.Millimetres()/scale
	for i, b := range bars {
		y := float64(i) * row
		from, to := min(b.Dry, 0).Millimetres()/scale, max(b.Humid, 0).Millimetres()/scale
		s.text("start", 0, y, false, b.Name)
		s.rect("cut", zero+from, y-1.4, to-from, 2.8)
		if b.Dry < 0 {
			s.text("size", zero+from-9, y, false, "- "+p.Tape.About(-b.Dry))
		}
		if b.Humid > 0 {
			s.text("size", zero+to+9, y, false, "+ "+p.Tape.About(b.Humid))
		}
		about += fmt.Sprintf(" %s: %s narrower at its driest, %s wider at its most humid.", b.Name, p.Tape.About(max(0, -b.Dry)), p.Tape.About(max(0, b.Humid)))
	}
	s.path("axis", false, zero, -row, zero, float64(len(bars))*row-row/2)
	s.text("size", zero, -row-2, false, "as it is cut")
	if left > 0 {
		about += fmt.Sprintf(" %d parts that move less are not shown.", left)
		s.text("start", 0, float64(len(bars))*row+1, false, fmt.Sprintf("%d parts that move less are not shown", left))
	}
	return Drawing{Title: title, About: about[1:], Scale: scaleName(scale), SVG: s.finish(title, about)}, true
}
