package wood

// How far a shelf or a rail bends under load.

// Loading is how a beam is loaded and held.
type Loading uint8

const (
	Uniform         Loading = iota // spread evenly, ends free to turn, at midspan
	UniformClamped                 // spread evenly, ends held, at midspan
	Midpoint                       // at midspan, ends free to turn, there
	MidpointClamped                // at midspan, ends held, there
	Quarters                       // half at each quarter of the span, ends free to turn, at midspan
	QuartersAtLoad                 // the same, under a load
	Cantilever                     // spread evenly, one end held, at the other
	CantileverEnd                  // at the free end, there
)

// Wood Handbook, FPL-GTR-190, Table 9-1: k_b for bending, k_s for shear.
var loadings = [...]struct{ bending, shear float64 }{
	Uniform:         {5.0 / 384, 1.0 / 8},
	UniformClamped:  {1.0 / 384, 1.0 / 8},
	Midpoint:        {1.0 / 48, 1.0 / 4},
	MidpointClamped: {1.0 / 192, 1.0 / 4},
	Quarters:        {11.0 / 768, 1.0 / 8},
	QuartersAtLoad:  {1.0 / 96, 1.0 / 8},
	Cantilever:      {1.0 / 8, 1.0 / 2},
	CantileverEnd:   {1.0 / 3, 1},
}

// Beam is a straight beam of one rectangular section.
type Beam struct {
	Span, Wide, Thick Length  // thick in the direction of the load
	E                 float64 // stiffness along the span, Pa
	// Stiffness in shear, Pa: G_LT where the side faces are flat sawn, G_LR where they are
	// quarter sawn. Zero leaves shear out, as is right with an MOE from a table, which has it
	// in it.
	G float64
}

// Sag is how far the beam bends under a load in newtons in all, at once; in years of load it
// comes to about twice as much (Wood Handbook, ch. 5). A beam without size or stiffness does
// not sag.
//
// Wood Handbook, FPL-GTR-190, Eq. 9-2: k_b W L^3 / (E I) + k_s W L / (G A'),
// with I = b h^3 / 12 and A' = 5 b h / 6 (the latter from memory).
func (b Beam) Sag(loading Loading, newtons float64) Length {
	k := loadings[loading]
	span, wide, thick := b.Span.Metres(), b.Wide.Metres(), b.Thick.Metres()
	if wide <= 0 || thick <= 0 || b.E <= 0 {
		return 0
	}
	sag := k.bending * newtons * span * span * span / (b.E * wide * thick * thick * thick / 12)
	if b.G > 0 {
		sag += k.shear * newtons * span / (b.G * 5 * wide * thick / 6)
	}
	return inMetres(sag)
}
