package plan

// What fastens two things that no layout joins.

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

func fixingWords() []Word {
	at := lengths("at", "where they stand across the grain of what is fastened, from its front edge, or the left or lower one", "at 3, 15",
		func(f *FixingPart) *[]Length { return &f.At })
	along := lengths("along", "where they stand along the grain of what is fastened, from its front end, or the left or lower one", "along 3, 15",
		func(f *FixingPart) *[]Length { return &f.Along })
	pilot := length("pilot", "the diameter of the pilot hole", "pilot 7/64", func(f *FixingPart) *Length { return &f.Pilot })
	counterbore := length("counterbore", "how deep the head is sunk", "counterbore 3/8", func(f *FixingPart) *Length { return &f.Counterbore }).or("0")
	slotted := length("slotted", "how long the slots are in which they can travel", "slotted 3/8", func(f *FixingPart) *Length { return &f.Slotted })
	round := flag("round", "in round holes, which is what unslotted ones are", "round", func(f *FixingPart) *Flag { return &f.Round })
	return []Word{
		grown(many(func(p *Plan) *[]*Fixing { return &p.Fixes }, Word{
			Names: names("fix"), In: AtTop | InPattern, Opens: InFix,
			Doc:     "says what fastens one thing to another, and how freely",
			Example: "fix slab to base { button oak-button x 8 { tongue 3/8 ; groove 7/16 } }",
			Slots: []Slot{
				thing("what", "what is fastened", "fix slab to base", func(f *Fixing) *Ref[Thing] { return &f.A }).unnamed().must(),
				toSlot(),
				choice("fixed", "where it cannot move", "fixed centre", "front centre back", func(f *Fixing) *Choice { return &f.Fixed }).or("where it is glued, else centre"),
				choice("grain", "which way the grain of what is fastened runs to that of what it is fastened to", "grain across", "along across",
					func(f *Fixing) *Choice { return &f.Grain }).or("as they lie in one layout"),
			},
		}), func(f *Fixing, s *lang.Statement) { f.Span = s.Head() }),
		fixingPart("screw", "screws", "screw no8 x 4 { slotted 3/8 ; at 3, 15 }", at, along, slotted, round, pilot, counterbore),
		fixingPart("bolt", "bolts", "bolt bed x 2 { at 3, 15 }", at, along, slotted, round, pilot, counterbore),
		fixingPart("dowel", "dowels", "dowel beech8 x 2 { at 3, 15 }", at, along, slotted, round),
		fixingPart("peg", "pegs", "peg oak-peg x 2 { at 3, 15 }", at, along, slotted, round),
		fixingPart("button", "buttons, whose tongues travel in a groove", "button oak-button x 8 { tongue 3/8 ; groove 7/16 }", at, along,
			length("tongue", "how long their tongues are", "tongue 3/8", func(f *FixingPart) *Length { return &f.Tongue }),
			length("groove", "how deep the groove is", "groove 7/16", func(f *FixingPart) *Length { return &f.Groove }),
		),
		grown(many(func(f *Fixing) *[]*FixingGlue { return &f.Glue }, Word{
			Names: names("glue"), In: InFix, Opens: InFixLine,
			Doc:     "glued, all over or in one place",
			Example: "glue resin front 4",
			Slots: []Slot{
				ref("of", "what it is glued with", "glue resin", "a glue", func(g *FixingGlue) *Ref[Glue] { return &g.Of }).unnamed(),
				bare("all", "all over, which is what unsaid glue is", func(g *FixingGlue) *Choice { return &g.Where }),
				bare("centre", "at its middle alone", func(g *FixingGlue) *Choice { return &g.Where }),
				glueAt("front", "along so much of its front"),
				glueAt("back", "along so much of its back"),
			},
		}), func(g *FixingGlue, s *lang.Statement) { g.Span = s.Head() }),
	}
}

// toSlot takes a thing, or the wall.
func toSlot() Slot {
	s := thing("to", "what it is fastened to: a thing, or the wall", "to wall", func(f *Fixing) *Ref[Thing] { return &f.B }).must()
	set, given := s.set, s.given
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		if v.Text == "wall" {
			node.(*Fixing).Wall = Flag{true, v.Span}
			return
		}
		set(d, node, at, v)
	}
	s.given = func(node any) diag.Span {
		if wall := node.(*Fixing).Wall; wall.On {
			return wall.Span
		}
		return given(node)
	}
	return s
}

func fixingPart(word, doc, example string, settings ...Slot) Word {
	w := many(func(f *Fixing) *[]*FixingPart { return &f.With }, Word{
		Names: names(word), In: InFix, Opens: InFixLine,
		Doc: doc, Example: example,
		Slots: append([]Slot{
			ref("of", "which "+word, example, "a fastener", func(f *FixingPart) *Ref[Fastener] { return &f.Of }).unnamed(),
			count("count", "how many there are", "count 4", func(f *FixingPart) *Count { return &f.Count }),
		}, settings...),
	})
	return grown(w, func(f *FixingPart, s *lang.Statement) { f.Word, f.Span = word, s.Head() })
}

// glueAt is `front 4`: at one edge, and how far from it.
func glueAt(edge, doc string) Slot {
	s := length(edge, doc, edge+" 4", func(g *FixingGlue) *Length { return &g.Wide })
	set := s.set
	s.set = func(d *decoder, node any, at, v *lang.Expr) {
		node.(*FixingGlue).Where = Choice{edge, at.Span}
		set(d, node, at, v)
	}
	s.given = func(node any) diag.Span { return node.(*FixingGlue).Where.Span }
	return s
}
