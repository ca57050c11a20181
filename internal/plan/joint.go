package plan

import "plancheck/internal/diag"

// The kinds of joint, as the language names them.
const (
	Tenon           = "tenon"
	LooseTenon      = "loose-tenon"
	Stub            = "stub"
	Housing         = "housing"
	Dado            = "dado"
	SlidingDovetail = "sliding-dovetail"
	Rabbet          = "rabbet"
	Tongue          = "tongue"
	HalfLap         = "half-lap"
	Bridle          = "bridle"
	Scarf           = "scarf"
	Mitre           = "mitre"
	Dovetail        = "dovetail"
	BoxJoint        = "box"
	Dowel           = "dowel"
	ScrewJoint      = "screw"
	Pocket          = "pocket"
	BiscuitJoint    = "biscuit"
	BoltJoint       = "bolt"
	Butt            = "butt"
	ShelfPin        = "pin"
	Knob            = "knob"
	Hook            = "hook"
	Magnet          = "magnet"
	WedgeJoint      = "wedge"
	DropIn          = "drop-in"
)

// Joint is how an end is held in what it meets. The figures are those of the end's own
// half unless they say otherwise; a kind reads only its own.
type Joint struct {
	Name // at plan level
	Kind Choice
	From Ref[Joint] // a joint named at plan level, in place of a kind
	Span diag.Span

	Thick, Wide, Long Length // tenon, loose tenon, tongue
	Shoulder          Length // each edge
	Set               Length // from the face to the joint; centred where unknown
	Haunch            *Haunch
	Apart             Length
	Count             Count
	At                []Length
	Through           Flag
	Barefaced         Flag
	Mitred            Flag
	Rounded           Flag
	Dry               Flag
	GlueAt            Choice // full or centre
	Wedged            *Wedged
	Peg               *Peg
	Mortise           *Mortise
	Grain             Choice
	Deep              Length // housing, dado, half-lap, bridle, dowel hole …
	Own               Length // the end's own half of a lap, a dowel hole
	SlotWide          Length // a housing's width
	Stopped           Length
	Rabbet            Pair // INTO x FROM-EDGE
	Groove            Pair // of a tongue
	Slope             Figure
	Lap               Length
	Pins              Count
	Pin               Length
	Starts            Choice
	Tails             Ref[Thing] // the part that has the tails
	Finger            Length
	Gap               Length
	Angle             Figure
	Spline            *Spline
	Key               Count
	Hardware          Ref[Fastener]
	Insert            Ref[Fastener]
	Pilot             Length
	Counterbore       Length
	NutAt             Length
	Tail, Inside      Length
}

// Mortise is the hole for a tenon.
type Mortise struct {
	Deep       Length
	Own        Length // a loose tenon's, in the end's own part
	Thick      Length
	Wide       Length // along the tenon's width; as wide as that where unknown
	RoundEnded Flag
	Span       diag.Span
}

// Haunch is the short part of a tenon beside its full length.
type Haunch struct {
	Wide, Deep Length
	Span       diag.Span
}

// Wedged is how a tenon is spread.
type Wedged struct {
	Count          Count
	FromEdge, Stop Length
	Long           Length // of the wedges
	Spread         Choice
	Fox            Flag
	Span           diag.Span
}

// Peg is a pin through a joint.
type Peg struct {
	Of      Ref[Fastener]
	At      []Length
	Draw    Length
	InTenon Length
	Slotted Length
	Span    diag.Span
}

// Spline is a strip let into both halves of a mitre.
type Spline struct {
	Thick Length
	Grain Choice
	Span  diag.Span
}
