package plan

// Expressions: arithmetic in exact fractions, with units.

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// Value is what an expression comes to, in the base unit of its Dim (lengths in
// nanometres). A bare number is Plain and remembers what unit it stands for should it
// meet a length.
type Value struct {
	lang.Rat
	Dim  lang.Dim
	Text string
	Span diag.Span

	unit wood.Length
	how  How
}

// Length is the value as a length; a bare number takes the unit of its file. It fails for
// other quantities and beyond what a length can hold.
func (v Value) Length() (wood.Length, bool) {
	switch v.Dim {
	case lang.Length:
	case lang.Plain:
		v.Rat = v.Rat.Mul(lang.NewRat(int64(v.unit), 1))
	default:
		return 0, false
	}
	n, ok := v.Rat.Round()
	return wood.Length(n), ok
}

// asLength turns a bare number into a length.
func (v Value) asLength() Value {
	if v.Dim == lang.Plain {
		v.Rat = v.Rat.Mul(lang.NewRat(int64(v.unit), 1))
		v.Dim = lang.Length
	}
	return v
}

// value works out an expression. ok is false where it could not be, and then the fault,
// here or further back, has been reported.
func (r *resolver) value(e *lang.Expr, sc *scope) (Value, bool) {
	v, ok := r.evaluate(e, sc)
	v.Span = e.Span
	return v, ok
}

func (r *resolver) evaluate(e *lang.Expr, sc *scope) (Value, bool) {
	switch e.Op {
	case lang.Number:
		return Value{Rat: e.Qty.Base(), Dim: e.Qty.Unit.Dim(), unit: sc.unit(), how: Written}, true
	case lang.Name:
		return r.named(e, sc)
	case lang.Group, lang.Pos:
		return r.value(&e.Args[0], sc)
	case lang.Neg:
		if n := e.Args[0]; n.Op == lang.Number { // on its own scale: (-6F) is below 0F
			n.Qty.Value = n.Qty.Value.Neg()
			return r.value(&n, sc)
		}
		v, ok := r.value(&e.Args[0], sc)
		v.Rat = v.Rat.Neg()
		return v, ok
	case lang.Add, lang.Sub, lang.Mul, lang.Div:
		a, okA := r.value(&e.Args[0], sc)
		b, okB := r.value(&e.Args[1], sc)
		if !okA || !okB {
			return Value{}, false
		}
		v, ok := r.arithmetic(e, a, b)
		if v.Dim != lang.Plain {
			return v, ok
		}
		switch own := sc.unit(); {
		case v.unit == 0: // one length over another
			v.unit = own
		case e.Op == lang.Mul && a.unit == own: // `2 * thick`, where another file says thick in its unit
			v.unit = b.unit
		case e.Op == lang.Mul:
			v.unit = a.unit
		}
		return v, ok
	case lang.Call:
		return r.call(e, sc)
	case lang.Text:
		r.wrong(e, "a number is wanted here, but this is a text")
	case lang.Sized:
		r.wrong(e, "one size is wanted here, but this is a size of several numbers")
	case lang.List:
		r.wrong(e, "one value is wanted here, but this is a list")
	default:
		r.wrong(e, "a comparison stands only in `check`")
	}
	return Value{}, false
}

func (r *resolver) arithmetic(e *lang.Expr, a, b Value) (Value, bool) {
	switch e.Op {
	case lang.Add, lang.Sub:
		a, b, ok := r.alike(e, a, b)
		if !ok {
			return Value{}, false
		}
		if e.Op == lang.Add {
			a.Rat = a.Rat.Add(b.Rat)
		} else {
			a.Rat = a.Rat.Sub(b.Rat)
		}
		return a, true
	case lang.Mul:
		if a.Dim != lang.Plain && b.Dim != lang.Plain {
			r.wrong(e, "%s times %s is no size: one of the two must be a plain number", a.Dim, b.Dim)
			return Value{}, false
		}
		product := a
		if a.Dim == lang.Plain {
			product = b
		}
		product.Rat = a.Rat.Mul(b.Rat)
		return product, true
	}
	if a.Dim == lang.Length && b.Dim == lang.Length {
		a.Dim = lang.Plain // a ratio
	} else if b.Dim != lang.Plain {
		r.wrong(e, "%s divided by %s is no size: divide by a plain number", a.Dim, b.Dim)
		return Value{}, false
	}
	quotient, ok := a.Rat.Quo(b.Rat)
	if !ok {
		r.wrong(&e.Args[1], "this comes to 0, and nothing can be divided by 0")
		return Value{}, false
	}
	a.Rat = quotient
	return a, true
}

