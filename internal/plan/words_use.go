package plan

// What the piece is used for, what must agree, and what the maker says to the checker.

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

func useWords() []Word {
	return []Word{
		loadWord(InAssembly, "what each shelf that is drawn in it carries, save under drawers, spread evenly: on its area, or along its length", "40psf in `kind shelves`, 15psf in `kind kitchen`", func(owner any) **Load { return &owner.(*Assembly).Load }),
		loadWord(InMember, "what lies on it, spread evenly: on its area, or along its length", "", func(owner any) **Load { return &memberOf(owner).Load }),
		loadWord(InDrawer, "what lies on its bottom", "15psf", func(owner any) **Load { return &owner.(*Drawer).Load }),
		holdsWord(InAssembly, "what it is for; books whose weight is not said stand on each shelf that is drawn in it, save under drawers", "holds mattress 76 x 80 95lb", func(owner any) *[]*Holds { return &owner.(*Assembly).Holds }),
		holdsWord(InMember, "what lies or stands on it: books; what else does is its `load`", "holds books", func(owner any) *[]*Holds { return &memberOf(owner).Holds }),
		holdsWord(InSpace, "what stands, hangs or lies in it; books stand on the board under it", "holds mattress 76 x 80 95lb", func(owner any) *[]*Holds { return &owner.(*Space).Holds }),
		holdsWord(InDrawer, "what lies in it: clothes or books; what else does is its `load`", "holds clothes 25lb", func(owner any) *[]*Holds { return &owner.(*Drawer).Holds }),
		wallWord(),
		setWord(),
		within(Word{
			Names: names("match"), In: InSet, Opens: InLoad,
			Doc:     "the parts are faced with consecutive leaves of one veneer",
			Example: "match book skin",
			Slots: []Slot{
				choice("match", "how the leaves are laid", "match book", "book slip run", func(s *Set) *Choice { return &s.Match }).unnamed().must(),
				ref("skin", "the veneer", "match book skin", "a veneer", func(s *Set) *Ref[Material] { return &s.Skin }).unnamed(),
			},
		}),
		checkWord(),
		allowWord(),
		limitWord(),
	}
}

func loadWord(in Place, doc, unsaid string, field func(owner any) **Load) Word {
	return Word{
		Names: names("load"), In: in, Opens: InLoad,
		Doc:     doc,
		Example: "load 40psf sag case",
		Slots: []Slot{
			figure("load", "on its area, or along its length", "load 40psf", func(l *Load) *Figure { return &l.On }, lang.Pressure, lang.LineLoad).unnamed().must().or(unsaid),
			choice("sag", "how little it may sag: as fine work, a case, or a kitchen", "sag fine", "fine case kitchen",
				func(l *Load) *Choice { return &l.Sag }).or("fine for books, else case"),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			to := field(owner)
			if *to != nil && !d.once(s, (*to).Span) {
				return nil
			}
			*to = &Load{Span: s.Head()}
			return *to
		},
		inherit: func(_ *decoder, owner, from any) {
			if to := field(owner); *to == nil {
				*to = *field(from)
			}
		},
	}
}

func holdsWord(in Place, doc, example string, field func(owner any) *[]*Holds) Word {
	return Word{
		Names: names("holds"), In: in, Opens: InLoad,
		Doc:     doc,
		Example: example,
		Slots: []Slot{
			choice("what", "what stands, hangs or lies there", "holds books", "books clothes mattress", func(h *Holds) *Choice { return &h.What }).unnamed().must(),
			pair("size", "of a mattress: wide x long", "holds mattress 76 x 80", func(h *Holds) *Pair { return &h.Size }).both().unnamed(),
			weight("weight", "what it weighs", "holds mattress 76 x 80 95lb", func(h *Holds) *Figure { return &h.Weigh }).unnamed(),
			length("thick", "how thick a mattress is", "thick 8", func(h *Holds) *Length { return &h.Thick }),
		},
		grow: func(_ *decoder, owner any, s *lang.Statement) any {
			h := &Holds{Span: s.Head()}
			to := field(owner)
			*to = append(*to, h)
			return h
		},
		inherit: func(_ *decoder, owner, from any) {
			if to := field(owner); len(*to) == 0 {
				*to = *field(from)
			}
		},
	}
}

func wallWord() Word {
	return Word{
		Names: names("wall"), In: InAssembly, Opens: InLoad,
		Doc:     "what stands beside it where it is used, such as a wall or a neighbour that stands farther out: how far from its outside",
		Example: "wall left 2 back 1/2",
		Slots: []Slot{
			length("left", "at the left", "left 2", func(w *Walls) *Length { return &w.Left }),
			length("right", "at the right", "right 2", func(w *Walls) *Length { return &w.Right }),
			length("front", "before it", "front 36", func(w *Walls) *Length { return &w.Front }),
			length("back", "behind it", "back 1/2", func(w *Walls) *Length { return &w.Back }),
			length("above", "over it", "above 12", func(w *Walls) *Length { return &w.Above }),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			a := owner.(*Assembly)
			if a.Walls != nil && !d.once(s, a.Walls.Span) {
				return nil
			}
			a.Walls = &Walls{Span: s.Head()}
			return a.Walls
		},
	}
}

