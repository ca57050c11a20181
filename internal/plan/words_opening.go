package plan

// The words of openings and of what fills them.

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

func openingWords() []Word {
	words := []Word{
		openingWord("open", "an open bay", InSpace, func() *Space { return new(Space) }, func(s *Space) *Item { return &s.Item }, nil),
		openingWord("space", "a place with nothing in it", InSpace, func() *Space { return new(Space) }, func(s *Space) *Item { return &s.Item }, nil),
		openingWord("panel", "a panel in grooves", InPanel, func() *Panel { return new(Panel) }, func(p *Panel) *Item { return &p.Item }, append(panelSlots(),
			choice("glue", "where it is glued", "glue centre", "all edges centre", func(p *Panel) *Choice { return &p.GlueAt }),
		)),
		openingWord("back", "the board at the back of a case", InPanel, func() *Panel { return new(Panel) }, func(p *Panel) *Item { return &p.Item }, panelSlots()),
		openingWord("glass", "a pane in a rabbet", InGlass, func() *Glass { return new(Glass) }, func(g *Glass) *Item { return &g.Item }, []Slot{
			length("thick", "how thick it is", "thick 1/8", func(g *Glass) *Length { return &g.Thick }),
			choice("kind", "what sort of glass", "kind tempered", "float tempered laminated", func(g *Glass) *Choice { return &g.Kind }),
			pair("gap", "how much smaller it is than its place", "gap 1/8", func(g *Glass) *Pair { return &g.Gap }).or("1/8"),
		}),
		openingWord("door", "an opening with a door in it", InDoor, func() *Door { return new(Door) }, func(d *Door) *Item { return &d.Item }, doorSlots("left right top bottom lift-out")),
		openingWord("drawer", "an opening with a drawer in it", InDrawer, func() *Drawer { return new(Drawer) }, func(d *Drawer) *Item { return &d.Item }, drawerSlots()),
		betweenWord(),
		many(func(s *Space) *[]*HardwareUse { return &s.Rods }, hardwareUseWord("rod", InSpace)),
		one(func(p *Panel) **Float { return &p.Float }, Word{
			Names: names("float"), In: InPanel, Opens: InFloat,
			Doc:     "it is free to move; centred by a pin or spacers unless it is loose",
			Example: "float loose",
			Slots:   []Slot{flag("loose", "nothing keeps it in the middle", "float loose", func(f *Float) *Flag { return &f.Loose })},
		}),
		edgingWord(InPanel, func(p *Panel) *[]*Edging { return &p.Edging }),
		fitWord(InDoor, func(owner any) *Fit { return &owner.(*Door).Fit }),
		fitWord(InDrawer, func(owner any) *Fit { return &owner.(*Drawer).Fit }),
		one(func(d *Door) **Reveal { return &d.Reveal }, revealWord(InDoor)),
		one(func(d *Drawer) **Reveal { return &d.Reveal }, revealWord(InDrawer)),
	}
	words = append(words, useWordsOfDoors()...)
	words = append(words, lidWords()...)
	return append(words, drawerChildren()...)
}

// openingWord is an opening of one kind.
func openingWord[T any](word, doc string, opens Place, make func() *T, item func(*T) *Item, slots []Slot) Word {
	return Word{
		Names: names(word), In: InList | InAssembly, Opens: opens,
		Doc: doc, Example: "across { " + word + " one }",
		Slots: append([]Slot{
			name(func(t *T) *Name { return &item(t).Name }),
			length("along", "its size along its list", word+" one 12", func(t *T) *Length { return &item(t).Along }).unnamed(),
			count("share", "its share of what is left", "share 2", func(t *T) *Count { return &item(t).Share }).or("1"),
			count("count", "how many stand in a row", "count 3", func(t *T) *Count { return &item(t).Count }).or("1"),
		}, slots...),
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			if _, ok := owner.(*Assembly); ok {
				return d.later(s)
			}
			t := make()
			*item(t) = itemAt(s.Word.Text, s)
			return d.add(owner, any(t).(Node))
		},
	}
}

