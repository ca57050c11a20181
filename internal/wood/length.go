package wood

// Lengths, the one kind of number that a maker measures and every sum is made of.

import "math"

// Length is a size in whole nanometres, in which 1 mm and 1/64 in are both whole.
type Length int64

const (
	Micrometre Length = 1_000
	Millimetre Length = 1_000_000
	Inch       Length = 25_400_000
	Foot              = 12 * Inch
	Metre             = 1_000 * Millimetre
)

// Slack is how far apart two lengths may be and still count as the same: 1/42 in and
// 1/3 in are not whole nanometres, so sums of them are off by a few.
const Slack = Micrometre

// Same reports whether a and b are one length.
func Same(a, b Length) bool { return a-b <= Slack && b-a <= Slack }

// Over reports whether a is longer than b.
func Over(a, b Length) bool { return a-b > Slack }

// Under reports whether a is shorter than b.
func Under(a, b Length) bool { return b-a > Slack }

// Abs is the length without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Inches is the length in inches, for formulas that are published in them.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Millimetres is the length in millimetres.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// Metres is the length in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// inMetres is a length of so many metres, to the nearest nanometre. What a Length cannot say, as
// a thread a kilometre long bends, is as long as it can.
func inMetres(metres float64) Length {
	const most = math.MaxInt64 / 2
	return Length(math.Round(min(max(metres*float64(Metre), -most), most)))
}
