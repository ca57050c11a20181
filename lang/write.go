package lang

// How a statement's own line is written: its word and its values, with the blanks that
// belong between them.

import (
	"strings"
)

// line is a statement on one line, its block too.
func (p *printer) line(st *Statement, depth int) string {
	parts := p.parts(st, depth)
	if st.Block != nil {
		parts = append(parts, p.inline(st.Block, depth))
	}
	return strings.Join(parts, " ")
}

// inline is a block on one line.
func (p *printer) inline(b *Block, depth int) string {
	if len(b.Body) == 0 {
		return "{ }"
	}
	lines := make([]string, len(b.Body))
	for i, st := range b.Body {
		lines[i] = p.line(st, depth)
	}
	return "{ " + strings.Join(lines, " ; ") + " }"
}

// parts are what a statement's head is made of, to be joined by blanks: its word, its
// count, its values, what a let equals.
func (p *printer) parts(st *Statement, depth int) []string {
	parts := append(make([]string, 0, 8), st.Word.Text)
	w := writer{printer: p, depth: depth}
	take := func() {
		parts = append(parts, w.String())
		w.Reset()
	}
	if st.Times != nil {
		w.WriteString("x ")
		w.expr(st.Times)
		take()
	}
	for i := range st.Values {
		w.expr(&st.Values[i])
		take()
	}
	if st.Equals != nil {
		w.WriteString("= ")
		w.expr(st.Equals)
		take()
	}
	return parts
}

// writer puts together one part.
type writer struct {
	strings.Builder
	printer *printer
	depth   int
}

func (w *writer) expr(e *Expr) {
	switch e.Op {
	case Number:
		w.number(e.Span.Text())
	case Name, Text:
		w.WriteString(e.Span.Text())
	case Neg:
		w.signed("-", e)
	case Pos:
		w.signed("+", e)
	case Group, Call:
		w.WriteString(e.Text)
		w.WriteByte('(')
		w.gap(e.Span.Start, e.Args[0].Span.Start, "", w.depth+2)
		w.list(e.Args, ",")
		w.gap(e.Args[len(e.Args)-1].Span.End, e.Span.End, "", w.depth)
		w.WriteByte(')')
	case List:
		w.list(e.Args, ",")
	case Sized:
		w.list(e.Args, " x")
	default:
		w.list(e.Args, " "+e.Op.Sign())
	}
}

func (w *writer) signed(sign string, e *Expr) {
	w.WriteString(sign)
	w.gap(e.Span.Start, e.Args[0].Span.Start, "", w.depth+2)
	w.expr(&e.Args[0])
}

// list writes values with a sign behind each but the last.
func (w *writer) list(values []Expr, sign string) {
	for i := range values {
		if i > 0 {
			w.WriteString(sign)
			w.gap(values[i-1].Span.End, values[i].Span.Start, " ", w.depth+2)
		}
		w.expr(&values[i])
	}
}

// gap writes what stands between two values: blank, or the line break with its comments
// where the text has one, and the indentation of what follows.
func (w *writer) gap(start, end int32, blank string, depth int) {
	p := w.printer
	if !p.broken(start, end) {
		w.WriteString(blank)
		return
	}
	for first := true; len(p.comments) > 0 && p.comments[0].Span.Start < end; first = false {
		c := p.comments[0]
		p.comments = p.comments[1:]
		if c.Own || !first { // the one before it ends its line
			w.newline(w.depth + 2)
		} else {
			w.WriteString("  ")
		}
		w.WriteString(c.Span.Text())
	}
	w.newline(depth)
}

func (w *writer) newline(depth int) {
	w.WriteByte('\n')
	for range indent * depth {
		w.WriteByte(' ')
	}
}

// number writes a number with its blanks set: one in a mixed number and behind feet,
// none before a unit.
func (w *writer) number(text string) {
	n, _ := scanNumber(text, 0)
	if n.feet != "" {
		w.WriteString(n.feet)
		w.WriteString("' ")
	}
	w.WriteString(n.whole)
	if n.num != "" {
		if n.whole != "" {
			w.WriteByte(' ')
		}
		w.WriteString(n.num)
		if n.slope {
			w.WriteByte(':')
		} else {
			w.WriteByte('/')
		}
		w.WriteString(n.den)
	}
	w.WriteString(n.unit)
}
