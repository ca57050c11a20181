package draw

// A layup cut through, ply by ply, and how it would warp.

import (
	"fmt"
	"math"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// LayupSection shows the plies of a layup from face to back, which way each runs, and, for the largest
// thing that is made of it, the warp that laminate theory predicts for the dry and the humid season.
func LayupSection(p *plan.Plan, m *plan.Material) (Drawing, bool) {
	whole := m.Thickness()
	if m.Kind != plan.Layup || !whole.Known() || whole.Length <= 0 {
		return Drawing{}, false
	}
	s := newSheet()
	const across = 60.0
	scale := scaleFor(p, mm(whole.Length), mm(whole.Length), 40, 40)
	y := 0.0
	title := m.Name.Text + ", ply by ply from face to back"
	about := fmt.Sprintf("%s thick in all.", sized(p, whole.Length))
	label := 0.0
	for i, ply := range m.Plies {
		thick := ply.Thickness()
		if !thick.Known() {
			return Drawing{}, false
		}
		high := max(mm(thick.Length)/scale, 0.6)
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
	s.warp(p, m, max(y, label)+10, &about)
	return Drawing{Title: title, About: about, Scale: scaleName(scale), SVG: s.finish(title, about)}, true
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

// warp draws how far the largest thing of a layup is predicted to stand out of flat, dry and humid.
func (s *sheet) warp(p *plan.Plan, m *plan.Material, y float64, about *string) {
	pressed, ok := p.Pressed(m)
	long, wide := wood.Length(0), wood.Length(0)
	name := ""
	for w := range p.Workpieces() {
		if w.Of == m && w.Size.Long.Known() && w.Size.Wide.Known() && w.Size.Long.Length > long {
			long, wide, name = w.Size.Long.Length, w.Size.Wide.Length, w.Path
		}
	}
	if !ok || name == "" {
		return
	}
	const chord, rise = 60.0, 7.0
	for _, season := range []struct {
		name     string
		moisture plan.Figure
	}{{"dry", p.Climate.Dry.Moisture}, {"humid", p.Climate.Humid.Moisture}} {
		laminate, ok := pressed.At(season.moisture.Value)
		if !ok {
			return
		}
		strain, ok := laminate.Free()
		if !ok {
			return
		}
		w := strain.Warp(long, wide)
		worst, of, over := w.Bow, "bow along its length", long
		if w.Cup.Abs() > worst.Abs() {
			worst, of, over = w.Cup, "cup across its width", wide
		}
		if w.Twist.Abs() > worst.Abs() {
			worst, of = w.Twist, "twist"
		}
		said := fmt.Sprintf("%s, %s: stays flat", name, season.name)
		bend := 0.0
		if worst.Abs() > wood.Inch/500 {
			times := rise / (mm(worst.Abs()) / (mm(over) / chord))
			said = fmt.Sprintf("%s, %s: %s of up to %s, drawn %.0f times as large", name, season.name, of, sized(p, worst.Abs()), times)
			bend = math.Copysign(rise, float64(worst))
		}
		// Above zero the face, which is up, is hollow.
		fmt.Fprintf(&s.b, `<path class="seen" d="M0 %s Q%s %s %s %s"/>`, n(y), n(chord/2), n(y+2*bend), n(chord), n(y))
		s.path("axis", false, 0, y, chord, y)
		s.reach(0, y-rise)
		s.reach(chord, y+rise)
		s.text("start", chord+5, y, false, said)
		*about += " " + said + "."
		y += 2*rise + 4
	}
}
