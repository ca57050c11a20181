package draw

// A door as it opens, seen from above.

import (
	"fmt"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// SwingOf shows the leaf of a door shut, and open as far as its hinges let it, with the way of its free
// edge; false where that is not known.
func SwingOf(p *plan.Plan, d *plan.Door) (Drawing, bool) {
	swing, ok := d.Swing()
	if !ok || swing.Hinge.Axis() != plan.Across || swing.Wide <= 0 || swing.Thick <= 0 {
		return Drawing{}, false
	}
	opens := swing.Opens.Or(90)
	scale := scaleFor(p, swing.Wide.Millimetres()*1.6, swing.Wide.Millimetres()*1.1, 110, 90)
	s := newSheet()
	// x to the right from the hinge edge of the shut leaf, y down the page towards who stands before it.
	at := func(x, y wood.Length, degrees float64) (float64, float64) {
		x, y = swing.Corner(x, y, degrees)
		if swing.Hinge == plan.Right {
			x = -x
		}
		return x.Millimetres() / scale, -y.Millimetres() / scale
	}
	outline := func(class string, degrees float64, corners ...corner) {
		var points []float64
		for _, c := range corners {
			x, y := at(c[0], c[1], degrees)
			points = append(points, x, y)
		}
		s.path(class, true, points...)
	}
	block := func(from, to, front, deep wood.Length) {
		outline("cut", 0, corner{from, front}, corner{to, front}, corner{to, front + deep}, corner{from, front + deep})
	}
	deep := max(swing.Thick, wood.Inch/2)
	if d.Fit.Kind.Is == "overlay" { // what it laps stands behind it
		if m, ok := plan.Neighbour(d, swing.Hinge).(*plan.Member); ok {
			block(-swing.Gap-m.Cell[plan.Across].Size, -swing.Gap, swing.Thick, deep)
		}
		if m, ok := plan.Neighbour(d, swing.Hinge.Opposite()).(*plan.Member); ok {
			block(swing.Wide+swing.Free, swing.Wide+swing.Free+m.Cell[plan.Across].Size, swing.Thick, deep)
		}
	} else {
		block(-swing.Gap-deep, -swing.Gap, 0, swing.Thick)
		block(swing.Wide+swing.Free, swing.Wide+swing.Free+deep, 0, swing.Thick)
	}
	leaf := leafShape(d, swing)
	outline("cut", 0, leaf...)
	outline("hidden", opens, leaf...)
	var way []float64
	reach := wood.Length(0)
	const steps = 60
	for i := range steps + 1 {
		degrees := opens * float64(i) / steps
		x, y := at(swing.Wide, 0, degrees)
		way = append(way, x, y)
		_, out := swing.Corner(swing.Wide, 0, degrees)
		reach = max(reach, -out)
	}
	s.path("axis", false, way...)
	x, y := at(-swing.Out, -swing.Proud, 0)
	s.circle("seen", x, y, 0.8)
	var passes []string
	for _, n := range beside(d, swing) {
		passes = append(passes, n.said(p))
		if n.meets {
			outline("seen", n.degrees, leaf...)
		}
		if _, member := n.of.(*plan.Member); !member {
			front := n.cutShort(swing.Wide / 3)
			outline("cut", 0, front...)
			x, y := at((front[0][0]+front[1][0])/2, front[2][1], 0)
			s.text("name", x, y-3, false, n.named)
		}
	}
	if len(d.Handles) > 0 {
		passes = append(passes, "is drawn without its handle")
	}

	title := plan.PathOf(d) + ", opening, from above"
	said := fmt.Sprintf("opens to %.0f degrees", opens)
	if !swing.Opens.Known() {
		said = "drawn open to 90 degrees, since nothing says how far it opens"
	}
	needs := "needs " + p.Tape.Nearest(reach) + " of room in front"
	about := fmt.Sprintf("The leaf is %s wide and %s thick, hung %s; it %s and %s. Open, it covers %s of its opening.",
		sized(p, swing.Wide), sized(p, swing.Thick), d.Hang.Is, said, needs, sized(p, swing.Covers()))
	if len(passes) > 0 {
		about += " It " + strings.Join(passes, "; it ") + "."
	}
	for _, line := range append([]string{said + "; " + needs}, passes...) {
		s.text("name", (s.left+s.right)/2, s.bottom+4, false, line)
	}
	return Drawing{Title: title, About: about, Scale: scaleName(scale), SVG: s.finish(title, about)}, true
}
