package diag_test

import (
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"pgregory.net/rapid"

	"plancheck/internal/diag"
)

// A place is counted as it would be by hand, in lines short and long, whatever the bytes.
func TestPositionCountsCharacters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		piece := rapid.SampledFrom([]string{"a", "\n", "½", "棚", "\U0001fab5", "\xff", "\x82", "\xf0\x9f", strings.Repeat("b", 4090), strings.Repeat("\x9f", 4097)})
		text := strings.Join(rapid.SliceOfN(piece, 0, 40).Draw(t, "pieces"), "")
		f := diag.NewFile("a.plan", text)
		at := rapid.IntRange(0, len(text)).Draw(t, "at")
		line, column := f.Position(at)
		before := text[:at]
		start := strings.LastIndexByte(before, '\n') + 1
		if wantLine, wantColumn := strings.Count(before, "\n")+1, utf8.RuneCountInString(text[start:at])+1; line != wantLine || column != wantColumn {
			t.Fatalf("byte %d is at %d:%d, want %d:%d", at, line, column, wantLine, wantColumn)
		}
	})
}

// A byte that belongs to no code point stands where marks are set, behind one of four bytes.
func TestPositionBehindStrayBytes(t *testing.T) {
	for before := 4085; before <= 4100; before++ {
		text := strings.Repeat("b", before) + "\U0001fab5" + strings.Repeat("\x9f", 20)
		f := diag.NewFile("a.plan", text)
		for at := range len(text) {
			if _, column := f.Position(at); column != utf8.RuneCountInString(text[:at])+1 {
				t.Fatalf("after %d letters, byte %d is in column %d, want %d", before, at, column, utf8.RuneCountInString(text[:at])+1)
			}
		}
	}
}

// A text without line ends and with a place at every word takes no longer for its length.
func TestPositionInOneLongLine(t *testing.T) {
	f := diag.NewFile("a.plan", strings.Repeat("½ a;", 4<<20))
	start := time.Now()
	for at := 0; at < len(f.Text); at += 64 {
		f.Position(at)
	}
	if took := time.Since(start); took > 10*time.Second {
		t.Errorf("took %v", took)
	}
}
