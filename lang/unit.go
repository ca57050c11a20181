package lang

// Every unit that may follow a number, once: how it is written, what it measures, and
// its exact size in the base that Dim names.

// The units. Bare is a number without one.
const (
	Bare  Unit = iota
	Ratio      // the slope 1:7; written with a colon and no unit

	Inch
	Foot
	Millimetre
	Centimetre
	Metre

	Hundredth // %
	Fahrenheit
	Celsius
	Degree

	Pound
	Kilogram
	Newton
	NewtonMetre
	InchPound

	PoundPerFoot
	KilogramPerMetre
	PoundPerSquareFoot
	PoundPerSquareInch
	InchOfMercury
	KilogramPerSquareMetre
	Kilopascal
	Megapascal
	PoundPerCubicFoot
	KilogramPerCubicMetre

	Second
	Minute
	Hour
	Day
)

// unitFacts is one row of the table.
type unitFacts struct {
	names  []string // as written; the first is how it is shown
	dim    Dim
	scale  Rat  // in the base of dim
	spaced bool // may stand a blank away from its number
}

// The exact sizes are those of the international yard and pound agreement of 1959
// (1 in = 25.4 mm, 1 lb = 0.45359237 kg) and of standard gravity (9.80665 m/s2, third
// CGPM 1901). The conventional inch of mercury is one of a liquid of 13595.1 kg/m3
// (NIST Special Publication 811, appendix B).
var (
	inchInMetres  = NewRat(254, 10_000)
	footInMetres  = NewRat(3048, 10_000)
	poundInKilos  = NewRat(45_359_237, 100_000_000)
	gravity       = NewRat(980_665, 100_000)
	poundInNewton = poundInKilos.Mul(gravity)
	mercury       = NewRat(135_951, 10)
)

var units = [...]unitFacts{
	Bare:  {nil, Plain, whole(1), false},
	Ratio: {nil, Slope, whole(1), false},

	Inch:       {[]string{"in", `"`}, Length, whole(25_400_000), true},
	Foot:       {[]string{"ft", "'"}, Length, whole(304_800_000), true},
	Millimetre: {[]string{"mm"}, Length, whole(1_000_000), true},
	Centimetre: {[]string{"cm"}, Length, whole(10_000_000), true},
	Metre:      {[]string{"m"}, Length, whole(1_000_000_000), false},

	Hundredth:  {[]string{"%"}, Percent, whole(1), false},
	Fahrenheit: {[]string{"F"}, Temperature, NewRat(5, 9), false}, // and an offset, see Base
	Celsius:    {[]string{"C"}, Temperature, whole(1), false},
	Degree:     {[]string{"deg"}, Angle, whole(1), true},

	Pound:       {[]string{"lb"}, Weight, poundInKilos, true},
	Kilogram:    {[]string{"kg"}, Weight, whole(1), true},
	Newton:      {[]string{"N"}, Force, whole(1), false},
	NewtonMetre: {[]string{"Nm"}, Torque, whole(1), false},
	InchPound:   {[]string{"inlb"}, Torque, poundInNewton.Mul(inchInMetres), false},

	PoundPerFoot:           {[]string{"lb/ft"}, LineLoad, per(poundInKilos, footInMetres, 1), true},
	KilogramPerMetre:       {[]string{"kg/m"}, LineLoad, whole(1), true},
	PoundPerSquareFoot:     {[]string{"psf"}, Pressure, per(poundInNewton, footInMetres, 2), false},
	PoundPerSquareInch:     {[]string{"psi"}, Pressure, per(poundInNewton, inchInMetres, 2), true},
	InchOfMercury:          {[]string{"inHg"}, Pressure, mercury.Mul(gravity).Mul(inchInMetres), false},
	KilogramPerSquareMetre: {[]string{"kg/m2"}, Pressure, gravity, true},
	Kilopascal:             {[]string{"kPa"}, Pressure, whole(1000), false},
	Megapascal:             {[]string{"MPa"}, Pressure, whole(1_000_000), false},
	PoundPerCubicFoot:      {[]string{"lb/ft3"}, Density, per(poundInKilos, footInMetres, 3), true},
	KilogramPerCubicMetre:  {[]string{"kg/m3"}, Density, whole(1), true},

	Second: {[]string{"s"}, Time, whole(1), false},
	Minute: {[]string{"min"}, Time, whole(60), true},
	Hour:   {[]string{"h"}, Time, whole(3600), false},
	Day:    {[]string{"d"}, Time, whole(86_400), false},
}

// unitNames finds a unit by how it is written.
var unitNames = func() map[string]Unit {
	byName := make(map[string]Unit)
	for u, facts := range units {
		for _, name := range facts.names {
			byName[name] = Unit(u)
		}
	}
	return byName
}()

// Dim is what the unit measures.
func (u Unit) Dim() Dim { return units[u].dim }

// String is the unit as it is written in letters; "" for Bare and Ratio.
func (u Unit) String() string {
	if names := units[u].names; len(names) > 0 {
		return names[0]
	}
	return ""
}

// Base is the quantity in the base of what its unit measures: nanometres for a
// length, kilograms for a weight and so on (see Dim). Bare stays as it is.
func (q Quantity) Base() Rat {
	v := q.Value
	if q.Unit == Fahrenheit {
		v = v.Sub(whole(32))
	}
	return v.Mul(units[q.Unit].scale)
}

// String names what is measured in a maker's words.
func (d Dim) String() string {
	return [...]string{
		Plain:       "a plain number",
		Length:      "a length",
		Percent:     "a percentage",
		Temperature: "a temperature",
		Angle:       "an angle",
		Slope:       "a slope",
		Weight:      "a weight",
		Force:       "a force",
		Torque:      "a torque",
		Pressure:    "a pressure",
		LineLoad:    "a load along a length",
		Density:     "a density",
		Time:        "a time",
	}[d]
}

func whole(n int64) Rat { return NewRat(n, 1) }

// per is a over b to the power n.
func per(a, b Rat, n int) Rat {
	for range n {
		a, _ = a.Quo(b)
	}
	return a
}
