package plan

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// MaterialKind says what sort of stuff a material is.
type MaterialKind uint8

const (
	Solid MaterialKind = iota + 1
	Sheet
	Veneer
	Layup
)

func (k MaterialKind) String() string {
	return [...]string{"", "wood", "sheet", "veneer", "layup"}[k]
}

// Material is what things are made of: solid wood, a bought sheet, a veneer, or a
// layup pressed from plies in the shop.
type Material struct {
	Name
	Kind MaterialKind

	SpeciesName Text
	Species     *wood.Species // nil where none is named or known
	Sawn        Choice        // flat, quarter, rift; a veneer also rotary
	At          Figure        // moisture content as measured, percent
	Stiff       Figure        // modulus of elasticity, pascals
	Heavy       Figure        // density, kg/m3

	SheetKind Choice // plywood, mdf, particle, hardboard, osb
	Thick     Length // nominal for a sheet
	Actual    Length // a sheet as measured
	Size      Pair   // a sheet's wide x long, the last with the grain
	Emission  Text

	Long, Wide Length // a veneer's leaf
	Leaves     Count
	Trim       Length // off each edge of a leaf

	Glue  Ref[Glue]
	Plies []*Ply

	thickness Length // of a layup, worked out
	state     state  // how far that has come
}

// Thickness is how thick the material really stands: a sheet's actual thickness where it
// was measured, a layup's plies together. Unknown for solid wood.
func (m *Material) Thickness() Length {
	switch {
	case m.Actual.How != Unknown:
		return m.Actual
	case m.Kind == Layup:
		return m.thickness
	}
	return m.Thick
}

// Ply is one leaf of a layup, in order from face to back.
type Ply struct {
	Of     Ref[Material]
	Run    Choice // along or across the layup's grain
	Angle  Figure // degrees from the layup's grain
	Thick  Length // of solid wood, whose material does not say it
	Strips Length // width of the strips of a solid core
	At     Figure // moisture content when pressed, percent
	Glue   Ref[Glue]
	Press  Count // in which pressing it is laid; the first where unknown
	Span   diag.Span
}

// Thickness is how thick a ply stands: as it says, else as its material does.
func (p *Ply) Thickness() Length {
	if p.Thick.How != Unknown || p.Of.To == nil {
		return p.Thick
	}
	return p.Of.To.Thickness()
}

// Glue is an adhesive by its figures.
type Glue struct {
	Name
	Kind      Choice
	OpenTime  Figure // seconds
	ClampTime Figure // seconds
	Coldest   Figure // degrees Celsius
	Class     Choice // interior, limited, exterior
	Fills     Length // the widest gap that it fills
	Pressure  Figure // pascals
}

// Finish is a coating.
type Finish struct {
	Name
	Kind Choice
}

// Name is what a thing is called, and where it got its name.
type Name struct {
	Text string
	Span diag.Span
	Used bool // something names it
}

func (n *Name) naming() *Name { return n }
