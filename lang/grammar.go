package lang

// The grammar of one line, for participle. Every production is a method that reads
// from participle's window of tokens; the doc comment of the package shows them as
// EBNF. A production that fails has left a finding in parser.fault.

import (
	"strings"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// grammar is participle's parser of one line.
var grammar = participle.MustBuild[line](participle.Lexer(symbols{}), participle.UseLookahead(0))

// line is the root production: a statement without its block.
type line struct {
	Statement
	fault *diag.Finding // why it could not be read to its end
}

// Parse is called by participle.
func (l *line) Parse(window *lexer.PeekingLexer) error {
	p := parser{window: window}
	if !p.statement(&l.Statement) {
		l.fault = p.fault
		l.Faulty = true
		for !window.Peek().EOF() {
			window.Next()
		}
	}
	return nil
}

// maxDepth bounds brackets within brackets, and blocks within blocks.
const maxDepth = 100

// parser reads one line.
type parser struct {
	window   *lexer.PeekingLexer
	head     string       // the word that heads the line
	last     *lexer.Token // taken last
	lastUnit Unit         // of the last number taken
	depth    int          // of brackets
	fault    *diag.Finding
}

func (p *parser) peek() *lexer.Token { return p.window.Peek() }

func (p *parser) next() *lexer.Token {
	p.last = p.window.Next()
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
	s.Span = span(t)
	if t.Type != aWord {
		return p.fail(headFault(t, p.window))
	}
	p.next()
	p.head = t.Value
	s.Word = Word{Text: t.Value, Span: span(t)}
	s.Span = s.Word.Span
	defer func() { s.Span.End = int32(end(p.last)) }()
	if p.peek().Type == aTimes {
		p.next()
		times, ok := p.sum()
		if !ok {
			return false
		}
		s.Times = &times
	}
	var few [6]Expr // what most lines need
	values := few[:0]
	defer func() { s.Values = exactly(values) }()
	for {
		switch t = p.peek(); t.Type {
		case lexer.EOF:
			return p.whole(s, values)
		case anEquals:
			if p.head != "let" || len(values) != 1 || values[0].Op != Name || s.Equals != nil {
				return p.fail(equalsFault(t, p))
			}
			p.next()
			value, ok := p.value()
			if !ok {
				return false
			}
			s.Equals = &value
			continue
		}
		if s.Equals != nil || !p.mayFollow(t) {
			if p.fault == nil {
				p.fault = leftoverFault(t, p)
			}
			return false
		}
		value, ok := p.value()
		if !ok {
			return false
		}
		values = append(values, value)
	}
}

// whole reports a let that lacks its name or its value.
func (p *parser) whole(s *Statement, values []Expr) bool {
	if p.head == "let" && s.Equals == nil {
		return p.fail(letFault(s, values))
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
		if p.last.Pos.Offset != p.headAt() {
			return p.fail(signFault(p.last, t, p.window))
		}
		return true
	}
	return false
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

func (p *parser) headAt() int { return p.window.Range(0, 1)[0].Pos.Offset }

// Value = List .  List = Chain { "," Chain } .
func (p *parser) value() (Expr, bool) {
	first, ok := p.chain()
	if !ok || p.peek().Type != aComma {
		return first, ok
	}
	return p.joined(List, first, aComma, p.chain)
}

// Chain = Expr { times Expr } .
func (p *parser) chain() (Expr, bool) {
	first, ok := p.comparison()
	if !ok || p.peek().Type != aTimes {
		return first, ok
	}
	return p.joined(Sized, first, aTimes, p.comparison)
}

// joined reads what else is joined to first by a separator.
func (p *parser) joined(op Op, first Expr, separator lexer.TokenType, part func() (Expr, bool)) (Expr, bool) {
	var few [4]Expr
	parts := append(few[:0], first)
	for p.peek().Type == separator {
		p.next()
		e, ok := part()
		if !ok {
			return Expr{}, false
		}
		parts = append(parts, e)
	}
	return over(op, exactly(parts)...), true
}

// Expr = Sum [ Compare Sum ] .
func (p *parser) comparison() (Expr, bool) {
	left, ok := p.sum()
	t := p.peek()
	if !ok || t.Type != aCompare {
		return left, ok
	}
	if p.head != "check" {
		return Expr{}, p.fail(compareFault(t))
	}
	p.next()
	right, ok := p.sum()
	if !ok {
		return Expr{}, false
	}
	if again := p.peek(); again.Type == aCompare {
		return Expr{}, p.fail(againFault(again))
	}
	return over(compareOps[t.Value], left, right), true
}

var compareOps = map[string]Op{"==": Same, "!=": Differs, "<": Below, "<=": AtMost, ">": Above, ">=": AtLeast}

// Sum = Term { ( "+" | "-" ) Term } .
func (p *parser) sum() (Expr, bool) {
	left, ok := p.term()
	for ok {
		op := Add
		switch p.peek().Type {
		case aPlus:
		case aMinus:
			op = Sub
		default:
			return left, true
		}
		p.next()
		var right Expr
		right, ok = p.term()
		left = over(op, left, right)
	}
	return Expr{}, false
}

// Term = Unary { ( "*" | "/" ) Unary } .
func (p *parser) term() (Expr, bool) {
	left, ok := p.unary()
	for ok {
		op := Mul
		switch p.peek().Type {
		case aStar:
		case aStroke:
			op = Div
		default:
			return left, true
		}
		p.next()
		var right Expr
		right, ok = p.unary()
		left = over(op, left, right)
	}
	return Expr{}, false
}

// Unary = [ sign ] Primary .
func (p *parser) unary() (Expr, bool) {
	t := p.peek()
	op := Neg
	switch t.Type {
	case aPlus:
		op = Pos
	case aSign:
	default:
		return p.primary()
	}
	p.next()
	e, ok := p.primary()
	if !ok {
		return Expr{}, false
	}
	signed := over(op, e)
	signed.Span.Start = int32(t.Pos.Offset)
	return signed, true
}

// Primary = Number | Path | Text | Func Sum { "," Sum } ")" | "(" Sum ")" .
func (p *parser) primary() (Expr, bool) {
	t := p.peek()
	switch t.Type {
	case aNumber:
		quarters := p.last.Type == aWord && p.last.Value == "quarters"
		q, f := quantity(t.Value, t.Pos.Offset, quarters)
		if f != nil {
			return Expr{}, p.fail(f)
		}
		p.next()
		p.lastUnit = q.Unit
		return Expr{Op: Number, Span: span(t), Qty: q}, true
	case aWord, aPath:
		p.next()
		return Expr{Op: Name, Span: span(t), Text: t.Value}, true
	case aText:
		text, f := unquote(t)
		if f != nil {
			return Expr{}, p.fail(f)
		}
		p.next()
		return Expr{Op: Text, Span: span(t), Text: text}, true
	case anOpen, aCall:
		return p.bracket()
	}
	return Expr{}, p.fail(valueFault(t, p))
}

// functions are what may stand before a bracket.
var functions = []string{"min", "max", "abs", "round"}

// bracket reads what stands in brackets, with the function before it if there is one.
func (p *parser) bracket() (Expr, bool) {
	t := p.next()
	op, name := Group, strings.TrimSuffix(t.Value, "(")
	if t.Type == aCall {
		op = Call
		if !isFunction(name) {
			return Expr{}, p.fail(functionFault(t, name))
		}
	}
	if p.depth == maxDepth {
		return Expr{}, p.fail(deepBracketFault(t))
	}
	p.depth++
	defer func() { p.depth-- }()
	arg, ok := p.sum()
	if !ok {
		return Expr{}, false
	}
	args := []Expr{arg}
	for op == Call && p.peek().Type == aComma {
		p.next()
		if arg, ok = p.sum(); !ok {
			return Expr{}, false
		}
		args = append(args, arg)
	}
	if p.peek().Type != aClose {
		return Expr{}, p.fail(closeFault(p.peek(), t, p))
	}
	last := p.next()
	return Expr{Op: op, Span: span(t).To(span(last)), Text: name, Args: args}, true
}

func isFunction(name string) bool {
	for _, f := range functions {
		if f == name {
			return true
		}
	}
	return false
}

// over is op over its args, spanning them.
func over(op Op, args ...Expr) Expr {
	whole := args[0].Span
	whole.End = args[len(args)-1].Span.End
	return Expr{Op: op, Span: whole, Args: args}
}

// exactly copies values to a slice without room to spare; nil for none.
func exactly(values []Expr) []Expr {
	if len(values) == 0 {
		return nil
	}
	return append(make([]Expr, 0, len(values)), values...)
}

// span is where a token stands. Its file is set when the line is taken into the tree.
func span(t *lexer.Token) diag.Span {
	return diag.Span{Start: int32(t.Pos.Offset), End: int32(end(t))}
}

func end(t *lexer.Token) int { return t.Pos.Offset + len(t.Value) }
