package plan

// The moisture that the wood of a plan meets.

import (
	"strings"

	"plancheck/internal/wood"
)

// climate works out the moisture content of each air: as stated, by the air's temperature
// and humidity, by the house, or the published average.
func (r *resolver) climate() {
	c := &r.plan.Climate
	if c.House != nil {
		r.house(c.House)
	}
	for _, air := range []struct {
		*Air
		house  func(*House) *HouseAir // nil where no house tells it
		unsaid float64
	}{
		{&c.Shop, nil, shopMoisture},
		{&c.Dry, func(h *House) *HouseAir { return &h.Dry }, dryMoisture},
		{&c.Humid, func(h *House) *HouseAir { return &h.Humid }, humidMoisture},
	} {
		m := &air.Moisture
		r.needFigure(m)
		r.needFigure(&air.Temperature)
		r.needFigure(&air.Humidity)
		switch {
		case m.How != Unknown:
		case air.Temperature.Known() && air.Humidity.Known():
			m.Value, m.How = wood.Equilibrium(air.Temperature.Value, air.Humidity.Value), Derived
		case air.house != nil && c.House != nil && c.House.Known:
			m.Value, m.How = air.house(c.House).Moisture, Derived
		case air.house != nil && c.House != nil: // it could not be worked out, and that was reported
			m.Value, m.How = air.unsaid, Derived
		default:
			m.Value, m.How = air.unsaid, Default
		}
	}
}

// house works out the driest and the most humid month in a house. Months that are missing are
// reported, and the others taken.
func (r *resolver) house(h *House) {
	r.needFigure(&h.Heated)
	r.needFigure(&h.Least)
	r.needFigure(&h.Greatest)
	if h.Least.Known() && h.Greatest.Known() && h.Least.Value > h.Greatest.Value {
		f := r.fault(WrongValue, h.Least.Span, "the least humidity of the house is above the greatest")
		f.note(h.Greatest.Span, "the greatest is stated here")
		return
	}
	first := make(map[string]*Month, len(monthNames))
	var year []*Month
	var airs []wood.Air
	for _, m := range h.Months {
		r.needFigure(&m.Temperature)
		r.needFigure(&m.Humidity)
		if before := first[m.Name.Is]; before != nil && m.Name.Is != "" {
			f := r.fault(GivenTwice, m.Span, "the air of %s is stated twice", m.Name.Is)
			f.note(before.Span, "stated first here")
			continue
		}
		first[m.Name.Is] = m
		if m.Name.Is != "" && m.Temperature.Known() && m.Humidity.Known() {
			year = append(year, m)
			airs = append(airs, wood.Air{Celsius: m.Temperature.Value, Humidity: m.Humidity.Value})
		}
	}
	var missing []string
	for _, name := range monthNames {
		if first[name] == nil {
			missing = append(missing, name)
		}
	}
	if len(missing) > 0 && first[""] == nil { // one whose name is not understood has been reported
		r.fault(MissingValue, h.Span, "a house wants the air outside in all twelve months, and misses %s", strings.Join(missing, ", "))
	}
	if !h.Heated.Known() {
		return
	}
	kept := wood.House{Celsius: h.Heated.Value, Least: h.Least.Or(0), Greatest: h.Greatest.Or(0)}
	dry, humid, ok := kept.Seasons(airs)
	if h.Known = ok; ok {
		h.Dry, h.Humid = HouseAir{year[dry.Month], dry}, HouseAir{year[humid.Month], humid}
	}
}

// species finds what each material's species is on the reference shelf.
func (r *resolver) species(m *Material) {
	said := m.SpeciesName
	if said.Text == "" {
		return
	}
	if found, ok := wood.Find(said.Text); ok {
		m.Species = found
		return
	}
	if several := wood.Namesakes(said.Text); len(several) > 0 {
		r.fault(UnknownName, said.Span, "%s fits several woods: write which one, such as %s", quoted(said.Text), quotedList(few(several)))
		return
	}
	near := r.nearest(said.Text, wood.Names)
	f := r.fault(UnknownName, said.Span, "no species is known by the name %s%s", quoted(said.Text), didYouMean(near))
	if near != "" {
		f.mend("write \""+near+"\"", said.Span, "\""+near+"\"")
	}
}
