package lang

// From the text to the tree: lines are parsed one by one, a stack makes the blocks.

import (
	"strings"

	"plancheck/internal/diag"
)

// Parse reads a plan. It never fails: what cannot be read is a finding of the rule
// Syntax, one for each broken line, and everything else is in the tree. A statement
// whose line is broken stays in the tree as far as it was understood (its word, the
// values before the fault, its block) and is marked Faulty; its Word is empty where
// not even that could be read. Time and memory grow with the length of the text, and
// reading stops, with a finding, at a length or a number of faults that no plan has.
func Parse(f *diag.File) (*Tree, []diag.Finding) {
	b := newBuilder(f, byBraces)
	b.run()
	if b.unbalanced > 0 {
		second := newBuilder(f, byEdges)
		second.run()
		if second.faults <= b.faults {
			b = second
		}
	}
	b.found = append(b.found, b.scan.found...)
	diag.Sort(b.found)
	b.tree.Comments = b.scan.comments
	return b.tree, b.found
}

// builder makes the tree of one reading.
type builder struct {
	scan *scanner
	read reading
	tree *Tree

	open    []opener     // the blocks that are open, outermost first
	pending []*Statement // of the open blocks, those of an inner one behind the outer's
	skipped int          // blocks open beyond the deepest that is read

	before    piece // the piece read last
	beforeEnd int   // the offset behind it
	plain     place // of the last statement of the innermost block, if it began a line and opened no block
	braceLine int   // where the last stray brace was reported: one more than the offset of its line

	statements int // read so far
	found      []diag.Finding
	faults     int // how much the reading had to put up with
	unbalanced int // braces without a counterpart
}

// opener is a block that is open.
type opener struct {
	statement *Statement
	place     place
	body      int // where its statements start in pending
}

func newBuilder(f *diag.File, r reading) *builder {
	return &builder{scan: newScanner(f), read: r, tree: &Tree{File: f}}
}

// A text with more than this is no plan. The rest of it is not read, so that it cannot
// eat the machine.
const (
	maxStatements = 4_000_000
	maxFaults     = 10_000
)

func (b *builder) run() {
	s := b.scan
	for s.fill() {
		w, _ := grammar.ParseFromLexer(s.window) // what is wrong is in the lines
		lines := w.lines
		for _, p := range s.pieces {
			if b.read == byEdges && p.first {
				b.edges(p)
			}
			switch p.kind {
			case aCloser:
				b.close(p)
			case anOpener:
				b.opener(p)
			default:
				b.line(p, &lines[0])
				lines = lines[1:]
			}
			b.before = p
			if p.kind != aLine {
				b.beforeEnd = p.brace + 1
			}
		}
		if b.statements > maxStatements || b.faults+len(s.found) > maxFaults {
			f := fault(s.at, s.at, "the rest is not read: a plan has at most %d lines, and at most %d that are broken", maxStatements, maxFaults)
			b.report(f)
			break
		}
	}
	b.unclosed(0, len(s.text))
	b.tree.Body = exact(b.pending)
}

// line takes in a statement.
func (b *builder) line(p piece, l *line) {
	st := &l.Statement
	b.statements++
	st.own(b.scan.file)
	b.beforeEnd = int(st.Span.End)
	if b.skipped == 0 {
		if l.fault != nil {
			b.report(l.fault)
		}
		b.pending = append(b.pending, st)
	}
	b.plain = p.place
	if p.kind == aHeader {
		b.openBlock(st, p)
	}
}

// opener gives a brace that stands alone on its line to the statement on the line before it;
// without one it opens a block of no word.
func (b *builder) opener(p piece) {
	st := b.lastStatement()
	if b.skipped > 0 {
		b.openBlock(st, p)
		return
	}
	f := fault(p.brace, p.brace+1, "`{` stands on the line of what it opens, such as `case carcass {`")
	if p.first && b.lineEnds(p.brace+1) && b.before.kind == aLine && st != nil && b.plain.first {
		if end := int(st.Span.End); !st.Faulty {
			fix := rewrite(end, end, " {", "`{` behind "+quote(st.Head().Text()))
			fix.Edits = append(fix.Edits, diag.Edit{Span: b.scan.span(p.brace, p.brace+1)})
			f.Fixes = []diag.Fix{fix}
		}
		p.place = b.plain
	} else {
		st = &Statement{Span: b.scan.span(p.brace, p.brace+1)}
		st.Word.Span = b.scan.span(p.brace, p.brace)
		b.pending = append(b.pending, st)
	}
	st.Faulty = true
	b.reportBrace(f, p)
	b.openBlock(st, p)
}

