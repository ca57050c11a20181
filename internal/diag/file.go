package diag

import (
	"sort"
	"unicode/utf8"
)

// File is a plan's text under the name by which a person knows it.
type File struct {
	Name string
	Text string

	lines []int32 // offset of the start of each line
	marks []mark  // in lines longer than stride, in order
}

// mark is a place inside a long line and its column, from 0. Marks stand about a stride apart, so
// that a column is never counted over more, however long the line and many the places.
type mark struct{ offset, column int32 }

const stride = 1 << 12

// NewFile takes in a text. Text beyond 2 GB is the caller's to refuse.
func NewFile(name, text string) *File {
	f := &File{Name: name, Text: text}
	f.lines = append(f.lines, 0)
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			f.markLine(i)
			f.lines = append(f.lines, int32(i+1))
		}
	}
	f.markLine(len(text))
	return f
}

// markLine sets marks in the last line, which ends at end.
func (f *File) markLine(end int) {
	at, column := int(f.lines[len(f.lines)-1]), 0
	for end-at > stride {
		next := wholeRunes(f.Text, at+stride)
		column += utf8.RuneCountInString(f.Text[at:next])
		f.marks = append(f.marks, mark{int32(next), int32(column)})
		at = next
	}
}

// Position is the line and column of a byte offset, both from 1. Columns count code
// points; a byte that is not UTF-8 counts as one.
func (f *File) Position(offset int) (line, column int) {
	offset = min(max(offset, 0), len(f.Text))
	line = sort.Search(len(f.lines), func(i int) bool { return int(f.lines[i]) > offset })
	from := mark{offset: f.lines[line-1]}
	if i := sort.Search(len(f.marks), func(i int) bool { return int(f.marks[i].offset) > offset }); i > 0 && f.marks[i-1].offset > from.offset {
		from = f.marks[i-1]
	}
	return line, int(from.column) + utf8.RuneCountInString(f.Text[from.offset:offset]) + 1
}

// wholeRunes is the last place up to at that is within no code point.
func wholeRunes(text string, at int) int {
	for back := 1; back < utf8.UTFMax && !utf8.RuneStart(text[at-back+1]); back++ {
		if _, size := utf8.DecodeRuneInString(text[at-back:]); size > back {
			return at - back
		}
	}
	return at
}

// Line is the text of a line, counted from 1, without its end; "" beyond the file.
func (f *File) Line(n int) string {
	if n < 1 || n > len(f.lines) {
		return ""
	}
	start, end := int(f.lines[n-1]), len(f.Text)
	if n < len(f.lines) {
		end = int(f.lines[n]) - 1
	}
	if end > start && f.Text[end-1] == '\r' {
		end--
	}
	return f.Text[start:end]
}

// Span is a stretch of a file's text, from Start to before End. The zero Span is nowhere.
type Span struct {
	File       *File
	Start, End int32
}

// Known reports whether the span is anywhere at all.
func (s Span) Known() bool { return s.File != nil }

// Text is what the span covers.
func (s Span) Text() string {
	if s.File == nil {
		return ""
	}
	return s.File.Text[s.Start:s.End]
}

// Position is the line and column where the span starts; 0, 0 if it is nowhere.
func (s Span) Position() (line, column int) {
	if s.File == nil {
		return 0, 0
	}
	return s.File.Position(int(s.Start))
}

// To is the span from the start of s to the end of t.
func (s Span) To(t Span) Span {
	if s.File == nil {
		return t
	}
	if t.File == s.File && t.End > s.End {
		s.End = t.End
	}
	return s
}
