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
