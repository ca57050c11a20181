package plan

// Decoding turns statements into typed nodes by the words table. What a line says is
// sought from its innermost word outward: in `each panel joint rabbet 1/4 gap 1/8` the
// rabbet takes what it knows, and `gap` goes to the panel. A value that is a plain number
// is read at once; any other is kept as an expression until all names are known.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// decoder reads the statements of one file.
type decoder struct {
	*resolver
	source *source
	scope  *scope
	build  *Build
	line   line // the statement that is being read
}

// source is a file with the unit that its bare numbers stand for.
type source struct {
	file *diag.File  // and not its tree, which would live as long as the plan
	unit wood.Length // of a bare number where a length is wanted
}

// line is how far the reading of a statement has come.
type line struct {
	values []lang.Expr
	at     int
	levels []level
}

// level is a word whose settings may follow.
type level struct {
	place Place // what its block holds
	word  *Word // nil for a file
	node  any
}

// body reads the statements of a block. A name at the head of a line is sought from the
// last of the levels to the first.
func (d *decoder) body(levels []level, statements []*lang.Statement) {
	stray := false
	for _, s := range statements {
		stray = !d.statement(levels, s, stray)
	}
}

// statement reads one line, and reports whether its word stands here. A run of lines that do
// not has one cause, such as a lost brace: it is reported at its first.
func (d *decoder) statement(levels []level, s *lang.Statement, afterStray bool) bool {
	if d.tooMany() {
		return true
	}
	outer := d.line
	defer func() { d.line = outer }()
	d.line = line{values: s.Values}

	for i := len(levels) - 1; i >= 0; i-- {
		l := levels[i]
		if w := wordIn(l.place, s.Word.Text); w != nil {
			if w.decode != nil {
				w.decode(d, l.node, s)
			} else {
				d.word(w, l.node, s)
			}
			return true
		}
		if l.word == nil {
			continue
		}
		if slot := l.word.Setting(s.Word.Text); slot != nil {
			d.line.levels = append(d.line.levels, levels[:i+1]...)
			if d.setting(slot, l.node, &lang.Expr{Op: lang.Name, Span: s.Word.Span, Text: s.Word.Text}, s.Faulty) {
				d.settings(s.Faulty)
			}
			if s.Block != nil {
				d.fault(UnknownWord, s.Block.Open, "`%s` takes no block", s.Word.Text)
			}
			return true
		}
	}
	if last := levels[len(levels)-1]; last.place&(AtTop|InPattern|InAssembly) != 0 && outsideName(s) && wordIn(InList, s.Word.Text) != nil {
		d.later(s)
		return true
	}
	return d.unread(levels, s, afterStray)
}

// unread reports a statement whose word does not stand here. One that is misspelt is read as
// what it was meant to be; in a list, what no one can tell the meaning of leaves a gap, so that
// nothing is worked out as if it were not there.
func (d *decoder) unread(levels []level, s *lang.Statement, afterStray bool) bool {
	if !afterStray {
		near := d.unknownWord(levels, s.Word.Text, s.Word.Span)
		if standsAt(levels, near) {
			meant := *s
			meant.Word.Text = near
			return d.statement(levels, &meant, false)
		}
	}
	for _, l := range levels {
		switch n := l.node.(type) {
		case *Assembly:
			n.unread = true
		case Node:
			if in := n.item().In; in != nil {
				in.unread = true
			}
		}
	}
	if l, ok := levels[len(levels)-1].node.(*List); ok && len(index().byName[s.Word.Text]) == 0 {
		gap := new(Space)
		gap.Item = itemAt("space", s)
		gap.Along.How = failed
		if len(s.Values) > 0 && s.Values[0].Op == lang.Name {
			gap.Name = Name{Text: s.Values[0].Text, Span: s.Values[0].Span, Used: true}
			d.declare(d.scope, &s.Values[0], gap)
		}
		d.add(l, gap)
	}
	return false
}

// standsAt reports whether a word may head a line here that says something new.
func standsAt(levels []level, word string) bool {
	return word != "" && slices.ContainsFunc(levels, func(l level) bool {
		if wordIn(l.place, word) != nil {
			return true
		}
		if l.word == nil {
			return false
		}
		slot := l.word.Setting(word)
		return slot != nil && !slot.given(l.node).Known()
	})
}

