package wood

// How much wood grows and shrinks as its moisture content changes.

import "math"

// Cut says how the year's rings lie in a board's face, and so which way its width moves.
type Cut uint8

const (
	Unsaid  Cut = iota
	Flat        // rings along the width: it moves as the wood does tangentially
	Quarter     // rings along the thickness: the width moves as the wood does radially
	Rift        // between the two
)

// OfThickness is the cut to ask with for a board's thickness, in which the rings lie the
// other way.
func (c Cut) OfThickness() Cut {
	switch c {
	case Flat:
		return Quarter
	case Quarter:
		return Flat
	}
	return c
}

// Moisture contents in percent between which Eq. 13-2 holds.
const linearFrom, linearTo = 6, 14

// Movement is how a wood moves across the grain between two moisture contents.
type Movement struct {
	From, To float64 // percent, kept between 0 and where the wood starts to shrink
	Rate     float64 // fraction of the size at From for each 1 % of moisture content
	Equation string  // of the Wood Handbook: "13-2"
	Worse    bool    // the rings' direction is not known, or its figure is not: taken as tangential
	Status   Status
	Source   string
}

// Change is how much a size at From grows (or, below zero, shrinks) on the way to To.
func (m Movement) Change(size Length) Length {
	return Length(math.Round(float64(size) * m.strain()))
}

func (m Movement) strain() float64 { return m.Rate * (m.To - m.From) }

// Moves is how the width of a board of that cut moves between two moisture contents in
// percent, and whether the shelf has what is needed. A rift board, or one of which nothing is
// said, moves somewhere between the two directions; the tangential is the greater and is
// taken.
//
// From 6 to 14 % it is Wood Handbook, FPL-GTR-190, Eq. 13-2: dD = D C (M_F - M_I). Outside, or
// where only shrinkage is published, it is Eq. 13-3: dD = D (M_F - M_I) / (F 100/S - F + M_I),
// F being where the wood starts to shrink (30 %, some 22). Where there is a coefficient, S is
// the shrinkage that it rests on, not that of Tables 4-3 and 4-4: the coefficient is Eq. 13-3
// at 10 %, and the tables differ where a species moves with a group, so one board would
// otherwise jump at 14 %.
//
// The handbook remarks that Eq. 13-2 errs low by about 5 %. Boards are rarely purely flat or
// quarter sawn, so real widths move less and thicknesses more.
func (s *Species) Moves(cut Cut, from, to float64) (Movement, bool) {
	coefficient, shrinkage := s.CT, s.ST
	worse := cut != Flat
	if cut == Quarter && (s.CR.Known() || s.SR.Known()) {
		coefficient, shrinkage = s.CR, s.SR
		worse = false
	}
	figure, total := shrinkage, shrinkage.Value
	if coefficient.Known() {
		figure, total = coefficient, shrinkageBehind(coefficient.Value, s.ShrinksFrom)
	}
	if !figure.Known() || math.IsNaN(from-to) {
		return Movement{}, false
	}
	m := Movement{
		From: s.belowGreen(from), To: s.belowGreen(to),
		Equation: "13-3", Worse: worse, Status: figure.Status, Source: figure.Source,
	}
	m.Rate = totalRate(total, s.ShrinksFrom, m.From)
	if coefficient.Known() && linear(m.From) && linear(m.To) {
		m.Rate, m.Equation = coefficient.Value, "13-2"
	}
	return m, true
}

func linear(percent float64) bool { return linearFrom <= percent && percent <= linearTo }

func (s *Species) belowGreen(percent float64) float64 { return min(max(percent, 0), s.ShrinksFrom) }

// totalRate is Eq. 13-3 for each 1 %: shrinkage in percent, green where shrinking starts.
func totalRate(shrinkage, green, from float64) float64 {
	return 1 / (green*100/shrinkage - green + from)
}

// shrinkageBehind is the shrinkage in percent that a coefficient of Table 13-5 rests on: Eq.
// 13-3 at 10 %, solved for S.
func shrinkageBehind(coefficient, green float64) float64 {
	return 100 * coefficient * green / (1 + coefficient*(green-10))
}

// alongRate is the most that normal wood moves along the grain for each 1 %: it shrinks 0.1 to
// 0.2 % from green to ovendry (American Wood Council, answers on the NDS; a hardwood plywood
// association's guide), over 30 %. Wood with twisted or leaning grain, and from the heart of
// the tree, moves more.
const alongRate = 0.002 / greenAt

// Lengthwise is how any normal wood moves along the grain.
func Lengthwise(from, to float64) Movement {
	return Movement{
		From: min(max(from, 0), greenAt), To: min(max(to, 0), greenAt),
		Rate: alongRate, Status: Derived, Source: "0.2 % from green to ovendry",
	}
}
