package plan

// mostPieces bounds how often a thing is made, so that counts of counts stay numbers.
const mostPieces = 1_000_000_000

// Said is how many of an assembly the plan says are made, and whether it says so: `x 2`, or
// two where it says `pair`.
func (a *Assembly) Said() (n int, said bool) {
	n, said = max(a.Count.Or(1), 0), a.Count.Known() || a.Pair.On
	if a.Pair.On {
		n *= 2
	}
	return min(n, mostPieces), said
}

// Pieces is how many of each assembly the piece needs: as many as the plan says, or as what
// it is placed in calls for, if that is more.
func (p *Plan) Pieces() map[*Assembly]int {
	in := map[*Assembly][]*Assembly{} // where each is placed, once for each placing
	for _, a := range p.Assemblies {
		for n := range a.Nodes() {
			switch n := n.(type) {
			case *Placed:
				in[n.Part.To] = append(in[n.Part.To], a)
			case *Door:
				in[n.Leaf.Frame] = append(in[n.Leaf.Frame], a)
			}
		}
	}
	pieces := make(map[*Assembly]int, len(p.Assemblies))
	var of func(a *Assembly) int
	of = func(a *Assembly) int {
		if n, ok := pieces[a]; ok {
			return n
		}
		said, _ := a.Said()
		pieces[a] = said // also what a loop of assemblies comes back to
		needed := 0
		for _, outer := range in[a] {
			needed = min(needed+of(outer), mostPieces)
		}
		pieces[a] = max(said, needed)
		return pieces[a]
	}
	for _, a := range p.Assemblies {
		of(a)
	}
	return pieces
}

// Pieces is how many of a part are cut: as many as it says, and no fewer than one assembly takes of it.
func (p *Part) Pieces(of map[*Assembly]int) int {
	used := map[*Assembly]int{}
	count := p.Count.Or(1)
	for _, m := range p.Uses {
		if m.In != nil {
			used[m.In] += max(of[m.In], 1)
			count = max(count, used[m.In])
		}
	}
	return min(count, mostPieces)
}

// Pieces is how many of a workpiece are cut.
func (w Workpiece) Pieces(of map[*Assembly]int) int {
	switch t := w.Thing.(type) {
	case *Part:
		return t.Pieces(of)
	case *BoxPart:
		return max(of[t.Drawer.In], 1)
	case Node:
		return max(of[t.item().In], 1)
	}
	return 1
}
