package rules

// In which order a piece is put together, for the rules about what is in the way by then.

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// putIn is when in the steps something is put in its place, and where they say so.
type putIn struct {
	at   int
	verb string // stand, fit or hang
	span diag.Span
}

// putTogether is the order in which the steps stand, fit and hang things, by what they name.
func putTogether(p *plan.Plan) map[plan.Node]putIn {
	order := map[plan.Node]putIn{}
	at := 0
	for _, steps := range p.Steps {
		for _, s := range steps.Steps {
			if s.Verb != "stand" && s.Verb != "fit" && s.Verb != "hang" {
				continue
			}
			at++ // what one step names may be put in in any order
			for _, r := range s.On {
				if r.To == nil {
					continue
				}
				n, ok := r.To.Is.(plan.Node)
				if _, twice := order[n]; ok && !twice {
					order[n] = putIn{at, s.Verb, r.Span}
				}
			}
		}
	}
	return order
}
