package wood

import (
	"math"
	"testing"
)

const (
	psi   = 6894.757293168
	pound = 4.4482216152605 // of force, N
)

// TestPublishedSpans: Architectural Woodwork Standards, 1st ed. (2009), p. 279, prints the
// longest shelf in whole inches that sags no more than L/144 at 40 and 50 lb/ft2.
func TestPublishedSpans(t *testing.T) {
	tests := []struct {
		name  string
		moe   float64 // psi
		thick Length
		load  float64 // lb/ft2
		span  Length
	}{
		{"fir plywood core", 950_000, 3 * Inch / 4, 40, 40},
		{"fir plywood core", 950_000, 3 * Inch / 4, 50, 37},
		{"fir plywood core", 950_000, Inch, 40, 53},
		{"fir plywood core", 950_000, Inch, 50, 49},
		{"red oak", 1_820_000, 3 * Inch / 4, 40, 49},
		{"red oak", 1_820_000, 3 * Inch / 4, 50, 46},
		{"red oak", 1_820_000, Inch, 40, 66},
		{"red oak", 1_820_000, Inch, 50, 61},
	}
	for _, test := range tests {
		sag := func(span Length) Length {
			b := Beam{Span: span * Inch, Wide: Foot, Thick: test.thick, E: test.moe * psi}
			return b.Sag(Uniform, test.load*pound*(span*Inch).Inches()/12)
		}
		limit := func(span Length) float64 { return float64(span*Inch) / 144 }
		if s := sag(test.span); float64(s) > limit(test.span) {
			t.Errorf("%s %v in, %v lb/ft2: %v in sags %.4f", test.name, test.thick.Inches(), test.load, test.span, s.Inches())
		}
		if s := sag(test.span + 1); float64(s) <= limit(test.span+1) {
			t.Errorf("%s %v in, %v lb/ft2: %v in would do, sags %.4f", test.name, test.thick.Inches(), test.load, test.span+1, s.Inches())
		}
	}
}

// Worked by hand from Eq. 9-2; regression, not published.
func TestSag(t *testing.T) {
	shelf := Beam{Span: 36 * Inch, Wide: 10 * Inch, Thick: 3 * Inch / 4, E: 1.82e6 * psi}
	slat := Beam{Span: 30 * Inch, Wide: 7 * Inch / 2, Thick: 3 * Inch / 4, E: 1.0e6 * psi}
	stiff := Beam{Span: Metre, Wide: 100 * Millimetre, Thick: 20 * Millimetre, E: 1e30, G: 0.7e9}
	tests := []struct {
		name    string
		beam    Beam
		loading Loading
		newtons float64
		want    float64 // in
	}{
		{"books, 25 lb/ft", shelf, Uniform, 75 * pound, 0.071},
		{"a slat, 75 lb", slat, Midpoint, 75 * pound, 0.343},
		{"shear alone", stiff, Uniform, 100, 0.00042},
		{"no load", shelf, Uniform, 0, 0},
		{"no beam", Beam{}, Uniform, 100, 0},
	}
	for _, test := range tests {
		if got := test.beam.Sag(test.loading, test.newtons); !near(got, test.want, 0.0005) {
			t.Errorf("%s: %.5f in, want %v", test.name, got.Inches(), test.want)
		}
	}
	if got := stiff.Sag(Uniform, 100); math.Abs(float64(got-10714)) > 1 {
		t.Errorf("shear alone: %d nm, want 10714", got)
	}
}

// TestLoadings: the coefficients of Table 9-1 against what statics says of them.
func TestLoadings(t *testing.T) {
	b := Beam{Span: Metre, Wide: 100 * Millimetre, Thick: 20 * Millimetre, E: 10e9}
	sag := func(l Loading) float64 { return float64(b.Sag(l, 100)) }
	twice := b
	twice.Span *= 2
	tests := []struct {
		name      string
		got, want float64
	}{
		// A point load at midspan bends two cantilevers of half the span with half of it each.
		{"midpoint is two cantilevers", float64(twice.Sag(Midpoint, 200)), sag(CantileverEnd)},
		{"spread load, held ends: a fifth", sag(UniformClamped), sag(Uniform) / 5},
		{"midpoint, held ends: a quarter", sag(MidpointClamped), sag(Midpoint) / 4},
		{"spread load on a cantilever: three eighths", sag(Cantilever), sag(CantileverEnd) * 3 / 8},
		{"quarter points: 11 to 8 under a load", sag(Quarters), sag(QuartersAtLoad) * 11 / 8},
	}
	for _, test := range tests {
		if math.Abs(test.got-test.want) > 1e-6*test.want {
			t.Errorf("%s: %v, want %v", test.name, test.got, test.want)
		}
	}
}