func panelSlots() []Slot {
	return []Slot{
		stuff("of", "what it is of, and how thick that stands", "of walnut 1/2", func(p *Panel) *Stuff { return &p.Of }),
		length("thick", "its thickness", "thick 1/2", func(p *Panel) *Length { return &p.Thick }),
		pair("gap", "how much smaller it is than its place: across x along the grain", "gap 1/8 x 1/16", func(p *Panel) *Pair { return &p.Gap }).
			or("1/32 (1mm); solid: the middle of what the seasons allow"),
		length("wide", "its width, left to right", "wide 14 3/4", func(p *Panel) *Length { return &p.Wide }),
		length("high", "its height", "high 20", func(p *Panel) *Length { return &p.High }),
		pair("groove", "in the members round it: wide x deep", "groove 5/16 x 3/8", func(p *Panel) *Pair { return &p.Groove }),
		pair("tongue", "on its edges: thick x long", "tongue 5/16 x 3/8", func(p *Panel) *Pair { return &p.Tongue }),
		figure("bevel", "the slope of its field", "bevel 12deg", func(p *Panel) *Figure { return &p.Bevel }, lang.Angle),
		choice("grain", "which way its grain runs", "grain across", "across down", func(p *Panel) *Choice { return &p.GrainSaid }).or("down; a back along its longer side"),
		flag("made", "it is already cut", "made", func(p *Panel) *Flag { return &p.Made }),
	}
}

// doorSlots are the settings of what is hung at one of the edges that are told.
func doorSlots(hang string) []Slot {
	return []Slot{
		leafSlot(),
		choice("grain", "which way the grain of a leaf runs that is a board or a part", "grain across", "across down", func(d *Door) *Choice { return &d.Leaf.GrainSaid }).or("down"),
		choice("hang", "which edge it turns on; or it is lifted out", "hang left", hang, func(d *Door) *Choice { return &d.Hang }),
		choice("held", "what keeps one that is lifted out: a strip that comes off first, or a key that is drawn", "held strip", "strip key", func(d *Door) *Choice { return &d.Held }),
		figure("opens", "how far it opens", "opens 110deg", func(d *Door) *Figure { return &d.Opens }, lang.Angle).or("its hinge's"),
		flag("active", "of a pair, the one that opens first", "active", func(d *Door) *Flag { return &d.Active }),
		figure("bevel", "the slope of its latch edge", "bevel 3deg", func(d *Door) *Figure { return &d.Bevel }, lang.Angle).or("0deg"),
		flag("rounded", "its hinge edge is rounded", "rounded", func(d *Door) *Flag { return &d.Rounded }),
		choice("meeting", "how a pair meets", "meeting rebated", "square bevelled rebated", func(d *Door) *Choice { return &d.Meeting }).or("square"),
		length("clears", "how far the trim stands out that it must clear", "clears 3/4", func(d *Door) *Length { return &d.Clears }),
	}
}

// leafSlot is `leaf leaf-frame`, `leaf slab` or `leaf cherry 3/4`: a frame, a part or a board.
func leafSlot() Slot {
	leaf := func(node any) *Leaf { return &node.(*Door).Leaf }
	s := Slot{
		Name: "leaf", Doc: "the door itself: a frame, a part, or a board of some material", Example: "leaf cherry 3/4",
		Kind: AStuff, Wants: "a frame, a part or a material",
		set: func(d *decoder, node any, _, v *lang.Expr) {
			l := leaf(node)
			l.Name, l.Span = v.Text, v.Span
			d.bind(v, "a frame, a part or a material", func(found any) bool {
				switch t := found.(type) {
				case *Assembly:
					l.Frame = t
				case *Part:
					l.Part = t
				case *Material:
					l.Material = t
				default:
					return false
				}
				return true
			})
		},
		given: func(node any) diag.Span { return leaf(node).Span },
		inherit: func(d *decoder, node, from any) {
			if to := leaf(node); to.Name == "" {
				own := *to // its thickness and its grain are settings beside it
				*to = *leaf(from)
				to.Thick, to.GrainSaid = own.Thick, own.GrainSaid
				d.inheritLength(&to.Thick, &leaf(from).Thick)
			}
		},
	}
	return s.thick(func(node any) *Length { return &leaf(node).Thick })
}

