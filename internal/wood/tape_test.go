package wood

import (
	"fmt"
	"math/big"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var (
	inchTape   = Tape{}
	metricTape = Tape{Metric: true}
)

// in is a length in 64ths of an inch, which are whole nanometres.
func in(whole, sixtyFourths Length) Length { return whole*Inch + sixtyFourths*(Inch/64) }

func TestShow(t *testing.T) {
	tests := []struct {
		tape Tape
		l    Length
		want string
	}{
		{inchTape, 0, "0"},
		{inchTape, in(16, 52), "16 13/16"},
		{inchTape, in(0, 48), "3/4"},
		{inchTape, -in(0, 8), "-1/8"},
		{inchTape, -in(2, 32), "-2 1/2"},
		{inchTape, in(27, 0), "27"},
		{inchTape, in(27, 0) - 1, "27"},
		{inchTape, in(18, 27), "18.4219"},
		{Tape{Mark: Inch / 64}, in(18, 27), "18 27/64"},
		{inchTape, 6 * Millimetre, "0.2362"},
		{inchTape, -6 * Millimetre, "-0.2362"},
		{inchTape, Inch / 42, "0.0238"},
		{inchTape, 5 * Inch / 10, "1/2"},
		{inchTape, 3 * Inch / 10, "0.3"},
		{Tape{Mark: Inch / 128}, 5*Inch + 3*Inch/128, "5 3/128"},
		{Tape{Mark: Inch / 128}, 40*Foot + 127*Inch/128, "480 127/128"},
		{Tape{Mark: Inch / 10}, 3 * Inch / 10, "0.3"},
		{Tape{Mark: Inch}, in(3, 32), "3.5"},
		{metricTape, 427 * Millimetre, "427"},
		{metricTape, -3 * Millimetre, "-3"},
		{metricTape, 427*Millimetre + 400*Micrometre, "427.4"},
		{metricTape, Inch / 4, "6.35"},
		{metricTape, Inch / 64, "0.397"},
		{Tape{Metric: true, Mark: Millimetre / 2}, 4275 * Millimetre / 10, "427.5"},
		{metricTape, 0, "0"},
		{metricTape, 400, "0"},
	}
	for _, test := range tests {
		if got := test.tape.Show(test.l); got != test.want {
			t.Errorf("%+v.Show(%d) = %q, want %q", test.tape, test.l, got, test.want)
		}
	}
}

func TestShowUnit(t *testing.T) {
	if got := inchTape.ShowUnit(in(16, 52)); got != "16 13/16 in" {
		t.Errorf("inches: %q", got)
	}
	if got := metricTape.ShowUnit(427 * Millimetre); got != "427 mm" {
		t.Errorf("millimetres: %q", got)
	}
}

func TestNearestAndFloor(t *testing.T) {
	tests := []struct {
		tape    Tape
		l       Length
		nearest string
		floor   Length
		on      bool
	}{
		{inchTape, 26*Inch + 25*Inch/32 + 100*Micrometre, "26 25/32", 26*Inch + 25*Inch/32, false},
		{inchTape, in(1, 0) - 500, "1", in(1, 0), true},
		{inchTape, in(1, 0) - 2*Micrometre, "1", in(0, 62), false},
		{inchTape, -in(0, 1), "-1/32", -in(0, 2), false},
		{inchTape, -in(0, 2), "-1/32", -in(0, 2), true},
		{metricTape, Inch, "25", 25 * Millimetre, false},
		{metricTape, 19 * Millimetre, "19", 19 * Millimetre, true},
		{Tape{Mark: Inch / 10}, in(0, 32), "0.5", Inch / 2, true},
	}
	for _, test := range tests {
		if got := test.tape.Nearest(test.l); got != test.nearest {
			t.Errorf("%+v.Nearest(%d) = %q, want %q", test.tape, test.l, got, test.nearest)
		}
		if got := test.tape.Floor(test.l); got != test.floor {
			t.Errorf("%+v.Floor(%d) = %d, want %d", test.tape, test.l, got, test.floor)
		}
		if got := test.tape.OnMark(test.l); got != test.on {
			t.Errorf("%+v.OnMark(%d) = %v", test.tape, test.l, got)
		}
	}
}

func TestTolerance(t *testing.T) {
	tests := []struct {
		tape Tape
		want Length
	}{
		{inchTape, Inch / 64},
		{Tape{Mark: Inch / 16}, Inch / 64},
		{Tape{Mark: Inch / 64}, Inch / 128},
		{metricTape, Inch / 64},
		{Tape{Metric: true, Mark: Millimetre / 2}, Millimetre / 4},
	}
	for _, test := range tests {
		if got := test.tape.Tolerance(); got != test.want {
			t.Errorf("%+v.Tolerance() = %d, want %d", test.tape, got, test.want)
		}
	}
}

func TestColumn(t *testing.T) {
	sheet := 6 * Millimetre
	tests := []struct {
		name string
		tape Tape
		ls   []Length
		want []string
	}{
		{
			"all on the mark", inchTape,
			[]Length{in(19, 0), -in(0, 6), -in(0, 6), in(18, 52)},
			[]string{"19", "-3/32", "-3/32", "18 13/16"},
		},
		{
			"a metric sheet in an inch plan", inchTape,
			[]Length{in(19, 0), -in(0, 6), -sheet, in(18, 58) - sheet},
			[]string{"19", "-3/32", "-0.236", "18.67"},
		},
		{
			"an inch board in a metric plan", metricTape,
			[]Length{400 * Millimetre, -in(0, 46), -in(0, 46), 400*Millimetre - in(0, 92)},
			[]string{"400", "-18.256", "-18.256", "363.488"},
		},
		{
			"two metric sheets that come to an inch", inchTape,
			[]Length{6 * Millimetre, 194 * Millimetre / 10, Inch},
			[]string{"0.236", "0.764", "1"},
		},
		{
			"thirds of an inch close on a mark", inchTape,
			[]Length{Inch / 3, Inch / 3, Inch / 3, Inch},
			[]string{"0.3333", "0.3334", "0.3333", "1"},
		},
		{
			"not a sum: each by itself", inchTape,
			[]Length{in(2, 0), in(3, 0), in(6, 0)},
			[]string{"2", "3", "6"},
		},
		{"one", inchTape, []Length{0}, []string{"0"}},
		{"none", inchTape, nil, []string{}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := test.tape.Column(test.ls...); !slices.Equal(got, test.want) {
				t.Errorf("got  %q\nwant %q", got, test.want)
			}
		})
	}
}

