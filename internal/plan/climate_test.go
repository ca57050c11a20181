package plan

import (
	"math"
	"strings"
	"testing"

	"plancheck/internal/wood"
)

// An invented place with frosty winters, in its own words.
const frostyYear = `
  month january   (-6C) 80%
  month february  (-5C) 77%
  month march      1C 72%
  month april      8C 67%
  month may       14C 66%
  month june      19C 70%
  month july      22C 74%
  month august    21C 77%
  month september 16C 78%
  month october   10C 75%
  month november   3C 78%
  month december  (-3C) 82%
`

func inHouse(settings string) string {
	return "climate {\n house {\n" + settings + frostyYear + " }\n}\n"
}

// Which month is the worst is plain to see. The air in it is that of wood.House, which is held against
// published and computed values there.
func TestHouseClimate(t *testing.T) {
	tests := []struct {
		name, text string
		dry, humid float64
		dryIn      string
		humidIn    string
	}{
		{"as it comes", inHouse("heated 20C"), wood.Equilibrium(20, 13.0), wood.Equilibrium(21, 77), "january", "august"},
		{"kept", inHouse("heated 20C ; least 30% ; greatest 60%"), wood.Equilibrium(20, 30), wood.Equilibrium(20, 60), "january", "june"},
		{"by a name", "let warm = 20C\n" + inHouse("heated warm ; least 30% ; greatest 60%"), wood.Equilibrium(20, 30), wood.Equilibrium(20, 60), "january", "june"},
		{"stated beside it", "climate {\n dry 5%\n house {\n heated 20C" + frostyYear + " }\n}", 5, wood.Equilibrium(21, 77), "january", "august"},
	}
	for _, test := range tests {
		p := read(t, test.text)
		c := p.Climate
		if math.Abs(c.Dry.Moisture.Value-test.dry) > 0.1 || math.Abs(c.Humid.Moisture.Value-test.humid) > 0.01 {
			t.Errorf("%s: %.3f and %.3f %%, want %.3f and %.3f", test.name, c.Dry.Moisture.Value, c.Humid.Moisture.Value, test.dry, test.humid)
		}
		if got := c.House.Dry.Name.Is; got != test.dryIn {
			t.Errorf("%s: driest in %s", test.name, got)
		}
		if got := c.House.Humid.Name.Is; got != test.humidIn {
			t.Errorf("%s: most humid in %s", test.name, got)
		}
		if c.Shop.Moisture.How != Default {
			t.Errorf("%s: the house tells nothing of the shop", test.name)
		}
	}
}

// In degrees of either scale a house is the same.
func TestHouseInEitherScale(t *testing.T) {
	if got := read(t, "climate { shop (-4F) 80% }").Climate.Shop.Temperature.Value; math.Abs(got+20) > 1e-9 {
		t.Errorf("-4F is %v C", got)
	}
	metric := read(t, inHouse("heated 20C")).Climate
	other := read(t, strings.NewReplacer("20C", "68F", "(-5C)", "23F", "10C", "50F").Replace(inHouse("heated 20C"))).Climate
	if math.Abs(metric.Dry.Moisture.Value-other.Dry.Moisture.Value) > 1e-9 || math.Abs(metric.Humid.Moisture.Value-other.Humid.Moisture.Value) > 1e-9 {
		t.Errorf("%v, %v", metric, other)
	}
}

func TestHouseFaults(t *testing.T) {
	for text, wants := range map[string]string{
		inHouse(""): "`house` wants `heated`",
		inHouse("heated 20C ; least 60% ; greatest 30%"):                                       "above the greatest",
		strings.Replace(inHouse("heated 20C"), "month march      1C 72%", "", 1):               "misses march",
		inHouse("heated 20C ; month may 14C 66%"):                                              "air of may is stated twice",
		strings.Replace(inHouse("heated 20C"), "month july ", "month jule ", 1):                "`month` wants one of",
		strings.Replace(inHouse("heated 20C"), "month july      22C 74%", "month july 22C", 1): "`month` wants",
		"climate { house { heated 20C } }":                                                     "misses january, february",
		strings.Replace(inHouse("heated 20C"), " }\n}", " }\n house { heated 20C }\n}", 1):     "stated twice",
	} {
		_, faults := resolve(text)
		if len(faults) != 1 || !strings.Contains(faults[0].Message, wants) {
			t.Errorf("%s\nwant one fault that says %q, not %v", text, wants, faults)
		}
	}
}
