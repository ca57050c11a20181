package plan

// Solving a layout. Each axis of each assembly is worked out by itself, when it is first
// asked for: from a stated outside inwards, else from what its items fix outwards, else
// from the first opening or cell that the assembly fills. A list along the axis deals its
// cell out to its items; a list along another axis gives each of its items the whole.

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// solve works out one axis of an assembly. It reports false while that is going on
// already, which is a loop, and then the loop has been reported.
func (r *resolver) solve(a *Assembly, axis Axis) bool {
	switch a.state[axis] {
	case done:
		return true
	case busy:
		r.loop(a.Name.Span, sizeOf(a, axis))
		return false
	}
	if r.shaping {
		asked := r.trail[len(r.trail)-1].at
		f := r.fault(Loop, asked, "a number of things cannot follow from %s, which is worked out when all of them stand in their lists", quoted(sizeOf(a, axis)))
		f.Fixes = append(f.Fixes, diag.Fix{Title: "state the number, or lean on a size that is stated"})
		return false
	}
	if len(r.trail) >= maxDepth {
		r.fault(TooLarge, a.Name.Span, "sizes lean on one another more than %d deep here", maxDepth)
		return false
	}
	a.state[axis] = busy
	r.trail = append(r.trail, stop{a.Name.Span, sizeOf(a, axis)})
	a.Outside[axis] = r.outside(a, axis)
	if a.Root != nil {
		out := a.Outside[axis]
		r.place(a.Root, axis, Extent{Size: out.Length, Placed: true, Sized: out.Known()})
	}
	r.trail = r.trail[:len(r.trail)-1]
	a.state[axis] = done
	return true
}

func sizeOf(a *Assembly, axis Axis) string {
	return a.Name.Text + "." + axisSize[axis]
}

// outside is an assembly's size along an axis: stated, from the inside out, or from the
// first place that it fills.
func (r *resolver) outside(a *Assembly, axis Axis) Length {
	if own := r.own(a, axis); own.How != Unknown {
		return own
	}
	for _, u := range a.uses {
		if l, ok := r.filled(u, axis); ok {
			a.Filled = u
			return derived(l)
		}
	}
	if a.Root != nil {
		if f := r.insideOut(a.Root, axis); f.known {
			return derived(f.size)
		}
	}
	return Length{}
}

// insideOut is what a list comes to where nothing says how much room there is for it: then
// what fills the room follows the lists beside it, as stiles do that stand beside rails and
// openings of known height. No list tells how deep a board is.
func (r *resolver) insideOut(l *List, axis Axis) fixing {
	if f := r.fixed(l, axis); f.known || axis == Behind {
		return f
	}
	sum, greatest := fixing{known: len(l.Items) > 0}, fixing{}
	for _, n := range l.Items {
		f := r.fixed(n, axis)
		inner, isList := n.(*List)
		if isList {
			f = r.insideOut(inner, axis)
			greatest.size = max(greatest.size, f.size)
			greatest.known = greatest.known || f.known
		}
		sum.size += f.size
		sum.known = sum.known && f.known
	}
	if l.Axis == axis {
		return sum
	}
	return greatest
}

// statedOutside is an assembly's size as its own block states it.
func (r *resolver) statedOutside(a *Assembly, axis Axis) Length {
	return r.room([...]*Length{&a.Wide, &a.High, &a.Deep}[axis])
}

// own is an assembly's size as far as it does not depend on where it stands.
func (r *resolver) own(a *Assembly, axis Axis) Length {
	if said := r.statedOutside(a, axis); said.How != Unknown {
		return said
	}
	if a.Kind == Frame && axis == Behind {
		if t := r.thick(a.Of); t.Known() {
			return t
		}
	}
	if a.Root == nil {
		return Length{}
	}
	if f := r.fixed(a.Root, axis); f.known {
		return derived(f.size)
	}
	return Length{}
}

