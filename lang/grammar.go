package lang

// The grammar of lines, for participle; that of values is in expr.go. Every production
// is a method that reads from participle's window of tokens; the doc comment of the
// package shows them as EBNF. One that fails has left a finding in parser.fault.

import (
	"unicode/utf8"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// grammar is participle's parser of a window.
var grammar = participle.MustBuild[window](participle.Lexer(symbols{}), participle.UseLookahead(0))

// window is the root production: some lines of a plan, without their blocks.
type window struct {
	lines []line
}

// line is a statement without its block.
type line struct {
	Statement
	fault *diag.Finding // why it could not be read to its end
}

// Parse is called by participle, with the tokens of a window.
//
// Window = { Statement end } .
func (w *window) Parse(tokens *lexer.PeekingLexer) error {
	p := parser{tokens: tokens, stack: make([]Expr, 0, 16)}
	w.lines = make([]line, 0, windowLines)
	for !tokens.Peek().EOF() {
		w.lines = append(w.lines, line{})
		l := &w.lines[len(w.lines)-1]
		if !p.statement(&l.Statement) {
			l.fault, l.Faulty = p.fault, true
			for tokens.Peek().Type != anEnd {
				tokens.Next()
			}
		}
		tokens.Next()
	}
	return nil
}

// maxDepth bounds brackets within brackets, and blocks within blocks.
const maxDepth = 100

// Names, with all that dots reach inside them, and texts are bounded, in letters: every
// message about a thing shows its name.
const (
	maxName = 250
	maxText = 1000
)

// longer reports whether a token has more letters than are taken on.
func longer(t *lexer.Token, most int) bool {
	return len(t.Value) > most && utf8.RuneCountInString(t.Value) > most
}

// parser reads the lines of a window.
type parser struct {
	tokens   *lexer.PeekingLexer
	head     *lexer.Token // the word that heads the line
	last     *lexer.Token // taken last
	lastUnit Unit         // of the last number taken
	values   int          // of this line that are whole
	depth    int          // of brackets
	fault    *diag.Finding

	stack []Expr // values of unfinished lists
	spare []Expr // room for finished ones
}

func (p *parser) peek() *lexer.Token { return p.tokens.Peek() }

func (p *parser) next() *lexer.Token {
	p.last = p.tokens.Next()
	return p.last
}

// fail notes what is wrong.
func (p *parser) fail(f *diag.Finding) bool {
	p.fault = f
	return false
}

// Statement = Word [ times Sum ] { Value } [ "=" Value ] .
func (p *parser) statement(s *Statement) bool {
	t := p.peek()
	p.head, p.last, p.values, p.depth, p.fault = t, t, 0, 0, nil
	s.Span = span(t)
	if t.Type != aWord || longer(t, maxName) {
		s.Span.End = s.Span.Start // nothing was understood
		s.Word.Span = s.Span
		if t.Type == aWord {
			return p.fail(longFault(t, "name", maxName))
		}
		return p.fail(headFault(t, p))
	}
	p.next()
	s.Word = Word{Text: t.Value, Span: s.Span}
	base := len(p.stack)
	ok := p.body(s, base)
	p.stack = p.stack[:base+p.values] // what a fault left unfinished is dropped
	s.Values = p.pop(base)
	s.Span.End = int32(end(p.last))
	return ok
}

// body reads what stands behind the word, the values onto the stack.
func (p *parser) body(s *Statement, base int) bool {
	if p.peek().Type == aTimes {
		p.next()
		var times Expr
		if !p.sum(&times) {
			return false
		}
		s.Times = &times
	}
	for {
		t := p.peek()
		switch t.Type {
		case anEnd:
			if p.head.Value == "let" {
				return p.fail(letFault(s, p.stack[base:]))
			}
			return true
		case anEquals:
			return p.equals(s, p.stack[base:])
		}
		if !p.mayFollow(t) {
			return false
		}
		var value Expr
		if !p.value(&value) {
			return false
		}
		p.stack = append(p.stack, value)
		p.values++
	}
}

// equals reads the value of a let, with which its line ends.
func (p *parser) equals(s *Statement, values []Expr) bool {
	if p.head.Value != "let" || len(values) != 1 || values[0].Op != Name {
		return p.fail(equalsFault(p.peek(), p))
	}
	p.next()
	var value Expr
	if !p.value(&value) {
		return false
	}
	s.Equals = &value
	if t := p.peek(); t.Type != anEnd {
		return p.mayFollow(t) && p.fail(leftoverFault(t, p))
	}
	return true
}

// mayFollow reports whether a value that starts with t may stand behind what was
// taken last.
func (p *parser) mayFollow(t *lexer.Token) bool {
	switch t.Type {
	case aWord, aPath, aCall, aText, anOpen, aPlus:
		return true
	case aNumber:
		if p.last.Type == aNumber && p.sideBySide(t) {
			return p.fail(sideBySideFault(p.last, t, p.lastUnit))
		}
		return true
	case aSign:
		if p.last != p.head {
			return p.fail(signFault(p.last, t, p))
		}
		return true
	}
	return p.fail(leftoverFault(t, p))
}

// sideBySide reports whether the number t reads as one with the number before it:
// both are bare, or inches follow feet.
func (p *parser) sideBySide(t *lexer.Token) bool {
	n, _ := scanNumber(t.Value, 0)
	bare := n.unit == "" && !n.slope
	switch p.lastUnit {
	case Bare:
		return bare
	case Foot:
		return bare || unitNames[n.unit] == Inch
	}
	return false
}

// span is where a token stands. Its file is set when the line is taken into the tree.
func span(t *lexer.Token) diag.Span {
	return diag.Span{Start: int32(t.Pos.Offset), End: int32(end(t))}
}

func end(t *lexer.Token) int { return t.Pos.Offset + len(t.Value) }
