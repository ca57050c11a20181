package plan

// What each word of the language takes is declared once, in the tables of the files
// named words_*.go. This file says what a table line is and how it is bound to a typed
// field: decoding, "did you mean", and the printed reference all read the same lines.

import (
	"strings"
	"sync"

	"plancheck/internal/diag"
	"plancheck/lang"
)

// Place is a kind of block in which lines stand.
type Place uint64

const (
	AtTop Place = 1 << iota // the file itself
	InPlan
	InClimate
	InAssembly
	InList
	InMember
	InPart
	InPanel
	InGlass
	InSpace
	InPlaced
	InDoor
	InDrawer
	InPlainJoint // of a kind that takes nothing with settings of its own
	InTenon
	InTongue
	InMitre
	InMortise
	InHaunch
	InWedged
	InPeg
	InSpline
	InEnd
	InCorner
	InReveal
	InFit
	InBreadboard
	InOver
	InEdging
	InHardwareUse
	InDrawerPart
	InDrawerBottom
	InMaterial
	InPly
	InHinge
	InCovers
	InLatch
	InKeeper
	InPull
	InHardware // stay, handle, rod, fasteners
	InShop
	InMachine
	InStock
	InStockLine
	InSteps
	InStep
	InLoad
	InWay
	InWayLine
	InFix
	InFixLine
	InSet
	InPattern
	InAllow
	InBetween
	InFloat
	InLeans
	InGrooves
	InSides
	InLid
	InLayup
	InRod
	InHouse

	InJoint  = InPlainJoint | InTenon | InTongue | InMitre // of a kind that is not known yet
	Anywhere = ^Place(0)
)

// Kind says what a setting takes.
type Kind uint8

const (
	AName Kind = iota + 1
	ALength
	ALengths
	APair
	ASize3
	AFigure
	ACount
	AFlag
	AChoice
	AText
	ARef
	ARefs
	AStuff
	AExpr
	AWords
)

// Slot is one setting of a word, bound to one typed field of the word's node.
type Slot struct {
	Name, Doc, Example string
	Kind               Kind
	Positional         bool // may stand before the settings, without its name
	NameOnly           bool // Name serves the reference alone: it is never written
	Must               bool
	Choices            []string
	Dims               []lang.Dim // of a figure
	Wants              string     // of a reference: "a hinge"
	Default            string     // as a plan would write it; "" for unknown

	set     func(d *decoder, node any, at *lang.Expr, given *lang.Expr) // at: the setting's own word, or the value
	given   func(node any) diag.Span
	inherit func(d *decoder, node, from any)
}

// Word is one word of the language: where it stands, what it takes, what its block holds.
type Word struct {
	Names        []string // spellings; the first one is shown
	Doc, Example string
	In, Opens    Place
	Slots        []Slot

	grow    func(d *decoder, owner any, s *lang.Statement) any // its node, in a typed field of its owner
	inherit func(d *decoder, owner, from any)                  // takes over what an `each` says
	decode  func(d *decoder, owner any, s *lang.Statement)     // in place of the table, for the few words that are no settings
}

// Name is the spelling that is shown.
func (w *Word) Name() string { return w.Names[0] }

// Setting is the word's slot of that name; nil where it has none.
func (w *Word) Setting(name string) *Slot {
	for i := range w.Slots {
		if s := &w.Slots[i]; !s.NameOnly && s.Name == name {
			return s
		}
	}
	return nil
}

// Words is the whole language, in the order in which the reference prints it.
func Words() []*Word { return index().all }

type wordIndex struct {
	all    []*Word
	byName map[string][]*Word

	mu       sync.Mutex
	children map[Place][]*Word
}

// lazy is a value that is made when it is first asked for. It stands in for
// sync.OnceValue where the making leads back to the value, which Go does not let a
// variable's initial value do.
type lazy[T any] struct {
	once  sync.Once
	value T
}

func (l *lazy[T]) get(make func() T) T {
	l.once.Do(func() { l.value = make() })
	return l.value
}

var theIndex lazy[*wordIndex]

// index is the table of words by name.
func index() *wordIndex { return theIndex.get(makeIndex) }

func makeIndex() *wordIndex {
	x := &wordIndex{byName: make(map[string][]*Word, 256), children: make(map[Place][]*Word)}
	for _, table := range [][]Word{
		topWords(), climateWords(), layoutWords(), openingWords(), jointWords(),
		fixingWords(), materialWords(), hardwareWords(), shopWords(), useWords(),
	} {
		for i := range table {
			w := &table[i]
			x.all = append(x.all, w)
			for _, name := range w.Names {
				x.byName[name] = append(x.byName[name], w)
			}
		}
	}
	return x
}

