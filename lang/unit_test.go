package lang

import (
	"math"
	"testing"
)

// Against the conversion factors of NIST Special Publication 811 (2008), appendix B.8,
// which prints seven figures; quoted from memory.
func TestUnitsAgainstTable(t *testing.T) {
	for _, c := range []struct {
		unit Unit
		want float64
	}{
		{Inch, 2.54e7},
		{Foot, 3.048e8}, // in nanometres
		{Pound, 0.4535924},
		{InchPound, 0.1129848},
		{PoundPerFoot, 1.488164},
		{PoundPerSquareFoot, 47.88026},
		{PoundPerSquareInch, 6894.757},
		{InchOfMercury, 3386.389},
		{PoundPerCubicFoot, 16.01846},
		{KilogramPerSquareMetre, 9.80665},
		{Day, 86400},
	} {
		got := Quantity{Value: NewRat(1, 1), Unit: c.unit}.Base().Float64()
		if math.Abs(got/c.want-1) > 5e-7 {
			t.Errorf("1 %s is %v, not %v", c.unit, got, c.want)
		}
	}
}

// The fixed points of the scales are exact.
func TestFahrenheit(t *testing.T) {
	for _, c := range [][2]int64{{32, 0}, {212, 100}, {-40, -40}, {68, 20}} {
		if got := (Quantity{Value: NewRat(c[0], 1), Unit: Fahrenheit}).Base(); got.Cmp(NewRat(c[1], 1)) != 0 {
			t.Errorf("%dF is %vC, not %dC", c[0], got, c[1])
		}
	}
}

func TestUnitTable(t *testing.T) {
	seen := map[string]bool{}
	for u := range units {
		unit := Unit(u)
		if unit.Dim().String() == "" {
			t.Errorf("unit %d measures nothing", u)
		}
		if unit != Bare && unit != Ratio && unit.String() == "" {
			t.Errorf("unit %d has no name", u)
		}
		for _, name := range units[u].names {
			if seen[name] {
				t.Errorf("%s is two units", name)
			}
			seen[name] = true
			// Each unit is read back behind a number as itself.
			st := sound(t, "size 3"+name).Body[0]
			if got := st.Values[0].Qty; got.Unit != unit || got.Value.String() != "3" {
				t.Errorf("3%s is read as %v %s", name, got.Value, got.Unit)
			}
		}
	}
}
