package plan

// Hardware by its figures, so that any catalogue page can be written down.

import "plancheck/lang"

func hardwareWords() []Word {
	words := []Word{
		hingeWord(),
		one(func(h *Hinge) **Covers { return &h.Covers }, coversWord()),
		latchWord("latch", "keeps a door shut until it is opened by hand", "latch ball { kind ball ; throw 1/4 ; pull 6lb }"),
		latchWord("catch", "keeps a door shut until it is pulled", "catch roller { kind roller ; throw 3/16 ; pull 4lb at 1/16 }"),
		latchWord("lock", "keeps a door shut by its bolt", "lock till { throw 3/8 ; backset 1 ; body 2 x 1 1/2 x 1/2 }"),
		within(Word{
			Names: names("keeper"), In: InLatch, Opens: InKeeper,
			Doc:     "what the bolt goes into",
			Example: "keeper deep 3/8 high 1",
			Slots: []Slot{
				length("deep", "how deep the bolt may go", "deep 3/8", func(l *Latch) *Length { return &l.KeeperDeep }),
				length("high", "how high its opening is", "high 1", func(l *Latch) *Length { return &l.KeeperHigh }),
			},
		}),
		one(func(l *Latch) **Pull { return &l.Pull }, Word{
			Names: names("pull"), In: InLatch, Opens: InPull,
			Doc:     "the force that holds the door",
			Example: "pull 4lb at 1/16",
			Slots: []Slot{
				force("force", "what it takes to open it", "pull 4lb", func(p *Pull) *Figure { return &p.Force }).unnamed().must(),
				length("at", "the gap at which it was measured", "at 1/16", func(p *Pull) *Length { return &p.At }).or("0"),
			},
		}),
		slideWord(),
		stayWord(),
		handleWord(),
		rodWord(),
		within(Word{
			Names: names("socket"), In: InRod, Opens: InKeeper,
			Doc:     "what holds the end of a rod",
			Example: "socket deep 3/8",
			Slots: []Slot{
				length("deep", "how far the rod goes in", "deep 3/8", func(r *Rod) *Length { return &r.SocketDeep }),
			},
		}),
	}
	return append(words, fastenerWords()...)
}

// weighs is a setting of all hardware.
func weighs[T any](field func(*T) *Figure) Slot {
	return weight("weighs", "what one weighs", "weighs 0.5lb", field).or("0lb")
}

func hingeWord() Word {
	return many(func(p *Plan) *[]*Hinge { return &p.Hinges }, Word{
		Names: names("hinge"), In: AtTop | InPattern, Opens: InHinge,
		Doc:     "a hinge",
		Example: "hinge brass { kind butt ; high 2 1/2 ; wide 1 3/8 ; knuckle 1/4 ; carries 20lb ; opens 180deg }",
		Slots: []Slot{
			name(func(h *Hinge) *Name { return &h.Name }).must(),
			choice("kind", "what sort of hinge it is", "kind butt", "butt cup barrel knife pivot", func(h *Hinge) *Choice { return &h.Kind }),
			figure("opens", "how far it opens", "opens 110deg", func(h *Hinge) *Figure { return &h.Opens }, lang.Angle),
			weight("carries", "the weight that each one carries", "carries 20lb", func(h *Hinge) *Figure { return &h.Carries }),
			weighs(func(h *Hinge) *Figure { return &h.Weighs }),
			length("high", "of a butt: along its pin", "high 2 1/2", func(h *Hinge) *Length { return &h.High }),
			length("wide", "of a butt: across both leaves, opened flat", "wide 1 3/8", func(h *Hinge) *Length { return &h.Wide }),
			length("knuckle", "of a butt: over the pin, shut", "knuckle 1/4", func(h *Hinge) *Length { return &h.Knuckle }),
			length("bore", "of a cup or a barrel: the diameter of its hole", "bore 35mm", func(h *Hinge) *Length { return &h.Bore }),
			length("deep", "of a cup or a barrel: the depth of its hole", "deep 12.5mm", func(h *Hinge) *Length { return &h.Deep }),
			length("rim", "of a cup: from the edge of the door to the edge of the hole", "rim 4mm", func(h *Hinge) *Length { return &h.Rim }),
			length("plate", "of a cup: how thick its mounting plate is", "plate 0", func(h *Hinge) *Length { return &h.Plate }),
			length("crank", "of a cup: how far its arm is cranked", "crank 8mm", func(h *Hinge) *Length { return &h.Crank }),
			pair("fixings", "of a cup: how far apart its screws are x how far from the middle of the hole", "fixings 45mm x 9.5mm",
				func(h *Hinge) *Pair { return &h.Fixings }).both(),
			flag("swings-in", "the hinge edge of the door swings into the opening", "swings-in", func(h *Hinge) *Flag { return &h.SwingsIn }),
			pair("pin", "of a knife or a pivot: its pin, from the edge x from the face of the door", "pin 1/2 x 3/8",
				func(h *Hinge) *Pair { return &h.Pin }).both(),
		},
	})
}

