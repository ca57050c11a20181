package plan

// The shop: what it can do, what lies on its rack, in which order the work is done, and
// how the piece gets out of it.

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

func shopWords() []Word {
	words := []Word{
		shopWord(),
		one(func(s *Shop) **Machine { return &s.Planer }, machineWord("planer", "a thickness planer, and how wide it takes",
			"planer 13 { shortest 14 ; thinnest 1/4 }", "14", "1/4")),
		one(func(s *Shop) **Machine { return &s.Jointer }, machineWord("jointer", "a jointer, and how wide it takes",
			"jointer 8 { shortest 12 ; thinnest 3/8 }", "12", "3/8")),
		grown(many(func(s *Shop) *[]*Cutter { return &s.Cutters }, Word{
			Names: names("cutter"), In: InShop, Opens: InMachine,
			Doc:     "a bit, a cutter or a chisel for slots and mortises",
			Example: "cutter 3/8 reach 2",
			Slots: []Slot{
				length("wide", "the slot that it cuts", "cutter 3/8", func(c *Cutter) *Length { return &c.Wide }).unnamed().must(),
				length("reach", "how deep it reaches", "reach 2", func(c *Cutter) *Length { return &c.Reach }),
			},
		}), func(c *Cutter, s *lang.Statement) { c.Span = s.Head() }),
		grown(many(func(s *Shop) *[]*Clamp { return &s.Clamps }, Word{
			Names: names("clamp"), In: InShop, Opens: InMachine,
			Doc:     "clamps that are alike, and how many",
			Example: "clamp bar x 6 { opens 50 ; force 1000lb }",
			Slots: []Slot{
				name(func(c *Clamp) *Name { return &c.Name }).must(),
				count("count", "how many there are", "count 6", func(c *Clamp) *Count { return &c.Count }).or("1"),
				length("opens", "how far one opens", "opens 50", func(c *Clamp) *Length { return &c.Opens }),
				force("force", "with which one presses", "force 1000lb", func(c *Clamp) *Figure { return &c.Force }),
			},
		}), func(c *Clamp, s *lang.Statement) { c.Span = s.Head() }),
		grown(one(func(s *Shop) **Press { return &s.Press }, Word{
			Names: names("press"), In: InShop, Opens: InMachine,
			Doc:     "a veneer press or a vacuum bag, and the largest panel that it takes",
			Example: "press 48 x 96 { vacuum 21inHg }",
			Slots: []Slot{
				pair("size", "the largest panel", "press 48 x 96", func(p *Press) *Pair { return &p.Size }).both().unnamed().must(),
				figure("vacuum", "how far a bag is pumped down", "vacuum 21inHg", func(p *Press) *Figure { return &p.Vacuum }, lang.Pressure),
				force("force", "in place of vacuum: with which it presses in all", "force 8000lb", func(p *Press) *Figure { return &p.Force }),
			},
		}), func(p *Press, s *lang.Statement) { p.Span = s.Head() }),
		{
			Names: names("stock"), In: AtTop, Opens: InStock,
			Doc:     "what lies on the rack",
			Example: "stock { board oak x 6 { quarters 4/4 ; wide 8 ; long 96 ; rough } ; sheet core x 3 }",
			grow: func(d *decoder, _ any, s *lang.Statement) any {
				if rack := d.plan.Stock; len(rack) > 0 && !d.once(s, rack[0].Span) {
					return nil
				}
				return d.plan
			},
		},
		stockLine("board", "boards that are alike, and how many", "board oak x 6 { quarters 4/4 ; wide 8 ; long 96 ; rough }",
			figure("quarters", "its rough thickness in quarters of an inch", "quarters 4/4", func(s *Stock) *Figure { return &s.Quarters }, lang.Plain),
			length("thick", "its thickness as measured", "thick 15/16", func(s *Stock) *Length { return &s.Thick }).or("by its quarters"),
			length("wide", "its width", "wide 8", func(s *Stock) *Length { return &s.Wide }),
			length("long", "its length", "long 96", func(s *Stock) *Length { return &s.Long }),
			bare("rough", "as it came from the saw, which is what an unsaid board is", func(s *Stock) *Choice { return &s.Dressed }),
			bare("s1s", "planed on one side", func(s *Stock) *Choice { return &s.Dressed }),
			bare("s2s", "planed on two sides", func(s *Stock) *Choice { return &s.Dressed }),
		),
		stockLine("sheet", "sheets that are alike, and how many", "sheet core x 3",
			pair("size", "of one, where it is not a whole sheet; the last number runs with the grain", "size 48 x 48", func(s *Stock) *Pair { return &s.Size }).both().or("the sheet's"),
		),
		grown(many(func(p *Plan) *[]*Steps { return &p.Steps }, Word{
			Names: names("steps"), In: AtTop, Opens: InSteps,
			Doc:     "an order of work",
			Example: `steps "in the room" { stand base ; fit base }`,
			Slots: []Slot{
				text("name", "what this order is called, where there are several", `steps "in the room" { stand base }`, func(s *Steps) *Text { return &s.Name }).unnamed(),
			},
		}), func(st *Steps, s *lang.Statement) { st.Span = s.Head() }),
	}
	words = append(words, stepWords()...)
	return append(words, wayWords()...)
}

