package plan

// The air that the wood meets.

import "plancheck/lang"

func climateWords() []Word {
	return []Word{
		{
			Names: names("climate"), In: AtTop, Opens: InClimate,
			Doc:     "the air that the wood meets in the shop, and at its driest and most humid in use",
			Example: "climate { shop 66F 45% ; dry 68F 25% ; humid 77F 62% }",
			grow: func(d *decoder, _ any, s *lang.Statement) any {
				c := &d.plan.Climate
				if !d.once(s, c.Span) {
					return nil
				}
				c.Span = s.Head()
				return c
			},
		},
		airWord("shop", "the air in which the piece is built", "shop 66F 45%", "8%", func(c *Climate) *Air { return &c.Shop }),
		airWord("dry", "the driest air that it meets in use", "dry 68F 25%", "6%", func(c *Climate) *Air { return &c.Dry }),
		airWord("humid", "the most humid air that it meets in use", "humid 77F 62%", "11%", func(c *Climate) *Air { return &c.Humid }),
	}
}

// airWord is one of the three airs: a temperature and a humidity, or one percentage alone,
// which is the moisture content of the wood itself.
func airWord(word, doc, example, moisture string, air func(*Climate) *Air) Word {
	return Word{
		Names: names(word), In: InClimate,
		Doc:     doc + ": temperature and humidity, or the moisture content of wood in it",
		Example: example,
		Slots: []Slot{
			figure("temperature", "of the air", example, func(a *Air) *Figure { return &a.Temperature }, lang.Temperature).unnamed(),
			figure("percent", "humidity of the air; without a temperature, the moisture content of the wood", example, func(a *Air) *Figure {
				if a.Temperature.How != Unknown {
					return &a.Humidity
				}
				return &a.Moisture
			}, lang.Percent).unnamed().must().or(moisture),
		},
		grow: func(d *decoder, owner any, s *lang.Statement) any {
			a := air(owner.(*Climate))
			if !d.once(s, a.Span) {
				return nil
			}
			a.Span = s.Head()
			return a
		},
	}
}
