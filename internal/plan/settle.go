package plan

// How a value gets into a typed field: at once where it is a plain number, else when its
// expression is worked out. A length that waits keeps the number of its expression in
// place of a value, so that a field costs no more for being able to wait.

import (
	"math"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// pending is a setting whose expression is not worked out yet, and the fields that want it.
type pending struct {
	said    *lang.Expr
	scope   *scope
	lengths []*Length
	figure  *Figure
	dims    []lang.Dim
	count   *Count
	state   state
}

// state is how far the working out of something has come.
type state uint8

const (
	untouched state = iota
	busy
	done
)

// maxLength is the longest size that is taken on.
const maxLength = 1000 * wood.Metre

func (d *decoder) length(v *lang.Expr, to *Length) {
	to.Span = v.Span
	if v.Op == lang.Number {
		d.setLength(to, Value{Rat: v.Qty.Base(), Dim: v.Qty.Unit.Dim(), unit: d.source.unit, Span: v.Span})
		return
	}
	if !numeric(v) {
		to.How = failed
		d.wrong(v, "a size is wanted here, such as `16 13/16`")
		return
	}
	to.How = waiting
	to.Length = wood.Length(len(d.pending))
	d.pending = append(d.pending, pending{said: v, scope: d.scope, lengths: []*Length{to}})
}

func (d *decoder) figure(v *lang.Expr, to *Figure, dims []lang.Dim) {
	to.Span = v.Span
	if v.Op == lang.Number {
		d.setFigure(to, Value{Rat: v.Qty.Base(), Dim: v.Qty.Unit.Dim(), unit: d.source.unit, Span: v.Span}, dims)
		return
	}
	to.How = waiting
	to.Value = float64(len(d.pending))
	d.pending = append(d.pending, pending{said: v, scope: d.scope, figure: to, dims: dims})
}

func (d *decoder) count(v *lang.Expr, to *Count) {
	to.Span = v.Span
	if v.Op == lang.Number {
		d.setCount(to, Value{Rat: v.Qty.Base(), Dim: v.Qty.Unit.Dim(), unit: d.source.unit, Span: v.Span})
		return
	}
	to.How = waiting
	to.N = len(d.pending)
	d.pending = append(d.pending, pending{said: v, scope: d.scope, count: to})
}

// inheritLength gives a field that says nothing what another one says.
func (r *resolver) inheritLength(to, from *Length) {
	if to.How != Unknown || from.How == Unknown {
		return
	}
	*to = *from
	if from.How == waiting {
		p := &r.pending[from.Length]
		if p.state == done { // a copy of the field that was filled
			*to = *p.lengths[0]
			return
		}
		p.lengths = append(p.lengths, to)
	}
}

func (r *resolver) inheritFigure(to, from *Figure) {
	if to.How == Unknown {
		r.needFigure(from)
		*to = *from
	}
}

func (r *resolver) inheritCount(to, from *Count) {
	if to.How == Unknown {
		r.needCount(from)
		*to = *from
	}
}

// need works out a length that waits, and returns it.
func (r *resolver) need(l *Length) Length {
	if l.How == waiting {
		i := int(l.Length)
		r.settle(i)
		if l.How == waiting { // a copy of the field that was filled
			*l = *r.pending[i].lengths[0]
		}
	}
	return *l
}

// needAll works out every one of some lengths that waits.
func (r *resolver) needAll(lengths ...*Length) {
	for _, l := range lengths {
		r.need(l)
	}
}

// thick is how thick some stuff stands, worked out if it waits.
func (r *resolver) thick(s Stuff) Length {
	thick := s.Thick()
	return r.need(&thick)
}

func (r *resolver) needFigure(f *Figure) {
	if f.How == waiting {
		r.settle(int(f.Value))
	}
}

func (r *resolver) needCount(c *Count) Count {
	if c.How == waiting {
		r.settle(c.N)
	}
	return *c
}

// settle works out one pending setting and fills the fields that wait for it.
func (r *resolver) settle(i int) {
	p := &r.pending[i]
	switch p.state {
	case done:
		return
	case busy:
		r.loop(p.said.Span, p.said.Span.Text())
		return
	}
	p.state = busy
	v, ok := r.within(p.said.Span, p.said.Span.Text(), func() (Value, bool) { return r.value(p.said, p.scope) })
	p = &r.pending[i] // the slice may have moved
	p.state = done
	v.Span = p.said.Span
	for _, l := range p.lengths {
		span := l.Span
		if l.How = failed; ok {
			r.setLength(l, v)
		}
		l.Span = span
	}
	if p.figure != nil {
		if p.figure.How = failed; ok {
			r.setFigure(p.figure, v, p.dims)
		}
	}
	if p.count != nil {
		if p.count.How = failed; ok {
			r.setCount(p.count, v)
		}
	}
	if !ok {
		r.plan.Unchecked++
	}
}

func (r *resolver) setLength(to *Length, v Value) {
	to.How = failed
	l, ok := v.Length()
	switch {
	case !ok && v.Dim != lang.Length && v.Dim != lang.Plain:
		r.fault(WrongValue, v.Span, "a size is wanted here, such as `16 13/16`, but this is %s", v.Dim)
	case !ok || l.Abs() > maxLength:
		r.fault(TooLarge, v.Span, "more than 1 km: is the unit right?")
	default:
		to.Length, to.How = l, Written
	}
}

// maxFigure is the most of a quantity that is taken on, in its base unit: far more than any
// material, load, shop or season has.
var maxFigure = [...]float64{
	lang.Plain: 1e6, lang.Percent: 1000, lang.Temperature: 1000, lang.Angle: 360, lang.Slope: 1000,
	lang.Weight: 1e6, lang.Force: 1e7, lang.Torque: 1e6, lang.Pressure: 1e12, lang.LineLoad: 1e6,
	lang.Density: 1e5, lang.Time: 1e9,
}

// gravity is the force with which a kilogram presses, in newtons.
var gravity = lang.Quantity{Value: lang.NewRat(1, 1), Unit: lang.KilogramPerSquareMetre}.Base().Float64()

func (r *resolver) setFigure(to *Figure, v Value, dims []lang.Dim) {
	for _, dim := range dims {
		if v.Dim != dim {
			continue
		}
		*to = Figure{Value: v.Rat.Float64(), Dim: dim, Span: v.Span, How: Written}
		if most := maxFigure[dim]; math.Abs(to.Value) > most {
			to.How = failed
			r.fault(TooLarge, v.Span, "%s beyond any that a piece of furniture meets: is the unit right?", dim)
			return
		}
		if dims[0] == lang.Force && dim == lang.Weight { // `pull 4lb`
			to.Value, to.Dim = to.Value*gravity, lang.Force
		}
		return
	}
	to.How = failed
	r.fault(WrongValue, v.Span, "%s is wanted here, but this is %s", dims[0], v.Dim)
}

// maxCount is the largest number of things that is taken on.
const maxCount = 10_000

func (r *resolver) setCount(to *Count, v Value) {
	to.How = failed
	n, whole := v.Rat.Round()
	switch {
	case v.Dim != lang.Plain:
		r.fault(WrongValue, v.Span, "a number of things is wanted here, such as `4`, but this is %s", v.Dim)
	case !whole && v.Rat.Sign() > 0, n > maxCount:
		r.fault(TooLarge, v.Span, "at most %d are taken on here", maxCount)
	case !v.Rat.IsInt() || n < 1:
		r.fault(WrongValue, v.Span, "a whole number from 1 up is wanted here, such as `4`")
	default:
		*to = Count{N: int(n), Span: to.Span, How: Written}
	}
}

// wrong reports a value that is not of the kind that is wanted.
func (r *resolver) wrong(v *lang.Expr, format string, args ...any) {
	r.fault(WrongValue, v.Span, format, args...)
}

// within runs f as one step of the working out, so that a loop can be shown whole.
func (r *resolver) within(at diag.Span, what string, f func() (Value, bool)) (Value, bool) {
	if len(r.trail) >= maxDepth {
		r.fault(TooLarge, at, "sizes lean on one another more than %d deep here", maxDepth)
		return Value{}, false
	}
	r.trail = append(r.trail, stop{at, what})
	v, ok := f()
	r.trail = r.trail[:len(r.trail)-1]
	return v, ok
}
