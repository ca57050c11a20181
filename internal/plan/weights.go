package plan

// What things weigh: volumes of finished sizes times densities, and the hardware that says what it weighs.

import (
	"slices"

	"plancheck/internal/wood"
)

// Weight is what something weighs, in kilograms, and how far the least certain density in it can be trusted.
type Weight struct {
	Kilograms float64
	Status    wood.Status
}

// plus is two weights together.
func (w Weight) plus(v Weight) Weight {
	return Weight{w.Kilograms + v.Kilograms, min(w.Status, v.Status)}
}

// times is so many of it.
func (w Weight) times(n int) Weight {
	w.Kilograms *= float64(n)
	return w
}

// paneDensity is that of float glass, kg/m3: EN 572-1, from pages that quote it. 1/8 in weighs 1.6 lb/ft2.
const paneDensity = 2500

// Weight is what one such assembly weighs as it stands, doors and drawers with it, empty; false where that
// cannot be worked out of all that stands in it. One that has no lists weighs what the sides weigh that make
// it (see sides). What is laid over it or fixed to it is not in its weight; its tops are in its Balance. Sizes are
// taken as they are cut: what is cut out of one part for the tenon of another is not taken off, so that the weight
// errs high, by a hundredth or two.
func (p *Plan) Weight(a *Assembly) (Weight, bool) {
	w := p.weights.get(p.weighAll)[a]
	return w.Weight, w.known
}

// WeightOf is what one thing in a layout weighs, with its hardware, or a top that stands alone. A list
// weighs nothing by itself.
func (p *Plan) WeightOf(n Node) (Weight, bool) { return p.weighs(n, p.Weight) }

// WeightOfPiece is what a piece of a material weighs on the day that it is worked; false where its size is not
// known, or nothing says how heavy the material is.
func (p *Plan) WeightOfPiece(of *Material, size Size3) (Weight, bool) {
	density := p.Density(of)
	if !density.Known() || !size.Long.Known() || !size.Wide.Known() || !size.Thick.Known() {
		return Weight{}, false
	}
	return Weight{density.Value * metres(size.Long) * metres(size.Wide) * metres(size.Thick), density.Status}, true
}

func metres(l Length) float64 { return float64(l.Length) / float64(wood.Metre) }

// Density is how heavy a material is on the day that it is worked, kg/m3: as the plan says, else as the shelf
// has it, of a layup its plies by their thicknesses. A layup in a layup is not taken apart.
func (p *Plan) Density(of *Material) wood.Figure {
	if of == nil || of.Kind != Layup || of.Heavy.How != Unknown {
		return p.densityOf(of)
	}
	var thick, heavy float64
	status := wood.Seen
	for _, ply := range of.Plies {
		t, d := ply.Thickness(), p.densityOf(ply.Of.To)
		if !t.Known() || !d.Known() {
			return wood.Figure{}
		}
		thick, heavy = thick+float64(t.Length), heavy+float64(t.Length)*d.Value
		status = min(status, d.Status)
	}
	if thick == 0 {
		return wood.Figure{}
	}
	return wood.Figure{Value: heavy / thick, Status: status}
}

// densityOf is Density of what is no layup.
func (p *Plan) densityOf(m *Material) wood.Figure {
	switch {
	case m == nil:
	case m.Heavy.How != Unknown:
		if m.Heavy.Known() {
			return wood.Figure{Value: m.Heavy.Value, Status: wood.Seen, Source: "the plan"}
		}
	case m.Kind == Sheet:
		if sheet, ok := wood.FindSheet(m.SheetKind.Is); ok {
			return sheet.Density()
		}
	case m.Kind != Layup && m.Species != nil:
		return m.Species.Density(p.Moisture(m))
	}
	return wood.Figure{}
}

// weighed is a weight, where it is known.
type weighed struct {
	Weight
	known bool
}

// weighAll weighs every assembly once, however often it is placed. One that is placed in itself has no
// weight.
func (p *Plan) weighAll() map[*Assembly]weighed {
	all := make(map[*Assembly]weighed, len(p.Assemblies))
	var weigh func(*Assembly) (Weight, bool)
	weigh = func(a *Assembly) (Weight, bool) {
		if w, done := all[a]; done {
			return w.Weight, w.known
		}
		all[a] = weighed{}
		w, known := Weight{Status: wood.Seen}, a.Root != nil && !a.unread
		for n := range a.Nodes() {
			of, ok := p.weighs(n, weigh)
			w, known = w.plus(of), known && ok
		}
		if a.Rail != nil {
			w, known = p.weighs(a.Rail, weigh)
		}
		if sides := a.Sides.Or(4); a.Rail != nil || sides > 4 { // of a polygon one side is drawn
			w.Kilograms *= float64(sides)
		}
		all[a] = weighed{w, known}
		return w, known
	}
	for _, a := range p.Assemblies {
		weigh(a)
	}
	if a := p.bare(); a != nil {
		w, known := p.sides(a, all)
		all[a] = weighed{w, known}
	}
	return all
}

// bare is the one assembly of a plan that has no lists, and is placed nowhere: it says how large it is, and what
// makes it is drawn beside it. There is none where there are two.
func (p *Plan) bare() *Assembly {
	var bare *Assembly
	for _, a := range p.Assemblies {
		switch {
		case a.Root != nil || a.Rail != nil || len(a.uses) > 0 || a.unread:
		case bare != nil:
			return nil
		default:
			bare = a
		}
	}
	return bare
}

