package plan

// The words of a layout: lists, members, and what is drawn elsewhere.

import (
	"slices"

	"plancheck/internal/diag"
	"plancheck/lang"
)

func layoutWords() []Word {
	words := []Word{
		listWord("across", Across, "what stands side by side, left to right"),
		listWord("down", Down, "what stands one above the other, top to bottom"),
		listWord("behind", Behind, "what stands one behind the other, front to back"),
		eachWord(),
	}
	for _, b := range []struct{ names, doc string }{
		{"side", "a board that stands at the outside of a case"},
		{"divider partition", "a board that stands inside a case"},
		{"shelf", "a level board"},
		{"bottom", "the level board below"},
		{"front", "an upright board before or behind a chest or a box, its grain level"},
	} {
		words = append(words, memberWord(b.names, b.doc+"; as thick as its material, and as deep as its cell", InList))
	}
	words = append(words, lidWord())
	words = append(words, memberWord("top", "the level board above; as thick as its material", InList))
	for _, s := range []struct{ names, doc string }{
		{"stile", "an upright stick of a frame"},
		{"rail", "a level stick of a frame"},
		{"muntin", "an upright stick between rails"},
		{"post", "an upright stick that carries"},
		{"leg", "an upright stick on the floor"},
		{"apron", "a level stick under a top"},
		{"stretcher", "a level stick between legs"},
		{"kick toe-kick", "a level stick under a case"},
		{"cleat", "a strip that holds another part"},
		{"slat", "a strip in a row of strips"},
		{"runner", "a strip that a drawer runs on"},
		{"kicker", "a strip above a drawer's side that keeps it level"},
		{"batten", "a strip across boards"},
		{"moulding", "a shaped strip"},
	} {
		words = append(words, memberWord(s.names, s.doc+"; its size along its list must be said", InList|InAssembly))
	}
	words = append(words, placedWord("frame"), placedWord("case"), placedWord("assembly"))
	return append(words, memberChildren()...)
}

func listWord(word string, axis Axis, doc string) Word {
	return Word{
		Names: names(word), In: InAssembly | InList, Opens: InList,
		Doc:     doc,
		Example: word + " { open ; open }",
		Slots: []Slot{
			length("along", "its size along the list it stands in", word+" 6 { open ; open }", func(l *List) *Length { return &l.Along }).unnamed(),
			count("share", "its share of what is left", "share 2", func(l *List) *Count { return &l.Share }).or("1"),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			l := &List{Axis: axis}
			l.Item = Item{Word: word, Span: s.Word.Span, Name: Name{Span: s.Word.Span}}
			if a, ok := owner.(*Assembly); ok {
				if a.Root != nil {
					f := d.fault(GivenTwice, s.Word.Span, "`%s` has two lists: one list holds all of it, and the others stand inside that", a.Name.Text)
					f.note(a.Root.Span, "the first list")
					return nil
				}
				a.Root, l.In = l, a
				return l
			}
			return d.add(owner, l)
		},
	}
}

// add puts a node into a list, or keeps it as the pattern of an `each`.
func (d *decoder) add(owner any, n Node) any {
	if l, ok := owner.(*List); ok {
		it := n.item()
		it.In, it.Parent, it.Index = l.In, l, len(l.Items)
		l.Items = append(l.Items, n)
	}
	return n
}

func itemAt(word string, s *lang.Statement) Item {
	return Item{Word: word, Span: s.Word.Span, Name: Name{Span: s.Word.Span}}
}

func memberWord(spellings, doc string, in Place) Word {
	word := names(spellings)[0]
	example := word + " one 2 1/4 { thick 7/8 }"
	if boards[word] {
		example = word + " one { of oak 3/4 }"
	}
	return Word{
		Names: names(spellings), In: in, Opens: InMember,
		Doc: doc, Example: example,
		Slots: append([]Slot{
			name(func(m *Member) *Name { return &m.Name }).must(),
			length("along", "its size along its list", word+" one 2 1/4", func(m *Member) *Length { return &m.Along }).unnamed(),
			count("count", "how many stand in a row", "count 3", func(m *Member) *Count { return &m.Count }).or("1"),
		}, memberSlots(func(m *Member) *Member { return m })...),
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			m := new(Member)
			m.Item = itemAt(s.Word.Text, s)
			if a, ok := owner.(*Assembly); ok {
				if outsideName(s) || a.Root != nil {
					return d.later(s)
				}
				if a.Rail != nil {
					d.railInNoList(s.Word.Span)
					return nil
				}
				m.In, a.Rail = a, m
				return m
			}
			return d.add(owner, m)
		},
	}
}

