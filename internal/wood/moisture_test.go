package wood

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The Fahrenheit form of Eq. 4-5, coefficients from memory: a second way to the same table.
func equilibriumFahrenheit(f, humidity float64) float64 {
	w := 330 + 0.452*f + 0.00415*f*f
	k := 0.791 + 0.000463*f - 0.000000844*f*f
	k1 := 6.34 + 0.000775*f - 0.0000935*f*f
	k2 := 1.09 + 0.0284*f - 0.0000904*f*f
	return hailwoodHorrobin(humidity/100, w, k, k1, k2)
}

func celsius(f float64) float64 { return (f - 32) * 5 / 9 }

// TestEquilibriumTable holds both forms against every cell of Table 4-2 from 30 to 130 F. It is
// printed to a tenth, so 0.05 of the difference is its rounding.
func TestEquilibriumTable(t *testing.T) {
	const (
		cells         = 193   // read from the table
		limit         = 0.055 // Celsius form
		limitF        = 0.065 // Fahrenheit form
		betweenForms  = 0.013
		meanDeviation = 0.025
	)
	count, sum := 0, 0.0
	for r := range table("emc.csv") {
		f, humidity, want := r.number("temp_F"), r.number("rh_pct"), r.number("emc_pct")
		got, gotF := Equilibrium(celsius(f), humidity), equilibriumFahrenheit(f, humidity)
		if math.Abs(got-want) > limit {
			t.Errorf("%v F, %v %%: %.3f, want %v", f, humidity, got, want)
		}
		if r.status("status") == Memory { // checked, but no evidence
			continue
		}
		if math.Abs(gotF-want) > limitF {
			t.Errorf("Fahrenheit form, %v F, %v %%: %.3f, want %v", f, humidity, gotF, want)
		}
		if math.Abs(got-gotF) > betweenForms+1e-3 {
			t.Errorf("%v F, %v %%: the forms give %.4f and %.4f", f, humidity, got, gotF)
		}
		count++
		sum += math.Abs(got - want)
	}
	if count != cells {
		t.Errorf("%d cells, want %d", count, cells)
	}
	if mean := sum / float64(count); mean > meanDeviation {
		t.Errorf("mean deviation %.4f", mean)
	}
}

func TestEquilibriumPoints(t *testing.T) {
	tests := []struct{ celsius, humidity, want float64 }{
		{20, 50, 9.27},    // computed from the published coefficients by another hand
		{21.1, 65, 11.96}, // likewise; Table 4-2 prints 12.0
		{20, 0, 0},
	}
	for _, test := range tests {
		if got := Equilibrium(test.celsius, test.humidity); math.Abs(got-test.want) > 0.005 {
			t.Errorf("%v C, %v %%: %.4f, want %v", test.celsius, test.humidity, got, test.want)
		}
	}
}

func TestEquilibriumHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64().Draw(t, "celsius")
		h := rapid.Float64().Draw(t, "humidity")
		m := Equilibrium(c, h)
		if !(0 <= m && m <= 30) {
			t.Fatalf("%v C, %v %%: %v", c, h, m)
		}
		if drier := Equilibrium(c, h-1); drier > m {
			t.Fatalf("%v C: wetter air, drier wood: %v after %v", c, m, drier)
		}
	})
}

func TestHumidityIsTheOtherWayRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(0, 50).Draw(t, "celsius")
		h := rapid.Float64Range(0, 100).Draw(t, "humidity")
		if got := Humidity(c, Equilibrium(c, h)); math.Abs(got-h) > 1e-6 {
			t.Fatalf("%v C, %v %%: back at %v", c, h, got)
		}
	})
	if got := Humidity(20, 90); got != 100 {
		t.Errorf("wetter than any air: %v", got)
	}
	if got := Humidity(20, -1); got > 1e-6 {
		t.Errorf("drier than any air: %v", got)
	}
}