func drawerSlots() []Slot {
	return []Slot{
		stuff("of", "what its box is of, and how thick", "of oak 1/2", func(d *Drawer) *Stuff { return &d.Of }),
		length("set-in", "how far its back stands in from the ends of its sides", "set-in 1/2", func(d *Drawer) *Length { return &d.SetIn }).or("0"),
		length("long", "the length of its sides", "long 16", func(d *Drawer) *Length { return &d.Long }).or("its slide's"),
		length("deep", "its box over all, without an applied front", "deep 16 1/4", func(d *Drawer) *Length { return &d.Deep }),
		length("high", "the height of its sides", "high 5", func(d *Drawer) *Length { return &d.High }).or("its opening less what the slide wants, else less 1/4 (6mm)"),
		length("wide", "its box over the sides", "wide 18", func(d *Drawer) *Length { return &d.Wide }).or("its opening less the slide's room"),
		length("line", "of side-mount slides: from the lower edge of its sides up to the middle of the slide", "line 2", func(d *Drawer) *Length { return &d.Line }).or("half the height of its sides"),
		ref("slide", "what it runs on", "slide side", "a slide", func(d *Drawer) *Ref[Slide] { return &d.Slide }),
		ref("runner", "the wood that it runs on", "runner maple", "a material", func(d *Drawer) *Ref[Material] { return &d.Runner }),
		length("gap", "on wooden runners: how much narrower it is than its opening", "gap 1/16", func(d *Drawer) *Length { return &d.Gap }).or("1/16, 1.5mm"),
		flag("stop", "something stops it", "stop", func(d *Drawer) *Flag { return &d.Stop }),
		flag("made", "it is already cut", "made", func(d *Drawer) *Flag { return &d.Made }),
	}
}

func drawerChildren() []Word {
	part := func(word, doc, example string, field func(*Drawer) **DrawerPart, slots ...Slot) Word {
		return grown(one(field, Word{
			Names: names(word), In: InDrawer, Opens: InDrawerPart,
			Doc: doc, Example: example,
			Slots: append([]Slot{
				stuff("of", "what it is of, and how thick", example, func(p *DrawerPart) *Stuff { return &p.Of }).unnamed(),
				length("cut", "its length as the saw gets it", word+" cut 18", func(p *DrawerPart) *Length { return &p.Cut }),
			}, slots...),
		}), func(p *DrawerPart, s *lang.Statement) { p.Span = s.Head() })
	}
	return []Word{
		part("front", "its front: it closes the box, or is applied before a box of four sides", "front oak 3/4 applied",
			func(d *Drawer) **DrawerPart { return &d.FrontAs },
			flag("applied", "it stands before a box of four sides", "front oak 3/4 applied", func(p *DrawerPart) *Flag { return &p.Applied })),
		part("back", "its back", "back grooved", func(d *Drawer) **DrawerPart { return &d.BackAs },
			bare("under", "the bottom passes under it, which is what an unsaid back is", func(p *DrawerPart) *Choice { return &p.Back }),
			bare("grooved", "it is grooved for the bottom, as the sides are", func(p *DrawerPart) *Choice { return &p.Back }),
			pair("notch", "cut out at both lower corners, where undermount slides go: wide x high", "back grooved notch 1 3/8 x 1/2",
				func(p *DrawerPart) *Pair { return &p.Notch }).both()),
		part("side", "its sides", "side oak 1/2", func(d *Drawer) **DrawerPart { return &d.SideAs }),
		grown(one(func(d *Drawer) **DrawerBottom { return &d.BottomAs }, Word{
			Names: names("bottom"), In: InDrawer, Opens: InDrawerBottom,
			Doc:     "its bottom, in grooves of the sides and the front",
			Example: "bottom thin groove 1/4 x 1/4 up 1/2",
			Slots: []Slot{
				stuff("of", "what it is of, and how thick", "bottom thin", func(b *DrawerBottom) *Stuff { return &b.Of }).unnamed().must(),
				pair("groove", "wide x deep", "groove 1/4 x 1/4", func(b *DrawerBottom) *Pair { return &b.Groove }),
				length("up", "from the lower edge of the side to the groove", "up 1/2", func(b *DrawerBottom) *Length { return &b.Up }),
				length("slot", "of the screws at the back", "slot 3/8", func(b *DrawerBottom) *Length { return &b.Slot }),
				length("past-back", "how far it stands out behind", "past-back 1/8", func(b *DrawerBottom) *Length { return &b.PastBack }),
				choice("grain", "which way its grain runs", "grain across", "across behind", func(b *DrawerBottom) *Choice { return &b.Grain }).or("across"),
			},
		}), func(b *DrawerBottom, s *lang.Statement) { b.Span = s.Head() }),
		many(func(d *Drawer) *[]*HardwareUse { return &d.Handles }, hardwareUseWord("handle", InDrawer)),
	}
}

