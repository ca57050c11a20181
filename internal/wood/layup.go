package wood

// Panels pressed of several plies: what each ply is made of, and what the panel does as the
// seasons change. laminate.go has the theory, balance.go what puts a panel right.

import "strings"

// LayupCaveat goes with every warp that a report states.
const LayupCaveat = "an upper guide: the theory is linear and has no creep in it; it bends a panel into a saddle, " +
	"where a thin one springs into a roll; moisture that enters by one face only, and grain that is not straight, are not in it"

// Material is what a ply is made of: Solid wood or a Board.
type Material interface {
	// plane is how stiff it is. Its status is Unknown where the shelf does not have it.
	plane() (Plane, Footing)
	// grows is how much it grows by itself between two moisture contents in percent, as
	// fractions along and across its grain.
	grows(from, to float64) (along, across float64, status Status)
}

// Footing says what a panel's figures rest on.
type Footing struct {
	Status Status // the least certain of them
	// Borrowed is set where a wood's elastic ratios, or some of them, are not in the tables and
	// the mean of its group stands for them.
	Borrowed bool
	// Worse is set where the cut of a wood is not said, or rift: taken as flat, which moves most.
	Worse bool
}

func (f Footing) and(other Footing) Footing {
	return Footing{min(f.Status, other.Status), f.Borrowed || other.Borrowed, f.Worse || other.Worse}
}

// Weakness says in what the figures are weaker than ones that were read; "" if in nothing.
func (f Footing) Weakness() string {
	var weak []string
	if !f.Status.Verified() {
		weak = append(weak, "a figure from memory is in it, check it")
	}
	if f.Borrowed {
		weak = append(weak, "a wood's stiffness across the grain is not tabled, and the mean of its group stands for it")
	}
	if f.Worse {
		weak = append(weak, "a cut that is not said is taken as flat")
	}
	return strings.Join(weak, "; ")
}

// Solid is a ply of wood, sawn, sliced or peeled. Peeled veneer is flat cut.
type Solid struct {
	Species *Species
	Cut     Cut
}

// trueOverTabulated is E_L over the MOE of the tables, which has the deflection by shear in it
// (Wood Handbook, ch. 5, from memory). Where all plies are wood it cancels out of the warp.
const trueOverTabulated = 1.1

// plane is the wood's in the plane of its face: tangential across a flat ply, radial across a
// quartered one. Poisson's ratio is mu_LT or mu_LR; see Elastic.
func (s Solid) plane() (Plane, Footing) {
	if s.Species == nil {
		return Plane{}, Footing{}
	}
	moe := s.Species.MOE
	e, borrowed := s.Species.ElasticOr()
	p := Plane{Along: trueOverTabulated * moe.Value, Poisson: e.MuLT}
	across, shear := e.ET, e.GLT
	if s.Cut == Quarter {
		across, shear, p.Poisson = e.ER, e.GLR, e.MuLR
	}
	p.Across, p.Shear = across*p.Along, shear*p.Along
	return p, Footing{
		Status: min(moe.Status, e.Status), Borrowed: borrowed,
		Worse: s.Cut != Flat && s.Cut != Quarter,
	}
}

// grows is Moves across the grain and Lengthwise along it.
func (s Solid) grows(from, to float64) (along, across float64, status Status) {
	if s.Species == nil {
		return 0, 0, Unknown
	}
	m, ok := s.Species.Moves(s.Cut, from, to)
	if !ok {
		return 0, 0, Unknown
	}
	l := Lengthwise(from, to)
	return l.strain(), m.strain(), min(m.Status, l.Status)
}

// Board is a ply that is a sheet bought ready made.
type Board struct{ Sheet Sheet }

func (b Board) plane() (Plane, Footing) {
	return b.Sheet.Plane, Footing{Status: min(b.Sheet.Status, b.Sheet.PlaneStatus)}
}

// room is the temperature, in degrees Celsius, at which a moisture content stands for a humidity. It
// matters little: 10 degrees shift the humidity by 2 points at the most.
const room = 20

// grows takes the sheet into air in which solid wood comes to those moisture contents, since
// what is published of sheets goes by humidity.
func (b Board) grows(from, to float64) (along, across float64, status Status) {
	grown := b.Sheet.Expansion.Value * (Humidity(room, to) - Humidity(room, from))
	return grown, grown, b.Sheet.Expansion.Status
}

// Ply is one layer of a pressed panel.
type Ply struct {
	Material Material
	Thick    Length
	Angle    float64 // degrees by which the grain is turned from the panel's length
	Moisture float64 // percent, when the glue set
}

// Layup is the plies of a panel from its face to its back. They were flat when the glue set.
type Layup []Ply

// Footing is what the whole rests on. Its status is Unknown where the shelf lacks a figure of some
// ply; Unknown says of which.
func (l Layup) Footing() Footing {
	f := Footing{Status: Seen}
	for _, ply := range l {
		f = f.and(ply.footing())
	}
	return f
}

// Unknown is the first ply of which the shelf lacks a figure, or -1.
func (l Layup) Unknown() int {
	for i, ply := range l {
		if ply.footing().Status == Unknown {
			return i
		}
	}
	return -1
}

func (p Ply) footing() Footing {
	if p.Material == nil {
		return Footing{}
	}
	_, f := p.Material.plane()
	_, _, grows := p.Material.grows(p.Moisture, p.Moisture)
	f.Status = min(f.Status, grows)
	return f
}

// At is the panel once every ply has come to the moisture content in percent, and whether the
// shelf has the figures. A board of sheet comes to what it does in the same air.
func (l Layup) At(moisture float64) (Laminate, bool) {
	if l.Unknown() >= 0 {
		return nil, false
	}
	laminate := make(Laminate, len(l))
	for i, ply := range l {
		plane, _ := ply.Material.plane()
		along, across, _ := ply.Material.grows(ply.Moisture, moisture)
		laminate[i] = Lamina{
			Plane: plane, Thick: ply.Thick, Angle: ply.Angle,
			GrowsAlong: along, GrowsAcross: across,
		}
	}
	return laminate, true
}

// Moduli are the panel's, dry or humid, and whether the shelf has what they need. Unlike At it needs
// no movement.
func (l Layup) Moduli() (Moduli, bool) {
	laminate := make(Laminate, len(l))
	for i, ply := range l {
		if ply.Material == nil {
			return Moduli{}, false
		}
		plane, _ := ply.Material.plane()
		laminate[i] = Lamina{Plane: plane, Thick: ply.Thick, Angle: ply.Angle}
	}
	return laminate.Moduli()
}
