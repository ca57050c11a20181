package plan

// What solid wood does between the day it is worked and the ends of the year. The gap of a
// panel comes of it, and the rules about movement.

import "plancheck/internal/wood"

// Moisture that wood meets where a plan states no climate: published averages of interior
// woodwork (Wood Handbook, FPL-GTR-190, figure 13-1).
const (
	shopMoisture  = 8.0
	dryMoisture   = 6.0
	humidMoisture = 11.0
)

// Room that a solid panel wants in its grooves: at its most humid something is left between it
// and the bottoms, at its driest it still reaches in at each side. Common practice, no source.
const (
	PanelSpare = wood.Inch / 32
	PanelHold  = wood.Inch / 8
)

// Moisture is the content in percent at which a wood is worked: as it was measured,
// else that of the shop.
func (p *Plan) Moisture(m *Material) float64 { return m.At.Or(p.Climate.Shop.Moisture.Value) }

// Seasons is how the width of a solid material moves from the day it is worked to its most
// humid and to its driest. It is false where the material is not solid, or the shelf has no
// figure.
func (p *Plan) Seasons(m *Material) (humid, dry wood.Movement, ok bool) {
	if m == nil || m.Kind != Solid || m.Species == nil {
		return humid, dry, false
	}
	c := &p.Climate
	humid, ok1 := m.Species.Moves(m.Rings(), p.Moisture(m), c.Humid.Moisture.Value)
	dry, ok2 := m.Species.Moves(m.Rings(), p.Moisture(m), c.Dry.Moisture.Value)
	return humid, dry, ok1 && ok2
}

// Across is the axis across the panel's grain, in which its width lies.
func (p *Panel) Across() Axis {
	if p.Grain == Down {
		return Across
	}
	return Down
}

// Grooves are how far a panel's place goes in across the grain, at the left or upper side and
// at the other, and how wide it is from bottom to bottom; false where that is unknown.
func (p *Panel) Grooves() (near, far, bottoms wood.Length, ok bool) {
	axis := p.Across()
	n, f := p.Into(Side(axis*2)), p.Into(Side(axis*2)+1)
	clear := p.Cell[axis]
	return n.Length, f.Length, clear.Size + n.Length + f.Length, clear.Sized && n.Known() && f.Known()
}

// Loose reports whether nothing keeps a panel in the middle of its place, so that it may lie
// at the bottom of one groove.
func (p *Panel) Loose() bool { return p.Float != nil && p.Float.Loose.On }

// PanelWidths are the narrowest that a solid panel may be cut, so that at its driest it stays
// PanelHold in its grooves, and the widest, so that at its most humid PanelSpare is left. The
// narrowest is the greater where the grooves are too shallow for the seasons.
func (p *Plan) PanelWidths(panel *Panel) (narrowest, widest wood.Length, ok bool) {
	near, far, bottoms, placed := panel.Grooves()
	humid, dry, ok := p.Seasons(panel.Of.Material.To)
	if !ok || !placed {
		return 0, 0, false
	}
	slip := min(near, far) - PanelHold
	if !panel.Loose() {
		slip *= 2 // a centred panel leaves half its gap at each side
	}
	return before(bottoms-slip, dry), before(bottoms-PanelSpare, humid), true
}

// before is the width that comes to size by a movement.
func before(size wood.Length, m wood.Movement) wood.Length {
	return wood.Length(float64(size) / (1 + m.Rate*(m.To-m.From)))
}

// PanelWidth is how wide a solid panel is cut where a plan leaves it open: the middle between
// the narrowest and the widest, down to a mark of the tape.
func (p *Plan) PanelWidth(panel *Panel) (wood.Length, bool) {
	narrowest, widest, ok := p.PanelWidths(panel)
	width := p.Tape.Floor((min(narrowest, widest) + widest) / 2)
	if width < narrowest {
		width = p.Tape.Floor(widest)
	}
	return width, ok
}

// seasonsGap is the gap of a solid panel whose plan says none.
func (p *Plan) seasonsGap(panel *Panel) Length {
	_, _, bottoms, _ := panel.Grooves()
	width, ok := p.PanelWidth(panel)
	if !ok {
		return Length{}
	}
	return derived(bottoms - width)
}
