package plan

// Workings: the arithmetic behind a finding, set down as a maker would on paper, in figures
// that add up as printed.

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// Show is a size as a maker reads it on the plan's tape, without its unit: `16 13/16`,
// `427`, `0.2362`.
func (p *Plan) Show(l wood.Length) string { return p.Tape.Show(l) }

// ShowSaid is a size as the plan writes it (`6mm`, `27.5`) where it is one written figure
// that a reader of the plan takes for the same length, else as Show has it.
func (p *Plan) ShowSaid(l Length) string {
	said := l.Span.Text()
	if l.How != Written || !writtenFigure().MatchString(said) {
		return p.Show(l.Length)
	}
	bare := said[len(said)-1] <= '9' && said[len(said)-1] >= '0'
	if bare && l.Span.File != p.File {
		return p.Show(l.Length) // that file may have other units
	}
	return strings.Join(strings.Fields(said), " ")
}

// writtenFigure is one number, with a unit or without; sums and names are none.
var writtenFigure = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[0-9.]['"0-9./ \t]*(?:mm|cm|m|in|ft)?$`)
})

// Paper takes down a sum line by line. It works out each result itself, so that no working
// can fail to add up; lengths are those of the piece, and the figures are chosen when all
// lines are there (see wood.Tape.Lines).
type Paper struct {
	tape wood.Tape
	so   wood.Length // what the lines since the last Start come to

	steps []diag.Step
	sums  []column // one for each Start
	bare  bool     // since the last result, more than one line stands: a factor would be misread
}

// column is the lines of one sum. A factor has no size of its own: it is taken down as what it
// adds or takes off, so that the figures round it hold.
type column struct {
	lines []wood.Line
	steps []int // the step in which each line is shown; hidden where it is shown nowhere
}

const hidden = -1

// Paper is an empty sheet for a working in the plan's figures.
func (p *Plan) Paper() *Paper { return &Paper{tape: p.Tape} }

// Start begins a sum with a length.
func (w *Paper) Start(l wood.Length, label string) *Paper {
	w.sums = append(w.sums, column{})
	w.so, w.bare = 0, false
	return w.add(diag.Start, l, label)
}

// Plus adds a length. A negative one is written as taken off.
func (w *Paper) Plus(l wood.Length, label string) *Paper {
	w.bare = true
	if l < 0 {
		return w.add(diag.Minus, l, label)
	}
	return w.add(diag.Plus, l, label)
}

// Minus takes a length off. A negative one is written as added.
func (w *Paper) Minus(l wood.Length, label string) *Paper { return w.Plus(-l, label) }

// Times multiplies all that stands above by n. A sum that has no result yet gets one first.
func (w *Paper) Times(n int, label string) *Paper {
	w.factor(diag.Times, n, label)
	// Taken down as often as it counts, so that the figure shown times n is the result shown.
	const few = 100
	once := w.so
	if n > 0 && n <= few {
		for range n - 1 {
			w.hide(once)
		}
	} else {
		w.hide(once * wood.Length(n-1))
	}
	return w
}

// Over divides all that stands above by n, which is at least 1, to the nearest nanometre.
// A sum that has no result yet gets one first.
func (w *Paper) Over(n int, label string) *Paper {
	n = max(n, 1)
	w.factor(diag.Over, n, label)
	part := (w.so.Abs() + wood.Length(n)/2) / wood.Length(n)
	if w.so < 0 {
		part = -part
	}
	return w.hide(part - w.so)
}

// Equals writes what the lines since Start come to.
func (w *Paper) Equals(label string) *Paper {
	w.bare = false
	w.put(wood.Line{Length: w.so, Total: true}, len(w.steps))
	return w.step(diag.Equals, "", label)
}

// Versus writes what the result is held against. It takes no part in the sum.
func (w *Paper) Versus(l wood.Length, label string) *Paper {
	return w.step(diag.Versus, w.tape.Show(l), label)
}

// Remark writes a line of words.
func (w *Paper) Remark(text string) *Paper { return w.step(diag.Start, "", text) }

// Result is what the lines since Start come to.
func (w *Paper) Result() wood.Length { return w.so }

// Working is the finished sheet. A last result that is off the mark has the nearest mark
// beside it.
func (w *Paper) Working() diag.Working {
	steps := slices.Clone(w.steps)
	last, result := hidden, wood.Length(0)
	for _, sum := range w.sums {
		for i, shown := range w.tape.Lines(sum.lines...) {
			at := sum.steps[i]
			if at == hidden {
				continue
			}
			if steps[at].Op == diag.Plus || steps[at].Op == diag.Minus {
				shown = strings.TrimPrefix(shown, "-")
			}
			steps[at].Value = shown
			if sum.lines[i].Total {
				last, result = at, sum.lines[i].Length
			}
		}
	}
	if last != hidden && !w.tape.OnMark(result) {
		about := "≈ " + w.tape.Nearest(result)
		steps[last].Label = strings.TrimSpace(steps[last].Label + " " + about)
	}
	return steps
}

func (w *Paper) add(op diag.Op, l wood.Length, label string) *Paper {
	w.so += l
	w.put(wood.Line{Length: l}, len(w.steps))
	return w.step(op, "", label)
}

func (w *Paper) factor(op diag.Op, n int, label string) {
	if w.bare {
		w.Equals("")
	}
	w.step(op, strconv.Itoa(n), label)
	w.bare = true
}

func (w *Paper) hide(l wood.Length) *Paper {
	w.so += l
	w.put(wood.Line{Length: l}, hidden)
	return w
}

func (w *Paper) put(l wood.Line, step int) {
	if len(w.sums) == 0 {
		w.sums = append(w.sums, column{})
	}
	s := &w.sums[len(w.sums)-1]
	s.lines = append(s.lines, l)
	s.steps = append(s.steps, step)
}

func (w *Paper) step(op diag.Op, value, label string) *Paper {
	w.steps = append(w.steps, diag.Step{Op: op, Value: value, Label: label})
	return w
}