func fitWord(in Place, fit func(owner any) *Fit) Word {
	laps := edgeSlots(in, func(f *Fit) *AtEdges { return &f.Laps })
	return Word{
		Names: names("fit"), In: in, Opens: InFit,
		Doc:     "how it stands to its opening; an edge may have its own lap",
		Example: "fit overlay 17mm top 3mm bottom 18mm",
		Slots: append([]Slot{
			choice("kind", "within the opening, or over its edges", "fit inset", "inset overlay", func(f *Fit) *Choice { return &f.Kind }).unnamed().must().or("inset"),
			length("lap", "how far an overlay laps each edge", "fit overlay 1/2", func(f *Fit) *Length { return &f.Laps.All }).first(),
		}, laps...),
		grow: func(_ *decoder, owner any, _ *lang.Statement) any { return fit(owner) },
		inherit: func(d *decoder, owner, from any) {
			to, f := fit(owner), fit(from)
			if to.Kind.Is == "" {
				to.Kind = f.Kind
			}
			if to.Kind.Is == f.Kind.Is {
				d.inheritLength(&to.Laps.All, &f.Laps.All)
				for _, s := range laps {
					s.inherit(d, to, f)
				}
			}
		},
	}
}

// edgeSlots are the settings by which an edge of a leaf or a front has its own length.
func edgeSlots[T any](in Place, field func(*T) *AtEdges) []Slot {
	slots := []Slot{
		length("top", "at the top", "top 1/8", func(t *T) *Length { return &field(t).Top }),
		length("bottom", "at the bottom", "bottom 1/8", func(t *T) *Length { return &field(t).Bottom }),
		length("left", "at the left", "left 1/8", func(t *T) *Length { return &field(t).Left }),
		length("right", "at the right", "right 1/8", func(t *T) *Length { return &field(t).Right }),
	}
	if in == InDrawer {
		return slots
	}
	return append(slots,
		length("hinge", "at the hinge edge; it goes before the others", "hinge 1/16", func(t *T) *Length { return &field(t).Hinge }),
		length("latch", "at the edge across from that; it goes before the others", "latch 3/32", func(t *T) *Length { return &field(t).Latch }),
	)
}

func revealWord(in Place) Word {
	word := Word{
		Names: names("reveal"), In: in, Opens: InReveal,
		Doc:     "the gap round an inset door or front; an edge may have its own",
		Example: "reveal 3/32 top 1/8",
		Slots:   []Slot{length("all", "at every edge", "reveal 3/32", func(v *Reveal) *Length { return &v.All }).unnamed()},
	}
	word.Slots = append(word.Slots, edgeSlots(in, func(v *Reveal) *AtEdges { return &v.AtEdges })...)
	word.Slots = append(word.Slots, length("meeting", "between two that meet", "meeting 1/8", func(v *Reveal) *Length { return &v.Meeting }))
	return word
}