// filled is the size that an assembly takes from a door's opening or a cell.
func (r *resolver) filled(n Node, axis Axis) (wood.Length, bool) {
	it := n.item()
	switch n := n.(type) {
	case *Door:
		if axis == Behind || !r.solve(it.In, axis) {
			return 0, false
		}
		l := r.leafSize(n, axis)
		return l.Length, l.Known()
	case *Placed:
		host := n.HostAxis(axis)
		if it.Parent.Axis == host && it.Along.How == Unknown && !r.shares(n, host) {
			return 0, false // the cell takes its size from here
		}
		if !r.solve(it.In, host) || !it.Cell[host].Sized {
			return 0, false
		}
		return it.Cell[host].Size, true
	}
	return 0, false
}

// HostAxis is the axis of the assembly in which a placed thing stands that its own axis
// lies along.
func (p *Placed) HostAxis(own Axis) Axis {
	switch {
	case p.Turned && own != Down:
		return Behind - own // its left became the front
	case p.Flat && own != Across:
		return Behind + Down - own // its top became the back
	}
	return own
}

// reversed reports whether a placed thing runs against the assembly in which it stands along
// one of its own axes: laid flat with its top at the back, or mirrored. A mirror image changes
// left and right of where it stands, so that a frame which turns keeps its left at the front and
// shows its front to the right.
func (p *Placed) reversed(own Axis) bool {
	return p.Flat && own == Down || p.Mirrored.On && p.HostAxis(own) == Across
}

// fixing is what a thing measures along an axis from its own statements alone.
type fixing struct {
	size  wood.Length
	known bool
	fills bool // without a size of its own it takes whatever there is
}

// room is a stated size in a layout, which cannot be less than nothing.
func (r *resolver) room(l *Length) Length {
	if r.need(l).Known() && l.Length < 0 {
		r.fault(WrongValue, l.Span, "this comes to %s, and nothing takes less than no room", r.plan.Show(l.Length))
		l.How = failed
	}
	return *l
}

func fixedAt(l Length) fixing { return fixing{size: l.Length, known: l.Known()} }

func (r *resolver) fixed(n Node, axis Axis) fixing {
	if l, ok := n.(*List); ok {
		if l.fixed[axis] == nil {
			l.fixed[axis] = &fixing{} // unknown, should it be asked for while it is sought
			found := r.fixedList(l, axis)
			l.fixed[axis] = &found
		}
		return *l.fixed[axis]
	}
	it := n.item()
	if it.Parent != nil && it.Parent.Axis == axis {
		if l := r.room(&it.Along); l.How != Unknown {
			return fixedAt(l)
		}
	}
	switch n := n.(type) {
	case *Member:
		f := fixedAt(r.memberFixed(n, axis))
		f.fills = !f.known
		return f
	case *Placed:
		if n.Part.To != nil {
			return fixedAt(r.own(n.Part.To, n.HostAxis(axis)))
		}
	case *Door:
		switch {
		case axis != Behind:
		case n.Fit.Kind.Is == "overlay": // it stands before the case, and takes nothing of its depth
			return fixing{known: true}
		default:
			return fixedAt(r.leafThick(n))
		}
	case *Panel:
		if n.Word == "back" && it.Parent != nil && it.Parent.Axis == axis { // a board, as thick as its material
			return fixedAt(r.panelThick(n))
		}
		return fixing{fills: true}
	case *Space:
	default:
		return fixing{fills: true}
	}
	return fixing{}
}

// fixedList adds up a list along its own axis; across it, the greatest of its items counts,
// unless one of them wants to fill whatever there is.
func (r *resolver) fixedList(l *List, axis Axis) fixing {
	if l.Parent != nil && l.Parent.Axis == axis {
		if n := r.room(&l.Along); n.How != Unknown {
			return fixedAt(n)
		}
	}
	sum, greatest := fixing{known: len(l.Items) > 0}, fixing{}
	for _, n := range l.Items {
		f := r.fixed(n, axis)
		sum.size += f.size
		sum.known = sum.known && f.known
		greatest.size = max(greatest.size, f.size)
		greatest.known = greatest.known || f.known
		greatest.fills = greatest.fills || f.fills
	}
	if l.Axis == axis {
		if sum.known && sum.size > maxLength {
			r.fault(TooLarge, l.Span, "what stands in this list comes to more than 1 km: is a unit right?")
			return fixing{}
		}
		return sum
	}
	greatest.known = greatest.known && !greatest.fills
	return greatest
}

