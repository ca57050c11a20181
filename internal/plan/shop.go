package plan

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// Climate is the air that the wood meets: at work, and at its driest and most humid in use.
type Climate struct {
	Span             diag.Span // unknown where the plan says none
	Shop, Dry, Humid Air
	House            *House // from which unsaid dry and humid air is worked out
}

// House is a heated house, by how its air is kept and by the air outside, month by month.
type House struct {
	Heated          Figure // degrees Celsius
	Least, Greatest Figure // percent of humidity that it keeps within
	Months          []*Month
	Dry, Humid      HouseAir // in the month that is worst each way
	Known           bool     // both were worked out
	Span            diag.Span
}

// HouseAir is a month in a house, as the shelf works it out.
type HouseAir struct {
	*Month
	wood.Season
}

// Month is the average air outside in one month.
type Month struct {
	Name        Choice
	Temperature Figure // degrees Celsius
	Humidity    Figure // percent
	Span        diag.Span
}

// Air is a temperature and humidity, or a moisture content straight.
type Air struct {
	Temperature Figure // degrees Celsius
	Humidity    Figure // percent
	Moisture    Figure // percent, stated or worked out
	Span        diag.Span
}

// Shop is what the shop can do.
type Shop struct {
	Span       diag.Span
	Kerf       Length
	CutsTo     Length
	Planer     *Machine
	Jointer    *Machine
	Sander     Length
	Cutters    []*Cutter
	Clamps     []*Clamp
	Press      *Press
	SawTrue    Figure // degrees
	Trim       Length
	Waste      Figure // percent
	Extraction Flag
}

// Machine is a planer or a jointer.
type Machine struct {
	Wide, Shortest, Thinnest Length
	Span                     diag.Span
}

// Cutter is a bit, a cutter or a chisel.
type Cutter struct {
	Wide, Reach Length
	Span        diag.Span
}

// Clamp is a set of alike clamps.
type Clamp struct {
	Name
	Count Count
	Opens Length
	Force Figure // each, newtons
	Span  diag.Span
}

// Press is a press or a vacuum bag.
type Press struct {
	Size   Pair
	Vacuum Figure // pascals
	Force  Figure // newtons
	Span   diag.Span
}

// Stock is what lies on the rack.
type Stock struct {
	Of         Ref[Material]
	Count      Count
	Quarters   Figure // 4/4 is 1
	Thick      Length
	Wide, Long Length
	Dressed    Choice // rough, s1s, s2s
	Size       Pair
	Span       diag.Span
}

// Steps is an order of work.
type Steps struct {
	Name  Text
	Steps []*Step
	Span  diag.Span
}

// Step is one thing done, to what, and with what.
type Step struct {
	Verb     string
	On       []Ref[Thing]
	With     []Ref[Thing] // a glue, a finish
	Tools    []Choice     // planer, sander, extraction, push-stick
	WithSpan diag.Span    // the word `with`
	For      Figure       // seconds
	At       Figure       // degrees Celsius
	To       Size3
	Off      Length
	EachTime Figure // seconds
	SetUp    Figure // seconds
	Side     Choice // that is coated: face or back; both where unsaid
	Clamps   []*StepClamps
	Freehand Flag
	Unguard  Flag
	Span     diag.Span
}

// StepClamps are the clamps of the shop that a step takes.
type StepClamps struct {
	Of    Ref[Clamp]
	Count Count // all of them where unknown
	Span  diag.Span
}

// Load is a load on an area or a length.
type Load struct {
	On   Figure // pascals on its area, or kilograms a metre of its length: see its Dim
	Sag  Choice // fine, case, kitchen
	Span diag.Span
}

// Holds is what something is for.
type Holds struct {
	What  Choice // books, clothes, mattress
	Size  Pair
	Thick Length
	Weigh Figure // kilograms
	Span  diag.Span
}

// Leans is a force that presses on a door.
type Leans struct {
	Force Figure
	At    Length
	Span  diag.Span
}

// Way is how the piece gets to its room.
type Way struct {
	Of       *Assembly // what is carried
	Doorways []*Doorway
	Turns    []*Turn
	Stairs   []*Stair
	People   Count
	Span     diag.Span
}

// Doorway is an opening that the piece goes through.
type Doorway struct {
	Size Pair // clear width x height
	Span diag.Span
}

// Turn is a square turn from one corridor into another.
type Turn struct {
	From, Into Length
	Span       diag.Span
}

// Stair is a flight of stairs.
type Stair struct {
	Wide, Head Length
	Pitch      Figure // degrees
	Span       diag.Span
}
