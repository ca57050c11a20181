package rules

// What the rules about glue and pressing share: how times, temperatures and forces are
// shown, what a step glues, and where the figures of a glue come from.

import (
	"fmt"
	"math"

	"plancheck/internal/plan"
)

const (
	glueTimes = `Times that are usual for a kind of glue: a woodworking glue chart. A label beats them: write "open-time" and "clamp-time" from it.`

	minute = 60.0
	hour   = 60 * minute
	pound  = 4.4482216152605 // newtons
	psi    = 6894.757293168  // pascals
)

// timed is a time as a plan writes it: `45s`, `7.5min`, `12h`.
func timed(seconds float64) string {
	switch {
	case seconds >= hour:
		return number(seconds/hour) + "h"
	case seconds >= 2*minute:
		return number(seconds/minute) + "min"
	}
	return number(seconds) + "s"
}

// warmth is a temperature as the plan's tape would have it: `55F`, `13C`.
func warmth(p *plan.Plan, celsius float64) string {
	if p.Tape.Metric {
		return number(math.Round(celsius)) + "C"
	}
	return number(math.Round(celsius*9/5+32)) + "F"
}

// pressure is a pressure, and force a force, likewise: `150psi`, `1000kPa`; `4050lb`, `18000N`.
func pressure(p *plan.Plan, pascals float64) string {
	if p.Tape.Metric {
		return number(math.Round(pascals/1000)) + "kPa"
	}
	return number(math.Round(10*pascals/psi)/10) + "psi"
}

func force(p *plan.Plan, newtons float64) string {
	if p.Tape.Metric {
		return number(math.Round(newtons)) + "N"
	}
	return number(math.Round(newtons/pound)) + "lb"
}

// usualFor says that a figure of a glue is not its label's but usual for its kind; "" where
// the plan has it from the label.
func usualFor(g *plan.Glue, said plan.Figure) string {
	if said.How == plan.Unknown {
		return fmt.Sprintf(", usual for %s", g.Kind.Is)
	}
	return ""
}