// alike makes two values comparable: a bare number that meets a length becomes one.
func (r *resolver) alike(e *lang.Expr, a, b Value) (Value, Value, bool) {
	switch {
	case a.Dim == lang.Plain && b.Dim == lang.Plain && a.unit != b.unit: // of two files
		a, b = a.asLength(), b.asLength()
	case a.Dim == b.Dim:
	case a.Dim == lang.Length && b.Dim == lang.Plain:
		b = b.asLength()
	case b.Dim == lang.Length && a.Dim == lang.Plain:
		a = a.asLength()
	default:
		r.wrong(e, "%s and %s cannot be taken together", a.Dim, b.Dim)
		return a, b, false
	}
	return a, b, true
}

func (r *resolver) call(e *lang.Expr, sc *scope) (Value, bool) {
	args := make([]Value, len(e.Args))
	all := true
	for i := range e.Args {
		var ok bool
		args[i], ok = r.value(&e.Args[i], sc)
		all = all && ok
	}
	if !all {
		return Value{}, false
	}
	switch e.Text {
	case "abs":
		if len(args) == 1 {
			args[0].Rat = args[0].Rat.Abs()
			return args[0], true
		}
		r.wrong(e, "`abs` takes one value, such as `abs(a - b)`")
	case "min", "max":
		best := args[0]
		for _, v := range args[1:] {
			a, b, ok := r.alike(e, best, v)
			if !ok {
				return Value{}, false
			}
			if best = a; (b.Rat.Cmp(a.Rat) < 0) == (e.Text == "min") {
				best = b
			}
		}
		return best, true
	case "round":
		if len(args) == 2 {
			return r.round(e, args[0], args[1])
		}
		r.wrong(e, "`round` takes a value and a step, such as `round(wide / 3, 1/16)`")
	default:
		r.wrong(e, "`%s` is no function here: there are `min`, `max`, `abs` and `round`", e.Text)
	}
	return Value{}, false
}

// round takes a value to the nearest whole number of steps, halves away from zero.
func (r *resolver) round(e *lang.Expr, v, step Value) (Value, bool) {
	v, step, ok := r.alike(e, v, step)
	if !ok {
		return Value{}, false
	}
	steps, ok := v.Rat.Quo(step.Rat)
	if !ok || step.Rat.Sign() < 0 {
		r.wrong(&e.Args[1], "a step must be more than 0")
		return Value{}, false
	}
	n, ok := steps.Round()
	if !ok {
		r.fault(TooLarge, e.Span, "this is more steps than can be counted")
		return Value{}, false
	}
	v.Rat = step.Rat.Mul(lang.NewRat(n, 1))
	return v, true
}

// Compare works out which way a comparison of two values comes out, with a tolerance for
// == and != on lengths, and the slack that makes 1/3 in three times an inch for the rest.
func (v Value) Compare(op lang.Op, w Value, within wood.Length) bool {
	if v.Dim == lang.Length {
		a, _ := v.Length()
		b, _ := w.Length()
		switch op {
		case lang.Same:
			return !wood.Over((a - b).Abs(), within)
		case lang.Differs:
			return wood.Over((a - b).Abs(), within)
		case lang.Below:
			return wood.Under(a, b)
		case lang.AtMost:
			return !wood.Over(a, b)
		case lang.Above:
			return wood.Over(a, b)
		}
		return !wood.Under(a, b)
	}
	c := v.Rat.Cmp(w.Rat)
	switch op {
	case lang.Same:
		return c == 0
	case lang.Differs:
		return c != 0
	case lang.Below:
		return c < 0
	case lang.AtMost:
		return c <= 0
	case lang.Above:
		return c > 0
	}
	return c >= 0
}
