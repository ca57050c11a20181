package rules

import (
	"maps"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// Every strip is cut, no leaf gives more than its length, and no way of cutting does with fewer leaves than the least.
func TestLeavesAreCutUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		skin := &plan.Material{Long: plan.Length{Length: wood.Length(rapid.IntRange(300, 3000).Draw(t, "leaf")) * wood.Millimetre}}
		lengths := rapid.SliceOfN(rapid.IntRange(50, int(skin.Long.Length/wood.Millimetre)), 1, 12).Draw(t, "lengths")
		want := make(map[wood.Length]int)
		var all []laid
		const usable = 100 * wood.Millimetre
		for _, n := range lengths {
			l := laid{long: wood.Length(n) * wood.Millimetre, plies: 1, pieces: rapid.IntRange(1, 30).Draw(t, "pieces"), full: 1}
			want[l.long] += l.pieces
			all = append(all, l)
		}
		out := cutUp(skin, maps.Clone(want))
		leaves, got := 0, make(map[wood.Length]int)
		for _, c := range out.Cuts {
			leaves += c.Leaves
			sum := wood.Length(0)
			for _, s := range c.Strips {
				got[s.Long] += c.Leaves * s.Times
				sum += wood.Length(s.Times) * s.Long
			}
			if wood.Over(sum, skin.Long.Length) {
				t.Fatalf("%v is cut from a leaf of %v", sum, skin.Long.Length)
			}
		}
		if !maps.Equal(got, want) || leaves != out.Leaves {
			t.Fatalf("%v are cut, from %d leaves of %d; want %v", got, leaves, out.Leaves, want)
		}
		if least := leastLeaves(all, usable, skin.Long.Length); least > out.Leaves {
			t.Fatalf("%d leaves at the least, and %d do", least, out.Leaves)
		}
	})
}
