package rules

// The walls that cuts leave: how much wood each kind of cut wants beside it and below it.

import (
	"iter"

	"plancheck/internal/plan"
	"plancheck/internal/wood"
	"plancheck/lang"
)

var (
	mortiseWallLeast = &Figure{
		Name: "mortise", Why: "how much wood is left beside a mortise or an insert at least", Basis: Practice,
		Source: "3/16 (5 mm)", Dim: lang.Length, Length: 3 * wood.Inch / 16, Metric: 5 * wood.Millimetre,
	}
	mortiseWallBreaks = &Figure{
		Name: "mortise-breaks", Why: "below which the wood beside a mortise or an insert is an error", Basis: Practice,
		Source: "1/8 (3 mm), which the clamps push out", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	wallThin = &Figure{
		Name: "thin", Why: "which part of a stick suffices as a wall where it is less than that", Basis: WorkedOut,
		Source: "a quarter, which the thickest tenon, of a half, leaves at both sides", Dim: lang.Plain, Number: 0.25,
	}
	holeWallLeast = &Figure{
		Name: "hole", Why: "how many times its diameter is left beside a round hole at least", Basis: SecondHand,
		Source: "half of it: a trade answer, after an architectural woodwork standard", Dim: lang.Plain, Number: 0.5,
	}
	holeWallBreaks = &Figure{
		Name: "hole-breaks", Why: "below which the wood beside a round hole is an error, in diameters", Basis: Practice,
		Source: "a quarter of it", Dim: lang.Plain, Number: 0.25,
	}
	holeFloor = &Figure{
		Name: "floor", Why: "how much wood is left below a dowel's hole at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	biscuitWallLeast = &Figure{
		Name: "biscuit", Why: "how much wood is left round a biscuit's slot at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	lipLeast = &Figure{
		Name: "lip", Why: "how much wood is left beside a groove, a housing or a lock at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	lipBreaks = &Figure{
		Name: "lip-breaks", Why: "below which the wood beside a groove, a housing, a lock or a biscuit is an error", Basis: Practice,
		Source: "1/16 (1.5 mm)", Dim: lang.Length, Length: wood.Inch / 16, Metric: 3 * wood.Millimetre / 2,
	}
)

var (
	cupFloor = &Figure{
		Name: "cup-floor", Why: "how much wood is left behind a cup hinge's bore at least", Basis: Practice,
		Source: "2 mm", Dim: lang.Length, Length: 2 * wood.Millimetre,
	}
	barrelWall = &Figure{
		Name: "barrel", Why: "how much wood is left beside a barrel hinge's bore at least", Basis: Memory,
		Source: "1/8 (3 mm): use the maker's sheet", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	gainWall = &Figure{
		Name: "gain", Why: "how much wood is left behind a hinge's leaf at least", Basis: Practice,
		Source: "1/8 (3 mm)", Dim: lang.Length, Length: wood.Inch / 8, Metric: 3 * wood.Millimetre,
	}
	lockFloor = &Figure{
		Name: "lock", Why: "how much of a stile is left behind a lock at least", Basis: Practice,
		Source: "1/4 (6 mm)", Dim: lang.Length, Length: wood.Inch / 4, Metric: 6 * wood.Millimetre,
	}
)

// wallWanted is how much wood is wanted: less than least is a warning, less than breaks an error.
// Where both are nil, that some is left is all that is asked.
type wallWanted struct{ least, breaks *Figure }

var someWall = &wallWanted{}

// wallsWanted says of each kind of cut what it leaves beside it, and below it. Where nothing
// stands, nothing is asked here: another rule says it, or nobody has a figure for it.
var wallsWanted = map[plan.CutKind]struct{ beside, below *wallWanted }{
	plan.CutMortise:   {&wallWanted{mortiseWallLeast, mortiseWallBreaks}, someWall},
	plan.CutInsert:    {&wallWanted{mortiseWallLeast, mortiseWallBreaks}, someWall},
	plan.CutDowel:     {&wallWanted{holeWallLeast, holeWallBreaks}, &wallWanted{holeFloor, holeFloor}},
	plan.CutScrew:     {&wallWanted{holeWallLeast, holeWallBreaks}, nil},
	plan.CutBolt:      {&wallWanted{holeWallLeast, holeWallBreaks}, nil},
	plan.CutPeg:       {&wallWanted{holeWallLeast, holeWallBreaks}, nil},
	plan.CutBiscuit:   {&wallWanted{biscuitWallLeast, lipBreaks}, &wallWanted{biscuitWallLeast, lipBreaks}},
	plan.CutMagnet:    {someWall, someWall},
	plan.CutNut:       {someWall, someWall},
	plan.CutPin:       {&wallWanted{holeWallLeast, holeWallBreaks}, someWall},
	plan.CutGroove:    {&wallWanted{lipLeast, lipBreaks}, someWall},
	plan.CutHousing:   {&wallWanted{lipLeast, lipBreaks}, nil},
	plan.CutLockBody:  {&wallWanted{lipLeast, lipBreaks}, &wallWanted{lockFloor, nil}},
	plan.CutHingeBore: {&wallWanted{cupRimLeast, cupRimLeast}, &wallWanted{cupFloor, cupFloor}},
	plan.CutGain:      {&wallWanted{gainWall, nil}, nil},
}

// wall is what a cut leaves to one face of its blank.
type wall struct {
	cut   *plan.Cut
	face  plan.Face
	left  wood.Length
	below bool // behind the floor of the cut
	*wallWanted
}

// walls ranges over the walls for which a figure is wanted, of cuts whose place is known there, and
// which may be asked for.
func walls(p *plan.Plan) iter.Seq[wall] {
	return func(yield func(wall) bool) {
		for c := range p.Cuts().All() {
			wanted := wallsWanted[c.Kind]
			if barrel(c) {
				wanted.beside, wanted.below = &wallWanted{barrelWall, nil}, &wallWanted{lipBreaks, nil}
			}
			if c.Stands || wanted.beside == nil || saidElsewhere(c) {
				continue
			}
			for face, left := range c.Walls() {
				w := wall{c, face, left, face == c.Enters.Opposite(), wanted.beside}
				if w.below {
					w.wallWanted = wanted.below
				}
				if w.wallWanted != nil && !yield(w) {
					return
				}
			}
		}
	}
}

// barrel reports whether a cut is the bore of a barrel hinge.
func barrel(c *plan.Cut) bool {
	return c.Kind == plan.CutHingeBore && c.For.Hardware.Hinge.Kind.Is == "barrel"
}

// saidElsewhere reports whether other rules judge the walls of a cut.
func saidElsewhere(c *plan.Cut) bool {
	switch c.Kind {
	case plan.CutPeg: // how far it stands from the tenon's end
		return !intoMate(c)
	case plan.CutScrew: // of a joint, driven square
		return !jointIs(c, plan.ScrewJoint)
	case plan.CutGroove: // that of a drawer's bottom
		return c.For.Drawer != nil
	}
	return false
}

// asked reports whether a wall is one of those that this kind of cut is asked for.
func (w *wall) asked() bool {
	c, d := w.cut, w.face.Dimension()
	if d == plan.Long && !inClosedLists(c) {
		return false
	}
	switch c.Kind {
	case plan.CutMortise:
		if d == plan.Long && !w.below && !cheek(c, d) {
			return false // how near it comes to an end
		}
		if w.below && intoMate(c) {
			return false // how deep it is
		}
		return !fatTenon(c) && (w.below || widthSaid(c.Joint()) || cheek(c, d))
	case plan.CutScrew:
		return d != plan.Long
	case plan.CutGroove, plan.CutHousing:
		return w.below || !wood.Same(w.left, 0) // along an edge it is a step
	}
	return true
}

// fatTenon reports whether a tenon in the middle of its stick is thicker than half of it: then the
// walls of its mortise are thin because of that.
func fatTenon(c *plan.Cut) bool {
	if !jointIs(c, plan.Tenon) {
		return false
	}
	j, m := c.Joint(), c.For.End.Of.(*plan.Member)
	return !j.Set.Known() && j.Thick.Known() && m.Size.Thick.Known() &&
		wood.Over(j.Thick.Length, m.Size.Thick.Length/2)
}

// widthSaid reports whether a plan says where a tenon ends in the width of its stick. Where it
// does not, the tenon is taken to be as wide as there is room for, and nothing is judged by that.
func widthSaid(j *plan.Joint) bool {
	return j.Wide.How != plan.Unknown || j.Shoulder.How != plan.Unknown || j.Apart.How != plan.Unknown || len(j.At) > 0
}

// cheek reports whether the walls of a mortise in one dimension are its cheeks, beside the tenon's
// thickness.
func cheek(c *plan.Cut, d plan.Dimension) bool {
	j := c.Joint()
	thick := j.Thick
	if m := j.Mortise; m != nil && m.Thick.Known() {
		thick = m.Thick
	}
	return thick.Known() && wood.Same(c.At[d].Size, thick.Length)
}

// wanted is how much wood is to be left, and below which much it is an error.
func (w *wall) wanted(pass *Pass) (least, breaks wood.Length) {
	subject := cutSubject(w.cut)
	of := func(f *Figure) wood.Length {
		switch {
		case f == nil:
			return 0
		case f.Dim == lang.Plain:
			return fraction(w.diameter(), pass.Number(f, subject))
		}
		return pass.Length(f, subject)
	}
	least, breaks = of(w.least), of(w.breaks)
	if size := w.cut.In.Size[w.face.Dimension()]; !w.below && w.least != nil && w.least.Dim == lang.Length && size.Known() {
		if thin := fraction(size.Length, wallThin.Number); wood.Under(thin, least) {
			least, breaks = thin, min(breaks, fraction(thin, 2.0/3))
		}
	}
	return least, breaks
}

// diameter is that of a round cut.
func (w *wall) diameter() wood.Length {
	return w.cut.At[(w.cut.Enters.Dimension()+1)%3].Size
}

// working shows how a wall comes about.
func (w *wall) working(p *plan.Plan) *plan.Paper {
	d := w.face.Dimension()
	size, at := w.cut.In.Size[d], w.cut.At[d]
	if !size.Known() {
		return p.Paper().Start(w.left, "left at the "+w.cut.FaceName(w.face))
	}
	paper := p.Paper().Start(size.Length, d.String()+" of "+blankName(w.cut.In)).Minus(at.Size, w.cut.Kind.String())
	if !w.below {
		if other := w.cut.Wall(w.face.Opposite()); other.Known() && other.Length != 0 {
			paper.Minus(other.Length, "left at the "+w.cut.FaceName(w.face.Opposite()))
		}
	}
	return paper.Equals("left at the " + w.cut.FaceName(w.face))
}
