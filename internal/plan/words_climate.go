package plan

// The air that the wood meets.

import (
	"strings"

	"plancheck/lang"
)

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
		airWord("dry", "the driest air that it meets in use, which follows from `house` where that stands", "dry 68F 25%", "6%", func(c *Climate) *Air { return &c.Dry }),
		airWord("humid", "the most humid air that it meets in use, which follows from `house` where that stands", "humid 77F 62%", "11%", func(c *Climate) *Air { return &c.Humid }),
		{
			Names: names("house"), In: InClimate, Opens: InHouse,
			Doc: "the heated house in which the piece stands, by the monthly averages of the air outside as a weather service prints them for the place: " +
				"the driest and the most humid air follow, where they are not stated",
			Example: houseExample(),
			Slots: []Slot{
				figure("heated", "what it is heated to", "heated 68F", func(h *House) *Figure { return &h.Heated }, lang.Temperature).must(),
				figure("least", "the humidity that it does not fall under, for a humidifier or for those who live in it", "least 30%",
					func(h *House) *Figure { return &h.Least }, lang.Percent).or("that of the air outside, warmed"),
				figure("greatest", "the humidity that it does not rise over, for drying its air", "greatest 60%",
					func(h *House) *Figure { return &h.Greatest }, lang.Percent).or("that of the air outside, warmed"),
			},
			grow: func(d *decoder, owner any, s *lang.Statement) any {
				c := owner.(*Climate)
				if c.House != nil {
					d.once(s, c.House.Span)
					return nil
				}
				c.House = &House{Span: s.Head()}
				return c.House
			},
		},
		grown(many(func(h *House) *[]*Month { return &h.Months }, Word{
			Names: names("month"), In: InHouse,
			Doc:     "the average air outside in one month: temperature, in brackets where it is below nothing, and humidity",
			Example: "month january 28F 70%",
			Slots: []Slot{
				choice("name", "which month it is", "month january", strings.Join(monthNames, " "), func(m *Month) *Choice { return &m.Name }).unnamed().must(),
				figure("temperature", "of the air outside", "month january 28F 70%", func(m *Month) *Figure { return &m.Temperature }, lang.Temperature).unnamed().must(),
				figure("humidity", "of the air outside", "month january 28F 70%", func(m *Month) *Figure { return &m.Humidity }, lang.Percent).unnamed().must(),
			},
		}), func(m *Month, s *lang.Statement) { m.Span = s.Head() }),
	}
}

var monthNames = names("january february march april may june july august september october november december")

// houseExample is a whole year of an invented place.
func houseExample() string {
	year := []string{
		"28F 70%", "30F 68%", "39F 65%", "50F 60%", "61F 62%", "70F 65%", "75F 66%", "73F 70%", "66F 72%", "54F 70%", "43F 72%", "32F 73%",
	}
	var months []string
	for i, air := range year {
		months = append(months, "month "+monthNames[i]+" "+air)
	}
	return "house { heated 68F ; least 30% ; " + strings.Join(months, " ; ") + " }"
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
