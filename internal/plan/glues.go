package plan

// What a plan glues, and with what: where each glue is used, and its figures, which are those
// of its label or else those that are usual for its kind.

import (
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// OpenFor is how many seconds a joint may stay open, and whether that is known.
func (g *Glue) OpenFor() (seconds float64, ok bool) {
	return g.OpenTime.orUsual(g.usual().Open.Seconds())
}

// ClampFor is for how many seconds a joint stays clamped, and whether that is known.
func (g *Glue) ClampFor() (seconds float64, ok bool) {
	return g.ClampTime.orUsual(g.usual().Clamp.Seconds())
}

// ColdestIn is the coldest wood and air in which it cures, in degrees Celsius, and whether that
// is known.
func (g *Glue) ColdestIn() (celsius float64, ok bool) {
	if g.Coldest.How != Unknown {
		return g.Coldest.Value, g.Coldest.Known()
	}
	usual := g.usual().Coldest
	return usual.Value, usual.Known()
}

// Stands is the class of exposure that it stands: interior, limited or exterior; "" where
// that is not known.
func (g *Glue) Stands() string { return g.Class.Or(g.usual().Class) }

// usual is what is usual for its kind; all unknown where the kind is not said.
func (g *Glue) usual() wood.Glue {
	usual, _ := wood.FindGlue(g.Kind.Is)
	return usual
}

// orUsual is a figure as written, else the usual one where that is not zero.
func (f Figure) orUsual(usual float64) (float64, bool) {
	if f.How != Unknown {
		return f.Value, f.Known()
	}
	return usual, usual > 0
}

// Gluing is one place where a plan says what something is glued with.
type Gluing struct {
	Glue     *Glue
	Span     diag.Span
	Path     string // of what is glued
	Step     *Step  // in which it is; nil where a thing itself says its glue
	Exposure string // inside, damp or outside
}

// Gluings ranges over all places where a plan says what is glued with what.
func (p *Plan) Gluings() iter.Seq[Gluing] {
	return func(yield func(Gluing) bool) {
		ok := true
		whole := p.Exposure.Or("inside")
		add := func(of Ref[Glue], path string, step *Step, exposure string) {
			if ok && of.To != nil {
				ok = yield(Gluing{of.To, of.Span, path, step, exposure})
			}
		}
		for _, a := range p.Assemblies {
			add(a.Glue, PathOf(a), nil, a.Exposure.Or(whole))
		}
		harshest := p.harshest()
		for _, m := range p.Materials {
			at := max(harshest[m], exposed[whole])
			add(m.Glue, m.Name.Text, nil, exposures[at])
			for _, ply := range m.Plies {
				add(ply.Glue, m.Name.Text, nil, exposures[at])
			}
		}
		for _, f := range p.Fixes {
			for _, g := range f.Glue {
				if f.A.To != nil {
					add(g.Of, f.A.To.Path, nil, p.exposureOf(f.A.To.Is))
				}
			}
		}
		for _, steps := range p.Steps {
			for _, step := range steps.Steps {
				on := step.First()
				if g, at := step.Glue(); g != nil && on != nil {
					add(Ref[Glue]{Span: at, To: g}, on.Path, step, p.exposureOf(on.Is))
				}
			}
		}
	}
}

// First is the first thing that a step is done to; nil where it names none.
func (s *Step) First() *Thing {
	for _, on := range s.On {
		if on.To != nil {
			return on.To
		}
	}
	return nil
}

// Glue is what a step glues with, and where that is said: as the step says, else what is to be
// glued or pressed, for which the place is the step's own. It is nil where neither says it.
func (s *Step) Glue() (*Glue, diag.Span) {
	for _, with := range s.With {
		if with.To == nil {
			continue
		}
		if g, ok := with.To.Is.(*Glue); ok {
			return g, with.Span
		}
	}
	for _, on := range s.On {
		if on.To == nil {
			continue
		}
		if a := AssemblyOf(on.To.Is); s.Verb == "glue" && a != nil && a.Glue.To != nil {
			return a.Glue.To, s.Span
		}
		if m := MaterialOf(on.To.Is); s.Verb == "press" && m != nil && m.Glue.To != nil {
			return m.Glue.To, s.Span
		}
	}
	return nil, diag.Span{}
}

// AssemblyOf is the assembly that a thing is, places, or stands in; nil where there is none.
func AssemblyOf(thing any) *Assembly {
	switch t := thing.(type) {
	case *Assembly:
		return t
	case *Placed:
		return t.Part.To
	case Node:
		return t.item().In
	}
	return nil
}

// MaterialOf is what a thing is made of; of a material that itself, of a drawer that of its front.
func MaterialOf(thing any) *Material {
	switch t := thing.(type) {
	case *Material:
		return t
	case *Part:
		return t.Of.Material.To
	case *Member:
		return t.Of.Material.To
	case *Panel:
		return t.Of.Material.To
	case *Door:
		return t.Leaf.Material
	case *Drawer:
		if t.Front != nil {
			return t.Front.Of
		}
	}
	return nil
}

// exposures are where things stand, from mild to harsh.
var (
	exposures = [...]string{"inside", "damp", "outside"}
	exposed   = map[string]int{"inside": 0, "damp": 1, "outside": 2}
)

// harshest is where each layup is used that is harshest on it, by its place in exposures.
func (p *Plan) harshest() map[*Material]int {
	at := make(map[*Material]int)
	for w := range p.Workpieces() {
		if w.Of.Kind == Layup {
			at[w.Of] = max(at[w.Of], exposed[p.exposureOf(w.Thing)])
		}
	}
	return at
}

// exposureOf is where a thing stands: its assembly says it, or the plan.
func (p *Plan) exposureOf(thing any) string {
	whole := p.Exposure.Or("inside")
	if a := AssemblyOf(thing); a != nil {
		return a.Exposure.Or(whole)
	}
	return whole
}
