package wood

// How wet wood gets in the air that stands round it.

import (
	"math"
	"strconv"
)

// greenAt is the moisture content in percent below which most woods are taken to shrink
// (Wood Handbook, ch. 13).
const greenAt = 30

// Equation 4-5 was fitted to a table that goes from 30 to 270 F.
const coldest, hottest = -1.1, 132.2

// Equilibrium is the moisture content in percent that wood comes to in air of so many degrees
// Celsius and percent of relative humidity.
//
// Wood Handbook, FPL-GTR-190, Eq. 4-5 (Hailwood and Horrobin), coefficients for Celsius as in
// Simpson, FPL-RN-268 (1998). It gives back the printed Table 4-2 to within its rounding. It
// is a practical average: no species, coating or history (FPL-GTR-229). Outside of the table's
// range the nearest end of it is taken.
func Equilibrium(celsius, humidity float64) float64 {
	t := min(max(celsius, coldest), hottest)
	h := min(max(humidity, 0), 100) / 100
	w := 349 + 1.29*t + 0.0135*t*t
	k := 0.805 + 0.000736*t - 0.00000273*t*t
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	return hailwoodHorrobin(h, w, k, k1, k2)
}

// hailwoodHorrobin is Eq. 4-5 in percent, at relative humidity h as a fraction.
func hailwoodHorrobin(h, w, k, k1, k2 float64) float64 {
	kh := k * h
	dissolved := kh / (1 - kh)
	bound := (k1*kh + 2*k1*k2*kh*kh) / (1 + k1*kh + k1*k2*kh*kh)
	return 1800 / w * (dissolved + bound)
}

// Humidity is the relative humidity in percent at which wood comes to the given moisture
// content, the other way round of Equilibrium; 0 or 100 where none does.
func Humidity(celsius, moisture float64) float64 {
	dry, humid := 0.0, 100.0
	for range 40 { // each halves the range: under a millionth of a percent
		middle := (dry + humid) / 2
		if Equilibrium(celsius, middle) < moisture {
			dry = middle
		} else {
			humid = middle
		}
	}
	return humid
}

// Percent is a moisture content, or a humidity, as a meter shows it: `8%`, `6.5%`.
func Percent(content float64) string {
	return strconv.FormatFloat(math.Round(content*10)/10, 'f', -1, 64) + "%"
}
