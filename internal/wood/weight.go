package wood

// What wood weighs.

// water is the density that specific gravity is a ratio to, kg/m3.
const water = 1000

// Density is the weight of the wood in kg/m3 at a moisture content in percent: specific
// gravity times water and what the wood holds of it (Wood Handbook, ch. 4). The volume is
// taken as at 12 %. A specific gravity on green volume is first brought to it, in proportion to
// the published shrinkage; where there is none, the weight errs low by about a tenth. Unknown
// without a specific gravity.
func (s *Species) Density(moisture float64) Figure {
	if !s.SG.Known() {
		return Figure{}
	}
	density := s.SG.times(water * (1 + moisture/100))
	if s.SGGreen && s.SV.Known() {
		density.Value /= 1 - s.SV.Value/100*(greenAt-12)/greenAt
		density.Status = min(density.Status, s.SV.Status)
	}
	return density
}
