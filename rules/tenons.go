package rules

// What the rules about mortise and tenon share.

import (
	"iter"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// tenon is a tenon on one end of a member. Where a line says its figures for several ends,
// findings name the figures alone, so that they are said once.
type tenon struct {
	*plan.End
	of      *plan.Member
	subject string
}

// tenons ranges over the ends that have a tenon of their own.
func tenons(p *plan.Plan) iter.Seq[tenon] {
	return func(yield func(tenon) bool) {
		for e := range ends(p) {
			if m, ok := e.Of.(*plan.Member); ok && e.Joint.Kind.Is == plan.Tenon && !yield(tenon{e, m, plan.PathOf(m)}) {
				return
			}
		}
	}
}

// racked lists the members by which a frame stands square. The others, such as slats, fill it.
var racked = map[string]bool{
	"rail": true, "stile": true, "post": true, "leg": true, "apron": true, "stretcher": true, "kick": true, "toe-kick": true,
}

// panelsBeside are the panels whose grooves run along a stick: those next to it in its list.
func panelsBeside(m *plan.Member) []*plan.Panel {
	if m.Parent == nil {
		return nil
	}
	var found []*plan.Panel
	var gather func(n plan.Node)
	gather = func(n plan.Node) {
		switch n := n.(type) {
		case *plan.Panel:
			found = append(found, n)
		case *plan.List:
			for _, inner := range n.Items {
				gather(inner)
			}
		}
	}
	for _, i := range []int{m.Index - 1, m.Index + 1} {
		if i >= 0 && i < len(m.Parent.Items) {
			gather(m.Parent.Items[i])
		}
	}
	return found
}

// gluedSheet reports whether a panel ties its frame together: a sheet that is glued all round.
func gluedSheet(panel *plan.Panel) bool {
	m := panel.Of.Material.To
	return m != nil && m.Kind != plan.Solid && (panel.GlueAt.Is == "all" || panel.GlueAt.Is == "edges")
}

// fraction is so many times a length.
func fraction(of wood.Length, times float64) wood.Length { return wood.Length(float64(of) * times) }
