package draw

// A layup cut through, ply by ply, and how it would warp.

import (
	"fmt"
	"math"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// Bend is how far a thing is predicted to stand out of flat in one season.
type Bend struct {
	When       string // "carcass.roof at the driest"
	Long, Wide wood.Length
	Warp       wood.Warp
}

// LayupSection shows the plies of a layup from face to back, which way each runs, and how it bends; with
// the numbers of what was found about it.
func LayupSection(p *plan.Plan, m *plan.Material, bends []Bend, marks []Mark) (Drawing, bool) {
	whole := m.Thickness()
	if m.Kind != plan.Layup || !whole.Known() || whole.Length <= 0 {
		return Drawing{}, false
	}
	s := newSheet()
	const across = 60.0
	scale := scaleFor(p, whole.Length.Millimetres(), whole.Length.Millimetres(), 40, 40)
	y := 0.0
	title := m.Name.Text + ", ply by ply from face to back"
	about := fmt.Sprintf("%s thick in all.", sized(p, whole.Length))
	label := 0.0
	for i, ply := range m.Plies {
		thick := ply.Thickness()
		if !thick.Known() {
			return Drawing{}, false
		}
		high := max(thick.Length.Millimetres()/scale, 0.6)
		s.rect("wood", 0, y, across, high)
		runs := "no grain"
		if degrees, known := ply.Turned(); known && ply.Of.To != nil && !ply.Of.To.Grainless() {
			runs = map[float64]string{0: "along", 90: "across"}[degrees]
			if runs == "" {
				runs = fmt.Sprintf("at %g degrees", degrees)
			}
			s.fibres(y, across, high, degrees)
		}
		said := fmt.Sprintf("%d %s, %s, %s", i+1, ply.Of.Name, runs, p.ShowSaid(thick))
		at := max(y+high/2, label+letterHigh+0.7)
		s.path("thin", false, across, y+high/2, across+4, at)
		s.text("start", across+5, at, false, said)
		label = at
		about += fmt.Sprintf(" Ply %s.", said)
		y += high
	}
	y = max(y, label) + 10
	for _, bend := range bends {
		about += " " + s.bend(p, bend, y) + "."
		y += 2*rise + 7
	}
	var marked []int
	for _, mark := range marks {
		if mark.Subject == m.Name.Text {
			s.mark(across/2+6*float64(len(marked)), -4, mark.Number)
			marked = append(marked, mark.Number)
		}
	}
	return Drawing{Title: title, About: about, Scale: scaleName(scale), SVG: s.finish(title, about), Marked: marked}, true
}

// fibres draws the grain of a ply: lines where it lies in the picture, dots where it comes out of it.
func (s *sheet) fibres(y, across, high, degrees float64) {
	lines := int(min(high/1.1, 8))
	for i := range lines {
		at := y + high*(float64(i)+0.5)/float64(lines)
		if degrees == 0 {
			s.path("thin", false, 0.5, at, across-0.5, at)
			continue
		}
		for x := 1.5 + float64(i%2); x < across-1; x += 2.2 {
			s.path("thin", false, x, at, x+0.02+0.8*math.Abs(math.Cos(degrees*math.Pi/180)), at)
		}
	}
}

const rise = 7.0 // of a bend as it is drawn

// bend draws how far a panel is predicted to stand out of flat, much too large, and says so.
func (s *sheet) bend(p *plan.Plan, b Bend, y float64) (said string) {
	const chord = 60.0
	off, how := b.Warp.InWords()
	over := b.Long // a twist is drawn as a bend along the length
	if b.Warp.Cup.Abs() == off && b.Warp.Bow.Abs() < off {
		over = b.Wide
	}
	said, high := b.When+": flat", 0.0
	if wood.Over(off, 0) {
		times := rise / (off.Millimetres() / (over.Millimetres() / chord))
		said = fmt.Sprintf("%s: %s, %s; drawn %.0f times as large", b.When, p.Tape.About(off), how, times)
		high = rise
		if worst := b.Warp.Bow; worst < 0 || over == b.Wide && b.Warp.Cup < 0 {
			high = -rise // the back is hollow
		}
	}
	fmt.Fprintf(&s.b, `<path class="seen" d="M0 %s Q%s %s %s %s"/>`, n(y), n(chord/2), n(y+2*high), n(chord), n(y))
	s.path("axis", false, 0, y, chord, y)
	s.reach(0, y-rise)
	s.reach(chord, y+rise)
	s.text("start", 0, y+rise+1.5, false, said)
	return said
}
