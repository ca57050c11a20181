package rules

// All that a plan states of one size of one thing, for the rules about sizes that disagree.

import (
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// statement is one size as a plan states it, and what states it.
type statement struct {
	plan.Length
	by string // "`thick`", "sheet \"ply\""
}

// sized is one dimension of a thing, with every statement of it.
type sized struct {
	subject string
	called  string
	at      diag.Span
	what    string // thick, wide or long
	said    []statement
}

// say takes down a statement, if it is one.
func (s *sized) say(l plan.Length, by string) {
	if l.Known() && l.Span.Known() {
		s.said = append(s.said, statement{l, by})
	}
}

// stuff takes down the thickness that stands behind a material's name, where it is the thing's own, and
// that of the sheet or the layup itself.
func (s *sized) stuff(of plan.Stuff, own bool) {
	if own {
		s.say(of.Said, "what it is of")
	}
	if m := of.Material.To; m != nil && (m.Kind == plan.Sheet || m.Kind == plan.Layup) {
		by := m.Kind.String() + " " + quote(m.Name.Text)
		if thick := m.Thickness(); thick.Known() {
			if !thick.Span.Known() {
				thick.Span = m.Name.Span // worked out, from plies
			}
			s.say(thick, by)
		}
	}
}

// statements ranges over the dimensions of members, parts, tops, panels, leaves and drawers.
func statements(p *plan.Plan) iter.Seq[sized] {
	return func(yield func(sized) bool) {
		ok := true
		add := func(s sized) { ok = ok && (len(s.said) < 2 || yield(s)) }
		of := func(thing any, called string, at diag.Span, what string) sized {
			return sized{subject: plan.PathOf(thing), called: called, at: at, what: what}
		}
		for _, part := range p.Parts {
			called, at := titled(&part.Item), part.Name.Span
			long, wide, thick := of(part, called, at, "long"), of(part, called, at, "wide"), of(part, called, at, "thick")
			long.say(part.Long, "`long`")
			long.say(part.Blank.Long, "`size`")
			wide.say(part.Wide, "`wide`")
			wide.say(part.Blank.Wide, "`size`")
			thick.say(part.Thick, "`thick`")
			thick.say(part.Blank.Thick, "`size`")
			thick.stuff(part.Of, true)
			add(long)
			add(wide)
			add(thick)
		}
		for _, top := range p.Tops {
			thick := of(top, titled(&top.Item), top.Name.Span, "thick")
			thick.say(top.Thick, "`thick`")
			thick.stuff(top.Of, true)
			add(thick)
		}
		for _, a := range p.Assemblies {
			if a.Kind != plan.Frame {
				thick := of(a, entitled(a), a.Name.Span, "thick")
				thick.stuff(a.Of, true)
				add(thick)
			}
			for n := range a.Nodes() {
				it := plan.It(n)
				called, at := titled(it), it.Name.Span
				switch n := n.(type) {
				case *plan.Member:
					thick, wide := of(n, called, at, "thick"), of(n, called, at, "wide")
					memberSays(n, &thick, &wide)
					add(thick)
					add(wide)
				case *plan.Panel:
					thick := of(n, called, at, "thick")
					thick.say(n.Thick, "`thick`")
					thick.stuff(n.Of, n.Of.Said.Span != a.Of.Said.Span)
					add(thick)
				case *plan.Door:
					if n.Leaf.Material != nil {
						thick := of(n, "the leaf of "+called, n.Leaf.Span, "thick")
						leaf := plan.Stuff{Said: n.Leaf.Thick}
						leaf.Material.To = n.Leaf.Material
						thick.stuff(leaf, true)
						add(thick)
					}
				case *plan.Drawer:
					for _, stuff := range drawerStuff(n) {
						thick := of(n, called, at, "thick")
						thick.stuff(stuff, true)
						add(thick)
					}
				}
			}
		}
	}
}

// memberSays takes down what is stated of a member: by itself, by its place in the list, by the part that it
// is. What `each` or the assembly says is a default, which the member's own statement replaces.
func memberSays(m *plan.Member, thick, wide *sized) {
	along := func(s *sized, axis plan.Axis) {
		if m.Parent.Axis == axis {
			s.say(m.Along, "its size in the list")
		}
	}
	along(thick, m.Flat)
	along(wide, 3-m.Flat-m.Grain)
	own := func(l plan.Length) bool { return !byDefault(m.In, l.Span) }
	if own(m.Thick) || len(thick.said) == 0 {
		thick.say(m.Thick, "`thick`")
	}
	if own(m.Wide) || len(wide.said) == 0 {
		wide.say(m.Wide, "`wide`")
	}
	if part := m.Part.To; part != nil {
		w, t := part.Size.Wide, part.Size.Thick
		if m.Turned.On {
			w, t = t, w
		}
		wide.say(w, titled(&part.Item))
		thick.say(t, titled(&part.Item))
		return
	}
	thick.stuff(m.Of, own(m.Of.Said))
}

// byDefault reports whether a size is what `each` or the assembly itself says.
func byDefault(a *plan.Assembly, at diag.Span) bool {
	if at == a.Of.Said.Span {
		return true
	}
	for _, n := range a.Each {
		if each, ok := n.(*plan.Member); ok && (each.Thick.Span == at || each.Wide.Span == at || each.Of.Said.Span == at || each.Along.Span == at) {
			return true
		}
	}
	return false
}

// drawerStuff is what the parts of a drawer are of.
func drawerStuff(d *plan.Drawer) []plan.Stuff {
	all := []plan.Stuff{d.Of}
	for _, part := range []*plan.DrawerPart{d.FrontAs, d.BackAs, d.SideAs} {
		if part != nil {
			all = append(all, part.Of)
		}
	}
	if d.BottomAs != nil {
		all = append(all, d.BottomAs.Of)
	}
	return all
}