func coversWord() Word {
	return Word{
		Names: names("covers"), In: InHinge, Opens: InCovers,
		Doc:     "what a cup hinge lets the door cover, and at which setting",
		Example: "covers 17mm at rim 4mm plate 0",
		Slots: []Slot{
			length("cover", "how much of the case the door covers", "covers 17mm", func(c *Covers) *Length { return &c.Cover }).unnamed().must(),
			flag("at", "stands before the setting", "at", func(c *Covers) *Flag { return &c.At }),
			length("rim", "the rim at which that holds", "rim 4mm", func(c *Covers) *Length { return &c.Rim }),
			length("plate", "the plate with which that holds", "plate 0", func(c *Covers) *Length { return &c.Plate }),
		},
	}
}

func latchWord(word, doc, example string) Word {
	w := many(func(p *Plan) *[]*Latch { return &p.Latches }, Word{
		Names: names(word), In: AtTop | InPattern, Opens: InLatch,
		Doc: doc, Example: example,
		Slots: []Slot{
			name(func(l *Latch) *Name { return &l.Name }).must(),
			choice("kind", "what sort it is", "kind ball", "ball roller bullet magnet elbow turn cam mortise", func(l *Latch) *Choice { return &l.Kind }),
			weighs(func(l *Latch) *Figure { return &l.Weighs }),
			length("throw", "how far its bolt or ball comes out", "throw 1/4", func(l *Latch) *Length { return &l.Throw }),
			length("bolt", "how high its bolt is", "bolt 1/2", func(l *Latch) *Length { return &l.Bolt }),
			length("backset", "from the edge of the door to the middle of the key or knob", "backset 1", func(l *Latch) *Length { return &l.Backset }),
			size3("body", "what is let into the door: wide x high x deep", "body 2 x 1 1/2 x 1/2", func(l *Latch) *Size3 { return &l.Body }),
		},
	})
	return grown(w, func(l *Latch, _ *lang.Statement) { l.Word = word })
}

func slideWord() Word {
	return many(func(p *Plan) *[]*Slide { return &p.Slides }, Word{
		Names: names("slide"), In: AtTop | InPattern, Opens: InHardware,
		Doc:     "a pair of drawer slides",
		Example: "slide side { kind side-mount ; long 16 ; room 1/2 ; carries 75lb }",
		Slots: []Slot{
			name(func(s *Slide) *Name { return &s.Name }).must(),
			choice("kind", "where it is fixed", "kind undermount", "side-mount undermount centre", func(s *Slide) *Choice { return &s.Kind }),
			weighs(func(s *Slide) *Figure { return &s.Weighs }),
			length("room", "that it wants at each side, outside the box", "room 1/2", func(s *Slide) *Length { return &s.Room }),
			length("less", "in place of room: opening less the inside of the box", "less 42mm", func(s *Slide) *Length { return &s.Less }),
			length("high-less", "opening less the height of the sides", "high-less 1", func(s *Slide) *Length { return &s.HighLess }).or("for undermount 13/16 (21mm)"),
			length("under", "from the underside of the bottom to the lower edge of the sides", "under 1/2", func(s *Slide) *Length { return &s.Under }),
			pair("notch", "at the back of the box: wide x high", "notch 1 3/8 x 1/2", func(s *Slide) *Pair { return &s.Notch }).both(),
			length("long", "its length, shut", "long 16", func(s *Slide) *Length { return &s.Long }),
			length("travel", "how far it runs out", "travel 16", func(s *Slide) *Length { return &s.Travel }),
			weight("carries", "what the pair may carry", "carries 75lb", func(s *Slide) *Figure { return &s.Carries }),
		},
	})
}

func stayWord() Word {
	return many(func(p *Plan) *[]*Stay { return &p.Stays }, Word{
		Names: names("stay"), In: AtTop | InPattern, Opens: InHardware,
		Doc:     "holds a lid open; its points are measured from the hinge's pin",
		Example: "stay soft { lid 6 ; case 1 x 5 ; shut 5 1/4 ; open 9 ; holds 6Nm }",
		Slots: []Slot{
			name(func(s *Stay) *Name { return &s.Name }).must(),
			weighs(func(s *Stay) *Figure { return &s.Weighs }),
			length("lid", "its point on the lid, from the pin", "lid 6", func(s *Stay) *Length { return &s.Lid }),
			pair("case", "its point on the case, from the pin: along the shut lid x square to it, into the case", "case 1 x 5", func(s *Stay) *Pair { return &s.Case }).both(),
			length("shut", "its shortest length between the points", "shut 5 1/4", func(s *Stay) *Length { return &s.Shut }),
			length("open", "its longest length between the points", "open 9", func(s *Stay) *Length { return &s.Open }),
			figure("holds", "the torque that each one holds", "holds 6Nm", func(s *Stay) *Figure { return &s.Holds }, lang.Torque),
		},
	})
}