func setWord() Word {
	w := many(func(p *Plan) *[]*Set { return &p.Sets }, Word{
		Names: names("set"), In: AtTop | InPattern, Opens: InSet,
		Doc:     "parts that must agree in size, or come from one board or one run of veneer",
		Example: `set "drawer fronts" { parts carcass.upper, carcass.lower ; match book skin }`,
		Slots: []Slot{
			text("name", "what the set is called", `set "drawer fronts"`, func(s *Set) *Text { return &s.Name }).unnamed().must(),
			refs("parts", "what belongs to it", "parts carcass.upper, carcass.lower", func(s *Set) *[]Ref[Thing] { return &s.Parts }).must(),
			agreeSlot(),
			choice("board", "they come from one board", "board one", "one", func(s *Set) *Choice { return &s.Board }),
		},
	})
	return grown(w, func(st *Set, s *lang.Statement) { st.Span = s.Head() })
}

// agreeSlot is a list of sizes: `agree long, wide`.
func agreeSlot() Slot {
	sizes := Slot{Choices: names("long wide thick")}
	return Slot{
		Name: "agree", Doc: "the sizes in which they must agree", Example: "agree long, wide", Kind: AWords, Choices: sizes.Choices, Default: "long, wide, thick",
		set: func(d *decoder, node any, _, v *lang.Expr) {
			set := node.(*Set)
			for _, said := range listed(v) {
				if said.Op != lang.Name || !sizes.chosen(said.Text) {
					d.wrong(&said, "`agree` wants long, wide or thick, such as `agree long, wide`")
					return
				}
				set.Agree = append(set.Agree, Choice{said.Text, said.Span})
			}
		},
		given: func(node any) diag.Span {
			if agree := node.(*Set).Agree; len(agree) > 0 {
				return agree[0].Span
			}
			return diag.Span{}
		},
	}
}

func checkWord() Word {
	w := many(func(p *Plan) *[]*Check { return &p.Checks }, Word{
		Names: names("check"), In: AtTop | InPattern,
		Doc:     "a relation of the maker's own, with why it must hold",
		Example: `check "the amplifier goes in" carcass.wide >= 17 1/2`,
		Slots: []Slot{
			text("why", "why it must hold", `check "the amplifier goes in" carcass.wide >= 17 1/2`, func(c *Check) *Text { return &c.Why }).unnamed().must(),
			comparison(),
			length("within", "how far two sizes may differ and still be ==", "within 1/16", func(c *Check) *Length { return &c.Within }).or("half a mark of the tape"),
		},
	})
	grow := w.grow
	w.grow = func(d *decoder, owner any, s *lang.Statement) any {
		c := grow(d, owner, s).(*Check)
		c.Span, c.scope, c.Subject = s.Head(), d.scope, PathOf(d.build)
		return c
	}
	return w
}

func comparison() Slot {
	return Slot{
		Name: "relation", Doc: "two sizes with == != < <= > or >= between them", Example: `check "the amplifier goes in" carcass.wide >= 17 1/2`, Kind: AExpr, Must: true,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			switch v.Op {
			case lang.Same, lang.Differs, lang.Below, lang.AtMost, lang.Above, lang.AtLeast:
				node.(*Check).Said = v
			default:
				d.wrong(v, "`check` wants two sizes to compare, such as `carcass.wide >= 17 1/2`")
			}
		},
		given: func(node any) diag.Span { return saidAt(node.(*Check).Said) },
	}.unnamed()
}

func saidAt(e *lang.Expr) diag.Span {
	if e == nil {
		return diag.Span{}
	}
	return e.Span
}

func allowWord() Word {
	return Word{
		Names: names("allow"), In: Anywhere, Opens: InAllow,
		Doc:     "silences one rule in the block in which it stands, or on what it names",
		Example: `allow rail-length "the rails were cut before the stiles"`,
		Slots: []Slot{
			wordSlot("rule", "the rule's name", `allow rail-length "the rails were cut first"`, func(a *Allow) *Text { return &a.Rule }),
			text("reason", "why the piece is right as it is", `allow rail-length "measured on the finished case"`, func(a *Allow) *Text { return &a.Reason }).unnamed().must(),
			refs("on", "what it is silenced on, in place of this block", "on carcass.middle", func(a *Allow) *[]Ref[Thing] { return &a.On }).mention(),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			a := &Allow{Span: s.Head(), owner: owner}
			d.plan.Allows = append(d.plan.Allows, a)
			return a
		},
	}
}

const limitExample = `limit tenon-length thicknesses 2.5 "dense wood, snug fit"`

func limitWord() Word {
	return Word{
		Names: names("limit"), In: Anywhere,
		Doc:     "sets a figure of a rule otherwise, in the block in which it stands; only those that are not published can be set",
		Example: limitExample,
		Slots: []Slot{
			wordSlot("rule", "the rule's name", limitExample, func(l *Limit) *Text { return &l.Rule }),
			wordSlot("figure", "which of its figures", limitExample, func(l *Limit) *Text { return &l.Figure }),
			limitValue(),
			text("reason", "why it is right here", limitExample, func(l *Limit) *Text { return &l.Reason }).unnamed().must(),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			l := &Limit{Span: s.Head(), owner: owner, scope: d.scope}
			d.plan.Limits = append(d.plan.Limits, l)
			return l
		},
	}
}

// wordSlot is a word that names nothing of the plan.
func wordSlot[T any](name, doc, example string, field func(*T) *Text) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AName, Must: true,
		set:   func(_ *decoder, node any, _, v *lang.Expr) { *field(node.(*T)) = Text{v.Text, v.Span} },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
	}.unnamed()
}

func limitValue() Slot {
	return Slot{
		Name: "value", Doc: "what it is here", Example: limitExample, Kind: AExpr, Must: true,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			if !numeric(v) {
				d.wrong(v, "a value is wanted here, such as `%s`", limitExample)
				return
			}
			node.(*Limit).Said = v
		},
		given: func(node any) diag.Span { return saidAt(node.(*Limit).Said) },
	}.unnamed()
}
