package plan

// A lid is a board that opens as a door does, and what it says of that is told as of a door: as one sees it from
// above, with its back as its upper edge, and its upper face as its front.

import "iter"

// Leaves ranges over what opens: doors, and lids as the doors that they are.
func (p *Plan) Leaves() iter.Seq[*Door] {
	return func(yield func(*Door) bool) {
		for _, a := range p.Assemblies {
			for n := range a.Nodes() {
				d, ok := n.(*Door)
				if m, board := n.(*Member); board {
					d, ok = m.Lid, m.Lid != nil
				}
				if ok && !yield(d) {
					return
				}
			}
		}
	}
}

// drawn is the side of its assembly that a side of a leaf is.
func (d *Door) drawn(side Side) Side {
	if d.Board == nil {
		return side
	}
	return [...]Side{Left: Left, Right: Right, Upper: Back, Lower: Front, Front: Upper, Back: Lower}[side]
}

// seenAsLeaf lets a lid be asked what stands beside it.
func (m *Member) seenAsLeaf() {
	if m.Lid != nil {
		m.Lid.Board, m.Lid.Item = m, m.Item
	}
}

// clearOf is what its gaps leave of the cell of a lid along an axis.
func (r *resolver) clearOf(m *Member, axis Axis, cell Extent) Extent {
	if m.Lid == nil || axis == Down {
		return cell
	}
	edges := r.doorEdges(m.Lid)
	near, far := edges[Left].Less, edges[Right].Less
	if axis == Behind {
		near, far = edges[Lower].Less, edges[Upper].Less
	}
	if near.Known() && far.Known() {
		cell.From += near.Length
		cell.Size -= near.Length + far.Length
	}
	return cell
}

// fillLid tells what the leaf is that a lid is.
func (m *Member) fillLid() {
	d := m.Lid
	m.seenAsLeaf()
	d.Cell[Down], d.Cell[Behind] = Extent{Size: m.Cell[Behind].Size, Sized: m.Cell[Behind].Sized}, m.Cell[Down]
	d.Size = [2]Length{m.sizeOn(Across), m.sizeOn(Behind)}
	d.Leaf = Leaf{Material: m.Of.Material.To, Thick: m.Size.Thick, GrainSaid: Choice{Is: Down.String()}}
	if part := m.Part.To; part != nil {
		d.Leaf.Material = part.Of.Material.To
	}
	if m.Bevel.Known() {
		d.Bevel = m.Bevel
	}
	if m.Grain == Across {
		d.Leaf.GrainSaid.Is = Across.String()
	}
}

// sizeOn is the finished size of a member along an axis.
func (m *Member) sizeOn(axis Axis) Length {
	switch axis {
	case m.Grain:
		return m.Size.Long
	case m.Flat:
		return m.Size.Thick
	}
	return m.Size.Wide
}

// Rear is the board on whose upper edge the back of a lid lies; nil where there is none, and of a door.
func (d *Door) Rear() *Member {
	if d.Board == nil {
		return nil
	}
	return rearOf(Neighbour(d.Board, Lower))
}

func rearOf(n Node) *Member {
	switch n := n.(type) {
	case *Member:
		if n.Flat == Behind && n.Board() {
			return n
		}
	case *List:
		switch {
		case len(n.Items) == 0:
		case n.Axis == Behind:
			return rearOf(n.Items[len(n.Items)-1])
		case n.Axis == Down:
			return rearOf(n.Items[0])
		default:
			for _, beside := range n.Items {
				if m := rearOf(beside); m != nil {
					return m
				}
			}
		}
	}
	return nil
}