func handleWord() Word {
	return many(func(p *Plan) *[]*Handle { return &p.Handles }, Word{
		Names: names("handle"), In: AtTop | InPattern, Opens: InHardware,
		Doc:     "a handle or a knob to pull at",
		Example: "handle bow { projects 1 1/4 }",
		Slots: []Slot{
			name(func(h *Handle) *Name { return &h.Name }).must(),
			weighs(func(h *Handle) *Figure { return &h.Weighs }),
			length("projects", "how far it stands out", "projects 1 1/4", func(h *Handle) *Length { return &h.Projects }),
		},
	})
}

func rodWord() Word {
	return many(func(p *Plan) *[]*Rod { return &p.Rods }, Word{
		Names: names("rod"), In: AtTop | InPattern, Opens: InRod,
		Doc:     "a rod that clothes hang on",
		Example: "rod rail { thick 1 1/4 ; socket deep 3/8 }",
		Slots: []Slot{
			name(func(r *Rod) *Name { return &r.Name }).must(),
			weighs(func(r *Rod) *Figure { return &r.Weighs }),
			length("thick", "its diameter", "thick 1 1/4", func(r *Rod) *Length { return &r.Thick }),
		},
	})
}

func fastenerWords() []Word {
	thick := length("thick", "its diameter", "thick 3/8", func(f *Fastener) *Length { return &f.Thick })
	long := length("long", "its length", "long 1 1/2", func(f *Fastener) *Length { return &f.Long })
	words := []Word{
		fastenerWord("screw", "a wood screw", "screw no8 { gauge 8 ; long 1 1/4 ; head flat }",
			count("gauge", "its number, in place of a diameter", "gauge 8", func(f *Fastener) *Count { return &f.Gauge }),
			length("thick", "the diameter of its shank", "thick 4mm", func(f *Fastener) *Length { return &f.Thick }),
			long,
			length("thread", "how much of it is threaded", "thread 3/4", func(f *Fastener) *Length { return &f.Thread }).or("2/3 of its length"),
			choice("head", "the shape of its head", "head flat", "flat round pan", func(f *Fastener) *Choice { return &f.Head }),
		),
		fastenerWord("bolt", "a bolt, with its nut or barrel nut", "bolt bed { thick 3/8 ; long 4 ; nut 5/8 }",
			thick, long,
			choice("head", "the shape of its head", "head hex", "hex flat round pan", func(f *Fastener) *Choice { return &f.Head }),
			length("nut", "the diameter of its nut", "nut 5/8", func(f *Fastener) *Length { return &f.Nut }),
			length("nut-long", "how long its barrel nut is", "nut-long 5/8", func(f *Fastener) *Length { return &f.NutLong }),
		),
		fastenerWord("biscuit", "a flat spline that is bought", "biscuit no20 { long 56mm ; wide 23mm ; thick 4mm }",
			long,
			length("wide", "its width, half of which goes into each part", "wide 23mm", func(f *Fastener) *Length { return &f.Wide }),
			length("thick", "its thickness", "thick 4mm", func(f *Fastener) *Length { return &f.Thick }),
		),
		fastenerWord("button", "holds a top down and lets it move", "button oak-button { drop 1/16 }",
			length("drop", "how much lower its tongue's groove is than its seat, so that it draws down", "drop 1/16", func(f *Fastener) *Length { return &f.Drop }).or("1/16"),
		),
	}
	for _, f := range []struct{ word, doc, example string }{
		{"dowel", "a round peg, glued in", "dowel beech8 { thick 8mm ; long 40mm }"},
		{"pin", "a thin round peg or a shelf's support", "pin brass-pin { thick 1/4 ; long 1 }"},
		{"peg", "goes through a joint and holds it", "peg oak-peg { thick 3/8 ; long 2 }"},
		{"insert", "a thread that is let into wood", "insert m6 { thick 10mm ; long 13mm }"},
		{"knob", "a screw that is turned by hand", "knob star { thick 6mm ; long 50mm }"},
		{"hook", "hooks over and holds by the weight that it carries", "hook bed-hook { long 5 }"},
		{"magnet", "holds until it is pulled off", "magnet disc { thick 10mm ; long 3mm }"},
	} {
		words = append(words, fastenerWord(f.word, f.doc, f.example, thick, long))
	}
	return words
}

func fastenerWord(word, doc, example string, settings ...Slot) Word {
	w := many(func(p *Plan) *[]*Fastener { return &p.Fasteners }, Word{
		Names: names(word), In: AtTop | InPattern, Opens: InHardware,
		Doc: doc, Example: example,
		Slots: append([]Slot{
			name(func(f *Fastener) *Name { return &f.Name }).must(),
			weighs(func(f *Fastener) *Figure { return &f.Weighs }),
		}, settings...),
	})
	return grown(w, func(f *Fastener, _ *lang.Statement) { f.Word = word })
}