// childrenIn are the words with settings of their own that an `each` can say for others.
func childrenIn(place Place) []*Word {
	x := index()
	x.mu.Lock()
	defer x.mu.Unlock()
	found, ok := x.children[place]
	if !ok {
		for _, w := range wordsIn(place) {
			if w.inherit != nil {
				found = append(found, w)
			}
		}
		x.children[place] = found
	}
	return found
}

// wordIn is the word of that name that may stand in a place; nil if there is none.
func wordIn(place Place, name string) *Word {
	for _, w := range index().byName[name] {
		if w.In&place != 0 {
			return w
		}
	}
	return nil
}

// wordsIn is every word that may stand in a place.
func wordsIn(place Place) []*Word {
	var words []*Word
	for _, w := range index().all {
		if w.In&place != 0 {
			words = append(words, w)
		}
	}
	return words
}

// settingNames are the names of all settings of all words.
func settingNames() map[string]bool { return theSettingNames.get(makeSettingNames) }

var theSettingNames lazy[map[string]bool]

func makeSettingNames() map[string]bool {
	known := make(map[string]bool)
	for _, w := range index().all {
		for i := range w.Slots {
			if !w.Slots[i].NameOnly {
				known[w.Slots[i].Name] = true
			}
		}
	}
	return known
}

// names lists spellings, as in names("divider partition").
func names(list string) []string { return strings.Fields(list) }

// must marks a slot that may not be left out.
func (s Slot) must() Slot { s.Must = true; return s }

// first marks a slot whose value may stand before the settings, without its name.
func (s Slot) first() Slot { s.Positional = true; return s }

// unnamed marks a slot whose value only ever stands before the settings.
func (s Slot) unnamed() Slot { s.Positional, s.NameOnly = true, true; return s }

// or gives what the setting is when nothing is said, as a plan would write it.
func (s Slot) or(value string) Slot { s.Default = value; return s }

// The constructors below bind a slot to a field. T is the word's node.

func name[T any](field func(*T) *Name) Slot {
	return Slot{
		Name: "name", Doc: "what it is called", Kind: AName, Positional: true, NameOnly: true,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			*field(node.(*T)) = Name{Text: v.Text, Span: v.Span}
			d.declare(d.scope, v, node)
		},
		given: func(node any) diag.Span { return field(node.(*T)).Span },
	}
}

func length[T any](name, doc, example string, field func(*T) *Length) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ALength,
		set: func(d *decoder, node any, _, v *lang.Expr) { d.length(v, field(node.(*T))) },
		given: func(node any) diag.Span {
			if l := field(node.(*T)); l.Said() {
				return l.Span
			}
			return diag.Span{}
		},
		inherit: func(d *decoder, node, from any) {
			d.inheritLength(field(node.(*T)), field(from.(*T)))
		},
	}
}

// lengths is a list of lengths: `at 3, 14`.
func lengths[T any](name, doc, example string, field func(*T) *[]Length) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ALengths,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			items := listed(v)
			list := make([]Length, len(items))
			for i := range items {
				d.length(&items[i], &list[i])
			}
			*field(node.(*T)) = list
		},
		given: func(node any) diag.Span {
			if list := *field(node.(*T)); len(list) > 0 {
				return list[0].Span
			}
			return diag.Span{}
		},
		inherit: func(d *decoder, node, from any) {
			if to := field(node.(*T)); len(*to) == 0 {
				list := *field(from.(*T))
				*to = make([]Length, len(list))
				for i := range list {
					d.inheritLength(&(*to)[i], &list[i])
				}
			}
		},
	}
}

// pair is a size of two numbers; one alone is the second of them.
func pair[T any](name, doc, example string, field func(*T) *Pair) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: APair,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			p := field(node.(*T))
			switch {
			case v.Op != lang.Sized:
				d.length(v, &p.Deep)
			case len(v.Args) == 2:
				d.length(&v.Args[0], &p.Across)
				d.length(&v.Args[1], &p.Deep)
			default:
				d.wrong(v, "`%s` takes one or two sizes, such as `%s`", name, example)
			}
		},
		given: func(node any) diag.Span {
			if p := field(node.(*T)); p.Deep.Said() {
				return p.Deep.Span
			}
			return diag.Span{}
		},
		inherit: func(d *decoder, node, from any) {
			to, p := field(node.(*T)), field(from.(*T))
			if to.Deep.How == Unknown {
				d.inheritLength(&to.Across, &p.Across)
				d.inheritLength(&to.Deep, &p.Deep)
			}
		},
	}
}

