package lang

// The grammar, for participle. Every production is a method that reads from
// participle's window of tokens; the doc comment of the package shows them as EBNF. One
// that fails has left a finding in parser.fault.

import (
	"slices"
	"strings"

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
	if t.Type != aWord {
		s.Span.End = s.Span.Start // nothing was understood
		s.Word.Span = s.Span
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

// Value = List .  List = Chain { "," Chain } .
func (p *parser) value(e *Expr) bool {
	if !p.chain(e) {
		return false
	}
	if p.peek().Type != aComma {
		return true
	}
	base := p.push(e)
	for p.peek().Type == aComma {
		p.next()
		if !p.chain(e) {
			return false
		}
		p.stack = append(p.stack, *e)
	}
	*e = over(List, p.pop(base))
	return true
}

// Chain = Expr { times Expr } .
func (p *parser) chain(e *Expr) bool {
	if !p.comparison(e) {
		return false
	}
	if p.peek().Type != aTimes {
		return true
	}
	base := p.push(e)
	for p.peek().Type == aTimes {
		p.next()
		if !p.comparison(e) {
			return false
		}
		p.stack = append(p.stack, *e)
	}
	*e = over(Sized, p.pop(base))
	return true
}

// Expr = Sum [ Compare Sum ] .
func (p *parser) comparison(e *Expr) bool {
	if !p.sum(e) {
		return false
	}
	t := p.peek()
	if t.Type != aCompare {
		return true
	}
	if p.head.Value != "check" {
		return p.fail(compareFault(t))
	}
	p.next()
	base := p.push(e)
	if !p.sum(e) {
		return false
	}
	if again := p.peek(); again.Type == aCompare {
		return p.fail(againFault(again))
	}
	p.stack = append(p.stack, *e)
	*e = over(compareOps[t.Value], p.pop(base))
	return true
}

var compareOps = map[string]Op{"==": Same, "!=": Differs, "<": Below, "<=": AtMost, ">": Above, ">=": AtLeast}

// Sum = Term { ( "+" | "-" ) Term } .
func (p *parser) sum(e *Expr) bool {
	if !p.term(e) {
		return false
	}
	for {
		op := Add
		switch p.peek().Type {
		case aPlus:
		case aMinus:
			op = Sub
		default:
			return true
		}
		p.next()
		base := p.push(e)
		if !p.term(e) {
			return false
		}
		p.stack = append(p.stack, *e)
		*e = over(op, p.pop(base))
	}
}

// Term = Unary { ( "*" | "/" ) Unary } .
func (p *parser) term(e *Expr) bool {
	if !p.unary(e) {
		return false
	}
	for {
		op := Mul
		switch p.peek().Type {
		case aStar:
		case aStroke:
			op = Div
		default:
			return true
		}
		p.next()
		base := p.push(e)
		if !p.unary(e) {
			return false
		}
		p.stack = append(p.stack, *e)
		*e = over(op, p.pop(base))
	}
}

// Unary = [ sign ] Primary .
func (p *parser) unary(e *Expr) bool {
	t := p.peek()
	op := Neg
	switch t.Type {
	case aPlus:
		op = Pos
	case aSign:
	default:
		return p.primary(e)
	}
	p.next()
	if !p.primary(e) {
		return false
	}
	*e = over(op, p.pop(p.push(e)))
	e.Span.Start = int32(t.Pos.Offset)
	return true
}

// Primary = Number | Path | Text | Func Sum { "," Sum } ")" | "(" Sum ")" .
func (p *parser) primary(e *Expr) bool {
	t := p.peek()
	switch t.Type {
	case aNumber:
		quarters := p.last.Type == aWord && p.last.Value == "quarters"
		q, f := quantity(t.Value, t.Pos.Offset, quarters)
		if f != nil {
			return p.fail(f)
		}
		p.next()
		p.lastUnit = q.Unit
		*e = Expr{Op: Number, Span: span(t), Qty: q}
		return true
	case aWord, aPath:
		p.next()
		*e = Expr{Op: Name, Span: span(t), Text: t.Value}
		return true
	case aText:
		text, f := unquote(t)
		if f != nil {
			return p.fail(f)
		}
		p.next()
		*e = Expr{Op: Text, Span: span(t), Text: text}
		return true
	case anOpen, aCall:
		return p.bracket(e)
	}
	return p.fail(valueFault(t, p))
}

// functions are what may stand before a bracket.
var functions = []string{"min", "max", "abs", "round"}

// bracket reads what stands in brackets, with the function before it if there is one.
func (p *parser) bracket(e *Expr) bool {
	open := p.next()
	op, name := Group, strings.TrimSuffix(open.Value, "(")
	if open.Type == aCall {
		op = Call
		if !slices.Contains(functions, name) {
			return p.fail(functionFault(open, name))
		}
	}
	if p.depth++; p.depth > maxDepth {
		return p.fail(deepBracketFault(open))
	}
	base := len(p.stack)
	for {
		if !p.sum(e) {
			return false
		}
		p.stack = append(p.stack, *e)
		if op != Call || p.peek().Type != aComma {
			break
		}
		p.next()
	}
	if p.peek().Type != aClose {
		return p.fail(closeFault(p.peek(), open, p))
	}
	p.depth--
	p.next()
	*e = Expr{Op: op, Span: diag.Span{Start: int32(open.Pos.Offset), End: int32(end(p.last))}, Text: name, Args: p.pop(base)}
	return true
}

// push puts a value onto the stack and says where.
func (p *parser) push(e *Expr) (base int) {
	p.stack = append(p.stack, *e)
	return len(p.stack) - 1
}

// pop takes the values from base on off the stack; nil if there are none. They get
// their own place out of a larger piece of memory, which spares most allocations.
func (p *parser) pop(base int) []Expr {
	values := p.stack[base:]
	n := len(values)
	if n == 0 {
		return nil
	}
	if len(p.spare) < n {
		p.spare = make([]Expr, max(n, windowLines))
	}
	own := p.spare[:n:n]
	p.spare = p.spare[n:]
	copy(own, values)
	p.stack = p.stack[:base]
	return own
}

// over is op over its args, spanning them.
func over(op Op, args []Expr) Expr {
	all := args[0].Span
	all.End = args[len(args)-1].Span.End
	return Expr{Op: op, Span: all, Args: args}
}

// span is where a token stands. Its file is set when the line is taken into the tree.
func span(t *lexer.Token) diag.Span {
	return diag.Span{Start: int32(t.Pos.Offset), End: int32(end(t))}
}

func end(t *lexer.Token) int { return t.Pos.Offset + len(t.Value) }
