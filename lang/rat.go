package lang

// Exact fractions. A maker's sizes are fractions with small denominators, so nearly
// every one lives in two machine words; the few that do not are kept by math/big, and
// those that no piece of furniture could need are given up (see Rat.TooLarge), so that
// no chain of multiplications can eat the machine.

import (
	"math"
	"math/big"
	"math/bits"
	"strconv"
)

// Rat is an exact fraction. The zero Rat is 0. Compare with Cmp, not with ==.
type Rat struct {
	num   int64
	below int64    // the denominator less one, so that the zero Rat is 0/1
	big   *big.Rat // set, and the rest 0, where two machine words do not suffice
}

// maxBits bounds numerator and denominator. A size in nanometres takes 40 bits, so
// what is longer than this is a mistake or mischief.
const maxBits = 1024

// tooLarge is what every Rat beyond maxBits becomes: known by its address.
var tooLarge = new(big.Rat)

// NewRat is num/den. It panics if den is 0.
func NewRat(num, den int64) Rat {
	if den == 0 {
		panic("lang: a fraction over 0")
	}
	if num == math.MinInt64 || den == math.MinInt64 {
		return fromBig(big.NewRat(num, den))
	}
	return reduce(num, den)
}

// TooLarge reports that a computation grew beyond any use (1024 bits above or below
// the line). Such a Rat stays so in whatever is computed from it, and stands above
// every other in Cmp. Its other results mean nothing.
func (a Rat) TooLarge() bool { return a.big == tooLarge }

// Add is a + b.
func (a Rat) Add(b Rat) Rat {
	if a.big == nil && b.big == nil {
		x, ok1 := mul64(a.num, b.den())
		y, ok2 := mul64(b.num, a.den())
		sum, ok3 := add64(x, y)
		den, ok4 := mul64(a.den(), b.den())
		if ok1 && ok2 && ok3 && ok4 {
			return reduce(sum, den)
		}
	}
	return join(a, b, (*big.Rat).Add)
}

// Sub is a - b.
func (a Rat) Sub(b Rat) Rat { return a.Add(b.Neg()) }

// Mul is a times b.
func (a Rat) Mul(b Rat) Rat {
	if a.big == nil && b.big == nil {
		num, ok1 := mul64(a.num, b.num)
		den, ok2 := mul64(a.den(), b.den())
		if ok1 && ok2 {
			return reduce(num, den)
		}
	}
	return join(a, b, (*big.Rat).Mul)
}

// Quo is a divided by b; false if b is 0.
func (a Rat) Quo(b Rat) (Rat, bool) {
	if b.TooLarge() {
		return b, true
	}
	if b.Sign() == 0 {
		return Rat{}, false
	}
	if b.big == nil {
		return a.Mul(reduce(b.den(), b.num)), true
	}
	return join(a, b, (*big.Rat).Quo), true
}

// Neg is -a.
func (a Rat) Neg() Rat {
	if a.TooLarge() {
		return a
	}
	if a.big != nil {
		return fromBig(new(big.Rat).Neg(a.big))
	}
	a.num = -a.num
	return a
}

// Abs is a without its sign.
func (a Rat) Abs() Rat {
	if a.Sign() < 0 {
		return a.Neg()
	}
	return a
}

// Cmp is -1, 0 or 1 as a is below, equal to or above b.
func (a Rat) Cmp(b Rat) int {
	switch {
	case a.TooLarge() && b.TooLarge():
		return 0
	case a.TooLarge():
		return 1
	case b.TooLarge():
		return -1
	}
	if a.big == nil && b.big == nil {
		x, ok1 := mul64(a.num, b.den())
		y, ok2 := mul64(b.num, a.den())
		if ok1 && ok2 {
			switch {
			case x < y:
				return -1
			case x > y:
				return 1
			}
			return 0
		}
	}
	return a.toBig().Cmp(b.toBig())
}

