package wood

// How a maker reads a size: fractions of an inch or millimetres, down to the finest mark
// of the shop's tape, and decimals for what falls between the marks.

import (
	"strconv"
	"strings"
)

// Tape is what a shop measures with. The zero value is an inch tape marked in 1/32.
type Tape struct {
	Metric bool
	Mark   Length // finest mark; zero or less means 1/32 in, or 1 mm on a metric tape
}

// A size off the mark is shown to a ten-thousandth of an inch or a thousandth of a
// millimetre at the finest, which is as near as Slack tells lengths apart. A column starts
// at coarser figures, still far inside the tightest tolerance that a tape has.
const (
	inchDecimals, inchColumnDecimals     = 4, 3
	metricDecimals, metricColumnDecimals = 3, 2
)

const maxTolerance = Inch / 64

// Finest is the finest mark on the tape.
func (t Tape) Finest() Length {
	switch {
	case t.Mark > 0:
		return t.Mark
	case t.Metric:
		return Millimetre
	}
	return Inch / 32
}

// Tolerance is how far a stated size may stand from the one worked out and still agree:
// half a mark, and never more than 1/64 in.
func (t Tape) Tolerance() Length { return min(t.Finest()/2, maxTolerance) }

// OnMark reports whether the tape has a mark at l, within Slack.
func (t Tape) OnMark(l Length) bool { return Same(l, t.at(t.count(l))) }

// Floor is the last mark at or below l. A length within Slack of a mark is on it.
func (t Tape) Floor(l Length) Length {
	n := t.count(l)
	if Over(t.at(n), l) {
		n--
	}
	return t.at(n)
}

// Nearest is l as the nearest mark reads: `26 25/32`, `427`.
func (t Tape) Nearest(l Length) string {
	n := t.count(l)
	if s, ok := t.fraction(n); ok {
		return s
	}
	return t.shortest(t.at(n))
}

// Show is l without its unit: a reduced fraction (`16 13/16`, `-1/8`) or millimetres (`427`)
// where it is on the mark, else the shortest decimal that is Same as l, of at most four
// places in inches and three in millimetres.
func (t Tape) Show(l Length) string {
	if t.OnMark(l) {
		return t.Nearest(l)
	}
	return t.shortest(l)
}

// ShowUnit is Show with the unit, for where the bare number could be read either way:
// `16 13/16 in`, `427 mm`.
func (t Tape) ShowUnit(l Length) string {
	if t.Metric {
		return t.Show(l) + " mm"
	}
	return t.Show(l) + " in"
}

// Line is one line of a sum on paper: a length that is added (a negative one is taken off),
// or, where Total is set, what all the lines above it come to.
type Line struct {
	Length Length
	Total  bool
}

// Column shows a sum whose last length is the total of the others, as Lines does.
func (t Tape) Column(ls ...Length) []string {
	lines := make([]Line, len(ls))
	for i, l := range ls {
		lines[i] = Line{Length: l, Total: i == len(ls)-1}
	}
	return t.Lines(lines...)
}

// Lines shows a sum so that it adds up as printed. Lengths on the mark stand as they do on the
// tape. If all that is added is on the mark, so is every total. If not, what is off it (a 6 mm
// sheet in an inch plan) stands in decimals, all of one precision and with the fewest places
// with which adding up the printed figures, a fraction at its full value, gives each printed
// total to the last place shown. Where no precision does, each figure takes up what rounding
// left over from those above it, which moves it by one in the last place at most.
//
// Each string has its sign; a working that writes the sign itself drops it. Where a total is
// not what the lines above come to, nothing can add up, and each length is shown by itself.
func (t Tape) Lines(lines ...Line) []string {
	if !addsUp(lines) {
		return t.each(lines)
	}
	if shown, ok := t.onMarks(lines); ok {
		return shown
	}
	places, most := t.columnDecimals()
	for ; places <= most; places++ {
		if shown, ok := t.rounded(lines, places); ok {
			return shown
		}
	}
	return t.carried(lines, most)
}

// addsUp reports whether every total is the sum of the lines above it, within the Slack that
// each of them has.
func addsUp(lines []Line) bool {
	var sum Length
	for i, l := range lines {
		if !l.Total {
			sum += l.Length
		} else if (sum - l.Length).Abs() > Slack*Length(i+1) {
			return false
		}
	}
	return true
}

func (t Tape) each(lines []Line) []string {
	shown := make([]string, len(lines))
	for i, l := range lines {
		shown[i] = t.Show(l.Length)
	}
	return shown
}

// onMarks shows each line as a count of marks, and reports whether all that is added is one.
func (t Tape) onMarks(lines []Line) (shown []string, ok bool) {
	shown = make([]string, len(lines))
	var sum Length // in marks
	for i, l := range lines {
		n := sum
		if !l.Total {
			n = t.count(l.Length)
			sum += n
			if !Same(l.Length, t.at(n)) {
				return nil, false
			}
		}
		if shown[i], ok = t.fraction(n); !ok {
			return nil, false
		}
	}
	return shown, true
}

