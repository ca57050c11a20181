package plan

// Where things balance: the centres of gravity of what stands in an assembly, from the places and the weights of
// its parts; and what stands in an assembly, seen from outside, whatever it is placed in.

import (
	"plancheck/internal/wood"
)

// Balance is a weight, and where it balances.
type Balance struct {
	Weight
	Centre [3]wood.Length // by Axis: from the left, the top and the front of the assembly that it stands in
}

// balanced is a Balance, where it is known.
type balanced struct {
	Balance
	known bool
}

// Balance is that of a whole piece: of one such assembly, with all that stands in it, and the tops that lie over it. A
// piece of which one side in many is drawn, or that has no lists, balances in its middle.
func (p *Plan) Balance(a *Assembly) (Balance, bool) {
	own := p.balances.get(p.balanceAll)[a]
	sum := newMoment()
	sum.add(own.Balance, own.known)
	for _, top := range p.TopsOver(a) {
		sum.add(p.balanceTop(top))
	}
	return sum.balance()
}

// TopsOver are the tops that lie over an assembly.
func (p *Plan) TopsOver(a *Assembly) []*Member {
	return p.topsOver.get(func() map[*Assembly][]*Member {
		over := map[*Assembly][]*Member{}
		for _, top := range p.Tops {
			if top.Over != nil && top.Over.Of.To != nil {
				over[top.Over.Of.To] = append(over[top.Over.Of.To], top)
			}
		}
		return over
	})[a]
}

// BalanceOf is that of one thing in a layout, by the axes of its assembly.
func (p *Plan) BalanceOf(n Node) (Balance, bool) {
	return p.balanceNode(n, func(a *Assembly) (Balance, bool) {
		b := p.balances.get(p.balanceAll)[a]
		return b.Balance, b.known
	})
}

// Reaches is where a top that lies over an assembly begins and ends along an axis, as that assembly measures.
func (m *Member) Reaches(axis Axis) Extent {
	o := m.Over
	if o == nil || o.Of.To == nil {
		return Extent{}
	}
	size, near, far := m.Size.Long, o.Ends, o.Ends
	if axis == Behind {
		size, near, far = m.Size.Wide, o.Front, o.Back
	}
	out := o.Of.To.Outside[axis]
	if axis == Down || !size.Known() || !out.Known() || near.How == failed || far.How == failed {
		return Extent{}
	}
	beyond := size.Length - out.Length
	switch {
	case near.Known():
		beyond = near.Length
	case far.Known():
		beyond -= far.Length
	default:
		beyond /= 2
	}
	return Extent{From: -beyond, Size: size.Length, Placed: true, Sized: true}
}

func (p *Plan) balanceTop(top *Member) (Balance, bool) {
	across, behind := top.Reaches(Across), top.Reaches(Behind)
	w, ok := p.WeightOf(top)
	if !ok || !across.Known() || !behind.Known() {
		return Balance{}, false
	}
	return Balance{w, [3]wood.Length{across.From + across.Size/2, -top.Size.Thick.Length / 2, behind.From + behind.Size/2}}, true
}

// balanceAll balances every assembly once, however often it is placed.
func (p *Plan) balanceAll() map[*Assembly]balanced {
	all := make(map[*Assembly]balanced, len(p.Assemblies))
	var of func(*Assembly) (Balance, bool)
	of = func(a *Assembly) (Balance, bool) {
		if b, done := all[a]; done {
			return b.Balance, b.known
		}
		all[a] = balanced{}
		var b Balance
		w, known := p.Weight(a)
		switch {
		case !known:
		case a.Root == nil || a.Sides.Or(4) > 4:
			b.Weight = w
			for axis := range b.Centre {
				b.Centre[axis] = a.Outside[axis].Length / 2
				known = known && a.Outside[axis].Known()
			}
		default:
			sum := newMoment()
			for n := range a.Nodes() {
				sum.add(p.balanceNode(n, of))
			}
			b, known = sum.balance()
		}
		all[a] = balanced{b, known}
		return b, known
	}
	for _, a := range p.Assemblies {
		of(a)
	}
	return all
}

// balanceNode is the balance of a thing in its assembly, where of tells that of an assembly.
func (p *Plan) balanceNode(n Node, of func(*Assembly) (Balance, bool)) (Balance, bool) {
	w, known := p.WeightOf(n)
	if !known || w.Kilograms == 0 {
		return Balance{Weight: w}, known
	}
	at := n.item().Cell
	switch n := n.(type) {
	case *Member:
		at = n.Body
		if o := n.Over; o != nil {
			at[Behind].From += (o.Back.Or(0).Length - o.Front.Or(0).Length) / 2
		}
	case *Door:
		thick := n.Thick()
		at[Behind].Size = thick.Length
		at[Behind].Sized = thick.Known()
		if n.Fit.Kind.Is == "overlay" {
			at[Behind].From -= thick.Length
		}
	case *Drawer:
		return p.balanceDrawer(n, w)
	case *Placed:
		inner, ok := of(n.Part.To)
		var box Box
		for axis, centre := range inner.Centre {
			box[axis] = Extent{From: centre, Placed: true, Sized: true}
		}
		at, known = n.Outer(box), ok
	}
	b := Balance{Weight: w}
	for axis, e := range at {
		b.Centre[axis] = e.From + e.Size/2
		known = known && e.Known()
	}
	return b, known
}

