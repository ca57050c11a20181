package plan

// The sizes that a thing offers by name, such as `carcass.left-door.clear.wide`.

import (
	"strings"
)

// SizeName is one size that can be named after a dot.
type SizeName struct {
	Of, Name, Doc string
}

// SizeNames is the table that the reference prints, and that a wrong size is answered from.
func SizeNames() []SizeName {
	return []SizeName{
		{"member", "long", "its length along the grain, joints and all: what the saw gets"},
		{"member", "wide", "its width"},
		{"member", "thick", "its thickness"},
		{"member", "span", "its length between shoulders"},
		{"assembly", "wide", "outside, left to right"},
		{"assembly", "high", "outside, top to bottom"},
		{"assembly", "deep", "outside, front to back"},
		{"assembly", "thick", "of a frame, front to back"},
		{"opening", "wide", "the opening, left to right"},
		{"opening", "high", "the opening, top to bottom"},
		{"opening", "deep", "the opening, front to back"},
		{"door", "clear.wide", "what passes with the door open"},
		{"door", "leaf", "the door itself: a frame with its members, or its wide and high"},
		{"drawer", "front", "the front, with its long, wide and thick"},
		{"drawer", "left", "the left side, with its long, wide and thick"},
		{"drawer", "right", "the right side, with its long, wide and thick"},
		{"drawer", "back", "the back, with its long, wide and thick"},
		{"drawer", "bottom", "the bottom, with its long, wide and thick"},
		{"any", "from-left", "from the outside of its assembly to its nearest face"},
		{"any", "from-floor", "from the outside of its assembly up to its lower face"},
		{"any", "from-front", "from the outside of its assembly to its nearest face"},
	}
}

// size is the size of that name of a thing; ok is false if it has none such.
func (r *resolver) size(thing any, name string) (l Length, ok bool) {
	switch t := thing.(type) {
	case *Assembly:
		return r.assemblySize(t, name)
	case *Part:
		r.fillPart(t)
		return boardSize(t.Size, name)
	case *BoxPart:
		return boardSize(t.Size, name)
	case *Drawer:
		if part, rest, dotted := strings.Cut(name, "."); dotted {
			return r.boxSize(t, part, rest)
		}
	case *Door:
		if l, ok := r.doorSize(t, name); ok {
			return l, true
		}
	case *Member:
		if l, ok := r.memberSize(t, name); ok {
			return l, true
		}
	case *Placed:
		if t.Part.To != nil {
			if l, ok := r.assemblySize(t.Part.To, name); ok {
				return l, true
			}
		}
	}
	n, isNode := thing.(Node)
	if !isNode {
		return Length{}, false
	}
	return r.cellSize(n, name)
}

func boardSize(s Size3, name string) (Length, bool) {
	switch name {
	case "long":
		return s.Long, true
	case "wide":
		return s.Wide, true
	case "thick":
		return s.Thick, true
	}
	return Length{}, false
}

func (r *resolver) assemblySize(a *Assembly, name string) (Length, bool) {
	axis := Behind
	switch name {
	case "wide":
		axis = Across
	case "high":
		axis = Down
	case "deep":
	case "thick":
		if a.Kind != Frame {
			return Length{}, false
		}
	default:
		return Length{}, false
	}
	if own := r.statedOutside(a, axis); own.How != Unknown {
		return own, true
	}
	if !r.solve(a, axis) {
		return Length{}, true
	}
	return a.Outside[axis], true
}

// axisSize is what the size along each axis is called.
var axisSize = [...]string{"wide", "high", "deep"}

// cellSize is the size or the place of an opening or a member in its assembly.
func (r *resolver) cellSize(n Node, name string) (Length, bool) {
	it := n.item()
	var axis Axis
	switch name {
	case "wide", "from-left":
		axis = Across
	case "high", "from-floor":
		axis = Down
	case "deep", "from-front":
		axis = Behind
	default:
		return Length{}, false
	}
	if name == axisSize[axis] && it.Parent != nil && it.Parent.Axis == axis {
		if own := r.need(&it.Along); own.How != Unknown {
			return own, true
		}
	}
	if it.In == nil || !r.solve(it.In, axis) {
		return Length{}, true
	}
	cell, out := it.Cell[axis], it.In.Outside[axis]
	switch {
	case name == axisSize[axis]:
		if !cell.Sized {
			return Length{}, true
		}
		return derived(cell.Size), true
	}
	if m, ok := n.(*Member); ok {
		cell = m.Body[axis]
	}
	switch {
	case !cell.Placed:
		return Length{}, true
	case name != "from-floor":
		return derived(cell.From), true
	case !cell.Sized || !out.Known():
		return Length{}, true
	}
	return derived(out.Length - cell.To()), true
}

