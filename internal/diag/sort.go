package diag

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Sort puts findings in reading order: by file name, place, then rule and message.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			strings.Compare(a.Span.name(), b.Span.name()),
			cmp.Compare(a.Span.Start, b.Span.Start),
			cmp.Compare(a.Span.End, b.Span.End),
			strings.Compare(a.Rule, b.Rule),
			strings.Compare(a.Message, b.Message),
		)
	})
}

func (s Span) name() string {
	if s.File == nil {
		return ""
	}
	return s.File.Name
}

// Apply makes the edits in a file's text. Edits that belong to another file, overlap
// or lie outside the text are an error, and nothing is changed.
func Apply(f *File, edits []Edit) (string, error) {
	edits = slices.Clone(edits)
	slices.SortStableFunc(edits, func(a, b Edit) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	var out strings.Builder
	at := int32(0)
	for _, e := range edits {
		if e.Span.File != f || e.Span.Start < at || e.Span.End < e.Span.Start || int(e.Span.End) > len(f.Text) {
			return "", fmt.Errorf("%s: edits overlap or lie outside the text", f.Name)
		}
		out.WriteString(f.Text[at:e.Span.Start])
		out.WriteString(e.Text)
		at = e.Span.End
	}
	out.WriteString(f.Text[at:])
	return out.String(), nil
}