func TestLinesWithSubtotals(t *testing.T) {
	got := inchTape.Lines(
		Line{Length: in(19, 0)},
		Line{Length: -in(0, 6)},
		Line{Length: -in(0, 6)},
		Line{Length: in(18, 52), Total: true},
		Line{Length: -in(4, 32)},
		Line{Length: in(14, 20), Total: true},
		Line{Length: in(2, 32)},
		Line{Length: in(16, 52), Total: true},
	)
	want := []string{"19", "-3/32", "-3/32", "18 13/16", "-4 1/2", "14 5/16", "2 1/2", "16 13/16"}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// read is what a maker takes a shown size for, in units of the tape.
func read(t interface{ Fatalf(string, ...any) }, s string) *big.Rat {
	s, negative := strings.CutPrefix(s, "-")
	sum := new(big.Rat)
	for part := range strings.FieldsSeq(s) {
		v, ok := new(big.Rat).SetString(part)
		if !ok {
			t.Fatalf("%q is no number", s)
		}
		sum.Add(sum, v)
	}
	if negative {
		sum.Neg(sum)
	}
	return sum
}

// unit is one inch or one millimetre in nanometres.
func unit(tape Tape) *big.Rat {
	if tape.Metric {
		return big.NewRat(int64(Millimetre), 1)
	}
	return big.NewRat(int64(Inch), 1)
}

var (
	tapes = rapid.Custom(func(t *rapid.T) Tape {
		if rapid.Bool().Draw(t, "metric") {
			return Tape{Metric: true, Mark: rapid.SampledFrom([]Length{0, Millimetre / 2, Millimetre, 5 * Millimetre, 333 * Micrometre, 999}).Draw(t, "mark")}
		}
		return Tape{Mark: rapid.SampledFrom([]Length{0, Inch / 8, Inch / 16, Inch / 64, Inch / 128, Inch / 10, Inch, Foot, 7, -5}).Draw(t, "mark")}
	})
	sizes = rapid.Custom(func(t *rapid.T) Length {
		switch rapid.IntRange(0, 3).Draw(t, "size") {
		case 0:
			return Length(rapid.Int64Range(-6400, 6400).Draw(t, "sixty-fourths")) * (Inch / 64)
		case 1:
			return Length(rapid.Int64Range(-3000, 3000).Draw(t, "tenths of a millimetre")) * (Millimetre / 10)
		case 2:
			return Length(rapid.Int64Range(-3000, 3000).Draw(t, "forty-seconds")) * Inch / 42
		}
		return Length(rapid.Int64Range(-int64(1000*Metre), int64(1000*Metre)).Draw(t, "any"))
	})
)

// distance is how far a shown size is from a length, in nanometres.
func distance(t *rapid.T, tape Tape, shown string, l Length) *big.Rat {
	d := read(t, shown)
	d.Mul(d, unit(tape)).Sub(d, big.NewRat(int64(l), 1))
	return d.Abs(d)
}

func TestShowIsTrue(t *testing.T) {
	limit := big.NewRat(1270+int64(Slack), 1) // half a ten-thousandth of an inch, and as far from the mark
	rapid.Check(t, func(t *rapid.T) {
		tape, l := tapes.Draw(t, "tape"), sizes.Draw(t, "length")
		s := tape.Show(l)
		if distance(t, tape, s, l).Cmp(limit) > 0 {
			t.Fatalf("%d reads %q", l, s)
		}
		if s == "-0" {
			t.Fatalf("%d reads -0", l)
		}
	})
}

func TestMarksHoldTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape, l := tapes.Draw(t, "tape"), sizes.Draw(t, "length")
		floor := tape.Floor(l)
		if Over(floor, l) {
			t.Fatalf("floor %d is over %d", floor, l)
		}
		if !tape.OnMark(floor) || tape.Floor(floor) != floor {
			t.Fatalf("floor %d is not on a mark", floor)
		}
		if tape.OnMark(l) != Same(floor, l) {
			t.Fatalf("%d: on the mark %v, floor %d", l, tape.OnMark(l), floor)
		}
		coarse := tape.Finest() > 10*Slack // under that, nearly every length is Same as some mark
		if coarse && tape.OnMark(l) && tape.Show(l) != tape.Nearest(l) {
			t.Fatalf("%d shows %q, nearest %q", l, tape.Show(l), tape.Nearest(l))
		}
	})
}