// memberFixed is a member's stated size along an axis; for a board along its thickness,
// that of its material.
func (r *resolver) memberFixed(m *Member, axis Axis) Length {
	own := r.statedOn(m, axis)
	if own.How == Unknown && axis == m.Flat {
		return r.thick(m.Of)
	}
	return own
}

// statedOn is a member's size along an axis as it or its part states it. Its length is left
// out: it includes the joints.
func (r *resolver) statedOn(m *Member, axis Axis) Length {
	switch axis {
	case m.Flat:
		return r.stated(&m.Thick, r.partSize(m, "thick"))
	case m.Grain:
		return Length{}
	}
	return r.stated(&m.Wide, r.partSize(m, "wide"))
}

// partSize is a size of the part that a member is, as it shows on this frame's face.
func (r *resolver) partSize(m *Member, name string) Length {
	p := m.Part.To
	switch {
	case p == nil:
		return Length{}
	case name == "long":
		return r.stated(&p.Long, r.need(&p.Blank.Long))
	case (name == "wide") != m.Turned.On:
		return r.stated(&p.Wide, r.need(&p.Blank.Wide))
	}
	return r.stated(&p.Thick, r.stated(&p.Blank.Thick, r.thick(p.Of)))
}

// shares reports whether a thing takes a share of what is left of its list.
func (r *resolver) shares(n Node, axis Axis) bool {
	if r.fixed(n, axis).known {
		return false
	}
	m, member := n.(*Member)
	return (!member || m.Word == "lid" && axis != m.Flat) && !It(n).Along.Said()
}

// place puts a thing into its cell along one axis, and what is inside it too.
func (r *resolver) place(n Node, axis Axis, cell Extent) {
	n.item().Cell[axis] = cell
	switch n := n.(type) {
	case *Member:
		n.Body[axis] = r.body(n, axis, r.clearOf(n, axis, cell))
	case *List:
		if n.Axis == axis {
			r.deal(n, cell)
			return
		}
		for _, inner := range n.Items {
			r.place(inner, axis, cell)
		}
	}
}

// body is where the wood itself lies in its cell along one axis. It stands flush with the
// front, the left and the top of its cell unless something else is said.
func (r *resolver) body(m *Member, axis Axis, cell Extent) Extent {
	if axis == m.Grain || m.Parent.Axis == axis {
		return cell
	}
	own := r.memberFixed(m, axis)
	if own.Known() && (!cell.Sized || !wood.Same(own.Length, cell.Size)) {
		spare := cell.Size - own.Length
		cell.Size = own.Length
		if axis == Behind && cell.Sized {
			switch {
			case m.Centred.On:
				cell.From += spare / 2
			case m.Flush.Is == "back":
				cell.From += spare
			}
		}
		cell.Sized = true
	}
	if axis != Behind {
		return cell
	}
	front := r.need(&m.Recess.Front).Length - r.need(&m.Proud.Front).Length
	back := r.need(&m.Recess.Back).Length - r.need(&m.Proud.Back).Length
	cell.From += front
	if !own.Known() { // a board that fills the depth is cut to it
		cell.Size -= front + back
	} else if front == 0 {
		cell.From -= back
	}
	return cell
}

