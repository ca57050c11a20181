package lang

// Quantity is a number as written with its unit, exact.
// A length in feet and inches (2' 6 1/2") is in inches.
type Quantity struct {
	Value Rat
	Unit  Unit // Bare where none was written
}

// Dim says what a unit measures.
type Dim uint8

const (
	Plain       Dim = iota // a number without a unit
	Length                 // base: nanometres
	Percent                // base: percent
	Temperature            // base: degrees Celsius
	Angle                  // base: degrees
	Slope                  // 1:7 is one in seven; base: the ratio rise over run
	Weight                 // a mass; base: kilograms
	Force                  // base: newtons
	Torque                 // base: newton metres
	Pressure               // or a load on an area; base: pascals
	LineLoad               // weight on a length; base: kilograms a metre
	Density                // base: kilograms a cubic metre
	Time                   // base: seconds
)

// Unit is a unit as written after a number.
type Unit uint8
