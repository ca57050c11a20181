package plan

// The moisture that the wood of a plan meets.

import "plancheck/internal/wood"

// climate works out the moisture content of each air: as stated, by the air's temperature
// and humidity, or the published average.
func (r *resolver) climate() {
	c := &r.plan.Climate
	for _, air := range []struct {
		*Air
		unsaid float64
	}{{&c.Shop, shopMoisture}, {&c.Dry, dryMoisture}, {&c.Humid, humidMoisture}} {
		if m := &air.Moisture; m.How == Unknown {
			if air.Temperature.Known() && air.Humidity.Known() {
				m.Value, m.How = wood.Equilibrium(air.Temperature.Value, air.Humidity.Value), Derived
			} else {
				m.Value, m.How = air.unsaid, Default
			}
		}
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
