package wood

// Units in which makers say weights, forces and pressures, in the base units that everything is worked
// out in. But for one they are exact: the international yard and pound agreement, 1959, and standard gravity
// (General Conference on Weights and Measures, 1901).
const (
	Pound      = 0.45359237          // kilograms
	Gravity    = 9.80665             // newtons for each kilogram
	PoundForce = Pound * Gravity     // newtons
	PSI        = 6894.757293168      // pascals: a pound on a square inch, to thirteen figures
	InchPound  = PoundForce * 0.0254 // newton metres
)
