// Package draw makes pictures of the worked-out piece: to scale, in black and white, with sizes as the
// tape reads them, and with a text for those who do not see them.
//
// Lines are those of drawing offices (ISO 128): thick for edges that are seen, dashed for what is
// hidden, thin for sizes.
package draw

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"slices"
	"strings"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// Drawing is one picture and what it shows in words.
type Drawing struct {
	Title string   // "leaf-frame, from the front"
	About string   // what is to be seen, for those who do not see it
	Scale string   // "1:5"; "" where it is none
	Key   []string // what letters in the picture stand for, where names do not fit
	SVG   template.HTML

	Marked []int // the numbers of the marks that stand on it
}

// Mark is a number that stands on a drawing where something was found.
type Mark struct {
	Number  int
	Subject string // path of what it is about
}

// The room for what is drawn, in millimetres of paper: with the sizes beside it, it stands on A4 and on
// Letter.
const (
	drawnWide = 145.0
	drawnHigh = 165.0
)

// Scales: how many millimetres of wood one of paper stands for. Those of ISO 5455 for a plan in
// millimetres; those of an inch rule (3 inches to the foot is 1:4) for one in inches.
var (
	metricScales = []float64{0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100}
	inchScales   = []float64{0.125, 0.25, 0.5, 1, 2, 4, 8, 12, 16, 24, 32, 48, 96}
)

// scaleFor is the largest scale at which something fits its room.
func scaleFor(p *plan.Plan, wide, high, roomWide, roomHigh float64) float64 {
	scales := inchScales
	if p.Tape.Metric {
		scales = metricScales
	}
	i := slices.IndexFunc(scales, func(s float64) bool { return wide/s <= roomWide && high/s <= roomHigh })
	if i < 0 {
		return max(wide/roomWide, high/roomHigh)
	}
	return scales[i]
}

// scaleName is a scale as drawings state it.
func scaleName(s float64) string {
	if s < 1 {
		return fmt.Sprintf("%g:1", 1/s)
	}
	return fmt.Sprintf("1:%g", math.Round(s*10)/10)
}

// sheet is a picture while it is drawn, in millimetres of paper from its upper left corner.
type sheet struct {
	b                        strings.Builder
	left, top, right, bottom float64 // of what is drawn so far
	empty, linked            bool
}

func newSheet() *sheet { return &sheet{empty: true} }

// reach widens the picture to a point.
func (s *sheet) reach(x, y float64) {
	if s.empty {
		s.left, s.right, s.top, s.bottom, s.empty = x, x, y, y, false
		return
	}
	s.left, s.right = min(s.left, x), max(s.right, x)
	s.top, s.bottom = min(s.top, y), max(s.bottom, y)
}

// rect draws a rectangle in a class of line.
func (s *sheet) rect(class string, x, y, w, h float64) {
	s.reach(x, y)
	s.reach(x+w, y+h)
	fmt.Fprintf(&s.b, `<rect class="%s" x="%s" y="%s" width="%s" height="%s"/>`, class, n(x), n(y), n(w), n(h))
}

// path draws lines from point to point: x, y, x, y …
func (s *sheet) path(class string, closed bool, points ...float64) {
	s.b.WriteString(`<path class="` + class + `" d="`)
	for i := 0; i+1 < len(points); i += 2 {
		s.reach(points[i], points[i+1])
		s.b.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + n(points[i]) + " " + n(points[i+1]))
	}
	if closed {
		s.b.WriteString("Z")
	}
	s.b.WriteString(`"/>`)
}

func (s *sheet) circle(class string, x, y, r float64) {
	s.reach(x-r, y-r)
	s.reach(x+r, y+r)
	fmt.Fprintf(&s.b, `<circle class="%s" cx="%s" cy="%s" r="%s"/>`, class, n(x), n(y), n(r))
}

// letter is how high letters are, and about how wide one is.
const (
	letterHigh = 2.7
	letterWide = 0.56 * letterHigh
)

// wide is about how wide a text stands.
func wide(text string) float64 { return letterWide * float64(len([]rune(text))) }

// text writes a text about a point; one of the class start begins there. Upright ones read from below.
func (s *sheet) text(class string, x, y float64, upright bool, text string) {
	w, h := wide(text)/2, letterHigh/2
	switch {
	case class == "start":
		s.reach(x, y-h)
		s.reach(x+2*w, y+h)
	case upright:
		s.reach(x-h, y-w)
		s.reach(x+h, y+w)
	default:
		s.reach(x-w, y-h)
		s.reach(x+w, y+h)
	}
	turn := ""
	if upright {
		turn = fmt.Sprintf(` transform="rotate(-90 %s %s)"`, n(x), n(y))
	}
	fmt.Fprintf(&s.b, `<text class="%s" x="%s" y="%s"%s>%s</text>`, class, n(x), n(y+letterHigh*0.36), turn, html.EscapeString(text))
}

// mark sets the number of a finding: a ring that is seen in any print.
func (s *sheet) mark(x, y float64, number int) {
	s.linked = true
	text := fmt.Sprint(number)
	r := max(2.4, wide(text)/2+0.9)
	fmt.Fprintf(&s.b, `<a href="#finding-%d" aria-label="finding %d">`, number, number)
	s.circle("mark", x, y, r)
	s.text("mark-text", x, y, false, text)
	s.b.WriteString("</a>")
}

// n is a coordinate, to a hundredth of a millimetre.
func n(x float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
}

// margin is the white around a picture.
const margin = 2.0

// finish is the picture as an element that can stand in a page. It prints to scale. One with links in it is
// a group for those who do not see it, so that they are met.
func (s *sheet) finish(title, about string) template.HTML {
	role := "img"
	if s.linked {
		role = "group"
	}
	w, h := s.right-s.left+2*margin, s.bottom-s.top+2*margin
	return template.HTML(fmt.Sprintf(
		`<svg xmlns="http://www.w3.org/2000/svg" role="%s" aria-label="%s" width="%smm" height="%smm" viewBox="%s %s %s %s">%s</svg>`,
		role, html.EscapeString(title+". "+about), n(w), n(h), n(s.left-margin), n(s.top-margin), n(w), n(h), s.b.String()))
}

// Style is what the classes of line look like. It stands once in a page.
const Style template.CSS = `
svg { font: 2.7px "DejaVu Sans", Verdana, sans-serif; stroke-linecap: round; stroke-linejoin: round }
svg .wood { fill: #fff; stroke: #000; stroke-width: .35 }
svg .cut { fill: #e8e8e8; stroke: #000; stroke-width: .5 }
svg .seen { fill: none; stroke: #000; stroke-width: .35 }
svg .hidden { fill: none; stroke: #000; stroke-width: .2; stroke-dasharray: 1 .7 }
svg .axis { fill: none; stroke: #000; stroke-width: .18; stroke-dasharray: 3 .8 .6 .8 }
svg .thin { fill: none; stroke: #000; stroke-width: .18 }
svg .void { fill: none; stroke: #000; stroke-width: .12 }
svg text { text-anchor: middle; fill: #000; stroke: #fff; stroke-width: .7; paint-order: stroke }
svg .start { text-anchor: start }
svg .mark { fill: #000; stroke: #fff; stroke-width: .4 }
svg .mark-text { fill: #fff; stroke: none; font-weight: bold }
`

// sized is a size as the tape reads it, to the nearest mark where it is off one.
func sized(p *plan.Plan, l wood.Length) string {
	if p.Tape.OnMark(l) {
		return p.Show(l)
	}
	return "≈ " + p.Tape.Nearest(l)
}