// size3 is long x wide, or long x wide x thick.
func size3[T any](name, doc, example string, field func(*T) *Size3) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ASize3,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			s := field(node.(*T))
			if v.Op != lang.Sized || len(v.Args) > 3 {
				d.wrong(v, "`%s` takes a size with the grain first, such as `%s`", name, example)
				return
			}
			for i, to := range []*Length{&s.Long, &s.Wide, &s.Thick}[:len(v.Args)] {
				d.length(&v.Args[i], to)
			}
		},
		given: func(node any) diag.Span {
			if s := field(node.(*T)); s.Long.Said() {
				return s.Long.Span
			}
			return diag.Span{}
		},
		inherit: func(d *decoder, node, from any) {
			to, s := field(node.(*T)), field(from.(*T))
			if to.Long.How == Unknown {
				d.inheritLength(&to.Long, &s.Long)
				d.inheritLength(&to.Wide, &s.Wide)
				d.inheritLength(&to.Thick, &s.Thick)
			}
		},
	}
}

// figure is a quantity that is no length; dims are those it may have.
func figure[T any](name, doc, example string, field func(*T) *Figure, dims ...lang.Dim) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AFigure, Dims: dims,
		set: func(d *decoder, node any, _, v *lang.Expr) { d.figure(v, field(node.(*T)), dims) },
		given: func(node any) diag.Span {
			if f := field(node.(*T)); f.How != Unknown {
				return f.Span
			}
			return diag.Span{}
		},
		inherit: func(d *decoder, node, from any) {
			d.inheritFigure(field(node.(*T)), field(from.(*T)))
		},
	}
}

func count[T any](name, doc, example string, field func(*T) *Count) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ACount,
		set:   func(d *decoder, node any, _, v *lang.Expr) { d.count(v, field(node.(*T))) },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(d *decoder, node, from any) {
			d.inheritCount(field(node.(*T)), field(from.(*T)))
		},
	}
}

func flag[T any](name, doc, example string, field func(*T) *Flag) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AFlag,
		set:   func(_ *decoder, node any, at, _ *lang.Expr) { *field(node.(*T)) = Flag{true, at.Span} },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(_ *decoder, node, from any) {
			if to := field(node.(*T)); !to.On {
				*to = *field(from.(*T))
			}
		},
	}
}

// choice is one of a closed list of words: choice("sawn", …, "flat quarter rift", …).
func choice[T any](name, doc, example, words string, field func(*T) *Choice) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AChoice, Choices: names(words),
		set:   func(_ *decoder, node any, _, v *lang.Expr) { *field(node.(*T)) = Choice{v.Text, v.Span} },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(_ *decoder, node, from any) {
			if to := field(node.(*T)); to.Is == "" {
				*to = *field(from.(*T))
			}
		},
	}
}

func text[T any](name, doc, example string, field func(*T) *Text) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AText,
		set:   func(_ *decoder, node any, _, v *lang.Expr) { *field(node.(*T)) = Text{v.Text, v.Span} },
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(_ *decoder, node, from any) {
			if to := field(node.(*T)); to.Text == "" {
				*to = *field(from.(*T))
			}
		},
	}
}

// ref names a thing of type N that stands elsewhere; wants says it in words: "a hinge".
func ref[T, N any](name, doc, example, wants string, field func(*T) *Ref[N]) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ARef, Wants: wants,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			to := field(node.(*T))
			to.Name, to.Span = v.Text, v.Span
			d.bind(v, wants, func(found any) bool { return bindRef(to, found) })
		},
		given: func(node any) diag.Span { return field(node.(*T)).Span },
		inherit: func(d *decoder, node, from any) {
			if to := field(node.(*T)); to.Name == "" {
				*to = *field(from.(*T))
			}
		},
	}
}