// Sign is -1, 0 or 1 as a is below, equal to or above 0.
func (a Rat) Sign() int {
	switch {
	case a.TooLarge():
		return 1
	case a.big != nil:
		return a.big.Sign()
	case a.num < 0:
		return -1
	case a.num > 0:
		return 1
	}
	return 0
}

// IsInt reports whether a is a whole number.
func (a Rat) IsInt() bool {
	if a.big != nil {
		return !a.TooLarge() && a.big.IsInt()
	}
	return a.below == 0
}

// Float64 is the nearest floating point number.
func (a Rat) Float64() float64 {
	if a.TooLarge() {
		return math.Inf(1)
	}
	if a.big != nil {
		f, _ := a.big.Float64()
		return f
	}
	const exact = 1 << 53
	if -exact <= a.num && a.num <= exact && a.below < exact {
		return float64(a.num) / float64(a.den())
	}
	f, _ := a.toBig().Float64()
	return f
}

// Floor is the greatest whole number not above a; false if it is beyond an int64.
func (a Rat) Floor() (int64, bool) {
	if a.TooLarge() {
		return 0, false
	}
	if a.big == nil {
		q, r := a.num/a.den(), a.num%a.den()
		if r < 0 {
			q--
		}
		return q, true
	}
	// Euclidean division is the floor, since a denominator is never negative.
	q := new(big.Int).Div(a.big.Num(), a.big.Denom())
	return q.Int64(), q.IsInt64()
}

// Round is the nearest whole number, halves away from zero; false if it is beyond an
// int64.
func (a Rat) Round() (int64, bool) {
	if a.TooLarge() {
		return 0, false
	}
	if a.Sign() < 0 {
		n, ok := a.Neg().Round()
		return -n, ok
	}
	return a.Add(NewRat(1, 2)).Floor()
}

// String is the fraction as num/den, or the whole number alone.
func (a Rat) String() string {
	switch {
	case a.TooLarge():
		return "too large"
	case a.big != nil:
		return a.big.RatString()
	case a.below == 0:
		return strconv.FormatInt(a.num, 10)
	}
	return strconv.FormatInt(a.num, 10) + "/" + strconv.FormatInt(a.den(), 10)
}

func (a Rat) den() int64 { return a.below + 1 }

// reduce is num/den in lowest terms. Neither may be the least int64, den not 0.
func reduce(num, den int64) Rat {
	if den < 0 {
		num, den = -num, -den
	}
	x, y := max(num, -num), den
	for y != 0 && x != 1 {
		x, y = y, x%y
	}
	if x > 1 {
		num, den = num/x, den/x
	}
	return Rat{num: num, below: den - 1}
}

// join does with math/big what does not fit in machine words.
func join(a, b Rat, op func(z, x, y *big.Rat) *big.Rat) Rat {
	if a.TooLarge() || b.TooLarge() {
		return Rat{big: tooLarge}
	}
	return fromBig(op(new(big.Rat), a.toBig(), b.toBig()))
}

func (a Rat) toBig() *big.Rat {
	if a.big != nil {
		return a.big
	}
	return big.NewRat(a.num, a.den())
}

// fromBig takes b over, in machine words where they suffice.
func fromBig(b *big.Rat) Rat {
	num, den := b.Num(), b.Denom()
	if num.IsInt64() && den.IsInt64() && num.Int64() != math.MinInt64 {
		return Rat{num: num.Int64(), below: den.Int64() - 1}
	}
	if num.BitLen() > maxBits || den.BitLen() > maxBits {
		return Rat{big: tooLarge}
	}
	return Rat{big: b}
}

func mul64(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(uint64(max(a, -a)), uint64(max(b, -b)))
	return a * b, hi == 0 && lo <= math.MaxInt64
}

func add64(a, b int64) (int64, bool) {
	c := a + b
	return c, (c > a) == (b > 0) && c != math.MinInt64
}
