package lang

// How a statement's own line is written: its word and its values, with the blanks that
// belong between them.

import (
	"strings"
)

// head is a statement without its block.
func (p *printer) head(st *Statement, depth int) string {
	parts := p.parts(st, depth)
	if st.Block != nil {
		parts = parts[:len(parts)-1]
	}
	return strings.Join(parts, " ")
}

// line is a statement on one line, its block too.
func (p *printer) line(st *Statement, depth int) string {
	return strings.Join(p.parts(st, depth), " ")
}

// parts are what a statement is made of, to be joined by blanks: its word, its count,
// its values, what a let equals, its block on one line.
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
	if st.Block != nil {
		w.block(st.Block)
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

func (w *writer) block(b *Block) {
	w.WriteByte('{')
	for i, st := range b.Body {
		if i > 0 {
			w.WriteString(" ;")
		}
		w.WriteByte(' ')
		w.WriteString(w.printer.line(st, w.depth))
	}
	w.WriteString(" }")
}

func (w *writer) expr(e *Expr) {
	switch e.Op {
	case Number:
		w.number(e.Span.Text())
	case Name, Text:
		w.WriteString(e.Span.Text())
	case Neg:
		w.WriteByte('-')
		w.expr(&e.Args[0])
	case Pos:
		w.WriteByte('+')
		w.expr(&e.Args[0])
	case Group, Call:
		w.WriteString(e.Text)
		w.WriteByte('(')
		w.gap(e.Span.Start, e.Args[0].Span.Start, "")
		w.list(e.Args, ",")
		w.gap(e.Args[len(e.Args)-1].Span.End, e.Span.End, "")
		w.WriteByte(')')
	case List:
		w.list(e.Args, ",")
	case Sized:
		w.list(e.Args, " x")
	default:
		w.list(e.Args, " "+e.Op.Sign())
	}
}

// list writes values with a sign behind each but the last.
func (w *writer) list(values []Expr, sign string) {
	for i := range values {
		if i > 0 {
			w.WriteString(sign)
			w.gap(values[i-1].Span.End, values[i].Span.Start, " ")
		}
		w.expr(&values[i])
	}
}

// gap writes what stands between two values: blank, or the line break with its comments
// where the text has one.
func (w *writer) gap(start, end int32, blank string) {
	p := w.printer
	if !p.broken(start, end) {
		w.WriteString(blank)
		return
	}
	margin := "\n" + strings.Repeat(" ", indent*(w.depth+2))
	for len(p.comments) > 0 && p.comments[0].Span.Start < end {
		c := p.comments[0]
		p.comments = p.comments[1:]
		if c.Own {
			w.WriteString(margin)
		} else {
			w.WriteString("  ")
		}
		w.WriteString(c.Span.Text())
	}
	w.WriteString(margin)
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
