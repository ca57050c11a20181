package plan

// What several tables of words share beyond the constructors in words.go.

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

// grown lets a word finish its node with what only its statement tells.
func grown[C any](w Word, finish func(node *C, s *lang.Statement)) Word {
	grow := w.grow
	w.grow = func(d *decoder, owner any, s *lang.Statement) any {
		node := grow(d, owner, s)
		if c, ok := node.(*C); ok {
			finish(c, s)
		}
		return node
	}
	return w
}

// within makes w a word that groups settings of its owner: `keeper deep 3/8`.
func within(w Word) Word {
	w.grow = func(_ *decoder, owner any, _ *lang.Statement) any { return owner }
	return w
}

// once reports a word that stands a second time where one is enough.
func (d *decoder) once(s *lang.Statement, first diag.Span) bool {
	if !first.Known() {
		return true
	}
	f := d.fault(GivenTwice, s.Word.Span, "`%s` is stated twice", s.Word.Text)
	f.Notes = append(f.Notes, diag.Note{Span: first, Message: "stated first here"})
	return false
}

// both marks a slot of a size that means nothing by one number.
func (s Slot) both() Slot {
	set := s.set
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		if v.Op != lang.Sized || len(v.Args) != 2 {
			d.wrong(v, "two sizes are wanted here, such as `%s`", s.Example)
			return
		}
		set(d, node, at, v)
	}
	return s
}

// bare is a choice whose words stand by themselves, each like a flag: `rough`.
func bare[T any](word, doc string, field func(*T) *Choice) Slot {
	return Slot{
		Name: word, Doc: doc, Example: word, Kind: AFlag,
		set: func(_ *decoder, node any, at, _ *lang.Expr) {
			*field(node.(*T)) = Choice{at.Text, at.Span}
		},
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(_ *decoder, node, from any) {
			if to := field(node.(*T)); to.Is == "" {
				*to = *field(from.(*T))
			}
		},
	}
}

// thing names anything of the plan.
func thing[T any](name, doc, example string, field func(*T) *Ref[Thing]) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ARef, Wants: aThing,
		set:   func(d *decoder, node any, _, v *lang.Expr) { d.thing(v, field(node.(*T))) },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(_ *decoder, node, from any) {
			if to := field(node.(*T)); to.Name == "" {
				*to = *field(from.(*T))
			}
		},
	}
}

func (d *decoder) thing(v *lang.Expr, to *Ref[Thing]) {
	to.Name, to.Span = v.Text, v.Span
	d.bind(v, aThing, func(found any) bool {
		to.To = &Thing{Is: found, Path: PathOf(found)}
		return true
	})
}

// weight is a figure of something that weighs, in kilograms.
func weight[T any](name, doc, example string, field func(*T) *Figure) Slot {
	return figure(name, doc, example, field, lang.Weight)
}

// force is a figure of something that pulls or presses, in newtons; makers also say it as
// a weight.
func force[T any](name, doc, example string, field func(*T) *Figure) Slot {
	return figure(name, doc, example, field, lang.Force, lang.Weight)
}

// length2 is a length behind a word that is always the same: `from top 4`, `glue centre 4`.
func length2[T any](name, word, doc, example string, field func(*T) *Length) Slot {
	s := length(name, doc, example, field)
	s.Kind, s.Choices = AChoice, names(word)
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		n := d.number()
		if n == nil {
			d.fault(MissingValue, v.Span, "`%s %s` wants a size: write %s", name, word, quoted(example))
			return
		}
		d.length(n, field(node.(*T)))
	}
	return s
}

// mention marks a setting that names things without making use of them.
func (s Slot) mention() Slot {
	set := s.set
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		before := len(d.bindings)
		set(d, node, at, v)
		for i := range d.bindings[before:] {
			d.bindings[before+i].mention = true
		}
	}
	return s
}
