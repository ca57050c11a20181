package lang

// From the text to the tree: lines are parsed one by one, a stack makes the blocks.

import "plancheck/internal/diag"

// Parse reads a plan. It never fails: what cannot be read is a finding of the rule
// Syntax, one for each broken line, and everything else is in the tree. A statement
// whose line is broken stays in the tree as far as it was understood (its word, the
// values before the fault, its block) and is marked Faulty; its Word is empty where
// not even that could be read. Time and memory grow with the length of the text.
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

	place     place // of the statement or brace read last
	lastPlain place // of the last statement of the innermost block, if it began a line and opened no block

	strayLine int // where the last } that closes nothing was reported: one more than the offset of its line

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

// place is where a statement or a brace stands, as far as it matters for blocks.
type place struct {
	line  int  // offset of the start of its line
	edge  int  // how far its line is indented
	first bool // nothing stands before it on its line
	end   int  // offset behind it
}

func newBuilder(f *diag.File, r reading) *builder {
	return &builder{scan: newScanner(f), read: r, tree: &Tree{File: f}}
}

func (b *builder) run() {
	s := b.scan
	for s.rest() {
		here := place{line: s.lineStart, edge: s.edge, first: s.first}
		if b.read == byEdges && here.first {
			b.edges(here)
		}
		if s.text[s.at] == '}' {
			s.at++
			s.first = false
			here.end = s.at
			b.close(here)
			b.place = here
			continue
		}
		b.line(here)
	}
	b.unclosed(0, len(s.text))
	b.tree.Body = exact(b.pending)
}

// line takes in the statement that starts here.
func (b *builder) line(here place) {
	s := b.scan
	ended := s.statement()
	if s.count == 0 && ended == atOpen && b.adopt(here) {
		return
	}
	l, _ := grammar.ParseFromLexer(s.window) // a fault is in the line
	st := &l.Statement
	st.own(s.file)
	if l.fault != nil && b.skipped == 0 {
		own(l.fault, s.file)
		b.report(l.fault)
	}
	here.end = int(st.Span.End)
	b.place = here
	if b.skipped == 0 {
		b.pending = append(b.pending, st)
	}
	if ended == atOpen {
		b.place.end = s.at
		b.openBlock(st, here, s.span(s.at-1, s.at))
		return
	}
	b.lastPlain = here
}

// adopt gives a brace that stands on a line of its own to the statement before it.
func (b *builder) adopt(here place) bool {
	st := b.lastStatement()
	if st == nil || st.Block != nil || b.skipped > 0 || !here.first {
		return false
	}
	brace := b.scan.span(b.scan.at-1, b.scan.at)
	f := fault(int(brace.Start), int(brace.End), "`{` stands on the line of what it opens, such as `case carcass {`")
	end := int(st.Span.End)
	f.Fixes = []diag.Fix{rewrite(end, end, " {", "`{` behind "+quote(st.Head().Text()))}
	f.Fixes[0].Edits = append(f.Fixes[0].Edits, diag.Edit{Span: brace})
	own(f, b.scan.file)
	b.report(f)
	st.Faulty = true
	here.end = b.scan.at
	b.place = here
	b.openBlock(st, here, brace)
	return true
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

func (b *builder) openBlock(st *Statement, here place, brace diag.Span) {
	b.lastPlain = place{}
	if b.skipped > 0 {
		b.skipped++
		return
	}
	st.Block = &Block{Open: brace}
	st.Span.End = max(st.Span.End, brace.End)
	if len(b.open) == maxDepth {
		b.skipped = 1
		st.Faulty = true
		f := fault(int(brace.Start), int(brace.End), "blocks stand at most %d deep: what is inside this one is not read", maxDepth)
		own(f, b.scan.file)
		b.report(f)
		return
	}
	b.open = append(b.open, opener{statement: st, place: here, body: len(b.pending)})
}

// close takes in a closing brace.
func (b *builder) close(here place) {
	b.lastPlain = place{}
	if b.skipped > 0 {
		if b.skipped--; b.skipped == 0 {
			st := b.lastStatement()
			st.Block.Close = b.scan.span(here.end-1, here.end)
			st.Span.End = int32(here.end)
		}
		return
	}
	if b.read == byEdges && !b.closesByEdge(here) || len(b.open) == 0 {
		b.stray(here)
		return
	}
	b.pop(b.scan.span(here.end-1, here.end))
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
	b.lastPlain = place{}
}

func (b *builder) report(f *diag.Finding) {
	b.found = append(b.found, *f)
	b.faults++
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