// useWordsOfDoors are the hinges, latches and handles of a door, where they are used.
func useWordsOfDoors() []Word {
	hinges := func(d *Door) *[]*HardwareUse { return &d.Hinges }
	latches := func(d *Door) *[]*HardwareUse { return &d.Latches }
	return []Word{
		many(hinges, hardwareUseWord("hinge", InDoor)),
		many(latches, hardwareUseWord("latch", InDoor)),
		many(latches, hardwareUseWord("catch", InDoor)),
		many(latches, hardwareUseWord("lock", InDoor)),
		many(latches, hardwareUseWord("bolt", InDoor)),
		many(func(d *Door) *[]*HardwareUse { return &d.Handles }, hardwareUseWord("handle", InDoor)),
		many(func(d *Door) *[]*HardwareUse { return &d.Stays }, hardwareUseWord("stay", InDoor)),
		grown(one(func(d *Door) **Grooves { return &d.Grooves }, Word{
			Names: names("grooves"), In: InDoor, Opens: InGrooves,
			Doc:     "of one that is lifted out: what it slides in, above and below; it stands on the floor of the lower one",
			Example: "grooves top 5/8 bottom 1/4 keeps 1/4",
			Slots: []Slot{
				length("top", "how deep the upper one is", "top 5/8", func(g *Grooves) *Length { return &g.Top }),
				length("bottom", "how deep the lower one is", "bottom 1/4", func(g *Grooves) *Length { return &g.Bottom }),
				length("keeps", "how far it is in the upper one while it stands in the lower", "keeps 1/4", func(g *Grooves) *Length { return &g.Keeps }).
					or("what the upper is deeper than the lower, less 1/16 (1.5mm)"),
			},
		}), func(g *Grooves, s *lang.Statement) { g.Span = s.Head() }),
		one(func(d *Door) **Leans { return &d.Leans }, Word{
			Names: names("leans"), In: InDoor, Opens: InLeans,
			Doc:     "what presses on it, and how far from its hinges, or above the foot of one that is lifted out",
			Example: "leans 3lb at 9",
			Slots: []Slot{
				force("force", "how hard", "leans 3lb", func(l *Leans) *Figure { return &l.Force }).unnamed().must(),
				length("at", "how far from its hinge edge, or above its foot", "at 9", func(l *Leans) *Length { return &l.At }),
			},
		}),
	}
}

// lidWords are what a lid takes of a door's words.
func lidWords() []Word {
	hinges := func(d *Door) *[]*HardwareUse { return &d.Hinges }
	latches := func(d *Door) *[]*HardwareUse { return &d.Latches }
	words := []Word{
		fitWord(InLid, func(owner any) *Fit { return &owner.(*Door).Fit }),
		one(func(d *Door) **Reveal { return &d.Reveal }, revealWord(InLid)),
		many(hinges, hardwareUseWord("hinge", InLid)),
		many(latches, hardwareUseWord("latch", InLid)),
		many(latches, hardwareUseWord("catch", InLid)),
		many(latches, hardwareUseWord("lock", InLid)),
		many(func(d *Door) *[]*HardwareUse { return &d.Handles }, hardwareUseWord("handle", InLid)),
		many(func(d *Door) *[]*HardwareUse { return &d.Stays }, hardwareUseWord("stay", InLid)),
	}
	for i := range words {
		w := &words[i]
		grow, inherit := w.grow, w.inherit
		w.grow = func(d *decoder, owner any, s *lang.Statement) any { return grow(d, lidOf(owner), s) }
		w.inherit = func(d *decoder, owner, from any) {
			if lid := from.(*Member).Lid; lid != nil {
				inherit(d, lidOf(owner), lid)
			}
		}
	}
	return words
}

// lidOf is what a lid says as a door.
func lidOf(owner any) *Door {
	m := owner.(*Member)
	if m.Lid == nil {
		m.Lid = new(Door)
	}
	return m.Lid
}