// railInNoList reports a rail that stands in a frame, but in none of its lists, and is not the
// only thing drawn there.
func (r *resolver) railInNoList(at diag.Span) {
	f := r.fault(UnknownWord, at, "a rail stands outside of lists only where it is all that its frame draws: the side of a polygon")
	f.Fixes = []diag.Fix{{Title: "put it in `across` or `down`"}}
}

// lidWord is a board that also takes what a door takes.
func lidWord() Word {
	w := memberWord("lid", "a level board that opens, and that no joint holds unless it says so itself; as thick as its material, and as deep as its cell", InList)
	w.Opens |= InLid
	door := slices.DeleteFunc(doorSlots("left right back lift-out"), func(s Slot) bool { return s.Name == "leaf" || w.Setting(s.Name) != nil })
	w.Slots = append(w.Slots, lifted(door, func(m *Member) **Door { return &m.Lid })...)
	return w
}

// memberSlots are the settings that members, parts and tops share.
func memberSlots[T any](of func(*T) *Member) []Slot {
	return append([]Slot{
		stuff("of", "what it is of, and how thick that stands", "of oak 3/4", func(t *T) *Stuff { return &of(t).Of }),
		length("thick", "its thickness", "thick 7/8", func(t *T) *Length { return &of(t).Thick }),
		length("wide", "its width", "wide 2 1/4", func(t *T) *Length { return &of(t).Wide }),
		length("long", "its length with the grain, joints and all", "long 16 13/16", func(t *T) *Length { return &of(t).Long }),
		length("cut", "the length that the saw gets", "cut 16 13/16", func(t *T) *Length { return &of(t).Cut }),
		choice("grain", "which way its grain runs", "grain behind", "across down behind", func(t *T) *Choice { return &of(t).GrainSaid }).or("by its word"),
		ref("part", "the part, drawn by itself, that it is", "part leg-a", "a part", func(t *T) *Ref[Part] { return &of(t).Part }),
		flag("made", "it is already cut", "made", func(t *T) *Flag { return &of(t).Made }),
	}, lifted(shapeSlots(), func(t *T) **Shape { return &of(t).Shape })...)
}

// shapeSlots are the settings that few members have.
func shapeSlots() []Slot {
	return []Slot{
		flag("turned", "the part shows its thickness on this face", "turned", func(s *Shape) *Flag { return &s.Turned }),
		flag("mirrored", "the part is used the other way round", "mirrored", func(s *Shape) *Flag { return &s.Mirrored }),
		count("boards", "how many boards it is glued up from", "boards 6", func(s *Shape) *Count { return &s.Boards }).or("1"),
		flag("guard", "it keeps a sleeper in", "guard", func(s *Shape) *Flag { return &s.Guard }),
		flag("centred", "it stands in the middle of its cell, front to back", "centred", func(s *Shape) *Flag { return &s.Centred }),
		choice("flush", "the face of its cell that it is level with", "flush back", "front back", func(s *Shape) *Choice { return &s.Flush }).or("front"),
		size3("rough", "its size before it is trued: long x wide x thick", "rough 18 x 2 1/2 x 1", func(s *Shape) *Size3 { return &s.Rough }),
		pair("core", "its size without its edging: long x wide", "core 30 x 11 1/4", func(s *Shape) *Pair { return &s.Core }),
		length("horns", "left on at each end while joints are cut", "horns 1", func(s *Shape) *Length { return &s.Horns }),
		length("chamfer", "a flat taken off its edges", "chamfer 1/8", func(s *Shape) *Length { return &s.Chamfer }),
		length("round", "the radius of its edges", "round 1/8", func(s *Shape) *Length { return &s.Round }),
		length("arch", "how far its edge rises in the middle", "arch 1 1/2", func(s *Shape) *Length { return &s.Arch }),
		length("taper", "its size at the small end", "taper 1 1/8", func(s *Shape) *Length { return &s.Taper }),
		figure("bevel", "the slope of its edge", "bevel 3deg", func(s *Shape) *Figure { return &s.Bevel }, lang.Angle),
		pair("notch", "cut out of a corner: wide x deep", "notch 3 x 3 1/2", func(s *Shape) *Pair { return &s.Notch }),
	}
}

