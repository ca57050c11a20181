package plan

// What things are made of, glued with and coated with.

import "plancheck/lang"

func materialWords() []Word {
	return []Word{
		materialWord("wood", Solid, "solid wood", `wood oak { species "white oak" ; sawn quarter }`,
			species().must(),
			sawn("flat quarter rift"),
			moisture(),
			stiff(),
			heavy(),
		),
		materialWord("sheet", Sheet, "a sheet that is bought", "sheet core { kind plywood ; thick 1/4 ; actual 6mm ; size 96 x 48 }",
			choice("kind", "what sort of sheet it is", "kind plywood", "plywood mdf particle hardboard osb",
				func(m *Material) *Choice { return &m.SheetKind }).must(),
			species(),
			length("thick", "its nominal thickness, by which it is sold", "thick 1/4", func(m *Material) *Length { return &m.Thick }),
			length("actual", "its thickness as measured", "actual 6mm", func(m *Material) *Length { return &m.Actual }),
			pair("size", "of the whole sheet; the last number runs with the grain", "size 48 x 96", func(m *Material) *Pair { return &m.Size }).both(),
			text("emission", "the emission class that stands on it", `emission "TSCA Title VI"`, func(m *Material) *Text { return &m.Emission }),
			stiff(),
			heavy(),
		),
		materialWord("veneer", Veneer, "a leaf of wood to be glued on", `veneer skin { species "black walnut" ; thick 1/42 ; long 98 ; wide 9 ; leaves 24 }`,
			species().must(),
			sawn("flat quarter rotary"),
			length("thick", "its thickness", "thick 1/42", func(m *Material) *Length { return &m.Thick }),
			length("long", "a leaf's length with the grain", "long 98", func(m *Material) *Length { return &m.Long }),
			length("wide", "a leaf's width", "wide 9", func(m *Material) *Length { return &m.Wide }),
			count("leaves", "how many leaves there are, in sequence", "leaves 24", func(m *Material) *Count { return &m.Leaves }),
			length("trim", "off each edge of a leaf", "trim 1/4", func(m *Material) *Length { return &m.Trim }).or("1/4"),
		),
		layupWord(),
		many(func(m *Material) *[]*Ply { return &m.Plies }, plyWord()),
		glueWord(),
		many(func(p *Plan) *[]*Finish { return &p.Finishes }, Word{
			Names: names("finish"), In: AtTop | InPattern, Opens: InMaterial,
			Doc:     "a coating",
			Example: "finish linseed { kind drying-oil }",
			Slots: []Slot{
				name(func(f *Finish) *Name { return &f.Name }).must(),
				choice("kind", "what sort of coating it is", "kind drying-oil", "drying-oil varnish shellac lacquer wax stain paint",
					func(f *Finish) *Choice { return &f.Kind }),
			},
		}),
	}
}

func materialWord(word string, kind MaterialKind, doc, example string, settings ...Slot) Word {
	w := many(func(p *Plan) *[]*Material { return &p.Materials }, Word{
		Names: names(word), In: AtTop | InPattern, Opens: InMaterial,
		Doc: doc, Example: example,
		Slots: append([]Slot{name(func(m *Material) *Name { return &m.Name }).must()}, settings...),
	})
	return grown(w, func(m *Material, _ *lang.Statement) { m.Kind = kind })
}

func layupWord() Word {
	w := materialWord("layup", Layup, "plies that are pressed in the shop, from face to back",
		"layup face { glue resin ; ply skin along ; ply core across ; ply core across ; ply skin along }",
		ref("glue", "what it is pressed with", "glue resin", "a glue", func(m *Material) *Ref[Glue] { return &m.Glue }),
	)
	w.Opens = InLayup
	return w
}

