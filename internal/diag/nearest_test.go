package diag_test

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
)

func TestNearest(t *testing.T) {
	known := []string{"rail", "rail-length", "tail", "stile", "Überhang"}
	tests := []struct{ word, want string }{
		{"rail", "rail"},
		{"rial", "rail"}, // swapped
		{"rai", "rail"},  // one letter lacks
		{"bail", "rail"}, // rail and tail are as near: the first
		{"RAIL-LENGHT", "rail-length"},
		{"railength", "rail-length"},
		{"stiles", "stile"},
		{"überhan", "Überhang"},
		{"drawer", ""},
		{"", ""},
		{strings.Repeat("rail", 1000), ""},
	}
	for _, test := range tests {
		if got := diag.Nearest(test.word, known); got != test.want {
			t.Errorf("Nearest(%q) = %q, want %q", test.word, got, test.want)
		}
	}
}
