package plan

// What is said of words and names that are not understood: where they stand, and the
// nearest that would be.

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"plancheck/internal/diag"
	"plancheck/lang"
)

// fault reports one fault of the text.
func (r *resolver) fault(rule string, at diag.Span, format string, args ...any) *fault {
	r.findings = append(r.findings, diag.Finding{
		Rule: rule, Severity: diag.Error, Span: at, Message: fmt.Sprintf(format, args...),
	})
	return (*fault)(&r.findings[len(r.findings)-1])
}

// fault is a finding that is still being put together.
type fault diag.Finding

func (f *fault) note(at diag.Span, message string) {
	f.Notes = append(f.Notes, diag.Note{Span: at, Message: message})
}

// mend offers an exact mend.
func (f *fault) mend(title string, at diag.Span, text string) {
	f.Fixes = append(f.Fixes, diag.Fix{Title: title, Edits: []diag.Edit{{Span: at, Text: text}}})
}

// unknownWord reports a word that neither stands in this block nor is a setting here, and
// gives what it was probably meant to be; "" if nothing is near.
func (d *decoder) unknownWord(levels []level, word string, at diag.Span) (near string) {
	if word == "" {
		return "" // the line could not be read, and that was reported
	}
	known := func() []string { return wordsAt(levels) }
	where := "in a plan"
	if l := levels[len(levels)-1]; l.word != nil {
		where = "in `" + l.word.Name() + "`"
	}
	near = d.nearest(word, known)
	switch {
	case near != "":
		f := d.fault(UnknownWord, at, "`%s` does not stand %s: did you mean `%s`?", word, where, near)
		f.mend("write `"+near+"`", at, near)
	case len(index().byName[word]) > 0:
		d.fault(UnknownWord, at, "`%s` does not stand %s, but in %s", word, where, placesOf(word))
	case d.scope.find(word) != nil:
		d.fault(UnknownWord, at, "`%s` is no setting %s: write `(%s)` if its value is meant", word, where, word)
	default:
		f := d.fault(UnknownWord, at, "`%s` is no word that stands %s", word, where)
		f.Fixes = []diag.Fix{{Title: d.oneOf(levels)}}
	}
	return near
}

// oneOf offers some of what may stand in a block. A block of one word is asked again and
// again where a text is no plan, and is answered from what was put together first.
func (r *resolver) oneOf(levels []level) string {
	block := level{place: levels[0].place, word: levels[0].word}
	if len(levels) == 1 && r.offers[block] != "" {
		return r.offers[block]
	}
	offer := "write one of " + quotedList(few(wordsAt(levels)))
	if len(levels) == 1 {
		r.offers[block] = offer
	}
	return offer
}

// wordsAt is every word and setting that a line may begin with.
func wordsAt(levels []level) []string {
	var known []string
	for _, l := range levels {
		for _, w := range wordsIn(l.place) {
			known = append(known, w.Names...)
		}
		if l.word != nil {
			for _, s := range l.word.Slots {
				if !s.NameOnly {
					known = append(known, s.Name)
				}
			}
		}
	}
	return known
}

// few is a short list of what may stand somewhere.
func few(known []string) []string {
	known = slices.Compact(slices.Sorted(slices.Values(known)))
	if len(known) > 24 {
		return append(slices.Clone(known[:24]), "…")
	}
	return known
}

// placesOf says in which words a word may stand.
func placesOf(word string) string {
	var homes []string
	for _, w := range index().byName[word] {
		for _, home := range index().all {
			if home.Opens&w.In != 0 && w.In != Anywhere {
				homes = append(homes, home.Name())
			}
		}
		if w.In&AtTop != 0 {
			homes = append(homes, "the file itself")
		}
	}
	homes = slices.Compact(slices.Sorted(slices.Values(homes)))
	if len(homes) > 6 {
		homes = append(homes[:6:6], "…")
	}
	for i, h := range homes {
		if !strings.Contains(h, " ") && h != "…" {
			homes[i] = "`" + h + "`"
		}
	}
	return strings.Join(homes, ", ")
}

func (d *decoder) unknownEach(said lang.Expr) {
	near := d.nearest(said.Text, func() []string {
		var known []string
		for _, w := range wordsIn(InList) {
			if w.Opens != InList {
				known = append(known, w.Names...)
			}
		}
		return known
	})
	d.fault(UnknownWord, said.Span, "`each` wants what stands in a list, such as `rail`, not `%s`%s", said.Text, didYouMean(near))
}

