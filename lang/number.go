package lang

// Numbers as makers write them: where one ends in the text, and what it is worth.

import (
	"strings"
	"unicode/utf8"

	"plancheck/internal/diag"
)

// numeral is a number taken apart, each piece as written.
type numeral struct {
	feet     string // before a foot mark that inches follow: the 2 of 2' 6 1/2"
	whole    string // 27 or 27.5 or .5
	num, den string // the 1 and 2 of 1/2 or 1:2
	slope    bool   // a colon stands between num and den
	unit     string // glued, or a blank away
	unitAt   int    // where the unit starts
}

// maxDigits is how many digits one piece may have, so that it fits a machine word.
const maxDigits = 18

// scanNumber takes apart the number that starts at a digit, or at a point before one,
// and says where it ends. Letters glued to it that are no unit are taken for one, so
// that they are reported as such.
func scanNumber(text string, at int) (n numeral, end int) {
	n.whole, n.num, n.den, end = scanMixed(text, at)
	switch {
	case end == len(text):
		return n, end
	case text[end] == ':' && n.num == "" && digitAt(text, end+1):
		n.num, n.whole, n.slope = n.whole, "", true
		start := end + 1
		end = digitsEnd(text, start)
		n.den = text[start:end]
		return n, end
	case text[end] == '\'':
		if n.num != "" { // 1/2' is half a foot
			n.unit, n.unitAt = "'", end
			return n, end + 1
		}
		start := blanksEnd(text, end+1)
		if startsNumber(text, start) {
			whole, num, den, inches := scanMixed(text, start)
			if inches < len(text) && text[inches] == '"' {
				return numeral{feet: n.whole, whole: whole, num: num, den: den, unit: `"`, unitAt: inches}, inches + 1
			}
		}
		n.unit, n.unitAt = "'", end
		return n, end + 1
	}
	glued := end
	if glue := unitEnd(text, glued); glue > glued {
		n.unit, n.unitAt = text[glued:glue], glued
		return n, glue
	}
	if start := blanksEnd(text, end); start > end && start < len(text) && isLetter(text[start]) {
		glue := unitEnd(text, start)
		if u, ok := unitNames[text[start:glue]]; ok && units[u].spaced && !wordGoesOn(text, glue) {
			n.unit, n.unitAt = text[start:glue], start
			return n, glue
		}
	}
	return n, end
}

// scanMixed reads 27, 27.5, .5, 3/4 or 27 3/4.
func scanMixed(text string, at int) (whole, num, den string, end int) {
	end = digitsEnd(text, at)
	if end < len(text) && text[end] == '.' && digitAt(text, end+1) {
		end = digitsEnd(text, end+1)
		return text[at:end], "", "", end
	}
	if end+1 < len(text) && text[end] == '/' && digitAt(text, end+1) {
		over := digitsEnd(text, end+1)
		return "", text[at:end], text[end+1 : over], over
	}
	whole = text[at:end]
	if start := blanksEnd(text, end); start > end && digitAt(text, start) {
		bar := digitsEnd(text, start)
		if bar < len(text) && text[bar] == '/' && digitAt(text, bar+1) {
			over := digitsEnd(text, bar+1)
			return whole, text[start:bar], text[bar+1 : over], over
		}
	}
	return whole, "", "", end
}

// unitEnd is where the unit that starts at at ends; at itself where there is none.
// An x before a digit, or alone, is not a unit but the x of a size (18mmx30mm).
func unitEnd(text string, at int) int {
	if at == len(text) {
		return at
	}
	c := text[at]
	if c == '%' || c == '"' {
		return at + 1
	}
	if c < utf8.RuneSelf && !isLetter(c) && c != '_' {
		return at
	}
	if c >= utf8.RuneSelf {
		if r, size := utf8.DecodeRuneInString(text[at:]); !isWordRune(r) || lookalike(text[at:at+size]) {
			return at
		}
	}
	end := at
	for end < len(text) && text[end] < utf8.RuneSelf && isLetter(text[end]) {
		if text[end] == 'x' && (digitAt(text, end+1) && text[at:end] != "x" || end == at && !wordGoesOn(text, end+1)) {
			return end
		}
		end++
	}
	// What is written of two units has the second behind a stroke, perhaps with a power.
	if end < len(text) && text[end] == '/' {
		long := end + 1
		for long < len(text) && isLetter(text[long]) {
			long++
		}
		if digitAt(text, long) {
			long++
		}
		if _, ok := unitNames[text[at:long]]; ok && !wordGoesOn(text, long) {
			return long
		}
	}
	if _, ok := unitNames[text[at:end]]; ok && !digitAt(text, end) {
		return end
	}
	return max(end, wordEnd(text, at))
}

// quantity is what the number token at offset is worth; what is wrong with it
// otherwise.
func quantity(text string, offset int, quarters bool) (Quantity, *diag.Finding) {
	n, _ := scanNumber(text, 0)
	if max(len(n.feet), len(n.whole), len(n.num), len(n.den)) > maxDigits {
		return Quantity{}, fault(offset, offset+len(text),
			"this number is too large: at most %d digits, such as `27 1/2`", maxDigits)
	}
	q := Quantity{Value: decimal(n.whole)}
	if n.den != "" {
		num, den := digits(n.num), digits(n.den)
		if den == 0 {
			return q, fault(offset, offset+len(text), "%s divides by zero", quote(text))
		}
		switch fraction := NewRat(num, den); {
		case n.slope:
			q.Unit = Ratio
			q.Value = fraction
			return q, nil
		case n.whole != "" && num >= den:
			return q, improper(text, offset, n)
		case n.whole == "" && num >= den && den == 4 && !quarters:
			return q, quarterFault(text, offset, n)
		default:
			q.Value = q.Value.Add(fraction)
		}
	}
	if n.feet != "" {
		q.Value = q.Value.Add(decimal(n.feet).Mul(whole(12)))
	}
	if n.unit != "" {
		u, ok := unitNames[n.unit]
		if !ok {
			return q, unitFault(n.unit, offset+n.unitAt)
		}
		q.Unit = u
	}
	return q, nil
}

// decimal is 27, 27.5 or .5; "" is 0. It has at most maxDigits digits.
func decimal(s string) Rat {
	before, after, _ := strings.Cut(s, ".")
	if after == "" {
		return Rat{num: digits(before)}
	}
	scale := int64(1)
	for range after {
		scale *= 10
	}
	return NewRat(digits(before+after), scale)
}

func digits(s string) int64 {
	n := int64(0)
	for i := range len(s) {
		n = n*10 + int64(s[i]-'0')
	}
	return n
}

func digitAt(text string, at int) bool {
	return at < len(text) && '0' <= text[at] && text[at] <= '9'
}

// startsNumber reports whether a digit stands at at, or a point and a digit.
func startsNumber(text string, at int) bool {
	return digitAt(text, at) || at < len(text) && text[at] == '.' && digitAt(text, at+1)
}

func digitsEnd(text string, at int) int {
	for digitAt(text, at) {
		at++
	}
	return at
}

func blanksEnd(text string, at int) int {
	for at < len(text) && (text[at] == ' ' || text[at] == '\t') {
		at++
	}
	return at
}