func plyWord() Word {
	return Word{
		Names: names("ply"), In: InLayup, Opens: InPly,
		Doc:     "one leaf of a layup, and which way its grain runs to the layup's",
		Example: "ply skin along",
		Slots: []Slot{
			ref("of", "what it is of", "ply skin along", "a material", func(p *Ply) *Ref[Material] { return &p.Of }).unnamed().must(),
			choice("run", "with the layup's grain, or square to it", "ply core across", "along across", func(p *Ply) *Choice { return &p.Run }).unnamed(),
			figure("angle", "in place of along and across: to the layup's grain", "angle 45deg", func(p *Ply) *Figure { return &p.Angle }, lang.Angle).or("0deg along, 90deg across"),
			length("thick", "how thick it is, where it is of solid wood", "thick 5/8", func(p *Ply) *Length { return &p.Thick }).or("its material's"),
			length("strips", "how wide the strips of a solid core are", "strips 1 1/4", func(p *Ply) *Length { return &p.Strips }),
			figure("at", "its moisture content when pressed", "at 7%", func(p *Ply) *Figure { return &p.At }, lang.Percent).or("its material's"),
			ref("glue", "what it is laid with, where not with the layup's", "glue resin", "a glue", func(p *Ply) *Ref[Glue] { return &p.Glue }),
			count("pressing", "in which pressing it is laid, where they are not all pressed at once", "pressing 2", func(p *Ply) *Count { return &p.Press }).or("1"),
		},
	}
}

func glueWord() Word {
	return many(func(p *Plan) *[]*Glue { return &p.Glues }, Word{
		Names: names("glue"), In: AtTop | InPattern, Opens: InMaterial,
		Doc:     "a glue by the figures on its label; what is unsaid is usual for its kind",
		Example: "glue resin { kind urea ; open-time 20min ; clamp-time 12h }",
		Slots: []Slot{
			name(func(g *Glue) *Name { return &g.Name }).must(),
			choice("kind", "its family", "kind urea",
				"pva yellow-pva cross-linked urea resorcinol epoxy polyurethane hide liquid-hide contact",
				func(g *Glue) *Choice { return &g.Kind }),
			figure("open-time", "from spreading to the last clamp", "open-time 20min", func(g *Glue) *Figure { return &g.OpenTime }, lang.Time).or("by kind"),
			figure("clamp-time", "until the clamps may come off", "clamp-time 12h", func(g *Glue) *Figure { return &g.ClampTime }, lang.Time).or("by kind"),
			figure("coldest", "the coldest wood and air in which it cures", "coldest 55F", func(g *Glue) *Figure { return &g.Coldest }, lang.Temperature).or("by kind"),
			choice("class", "where it holds", "class exterior", "interior limited exterior", func(g *Glue) *Choice { return &g.Class }).or("by kind"),
			length("fills", "the widest gap that it fills", "fills 1/32", func(g *Glue) *Length { return &g.Fills }).or("by kind"),
			figure("pressure", "that it wants in the press or under clamps", "pressure 150psi", func(g *Glue) *Figure { return &g.Pressure }, lang.Pressure).or("by the wood"),
		},
	})
}

func species() Slot {
	return text("species", "the wood it is of", `species "white oak"`, func(m *Material) *Text { return &m.SpeciesName })
}

func sawn(cuts string) Slot {
	return choice("sawn", "which way it was cut from the log", "sawn quarter", cuts, func(m *Material) *Choice { return &m.Sawn })
}

func moisture() Slot {
	return figure("at", "its moisture content as measured", "at 9%", func(m *Material) *Figure { return &m.At }, lang.Percent).or("the shop's climate")
}

func stiff() Slot {
	return figure("stiff", "its modulus of elasticity in bending", "stiff 12000MPa", func(m *Material) *Figure { return &m.Stiff }, lang.Pressure).or("from the tables")
}

func heavy() Slot {
	return figure("heavy", "its density", "heavy 42lb/ft3", func(m *Material) *Figure { return &m.Heavy }, lang.Density).or("from the tables")
}