// unknownBetween reports what cannot stand between the things of a row. A misspelt word is read
// as what was meant, so that the row adds up; of any other, nobody knows what the row takes.
func (d *decoder) unknownBetween(said *lang.Expr, b *Between) {
	near := d.nearest(said.Text, func() []string {
		var known []string
		for _, w := range wordsIn(InList) {
			if w.Opens&InMember != 0 {
				known = append(known, w.Names...)
			}
		}
		return known
	})
	b.Word.Text = near
	if w := wordIn(InList, said.Text); w != nil && w.Opens&InSpace != 0 {
		d.fault(UnknownWord, said.Span, "`between` wants a stick or a board, not `%s`: without `between`, sticks and boards in a row have equal gaps", said.Text)
		return
	}
	d.fault(UnknownWord, said.Span, "`between` wants a stick or a board, such as `between muntin 2 1/4`, not `%s`%s", said.Text, didYouMean(near))
}

// unnamed reports a value that no setting asks for.
func (d *decoder) unnamed(v *lang.Expr) {
	said := v.Span.Text()
	l := d.line.levels[len(d.line.levels)-1]
	f := d.fault(WrongValue, v.Span, "what is `%s`? `%s` takes no value without a name here", said, l.word.Name())
	for _, s := range l.word.Slots {
		if !s.NameOnly && s.Kind != AFlag && s.takes(v) && !s.given(l.node).Known() {
			f.mend("name it, as in `"+s.Name+" "+said+"`", v.Span, s.Name+" "+said)
			return
		}
	}
	f.Fixes = []diag.Fix{{Title: "name each value, as in `" + l.word.Example + "`"}}
}

// unknownName reports a name that nothing bears.
func (r *resolver) unknownName(e *lang.Expr, name string, sc *scope, wants string) {
	at := e.Span
	at.End = at.Start + int32(len(name))
	if before, after, ok := strings.Cut(name, "-"); ok && sc.find(before) != nil {
		f := r.fault(UnknownName, at, "nothing is called `%s`", name)
		f.mend("write `"+before+" - "+after+"`, with blanks, to subtract", at, before+" - "+after)
		return
	}
	if r.unknownAgain(unknown{name: name, wants: wants}, at) {
		return
	}
	near := r.nearest(name, func() []string {
		if wants == jointWanted {
			return append(sc.known(), jointKindNames()...)
		}
		return sc.known()
	})
	f := r.fault(UnknownName, at, "nothing is called `%s`, and %s is wanted here%s", name, wants, didYouMean(near))
	if near != "" {
		f.mend("write `"+near+"`", at, near)
	}
}

// unknown is a name that nothing bears, or nothing within a thing.
type unknown struct {
	in          any // nil for the first name of a path
	name, wants string
}

// maxNotes is at how many more places one finding is shown.
const maxNotes = 12

// unknownAgain adds a place to the finding of a name that was missed before, for what is not
// there is missed once. It reports false, and takes the next finding for the first, where it
// was not.
func (r *resolver) unknownAgain(name unknown, at diag.Span) bool {
	i, again := r.unknowns[name]
	if !again {
		r.unknowns[name] = len(r.findings)
		return false
	}
	f := (*fault)(&r.findings[i])
	if f.Span == at || slices.ContainsFunc(f.Notes, func(n diag.Note) bool { return n.Span == at }) {
		return true // a line that is read more than once
	}
	if len(f.Notes) < maxNotes {
		f.note(at, "and here")
	}
	for i := range f.Fixes {
		if edits := f.Fixes[i].Edits; len(edits) > 0 {
			f.Fixes[i].Edits = append(edits, diag.Edit{Span: at, Text: edits[0].Text})
		}
	}
	return true
}