// deal divides a list's cell among its items: what is fixed first, and the rest in whole
// nanometres to those that share, so that the sum is exact.
func (r *resolver) deal(l *List, cell Extent) {
	sizes := make([]Extent, len(l.Items))
	sum := Sum{Whole: cell.Size}
	known := cell.Sized
	for i, n := range l.Items {
		f := r.fixed(n, l.Axis)
		switch {
		case f.known:
			sizes[i] = Extent{Size: f.size, Sized: true}
			sum.Fixed += f.size
		case r.shares(n, l.Axis):
			n.item().Shared = true
			sum.Shares += r.needCount(&n.item().Share).Or(1)
		default:
			known = false
		}
	}
	rest := sum.Whole - sum.Fixed
	switch {
	case !known:
	case sum.Shares > 0 && rest > wood.Slack:
		sum.State = Closed
		dealt, shares := wood.Length(0), wood.Length(0)
		for i, n := range l.Items {
			if n.item().Shared {
				shares += wood.Length(n.item().Share.Or(1))
				each, odd := rest/wood.Length(sum.Shares), rest%wood.Length(sum.Shares)
				upTo := each*shares + (odd*shares+wood.Length(sum.Shares)-1)/wood.Length(sum.Shares)
				sizes[i] = Extent{Size: upTo - dealt, Sized: true}
				dealt = upTo
			}
		}
	case sum.Shares > 0:
		sum.State = NothingLeft
	case wood.Same(rest, 0):
		sum.State = Closed
	case rest < 0:
		sum.State = TooMuch
	default:
		sum.State = TooLittle
	}
	l.Sum = sum

	at := Extent{From: cell.From, Placed: cell.Placed}
	for i, n := range l.Items {
		sizes[i].From, sizes[i].Placed = at.From, at.Placed
		r.place(n, l.Axis, sizes[i])
		at.From += sizes[i].Size
		at.Placed = at.Placed && sizes[i].Sized
	}
	if cell.Placed && cell.Sized && !at.Placed {
		r.placeFromFarEnd(l, cell, sizes)
	}
}

// placeFromFarEnd places what stands behind an item of unknown size.
func (r *resolver) placeFromFarEnd(l *List, cell Extent, sizes []Extent) {
	at := cell.To()
	for i := len(sizes) - 1; i >= 0 && sizes[i].Sized && !sizes[i].Placed; i-- {
		at -= sizes[i].Size
		sizes[i].From, sizes[i].Placed = at, true
		r.place(l.Items[i], l.Axis, sizes[i])
	}
}

// Neighbour is what bounds a thing's cell on one side: its sibling in the nearest list
// that runs that way, climbing outward; nil at the outside of the assembly.
func Neighbour(n Node, side Side) Node {
	it := n.item()
	if d, ok := n.(*Door); ok {
		side = d.drawn(side)
	}
	for it.Parent != nil {
		if l := it.Parent; l.Axis == side.Axis() {
			next := it.Index - 1
			if side.Far() {
				next = it.Index + 1
			}
			if next >= 0 && next < len(l.Items) {
				return l.Items[next]
			}
		}
		it = &it.Parent.Item
	}
	return nil
}

// orient says which way a member's grain and thickness lie.
func orient(m *Member) {
	list := Across
	if m.Parent != nil {
		list = m.Parent.Axis
	}
	if m.Word == "lid" {
		list = Down // it lies level beside another one too
	}
	m.Grain = grainOf(m, list)
	switch {
	case boards[m.Word]:
		m.Flat = list
	case strips[m.Word] && m.Grain != list: // it lies flat in the plane of its row
		m.Flat = 3 - list - m.Grain
	case m.Grain == Behind:
		m.Flat = Across
	default:
		m.Flat = Behind
	}
	if m.Flat == m.Grain { // a board said to run through its own list
		m.Flat = (m.Grain + 1) % 3
	}
}

// boards take their thickness from their material and fill the depth; the other members
// are sticks.
var boards = map[string]bool{
	"side": true, "divider": true, "partition": true, "shelf": true,
	"top": true, "bottom": true, "lid": true, "front": true,
}

// levelWords lists the members whose grain lies level; the others stand upright.
var levelWords = map[string]bool{
	"rail": true, "apron": true, "shelf": true, "top": true, "bottom": true, "lid": true, "front": true,
	"kick": true, "toe-kick": true, "stretcher": true,
}

// strips lists the members whose grain runs along their longer side, which in a frame is
// the one across their list.
var strips = map[string]bool{
	"slat": true, "cleat": true, "batten": true, "moulding": true, "runner": true, "kicker": true,
}

// grainOf is the axis along which a member's grain runs: as said, else upright, or level
// along `across`, which a list across turns front to back. What is level in a list down runs
// front to back where it stands between two things that way, and not the other.
func grainOf(m *Member, list Axis) Axis {
	switch m.GrainSaid.Is {
	case "across":
		return Across
	case "down":
		return Down
	case "behind":
		return Behind
	}
	flat := m.In != nil && m.In.Kind == Frame
	switch {
	case strips[m.Word] && flat && list == Across:
		return Down
	case !levelWords[m.Word] && !strips[m.Word]:
		return Down
	case flat:
		return Across
	case list == Across, list == Down && between(m, Behind) && !between(m, Across):
		return Behind
	}
	return Across
}

