package lang

import (
	"math"
	"math/big"
	"testing"
	"unsafe"

	"pgregory.net/rapid"
)

func TestRatIsSmall(t *testing.T) {
	if size := unsafe.Sizeof(Rat{}); size > 24 {
		t.Errorf("a Rat takes %d bytes", size)
	}
}

// Every result is that of math/big, in machine words or beyond.
func TestRatAgainstBig(t *testing.T) {
	number := rapid.OneOf(rapid.Int64Range(-200, 200), rapid.Int64())
	draw := func(t *rapid.T, name string) (Rat, *big.Rat) {
		num, den := number.Draw(t, name), number.Filter(func(n int64) bool { return n != 0 }).Draw(t, name+" over")
		return NewRat(num, den), big.NewRat(num, den)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, x := draw(t, "a")
		b, y := draw(t, "b")
		same := func(what string, got Rat, want *big.Rat) {
			if got.String() != want.RatString() {
				t.Errorf("%v %s %v = %v, not %v", a, what, b, got, want.RatString())
			}
			if got.big != nil && want.Num().IsInt64() && want.Denom().IsInt64() && want.Num().Int64() != math.MinInt64 {
				t.Errorf("%v is kept big", got)
			}
		}
		same("+", a.Add(b), new(big.Rat).Add(x, y))
		same("-", a.Sub(b), new(big.Rat).Sub(x, y))
		same("*", a.Mul(b), new(big.Rat).Mul(x, y))
		same("neg", a.Neg(), new(big.Rat).Neg(x))
		same("abs", a.Abs(), new(big.Rat).Abs(x))
		if q, ok := a.Quo(b); ok != (y.Sign() != 0) {
			t.Errorf("%v / %v: ok is %v", a, b, ok)
		} else if ok {
			same("/", q, new(big.Rat).Quo(x, y))
		}
		if a.Cmp(b) != x.Cmp(y) || a.Sign() != x.Sign() || a.IsInt() != x.IsInt() {
			t.Errorf("%v against %v: %d %d %v", a, b, a.Cmp(b), a.Sign(), a.IsInt())
		}
		if f, _ := x.Float64(); a.Float64() != f {
			t.Errorf("%v is %v, not %v", a, a.Float64(), f)
		}
		floor := new(big.Int).Div(x.Num(), x.Denom())
		if n, ok := a.Floor(); !ok || n != floor.Int64() {
			t.Errorf("the floor of %v is %d %v", a, n, ok)
		}
	})
}

func TestRatRound(t *testing.T) {
	for _, c := range []struct{ num, den, want int64 }{
		{1, 2, 1}, {-1, 2, -1}, {3, 2, 2}, {-3, 2, -2}, {1, 3, 0}, {-1, 3, 0}, {2, 3, 1}, {-2, 3, -1}, {7, 1, 7}, {0, 5, 0},
	} {
		if got, ok := NewRat(c.num, c.den).Round(); !ok || got != c.want {
			t.Errorf("%d/%d rounds to %d", c.num, c.den, got)
		}
	}
	huge := NewRat(math.MaxInt64, 1).Mul(NewRat(2, 1))
	if _, ok := huge.Round(); ok {
		t.Error("2^64 rounds to an int64")
	}
	if _, ok := huge.Floor(); ok {
		t.Error("2^64 has a floor in an int64")
	}
}

// Squaring again and again ends in a Rat that stays too large, at once.
func TestRatTooLarge(t *testing.T) {
	a := NewRat(1_000_003, 7)
	for range 64 {
		a = a.Mul(a)
	}
	if !a.TooLarge() {
		t.Fatal("2^64 squarings fit")
	}
	q, ok := NewRat(1, 1).Quo(a)
	for _, r := range []Rat{a.Add(a), a.Neg(), a.Abs(), a.Sub(NewRat(1, 2)), q} {
		if !r.TooLarge() || !ok {
			t.Errorf("%v came out of what is too large", r)
		}
	}
	if a.Cmp(NewRat(1, 1)) != 1 || NewRat(1, 1).Cmp(a) != -1 || a.Cmp(a) != 0 {
		t.Error("what is too large does not stand above all else")
	}
	if a.IsInt() || a.String() != "too large" || !math.IsInf(a.Float64(), 1) {
		t.Error("what is too large passes for a number")
	}
}