// known is every name that can be found in a scope, in order.
func (sc *scope) known() []string {
	var names []string
	for ; sc != nil; sc = sc.outer {
		for name := range sc.names {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// unknownInside reports a name or a size that a thing does not have.
func (r *resolver) unknownInside(e *lang.Expr, thing any, name string) {
	if a, ok := thing.(*Assembly); ok && a.unread {
		return // it may stand in what was not understood, and that was reported
	}
	if r.unknownAgain(unknown{in: thing, name: name}, e.Span) {
		return
	}
	near := r.nearest(name, func() []string { return insideNames(thing) })
	f := r.fault(UnknownName, e.Span, "%s has nothing called `%s`%s", kindOf(thing), name, didYouMean(near))
	if near == "" {
		f.note(e.Span, "it has "+quotedList(few(insideNames(thing))))
	}
}

// insideNames are the names and sizes that a thing offers after a dot.
func insideNames(thing any) []string {
	var known []string
	offer := func(kinds ...string) {
		for _, s := range SizeNames() {
			if slices.Contains(kinds, s.Of) {
				known = append(known, s.Name)
			}
		}
	}
	inner := func(sc *scope) {
		known = slices.AppendSeq(known, maps.Keys(sc.names))
		slices.Sort(known)
	}
	switch t := thing.(type) {
	case *Assembly:
		inner(t.scope)
		offer("assembly")
	case *Build:
		inner(t.scope)
	case *Member:
		offer("member", "any")
	case *Part, *BoxPart:
		offer("member")
	case *Door:
		offer("opening", "door", "any")
	case *Drawer:
		offer("opening", "drawer", "any")
	case *Placed:
		if t.Part.To != nil {
			inner(t.Part.To.scope)
		}
		offer("assembly", "any")
	case Node:
		offer("opening", "any")
	}
	return known
}

// firstSize is a size that a thing offers, as an example; "" where it offers none.
func firstSize(thing any) string {
	for _, n := range insideNames(thing) {
		for _, s := range SizeNames() {
			if s.Name == n {
				return n
			}
		}
	}
	return ""
}

// maxCompared is how many known words and names are compared, in all, with those that are
// not: a text that is full of unknown names is no plan, and each search looks at all of them.
const maxCompared = 2_000_000

// nearest is the known word or name that one is most likely meant to be; "" where none is
// near.
func (r *resolver) nearest(word string, known func() []string) string {
	if r.compared >= maxCompared {
		return ""
	}
	names := known()
	r.compared += len(names)
	return diag.Nearest(word, names)
}

func didYouMean(near string) string {
	if near == "" {
		return ""
	}
	return ": did you mean `" + near + "`?"
}

// quoted puts a name or an example between marks; text from a plan is kept short.
func quoted(s string) string {
	if r := []rune(s); len(r) > 80 {
		s = string(r[:77]) + "..."
	}
	return "`" + s + "`"
}

func quotedList(words []string) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = "`" + w + "`"
	}
	return strings.Join(list, ", ")
}

// wants says what a slot takes, in words.
func (s *Slot) wants() string {
	switch s.Kind {
	case AName:
		return cmp.Or(s.Wants, "a name")
	case ALength:
		return "a size"
	case ALengths:
		return "one or more sizes"
	case APair, ASize3:
		return "a size"
	case AFigure:
		words := make([]string, len(s.Dims))
		for i, d := range s.Dims {
			words[i] = d.String()
		}
		return strings.Join(words, " or ")
	case ACount:
		return "a number"
	case AChoice:
		return "one of " + quotedList(s.Choices)
	case AText:
		return "a text in double quotes"
	case ARef, AStuff:
		return "the name of " + s.Wants
	case ARefs:
		return "one or more names"
	}
	return "a value"
}

// Called is what a message calls a thing of a layout: `rail "head"`, or its word alone.
func (i *Item) Called() string {
	if i.Name.Text == "" {
		return i.Word
	}
	return i.Word + " " + strconv.Quote(i.Name.Text)
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if word != "" && strings.Contains("aeio", word[:1]) {
		return "an " + word
	}
	return "a " + word
}

// kindOf says what a thing is: "a hinge", "rail `head`".
func kindOf(thing any) string {
	switch t := thing.(type) {
	case *Let:
		return "a value"
	case *Assembly:
		return article(t.Kind.String())
	case *Build:
		return "a build"
	case *Pattern:
		return "a pattern"
	case *Part:
		return "a part"
	case *Material:
		return article(t.Kind.String())
	case *Glue:
		return "a glue"
	case *Finish:
		return "a finish"
	case *Hinge:
		return "a hinge"
	case *Latch:
		return article(t.Word)
	case *Slide:
		return "a slide"
	case *Stay:
		return "a stay"
	case *Handle:
		return "a handle"
	case *Rod:
		return "a rod"
	case *Fastener:
		return article(t.Word)
	case *Joint:
		return "a joint"
	case *BoxPart:
		return "a part of a drawer"
	case Node:
		return article(t.item().Word)
	}
	return "a thing of another kind"
}

// PathOf is the path by which a plan names a thing: `carcass.upper`, `left.leaf.head`; ""
// for what has none.
func PathOf(thing any) string {
	switch t := thing.(type) {
	case *Assembly:
		return t.Build.path() + t.Name.Text
	case *Build:
		return strings.TrimSuffix(t.path(), ".")
	case *Part:
		return t.source.path() + t.Name.Text
	case *BoxPart:
		return PathOf(t.Drawer) + "." + t.Name
	case BreadboardEnd:
		return PathOf(t.Top)
	case Node:
		it := t.item()
		switch {
		case it.path != "":
			return it.path
		case it.In == nil:
			return it.source.path() + it.Name.Text
		case it.Name.Text == "":
			return PathOf(it.In)
		}
		return PathOf(it.In) + "." + it.Name.Text
	case named:
		return t.naming().Text
	}
	return ""
}

// path is what stands before the names of what a build made.
func (b *Build) path() string {
	if b == nil {
		return ""
	}
	if b.placed != nil {
		return PathOf(b.placed) + "."
	}
	return b.within.path() + b.Name.Text + "."
}
