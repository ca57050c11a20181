package lang

// From the tree back to text, laid out the one way that every plan is.
//
// What a maker chose is kept: which statements share a line (as long as it fits), which
// blocks stand on one line, where a sum in brackets is broken, single blank lines, and
// every number and text as written. The rest is set: indentation, blanks, columns
// (columns.go), and a blank line around each block that stands at the left edge and
// spans several lines.

import (
	"strings"
	"unicode/utf8"
)

const (
	indent  = 2   // blanks for each block
	maxWide = 100 // columns for what is kept on one line, before any padding
)

// Format lays a plan out. The text it returns parses to the same tree, apart from
// places, with the same comments in the same order; formatting it again changes
// nothing. A plan with syntax findings is the caller's to refuse: what was not
// understood is not in its tree, and would be lost.
func Format(t *Tree) string {
	p := printer{text: t.File.Text, comments: t.Comments}
	p.body(t.Body, body{end: len(p.text)})
	p.flush()
	return p.out.String()
}

// printer writes a tree. Lines that may be aligned with those that follow wait in rows.
type printer struct {
	text     string
	comments []Comment // not written yet
	out      strings.Builder
	rows     []row
}

// body is how the statements of a file or a block stand in the text, and are to stand.
type body struct {
	start, end int // in the text
	depth      int
	split      bool // each statement on its own line, since together they did not fit
}

// body writes the statements of a file or a block, and the comments between them.
func (p *printer) body(statements []*Statement, b body) {
	at := b.start
	alone := 0 // statements before this one do not share a line
	if b.split {
		alone = len(statements)
	}
	afterBlock := false
	for i := 0; i < len(statements); {
		n := i + 1
		for n < len(statements) && i >= alone && p.shareLine(statements[n-1], statements[n]) {
			n++
		}
		if n > i+1 && !p.fits(statements[i:n], b.depth) {
			alone, n = n, i+1
		}
		st := statements[i]
		block := n == i+1 && p.needsLines(st, b.depth)

		apart := b.depth == 0 && (block || afterBlock)
		if p.between(at, int(st.Span.Start), b, apart) {
			p.blank()
		}
		next := b.end
		if n < len(statements) {
			next = int(statements[n].Span.Start)
		}
		if block {
			at = p.block(st, b.depth, next)
		} else {
			r := p.row(statements[i:n], b.depth)
			at = int(statements[n-1].Span.End)
			r.comment, at = p.trailing(at, next)
			p.add(r)
		}
		afterBlock = block
		i = n
	}
	p.between(at, b.end, b, false)
}

// shareLine reports whether b follows a on the same line, and neither spans several.
func (p *printer) shareLine(a, b *Statement) bool {
	return !p.broken(a.Span.Start, b.Span.End)
}

// broken reports whether the text is broken into lines between two places.
func (p *printer) broken(start, end int32) bool {
	return strings.IndexByte(p.text[start:end], '\n') >= 0
}

// fits reports whether statements that stand on one line have room on one.
func (p *printer) fits(statements []*Statement, depth int) bool {
	return indent*depth+utf8.RuneCountInString(p.row(statements, depth).String()) <= maxWide
}

// needsLines reports whether a statement has a block that takes several lines.
func (p *printer) needsLines(st *Statement, depth int) bool {
	b := st.Block
	switch {
	case b == nil:
		return false
	case len(b.Body) == 0: // a comment, perhaps
		return strings.IndexByte(p.text[b.Open.End:b.Close.Start], '#') >= 0
	case p.broken(st.Span.Start, st.Span.End):
		return true
	}
	return !p.fits([]*Statement{st}, depth)
}

// block writes a statement and its block on several lines, and returns how far in the
// text it got. What follows it starts at next.
func (p *printer) block(st *Statement, depth, next int) int {
	b := st.Block
	p.flush()
	r := row{depth: depth, rest: strings.Join(p.parts(st, depth), " ") + " {"}
	inside := body{start: int(b.Open.End), end: int(b.Close.Start), depth: depth + 1}
	end := int(st.Span.End)
	if p.broken(b.Open.Start, b.Close.End) {
		first := inside.end
		if len(b.Body) > 0 {
			first = int(b.Body[0].Span.Start)
		}
		r.comment, inside.start = p.trailing(inside.start, first)
	} else {
		inside.split = true
		r.comment, end = p.trailing(end, next)
	}
	p.add(r)
	p.flush()
	p.body(b.Body, inside)
	p.flush()
	r = row{depth: depth, rest: "}"}
	if end == int(st.Span.End) {
		r.comment, end = p.trailing(end, next)
	}
	p.add(r)
	p.flush()
	return end
}

// between writes the comments that stand between two places of a body, with the blank
// lines between them, and reports whether one is due behind the last. If apart, there
// is to be at least one.
func (p *printer) between(at, to int, b body, apart bool) (blank bool) {
	first := at == b.start // nothing stands above in this body
	due := apart && !p.spaced(at, to)
	n := 0
	for n < len(p.comments) && int(p.comments[n].Span.Start) < to {
		n++
	}
	for _, c := range p.comments[:n] {
		if !first && (due || p.spaced(at, int(c.Span.Start))) {
			p.blank()
		}
		p.flush()
		p.add(row{depth: b.depth, rest: c.Span.Text()})
		p.flush()
		at, first, due = int(c.Span.End), false, false
	}
	p.comments = p.comments[n:]
	return !first && (due || p.spaced(at, to))
}

// spaced reports whether a blank line stands between two places.
func (p *printer) spaced(start, end int) bool {
	_, below, more := strings.Cut(p.text[start:end], "\n")
	for more {
		var line string
		line, below, more = strings.Cut(below, "\n")
		if more && strings.Trim(line, " \t\r;") == "" {
			return true
		}
	}
	return false
}

// trailing takes the comment that stands behind at on the same line, if there is one
// before next, and says where it ends.
func (p *printer) trailing(at, next int) (comment string, end int) {
	if len(p.comments) == 0 {
		return "", at
	}
	c := p.comments[0]
	if c.Own || int(c.Span.Start) >= next || p.broken(int32(at), c.Span.Start) {
		return "", at
	}
	if digitAt(p.text, int(c.Span.Start)+1) && p.text[at-1] != '{' && p.text[at-1] != '}' {
		return "", at // behind `;`: without it, `#8` would be read as the gauge of a screw
	}
	p.comments = p.comments[1:]
	return c.Span.Text(), int(c.Span.End)
}
