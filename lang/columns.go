package lang

// Columns: adjacent lines are written with their words, their names and their first
// values below each other, and with the comments behind them. A blank line, a comment
// on its own line and a block of several lines end a group of lines.
//
//	rail  head 2 1/4 cut 14 5/16  # a slip
//	panel field { of walnut ; float }
//	rail  foot 3     cut 16 13/16
//
// The words of a group always line up. Names line up where they are followed by a size
// or a block, as here, or by something else behind one and the same word (`build left
// from …`, `let gap = …`).

import (
	"strings"
	"unicode/utf8"
)

// row is a line in waiting: up to three cells that may be padded, then the rest.
type row struct {
	depth   int
	word    string
	name    string // of what the line declares, if something follows it
	size    string // a number behind the name, if something follows it
	rest    string
	shape   shape
	comment string
}

// shape says with which neighbours a row shares its columns.
type shape uint8

const (
	other    shape = iota // no name
	bare                  // a word and a name: fits in anywhere
	declares              // a name, then a number or a block
	says                  // a name, then something else
)

func (r row) String() string {
	var cells []string
	for _, cell := range [...]string{r.word, r.name, r.size, r.rest} {
		if cell != "" {
			cells = append(cells, cell)
		}
	}
	return strings.Join(cells, " ")
}

// row is the line of statements that share one.
func (p *printer) row(statements []*Statement, depth int) row {
	st := statements[0]
	r := row{depth: depth, word: st.Word.Text}
	parts := p.parts(st, depth)[1:]
	if st.Block != nil {
		parts = append(parts, p.inline(st.Block, depth))
	}
	if st.Times == nil && len(st.Values) > 0 && isName(&st.Values[0]) {
		switch {
		case len(parts) == 1:
			r.shape = bare
		case len(st.Values) > 1 && st.Values[1].Op == Number:
			r.shape, r.name, parts = declares, parts[0], parts[1:]
			if len(parts) > 1 {
				r.size, parts = parts[0], parts[1:]
			}
		case len(st.Values) == 1 && st.Block != nil:
			r.shape, r.name, parts = declares, parts[0], parts[1:]
		default:
			r.shape, r.name, parts = says, parts[0], parts[1:]
		}
	}
	r.rest = strings.Join(parts, " ")
	for _, st := range statements[1:] {
		r.rest += " ; " + p.line(st, depth)
	}
	if r.rest == "" {
		r.word, r.rest = "", r.word
	}
	return r
}

// isName reports whether a value names what its line declares: `leg`, or `leg x 4`.
func isName(e *Expr) bool {
	return e.Op == Name || e.Op == Sized && e.Args[0].Op == Name
}

// add puts a row behind those in waiting. One that breaks into several lines stands
// by itself.
func (p *printer) add(r row) {
	if strings.Contains(r.rest+r.name+r.size, "\n") {
		p.flush()
		p.rows = append(p.rows, r)
		p.flush()
		return
	}
	p.rows = append(p.rows, r)
}

// blank writes a blank line, which ends a group.
func (p *printer) blank() {
	p.flush()
	p.out.WriteByte('\n')
}

// flush writes the rows in waiting, lined up.
func (p *printer) flush() {
	rows := p.rows
	p.rows = p.rows[:0]
	pad(rows, func(r *row) *string { return &r.word }, func(a, b *row) bool { return true })
	pad(rows, func(r *row) *string { return &r.name }, nameColumn)
	pad(rows, func(r *row) *string { return &r.size }, nameColumn)
	margin := 0
	lines := make([]string, len(rows))
	for i, r := range rows {
		lines[i] = r.String()
		if r.comment != "" {
			margin = max(margin, width(lines[i]))
		}
	}
	for i, r := range rows {
		p.out.WriteString(strings.Repeat(" ", indent*r.depth))
		p.out.WriteString(lines[i])
		if r.comment != "" {
			last := lines[i][strings.LastIndexByte(lines[i], '\n')+1:]
			p.out.WriteString(strings.Repeat(" ", max(0, margin-width(last))))
			p.out.WriteString("  ")
			p.out.WriteString(r.comment)
		}
		p.out.WriteByte('\n')
	}
}

// nameColumn reports whether two rows share the columns of name and size.
func nameColumn(a, b *row) bool {
	return a.shape == declares && b.shape == declares || a.shape == says && b.shape == says && a.word == b.word
}

// pad brings a cell to one width in each run of rows that belong together. Bare rows
// belong to every run, empty cells stay empty.
func pad(rows []row, cell func(*row) *string, together func(a, b *row) bool) {
	for start := 0; start < len(rows); {
		end, last, wide := start+1, &rows[start], width(*cell(&rows[start]))
		for end < len(rows) {
			next := &rows[end]
			if next.shape != bare || last.shape == bare {
				if last.shape != bare && !together(last, next) {
					break
				}
				last = next
			}
			wide = max(wide, width(*cell(next)))
			end++
		}
		for i := start; i < end; i++ {
			if c := cell(&rows[i]); *c != "" {
				*c += strings.Repeat(" ", wide-width(*c))
			}
		}
		start = end
	}
}

func width(s string) int { return utf8.RuneCountInString(s) }