// memberChildren are the words with settings of their own that members and parts take.
func memberChildren() []Word {
	return []Word{
		sidePairWord("recess", "how far it stands back", func(m *Member) *SidePair { return &m.Recess }),
		sidePairWord("proud", "how far it stands out", func(m *Member) *SidePair { return &m.Proud }),
		endWord(),
		edgingWord(InMember, func(m *Member) *[]*Edging { return &m.Edging }),
		one(func(m *Member) **Over { return &m.Over }, Word{
			Names: names("over"), In: InMember, Opens: InOver,
			Doc:     "how far a top stands beyond what it lies on",
			Example: "over base ends 3 front 1 back 1",
			Slots: []Slot{
				ref("base", "what it lies on", "over base", "an assembly", func(o *Over) *Ref[Assembly] { return &o.Of }).unnamed(),
				length("ends", "beyond its left and right", "ends 3", func(o *Over) *Length { return &o.Ends }).or("0"),
				length("front", "beyond its front", "front 1", func(o *Over) *Length { return &o.Front }).or("0"),
				length("back", "beyond its back", "back 1", func(o *Over) *Length { return &o.Back }).or("0"),
			},
		}),
		one(func(m *Member) **Breadboard { return &m.Breadboard }, Word{
			Names: names("breadboard"), In: InMember, Opens: InBreadboard,
			Doc:     "a cross piece on both ends of a top, which keeps it flat",
			Example: "breadboard 3 { tongue 3/8 x 1 }",
			Slots: []Slot{
				length("wide", "its width, along the top", "breadboard 3", func(b *Breadboard) *Length { return &b.Wide }).first().must(),
				pair("tongue", "on the ends of the top: thick x long", "tongue 3/8 x 1", func(b *Breadboard) *Pair { return &b.Tongue }),
				length2("glue", "centre", "glued only so far along its middle", "glue centre 4", func(b *Breadboard) *Length { return &b.Centre }),
			},
		}),
	}
}

// endWord is the joint of one end. What `each` says of an end adds to what a part says of that
// end itself, as it does for a joint of both.
func endWord() Word {
	w := many(func(m *Member) *[]*EndJoint { return &m.EndJoints }, Word{
		Names: names("end"), In: InMember, Opens: InEnd,
		Doc:     "says the joint of one end",
		Example: "end left joint loose-tenon long 2 thick 3/8",
		Slots: []Slot{
			choice("end", "which end", "end left joint butt", "left right lower upper front back", func(e *EndJoint) *Choice { return &e.End }).unnamed().must(),
		},
	})
	w.inherit = func(d *decoder, owner, from any) {
		to := &memberOf(owner).EndJoints
		for _, e := range memberOf(from).EndJoints {
			i := slices.IndexFunc(*to, func(own *EndJoint) bool { return own.End.Is == e.End.Is })
			if i < 0 {
				*to = append(*to, e)
				continue
			}
			(*to)[i].Joint = d.mergeJoints((*to)[i].Joint, e.Joint)
		}
	}
	return w
}

// sidePairWord is `recess front 1/2`: a length at the front or at the back.
func sidePairWord(word, doc string, field func(*Member) *SidePair) Word {
	return Word{
		Names: names(word), In: InMember, Opens: InSides,
		Doc: doc, Example: word + " front 1/2",
		Slots: []Slot{
			length("front", "at the front", "front 1/2", func(s *SidePair) *Length { return &s.Front }),
			length("back", "at the back", "back 1/8", func(s *SidePair) *Length { return &s.Back }),
		},
		grow: func(_ *decoder, owner any, _ *lang.Statement) any { return field(memberOf(owner)) },
		inherit: func(d *decoder, owner, from any) {
			to, s := field(memberOf(owner)), field(memberOf(from))
			d.inheritLength(&to.Front, &s.Front)
			d.inheritLength(&to.Back, &s.Back)
		},
	}
}

// memberOf is the member that a member or a part is.
func memberOf(owner any) *Member { return ownerAs[Member](owner) }

