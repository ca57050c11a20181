package lang

// What to make of braces that do not balance.
//
// A fault inside a line ends with the line, so only a brace too many or too few can
// reach further. Counted alone, a missing } swallows the rest of the file. But plans
// are indented, so their left edges tell the blocks a second time. If the braces do not
// balance, the text is read again, now by its edges, with these rules:
//
//   - A line whose edge is at or left of the edge of an open block's own line stands
//     outside that block: its } is missing.
//   - A line with an edge deeper than that of the plain line before it stands in a block
//     of that line: its { is missing.
//   - A } that begins a line closes the block whose line has the same edge; blocks in
//     between lack theirs. One that ends a line closes a block opened on that line.
//   - Any other } is one too many.
//
// Whichever reading found fewer faults is taken, the edges where both found as many.

import (
	"strings"

	"plancheck/internal/diag"
)

// reading says what makes the blocks.
type reading uint8

const (
	byBraces reading = iota
	byEdges
)

// edges opens and closes the blocks whose braces are missing before the line that
// starts here.
func (b *builder) edges(p piece) {
	if b.skipped > 0 {
		return
	}
	closing := p.kind == aCloser
	keep := len(b.open)
	for keep > 0 {
		o := b.open[keep-1]
		if closing && o.place.edge <= p.edge || !closing && o.place.edge < p.edge {
			break
		}
		keep--
	}
	b.unclosed(keep, p.line)
	if !closing && b.plain.first && p.edge > b.plain.edge {
		b.unopened()
	}
}

// closesByEdge reports whether a } here is that of the innermost block.
func (b *builder) closesByEdge(here place) bool {
	if len(b.open) == 0 {
		return false
	}
	o := b.open[len(b.open)-1].place
	if here.first {
		return o.edge == here.edge
	}
	return o.line == here.line
}

// unclosed ends all open blocks but the outer keep, whose } are missing before the
// line that starts at next. That is one fault of the maker's, said once.
func (b *builder) unclosed(keep, next int) {
	if len(b.open) <= keep {
		return
	}
	inner := b.open[len(b.open)-1]
	brace := inner.statement.Block.Open
	f := fault(int(brace.Start), int(brace.End), "the block of %s is not closed: expected `}` %s",
		quote(name(inner.statement)), whereToClose(inner.place, b.before.place))
	fix := diag.Fix{Title: "write the missing `}`"}
	const most = 8 // places shown
	for n := len(b.open) - 1; n >= keep; n-- {
		o := b.open[n]
		if n < len(b.open)-1 && len(f.Notes) < most {
			f.Notes = append(f.Notes, diag.Note{Span: o.statement.Block.Open, Message: "nor is that of " + quote(name(o.statement))})
		}
		fix.Edits = append(fix.Edits, b.closing(o, next))
		b.faults++
		b.unbalanced++
	}
	for len(b.open) > keep {
		b.open[len(b.open)-1].statement.Faulty = true
		b.pop(diag.Span{})
	}
	fix.Edits = merged(fix.Edits)
	f.Fixes = []diag.Fix{fix}
	b.report(f)
	b.faults--
}

// closing is the edit that closes o before the line that starts at next.
func (b *builder) closing(o opener, next int) diag.Edit {
	if o.place.line == b.before.line {
		return diag.Edit{Span: b.scan.span(b.beforeEnd, b.beforeEnd), Text: " }"}
	}
	text := strings.Repeat(" ", o.place.edge) + "}\n"
	if next == len(b.scan.text) && !strings.HasSuffix(b.scan.text, "\n") {
		text = "\n" + strings.TrimSuffix(text, "\n")
	}
	return diag.Edit{Span: b.scan.span(next, next), Text: text}
}

// merged joins edits in one place to one.
func merged(edits []diag.Edit) []diag.Edit {
	var out []diag.Edit
	for _, e := range edits {
		if n := len(out); n > 0 && out[n-1].Span == e.Span {
			out[n-1].Text += e.Text
			continue
		}
		out = append(out, e)
	}
	return out
}

func whereToClose(opened, last place) string {
	if opened.line == last.line {
		return "on its line"
	}
	return "on a line of its own below it"
}

// unopened opens a block for the last statement, whose { is missing.
func (b *builder) unopened() {
	st := b.lastStatement()
	end := int(st.Span.End)
	f := fault(max(end-1, int(st.Span.Start)), end, "the lines below stand deeper, but %s opens no block: expected `{` behind it", quote(name(st)))
	f.Fixes = []diag.Fix{rewrite(end, end, " {", "`{` behind "+quote(name(st)))}
	b.report(f)
	b.unbalanced++
	st.Faulty = true
	b.openBlock(st, piece{place: b.plain, brace: end})
}

// stray reports a } that closes nothing.
func (b *builder) stray(p piece) {
	b.unbalanced++
	f := fault(p.brace, p.brace+1, "`}` closes nothing here: leave it out, or open a block with `{` before it")
	f.Fixes = []diag.Fix{rewrite(p.brace, p.brace+1, "", "the line without `}`")}
	b.reportBrace(f, p)
}

// name shows which statement is meant: its word and the name behind it.
func name(st *Statement) string {
	switch {
	case st.Word.Text == "":
		return "{"
	case len(st.Values) > 0 && st.Values[0].Op == Name:
		return st.Word.Text + " " + st.Values[0].Text
	}
	return st.Word.Text
}