func shopWord() Word {
	return Word{
		Names: names("shop"), In: AtTop, Opens: InShop,
		Doc:     "what the shop can do",
		Example: "shop { kerf 1/8 ; planer 13 ; jointer 8 ; cutter 3/8 reach 2 }",
		Slots: []Slot{
			length("kerf", "what a saw cut takes away", "kerf 1/8", func(s *Shop) *Length { return &s.Kerf }).or("1/8"),
			length("cuts-to", "the finest difference that the shop cuts to", "cuts-to 1/64", func(s *Shop) *Length { return &s.CutsTo }).or("1/64, 0.5mm"),
			length("sander", "how wide a panel the drum sander takes", "sander 22", func(s *Shop) *Length { return &s.Sander }),
			figure("saw-true", "how far off an angle the saw may be", "saw-true 0.1deg", func(s *Shop) *Figure { return &s.SawTrue }, lang.Angle),
			length("trim", "taken off each edge of a sheet", "trim 1/4", func(s *Shop) *Length { return &s.Trim }).or("0"),
			figure("waste", "of boards, lost to knots, ends and edges", "waste 25%", func(s *Shop) *Figure { return &s.Waste }, lang.Percent).or("25%"),
			flag("extraction", "dust is drawn off at the machines", "extraction", func(s *Shop) *Flag { return &s.Extraction }),
		},
		grow: func(d *decoder, _ any, s *lang.Statement) any {
			shop := &d.plan.Shop
			if !d.once(s, shop.Span) {
				return nil
			}
			shop.Span = s.Head()
			return shop
		},
	}
}

func machineWord(word, doc, example, shortest, thinnest string) Word {
	return Word{
		Names: names(word), In: InShop, Opens: InMachine,
		Doc: doc, Example: example,
		Slots: []Slot{
			length("wide", "the widest part", word+" 13", func(m *Machine) *Length { return &m.Wide }).unnamed().must(),
			length("shortest", "the shortest part that it takes", "shortest "+shortest, func(m *Machine) *Length { return &m.Shortest }).or(shortest),
			length("thinnest", "the thinnest part that it takes", "thinnest "+thinnest, func(m *Machine) *Length { return &m.Thinnest }).or(thinnest),
		},
	}
}

func stockLine(word, doc, example string, settings ...Slot) Word {
	w := many(func(p *Plan) *[]*Stock { return &p.Stock }, Word{
		Names: names(word), In: InStock, Opens: InStockLine,
		Doc: doc, Example: example,
		Slots: append([]Slot{
			ref("of", "what it is of", word+" oak", "a material", func(s *Stock) *Ref[Material] { return &s.Of }).unnamed().must(),
			count("count", "how many there are", "count 6", func(s *Stock) *Count { return &s.Count }).or("1"),
		}, settings...),
	})
	return grown(w, func(st *Stock, s *lang.Statement) { st.Span = s.Head() })
}

