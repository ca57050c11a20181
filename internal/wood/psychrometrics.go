package wood

// From the weather outside to the air in a heated room, and to what the wood in it comes to.

import "math"

// Air is so many degrees Celsius and percent of relative humidity.
type Air struct{ Celsius, Humidity float64 }

// Equations 5 and 6 hold from -100 to 200 C, the first over ice.
const iciest, steamiest = -100, 200

const (
	kelvin      = 273.15
	triplePoint = 0.01 // C, where water has one pressure over ice and over the liquid
)

// SaturationPressure is the pressure of water vapour in saturated air, in pascals. Outside of -100
// to 200 C the nearest end is taken.
//
// ASHRAE Handbook, Fundamentals (2017), ch. 1, Eq. 5 over ice and Eq. 6 over water, which are
// Hyland and Wexler's (1983); coefficients as in several public libraries that cite them.
// It is within 300 ppm of the handbook's Table 3. The handbook parts the two at 0 C, which leaves
// a step; at the triple point they meet.
func SaturationPressure(celsius float64) float64 {
	c := min(max(celsius, iciest), steamiest)
	t := c + kelvin
	if c <= triplePoint {
		return math.Exp(-5.6745359e3/t + 6.3925247 - 9.677843e-3*t + 6.2215701e-7*t*t +
			2.0747825e-9*t*t*t - 9.484024e-13*t*t*t*t + 4.1635019*math.Log(t))
	}
	return math.Exp(-5.8002206e3/t + 1.3914993 - 4.8640239e-2*t + 4.1764768e-5*t*t -
		1.4452093e-8*t*t*t + 6.5459673*math.Log(t))
}

// vapour is the pressure of the water vapour in the air, in pascals.
func (a Air) vapour() float64 {
	return SaturationPressure(a.Celsius) * min(max(a.Humidity, 0), 100) / 100
}

// House is how a house keeps its air.
type House struct {
	Celsius float64 // what it is heated to
	// What humidity is kept from falling under and rising over, in percent, by a humidifier, by
	// living in it, or by drying the air. Zero sets no limit.
	Least, Greatest float64
}

// Indoors is the air in the house when outside it is as said: the outside air, warmed. Its water
// stays what it was, so its relative humidity falls as the ratio of the saturation pressures
// (ASHRAE Handbook, Fundamentals (2017), ch. 1, Eq. 12 and 22: humidity = p_w / p_ws). Inside and
// outside are under one air pressure, so altitude drops out. A house is heated and not cooled:
// where it is warmer outside, it is as warm inside.
//
// Nobody's breath, cooking or washing is in it, so the air of a house that is lived in is more
// humid in winter; Least says by how much. Below freezing, weather services give humidity over
// water and Eq. 5 goes by ice; at -10 C they mean a tenth more water than this takes. Both err
// to the dry side, on which solid wood splits.
func (h House) Indoors(outside Air) Air {
	inside := Air{Celsius: max(h.Celsius, outside.Celsius)}
	inside.Humidity = min(100*outside.vapour()/SaturationPressure(inside.Celsius), 100)
	if h.Greatest > 0 {
		inside.Humidity = min(inside.Humidity, h.Greatest)
	}
	inside.Humidity = max(inside.Humidity, h.Least)
	return inside
}

// Season is one month indoors.
type Season struct {
	Month    int // from 0, as in the table
	Inside   Air
	Moisture float64 // percent, what wood comes to
}

// Seasons are the driest and the most humid month that wood sees in the house, from the monthly
// averages of the air outside, and whether there are any. Of months alike the first is taken.
//
// Monthly averages suit it, since boards take weeks to follow the air, and longer under a finish.
// Moisture is the Equilibrium of a month that lasts, so real boards stop short of both ends.
func (h House) Seasons(months []Air) (dry, humid Season, ok bool) {
	for i, outside := range months {
		inside := h.Indoors(outside)
		s := Season{Month: i, Inside: inside, Moisture: Equilibrium(inside.Celsius, inside.Humidity)}
		if i == 0 || s.Moisture < dry.Moisture {
			dry = s
		}
		if i == 0 || s.Moisture > humid.Moisture {
			humid = s
		}
	}
	return dry, humid, len(months) > 0
}
