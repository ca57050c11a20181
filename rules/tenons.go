package rules

// What the rules about mortise and tenon share.

import (
	"iter"
	"slices"

	"plancheck/internal/diag"
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
func tenons(p *plan.Plan) iter.Seq[tenon] { return joinedBy(p, plan.Tenon) }

// mortised ranges over the ends that a mortise is cut for: tenons of their own, and loose ones.
func mortised(p *plan.Plan) iter.Seq[tenon] { return joinedBy(p, plan.Tenon, plan.LooseTenon) }

// joinedBy ranges over the ends that are held by some kinds of joint.
func joinedBy(p *plan.Plan, kinds ...string) iter.Seq[tenon] {
	return func(yield func(tenon) bool) {
		for e := range ends(p) {
			if m, ok := e.Of.(*plan.Member); ok && slices.Contains(kinds, e.Joint.Kind.Is) && !yield(tenon{e, m, plan.PathOf(m)}) {
				return
			}
		}
	}
}

// called is what messages call it: a tenon, or a loose tenon.
func (t tenon) called() string {
	if t.Joint.Kind.Is == plan.LooseTenon {
		return "loose tenon"
	}
	return "tenon"
}

// at is where a figure of the joint stands; where the plan leaves it out, at the joint.
func (t tenon) at(l plan.Length) diag.Span {
	if l.Span.Known() {
		return l.Span
	}
	return t.Joint.Span
}

// wide is how wide it is: as said, else as the piece in space has it.
func (t tenon) wide(cuts *plan.Cuts) plan.Length {
	if t.Joint.Wide.How != plan.Unknown {
		return t.Joint.Wide
	}
	own := cuts.Own(t.End, plan.CutTenon)
	if own == nil {
		return plan.Length{}
	}
	across := own.At[plan.Wide]
	if t.thickness(own) == plan.Wide {
		across = own.At[plan.Thick]
	}
	if !across.Sized {
		return plan.Length{}
	}
	return plan.Length{Length: across.Size, How: plan.Derived}
}

// thickness is the dimension of its stick's blank in which a tenon's thickness lies: a part may
// be turned where it is used.
func (t tenon) thickness(own *plan.Cut) plan.Dimension {
	if own.Side(plan.NearFace).Axis() == t.of.Flat {
		return plan.Thick
	}
	return plan.Wide
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
