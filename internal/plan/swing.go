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

// Swing is how a door turns about the pin of a butt, knife or pivot hinge; a pin that is not placed stands
// over the middle of the gap, half a knuckle in front of the face. It is false for a door that does not
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
		Opens: d.OpensTo(), Out: gap.Length / 2,
	}
	for _, use := range d.Hinges {
		h := use.Hinge
		if h == nil {
			continue
		}
		switch h.Kind.Is {
		case "cup", "barrel":
			return Swing{}, false
		case "knife", "pivot":
			if !h.Pin.Across.Known() || !h.Pin.Deep.Known() {
				return Swing{}, false
			}
			s.Out, s.Proud = -h.Pin.Across.Length, -h.Pin.Deep.Length
		default:
			s.Proud = use.Proud.Or(h.Knuckle.Length / 2).Length
		}
		s.Out = use.Out.Or(s.Out).Length
	}
	return s, true
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