// refs names several things: `parts carcass.upper, carcass.lower`.
func refs[T any](name, doc, example string, field func(*T) *[]Ref[Thing]) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: ARefs,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			items := listed(v)
			list := make([]Ref[Thing], len(items))
			*field(node.(*T)) = list
			for i := range items {
				if items[i].Op != lang.Name {
					d.wrong(&items[i], "a name is wanted here, such as `%s`", example)
					continue
				}
				to := &list[i]
				to.Name, to.Span = items[i].Text, items[i].Span
				d.bind(&items[i], aThing, func(found any) bool {
					to.To = &Thing{Is: found, Path: PathOf(found)}
					return true
				})
			}
		},
		given: func(node any) diag.Span {
			if list := *field(node.(*T)); len(list) > 0 {
				return list[0].Span
			}
			return diag.Span{}
		},
	}
}

// stuff is a material and, where it is said, how thick it stands: `of oak 1/2`.
func stuff[T any](name, doc, example string, field func(*T) *Stuff) Slot {
	return Slot{
		Name: name, Doc: doc, Example: example, Kind: AStuff, Wants: "a material",
		set: func(d *decoder, node any, _, v *lang.Expr) {
			to := &field(node.(*T)).Material
			to.Name, to.Span = v.Text, v.Span
			d.bind(v, "a material", func(found any) bool { return bindRef(to, found) })
		},
		given: func(node any) diag.Span { return field(node.(*T)).Material.Span },
		inherit: func(d *decoder, node, from any) {
			to, s := field(node.(*T)), field(from.(*T))
			if to.Material.Name == "" {
				to.Material = s.Material
				d.inheritLength(&to.Said, &s.Said)
			}
		},
	}.thick(func(node any) *Length { return &field(node.(*T)).Said })
}

// thick lets a slot of stuff take the thickness that may follow the material.
func (s Slot) thick(field func(node any) *Length) Slot {
	material := s.set
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		material(d, node, at, v)
		if next := d.number(); next != nil {
			d.length(next, field(node))
		}
	}
	return s
}

// lifted makes settings of a part of the node, which is only there when one of them is said.
func lifted[T, U any](slots []Slot, field func(*T) **U) []Slot {
	for i := range slots {
		own := slots[i]
		s := &slots[i]
		s.set = func(d *decoder, node any, at, v *lang.Expr) {
			to := field(node.(*T))
			if *to == nil {
				*to = new(U)
			}
			own.set(d, *to, at, v)
		}
		s.given = func(node any) diag.Span {
			if part := *field(node.(*T)); part != nil {
				return own.given(part)
			}
			return diag.Span{}
		}
		s.inherit = func(d *decoder, node, from any) {
			to, part := field(node.(*T)), *field(from.(*T))
			if part == nil {
				return
			}
			if *to == nil {
				*to = new(U)
			}
			own.inherit(d, *to, part)
		}
	}
	return slots
}

// one makes w the word of a single child node, kept in a pointer of its owner. Said
// again, it adds to the same node.
func one[O, C any](field func(*O) **C, w Word) Word {
	w.grow = func(_ *decoder, owner any, s *lang.Statement) any {
		to := field(ownerAs[O](owner))
		if *to == nil {
			*to = new(C)
		}
		return *to
	}
	w.inherit = func(d *decoder, owner, from any) {
		to, given := field(ownerAs[O](owner)), *field(ownerAs[O](from))
		switch {
		case given == nil:
		case *to == nil:
			*to = given
		default:
			d.inherit(w.Opens, w.Slots, *to, given)
		}
	}
	return w
}

// many makes w the word of a child node that may be said several times.
func many[O, C any](field func(*O) *[]*C, w Word) Word {
	w.grow = func(_ *decoder, owner any, s *lang.Statement) any {
		child := new(C)
		to := field(ownerAs[O](owner))
		*to = append(*to, child)
		return child
	}
	w.inherit = func(_ *decoder, owner, from any) {
		if to := field(ownerAs[O](owner)); len(*to) == 0 {
			*to = *field(ownerAs[O](from))
		}
	}
	return w
}

// ownerAs is the owner of a child node; a part is the member that it declares.
func ownerAs[O any](owner any) *O {
	if p, ok := owner.(*Part); ok {
		if m, ok := any(&p.Member).(*O); ok {
			return m
		}
	}
	return owner.(*O)
}

// listed is what a comma list holds, or the one value itself.
func listed(v *lang.Expr) []lang.Expr {
	if v.Op == lang.List {
		return v.Args
	}
	return []lang.Expr{*v}
}

func bindRef[N any](to *Ref[N], found any) bool {
	thing, ok := found.(*N)
	if ok {
		to.To = thing
	}
	return ok
}
