package rules

// What the rules about glue and pressing share: how times, temperatures and forces are
// shown, what a step glues, and where the figures of a glue come from.

import (
	"fmt"

	"plancheck/internal/plan"
)

const (
	glueTimes = `Times that are usual for a kind of glue: a woodworking glue chart. A label beats them: write "open-time" and "clamp-time" from it.`
)

// usualFor says that a figure of a glue is not its label's but usual for its kind; "" where
// the plan has it from the label.
func usualFor(g *plan.Glue, said plan.Figure) string {
	if said.How == plan.Unknown {
		return fmt.Sprintf(", usual for %s", g.Kind.Is)
	}
	return ""
}
