package plan

// Before anything is measured: items take over what `each` says, and rows are set out.

import (
	"cmp"
	"strconv"

	"plancheck/lang"
)

// inheritAll gives every item below a list what `each` says of its word.
func (r *resolver) inheritAll(a *Assembly, l *List) {
	for _, n := range l.Items {
		r.inheritEach(a, n)
		if inner, ok := n.(*List); ok {
			r.inheritAll(a, inner)
		}
	}
}

func (r *resolver) inheritEach(a *Assembly, n Node) {
	it := n.item()
	if w := wordIn(InList, it.Word); w != nil {
		if each, ok := a.Each[w.Name()]; ok {
			r.inherit(w.Opens, w.Slots, n, each)
		}
	}
	switch n := n.(type) {
	case *Member:
		r.inheritStuff(&n.Of, &a.Of)
		n.Made.On = n.Made.On || a.Made.On
	case *Panel:
		r.inheritStuff(&n.Of, &a.Of)
		n.Made.On = n.Made.On || a.Made.On
	}
}

func (r *resolver) inheritStuff(to, from *Stuff) {
	if to.Material.Name == "" {
		to.Material = from.Material
		r.inheritLength(&to.Said, &from.Said)
	}
}

// inherit gives a node what another of its word says and it does not: its slots, and the
// words with settings that stand in its block.
func (r *resolver) inherit(opens Place, slots []Slot, node, from any) {
	d := &decoder{resolver: r}
	for i := range slots {
		if s := &slots[i]; s.inherit != nil {
			s.inherit(d, node, from)
		}
	}
	for _, w := range childrenIn(opens) {
		w.inherit(d, node, from)
	}
}

// expand sets out the rows of a list: `panel field count 3 between muntin 2 1/4` becomes
// three panels and two muntins, `slat lath 3 count 13` thirteen slats with equal gaps.
func (r *resolver) expand(a *Assembly, l *List) {
	rows := false
	for _, n := range l.Items {
		if inner, ok := n.(*List); ok {
			r.expand(a, inner)
		}
		count := r.needCount(&n.item().Count)
		rows = rows || count.Known()
		if count.How == failed {
			n.item().Along.How = failed // nobody knows what the row takes
		}
	}
	if !rows {
		return
	}
	var items []Node
	for i, n := range l.Items {
		it := n.item()
		if it.Between != nil && it.Between.Word.Text == "" {
			it.Along.How = failed // what stands between was not understood
			items = append(items, n)
			continue
		}
		if !it.Count.Known() || it.Count.N == 1 && it.Between == nil {
			items = append(items, n)
			continue
		}
		r.unfolded += it.Count.N
		if r.unfolded > maxUnfolded {
			r.fault(TooLarge, it.Count.Span, "the rows of this plan set out more than %d things, which is more than are taken on", maxUnfolded)
			items = append(items, n)
			continue
		}
		items = append(items, r.row(a, n, i > 0, i < len(l.Items)-1)...)
	}
	l.Items = items
	for i, n := range items {
		n.item().Index, n.item().Parent, n.item().In = i, l, a
	}
}

// row sets out one row. Slats and other members without anything between them have equal
// gaps, also to what bounds the row.
func (r *resolver) row(a *Assembly, n Node, before, after bool) []Node {
	it := n.item()
	name := it.Name.Text
	_, member := n.(*Member)
	gaps := member && it.Between == nil && it.Word != "lid" // which has the gaps that it says
	var items []Node
	between := func(i int) {
		switch {
		case it.Between != nil:
			m := new(Member)
			m.Item = Item{Word: it.Between.Word.Text, Span: it.Between.Word.Span, In: a}
			m.Name = Name{Text: it.Between.Word.Text + "-" + strconv.Itoa(i), Span: it.Between.Word.Span}
			r.inheritLength(&m.Along, &it.Between.Size)
			r.inheritEach(a, m)
			a.offer(m)
			items = append(items, m)
		case gaps:
			s := new(Space)
			s.Item = Item{Word: "space", Span: it.Span, Name: Name{Span: it.Name.Span}, In: a}
			items = append(items, s)
		}
	}
	if gaps && before {
		between(0)
	}
	for i := 1; i <= it.Count.N; i++ {
		if i > 1 {
			between(i - 1)
		}
		one := n // the row's own name stands for its first
		if i > 1 {
			one = r.another(n)
		}
		o := one.item()
		o.Row = name
		o.Name.Text = cmp.Or(name, it.Word) + "-" + strconv.Itoa(i)
		a.offer(one)
		items = append(items, one)
	}
	if gaps && after {
		between(it.Count.N)
	}
	return items
}

// offer lets a thing be named in its assembly, unless something else bears its name.
func (a *Assembly) offer(n Node) {
	name := n.item().Name.Text
	if _, taken := a.scope.names[name]; !taken {
		a.scope.names[name] = n
	}
}

// another is one more of a row's thing: a node of its own with the same settings.
func (r *resolver) another(n Node) Node {
	it := n.item()
	w := wordIn(InList, it.Word)
	line := &lang.Statement{Word: lang.Word{Text: it.Word, Span: it.Span}}
	one := w.grow(&decoder{resolver: r}, nil, line).(Node)
	r.inherit(w.Opens, w.Slots, one, n)
	one.item().Name.Span = it.Name.Span
	return one
}