// word reads a statement that is headed by a word with a node of its own.
func (d *decoder) word(w *Word, owner any, s *lang.Statement) {
	faults := len(d.findings)
	node := w.grow(d, owner, s)
	if node == nil {
		return // refused, and reported
	}
	d.line.levels = append(d.line.levels, level{w.Opens, w, node})
	if s.Times != nil {
		d.times(s.Times)
	}
	d.positionals(w, node, s.Word.Span, s.Faulty)
	d.settings(s.Faulty)
	if s.Block != nil {
		d.block(s)
	}
	if w.In&InList == 0 && len(d.findings) == faults && !s.Faulty { // what stands in a list may have it from `each`
		d.lacks(w, node, s)
	}
}

// lacks reports the first setting that a word cannot do without and that its line and its
// block leave out.
func (d *decoder) lacks(w *Word, node any, s *lang.Statement) {
	for i := range w.Slots {
		if slot := &w.Slots[i]; slot.Must && !slot.Positional && !slot.given(node).Known() {
			d.fault(MissingValue, s.Word.Span, "`%s` wants `%s`: write %s", w.Name(), slot.Name, quoted(slot.Example))
			return
		}
	}
}

// block reads the block of the statement on the line, in the scope of its node.
func (d *decoder) block(s *lang.Statement) {
	levels := d.line.levels
	outer := d.scope
	if a, ok := levels[0].node.(*Assembly); ok {
		d.scope = a.scope
	}
	if l, ok := levels[0].node.(*List); ok {
		l.Close = s.Block.Close
	}
	d.body(levels, s.Block.Body)
	d.scope = outer
}

// times reads the number behind `button x 8` or `part leg x 4`.
func (d *decoder) times(n *lang.Expr) {
	l := d.line.levels[len(d.line.levels)-1]
	if slot := l.word.Setting("count"); slot != nil {
		slot.set(d, l.node, n, n)
		return
	}
	d.fault(UnknownWord, n.Span, "`%s` is not counted with x", l.word.Name())
}

// positionals reads the values that stand before the first setting.
func (d *decoder) positionals(w *Word, node any, at diag.Span, faulty bool) {
	for i := range w.Slots {
		slot := &w.Slots[i]
		if !slot.Positional {
			continue
		}
		v := d.peek()
		if v != nil {
			what, number := counted(slot, v)
			if d.fits(slot, what) {
				d.line.at++
				if number != nil {
					d.times(number)
				}
				slot.set(d, node, what, what)
				continue
			}
		}
		if slot.Must && !faulty {
			d.fault(MissingValue, at, "`%s` wants %s: write %s", w.Name(), slot.wants(), quoted(w.Example))
			d.line.at = len(d.line.values)
			return
		}
	}
}

// settings reads settings and the words that have settings of their own, to the end of
// the line. The first fault ends it: what follows may belong to what was not understood.
func (d *decoder) settings(faulty bool) {
	for v := d.peek(); v != nil; v = d.peek() {
		if !d.setting1(v, faulty) {
			return
		}
	}
}

func (d *decoder) setting1(v *lang.Expr, faulty bool) bool {
	if v.Op != lang.Name {
		if !faulty {
			d.unnamed(v)
		}
		return false
	}
	for i := len(d.line.levels) - 1; i >= 0; i-- {
		l := d.line.levels[i]
		if l.word == nil {
			continue
		}
		if slot := l.word.Setting(v.Text); slot != nil {
			d.line.at++
			d.line.levels = d.line.levels[:i+1]
			return d.setting(slot, l.node, v, faulty)
		}
		if w := wordIn(l.place, v.Text); w != nil && w.decode == nil && w.In != Anywhere {
			d.line.at++
			d.line.levels = d.line.levels[:i+1]
			s := &lang.Statement{Span: v.Span, Word: lang.Word{Text: v.Text, Span: v.Span}}
			node := w.grow(d, l.node, s)
			if node == nil {
				return false
			}
			d.line.levels = append(d.line.levels, level{w.Opens, w, node})
			d.positionals(w, node, v.Span, faulty)
			return true
		}
	}
	if !faulty {
		d.unknownWord(d.line.levels, v.Text, v.Span)
	}
	return false
}

