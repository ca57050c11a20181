package rules

// What a plan declares by a name of its own, for the rules about names.

import (
	"iter"

	"plancheck/internal/plan"
)

// declaration is one name, and what it was given to.
type declaration struct {
	what string // wood, part, value, hinge …
	name *plan.Name
}

// String is what a message calls it: `wood "maple"`.
func (d declaration) String() string { return d.what + " " + quote(d.name.Text) }

// supplies ranges over what a plan declares for others to name: materials, hardware, parts,
// values, joints and patterns.
func supplies(p *plan.Plan) iter.Seq[declaration] {
	return func(yield func(declaration) bool) {
		ok := true
		say := func(what string, name *plan.Name) { ok = ok && yield(declaration{what, name}) }
		for _, m := range p.Materials {
			say(m.Kind.String(), &m.Name)
		}
		for _, g := range p.Glues {
			say("glue", &g.Name)
		}
		for _, f := range p.Finishes {
			say("finish", &f.Name)
		}
		for _, h := range p.Hinges {
			say("hinge", &h.Name)
		}
		for _, l := range p.Latches {
			say(l.Word, &l.Name)
		}
		for _, s := range p.Slides {
			say("slide", &s.Name)
		}
		for _, s := range p.Stays {
			say("stay", &s.Name)
		}
		for _, h := range p.Handles {
			say("handle", &h.Name)
		}
		for _, r := range p.Rods {
			say("rod", &r.Name)
		}
		for _, f := range p.Fasteners {
			say(f.Word, &f.Name)
		}
		for _, j := range p.JointNamed {
			say("joint", &j.Name)
		}
		for _, part := range p.Parts {
			say("part", &part.Name)
		}
		for _, l := range p.Lets {
			say("value", &l.Name)
		}
		for _, pattern := range p.Patterns {
			say("pattern", &pattern.Name)
		}
	}
}

// entitled is what a message calls an assembly: `frame "leaf"`.
func entitled(a *plan.Assembly) string {
	if a.Name.Text == "" {
		return a.Kind.String()
	}
	return a.Kind.String() + " " + quote(a.Name.Text)
}