// balanceDrawer weighs a drawer's front where it stands, its back at the end of its box, and the rest in the middle of
// its sides.
func (p *Plan) balanceDrawer(d *Drawer, w Weight) (Balance, bool) {
	face, applied := d.Face(), d.Inner != nil
	box, long := d.Box[Behind], d.Left.Size.Long
	across, down := d.Cell[Across], d.Cell[Down]
	if !face.Known() || !box.Known() || !long.Known() || !across.Known() || !down.Known() {
		return Balance{}, false
	}
	end := face.Length + box.Length
	if applied {
		end += d.Front.Size.Thick.Length
	}
	sum := newMoment()
	rest := w.Kilograms
	at := func(part *BoxPart, behind wood.Length) {
		if part == nil {
			return
		}
		weighs, ok := p.WeightOfPiece(part.Of, part.Size)
		rest -= weighs.Kilograms
		sum.add(Balance{weighs, [3]wood.Length{across.From + across.Size/2, down.From + down.Size/2, behind}}, ok)
	}
	at(d.Front, face.Length+d.Front.Size.Thick.Length/2)
	if applied {
		at(d.Inner, face.Length+d.Front.Size.Thick.Length+d.Inner.Size.Thick.Length/2)
	}
	at(d.Back, end-d.SetIn.Or(0).Length-d.Back.Size.Thick.Length/2)
	sum.add(Balance{Weight{rest, w.Status}, [3]wood.Length{across.From + across.Size/2, down.From + down.Size/2, end - long.Length/2}}, true)
	return sum.balance()
}

// Face is where the face of a shut drawer stands, from the front of its assembly: below zero where it laps
// over that.
func (d *Drawer) Face() Length {
	at := d.Cell[Behind]
	switch {
	case !at.Placed || d.Front == nil:
		return Length{}
	case d.Fit.Kind.Is == "overlay":
		return less(derived(at.From), d.Front.Size.Thick)
	}
	return derived(at.From)
}

// moment adds up balances.
type moment struct {
	Weight
	turns [3]float64 // kilograms times nanometres, by Axis
	known bool
}

func newMoment() *moment { return &moment{Weight: Weight{Status: wood.Seen}, known: true} }

func (m *moment) add(b Balance, known bool) {
	m.Weight, m.known = m.plus(b.Weight), m.known && known
	for axis, at := range b.Centre {
		m.turns[axis] += b.Kilograms * float64(at)
	}
}

// balance is what has been added up. What weighs nothing balances nowhere.
func (m *moment) balance() (Balance, bool) {
	b := Balance{Weight: m.Weight}
	if m.Kilograms <= 0 {
		return b, false
	}
	for axis, turns := range m.turns {
		b.Centre[axis] = wood.Length(turns / m.Kilograms)
	}
	return b, m.known
}

// Used reports whether an assembly is the leaf of a door, or placed in another, so that it does not stand by itself.
func (a *Assembly) Used() bool { return len(a.uses) > 0 }

// Within is something that stands in an assembly, or in one that is placed in it.
type Within struct {
	Node
	through []*Placed // outermost first
}

// Within ranges over what stands in an assembly and in those that are placed in it, in order. It stops when it has
// met so many things, since an assembly may be placed often in one that is placed often; all is false then.
func (a *Assembly) Within(most int) (found []Within, all bool) {
	all = true
	var walk func(*Assembly, []*Placed)
	walk = func(a *Assembly, through []*Placed) {
		for n := range a.Nodes() {
			if len(found) >= most {
				all = false
				return
			}
			found = append(found, Within{n, through})
			placed, ok := n.(*Placed)
			if !ok || placed.Part.To == nil {
				continue
			}
			if len(through) >= maxWithin {
				all = false
				return
			}
			walk(placed.Part.To, append(through[:len(through):len(through)], placed))
		}
	}
	walk(a, nil)
	return found, all
}

// maxWithin is how deep assemblies may be placed in one another for what looks through all of them.
const maxWithin = 20

// Box is a place in the assembly of the thing, as the outermost assembly measures.
func (w Within) Box(at Box) Box {
	for i := len(w.through) - 1; i >= 0; i-- {
		at = w.through[i].Outer(at)
	}
	return at
}

// Along is an axis of the assembly of the thing, as the outermost assembly has it.
func (w Within) Along(own Axis) Axis {
	for i := len(w.through) - 1; i >= 0; i-- {
		own = w.through[i].HostAxis(own)
	}
	return own
}

// Faces reports whether the front of the thing looks to the front of the outermost assembly.
func (w Within) Faces() bool {
	for _, p := range w.through {
		if p.Turned || p.Flat {
			return false
		}
	}
	return true
}

// Outside is the outside of an assembly that is placed, as the outermost assembly measures.
func (w Within) Outside() Box {
	p, placed := w.Node.(*Placed)
	if !placed || p.Part.To == nil {
		return Box{}
	}
	var own Box
	for axis, l := range p.Part.To.Outside {
		own[axis] = Extent{Size: l.Length, Placed: true, Sized: l.Known()}
	}
	return w.Box(p.Outer(own))
}

// Mirrored reports whether left and right of the thing are turned round in the outermost assembly.
func (w Within) Mirrored() bool {
	turned := false
	for _, p := range w.through {
		turned = turned != p.Mirrored.On
	}
	return turned
}
