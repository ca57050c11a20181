package plan_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// A leaf of 3/4 on a pin 3/16 proud, over the middle of a gap of 1/16. Open so far, its back corner at the hinge stands
// (T + p) sin a - e (1 - cos a) in from its own edge, T the leaf, p and e how far the pin is before it and beyond it: 0.906 at 90
// degrees, 0.839 at 110. Of the opening it covers the gap more. Worked out by hand.
func TestSwingCovers(t *testing.T) {
	s := plan.Swing{Proud: 3 * wood.Inch / 16, Out: wood.Inch / 32, Thick: 3 * wood.Inch / 4, Wide: 10 * wood.Inch, Gap: wood.Inch / 16}
	for _, c := range []struct{ opens, covers float64 }{
		{90, 0.906 + 0.0625},
		{110, 0.839 + 0.0625},
		{180, 0},
		{60, 5.8587}, // the free edge: (10 + 1/32) cos 60 + (3/4 + 3/16) sin 60 - 1/32 + 1/16
	} {
		s.Opens = plan.Figure{Value: c.opens, How: plan.Written}
		if got := s.Covers().Inches(); math.Abs(got-c.covers) > 0.0006 {
			t.Errorf("open %g: covers %.4f, want %.4f", c.opens, got, c.covers)
		}
	}
}

// Whatever the pin and the angle, no point of the leaf stands farther in than is said, and one stands so far.
func TestSwingCoversEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string, low, high int) wood.Length {
			return wood.Length(rapid.IntRange(low, high).Draw(t, label)) * wood.Millimetre
		}
		s := plan.Swing{
			Proud: draw("proud", -10, 8), Out: draw("out", -12, 4), Thick: draw("thick", 12, 40), Wide: draw("wide", 150, 700), Gap: draw("gap", 0, 4),
			Opens: plan.Figure{Value: float64(rapid.IntRange(1, 180).Draw(t, "opens")), How: plan.Written},
		}
		const steps = 50
		farthest := wood.Length(0)
		for i := range wood.Length(steps + 1) {
			for j := range wood.Length(steps + 1) {
				x, _ := s.Corner(s.Wide*i/steps, s.Thick*j/steps, s.Opens.Value)
				farthest = max(farthest, x+s.Gap)
			}
		}
		if got := s.Covers(); !wood.Same(got, farthest) {
			t.Fatalf("covers %d, but a point of the leaf stands %d in", got, farthest)
		}
	})
}