// stepWords are the verbs of an order of work. All take the same settings; a coating also says on which side.
func stepWords() []Word {
	var words []Word
	for _, v := range []struct{ verb, doc, example string }{
		{"store", "leave wood to come to rest in the air of the shop", "store slab for 14d"},
		{"rest", "leave work lying before going on", "rest slab for 1d"},
		{"mill", "cut rough wood to oversize blanks", "mill slab"},
		{"true", "make a face and an edge flat and square", "true slab"},
		{"plane", "bring to thickness", "plane slab to 60 x 36 x 7/8"},
		{"rip", "saw along the grain", "rip slab with push-stick"},
		{"crosscut", "saw to length", "crosscut slab"},
		{"mortise", "cut mortises", "mortise base"},
		{"tenon", "cut tenons", "tenon base"},
		{"dado", "cut dadoes and housings", "dado base"},
		{"groove", "cut grooves", "groove base"},
		{"rabbet", "cut rabbets", "rabbet base"},
		{"dovetail", "cut dovetails", "dovetail base"},
		{"bore", "bore holes", "bore base"},
		{"gain", "let in hinges", "gain base"},
		{"rout", "shape with a router", "rout slab with extraction"},
		{"press", "press veneer or a layup", "press slab for 12h at 68F"},
		{"band", "put on edging", "band slab"},
		{"scrape", "scrape a surface", "scrape slab off 0.003"},
		{"sand", "sand a surface", "sand slab off 0.005 with sander"},
		{"finish", "put on a coating", "finish slab with linseed"},
		{"dry-fit", "put together without glue, to see that it closes", "dry-fit base"},
		{"glue", "glue together", "glue base with resin each 45s set-up 2min { clamp bar count 4 }"},
		{"fit", "put in its place", "fit base"},
		{"fix", "fasten", "fix slab"},
		{"hang", "hang a door or put in a drawer", "hang base"},
		{"stand", "stand it in the room where it stays", "stand base"},
		{"rags", "put away the rags that a finish was wiped on with, so that they cannot heat up", "rags"},
	} {
		w := stepWord(v.verb, v.doc, v.example)
		if v.verb == "finish" {
			w.Slots = append(w.Slots, choice("side", "the one side that it goes on", "side face", "face back", func(s *Step) *Choice { return &s.Side }).or("both sides"))
		}
		words = append(words, w)
	}
	return append(words, grown(many(func(s *Step) *[]*StepClamps { return &s.Clamps }, Word{
		Names: names("clamp"), In: InStep, Opens: InMachine,
		Doc:     "the clamps that hold this step, where they are not all of the shop's",
		Example: "clamp bar count 4",
		Slots: []Slot{
			ref("of", "which clamps", "clamp bar", "a clamp of the shop", func(c *StepClamps) *Ref[Clamp] { return &c.Of }).unnamed().must(),
			count("count", "how many of them", "count 4", func(c *StepClamps) *Count { return &c.Count }).or("all of them"),
		},
	}), func(c *StepClamps, s *lang.Statement) { c.Span = s.Head() }))
}

func stepWord(verb, doc, example string) Word {
	w := many(func(s *Steps) *[]*Step { return &s.Steps }, Word{
		Names: names(verb), In: InSteps, Opens: InStep,
		Doc: doc, Example: example,
		Slots: []Slot{
			refs("on", "what it is done to", verb+" slab, base", func(s *Step) *[]Ref[Thing] { return &s.On }).unnamed(),
			withSlot(),
			figure("for", "how long", "for 12h", func(s *Step) *Figure { return &s.For }, lang.Time),
			figure("at", "how warm the shop and the wood are", "at 68F", func(s *Step) *Figure { return &s.At }, lang.Temperature).or("the shop's climate"),
			size3("to", "the size it is brought to: long x wide x thick", "to 60 x 36 x 7/8", func(s *Step) *Size3 { return &s.To }),
			length("off", "what it takes off a face", "off 0.005", func(s *Step) *Length { return &s.Off }),
			figure("each", "how long one joint takes to spread and close", "each 45s", func(s *Step) *Figure { return &s.EachTime }, lang.Time),
			figure("set-up", "how long it takes before the first joint", "set-up 2min", func(s *Step) *Figure { return &s.SetUp }, lang.Time).or("0s"),
			flag("freehand", "without a fence or a jig", "freehand", func(s *Step) *Flag { return &s.Freehand }),
			flag("unguarded", "with the guard taken off", "unguarded", func(s *Step) *Flag { return &s.Unguard }),
		},
	})
	return grown(w, func(st *Step, s *lang.Statement) { st.Verb, st.Span = verb, s.Head() })
}

