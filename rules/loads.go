package rules

// What the members of a piece carry and how far they sag under it, for those who list it.

import (
	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// Loaded is a member on which something lies. Where the plan does not tell what carries it, or how heavy that is, it is not
// Judged, and has no span.
type Loaded struct {
	Path, Carries string
	Judged        bool
	Span          wood.Length // its widest clear one
	Sags, May     string      // how far it sags over that at once, and what its use allows
}

// Loads are the members on which something lies, those of a row, or of a line for each, once.
func Loads(p *plan.Plan) (all []Loaded) {
	limits, _ := readLimits(p, All)
	pass := &Pass{Plan: p, rule: shelfSags, limits: limits}
	seen := make(map[saying]bool)
	for m, b := range bearing(p) {
		if again(seen, m.Name.Span, m.In) {
			continue
		}
		one := Loaded{Path: plan.PathOf(m), Carries: carriesSaid(p, m)}
		if m.Row != "" {
			one.Path = plan.PathOf(m.In) + "." + m.Row
		}
		if b != nil {
			if l, ok := loadOn(p, b); ok {
				s := sagOf(pass, b, l)
				one.Judged, one.Span, one.Sags, one.May = true, s.span.long, small(p, s.sags), small(p, s.may)
			}
		}
		all = append(all, one)
	}
	return all
}

// carriesSaid is what the plan says that lies on a member, in a word or two.
func carriesSaid(p *plan.Plan, m *plan.Member) string {
	said, holds := saidOf(m)
	var words []string
	switch {
	case said == nil:
	case said.On.Dim == lang.LineLoad:
		words = append(words, onLength(p, said.On.Value*wood.Gravity))
	default:
		words = append(words, onArea(p, said.On.Value))
	}
	for _, h := range holds {
		words = append(words, h.What.Is)
		if h.Weigh.Known() {
			words = append(words, heft(p, h.Weigh.Value))
		}
	}
	return join(words)
}