// rounded shows each line by itself, to the given places if it is off the mark, and
// reports whether the column adds up so.
func (t Tape) rounded(lines []Line, places int) (shown []string, ok bool) {
	step := t.step(places)
	shown = make([]string, len(lines))
	var sum Length // of what is printed
	for i, l := range lines {
		s, as, marked := t.marked(l.Length)
		if !marked {
			as = roundTo(l.Length, step)
			s = decimal(as/step, places)
		}
		if !l.Total {
			sum += as
		} else if 2*(sum-as).Abs() > step {
			return nil, false
		}
		shown[i] = s
	}
	return shown, true
}

// carried shows each line off the mark with what rounding left over from the lines above,
// and each total as what the printed lines come to.
func (t Tape) carried(lines []Line, places int) []string {
	step := t.step(places)
	shown := make([]string, len(lines))
	var sum, left Length // printed so far; how much the true sum is ahead of it
	for i, l := range lines {
		if l.Total {
			shown[i] = decimal(roundTo(sum, step)/step, places)
			continue
		}
		s, as, marked := t.marked(l.Length)
		if !marked {
			as = roundTo(l.Length+left, step)
			s = decimal(as/step, places)
		}
		sum += as
		left += l.Length - as
		shown[i] = s
	}
	return shown
}

// rule says how the marks lie: so many in each stretch. An inch is kept whole, since 1/128 of
// it is not a whole number of nanometres; a mark that divides no inch counts as the nearest
// that does.
func (t Tape) rule() (stretch, marks Length) {
	mark := max(t.Finest(), Slack)
	if t.Metric {
		return mark, 1
	}
	return Inch, max((Inch+mark/2)/mark, 1)
}

// count is the number of the mark nearest to l, at is where a mark stands.
func (t Tape) count(l Length) Length {
	stretch, marks := t.rule()
	return divide(l*marks, stretch)
}

func (t Tape) at(n Length) Length {
	stretch, marks := t.rule()
	return divide(n*stretch, marks)
}

// marked is how l reads if it is on a mark, and the length that this stands for.
func (t Tape) marked(l Length) (s string, as Length, ok bool) {
	n := t.count(l)
	as = t.at(n)
	if !Same(l, as) {
		return "", 0, false
	}
	s, ok = t.fraction(n)
	return s, as, ok
}

// fraction is how mark n reads. Inches have halves, quarters and so on, millimetres tenths and
// hundredths; a mark that is none of them, such as 1/10 in, has no such reading.
func (t Tape) fraction(n Length) (s string, ok bool) {
	if t.Metric {
		step := t.step(metricColumnDecimals)
		return decimal(t.at(n)/step, metricColumnDecimals), t.at(n)%step == 0
	}
	_, marks := t.rule()
	if marks&(marks-1) != 0 {
		return "", false
	}
	for marks > 1 && n%2 == 0 {
		n, marks = n/2, marks/2
	}
	whole, part := n.Abs()/marks, n.Abs()%marks
	switch {
	case part == 0:
		s = itoa(whole)
	case whole == 0:
		s = itoa(part) + "/" + itoa(marks)
	default:
		s = itoa(whole) + " " + itoa(part) + "/" + itoa(marks)
	}
	if n < 0 {
		s = "-" + s
	}
	return s, true
}

// shortest is l in as few decimals as are Same as it.
func (t Tape) shortest(l Length) string {
	most := inchDecimals
	if t.Metric {
		most = metricDecimals
	}
	for places := 0; ; places++ {
		step := t.step(places)
		if r := roundTo(l, step); places == most || Same(r, l) {
			return decimal(r/step, places)
		}
	}
}

func (t Tape) columnDecimals() (fewest, most int) {
	if t.Metric {
		return metricColumnDecimals, metricDecimals
	}
	return inchColumnDecimals, inchDecimals
}

// step is one in the last of so many decimals. It is a whole number of nanometres up to the
// fifth place in inches and the sixth in millimetres.
func (t Tape) step(places int) Length {
	step := Inch
	if t.Metric {
		step = Millimetre
	}
	for range places {
		step /= 10
	}
	return step
}

// decimal is n steps of so many places, without trailing zeros.
func decimal(n Length, places int) string {
	digits := itoa(n.Abs())
	if short := places + 1 - len(digits); short > 0 {
		digits = strings.Repeat("0", short) + digits
	}
	point := len(digits) - places
	s := digits[:point]
	if part := strings.TrimRight(digits[point:], "0"); part != "" {
		s += "." + part
	}
	if n < 0 {
		s = "-" + s
	}
	return s
}

func roundTo(l, step Length) Length { return divide(l, step) * step }

// divide rounds to the nearest whole number, halves away from zero.
func divide(a, b Length) Length {
	if a < 0 {
		return -((-a + b/2) / b)
	}
	return (a + b/2) / b
}

func itoa(n Length) string { return strconv.FormatInt(int64(n), 10) }

// About is a length to the nearest mark, or that it is less than one: `3/16`, `under 1/32`.
func (t Tape) About(l Length) string {
	if l.Abs() < t.Finest()/2 {
		return "under " + t.Show(t.Finest())
	}
	return t.Nearest(l)
}
