package wood

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Published: ASHRAE Handbook, Fundamentals (2017), ch. 1, Table 3, pascals, as listed in the tests
// of a public library that cites it. The formula is said to be within 300 ppm of it; not at -60 C,
// where the table has three figures.
func TestSaturationTable(t *testing.T) {
	tests := []struct{ celsius, want, within float64 }{
		{-60, 1.08, 0.01},
		{-20, 103.24, 103.24 * 300e-6},
		{-5, 401.74, 401.74 * 300e-6},
		{5, 872.6, 872.6 * 300e-6},
		{25, 3169.7, 3169.7 * 300e-6},
		{50, 12351.3, 12351.3 * 300e-6},
		{100, 101418, 101418 * 300e-6},
		{150, 476101.4, 476101.4 * 300e-6},
	}
	for _, test := range tests {
		if got := SaturationPressure(test.celsius); math.Abs(got-test.want) > test.within {
			t.Errorf("%v C: %.2f Pa, want %v", test.celsius, got, test.want)
		}
	}
}

// Computed with a public psychrometric library (psychrolib 1.1.1 of the npm registry): air of
// 20 C and 50 % at sea level has a humidity ratio of 0.0072617 and its dew point at 9.272 C.
func TestKnownAir(t *testing.T) {
	const seaLevel, water, dew = 101325, 0.621945, 9.272 // Pa; ratio of molar masses; C
	p := Air{20, 50}.vapour()
	if got := water * p / (seaLevel - p); math.Abs(got-0.0072617) > 5e-8 {
		t.Errorf("humidity ratio %.7f", got)
	}
	if got := SaturationPressure(dew); math.Abs(got/p-1) > 5e-5 {
		t.Errorf("at the dew point %.3f Pa, in the air %.3f", got, p)
	}
}

func TestSaturationHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-150, 250).Draw(t, "celsius")
		lower, upper := SaturationPressure(c), SaturationPressure(c+0.1)
		if !(lower > 0 && lower <= upper) {
			t.Fatalf("%v C: %v Pa, then %v", c, lower, upper)
		}
	})
	// Over ice and over water it is the same at the triple point, 611.657 Pa.
	for _, c := range []float64{triplePoint, triplePoint + 1e-9} {
		if got := SaturationPressure(c); math.Abs(got-611.657) > 0.02 {
			t.Errorf("%v C: %.3f Pa", c, got)
		}
	}
}

func TestIndoors(t *testing.T) {
	house := House{Celsius: 20}
	limited := House{Celsius: 20, Least: 30, Greatest: 60}
	tests := []struct {
		name    string
		house   House
		outside Air
		want    Air
	}{
		// Computed with the same library.
		{"frost", house, Air{-5, 80}, Air{20, 13.74255}},
		{"thaw", House{Celsius: 21}, Air{0, 85}, Air{21, 20.88224}},
		{"autumn", house, Air{10, 75}, Air{20, 39.37895}},
		// By what the method says.
		{"summer, windows open", house, Air{26, 70}, Air{26, 70}},
		{"as warm outside", house, Air{20, 55}, Air{20, 55}},
		{"humidifier", limited, Air{-5, 80}, Air{20, 30}},
		{"dried", limited, Air{26, 70}, Air{26, 60}},
		{"fog", house, Air{25, 130}, Air{25, 100}},
		{"no water", house, Air{25, -3}, Air{25, 0}},
	}
	for _, test := range tests {
		got := test.house.Indoors(test.outside)
		if got.Celsius != test.want.Celsius || math.Abs(got.Humidity-test.want.Humidity) > 1e-5 {
			t.Errorf("%s: %+v, want %+v", test.name, got, test.want)
		}
	}
}

// An invented place with frosty winters. The months that come out are plain to see; the moisture
// contents are regression, not published.
func TestSeasons(t *testing.T) {
	months := []Air{
		{-6, 80},
		{-5, 77},
		{1, 72},
		{8, 67},
		{14, 66},
		{19, 70},
		{22, 74},
		{21, 77},
		{16, 78},
		{10, 75},
		{3, 78},
		{-3, 82},
	}
	dry, humid, ok := House{Celsius: 20}.Seasons(months)
	if !ok || dry.Month != 0 || humid.Month != 7 {
		t.Fatalf("%+v, %+v, %v", dry, humid, ok)
	}
	if math.Abs(dry.Moisture-3.06) > 0.01 || math.Abs(humid.Moisture-15.01) > 0.01 {
		t.Errorf("%.3f and %.3f %%", dry.Moisture, humid.Moisture)
	}
	kept := House{Celsius: 20, Least: 30, Greatest: 60}
	dry, humid, _ = kept.Seasons(months)
	if dry.Month != 0 || dry.Moisture != Equilibrium(20, 30) || humid.Inside.Humidity != 60 {
		t.Errorf("kept: %+v, %+v", dry, humid)
	}
	one, same, _ := kept.Seasons(months[:1])
	if one != same {
		t.Errorf("one month: %+v, %+v", one, same)
	}
	if _, _, ok := kept.Seasons(nil); ok {
		t.Error("a year without months")
	}
}

func TestIndoorsStaysWithin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := House{
			Celsius: rapid.Float64Range(15, 25).Draw(t, "heated to"),
			Least:   rapid.Float64Range(0, 40).Draw(t, "least"), Greatest: rapid.Float64Range(40, 100).Draw(t, "greatest"),
		}
		outside := Air{rapid.Float64Range(-60, 45).Draw(t, "celsius"), rapid.Float64Range(0, 100).Draw(t, "humidity")}
		in := h.Indoors(outside)
		if in.Celsius < h.Celsius || in.Humidity < h.Least || in.Humidity > h.Greatest {
			t.Fatalf("%+v", in)
		}
		if warmer := (House{h.Celsius + 5, h.Least, h.Greatest}).Indoors(outside); warmer.Humidity > in.Humidity {
			t.Fatalf("warmer and more humid: %+v, %+v", in, warmer)
		}
	})
}