// stepTools are what a step may be done with that a plan does not declare.
var stepTools = names("planer sander extraction push-stick")

// withSlot takes tools by their word, and what the plan declares by its name.
func withSlot() Slot {
	return Slot{
		Name: "with", Doc: "what it is done with: the planer, the sander, extraction, a push-stick, or a glue or a finish by its name",
		Example: "with resin, extraction", Kind: ARefs, Wants: "a glue, a finish or a tool",
		set: func(d *decoder, node any, at, v *lang.Expr) {
			s := node.(*Step)
			items := listed(v)
			s.WithSpan, s.With = at.Span, make([]Ref[Thing], 0, len(items)) // never moves: bindings point into it
			for i := range items {
				item := &items[i]
				switch tool := (Slot{Choices: stepTools}); {
				case item.Op != lang.Name:
					d.wrong(item, "a name is wanted here, such as `with resin`")
				case tool.chosen(item.Text):
					s.Tools = append(s.Tools, Choice{item.Text, item.Span})
				default:
					s.With = append(s.With, Ref[Thing]{})
					d.thing(item, &s.With[len(s.With)-1])
				}
			}
		},
		given: func(node any) diag.Span { return node.(*Step).WithSpan },
	}
}

func wayWords() []Word {
	return []Word{
		{
			Names: names("way"), In: InAssembly, Opens: InWay,
			Doc:     "how the piece gets to its room",
			Example: "way { doorway 30 x 78 ; turn 36 into 34 ; stair wide 27 head 76 pitch 42deg ; people 2 }",
			Slots: []Slot{
				count("people", "how many carry", "people 2", func(w *Way) *Count { return &w.People }),
			},
			grow: func(d *decoder, owner any, s *lang.Statement) any {
				if w := d.plan.Way; w != nil && !d.once(s, w.Span) {
					return nil
				}
				d.plan.Way = &Way{Of: owner.(*Assembly), Span: s.Head()}
				return d.plan.Way
			},
		},
		grown(many(func(w *Way) *[]*Doorway { return &w.Doorways }, Word{
			Names: names("doorway"), In: InWay, Opens: InWayLine,
			Doc:     "a doorway: clear width x height",
			Example: "doorway 30 x 78",
			Slots: []Slot{
				pair("size", "clear width x height", "doorway 30 x 78", func(w *Doorway) *Pair { return &w.Size }).both().unnamed().must(),
			},
		}), func(w *Doorway, s *lang.Statement) { w.Span = s.Head() }),
		grown(many(func(w *Way) *[]*Turn { return &w.Turns }, Word{
			Names: names("turn"), In: InWay, Opens: InWayLine,
			Doc:     "a square turn from one corridor into another",
			Example: "turn 36 into 34",
			Slots: []Slot{
				length("from", "how wide the first one is", "turn 36 into 34", func(t *Turn) *Length { return &t.From }).unnamed().must(),
				length("into", "how wide the next one is", "into 34", func(t *Turn) *Length { return &t.Into }),
			},
		}), func(t *Turn, s *lang.Statement) { t.Span = s.Head() }),
		grown(many(func(w *Way) *[]*Stair { return &w.Stairs }, Word{
			Names: names("stair"), In: InWay, Opens: InWayLine,
			Doc:     "a flight of stairs",
			Example: "stair wide 27 head 76 pitch 42deg",
			Slots: []Slot{
				length("wide", "clear width", "wide 27", func(s *Stair) *Length { return &s.Wide }),
				length("head", "clear height above the nosings, straight up", "head 76", func(s *Stair) *Length { return &s.Head }),
				figure("pitch", "how steep it is", "pitch 42deg", func(s *Stair) *Figure { return &s.Pitch }, lang.Angle),
			},
		}), func(st *Stair, s *lang.Statement) { st.Span = s.Head() }),
	}
}