// lineEnds reports whether nothing but a comment stands behind at on its line.
func (b *builder) lineEnds(at int) bool {
	at = blanksEnd(b.scan.text, at)
	return at == len(b.scan.text) || strings.IndexByte("\r\n#", b.scan.text[at]) >= 0
}

// lastStatement is the last of the innermost open block; nil if it has none yet.
func (b *builder) lastStatement() *Statement {
	first := 0
	if n := len(b.open); n > 0 {
		first = b.open[n-1].body
	}
	if len(b.pending) == first {
		return nil
	}
	return b.pending[len(b.pending)-1]
}

// openBlock opens the block of st, whose brace is that of p.
func (b *builder) openBlock(st *Statement, p piece) {
	b.plain = place{}
	if b.skipped > 0 {
		b.skipped++
		return
	}
	brace := b.scan.span(p.brace, p.brace+1)
	if p.kind == aLine {
		brace.End = brace.Start // never written
	}
	st.Block = &Block{Open: brace}
	st.Span.End = max(st.Span.End, brace.End)
	if len(b.open) == maxDepth {
		b.skipped = 1
		st.Faulty = true
		b.report(fault(p.brace, p.brace+1, "blocks stand at most %d deep: what is inside this one is not read", maxDepth))
		return
	}
	b.open = append(b.open, opener{statement: st, place: p.place, body: len(b.pending)})
}

// close takes in a closing brace.
func (b *builder) close(p piece) {
	b.plain = place{}
	brace := b.scan.span(p.brace, p.brace+1)
	switch {
	case b.skipped > 1:
		b.skipped--
	case b.skipped == 1:
		b.skipped = 0
		st := b.lastStatement()
		st.Block.Close = brace
		st.Span.End = brace.End
	case len(b.open) == 0 || b.read == byEdges && !b.closesByEdge(p.place):
		b.stray(p)
	default:
		b.pop(brace)
	}
}

// pop ends the innermost block.
func (b *builder) pop(brace diag.Span) {
	last := len(b.open) - 1
	o := b.open[last]
	b.open = b.open[:last]
	o.statement.Block.Body = exact(b.pending[o.body:])
	o.statement.Block.Close = brace
	if n := len(o.statement.Block.Body); !brace.Known() && n > 0 {
		o.statement.Span.End = o.statement.Block.Body[n-1].Span.End
	}
	if brace.Known() {
		o.statement.Span.End = brace.End
	}
	clear(b.pending[o.body:])
	b.pending = b.pending[:o.body]
	b.plain = place{}
}

func (b *builder) report(f *diag.Finding) {
	own(f, b.scan.file)
	b.found = append(b.found, *f)
	b.faults++
}

// reportBrace reports a stray brace, once for all on a line.
func (b *builder) reportBrace(f *diag.Finding, p piece) {
	if b.braceLine == p.line+1 {
		b.faults++
		return
	}
	b.braceLine = p.line + 1
	b.report(f)
}

// own sets the file of everything in a statement's line.
func (s *Statement) own(f *diag.File) {
	s.Span.File = f
	s.Word.Span.File = f
	if s.Times != nil {
		s.Times.own(f)
	}
	for i := range s.Values {
		s.Values[i].own(f)
	}
	if s.Equals != nil {
		s.Equals.own(f)
	}
}

func (e *Expr) own(f *diag.File) {
	e.Span.File = f
	for i := range e.Args {
		e.Args[i].own(f)
	}
}

// exact is a copy without room to spare; nil for none.
func exact(statements []*Statement) []*Statement {
	if len(statements) == 0 {
		return nil
	}
	return append(make([]*Statement, 0, len(statements)), statements...)
}
