package rules

import (
	"math"
	"testing"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

func TestSignificant(t *testing.T) {
	for _, c := range []struct {
		v       float64
		figures int
		want    string
	}{
		{3.24, 2, "3.2"},
		{0.0416, 2, "0.042"},
		{149.7, 2, "150"},
		{1950.4, 3, "1950"},
		{1299.9, 3, "1300"},
		{0, 3, "0"},
	} {
		if got := significant(c.v, c.figures); got != c.want {
			t.Errorf("%v to %d figures is %s, not %s", c.v, c.figures, got, c.want)
		}
	}
}

// What leans hard is no power of ten.
func TestAPullInWords(t *testing.T) {
	for _, c := range []struct {
		metric  bool
		newtons float64
		want    string
	}{
		{false, 3.2 * wood.PoundForce, "3.2lb"},
		{false, 150 * wood.PoundForce, "150lb"},
		{true, 22.5, "22.5N"},
		{true, 1300, "1300N"},
	} {
		if got := pull(&plan.Plan{Tape: wood.Tape{Metric: c.metric}}, c.newtons); got != c.want {
			t.Errorf("%v N is said as %s, not %s", c.newtons, got, c.want)
		}
	}
}

// The shelf's units are those that plans are read in.
func TestUnitsAgree(t *testing.T) {
	for unit, want := range map[lang.Unit]float64{
		lang.Pound: wood.Pound, lang.InchPound: wood.InchPound, lang.PoundPerSquareInch: wood.PSI, lang.Inch: float64(wood.Inch),
	} {
		got := lang.Quantity{Value: lang.NewRat(1, 1), Unit: unit}.Base().Float64()
		if math.Abs(got/want-1) > 1e-12 {
			t.Errorf("1 %s is %v in a plan and %v on the shelf", unit, got, want)
		}
	}
}