func hardwareUseWord(word string, in Place) Word {
	many := count("count", "how many", "count 3", func(u *HardwareUse) *Count { return &u.Count })
	if word == "stay" {
		return Word{
			Names: names(word), In: in, Opens: InHardwareUse,
			Doc:     "what holds it open, and how many of them",
			Example: hardwareExamples[word] + " count 2",
			Slots:   []Slot{hardwareSlot(word), many.or("1")},
		}
	}
	slots := []Slot{
		hardwareSlot(word),
		lengths("at", "from the lower or left end to its centre", "at 3, 14", func(u *HardwareUse) *[]Length { return &u.At }),
		length2("from", "top", "from the upper end to its centre", "from top 4", func(u *HardwareUse) *Length { return &u.FromTop }),
		length("ends", "clear at both ends, the rest even between", "ends 3", func(u *HardwareUse) *Length { return &u.Ends }),
		flag("in-line", "between the rails: the ends of the first and the last level with the rails' inner edges", "in-line", func(u *HardwareUse) *Flag { return &u.InLine }),
		flag("centred", "in the middle", "centred", func(u *HardwareUse) *Flag { return &u.Centred }),
		many,
	}
	switch word {
	case "hinge":
		slots = append(slots,
			length("gain", "let into the door", "gain 3/64", func(u *HardwareUse) *Length { return &u.Gain }),
			length("case", "let into the case", "case 3/64", func(u *HardwareUse) *Length { return &u.CaseIn }),
			length("proud", "of the pin, before the face of the door", "proud 1/8", func(u *HardwareUse) *Length { return &u.Proud }).or("half its knuckle; of an overlay its back"),
			length("out", "of the pin, beyond the edge of the door", "out 1/32", func(u *HardwareUse) *Length { return &u.Out }).or("half the reveal; of an overlay half its knuckle, of a lid half its knuckle behind the chest"),
			length("rim", "from the edge of the door to the edge of the bore", "rim 4mm", func(u *HardwareUse) *Length { return &u.Rim }),
		)
	case "handle", "rod":
	default:
		slots = append(slots,
			choice("on", "which edge it sits on", "on head", "free head foot", func(u *HardwareUse) *Choice { return &u.On }).or("free"),
			length("keeper", "where its keeper sits, measured on the door as `at` is", "keeper 13", func(u *HardwareUse) *Length { return &u.Keeper }),
		)
	}
	return Word{
		Names: names(word), In: in, Opens: InHardwareUse,
		Doc:     "the " + word + " that it has, and where that sits",
		Example: hardwareExamples[word] + " at 13",
		Slots:   slots,
	}
}

var hardwareExamples = map[string]string{
	"hinge": "hinge brass", "latch": "latch ball", "catch": "catch roller", "lock": "lock till", "bolt": "bolt barrel", "handle": "handle bow", "rod": "rod pole",
	"stay": "stay brass-stay",
}

// hardwareSlot names the piece that is used; it must be of the word's kind.
func hardwareSlot(word string) Slot {
	wants := "a " + word
	return Slot{
		Name: word, Doc: "which one, as it is drawn elsewhere", Example: hardwareExamples[word], Kind: ARef, Wants: wants,
		Positional: true, NameOnly: true, Must: true,
		set: func(d *decoder, node any, _, v *lang.Expr) {
			u := node.(*HardwareUse)
			u.Word, u.Name, u.Span = word, v.Text, v.Span
			d.bind(v, wants, func(found any) bool {
				switch t := found.(type) {
				case *Hinge:
					u.Hinge = t
					return word == "hinge"
				case *Latch:
					u.Latch = t
					return t.Word == word
				case *Fastener:
					u.Bolt = t
					return t.Word == word
				case *Handle:
					u.Handle = t
					return word == "handle"
				case *Rod:
					u.Rod = t
					return word == "rod"
				case *Stay:
					u.Stay = t
					return word == "stay"
				}
				return false
			})
		},
		given: func(node any) diag.Span { return node.(*HardwareUse).Span },
	}
}

// betweenWord is `between muntin 2 1/4`: what stands between the things of a row.
func betweenWord() Word {
	return Word{
		Names: names("between"), In: InPanel | InGlass | InSpace | InDoor | InDrawer | InMember, Opens: InBetween,
		Doc:     "what stands between the things of a row; without it, sticks and boards have equal gaps",
		Example: "between muntin 2 1/4",
		Slots: []Slot{
			{
				Name: "word", Doc: "a stick or a board", Example: "between muntin 2 1/4", Kind: AName, Positional: true, NameOnly: true, Must: true,
				set: func(d *decoder, node any, _, v *lang.Expr) {
					node.(*Between).Word = Text{v.Text, v.Span}
					if w := wordIn(InList, v.Text); w == nil || w.Opens&InMember == 0 {
						d.unknownBetween(v, node.(*Between))
					}
				},
				given: func(node any) diag.Span { return node.(*Between).Word.Span },
			},
			length("along", "its size along the list", "between muntin 2 1/4", func(b *Between) *Length { return &b.Size }).unnamed(),
		},
		grow: func(_ *decoder, owner any, _ *lang.Statement) any {
			it := owner.(Node).item()
			if it.Between == nil {
				it.Between = new(Between)
			}
			return it.Between
		},
		inherit: func(_ *decoder, owner, from any) {
			if it := owner.(Node).item(); it.Between == nil {
				it.Between = from.(Node).item().Between
			}
		},
	}
}
