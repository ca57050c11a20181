package wood

// Classical lamination theory: what plies that are stiff and swell along and across their grain
// do to each other once they are glued into one panel. layup.go says what the plies are made of.

import (
	"iter"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Plane is how stiff a ply is in its own plane, along and across its grain.
type Plane struct {
	Along, Across float64 // moduli, Pa
	Shear         float64 // modulus, Pa
	// Poisson's ratio of a load along the grain and the strain across it, mu_LT or mu_LR.
	Poisson float64
}

// Lamina is a ply as the theory sees it.
type Lamina struct {
	Plane
	Thick Length
	// Angle is how many degrees the grain is turned from the panel's length towards its width.
	Angle float64
	// How much the ply would grow by itself along and across its grain, as fractions.
	GrowsAlong, GrowsAcross float64
}

// Laminate is the laminae of a panel from its face to its back.
type Laminate []Lamina

// Strain is how a panel that is free to move comes to lie. Its first ply is the face.
type Strain struct {
	// How much the middle plane grows along the panel's length X and width Y, and how far its
	// corners leave the square, as fractions.
	X, Y, XY float64
	// Curvatures, 1/m. Above zero the face goes hollow, and the panel is longer at its back.
	// KXY is the twist, counted twice as the theory does.
	KX, KY, KXY float64
}

// Moduli are the stiffnesses of a solid board that would do as a whole panel does, Pa: in
// stretching, and in bending across its thickness, along the panel's length and its width.
type Moduli struct {
	StretchAlong, StretchAcross float64
	BendAlong, BendAcross       float64
}

// Free is what the panel does when every ply has grown as it would by itself, and whether the
// theory can say: each ply needs a thickness, both moduli and the shear modulus.
//
// What would keep every ply from growing is N = sum Q e t and M = sum Q e z t, and the panel gives
// way to it as to a load: [A B; B D] [strain; curvature] = [N; M] (Kaw, Mechanics of Composite
// Materials, 2nd ed., 2006, ch. 4, on heat and moisture; from memory. The tests hold A, B and D to
// its printed examples, and the whole to Timoshenko's strip of two metals).
//
// The theory is linear: glue does not give, wood does not creep, and a panel has no weight and
// bends but little. LayupCaveat says what that means at the bench.
func (l Laminate) Free() (Strain, bool) {
	stiff, ok := l.factors()
	if !ok {
		return Strain{}, false
	}
	return l.under(stiff, l.push())
}

// Moduli are those of the panel as it is, and whether the theory can say: 1 / (h a) and
// 12 / (h^3 d), with a and d from the inverse of [A B; B D] and h the panel's thickness (Kaw, ch.
// 4, in-plane and flexural constants; from memory). Where the layup does not mirror, the panel is
// free to curl as it is loaded.
func (l Laminate) Moduli() (Moduli, bool) {
	stiff, ok := l.factors()
	if !ok {
		return Moduli{}, false
	}
	var give mat.SymDense
	if stiff.InverseTo(&give) != nil {
		return Moduli{}, false
	}
	return Moduli{
		StretchAlong: 1 / give.At(0, 0), StretchAcross: 1 / give.At(1, 1),
		BendAlong: 12 / give.At(3, 3), BendAcross: 12 / give.At(4, 4),
	}, true
}

// under is the strain of the panel under N and M, both in units of its thickness.
func (l Laminate) under(stiff *mat.Cholesky, load *mat.VecDense) (Strain, bool) {
	var u mat.VecDense
	if stiff.SolveVecTo(&u, load) != nil {
		return Strain{}, false
	}
	h := l.Thick().Metres()
	return Strain{
		X: u.AtVec(0), Y: u.AtVec(1), XY: u.AtVec(2),
		KX: u.AtVec(3) / h, KY: u.AtVec(4) / h, KXY: u.AtVec(5) / h,
	}, true
}

// Thick is how thick the panel is.
func (l Laminate) Thick() Length {
	var sum Length
	for _, ply := range l {
		sum += ply.Thick
	}
	return sum
}

// factors is the stiffness of the panel, ready to be solved with, in units of its thickness, so
// that bending and stretching are of one size and a thin panel is as good as a thick one.
func (l Laminate) factors() (*mat.Cholesky, bool) {
	for _, ply := range l {
		if !ply.sound() {
			return nil, false
		}
	}
	if len(l) == 0 {
		return nil, false
	}
	var stiff mat.Cholesky
	ok := stiff.Factorize(l.stiffness(l.Thick().Metres()))
	return &stiff, ok
}

func (p Lamina) sound() bool {
	for _, modulus := range []float64{p.Along, p.Across, p.Shear} {
		if !(modulus > 0) || math.IsInf(modulus, 0) {
			return false
		}
	}
	return p.Thick > 0 && finite(p.Angle) && finite(p.Poisson) && finite(p.GrowsAlong) && finite(p.GrowsAcross)
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// stiffness is [A B; B D], with lengths in a unit of so many metres (Kaw, Eq. 4.28, from memory):
// A = sum Q t, B = sum Q z t, D = sum Q (z^2 t + t^3 / 12), with z from the middle of the panel to
// that of the ply.
func (l Laminate) stiffness(unit float64) *mat.SymDense {
	sum := mat.NewSymDense(6, nil)
	add := func(i, j int, v float64) { sum.SetSym(i, j, sum.At(i, j)+v) }
	for ply, at := range l.places(unit) {
		q := ply.turned()
		for i := range 3 {
			for j := range 3 {
				qt := q.At(i, j) * at.thick
				add(i, 3+j, qt*at.z)
				if i <= j {
					add(i, j, qt)
					add(3+i, 3+j, qt*(at.z*at.z+at.thick*at.thick/12))
				}
			}
		}
	}
	return sum
}

// push is N and M of what the plies would grow, in units of the thickness.
func (l Laminate) push() *mat.VecDense {
	sum := mat.NewVecDense(6, nil)
	for ply, at := range l.places(l.Thick().Metres()) {
		var stress mat.VecDense
		stress.MulVec(ply.stiffness(), mat.NewVecDense(3, []float64{ply.GrowsAlong, ply.GrowsAcross, 0}))
		stress.MulVec(ply.turn().T(), &stress)
		for i := range 3 {
			n := stress.AtVec(i) * at.thick
			sum.SetVec(i, sum.AtVec(i)+n)
			sum.SetVec(3+i, sum.AtVec(3+i)+n*at.z)
		}
	}
	return sum
}

// place is where a ply lies: how far its middle is behind that of the panel.
type place struct{ z, thick float64 }

func (l Laminate) places(unit float64) iter.Seq2[Lamina, place] {
	return func(yield func(Lamina, place) bool) {
		face := -l.Thick().Metres() / unit / 2
		for _, ply := range l {
			thick := ply.Thick.Metres() / unit
			if !yield(ply, place{z: face + thick/2, thick: thick}) {
				return
			}
			face += thick
		}
	}
}

// stiffness is the ply's reduced stiffness Q along and across its grain (Kaw, Eq. 2.93, from
// memory; Example 2.6 is among the tests).
func (p Lamina) stiffness() *mat.SymDense {
	d := 1 - p.Poisson*p.Poisson*p.Across/p.Along
	coupled := p.Poisson * p.Across / d
	return mat.NewSymDense(3, []float64{
		p.Along / d, coupled, 0,
		coupled, p.Across / d, 0,
		0, 0, p.Shear,
	})
}

// turn takes a strain along the panel's length and width into one along and across the grain.
func (p Lamina) turn() *mat.Dense {
	s, c := math.Sincos(p.Angle * math.Pi / 180)
	return mat.NewDense(3, 3, []float64{
		c * c, s * s, c * s,
		s * s, c * c, -c * s,
		-2 * c * s, 2 * c * s, c*c - s*s,
	})
}

// turned is the stiffness of the ply along the panel's length and width (Kaw, Eq. 2.104, from
// memory; Example 2.7 is among the tests).
func (p Lamina) turned() *mat.Dense {
	var q mat.Dense
	q.Product(p.turn().T(), p.stiffness(), p.turn())
	return &q
}

// Warp is how far a panel of a size stands out of flat.
type Warp struct {
	// Rise of the middle over the ends along the length, and over the edges across the width.
	// Above zero the face is hollow.
	Bow, Cup Length
	// How far the fourth corner stands off the plane through the other three.
	Twist Length
}

// Warp is what the curvatures come to over a panel of that length and width: a chord of length
// L rises by L^2 k / 8, a twist leaves the fourth corner L W kxy / 2 off (geometry of a small bend).
func (s Strain) Warp(length, width Length) Warp {
	l, w := length.Metres(), width.Metres()
	return Warp{
		Bow:   inMetres(l * l * s.KX / 8),
		Cup:   inMetres(w * w * s.KY / 8),
		Twist: inMetres(l * w * s.KXY / 2),
	}
}

// Worst is the greatest of the three, either way.
func (w Warp) Worst() Length { return max(w.Bow.Abs(), w.Cup.Abs(), w.Twist.Abs()) }

// InWords is the greatest of a warp and what a maker calls it.
func (w Warp) InWords() (off Length, how string) {
	hollow := func(l Length) string {
		if l > 0 {
			return "hollow at the face"
		}
		return "hollow at the back"
	}
	switch off = w.Worst(); off {
	case w.Cup.Abs():
		return off, "cupped across its width, " + hollow(w.Cup)
	case w.Bow.Abs():
		return off, "bowed along its length, " + hollow(w.Bow)
	}
	return off, "twisted, at the fourth corner"
}