// setting reads the value of one setting; at is the word that names it.
func (d *decoder) setting(slot *Slot, node any, at *lang.Expr, faulty bool) bool {
	if first := slot.given(node); first.Known() {
		f := d.fault(GivenTwice, at.Span, "`%s` is stated twice here", slot.Name)
		f.note(first, "stated first here")
		return false
	}
	if slot.Kind == AFlag {
		slot.set(d, node, at, nil)
		return true
	}
	v := d.peek()
	if v == nil {
		if !faulty {
			d.fault(MissingValue, at.Span, "`%s` wants %s: write %s", slot.Name, slot.wants(), quoted(slot.Example))
		}
		return false
	}
	if !slot.takes(v) {
		d.fault(WrongValue, v.Span, "`%s` wants %s, such as %s", slot.Name, slot.wants(), quoted(slot.Example))
		return false
	}
	d.line.at++
	slot.set(d, node, at, v)
	return true
}

// peek is the next value of the line; nil at its end.
func (d *decoder) peek() *lang.Expr {
	if d.line.at < len(d.line.values) {
		return &d.line.values[d.line.at]
	}
	return nil
}

// number takes the next value if it can be a number: no text, and no word that names a
// setting here.
func (d *decoder) number() *lang.Expr {
	v := d.peek()
	if v == nil || !numeric(v) || v.Op == lang.Name && d.isSetting(v.Text) {
		return nil
	}
	d.line.at++
	return v
}

// isSetting reports whether a word names a setting, or a word with settings, on this line.
func (d *decoder) isSetting(name string) bool {
	for _, l := range d.line.levels {
		if l.word != nil && l.word.Setting(name) != nil {
			return true
		}
		if w := wordIn(l.place, name); w != nil && w.In != Anywhere {
			return true
		}
	}
	return false
}

// counted splits `leg x 4`, where a slot wants a name, into the name and the number.
func counted(s *Slot, v *lang.Expr) (what, number *lang.Expr) {
	if (s.Kind == AName || s.Kind == ARef) && v.Op == lang.Sized && len(v.Args) == 2 {
		return &v.Args[0], &v.Args[1]
	}
	return v, nil
}

// fits reports whether a value may fill a slot without its name. A word that names a
// setting is that setting, except where the slot wants a name or lists that very word.
func (d *decoder) fits(s *Slot, v *lang.Expr) bool {
	if !s.takes(v) {
		return false
	}
	if v.Op != lang.Name || s.chosen(v.Text) || s.Kind == AName && s.Must && s.Choices == nil {
		return true
	}
	return !d.isSetting(v.Text)
}

// takes reports whether a value is of the slot's kind, as far as its form tells.
func (s *Slot) takes(v *lang.Expr) bool {
	switch s.Kind {
	case AName, ARef, AStuff:
		return v.Op == lang.Name
	case ARefs, AWords:
		return v.Op == lang.Name || v.Op == lang.List && v.Args[0].Op == lang.Name
	case AChoice:
		return v.Op == lang.Name && s.chosen(v.Text)
	case AText:
		return v.Op == lang.Text
	case ALength, ACount:
		return numeric(v)
	case AFigure:
		return numeric(v) && (v.Op != lang.Number || s.measures(v.Qty.Unit.Dim()))
	case APair, ASize3:
		if v.Op == lang.Number && v.Qty.Unit.Dim() != lang.Length && v.Qty.Unit.Dim() != lang.Plain {
			return false
		}
		return numeric(v) || v.Op == lang.Sized && numeric(&v.Args[0])
	case ALengths:
		return numeric(v) || v.Op == lang.List && numeric(&v.Args[0])
	}
	return true
}

func (s *Slot) chosen(word string) bool {
	for _, c := range s.Choices {
		if c == word {
			return true
		}
	}
	return false
}

func (s *Slot) measures(dim lang.Dim) bool {
	for _, want := range s.Dims {
		if want == dim {
			return true
		}
	}
	return false
}

func numeric(v *lang.Expr) bool {
	switch v.Op {
	case lang.Number, lang.Name, lang.Call, lang.Group, lang.Neg, lang.Pos, lang.Add, lang.Sub, lang.Mul, lang.Div:
		return true
	}
	return false
}

// tooMany counts statements and says once when a plan unfolds into more than are taken on.
func (d *decoder) tooMany() bool {
	d.statements++
	if d.build != nil {
		d.unfolded++
	}
	return d.unfolded > maxUnfolded
}
