package lang

// Words and names: which letters they are made of, and where one ends.

import (
	"unicode"
	"unicode/utf8"
)

// wordEnd is where the word that starts at at ends: a letter, then letters, digits,
// underscores, and hyphens that a letter or digit follows.
func wordEnd(text string, at int) int {
	for at < len(text) {
		c := text[at]
		switch {
		case isLetter(c) || '0' <= c && c <= '9' || c == '_':
			at++
		case c == '-' && at+1 < len(text) && startsWordRune(text, at+1):
			at++
		case c >= utf8.RuneSelf:
			r, size := utf8.DecodeRuneInString(text[at:])
			if !isWordRune(r) {
				return at
			}
			at += size
		default:
			return at
		}
	}
	return at
}

// pathEnd is where the names end that dots reach inside a word which ends at at; at
// itself where there are none.
func pathEnd(text string, at int) int {
	for at+1 < len(text) && text[at] == '.' && startsWord(text, at+1) {
		at = wordEnd(text, at+1)
	}
	return at
}

// startsWord reports whether a letter stands at at.
func startsWord(text string, at int) bool {
	return startsWordRune(text, at) && !digitAt(text, at)
}

func startsWordRune(text string, at int) bool {
	if at == len(text) {
		return false
	}
	if c := text[at]; c < utf8.RuneSelf {
		return isLetter(c) || digitAt(text, at)
	}
	r, size := utf8.DecodeRuneInString(text[at:])
	return isWordRune(r) && !lookalike(text[at:at+size])
}

// wordGoesOn reports whether what stands at at would lengthen a word that ends there,
// reach inside it or call it.
func wordGoesOn(text string, at int) bool {
	return at < len(text) && (wordEnd(text, at) > at || text[at] == '(' || text[at] == '.' && startsWord(text, at+1))
}

func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

// isWordRune takes letters of every script, and the marks that some are written with.
func isWordRune(r rune) bool { return unicode.IsLetter(r) || unicode.IsMark(r) }