// edgingWord is an edging of one edge. What `each` says of an edge holds where a part says
// nothing of that edge itself.
func edgingWord[O any](in Place, field func(*O) *[]*Edging) Word {
	w := many(field, Word{
		Names: names("edging"), In: in, Opens: InEdging,
		Doc:     "a strip on an edge; the part's size is with it on",
		Example: "edging front cherry 1/4",
		Slots: []Slot{
			choice("edge", "which edge", "edging front oak 1/4", "front back left right ends", func(e *Edging) *Choice { return &e.Edge }).unnamed().must(),
			stuff("of", "what it is of, and how thick", "edging front oak 1/4", func(e *Edging) *Stuff { return &e.Of }).unnamed().must(),
			flag("under", "it lies under the face veneer", "under", func(e *Edging) *Flag { return &e.Under }),
			flag("over", "it covers the edge of the face veneer", "over", func(e *Edging) *Flag { return &e.OverFace }),
			flag("mitred", "its corners are mitred", "mitred", func(e *Edging) *Flag { return &e.Mitred }),
			flag("splined", "its corners are splined", "splined", func(e *Edging) *Flag { return &e.Splined }),
		},
	})
	w.inherit = func(_ *decoder, owner, from any) {
		to := field(ownerAs[O](owner))
		for _, e := range *field(ownerAs[O](from)) {
			said := func(own *Edging) bool { return own.Edge.Is == e.Edge.Is }
			if !slices.ContainsFunc(*to, said) {
				*to = append(*to, e)
			}
		}
	}
	return w
}

func placedWord(word string) Word {
	turns := ""
	if word == "frame" {
		turns = "; between things side by side it turns, its left to the front and its front to the left"
	}
	return Word{
		Names: names(word), In: InList, Opens: InPlaced,
		Doc:     article(word) + " that is drawn elsewhere and stands here" + turns,
		Example: word + " left part end-" + word,
		Slots: []Slot{
			name(func(p *Placed) *Name { return &p.Name }).must(),
			length("along", "its size along the list", word+" left 7/8 part end", func(p *Placed) *Length { return &p.Along }).unnamed(),
			ref("part", "which one it is", "part end", "a frame, a case or an assembly", func(p *Placed) *Ref[Assembly] { return &p.Part }).must(),
			count("share", "its share of what is left", "share 2", func(p *Placed) *Count { return &p.Share }).or("1"),
			flag("mirrored", "its mirror image: what looks left looks right", "mirrored", func(p *Placed) *Flag { return &p.Mirrored }),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			p := new(Placed)
			p.Item = itemAt(word, s)
			return d.add(owner, p)
		},
	}
}

// eachWord is `each rail, stile …`: what is said of all that a word names in an assembly.
// Its settings are those of each word that it lists.
func eachWord() Word {
	return Word{
		Names: names("each"), In: InAssembly,
		Doc:     "what holds for all that a word names here, unless one of them says otherwise",
		Example: "each rail thick 1 1/8",
		decode:  (*decoder).each,
	}
}

func (d *decoder) each(owner any, s *lang.Statement) {
	a := owner.(*Assembly)
	if len(s.Values) == 0 || !isNames(&s.Values[0]) {
		if !s.Faulty {
			d.fault(MissingValue, s.Head(), "`each` wants a word and settings: write `each rail thick 1 1/8`")
		}
		return
	}
	reported := make(map[diag.Span]bool)
	for _, said := range listed(&s.Values[0]) {
		before := len(d.findings)
		w := wordIn(InList, said.Text)
		if w == nil || w.Opens == InList {
			d.unknownEach(said)
			continue
		}
		d.line = line{values: s.Values, at: 1}
		node, ok := a.Each[w.Name()]
		if !ok {
			node = w.grow(d, nil, &lang.Statement{Word: lang.Word{Text: said.Text, Span: said.Span}}).(Node)
			node.item().In = a
			a.Each[w.Name()] = node
		}
		d.line.levels = []level{{w.Opens, w, node}}
		d.settings(s.Faulty)
		if s.Block != nil {
			d.block(s)
		}
		found := d.findings[before:]
		fresh := slices.DeleteFunc(found, func(f diag.Finding) bool { return reported[f.Span] })
		d.findings = d.findings[:before+len(fresh)]
		for _, f := range fresh {
			reported[f.Span] = true // so that no other word of the list says it again
		}
	}
}

func isNames(v *lang.Expr) bool {
	for _, e := range listed(v) {
		if e.Op != lang.Name {
			return false
		}
	}
	return true
}
