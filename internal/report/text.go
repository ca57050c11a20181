package report

// Findings as a maker reads them in a terminal.

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"plancheck/internal/diag"
)

// Text writes findings for people, a blank line between them, and a last line that counts:
//
//	cabinet.plan:76:7: error: rail "head" is cut 14 5/16 but must be 16 13/16 [rail-length]
//	    14 5/16          between shoulders
//	  +  1 1/4           tenon into hinge-side
//	  +  1 1/4           tenon into latch-side
//	  = 16 13/16         needed
//	  see cabinet.plan:71:10: the tenons are said here
//	  mend: write `cut 16 13/16`
//
//	1 error in 1 file
//
// Lines and columns count from 1, columns in characters. In colour the text is the same.
func Text(w io.Writer, o *Outcome, colored bool) error {
	p := printer{w: bufio.NewWriterSize(w, 1<<16), ink: newInk(colored)}
	for i := range o.Findings {
		p.finding(&o.Findings[i])
		p.line()
	}
	if sum := o.Summary(); len(o.Findings)+len(o.Failures) == 0 {
		p.line(on(p.good, sum))
	} else {
		p.line(on(p.strong, sum))
	}
	return p.w.Flush()
}

// Findings writes findings alone, without the line that counts.
func Findings(w io.Writer, findings []diag.Finding, colored bool) error {
	p := printer{w: bufio.NewWriter(w), ink: newInk(colored)}
	for i := range findings {
		if i > 0 {
			p.line()
		}
		p.finding(&findings[i])
	}
	return p.w.Flush()
}

type printer struct {
	w *bufio.Writer // holds the first error, which Flush gives back
	ink
}

func (p *printer) line(parts ...string) {
	for _, s := range parts {
		p.w.WriteString(s)
	}
	p.w.WriteByte('\n')
}

func (p *printer) finding(f *diag.Finding) {
	p.line(on(p.faint, place(f.Span)), on(p.severity[f.Severity], f.Severity.String()), ": ",
		Plain(f.Message), " ", on(p.faint, "["+Plain(f.Rule)+"]"))
	p.below(f)
}

// below is what stands under a finding's first line.
func (p *printer) below(f *diag.Finding) {
	p.working(f.Working)
	for _, n := range f.Notes {
		if n.Span.Known() {
			p.line("  see ", on(p.faint, place(n.Span)), Plain(n.Message))
		} else {
			p.line("  note: ", Plain(n.Message))
		}
	}
	lead := "  mend: "
	for _, fix := range f.Fixes {
		p.line(on(p.mend, lead), Plain(fix.Title))
		lead = "    or: "
	}
}

// place is "cabinet.plan:76:7: ", or nothing for a finding that is nowhere.
func place(s diag.Span) string {
	if !s.Known() {
		return ""
	}
	line, col := s.Position()
	return fmt.Sprintf("%s:%d:%d: ", Plain(s.File.Name), line, col)
}

// labelsAt is where the labels of a working begin, counted from its figures: beside any
// figure that a tape has, so that the labels of one finding stand under those of another.
const labelsAt = 17

// A sum of more lines than anyone reads is shown by its ends.
const (
	longSum = 60
	atStart = 20
	atEnd   = 10
)

func (p *printer) working(w diag.Working) {
	figures := make([]string, len(w))
	for i, s := range w {
		figures[i] = Plain(s.Value)
	}
	figures, width := column(figures)
	width = max(width+2, labelsAt)
	for i := 0; i < len(w); i++ {
		if i == atStart && len(w) > longSum {
			i = len(w) - atEnd
			p.line("    … and ", strconv.Itoa(i-atStart), " lines more")
		}
		p.step(w[i], figures[i], width)
	}
}

func (p *printer) step(s diag.Step, figure string, width int) {
	sign, label := pad(s.Op.Sign(), 1), Plain(s.Label)
	switch {
	case s.Value == "":
		p.line("  ", sign, " ", label)
	case s.Op == diag.Equals:
		p.line("  ", sign, " ", on(p.strong, figure), gap(figure, label, width))
	default:
		p.line("  ", sign, " ", figure, gap(figure, label, width))
	}
}

// gap is what follows a figure: blanks as far as the labels, and the label.
func gap(figure, label string, width int) string {
	if label == "" {
		return ""
	}
	return strings.TrimPrefix(pad(figure, width), figure) + label
}
