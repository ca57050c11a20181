package plan

// What makes a door's leaf grow, piece by piece.

// Grower is a piece of wood across whose grain something grows.
type Grower struct {
	Item *Item // the piece; nil where it is the leaf itself
	Of   *Material
	Wide Length
}

// Grows is what makes a door's leaf grow along an axis; none where nothing does, or that is not
// known.
func (d *Door) Grows(axis Axis) []Grower {
	leaf := d.Leaf
	grain := Down
	if leaf.GrainSaid.Is == Across.String() {
		grain = Across
	}
	switch {
	case leaf.Frame != nil && leaf.Frame.Root != nil:
		growers, _ := growsAlong(leaf.Frame.Root, axis)
		return growers
	case axis == grain:
	case leaf.Part != nil:
		return []Grower{{&leaf.Part.Item, leaf.Part.Of.Material.To, leaf.Part.Size.Wide}}
	case leaf.Material != nil:
		return []Grower{{nil, leaf.Material, d.Size[axis]}}
	}
	return nil
}

// growsAlong is what makes something in a frame grow along an axis. What lies side by side adds up;
// of what lies one above the other, the piece that grows least holds the others, since it keeps its
// length. Panels and openings hold nothing.
func growsAlong(n Node, axis Axis) (growers []Grower, holds bool) {
	switch n := n.(type) {
	case *Member:
		if n.Grain == axis || n.Of.Material.To == nil || n.Of.Material.To.Kind != Solid {
			return nil, true
		}
		return []Grower{{&n.Item, n.Of.Material.To, n.Size.Wide}}, true
	case *List:
		along := n.Axis == axis
		holds = along
		for _, inner := range n.Items {
			g, ok := growsAlong(inner, axis)
			switch {
			case along:
				growers, holds = append(growers, g...), holds && ok
			case ok && (!holds || len(g) < len(growers)):
				growers, holds = g, true
			}
		}
		return growers, holds
	}
	return nil, false
}
