package plan

import (
	"math"

	"plancheck/internal/wood"
)

// Swing is how a door turns: about which line, and how far.
type Swing struct {
	Hinge Side        // the edge on which it hangs
	Proud wood.Length // how far the pin stands in front of the leaf's face; below zero, behind it
	Out   wood.Length // how far it stands beyond the hinge edge; below zero, within the leaf
	Thick wood.Length // of the leaf
	Wide  wood.Length // of the leaf, from the hinge edge to the free one
	Gap   wood.Length // between the hinge edge and what it hangs on; below zero, a lap
	Free  wood.Length // between the free edge and what is beside it
	Opens Figure      // degrees; unknown where nothing says
}

// Swing is how a door turns about the pin of a butt, knife or pivot hinge. It is false for a door that does not
// turn, or of which a size is not known, and for hinges that have no fixed pin: cups and barrels.
func (d *Door) Swing() (Swing, bool) {
	return d.swing(d.Thick(), d.Size[hinged[d.Hang.Is].Axis()])
}

func (d *Door) swing(thick, wide Length) (Swing, bool) {
	hung, turns := hinged[d.Hang.Is]
	gap, free := d.Edges[hung].Less, d.Edges[hung.Opposite()].Less
	if !turns || !thick.Known() || !gap.Known() || !free.Known() || !wide.Known() {
		return Swing{}, false
	}
	s := Swing{
		Hinge: hung, Thick: thick.Length, Wide: wide.Length, Gap: gap.Length, Free: free.Length,
		Opens: d.OpensTo(),
	}
	s.Proud, s.Out = d.unsaidPin(0, thick.Length)
	for _, use := range d.Hinges {
		if use.Hinge == nil {
			continue
		}
		pin, known := d.pin(use, thick)
		if !known {
			return Swing{}, false
		}
		s.Proud, s.Out = pin.Proud, pin.Out
	}
	return s, true
}

// Pin is where the pin of a hinge stands to its leaf.
type Pin struct {
	Proud wood.Length // in front of the face; below zero, behind it
	Out   wood.Length // beyond the hinge edge; below zero, within the leaf
}

// Pin is where the pin of a butt, a knife or a pivot hinge of a door stands; false where that is not known, or
// it does not stand still.
func (d *Door) Pin(use *HardwareUse) (Pin, bool) {
	hung, turns := hinged[d.Hang.Is]
	if !turns || use.Hinge == nil || !d.Edges[hung].Less.Known() {
		return Pin{}, false
	}
	return d.pin(use, d.Thick())
}

func (d *Door) pin(use *HardwareUse, thick Length) (Pin, bool) {
	var pin Pin
	switch h := use.Hinge; h.Kind.Is {
	case "cup", "barrel":
		return Pin{}, false
	case "knife", "pivot":
		if !h.Pin.Across.Known() || !h.Pin.Deep.Known() {
			return Pin{}, false
		}
		pin = Pin{-h.Pin.Deep.Length, -h.Pin.Across.Length}
	default:
		if d.lapsAtHinge() && !thick.Known() {
			return Pin{}, false
		}
		pin.Proud, pin.Out = d.unsaidPin(h.Knuckle.Length, thick.Length)
		pin.Proud = use.Proud.Or(pin.Proud).Length
	}
	pin.Out = use.Out.Or(pin.Out).Length
	return pin, true
}

// unsaidPin is where the pin of a butt is taken to stand: half its knuckle in front of the face and over the
// middle of the gap; of what laps there, whose hinges lie between its back and the edge of the case, in line with its back and
// half the knuckle beyond its edge, or beyond that of the chest over which a lid stands out.
func (d *Door) unsaidPin(knuckle, thick wood.Length) (proud, out wood.Length) {
	if d.lapsAtHinge() {
		return -thick, knuckle/2 - d.overhang()
	}
	return knuckle / 2, d.Edges[hinged[d.Hang.Is]].Less.Length / 2
}

// lapsAtHinge reports whether a leaf lies before what it hangs on: an overlay, and a lid with nothing behind it.
func (d *Door) lapsAtHinge() bool {
	return d.Fit.Kind.Is == "overlay" || d.Board != nil && Neighbour(d, hinged[d.Hang.Is]) == nil
}

// overhang is how far a lid stands out beyond its chest at the edge on which it turns.
func (d *Door) overhang() wood.Length {
	switch m := d.Board; {
	case m == nil || m.Over == nil:
		return 0
	case d.Hang.Is == "back":
		return m.Over.Back.Length
	default:
		return m.Over.Ends.Length
	}
}

// OpensTo is how far a door or a lid opens, in degrees: as it says, else as its hinge does.
func (d *Door) OpensTo() Figure {
	if d.Opens.How != Unknown {
		return d.Opens
	}
	for _, use := range d.Hinges {
		if use.Hinge != nil && use.Hinge.Opens.How != Unknown {
			return use.Hinge.Opens
		}
	}
	return Figure{}
}

// Corner is where a place on the leaf comes to when the door is turned by so many degrees: x from the hinge
// edge towards the free one, y from the face backwards, as the shut door has them.
func (s Swing) Corner(x, y wood.Length, degrees float64) (wood.Length, wood.Length) {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	dx, dy := float64(x+s.Out), float64(y+s.Proud)
	return wood.Length(math.Round(dx*cos+dy*sin)) - s.Out, wood.Length(math.Round(dy*cos-dx*sin)) - s.Proud
}

// Covers is how much of its opening a leaf still covers when it stands open: nothing where it stands clear.
// Short of a right angle it is the free edge that stands farthest in.
func (s Swing) Covers() wood.Length {
	hinge, _ := s.Corner(0, s.Thick, s.Opens.Or(90))
	free, _ := s.Corner(s.Wide, s.Thick, s.Opens.Or(90))
	return max(0, hinge+s.Gap, free+s.Gap)
}
