package plan

// An item's block may also stand outside its list, with its word and path:
// `drawer carcass.upper { … }`. Such a block waits until all names are known.

import (
	"strings"

	"plancheck/lang"
)

// outsideBlock is a statement that says more of something drawn elsewhere.
type outsideBlock struct {
	statement *lang.Statement
	scope     *scope
	source    *source
	build     *Build
}

// outsideName reports whether a statement names something by a path, so that it does not
// declare it.
func outsideName(s *lang.Statement) bool {
	return len(s.Values) > 0 && s.Values[0].Op == lang.Name && strings.Contains(s.Values[0].Text, ".")
}

// later keeps a statement for when names are known. It returns nothing, as a refusal does.
func (d *decoder) later(s *lang.Statement) any {
	d.outsides = append(d.outsides, outsideBlock{s, d.scope, d.source, d.build})
	return nil
}

// placeOutsideBlocks reads the blocks that stand outside their lists.
func (r *resolver) placeOutsideBlocks() {
	for i := 0; i < len(r.outsides); i++ {
		r.placeOutside(r.outsides[i])
	}
}

func (r *resolver) placeOutside(o outsideBlock) {
	s := o.statement
	if len(s.Values) == 0 || s.Values[0].Op != lang.Name {
		if !s.Faulty {
			r.fault(MissingValue, s.Word.Span, "`%s` stands in a list (across, down or behind); outside of one it wants the path of what it says more of: write `%s carcass.upper { … }`", s.Word.Text, s.Word.Text)
		}
		return
	}
	at := &s.Values[0]
	found, ok := r.lookUp(at, o.scope, "a "+s.Word.Text)
	if !ok {
		return
	}
	w := wordIn(InList, s.Word.Text)
	n, isNode := found.(Node)
	if !isNode || w == nil || wordIn(InList, n.item().Word) != w {
		f := r.fault(UnknownName, at.Span, "`%s` is %s, not a %s", at.Text, kindOf(found), s.Word.Text)
		if named, ok := found.(named); ok {
			f.note(named.naming().Span, "it stands here")
		}
		return
	}
	d := &decoder{resolver: r, source: o.source, scope: o.scope, build: o.build}
	d.line = line{values: s.Values, at: 1, levels: []level{{w.Opens, w, found}}}
	d.settings(s.Faulty)
	if s.Block != nil {
		d.block(s)
	}
}

// relation works out both sides of a check.
func (r *resolver) relation(c *Check) {
	e := c.Said
	if e == nil {
		return
	}
	if e.Op.Sign() == "" || len(e.Args) != 2 || e.Op < lang.Same {
		r.fault(MissingValue, e.Span, "`check` wants a comparison: write `check \"why\" a >= b`")
		return
	}
	left, okLeft := r.value(&e.Args[0], c.scope)
	right, okRight := r.value(&e.Args[1], c.scope)
	if !okLeft || !okRight {
		r.plan.Unchecked++
		return
	}
	if left, right, okLeft = r.alike(e, left, right); !okLeft {
		return
	}
	c.Left, c.Right, c.Known = left, right, true
	for i := range c.Terms {
		c.Terms[i] = r.terms(nil, &e.Args[i], c.scope, false)
	}
	within := r.plan.Tape.Tolerance()
	if w := r.need(&c.Within); w.Known() {
		within = w.Length
	}
	c.Holds = left.Compare(e.Op, right, within)
}

// terms takes an expression apart into what it adds and takes off. All of it could be
// worked out.
func (r *resolver) terms(to []Term, e *lang.Expr, sc *scope, minus bool) []Term {
	switch e.Op {
	case lang.Add, lang.Sub:
		to = r.terms(to, &e.Args[0], sc, minus)
		return r.terms(to, &e.Args[1], sc, minus != (e.Op == lang.Sub))
	case lang.Group, lang.Pos:
		return r.terms(to, &e.Args[0], sc, minus)
	case lang.Neg:
		return r.terms(to, &e.Args[0], sc, !minus)
	}
	v, _ := r.value(e, sc)
	return append(to, Term{v, minus, strings.Join(strings.Fields(e.Span.Text()), " ")})
}
