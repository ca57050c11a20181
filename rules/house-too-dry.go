package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var livedIn = &Figure{
	Name: "lived-in", Why: "the humidity below which a house that is lived in seldom stays for a month", Basis: Practice,
	Source: "25 %: breath, cooking and washing put water into its air", Dim: lang.Percent, Number: 25,
}

var houseTooDry = &Rule{
	Name: "house-too-dry", Group: Hygiene, Severity: diag.Advice,
	Summary: "a house is worked out drier than one that is lived in, since the plan does not say what its air is kept at",
	Doc: `Cold air holds little water; warmed to the heat of a room it is desert air. That is what "house" works out from the months outside, and
an empty house comes to it. People, kitchens and humidifiers put water back, so that most rooms do not fall as low: gaps worked out for the
empty house are wider than they need to be.

Read a hygrometer in the coldest month, and say "least 30%" with the figure that it shows; where a humidifier keeps the air, with what it is set
to. Say "greatest" where the air is dried in summer. Where the house does stand empty, allow this rule. The working shows both ends of the year.`,
	Sources: `Outside air warmed at one pressure, its water unchanged: ASHRAE Handbook, Fundamentals, 2017, chapter 1, equations 5, 6, 12 and 22.
What wood comes to in it: Wood Handbook, USDA Forest Products Laboratory, FPL-GTR-190, 2010, equation 4-5. What a lived-in house keeps is common
practice, no source.`,
	Sound:   `A house that says the least humidity, one in a mild place, and one beside which the driest air is stated.`,
	Bad:     "# An invented place.\n" + houseOf("28F 70%", "heated 68F"),
	Good:    "# An invented place.\n" + houseOf("28F 70%", "heated 68F ; least 30%"),
	Figures: []*Figure{livedIn},
	Check: func(pass *Pass) {
		h := pass.Plan.Climate.House
		dry := pass.Plan.Climate.Dry
		if h == nil || !h.Known || h.Least.Known() || dry.Span.Known() || h.Dry.Inside.Humidity >= pass.Number(livedIn, "") {
			return
		}
		pass.Report(diag.Finding{
			Span: h.Span,
			Message: fmt.Sprintf("in %s this house falls to %s of humidity, and wood in it to %s: a house that is lived in is seldom as dry",
				h.Dry.Name.Is, wood.Percent(h.Dry.Inside.Humidity), wood.Percent(h.Dry.Moisture)),
			Working: append(monthIndoors(h.Dry, "driest"), monthIndoors(h.Humid, "most humid")...),
			Fixes:   []diag.Fix{{Title: "read a hygrometer in that month, and write `least 30%` with what it shows"}},
		})
	},
}

// monthIndoors sets down how a month comes about in a house.
func monthIndoors(m plan.HouseAir, which string) diag.Working {
	return diag.Working{
		{Op: diag.Start, Value: wood.Percent(m.Month.Humidity.Value), Label: "outside in " + m.Name.Is + ", at " + celsius(m.Temperature.Value)},
		{Op: diag.Start, Value: wood.Percent(m.Inside.Humidity), Label: "the same air inside, at " + celsius(m.Inside.Celsius)},
		{Op: diag.Equals, Value: wood.Percent(m.Moisture), Label: "in the wood, at the " + which},
	}
}

// celsius is a temperature on both scales.
func celsius(c float64) string { return fmt.Sprintf("%.0f C (%.0f F)", c, c*9/5+32) }

// houseOf is a climate with a house in an invented place, for examples.
func houseOf(january, settings string) string {
	return `climate {
  shop 8%
  house {
    ` + settings + `
    month january ` + january + ` ; month february 30F 68% ; month march 39F 65% ; month april 50F 60%
    month may 61F 62% ; month june 70F 65% ; month july 75F 66% ; month august 73F 70%
    month september 66F 72% ; month october 54F 70% ; month november 43F 72% ; month december 32F 73%
  }
}
`
}
