package report

// A plan is somebody else's text, and so are the names of files. What of it could move the
// cursor, colour the screen or reorder the line is written out, never sent to a terminal.

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Plain is s with everything that does not show as a mark of its own written as an
// escape: \n, \x1b, \u202e. A byte that is not UTF-8 is written as \xff.
func Plain(s string) string {
	if isPlain(s) {
		return s
	}
	var b strings.Builder
	for len(s) > 0 {
		r, n := utf8.DecodeRuneInString(s)
		switch {
		case r == utf8.RuneError && n == 1, unicode.IsControl(r) && r < utf8.RuneSelf:
			b.WriteString(escape(rune(s[0])))
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r > 0xffff:
			fmt.Fprintf(&b, `\U%08x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
		s = s[n:]
	}
	return b.String()
}

func isPlain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] >= 0x7f {
			return allPrint(s[i:])
		}
	}
	return true
}

func allPrint(s string) bool {
	if !utf8.ValidString(s) {
		return false
	}
	for _, r := range s {
		if !unicode.IsPrint(r) {
			return false
		}
	}
	return true
}

func escape(r rune) string {
	switch r {
	case '\n':
		return `\n`
	case '\r':
		return `\r`
	case '\t':
		return `\t`
	}
	return fmt.Sprintf(`\x%02x`, r)
}
