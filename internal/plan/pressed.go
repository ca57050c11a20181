package plan

// Layups as the reference shelf takes them: what each ply is of, how thick it is, which way it
// runs and how moist it was when the glue set.

import "plancheck/internal/wood"

// Pressed is a layup as the shelf takes it, and whether the plan says enough of every ply. A
// layup in a layup is not taken apart.
func (p *Plan) Pressed(m *Material) (layup wood.Layup, ok bool) {
	for _, ply := range m.Plies {
		of, thick := ply.material()
		angle, turned := ply.Turned()
		if of == nil || !thick.Known() || !turned && !ply.Of.To.Grainless() {
			return nil, false
		}
		layup = append(layup, wood.Ply{Material: of, Thick: thick.Length, Angle: angle, Moisture: p.MoistureOf(ply)})
	}
	return layup, len(layup) > 0
}

// Turned is by how many degrees a ply's grain is turned from the layup's, and whether the plan
// says so.
func (p *Ply) Turned() (degrees float64, ok bool) {
	switch {
	case p.Angle.How != Unknown:
		return p.Angle.Value, p.Angle.Known()
	case p.Run.Is == "along":
		return 0, true
	case p.Run.Is == "across":
		return 90, true
	}
	return 0, false
}

// MoistureOf is the moisture content of a ply in percent when it was pressed: as it says, as its
// material was measured, or the shop's.
func (p *Plan) MoistureOf(ply *Ply) float64 {
	at := p.Climate.Shop.Moisture.Value
	if ply.Of.To != nil {
		at = ply.Of.To.At.Or(at)
	}
	return ply.At.Or(at)
}

// material is what a ply is of, as the shelf knows it, and how thick that is; nil where the shelf
// does not know it.
func (p *Ply) material() (wood.Material, Length) {
	m := p.Of.To
	switch {
	case m == nil:
		return nil, Length{}
	case m.Kind == Sheet:
		if sheet, ok := wood.FindSheet(m.SheetKind.Is); ok {
			return wood.Board{Sheet: sheet}, p.Thickness()
		}
	case m.Kind != Layup && m.Species != nil:
		return wood.Solid{Species: m.Species, Cut: m.Rings()}, p.Thickness()
	}
	return nil, Length{}
}

// Rings is how the year's rings lie in the face of a wood or a veneer. What is peeled has them
// flat.
func (m *Material) Rings() wood.Cut {
	switch m.Sawn.Is {
	case "flat", "rotary":
		return wood.Flat
	case "quarter":
		return wood.Quarter
	case "rift":
		return wood.Rift
	}
	return wood.Unsaid
}

// Grainless reports whether a material is a board without grain.
func (m *Material) Grainless() bool {
	switch m.SheetKind.Is {
	case "mdf", "particle", "hardboard":
		return true
	}
	return false
}
