package report

// Figures stand under each other as on paper: whole numbers end in one column, fractions
// and decimals follow.

import (
	"strings"
	"unicode/utf8"
)

// column pads values on the left so that the leading digits of all end in one column, and
// gives the width of the widest.
func column(values []string) (padded []string, width int) {
	whole := 0
	for _, v := range values {
		whole = max(whole, leading(v))
	}
	padded = make([]string, len(values))
	for i, v := range values {
		if v != "" {
			padded[i] = strings.Repeat(" ", whole-leading(v)) + v
			width = max(width, utf8.RuneCountInString(padded[i]))
		}
	}
	return padded, width
}

// leading is how many of a figure's first bytes are its sign and its first digits.
func leading(s string) int {
	n := 0
	for n < len(s) && (s[n] >= '0' && s[n] <= '9' || n == 0 && s[n] == '-') {
		n++
	}
	return n
}

// pad is s with blanks behind it up to a width in characters.
func pad(s string, width int) string {
	if n := width - utf8.RuneCountInString(s); n > 0 {
		return s + strings.Repeat(" ", n)
	}
	return s
}
