package rules

import (
	"fmt"

	"plancheck/internal/diag"
	"plancheck/lang"
)

var carryLoad = &Figure{
	Name: "load", Why: "what one person may lift where everything about the lift is at its best", Basis: Memory,
	Source: "51 lb (23 kg): the load constant of the lifting equation in NIOSH 94-110", Dim: lang.Weight, Number: 23,
}

var heavyToCarry = &Rule{
	Name: "heavy-to-carry", Group: Moving, Severity: diag.Advice,
	Summary: "what is carried weighs more for each who carries it than one should lift",
	Doc: `A piece is weighed for the first time on the stairs. What one person may lift is less than most believe, and that only close to
the body, at the height of the hips, with a good grip and no steps: on a stair and at arm's length it is much less.

Carry it with more people ("people" in the way), let it come apart, pull out its drawers and lift off its doors first, or use a trolley and straps. The
weight is worked out from the sizes and what the wood weighs, with its doors, its drawers and the hardware that says what it weighs; where the
way does not say how many carry, it is not judged.`,
	Sources: `Load constant of 23 kg, 51 lb: Applications Manual for the Revised NIOSH Lifting Equation, NIOSH 94-110, from memory, check it. It is
no limit for a stair, for which there is none; the rules of the place where people are paid to carry come first.`,
	Sound:   `A leaf of 3/4 x 24 x 80 in red oak, 35 lb, for one; a chest that three carry.`,
	Bad:     carriedThrough("people 1", ""),
	Good:    carriedThrough("people 2", ""),
	Figures: []*Figure{carryLoad},
	Check: func(pass *Pass) {
		p := pass.Plan
		if p.Way == nil || !p.Way.People.Known() || p.Way.People.N < 1 {
			return
		}
		for _, c := range carriedOn(p) {
			people := p.Way.People.N
			most := pass.Number(carryLoad, c.subject)
			if one := c.weight / float64(people); !c.weighed || one <= most || heft(p, one) == heft(p, most) {
				continue
			}
			each := heft(p, c.weight)
			if people > 1 {
				each = fmt.Sprintf("%s, %s for each of %d", each, heft(p, c.weight/float64(people)), people)
			}
			pass.Report(diag.Finding{
				Subject: c.subject,
				Span:    p.Way.Span,
				Message: fmt.Sprintf("%s weighs %s: one should not lift more than %s, at best", c.called, each, heft(p, most)),
				Notes:   []diag.Note{{Span: c.span, Message: "it is drawn here"}},
				Fixes:   []diag.Fix{{Title: "carry it with more people, or " + c.notApart()}},
			})
		}
	},
}
