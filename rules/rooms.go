package rules

// The room in which fasteners let a board of solid wood move through the year, for those who list it.

import (
	"cmp"
	"slices"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
)

// Room is what a fastener leaves a board to move in on the day that it is put in, and at both ends of the year.
// Below zero it holds the board fast, or lets go.
type Room struct {
	Path, Where      string
	Dry, Shop, Humid wood.Length
}

// Rooms are those of slotted screws and pegs, and of buttons in their grooves, farthest from where each
// board is held. A button's tongue is taken to point away from there, as those on the inside of an apron do.
func Rooms(p *plan.Plan) (all []Room) {
	for b, fixing := range fastened(p) {
		for _, w := range fixing.With {
			at := b.places(w)
			if w.Word == "button" {
				if len(at) == 0 {
					at = b.edges()
				}
				all = append(all, b.buttons(p, w, at)...)
				continue
			}
			all = append(all, b.slots(p, "a "+w.Word+" in its slot", w.Of.To, w.Slotted, at)...)
		}
	}
	for m, thing := range boardsOf(p) {
		if b, ok := breadboardOf(p, m, thing); ok && m.Breadboard.Peg != nil {
			peg := m.Breadboard.Peg
			all = append(all, b.slots(p, "a peg of the breadboard in its slot", peg.Of.To, peg.Slotted, peg.At)...)
		}
	}
	return all
}

// distances are how far places are from where a board is held, the farthest first, each once. One
// where it is held does not move, and is left out.
func (b *board) distances(at []plan.Length) (all []wood.Length) {
	if _, ok := b.farthest(at); !ok {
		return nil
	}
	for _, l := range at {
		if d := b.from(l.Length); wood.Over(d, 0) {
			all = append(all, d)
		}
	}
	slices.SortFunc(all, func(x, y wood.Length) int { return cmp.Compare(y, x) })
	return slices.Compact(all)
}

// slots is the room beside what stands in the middle of its slot.
func (b *board) slots(p *plan.Plan, what string, of *plan.Fastener, slotted plan.Length, at []plan.Length) (all []Room) {
	thick := fastenerThick(of)
	if !slotted.Known() || !thick.Known() {
		return nil
	}
	humid, dry, _ := p.Seasons(b.of)
	room := (slotted.Length - thick.Length) / 2
	for _, d := range b.distances(at) {
		all = append(all, Room{
			Path: b.subject, Where: what + ", " + b.distant(p, d) + ", to either side",
			Dry: room - dry.Change(d).Abs(), Shop: room, Humid: room - humid.Change(d).Abs(),
		})
	}
	return all
}

// buttons is how far the tongues of buttons reach into their groove, and how far they stand from its bottom.
func (b *board) buttons(p *plan.Plan, w *plan.FixingPart, at []plan.Length) (all []Room) {
	if !w.Tongue.Known() {
		return nil
	}
	humid, dry, _ := p.Seasons(b.of)
	for _, d := range b.distances(at) {
		less, more := dry.Change(d), humid.Change(d)
		held := w.Tongue.Length
		all = append(all, Room{
			Path: b.subject, Where: "a button's tongue, " + b.distant(p, d) + ", held by",
			Dry: held + less, Shop: held, Humid: held + more,
		})
		if w.Groove.Known() {
			left := w.Groove.Length - held
			all = append(all, Room{
				Path: b.subject, Where: "a button's tongue, " + b.distant(p, d) + ", from the bottom of its groove",
				Dry: left - less, Shop: left, Humid: left - more,
			})
		}
	}
	return all
}
