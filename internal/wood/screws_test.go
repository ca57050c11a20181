package wood

import (
	"math"
	"testing"
	"time"
)

func TestScrews(t *testing.T) {
	// Diameters as a drilling table prints them beside the holes.
	for number, diameter := range map[int]float64{4: 0.112, 6: 0.138, 8: 0.164, 10: 0.190, 12: 0.216} {
		if got := ScrewDiameter(number); !near(got, diameter, 1e-6) {
			t.Errorf("number %d: %v in, want %v", number, got.Inches(), diameter)
		}
		holes, ok := ScrewHoles(number)
		if !ok || holes.Shank < ScrewDiameter(number)-Inch/200 {
			t.Errorf("number %d: %+v, %v", number, holes, ok)
		}
	}
	if eight, _ := ScrewHoles(8); eight.PilotHard != 7*Inch/64 || eight.PilotSoft != 3*Inch/32 || eight.Shank != 11*Inch/64 {
		t.Errorf("number 8: %+v", eight)
	}
	if _, ok := ScrewHoles(7); ok {
		t.Error("number 7 is not in the table")
	}
	if got := ScrewRoot(9 * Millimetre); got != 6*Millimetre {
		t.Errorf("root %v", got)
	}
}

func TestWithdrawal(t *testing.T) {
	tests := []struct {
		sg     float64
		number int
		want   float64 // lbf for each inch
	}{
		{0.45, 10, 109},  // printed as an example by an engineering reference (109.65)
		{0.60, 8, 168.3}, // worked by hand
	}
	for _, test := range tests {
		got := Withdrawal(test.sg, ScrewDiameter(test.number)) * 0.0254 / pound
		if math.Abs(got-test.want) > 0.7 {
			t.Errorf("number %d in %v: %.2f lbf/in, want %v", test.number, test.sg, got, test.want)
		}
	}
}

func TestGlues(t *testing.T) {
	kinds := []string{"pva", "yellow-pva", "cross-linked", "urea", "resorcinol", "epoxy", "polyurethane", "hide", "liquid-hide", "contact"}
	for _, kind := range kinds {
		if g, ok := FindGlue(kind); !ok || g.Kind != kind || g.Class == "" {
			t.Errorf("%s: %+v, %v", kind, g, ok)
		}
	}
	urea, _ := FindGlue("urea")
	if urea.Open != 20*time.Minute || urea.Clamp != 12*time.Hour || math.Abs(urea.Coldest.Value-21.1) > 0.05 || urea.Fills != "poor" {
		t.Errorf("urea: %+v", urea)
	}
	if epoxy, _ := FindGlue("epoxy"); epoxy.Open != 0 {
		t.Errorf("epoxy: %+v", epoxy)
	}
	classes := map[string]bool{"": true, "interior": true, "limited": true, "exterior": true}
	fills := map[string]bool{"": true, "poor": true, "moderate": true, "good": true, "excellent": true}
	for _, g := range glues() {
		if !classes[g.Class] || !fills[g.Fills] {
			t.Errorf("%s: class %q, fills %q", g.Kind, g.Class, g.Fills)
		}
	}
}

func TestElastic(t *testing.T) {
	// Tables 5-1 and 5-2, seen in two copies.
	e, ok := find(t, "hard maple").Elastic()
	if !ok || e.ET != 0.065 || e.ER != 0.132 || e.GLT != 0.063 || e.MuLT != 0.476 || e.Status != Seen {
		t.Errorf("sugar maple: %+v, %v", e, ok)
	}
	if _, ok := find(t, "wenge").Elastic(); ok {
		t.Error("wenge is in no table of ratios")
	}
}
