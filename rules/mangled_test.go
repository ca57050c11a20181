package rules_test

// Plans with lines lost, words lost and lines of other plans among their own: whatever is
// left of a plan, it is judged without a crash, and each finding keeps what findings keep.

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestMangledPlans(t *testing.T) {
	var plans [][]string
	for _, pattern := range []string{ruleFixtures + "/*/*.plan", projects + "/*/*.plan"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			plans = append(plans, strings.Split(string(text), "\n"))
		}
	}
	const trials = 800
	r := rand.New(rand.NewPCG(1, 2))
	for range trials {
		lines := slices.Clone(plans[r.IntN(len(plans))])
		for range 1 + r.IntN(3) {
			i := r.IntN(len(lines))
			switch words := strings.Fields(lines[i]); {
			case r.IntN(3) == 0:
				other := plans[r.IntN(len(plans))]
				lines[i] = other[r.IntN(len(other))]
			case len(words) > 1:
				lost := r.IntN(len(words))
				lines[i] = strings.Join(slices.Delete(words, lost, lost+1), " ")
			default:
				lines[i] = ""
			}
		}
		text := strings.Join(lines, "\n")
		c := example(text)
		for i := range c.found {
			c.found[i].Fixes = nil // what is left of a plan may not be mended by one of its fixes
			if strings.Contains(c.found[i].Message, `""`) {
				t.Errorf("%s speaks of a thing without a name: %s", c.found[i].Rule, c.found[i].Message)
			}
		}
		c.checkFindings(t)
		if t.Failed() {
			t.Fatalf("in\n%s", text)
		}
	}
}
