package plan

import "plancheck/internal/diag"

// Hinge is a hinge by its figures.
type Hinge struct {
	Name
	Kind              Choice // butt, cup, barrel, knife, pivot
	Opens             Figure // degrees
	Carries           Figure // each, kilograms
	Weighs            Figure
	High, Wide        Length // wide: opened flat
	Knuckle           Length // over the pin, shut
	Bore, Deep        Length
	Rim, Plate, Crank Length
	Covers            *Covers
	Fixings           Pair
	SwingsIn          Flag
	Pin               Pair // from the edge x from the face
}

// Along is how much of its edge a hinge takes: along its pin, or its bore.
func (h *Hinge) Along() Length {
	if h.High.How == Unknown && (h.Kind.Is == "cup" || h.Kind.Is == "barrel") {
		return h.Bore
	}
	return h.High
}

// Covers is what a cup hinge overlays at stated settings.
type Covers struct {
	Cover, Rim, Plate Length
	At                Flag // stands before the setting, and says no more
	Span              diag.Span
}

// Latch is a latch, a catch or a lock.
type Latch struct {
	Name
	Word        string // latch, catch, lock
	Kind        Choice
	Weighs      Figure
	Throw, Bolt Length
	KeeperDeep  Length
	KeeperHigh  Length
	Pull        *Pull
	Backset     Length
	Body        Size3 // wide x high x deep
}

// Pull is the force that holds a door, and at which gap it was measured.
type Pull struct {
	Force Figure
	At    Length
	Span  diag.Span
}

// Slide is a pair of drawer slides.
type Slide struct {
	Name
	Kind     Choice // side-mount, undermount, centre
	Weighs   Figure
	Room     Length // each side, outside the box
	Less     Length // opening less inside of box
	HighLess Length
	Under    Length
	Notch    Pair
	Long     Length
	Travel   Length
	Carries  Figure // the pair, kilograms
}

// Stay holds a lid or a flap open.
type Stay struct {
	Name
	Weighs Figure
	Lid    Length // its point on the lid, from the pin
	Case   Pair   // its point on the case, from the pin: along the shut lid x square to it, into the case
	Shut   Length // the least between the two points
	Open   Length // the most
	Holds  Figure // torque of each, newton metres
}

// Handle is a pull or a knob.
type Handle struct {
	Name
	Weighs   Figure
	Projects Length
}

// Rod is a hanging rail.
type Rod struct {
	Name
	Weighs     Figure
	Thick      Length
	SocketDeep Length
}

// Fastener is a screw, bolt, dowel, pin, peg, insert, knob, biscuit, button, hook or magnet.
type Fastener struct {
	Name
	Word    string
	Weighs  Figure
	Gauge   Count
	Thick   Length
	Long    Length
	Wide    Length
	Thread  Length
	Head    Choice
	Nut     Length // the diameter of its barrel nut
	NutLong Length
	Drop    Length
}

// HardwareUse is a piece of hardware where it is used, and where it sits.
type HardwareUse struct {
	Word   string
	Name   string
	Span   diag.Span
	Hinge  *Hinge
	Latch  *Latch
	Bolt   *Fastener
	Handle *Handle
	Rod    *Rod
	Stay   *Stay

	At      []Length
	FromTop Length
	Ends    Length
	InLine  Flag
	Centred Flag
	Count   Count
	On      Choice // free, head, foot
	Gain    Length
	CaseIn  Length // the gain in the case
	Proud   Length // the pin, in front of the door's face
	Out     Length // the pin, beyond the door's edge
	Rim     Length
	Keeper  Length // where the keeper sits
}
