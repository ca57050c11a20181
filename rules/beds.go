package rules

// Beds: the slats that lie under a mattress, and what carries them. A plan says where a mattress lies ("holds mattress"): in
// an open bay or a space, whose slats lie right under it, or on the frame, the case or the assembly that has them.

import (
	"cmp"
	"iter"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// deck is a row of slats that lie under a mattress, as they lie in the outermost assembly of the bed.
type deck struct {
	list  *plan.List
	slats []timber
	along plan.Axis // which way they run
	row   plan.Axis // which way they follow one another
	up    plan.Axis
	in    *walk // with the other wood of the bed
}

// timber is a piece of wood as it lies in a bed.
type timber struct {
	plan.Node
	at plan.Box
}

// mattress is where a mattress lies, in the outermost assembly of its bed.
type mattress struct {
	bed    *plan.Assembly
	at     plan.Box
	up     plan.Axis
	within bool // what holds it is the assembly that has the slats, and no empty place over them
}

// mostInBed is how many things a bed has; what unfolds into more is no bed.
const mostInBed = 2000

// decks ranges over the rows of slats under the mattresses of a plan, each once.
func decks(p *plan.Plan) iter.Seq[*deck] {
	return func(yield func(*deck) bool) {
		var placed map[*plan.Assembly]*plan.Placed
		seen, walks := map[*plan.List]bool{}, map[*plan.Assembly]*walk{}
		for a, holder := range mattresses(p) {
			if placed == nil {
				placed = placedAt(p)
			}
			m := outermost(a, holder, placed)
			if walks[m.bed] == nil {
				walks[m.bed] = walked(m.bed)
			}
			for _, d := range walks[m.bed].under(m) {
				if !seen[d.list] && !yield(d) {
					return
				}
				seen[d.list] = true
			}
		}
	}
}

// mattresses ranges over what a plan says holds one: a space, or nil where the assembly itself does.
func mattresses(p *plan.Plan) iter.Seq2[*plan.Assembly, *plan.Space] {
	on := func(holds []*plan.Holds) bool {
		return slices.ContainsFunc(holds, func(h *plan.Holds) bool { return h.What.Is == "mattress" })
	}
	return func(yield func(*plan.Assembly, *plan.Space) bool) {
		for _, a := range p.Assemblies {
			if on(a.Holds) && !yield(a, nil) {
				return
			}
		}
		for s := range plan.AllOf[*plan.Space](p) {
			if on(s.Holds) && !yield(s.In, s) {
				return
			}
		}
	}
}

// placedAt is where assemblies stand in others: the first place of each.
func placedAt(p *plan.Plan) map[*plan.Assembly]*plan.Placed {
	at := map[*plan.Assembly]*plan.Placed{}
	for n := range plan.AllOf[*plan.Placed](p) {
		if n.Part.To != nil && at[n.Part.To] == nil {
			at[n.Part.To] = n
		}
	}
	return at
}

// outermost finds where a mattress lies in the assembly in which all the rest of its bed stands. A frame that
// holds one is drawn as it lies, its face up.
func outermost(a *plan.Assembly, holder *plan.Space, placed map[*plan.Assembly]*plan.Placed) mattress {
	m := mattress{bed: a, up: plan.Down, within: holder == nil}
	if a.Kind == plan.Frame {
		m.up = plan.Behind
	}
	if holder != nil {
		m.at = holder.Cell
	} else {
		for axis, l := range a.Outside {
			m.at[axis] = plan.Extent{Size: l.Length, Placed: true, Sized: l.Known()}
		}
	}
	for seen := map[*plan.Assembly]bool{}; !seen[m.bed]; {
		seen[m.bed] = true
		by := placed[m.bed]
		if by == nil {
			break
		}
		m.bed, m.at, m.up = by.In, by.Outer(m.at), by.HostAxis(m.up)
	}
	return m
}

// walk takes down the wood of a bed, and the rows of slats in it that lie level.
type walk struct {
	up     plan.Axis
	things int
	wood   []timber
	decks  []*deck
}

func walked(bed *plan.Assembly) *walk {
	w := &walk{up: plan.Down}
	if bed.Kind == plan.Frame {
		w.up = plan.Behind
	}
	if !w.into(bed, nil) {
		return &walk{}
	}
	return w
}

// under are the rows of slats on which a mattress lies; none where more than one level of them can be meant, or
// something lies between.
func (w *walk) under(m mattress) []*deck {
	if m.up != w.up {
		return nil
	}
	var under []*deck
	for _, d := range w.decks {
		if first := d.slats[0]; overlapping(first.at[d.along], m.at[d.along]) && d.overlaps(m.at[d.row]) && m.on(first.at[w.up]) && !w.covers(d, m) {
			under = append(under, d)
		}
	}
	level := func(d *deck) plan.Extent { return d.slats[0].at[w.up] }
	slices.SortStableFunc(under, func(a, b *deck) int { return cmp.Compare(level(a).From, level(b).From) })
	for i, d := range under {
		switch {
		case overlapping(level(d), level(under[0])):
		case m.within:
			return nil
		default:
			return under[:i]
		}
	}
	return under
}

// overlaps reports whether any of its slats lies within a stretch of their row.
func (d *deck) overlaps(e plan.Extent) bool {
	return slices.ContainsFunc(d.slats, func(s timber) bool { return overlapping(s.at[d.row], e) })
}

// on reports whether a mattress lies right on what is so high: within what holds it, or not more than 1 in below
// the empty place.
func (m mattress) on(level plan.Extent) bool {
	at := m.at[m.up]
	if m.within {
		return overlapping(level, at)
	}
	return at.Known() && (level.From-at.To()).Abs() <= wood.Inch
}

// into goes through an assembly, which is placed by the last of what is given; false where there is too much in it.
func (w *walk) into(a *plan.Assembly, by []*plan.Placed) bool {
	for n := range a.Nodes() {
		if w.things++; w.things > mostInBed {
			return false
		}
		switch n := n.(type) {
		case *plan.Member:
			if n.Word != "slat" {
				w.wood = append(w.wood, timber{n, outer(n.Body, by)})
			}
		case *plan.Panel:
			w.wood = append(w.wood, timber{n, outer(n.Cell, by)})
		case *plan.List:
			w.row(n, by)
		case *plan.Placed:
			inner := n.Part.To
			if inner == nil || inner == a || slices.ContainsFunc(by, func(p *plan.Placed) bool { return p.In == inner }) {
				continue
			}
			if !w.into(inner, append(slices.Clip(by), n)) {
				return false
			}
		}
	}
	return true
}

// row takes down a list if it is a row of slats that lie level.
func (w *walk) row(l *plan.List, by []*plan.Placed) {
	d := &deck{list: l, up: w.up, in: w}
	for _, n := range l.Items {
		m, ok := n.(*plan.Member)
		if !ok || m.Word != "slat" {
			continue
		}
		s := timber{m, outer(m.Body, by)}
		if !s.at[0].Known() || !s.at[1].Known() || !s.at[2].Known() {
			return
		}
		d.slats = append(d.slats, s)
		d.along = axisThere(m.Grain, by)
	}
	if len(d.slats) < 2 {
		return
	}
	d.row = axisThere(l.Axis, by)
	if d.row != w.up && d.along != w.up && d.row != d.along {
		w.decks = append(w.decks, d)
	}
}

// covers reports whether a board or a panel lies between a row of slats and the mattress.
func (w *walk) covers(d *deck, m mattress) bool {
	first, last := d.slats[0], d.slats[len(d.slats)-1]
	return slices.ContainsFunc(w.wood, func(x timber) bool {
		if member, ok := x.Node.(*plan.Member); ok && !member.Board() {
			return false
		}
		at := x.at[w.up]
		level := at.Known() && !wood.Over(at.To(), first.at[w.up].From) && (m.within || !wood.Under(at.From, m.at[w.up].To()))
		return level && overlapping(x.at[d.along], first.at[d.along]) && (overlapping(x.at[d.row], first.at[d.row]) || overlapping(x.at[d.row], last.at[d.row]))
	})
}

// outer is a place in the innermost of what stands in one another, in the outermost.
func outer(at plan.Box, by []*plan.Placed) plan.Box {
	for i := len(by) - 1; i >= 0; i-- {
		at = by[i].Outer(at)
	}
	return at
}

func axisThere(axis plan.Axis, by []*plan.Placed) plan.Axis {
	for i := len(by) - 1; i >= 0; i-- {
		axis = by[i].HostAxis(axis)
	}
	return axis
}

// overlapping reports whether two extents are known, and share more than a touch.
func overlapping(a, b plan.Extent) bool {
	return a.Known() && b.Known() && wood.Under(max(a.From, b.From), min(a.To(), b.To()))
}
