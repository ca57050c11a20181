package plan

// What is made of each material, whatever it is in the piece.

import "iter"

// Workpiece is one thing that is cut from a material, with its finished size: a member, a part, a
// panel, a leaf, a part of a drawer.
type Workpiece struct {
	Path  string
	Thing any // *Member, *Part, *Panel, *Door or *BoxPart
	Of    *Material
	Size  Size3
	Leaf  bool // a part that is the leaf of a door; MadeOf says so
}

// Workpieces ranges over all of which the plan says what they are of. A member that is a part
// declared elsewhere is met as that part.
func (p *Plan) Workpieces() iter.Seq[Workpiece] {
	return func(yield func(Workpiece) bool) {
		ok := true
		add := func(thing any, of *Material, size Size3) {
			if ok && of != nil {
				ok = yield(Workpiece{Path: PathOf(thing), Thing: thing, Of: of, Size: size})
			}
		}
		for _, part := range p.Parts {
			add(part, part.Of.Material.To, part.Size)
		}
		for _, top := range p.Tops {
			add(top, top.Of.Material.To, top.Size)
		}
		for _, a := range p.Assemblies {
			for n := range a.Nodes() {
				switch n := n.(type) {
				case *Member:
					if n.Part.To == nil {
						add(n, n.Of.Material.To, n.Size)
					}
				case *Panel:
					add(n, n.Of.Material.To, n.Size)
				case *Door:
					long, wide := n.Size[1], n.Size[0]
					if n.Leaf.GrainSaid.Is == Across.String() {
						long, wide = wide, long
					}
					add(n, n.Leaf.Material, Size3{long, wide, n.Leaf.Thick})
				case *Drawer:
					for _, b := range []*BoxPart{n.Front, n.Inner, n.Left, n.Right, n.Back, n.Bottom} {
						if b != nil {
							add(b, b.Of, b.Size)
						}
					}
				}
			}
		}
	}
}

// MadeOf is what is made of a material and of a known size.
func (p *Plan) MadeOf(m *Material) []Workpiece { return p.madeOf.get(p.sortWorkpieces)[m] }

func (p *Plan) sortWorkpieces() map[*Material][]Workpiece {
	leaves := make(map[any]bool)
	for d := range AllOf[*Door](p) {
		if d.Leaf.Part != nil {
			leaves[d.Leaf.Part] = true
		}
	}
	all := make(map[*Material][]Workpiece)
	for w := range p.Workpieces() {
		if w.Size.Long.Known() && w.Size.Wide.Known() {
			w.Leaf = leaves[w.Thing]
			all[w.Of] = append(all[w.Of], w)
		}
	}
	return all
}
