package lang

// The lexer: it cuts some lines into tokens and lays them into the window from which
// participle reads, again and again the same one. Blanks and comments make no tokens;
// comments go into a table of their own, and braces into a list of pieces, from which
// the blocks are made. It never fails: what cannot stand in a plan becomes a token of
// its own kind, which the grammar then refuses where it stands.

import (
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// piece is a statement without its block, or a closing brace.
type piece struct {
	place
	kind  pieceKind
	brace int // where its brace stands, if it has one
}

type pieceKind uint8

const (
	aLine    pieceKind = iota // a statement
	aHeader                   // a statement with a brace behind it
	anOpener                  // a brace before which nothing stands
	aCloser                   // a closing brace
)

// place is where a piece stands, as far as it matters for blocks.
type place struct {
	line  int  // offset of the start of its line
	edge  int  // how far its line is indented
	first bool // nothing stands before it on its line
}

// A window is filled up to these counts.
const (
	windowLines  = 128
	windowTokens = 1024
)

// scanner walks through a text, a window at a time.
type scanner struct {
	file *diag.File
	text string
	at   int // the next byte

	lineStart int  // of the line on which at stands
	edge      int  // how far that line's first sign is indented
	first     bool // nothing but blanks stood before at on its line

	window *lexer.PeekingLexer // reads tokens
	start  lexer.Checkpoint    // of the window
	tokens []lexer.Token       // written anew for each window
	count  int                 // of tokens
	pieces []piece             // of the window

	base     int // of this statement's tokens
	brackets int // open in this statement
	joined   int // newlines before this offset are blanks inside brackets
	unquoted int // no text ends before this offset

	comments []Comment
	found    []diag.Finding // faults outside any statement
}

func newScanner(f *diag.File) *scanner {
	s := &scanner{file: f, text: f.Text, first: true}
	s.at = len(f.Text) - len(strings.TrimPrefix(f.Text, "\ufeff"))
	s.lineStart = s.at
	s.widen(64)
	return s
}

// fill puts the next lines into the window; false if there are none.
func (s *scanner) fill() bool {
	s.count, s.pieces = 0, s.pieces[:0]
	for len(s.pieces) < windowLines && s.count < windowTokens && s.rest() {
		s.piece()
	}
	s.finish()
	return len(s.pieces) > 0
}

// finish closes the window behind the last token.
func (s *scanner) finish() {
	s.tokens[s.count] = lexer.EOFToken(lexer.Position{Offset: s.at})
	s.window.LoadCheckpoint(s.start)
}

// widen makes a window for n tokens and keeps what the old one holds.
func (s *scanner) widen(n int) {
	tokens := make([]lexer.Token, n)
	copy(tokens, s.tokens[:s.count])
	tokens[n-1] = lexer.EOFToken(lexer.Position{}) // up to which participle takes them in
	s.window, _ = lexer.Upgrade(&replay{tokens})   // replay never fails
	s.start = s.window.MakeCheckpoint()
	s.tokens = s.window.Range(0, lexer.RawCursor(n))
}

// rest skips blanks, comments and empty statements, and reports whether anything is
// left to read.
func (s *scanner) rest() bool {
	for s.at < len(s.text) {
		switch c := s.text[s.at]; c {
		case ' ', '\t', ';', '\r':
			s.at++
			if c == ';' {
				s.first = false
			}
			if c == '\r' && (s.at == len(s.text) || s.text[s.at] != '\n') {
				s.at--
				return true
			}
		case '\n':
			s.newline()
		case '#':
			s.comment()
		default:
			if s.first {
				s.edge = s.at - s.lineStart
			}
			return true
		}
	}
	return false
}

func (s *scanner) newline() {
	s.at++
	s.lineStart, s.first = s.at, true
}

// comment takes the comment at #, which runs to the end of its line.
func (s *scanner) comment() {
	end := len(s.text)
	if n := strings.IndexByte(s.text[s.at:], '\n'); n >= 0 {
		end = s.at + n
	}
	body := strings.TrimRight(s.text[s.at:end], " \t\r")
	if bad, size := foulAt(body); size > 0 {
		f := foulFault(body[bad:bad+size], s.at+bad)
		own(f, s.file)
		s.found = append(s.found, *f)
	}
	s.comments = append(s.comments, Comment{Span: s.span(s.at, s.at+len(body)), Own: s.first})
	s.at = end
}

// piece takes the statement or the closing brace at at.
func (s *scanner) piece() {
	p := piece{place: place{line: s.lineStart, edge: s.edge, first: s.first}}
	if s.text[s.at] == '}' {
		p.kind, p.brace = aCloser, s.at
		s.at++
		s.first = false
		s.pieces = append(s.pieces, p)
		return
	}
	s.base = s.count
	opened := s.statement()
	if opened {
		p.kind, p.brace = aHeader, s.at-1
	}
	if opened && s.count == s.base {
		p.kind = anOpener
	} else {
		s.put(anEnd, s.at)
	}
	s.pieces = append(s.pieces, p)
}

// statement cuts the statement at at into tokens, up to what ends it: a newline or a
// semicolon, an opening brace, which is taken too and reported, or a closing one.
func (s *scanner) statement() (opened bool) {
	s.brackets = 0
	for {
		if s.at >= len(s.text) {
			return false
		}
		s.first = false
		start := s.at
		switch c := s.text[start]; c {
		case ' ', '\t':
			s.at++
		case '\n':
			if !s.joins() {
				return false
			}
			s.newline()
		case ';':
			return false
		case '{':
			s.at++
			return true
		case '}':
			return false
		case '#':
			s.hash()
		case '0', '1', '2', '3', '4', '5', '6', '7', '8', '9':
			s.number()
		case '.':
			// A point glued to a value is not the start of another.
			if digitAt(s.text, start+1) && !(s.behindValue() && s.lastEnd() == start) {
				s.number()
			} else {
				s.put(anOdd, start+1)
			}
		case '"':
			s.quoted()
		case '-':
			s.put(s.dash(), start+1)
		case '+':
			s.put(aPlus, start+1)
		case '*':
			s.put(aStar, start+1)
		case '/':
			s.put(aStroke, start+1)
		case ',':
			if start > 0 && digitAt(s.text, start-1) && digitAt(s.text, start+1) {
				s.put(aTightComma, start+1)
			} else {
				s.put(aComma, start+1)
			}
		case '(':
			s.brackets++
			s.put(anOpen, start+1)
		case ')':
			s.brackets--
			s.put(aClose, start+1)
		case '=', '<', '>', '!':
			s.compare(c)
		case '\r':
			if start+1 < len(s.text) && s.text[start+1] == '\n' {
				s.at++
			} else {
				s.put(anOdd, start+1)
			}
		default:
			s.word(c)
		}
	}
}

// put adds the token from at to end.
func (s *scanner) put(kind lexer.TokenType, end int) {
	start := s.at
	s.at = end
	if s.count-s.base >= maxTokens && kind != anEnd {
		s.last().Type = tooMany
		return
	}
	if s.count+1 >= len(s.tokens) {
		s.widen(2 * len(s.tokens))
	}
	t := &s.tokens[s.count]
	t.Type, t.Value, t.Pos.Offset = kind, s.text[start:end], start
	s.count++
}

func (s *scanner) last() *lexer.Token { return &s.tokens[s.count-1] }

func (s *scanner) lastEnd() int { return s.last().Pos.Offset + len(s.last().Value) }

// joins reports whether the newline at at is a mere blank: inside brackets, beside an
// operator, a comma or a bracket.
func (s *scanner) joins() bool {
	if s.brackets <= 0 {
		return false
	}
	if s.at < s.joined {
		return true
	}
	next := s.at
	for next < len(s.text) {
		switch s.text[next] {
		case ' ', '\t', '\r', '\n':
			next++
			continue
		case '#':
			if n := strings.IndexByte(s.text[next:], '\n'); n >= 0 {
				next += n
				continue
			}
			return false
		}
		break
	}
	if next == len(s.text) {
		return false
	}
	switch s.last().Type {
	case anOpen, aCall, aComma, aPlus, aMinus, aSign, aStar, aStroke, aCompare:
	default:
		if strings.IndexByte("+-*/,)=<>!", s.text[next]) < 0 {
			return false
		}
	}
	s.joined = next
	return true
}

// hash takes a comment behind something, or what looks like one and is not.
func (s *scanner) hash() {
	start := s.at
	switch {
	case strings.TrimLeft(s.text[s.lineStart:start], " \t") == "":
		s.first = true // alone on its line, inside brackets
	case s.text[start-1] != ' ' && s.text[start-1] != '\t':
		s.put(aHash, start+1)
		s.at = start
	case digitAt(s.text, start+1):
		s.put(aGauge, digitsEnd(s.text, start+1))
		s.at = start
	}
	s.comment()
}

func (s *scanner) number() {
	_, end := scanNumber(s.text, s.at)
	s.put(aNumber, end)
}

// quoted takes a text. One that does not end on its line is only its quote, so that
// the rest of the line, and a brace at its end, are still read.
func (s *scanner) quoted() {
	for i := s.at + 1; s.at >= s.unquoted; i++ {
		if i >= len(s.text) || s.text[i] == '\n' {
			s.unquoted = i
			break
		}
		if s.text[i] == '"' {
			s.put(aText, i+1)
			return
		}
		if s.text[i] == '\\' && i+1 < len(s.text) && s.text[i+1] != '\n' {
			i++
		}
	}
	s.put(aQuote, s.at+1)
}

// dash tells the minus between two values from the sign of one.
func (s *scanner) dash() lexer.TokenType {
	switch {
	case !s.behindValue():
		return aSign
	case s.lastEnd() == s.at:
		return aTightDash
	case s.at+1 < len(s.text) && strings.IndexByte(" \t\r\n", s.text[s.at+1]) < 0:
		return aSign
	}
	return aMinus
}

// behindValue reports whether the last token of this statement ends a value, or heads
// the line.
func (s *scanner) behindValue() bool {
	if s.count == s.base {
		return false
	}
	switch s.last().Type {
	case aWord, aPath, aNumber, aText, aClose:
		return true
	}
	return false
}

func (s *scanner) compare(c byte) {
	two := s.at+1 < len(s.text) && s.text[s.at+1] == '='
	switch {
	case two:
		s.put(aCompare, s.at+2)
	case c == '=':
		s.put(anEquals, s.at+1)
	case c == '!':
		s.put(anOdd, s.at+1)
	default:
		s.put(aCompare, s.at+1)
	}
}

// word takes a word, a path, a function or the x of a size; one odd sign otherwise.
func (s *scanner) word(c byte) {
	if c == 'x' {
		end := wordEnd(s.text, s.at)
		count := digitsEnd(s.text, s.at+1)
		glued := count > s.at+1 && s.count > s.base && s.last().Type == aNumber && s.lastEnd() == s.at
		if end == count || glued {
			s.put(aTimes, s.at+1)
			return
		}
	}
	if !startsWord(s.text, s.at) {
		_, size := utf8.DecodeRuneInString(s.text[s.at:])
		s.put(anOdd, s.at+size)
		return
	}
	word := wordEnd(s.text, s.at)
	end := pathEnd(s.text, word)
	switch {
	case end < len(s.text) && s.text[end] == '(':
		s.brackets++
		s.put(aCall, end+1)
	case end > word:
		s.put(aPath, end)
	default:
		s.put(aWord, end)
	}
}

func (s *scanner) span(start, end int) diag.Span {
	return diag.Span{File: s.file, Start: int32(start), End: int32(end)}
}
