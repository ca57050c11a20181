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
	for of := range bearing(p) {
		if again(seen, of.Name.Span, of.In) {
			continue
		}
		one := Loaded{Path: plan.PathOf(of.Member), Carries: of.carries(p)}
		if of.Row != "" {
			one.Path = plan.PathOf(of.In) + "." + of.Row
		}
		if of.beam != nil {
			if l, ok := loadOn(p, of.beam, of); ok {
				s := sagOf(pass, of.beam, l)
				one.Judged, one.Span, one.Sags, one.May = true, s.span.long, small(p, s.sags), small(p, s.may)
			}
		}
		all = append(all, one)
	}
	return all
}

// carries is what the plan says that lies on a member, in a word or two.
func (b *bearer) carries(p *plan.Plan) string {
	var words []string
	switch {
	case b.said == nil:
	case b.said.On.Dim == lang.LineLoad:
		words = append(words, onLength(p, b.said.On.Value*wood.Gravity))
	default:
		words = append(words, onArea(p, b.said.On.Value))
	}
	if b.said == nil && len(b.holds) == 0 {
		words = append(words, "not said: kind "+b.use.Is)
	}
	for _, h := range b.holds {
		words = append(words, h.What.Is)
		if h.Weigh.Known() {
			words = append(words, heft(p, h.Weigh.Value))
		}
	}
	return join(words)
}
