package rules

import (
	"math"
	"math/rand/v2"
	"testing"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// A lid's stay held against its two points drawn at every angle.
func TestStaysByDrawing(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	length := func(least, most float64) plan.Length {
		return plan.Length{Length: wood.Length((least + random.Float64()*(most-least)) * float64(wood.Inch)), How: plan.Written}
	}
	for range 2000 {
		opens := 20 + random.Float64()*150
		stay := &plan.Stay{Lid: length(2, 12), Case: plan.Pair{Across: length(-4, 10), Deep: length(-3, 12)}}
		s := stayed{Door: &plan.Door{Opens: plan.Figure{Value: opens, How: plan.Written}}, use: &plan.HardwareUse{Stay: stay}}
		near, far := math.Inf(1), 0.0
		for step := range 1001 {
			sin, cos := math.Sincos(opens * float64(step) / 1000 * math.Pi / 180)
			// The shut lid runs along x; it opens upwards, and the case lies below.
			d := math.Hypot(stay.Lid.Inches()*cos-stay.Case.Across.Inches(), stay.Lid.Inches()*sin+stay.Case.Deep.Inches())
			near, far = min(near, d), max(far, d)
		}
		if got := s.apart(s.farthest()).Inches(); math.Abs(got-far) > 1e-4 {
			t.Errorf("%+v open by %g: farthest %g, drawn %g", stay, opens, got, far)
		}
		if got := s.apart(s.nearest()).Inches(); math.Abs(got-near) > 0.02 || got > near+1e-6 {
			t.Errorf("%+v open by %g: nearest %g, drawn %g", stay, opens, got, near)
		}
	}
}