func (r *resolver) memberSize(m *Member, name string) (Length, bool) {
	if m.In == nil { // a top that stands alone
		r.fillTop(m)
		return boardSize(m.Size, name)
	}
	axis := m.Grain
	switch name {
	case "span":
		if !r.solve(m.In, axis) || !m.Cell[axis].Sized {
			return Length{}, true
		}
		return derived(m.Cell[axis].Size), true
	case "long":
	case "wide":
		axis = m.width()
	case "thick":
		axis = m.Flat
	default:
		return Length{}, false
	}
	if own := r.statedSize(m, name); own.How != Unknown {
		return own, true
	}
	if !r.solve(m.In, axis) {
		return Length{}, true
	}
	r.fillMember(m)
	return boardSize(m.Size, name)
}

// statedSize is a member's size as it, its part, or its number in the list states it.
func (r *resolver) statedSize(m *Member, name string) Length {
	if m.Part.To != nil {
		return r.partSize(m, name)
	}
	own, axis := Length{}, m.width()
	switch name {
	case "long":
		return r.stated(&m.Cut, r.need(&m.Long))
	case "wide":
		own = r.need(&m.Wide)
	case "thick":
		own, axis = r.need(&m.Thick), m.Flat
	}
	if own.How == Unknown && m.Parent != nil && m.Parent.Axis == axis {
		return r.need(&m.Along)
	}
	return own
}

func (r *resolver) doorSize(d *Door, name string) (Length, bool) {
	axis := Across
	switch name {
	case "clear.wide":
		return r.clearWide(d), true
	case "leaf.wide":
	case "leaf.high":
		axis = Down
	case "leaf.thick":
		return r.leafThick(d), true
	default:
		return Length{}, false
	}
	if !r.solve(d.In, axis) {
		return Length{}, true
	}
	return r.leafSize(d, axis), true
}

// clearWide is what passes a door that stands open: the opening less what the leaf, turned
// about its pin, still covers of it. A leaf that opens wide enough to stand clear of the
// opening covers nothing; at 90 degrees it covers its thickness, half its knuckle, and from the pin to what
// it hangs on. A hinge without a fixed pin is taken to turn the leaf about the corner of its face.
func (r *resolver) clearWide(d *Door) Length {
	if !r.solve(d.In, Across) || !d.Cell[Across].Sized {
		return Length{}
	}
	opening := d.Cell[Across].Size
	if d.Fit.Kind.Is == "overlay" || d.Hang.Is != "left" && d.Hang.Is != "right" {
		return derived(opening)
	}
	r.doorEdges(d)
	thick := r.leafThick(d)
	s, ok := d.swing(thick, r.leafSize(d, Across))
	if !ok {
		gap := d.Edges[hinged[d.Hang.Is]].Less
		if !thick.Known() || !gap.Known() {
			return Length{}
		}
		s = Swing{Thick: thick.Length, Gap: gap.Length, Opens: d.OpensTo()}
	}
	return derived(opening - s.Covers())
}

// boxSize is the size of that name of one of a drawer's parts.
func (r *resolver) boxSize(d *Drawer, part, name string) (l Length, ok bool) {
	for axis := Across; axis <= Behind; axis++ {
		if !r.solve(d.In, axis) {
			return Length{}, true
		}
	}
	if d.Front == nil {
		r.fillDrawer(d)
	}
	parts := map[string]*BoxPart{"front": d.Front, "left": d.Left, "right": d.Right, "back": d.Back, "bottom": d.Bottom}
	switch b, known := parts[part]; {
	case b != nil:
		return boardSize(b.Size, name)
	case known: // a drawer that says nothing of its bottom
		return Length{}, true
	}
	return Length{}, false
}
