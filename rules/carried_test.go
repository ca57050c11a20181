package rules

import (
	"math"
	"math/rand/v2"
	"testing"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// The ladder problem: round a turn from a into b goes what is no thicker than nothing and no longer than
// (a^(2/3) + b^(2/3))^(3/2); 101.8 where both are 36.
func TestLongestRoundThin(t *testing.T) {
	for _, turn := range []struct{ from, into float64 }{{36, 36}, {36, 34}, {48, 30}, {27, 40}} {
		want := math.Pow(math.Cbrt(turn.from*turn.from)+math.Cbrt(turn.into*turn.into), 1.5)
		got := float64(longestRound(inches(turn.from), inches(turn.into), 0)) / float64(wood.Inch)
		if math.Abs(got-want) > 0.001 {
			t.Errorf("from %g into %g: %.3f, the formula says %.3f", turn.from, turn.into, got, want)
		}
	}
	if got := float64(longestRound(inches(36), inches(36), 0)) / float64(wood.Inch); math.Abs(got-101.8) > 0.05 {
		t.Errorf("from 36 into 36: %.3f, want 101.8", got)
	}
}

func inches(n float64) wood.Length { return wood.Length(n * float64(wood.Inch)) }

// Held against a simulation that knows no formula: at each angle a rectangle is tried in many places between the
// outer walls, and must somewhere keep clear of the corner.
func TestLongestRoundByBruteForce(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 12 {
		from, into := 24+random.Float64()*30, 24+random.Float64()*30
		thick := 1 + random.Float64()*(min(from, into)-4)
		longest := float64(longestRound(inches(from), inches(into), inches(thick))) / float64(wood.Inch)
		if !goesRound(longest*0.985, thick, from, into) {
			t.Errorf("%.2f x %.2f does not go round from %.2f into %.2f, and is to be no longer than %.2f", longest*0.985, thick, from, into, longest)
		}
		if goesRound(longest*1.015, thick, from, into) {
			t.Errorf("%.2f x %.2f goes round from %.2f into %.2f, and is to be no longer than %.2f", longest*1.015, thick, from, into, longest)
		}
	}
}

// goesRound pushes a rectangle through every angle. The outer walls are the axes, and the corner is at (from, into):
// what lies beyond it in both directions is wall.
func goesRound(long, thick, from, into float64) bool {
	const angles, places = 360, 40
	for i := 1; i < angles; i++ {
		sin, cos := math.Sincos(float64(i) / angles * math.Pi / 2)
		fits := false
		for x := 0; x < places && !fits; x++ {
			for y := 0; y < places && !fits; y++ {
				// Its lowest corner of the left side touches neither wall by more than this.
				fits = clear(long, thick, sin, cos, float64(x)/10, float64(y)/10, from, into)
			}
		}
		if !fits {
			return false
		}
	}
	return true
}

// clear reports whether a rectangle that leans against the outer walls, so far from each, keeps clear of the corner.
// It slopes down from the left: its long side runs from (0, long sin) to (long cos, 0).
func clear(long, thick, sin, cos, fromLeft, fromFloor, from, into float64) bool {
	const steps = 400
	for i := range steps + 1 { // along the side that looks to the corner
		along := long * float64(i) / steps
		x := fromLeft + along*cos + thick*sin
		y := fromFloor + (long-along)*sin + thick*cos
		if x > from && y > into {
			return false
		}
	}
	return true
}

// A stair of 42 degrees with 76 above its nosings leaves 56.5 square to the slope.
func TestClimbs(t *testing.T) {
	for _, test := range []struct {
		size [3]float64
		goes bool
	}{
		{[3]float64{24, 48, 84}, true},
		{[3]float64{24, 55, 84}, true},
		{[3]float64{24, 56, 84}, false}, // 55.5 less than an inch
		{[3]float64{20, 24, 57}, true},
		{[3]float64{30, 40, 60}, false}, // wider than the stair
	} {
		var size [3]wood.Length
		for i, s := range test.size {
			size[i] = inches(s)
		}
		if got := climbs(size, stairOf(30, 76, 42), wood.Inch); got != test.goes {
			t.Errorf("%v goes up: %t, want %t", test.size, got, test.goes)
		}
	}
}

func stairOf(wide, head, pitch float64) *plan.Stair {
	known := func(n float64) plan.Length { return plan.Length{Length: inches(n), How: plan.Written} }
	return &plan.Stair{Wide: known(wide), Head: known(head), Pitch: plan.Figure{Value: pitch, How: plan.Written}}
}
