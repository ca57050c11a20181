package plan

// Finding names. Scopes nest: the file with all that it uses is one flat space, then what
// a build made, then the assembly. Lists make no scope. The first name of a path is
// sought from the inside out, the rest only inside what was found.

import (
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// scope is one space of names, for all kinds of things.
type scope struct {
	outer  *scope
	names  map[string]any
	source *source
}

func (sc *scope) inner() *scope {
	return &scope{outer: sc, names: make(map[string]any), source: sc.source}
}

// unit is what a bare number stands for in this scope's file.
func (sc *scope) unit() wood.Length { return sc.source.unit }

// find seeks a name from the inside out.
func (sc *scope) find(name string) any {
	for ; sc != nil; sc = sc.outer {
		if thing, ok := sc.names[name]; ok {
			return thing
		}
	}
	return nil
}

// binding is a name that is to be found once everything is read.
type binding struct {
	said  *lang.Expr
	scope *scope
	wants string
	take  func(found any) bool // false if it is not of the kind that is wanted

	mention bool // naming it here is no use of it
}

func (d *decoder) bind(said *lang.Expr, wants string, take func(found any) bool) {
	d.bindings = append(d.bindings, binding{said: said, scope: d.scope, wants: wants, take: take})
}

// aThing is what a name stands for where it may be that of anything.
const aThing = "a thing of this plan"

// bindNames finds every name that something was said to be. Until the rows stand, what may be
// one of a row waits.
func (r *resolver) bindNames(rowsStand bool) {
	bindings := r.bindings
	r.bindings = nil
	for _, b := range bindings {
		if !rowsStand && b.wants == aThing && !r.stands(b.said.Text, b.scope) {
			r.bindings = append(r.bindings, b)
			continue
		}
		found, ok := r.lookUp(b.said, b.scope, b.wants)
		if !ok {
			continue
		}
		if !b.mention {
			use(found)
		}
		if !b.take(found) {
			f := r.fault(UnknownName, b.said.Span, "`%s` is %s, but %s is wanted here", b.said.Text, kindOf(found), b.wants)
			if n, ok := found.(named); ok {
				f.note(n.naming().Span, "it stands here")
			}
		}
	}
}

// stands reports whether a path leads to anything yet.
func (r *resolver) stands(path string, sc *scope) bool {
	first, rest, dotted := strings.Cut(path, ".")
	thing := sc.find(first)
	for dotted && thing != nil {
		var name string
		name, rest, dotted = strings.Cut(rest, ".")
		thing = r.inside(thing, name)
	}
	return thing != nil
}

// named is whatever bears a name.
type named interface{ naming() *Name }

// declare makes a name stand for a thing in a scope.
func (r *resolver) declare(sc *scope, at *lang.Expr, thing any) {
	name := at.Text
	if strings.Contains(name, ".") {
		r.fault(WrongValue, at.Span, "`%s` is a path to something drawn elsewhere: a name of its own has no dot, such as `%s`", name, strings.ReplaceAll(name, ".", "-"))
		return
	}
	if first, taken := sc.names[name]; taken {
		f := r.fault(DuplicateName, at.Span, "`%s` names two things here", name)
		if n, ok := first.(named); ok {
			f.note(n.naming().Span, "named first here")
		}
		return
	}
	sc.names[name] = thing
}

// lookUp finds the thing that a path stands for. ok is false where nothing bears the name,
// and that was reported.
func (r *resolver) lookUp(e *lang.Expr, sc *scope, wants string) (any, bool) {
	first, rest, dotted := strings.Cut(e.Text, ".")
	thing := sc.find(first)
	if thing == nil {
		r.unknownName(e, first, sc, wants)
		return nil, false
	}
	for dotted {
		var name string
		name, rest, dotted = strings.Cut(rest, ".")
		next := r.inside(thing, name)
		if next == nil {
			r.unknownInside(e, thing, name)
			return nil, false
		}
		thing = next
	}
	return thing, true
}

// use takes down that something names a thing.
func use(thing any) {
	if n, ok := thing.(named); ok {
		n.naming().Used = true
	}
}

// inside is the thing of that name within another; nil if there is none.
func (r *resolver) inside(thing any, name string) any {
	switch t := thing.(type) {
	case *Assembly:
		return t.scope.names[name]
	case *Build:
		return t.scope.names[name]
	case *Placed:
		if t.Part.To != nil {
			return t.Part.To.scope.names[name]
		}
	case *Door:
		if name == "leaf" && t.Leaf.Frame != nil {
			return t.Leaf.Frame
		}
	}
	return nil
}

// named is what a name in an expression comes to: a let, or a size of the piece.
func (r *resolver) named(e *lang.Expr, sc *scope) (Value, bool) {
	first, rest, dotted := strings.Cut(e.Text, ".")
	thing := sc.find(first)
	if thing == nil {
		r.unknownName(e, first, sc, "a size")
		return Value{}, false
	}
	use(thing)
	if let, ok := thing.(*Let); ok && !dotted {
		return r.let(e, let)
	}
	for dotted {
		if l, ok := r.size(thing, rest); ok {
			if !l.Known() {
				return Value{}, false
			}
			return Value{Rat: lang.NewRat(int64(l.Length), 1), Dim: lang.Length, how: l.How}, true
		}
		var name string
		name, rest, dotted = strings.Cut(rest, ".")
		next := r.inside(thing, name)
		if next == nil {
			r.unknownInside(e, thing, name)
			return Value{}, false
		}
		thing = next
		use(thing)
	}
	mend := ", and has no size"
	if size := firstSize(thing); size != "" {
		mend = ": name one of its sizes, such as `" + e.Text + "." + size + "`"
	}
	f := r.fault(WrongValue, e.Span, "`%s` is %s%s", e.Text, kindOf(thing), mend)
	if n, ok := thing.(named); ok {
		f.note(n.naming().Span, "it stands here")
	}
	return Value{}, false
}

// let is the value of a let, worked out once. A bare number keeps the unit of the file that
// wrote it.
func (r *resolver) let(e *lang.Expr, let *Let) (Value, bool) {
	return let.Value, r.workOut(let, e.Span)
}

// workOut finds the value of a let, if that can be done; at is where it is asked for.
// Lets that lean on one another in a long chain are worked out from its far end, on a
// stack of our own.
func (r *resolver) workOut(let *Let, at diag.Span) bool {
	let.queued = true
	for chain := []*Let{let}; len(chain) > 0; {
		last := chain[len(chain)-1]
		if last.state == untouched {
			if next := leansOn(last.Said, last.scope, false); next != nil {
				next.queued = true
				chain = append(chain, next)
				continue
			}
			if next := leansOn(last.Said, last.scope, true); next != nil && slices.Contains(chain, next) {
				r.ring(chain[slices.Index(chain, next):])
			}
		}
		r.workOutOne(last)
		chain = chain[:len(chain)-1]
	}
	return let.known
}

// ring reports lets each of which leans on the next, and the last on the first. None of them
// can be worked out.
func (r *resolver) ring(lets []*Let) {
	outer := r.trail
	r.trail = nil
	for _, let := range lets {
		let.state = done
		r.trail = append(r.trail, stop{let.Name.Span, let.Name.Text})
	}
	r.loop(lets[0].Name.Span, lets[0].Name.Text)
	r.trail = outer
}

func (r *resolver) workOutOne(let *Let) {
	switch let.state {
	case busy:
		r.loop(let.Name.Span, let.Name.Text)
	case untouched:
		let.state = busy
		let.Value, let.known = r.within(let.Name.Span, let.Name.Text, func() (Value, bool) { return r.value(let.Said, let.scope) })
		let.state = done
	}
}

// leansOn is a let that an expression names and that nobody has worked out yet: one that is
// queued for it, or one that is not.
func leansOn(e *lang.Expr, sc *scope, queued bool) *Let {
	if e == nil {
		return nil
	}
	if e.Op == lang.Name {
		if let, ok := sc.find(e.Text).(*Let); ok && let.state == untouched && let.queued == queued {
			return let
		}
	}
	for i := range e.Args {
		if let := leansOn(&e.Args[i], sc, queued); let != nil {
			return let
		}
	}
	return nil
}

// stop is one step of the working out: something that waits for what follows.
type stop struct {
	at   diag.Span
	what string
}

// loop reports sizes that wait for one another, once, at the first place of the loop.
func (r *resolver) loop(at diag.Span, what string) {
	from := len(r.trail) - 1
	for from > 0 && r.trail[from].at != at {
		from--
	}
	round := r.trail[from:]
	first := 0
	for i, s := range round {
		if s.at.Start < round[first].at.Start {
			first = i
		}
	}
	if r.looped[round[first].at] {
		return
	}
	r.looped[round[first].at] = true
	f := r.fault(Loop, round[first].at, "`%s` waits for itself: no size in this loop can be worked out", round[first].what)
	for i := 1; i < min(len(round), 12); i++ {
		s := round[(first+i)%len(round)]
		f.note(s.at, "which waits for `"+s.what+"`")
	}
	f.Fixes = append(f.Fixes, diag.Fix{Title: "state one of these sizes as a number"})
}