// between reports whether members stand on both sides of a thing along an axis.
func between(n Node, axis Axis) bool {
	for _, side := range sidesOf(axis) {
		if !solid(Neighbour(n, side), side.Opposite()) {
			return false
		}
	}
	return true
}

// solid reports whether a thing shows a member on one side: is one, holds one there, or is
// drawn elsewhere.
func solid(n Node, facing Side) bool {
	switch n := n.(type) {
	case *Member, *Placed:
		return true
	case *List:
		if len(n.Items) > 0 && n.Axis == facing.Axis() {
			end := 0
			if facing.Far() {
				end = len(n.Items) - 1
			}
			return solid(n.Items[end], facing)
		}
		for _, inner := range n.Items {
			if solid(inner, facing) {
				return true
			}
		}
	}
	return false
}

// missing reports the sticks that do not say how much of their list, or of a room that is
// shared out, they take: a stick never takes a share, nor the depth of a case for its thickness.
func (r *resolver) missing(a *Assembly) {
	var told diag.Span
	for _, m := range a.Members {
		list := m.Parent.Axis
		if m.Of.Material.Said() && m.Of.Material.To == nil || m.Of.Thick().How == failed {
			continue // its material or how thick that stands is unknown, and that was reported
		}
		if m.Name.Span == told {
			continue // one of a row
		}
		if !r.fixed(m, list).known && !m.Along.Said() && !m.Part.Said() && (list != m.Grain || !boards[m.Word]) {
			if boards[m.Word] && r.thickless(m) {
				continue
			}
			what, _ := m.crossSize(list)
			f := r.fault(MissingValue, m.Name.Span, "%s needs to say how %s it is along its list", m.Called(), what)
			f.Subject = PathOf(m)
			f.Fixes = []diag.Fix{{Title: "write its size after the name, such as `" + m.Word + " " + m.Name.Text + " 2 1/4`"}}
			told = m.Name.Span
			continue
		}
		for axis := Across; axis <= Behind; axis++ {
			fills := sharedOut(m, axis) || a.Kind == Case && axis == m.Flat && axis == Behind
			if boards[m.Word] || axis == list || axis == m.Grain || !fills || r.memberFixed(m, axis).How != Unknown {
				continue
			}
			told = m.Name.Span
			if a.Kind == Frame && list == m.Grain {
				f := r.fault(UnknownWord, m.Name.Span, "%s does not stand here: it is upright, and its list goes down", m.Called())
				f.Subject = PathOf(m)
				f.Fixes = []diag.Fix{{Title: "write `rail` for what lies between things one above the other, or put them side by side in `across`"}}
				break
			}
			what, such := m.crossSize(axis)
			f := r.fault(MissingValue, m.Name.Span, "%s needs to say how %s it is", m.Called(), what)
			f.Subject = PathOf(m)
			f.Fixes = []diag.Fix{{Title: "write `" + such + "`"}}
			break
		}
	}
}

// thickless takes down that nothing says how thick the stuff of a board is, and reports
// whether that was said already, of another board of the same stuff.
func (r *resolver) thickless(m *Member) (again bool) {
	var stuff any = m.In
	if m.Of.Material.To != nil {
		stuff = m.Of.Material.To
	}
	again = r.noThickness[stuff]
	r.noThickness[stuff] = true
	return again
}

// crossSize is what a member's size along an axis that is not its grain's is called, and how
// it may be said.
func (m *Member) crossSize(axis Axis) (what, such string) {
	if axis == m.Flat {
		return "thick", "thick 7/8"
	}
	return "wide", "wide 2 1/4"
}

// sharedOut reports whether a thing's room along an axis is a share of what is left.
func sharedOut(n Node, axis Axis) bool {
	for it := n.item(); it.Parent != nil; it = &it.Parent.Item {
		if it.Parent.Axis == axis {
			return it.Shared
		}
	}
	return false
}