// TestColumnsAddUp: what is printed adds up to the last place that is printed, each figure is
// true, and with nothing but decimals the sum is exact.
func TestColumnsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := tapes.Draw(t, "tape")
		terms := rapid.SliceOfN(sizes, 1, 12).Draw(t, "terms")
		var lines []Line
		var sum Length
		for i, l := range terms {
			sum += l
			lines = append(lines, Line{Length: l})
			if i == len(terms)-1 || rapid.IntRange(0, 3).Draw(t, "total") == 0 {
				lines = append(lines, Line{Length: sum, Total: true})
			}
		}
		shown := tape.Lines(lines...)
		decimals, fractions := 0, false
		for _, s := range shown {
			if _, part, found := strings.Cut(s, "."); found {
				decimals = max(decimals, len(part))
			}
			fractions = fractions || strings.Contains(s, "/")
		}
		allowed := new(big.Rat)
		if fractions && decimals > 0 {
			places, _ := tape.columnDecimals()
			allowed.SetString(fmt.Sprintf("0.5e-%d", max(decimals, places)))
		}
		printed := new(big.Rat)
		for i, l := range lines {
			v := read(t, shown[i])
			if l.Total {
				if off := new(big.Rat).Sub(printed, v); off.Abs(off).Cmp(allowed) > 0 {
					t.Fatalf("line %d of %q is off by %s", i, shown, off.FloatString(7))
				}
			} else {
				printed.Add(printed, v)
			}
			if distance(t, tape, shown[i], l.Length).Cmp(big.NewRat(int64(Inch/2000), 1)) > 0 {
				t.Fatalf("line %d of %q stands for %d", i, shown, l.Length)
			}
		}
	})
}

// TestNoLengthIsTooLong: past a kilometre nothing need be true, but nothing may break.
func TestNoLengthIsTooLong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := Tape{Metric: rapid.Bool().Draw(t, "metric"), Mark: Length(rapid.Int64().Draw(t, "mark"))}
		l, m := Length(rapid.Int64().Draw(t, "length")), Length(rapid.Int64().Draw(t, "another"))
		tape.Show(l)
		tape.ShowUnit(l)
		tape.Nearest(l)
		tape.Floor(l)
		tape.OnMark(l)
		tape.Tolerance()
		tape.Column(l, m, l+m)
		tape.Column(l, l)
	})
}
