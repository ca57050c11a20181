package diag

import (
	"strings"
	"unicode/utf8"
)

// longestNear bounds what Nearest takes the trouble to compare.
const longestNear = 64

// Nearest is the one of the known words that a word is most likely meant to be, for "did
// you mean"; "" where none is near. Case does not matter; of equals the first wins. Near
// means that at most a third of the letters need changing, two neighbours swapped
// counting as one change.
func Nearest(word string, known []string) string {
	want := []rune(strings.ToLower(word))
	if len(want) > longestNear {
		return ""
	}
	best, least := "", max(1, len(want)/3)+1
	for _, k := range known {
		if n := utf8.RuneCountInString(k) - len(want); max(n, -n) >= least {
			continue
		}
		if n := changes(want, []rune(strings.ToLower(k)), least); n < least {
			best, least = k, n
		}
	}
	return best
}

// changes is how many letters to insert, drop, replace or swap with their neighbour turn
// a into b; limit if it is that many or more.
func changes(a, b []rune, limit int) int {
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		next[0] = i + 1
		for j := range b {
			n := row[j]
			if a[i] != b[j] {
				n++
			}
			n = min(n, row[j+1]+1, next[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				n = min(n, before[j-1]+1)
			}
			next[j+1] = n
		}
		before, row, next = row, next, before
	}
	return min(row[len(b)], limit)
}
