package lang

// The grammar of values, loosest first.

import (
	"slices"
	"strings"

	"plancheck/internal/diag"
)

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
		if longer(t, maxName) {
			return p.fail(longFault(t, "name", maxName))
		}
		p.next()
		*e = Expr{Op: Name, Span: span(t), Text: t.Value}
		return true
	case aText:
		if longer(t, maxText) {
			return p.fail(longFault(t, "text", maxText))
		}
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
	const atOnce = 32
	if len(p.spare) < n {
		p.spare = make([]Expr, max(n, atOnce))
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