// sides is what the sides of an assembly without lists weigh: all that is drawn by itself, stands nowhere else, and
// goes into its outside. A part that two of them share, as the legs of a table, is weighed as often as it is
// made. Where something does not go in, the plan draws more than this piece, and nobody knows what belongs to it.
func (p *Plan) sides(bare *Assembly, all map[*Assembly]weighed) (Weight, bool) {
	total, known := Weight{Status: wood.Seen}, false
	pieces := p.Pieces()
	drawn := map[*Part]int{} // how often each part is in those weights
	for _, a := range p.Assemblies {
		for _, m := range a.Members {
			if part := m.Part.To; part != nil {
				drawn[part] += pieces[a]
			}
		}
		if a == bare || len(a.uses) > 0 {
			continue
		}
		if !goesInto(a.Outside, bare.Outside) || a.Use.Is != "" || !all[a].known {
			return Weight{}, false
		}
		known = true
		total = total.plus(all[a].times(pieces[a]))
	}
	for d := range AllOf[*Door](p) {
		if d.Leaf.Part != nil {
			drawn[d.Leaf.Part] += pieces[d.In]
		}
	}
	for _, part := range p.Parts {
		w, ok := p.WeightOfPiece(part.Of.Material.To, part.Size)
		known = known && ok
		total = total.plus(w.times(max(part.Pieces(pieces), 1) - drawn[part]))
	}
	return total, known
}

// goesInto reports whether what is of one size goes into another, whichever way it is turned.
func goesInto(size, room [3]Length) bool {
	var a, b [3]wood.Length
	for i := range size {
		if !size[i].Known() || !room[i].Known() {
			return false
		}
		a[i], b[i] = size[i].Length, room[i].Length
	}
	slices.Sort(a[:])
	slices.Sort(b[:])
	return !wood.Over(a[0], b[0]) && !wood.Over(a[1], b[1]) && !wood.Over(a[2], b[2])
}

// weighs is what a thing weighs, where weigh tells the weight of an assembly.
func (p *Plan) weighs(n Node, weigh func(*Assembly) (Weight, bool)) (Weight, bool) {
	nothing := Weight{Status: wood.Seen}
	switch n := n.(type) {
	case *Member:
		of := n.Of.Material.To
		if n.Part.To != nil {
			of = n.Part.To.Of.Material.To
		}
		w, ok := p.WeightOfPiece(of, n.Size)
		if n.Lid != nil {
			w.Kilograms += n.Lid.hardware()
		}
		return w, ok
	case *Panel:
		return p.WeightOfPiece(n.Of.Material.To, n.Size)
	case *Glass:
		if !n.Size.Long.Known() || !n.Size.Wide.Known() || !n.Size.Thick.Known() {
			return Weight{}, false
		}
		return Weight{paneDensity * metres(n.Size.Long) * metres(n.Size.Wide) * metres(n.Size.Thick), wood.Reported}, true
	case *Door:
		if n.Board != nil {
			return p.weighs(n.Board, weigh)
		}
		w, ok := p.leaf(n, weigh)
		w.Kilograms += n.hardware()
		return w, ok
	case *Drawer:
		return p.drawer(n)
	case *Placed:
		if n.Part.To == nil {
			return Weight{}, false
		}
		return weigh(n.Part.To)
	case *Space:
		nothing.Kilograms = each(n.Rods)
	}
	return nothing, true
}

// leaf is what a door weighs without its hardware.
func (p *Plan) leaf(d *Door, weigh func(*Assembly) (Weight, bool)) (Weight, bool) {
	switch leaf := &d.Leaf; {
	case leaf.Frame != nil:
		return weigh(leaf.Frame)
	case leaf.Part != nil:
		return p.WeightOfPiece(leaf.Part.Of.Material.To, leaf.Part.Size)
	default:
		return p.WeightOfPiece(leaf.Material, Size3{d.Size[1], d.Size[0], d.Thick()})
	}
}

// drawer is what an empty drawer weighs with its slides.
func (p *Plan) drawer(d *Drawer) (Weight, bool) {
	w, known := Weight{Kilograms: each(d.Handles), Status: wood.Seen}, d.Front != nil
	if d.Slide.To != nil {
		w.Kilograms += d.Slide.To.Weighs.Or(0)
	}
	for _, part := range []*BoxPart{d.Front, d.Inner, d.Left, d.Right, d.Back, d.Bottom} {
		if part != nil {
			of, ok := p.WeightOfPiece(part.Of, part.Size)
			w, known = w.plus(of), known && ok
		}
	}
	return w, known
}

// hardware is what the hardware of a door weighs, in kilograms.
func (d *Door) hardware() float64 {
	return each(d.Hinges) + each(d.Latches) + each(d.Handles) + each(d.Stays)
}

// each is what pieces of hardware weigh in all, in kilograms; what does not say it weighs nothing.
func each(uses []*HardwareUse) (kilograms float64) {
	for _, u := range uses {
		var one Figure
		switch {
		case u.Hinge != nil:
			one = u.Hinge.Weighs
		case u.Latch != nil:
			one = u.Latch.Weighs
		case u.Bolt != nil:
			one = u.Bolt.Weighs
		case u.Handle != nil:
			one = u.Handle.Weighs
		case u.Rod != nil:
			one = u.Rod.Weighs
		case u.Stay != nil:
			one = u.Stay.Weighs
		}
		kilograms += one.Or(0) * float64(u.Number())
	}
	return kilograms
}

// Number is how many of a piece of hardware are used: as said, else a pair of hinges, and one of all else.
func (u *HardwareUse) Number() int {
	switch {
	case u.Count.Known():
		return u.Count.N
	case len(u.At) > 0:
		return len(u.At)
	case u.Hinge != nil && u.FromTop.How == Unknown && !u.Centred.On:
		return 2
	}
	return 1
}
