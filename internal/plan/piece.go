package plan

import (
	"iter"

	"plancheck/internal/diag"
	"plancheck/internal/wood"
)

// Plan is a piece of furniture, worked out: everything that the plan's files say, with
// names bound and sizes found. What could not be found stays unknown.
type Plan struct {
	File  *diag.File // the file that was asked for; others came in by use
	Title string
	Tape  wood.Tape // units and finest mark of the file that was asked for
	Use   []*Used

	Exposure Choice
	Climate  Climate
	Shop     Shop
	Stock    []*Stock
	Steps    []*Steps

	Lets       []*Let
	Materials  []*Material
	Glues      []*Glue
	Finishes   []*Finish
	Hinges     []*Hinge
	Latches    []*Latch
	Slides     []*Slide
	Stays      []*Stay
	Handles    []*Handle
	Rods       []*Rod
	Fasteners  []*Fastener
	JointNamed []*Joint // `joint corner tenon …` at plan level
	Patterns   []*Pattern
	Builds     []*Build

	Assemblies []*Assembly // in the order of the text, those of a build where it stands
	Parts      []*Part
	Tops       []*Member // tops that stand alone, laid over something

	Fixes  []*Fixing
	Sets   []*Set
	Checks []*Check
	Allows []*Allow
	Limits []*Limit
	Way    *Way

	Unchecked int // sizes that are stated and could not be worked out

	title Text
	tape  Length

	cuts     lazy[*Cuts] // see Cuts
	weights  lazy[map[*Assembly]weighed]
	balances lazy[map[*Assembly]balanced]
	topsOver lazy[map[*Assembly][]*Member]
	madeOf   lazy[map[*Material][]Workpiece] // see MadeOf
}

// AssemblyKind is frame, case or assembly.
type AssemblyKind uint8

const (
	Frame AssemblyKind = iota + 1 // sticks in one plane
	Case                          // boards that fill the depth
	Group                         // an assembly: anything
)

func (k AssemblyKind) String() string { return [...]string{"", "frame", "case", "assembly"}[k] }

// Assembly is a frame, a case or an assembly: an outside size and one tree of lists.
type Assembly struct {
	Name
	Kind  AssemblyKind
	Build *Build // the build that made it; nil where it is drawn in the plan itself
	Count Count  // x 2
	Pair  Flag   // two, handed
	Made  Flag

	Wide, High, Deep Length // outside as stated; Deep is a frame's thick
	Of               Stuff
	Glue             Ref[Glue]
	Use              Choice // table, desk, chair …
	Places           Count
	Exposure         Choice
	Apart            Choice // by-hand, by-tools
	Sides            Count  // of a frame: more than four is a polygon
	Load             *Load
	Holds            []*Holds
	Walls            *Walls
	Joint            *Joint          // the rule for every end
	Each             map[string]Node // the rule for all of a word
	Root             *List

	Outside [3]Length // worked out, by Axis
	Filled  Node      // the door or cell from which an unsaid outside came; nil if none
	Rail    *Member   // the one rail of a polygon, which has no list
	Members []*Member // all members of its lists, in order
	Ends    []*End    // all ends of its members, in order

	scope  *scope
	nodes  []Node // see Nodes; nil until all is worked out
	state  [3]state
	unread bool   // a line of its lists was not understood: what it holds is not all known
	uses   []Node // the doors that it is the leaf of, and the cells that it is placed in
}

// Walls are how far walls, or neighbours that stand out like walls, are from the outside of an assembly.
type Walls struct {
	Left, Right, Front, Back, Above Length
	Span                            diag.Span
}

// WallAt is how far from its outside a wall stands at one side of an assembly. A build that is mirrored has
// its walls turned with it.
func (a *Assembly) WallAt(s Side) Length {
	if a.Walls == nil {
		return Length{}
	}
	if s.Axis() == Across && a.Build.turned() {
		s = s.Opposite()
	}
	return [...]Length{Left: a.Walls.Left, Right: a.Walls.Right, Upper: a.Walls.Above, Lower: {}, Front: a.Walls.Front, Back: a.Walls.Back}[s]
}

// Axis is a direction in an assembly.
type Axis uint8

const (
	Across Axis = iota // left to right
	Down               // top to bottom
	Behind             // front to back
)

func (a Axis) String() string { return [...]string{"across", "down", "behind"}[a] }

// Extent is where something lies along one axis: from the assembly's left, top or front.
type Extent struct {
	From, Size wood.Length
	Placed     bool // From means something
	Sized      bool // Size means something
}

// To is the far end of the extent.
func (e Extent) To() wood.Length { return e.From + e.Size }

// Known reports whether both ends are known.
func (e Extent) Known() bool { return e.Placed && e.Sized }

// Box is a place in an assembly, by Axis.
type Box [3]Extent

// Node is one thing in a layout: a member, an opening, a nested list, or something that
// is drawn elsewhere.
type Node interface{ item() *Item }

// Item is what every thing in a layout has.
type Item struct {
	Word    string // "rail", "door", "across", "frame"
	Name           // its text is "" where it has none; the span is then that of the word
	Span    diag.Span
	In      *Assembly
	Parent  *List // the list it stands in; nil at the root, and for a top that stands alone
	Index   int   // its place in the list
	Along   Length
	Share   Count
	Count   Count
	Between *Between
	Row     string // the name of the row that it was one of

	Cell Box // its place in the assembly

	Shared bool // it took a share of what was left

	path   string // see PathOf; "" until all is worked out
	source *Build // of what stands in no assembly: the build that made it
}

func (i *Item) item() *Item { return i }

// It is what every layout node has, whatever it is.
func It(n Node) *Item { return n.item() }

// Between is what stands between the things of a row.
type Between struct {
	Word Text
	Size Length
}

// List is a row of things along one axis.
type List struct {
	Item
	Axis  Axis
	Items []Node
	Sum   Sum
	Close diag.Span // its closing brace

	fixed [3]*fixing // what its items fix, by Axis; nil until asked
}

// Sum is how a list's items add up against its cell.
type Sum struct {
	State  SumState
	Whole  wood.Length // the list's cell along its axis
	Fixed  wood.Length // what is stated or fixed along it
	Shares int         // how many items share the rest
}

// SumState says how a list came out.
type SumState uint8

const (
	Unsolved    SumState = iota // an item's size or the whole is unknown
	Closed                      // the items fill the cell
	TooMuch                     // the items are longer than the cell
	TooLittle                   // the items leave a gap and nothing shares it
	NothingLeft                 // something shares, and nothing is left for it
)

// Side is an end or an edge of a thing, as seen from the front of its assembly.
type Side uint8

const (
	Left Side = iota
	Right
	Upper
	Lower
	Front
	Back
)

func (s Side) String() string {
	return [...]string{"left", "right", "upper", "lower", "front", "back"}[s]
}

// Axis is the direction in which the side faces.
func (s Side) Axis() Axis { return Axis(s / 2) }

// Far reports whether it is the right, the lower or the back one.
func (s Side) Far() bool { return s%2 == 1 }

// Opposite is the side across from s.
func (s Side) Opposite() Side { return s ^ 1 }

// Member is a piece of wood in a layout: a board or a stick; or a top that stands alone.
type Member struct {
	Item
	*Shape            // of all members that say nothing of theirs, the same empty one
	Of                Stuff
	Thick, Wide, Long Length // as stated
	Cut               Length // as stated: what the saw gets, along the grain
	GrainSaid         Choice
	Joint             *Joint
	EndJoints         []*EndJoint
	Part              Ref[Part]
	Edging            []*Edging
	Made              Flag
	Load              *Load
	Holds             []*Holds
	Recess, Proud     SidePair // at the front and at the back
	Over              *Over
	Breadboard        *Breadboard
	Lid               *Door // the door settings of a lid

	Grain  Axis    // which way the grain runs
	Flat   Axis    // which way its thickness lies
	Body   Box     // the wood itself, shoulder to shoulder
	Size   Size3   // finished: long with the grain, wide, thick; as stated where it is
	Worked Size3   // the same as the layout and the joints make it; unknown where they do not
	Ends   [2]*End // its two ends: the left, upper or front one first

	filled bool
}

// Shape is what most members say nothing about: how they are cut to size and shaped, made up
// and set.
type Shape struct {
	Boards           Count
	Turned, Mirrored Flag // of the part that it is
	Guard            Flag
	Centred          Flag
	Flush            Choice

	Rough   Size3 // before it is trued
	Core    Pair  // long x wide without its edging, as stated
	Horns   Length
	Chamfer Length
	Round   Length
	Arch    Length
	Taper   Length
	Bevel   Figure
	Notch   Pair
}

// plain is the shape of members that say nothing of theirs. Nothing is ever written to it.
var plain Shape

// Size3 is long (with the grain) x wide x thick.
type Size3 struct{ Long, Wide, Thick Length }

// SidePair is a length at the front and one at the back.
type SidePair struct{ Front, Back Length }

// Edging is a strip on an edge of a part.
type Edging struct {
	Edge     Choice // front, back, left, right, ends
	Of       Stuff
	Under    Flag // it lies under the face veneer
	OverFace Flag // it covers the edge of the face veneer, as it does unless under is said
	Mitred   Flag
	Splined  Flag
}

// EndJoint is the joint said for one end of a member.
type EndJoint struct {
	End   Choice // left, right, lower, upper, front, back
	Joint *Joint
	Span  diag.Span
}

// Over is how far a top stands beyond what it lies on.
type Over struct {
	Of                Ref[Assembly]
	Ends, Front, Back Length
	Span              diag.Span
}

// Breadboard is a cross piece at both ends of a top.
type Breadboard struct {
	Wide   Length
	Tongue Pair   // thick x long
	Centre Length // glued only so far along the middle
	Peg    *Peg
	Span   diag.Span
}

// Opening is what panels, glass, doors, drawers, open bays and spaces share.
type Opening struct {
	Item
	Holds []*Holds
}

// Space is an open bay (open) or a place with nothing in it (space).
type Space struct {
	Opening
	Rods []*HardwareUse
}

// Panel is a panel in grooves, or a case's back.
type Panel struct {
	Opening
	Of         Stuff
	Thick      Length
	Gap        Pair // across x along the grain
	Wide, High Length
	Groove     Pair // wide x deep, in the members round it
	Tongue     Pair // thick x long, on the panel
	Float      *Float
	GlueAt     Choice // all, edges, centre
	Bevel      Figure
	Joint      *Joint // a back's rabbet
	GrainSaid  Choice
	Edging     []*Edging
	Made       Flag

	Grain   Axis
	GapUsed Pair // the gap that was taken, across x along, and how it came to be
	Edges   [4]*End
	Size    Size3 // as stated where it is
	Worked  Size3 // as its place and the gap make it
}

// Float says that a panel is free to move.
type Float struct {
	Loose Flag
	Span  diag.Span
}

// Glass is a pane in a rabbet.
type Glass struct {
	Opening
	Thick Length
	Kind  Choice
	Joint *Joint
	Gap   Pair

	GapUsed Pair
	Edges   [4]*End
	Size    Size3 // long is high
}

// AtEdges is a length at the edges of a leaf or a front: one for all, and what an edge has of its own.
type AtEdges struct {
	All                      Length
	Left, Right, Top, Bottom Length
	Hinge, Latch             Length // go before the others
}

// Reveal is the gap round an inset door or front.
type Reveal struct {
	AtEdges
	Meeting Length
	Span    diag.Span
}

// Fit is how a door or a front stands to its opening.
type Fit struct {
	Kind Choice  // inset or overlay
	Laps AtEdges // an overlay's
	Span diag.Span
}

// Door is an opening with a door in it.
type Door struct {
	Opening
	Leaf    Leaf
	Fit     Fit
	Reveal  *Reveal
	Hang    Choice // left, right, top, bottom, back; lift-out
	Held    Choice // of one that is lifted out: strip, key
	Hinges  []*HardwareUse
	Latches []*HardwareUse // latch, catch, lock, bolt
	Handles []*HardwareUse
	Stays   []*HardwareUse
	Opens   Figure // degrees
	Active  Flag
	Leans   *Leans
	Grooves *Grooves
	Bevel   Figure
	Rounded Flag
	Meeting Choice
	Clears  Length

	Edges [4]Edge   // how each edge of the leaf comes about: left, right, upper, lower
	Size  [2]Length // of the leaf: wide, high
	Board *Member   // the board of a lid, which is told as it is seen from above; nil of a door

	edged bool
}

// Leaf is what closes a door's opening: a frame, a part, or a board of some material.
type Leaf struct {
	Name      string
	Span      diag.Span
	Frame     *Assembly
	Part      *Part
	Material  *Material
	Thick     Length
	GrainSaid Choice
}

// Grooves are what a leaf that is lifted out stands and slides in: it is pushed up into the upper one and let down
// into the lower one.
type Grooves struct {
	Top, Bottom Length // how deep they are
	Keeps       Length // how far it is in the upper one while it stands in the lower one
	Span        diag.Span
}

// Edge is one edge of a leaf or a front against its opening: less is taken off the
// opening for a reveal, a negative one is added for a lap.
type Edge struct {
	Side   Side
	Less   Length
	Shared bool // between two openings: half of one reveal
}

// Lap is how far it laps over what stands there; below nothing where it stands in.
func (e Edge) Lap() Length {
	l := e.Less
	l.Length = -l.Length
	return l
}

// Drawer is an opening with a drawer in it.
type Drawer struct {
	Opening
	Of       Stuff
	FrontAs  *DrawerPart
	BackAs   *DrawerPart
	SideAs   *DrawerPart
	BottomAs *DrawerBottom
	SetIn    Length
	Corners  []*Corner
	Fit      Fit
	Reveal   *Reveal
	Long     Length // the side
	Deep     Length // the box over all
	High     Length // the sides
	Wide     Length // the box
	Slide    Ref[Slide]
	Runner   Ref[Material]
	Gap      Length
	Line     Length // from the lower edge of its sides up to the middle of a side-mount slide
	Stop     Flag
	Handles  []*HardwareUse
	Load     *Load
	Made     Flag

	Edges                     [4]Edge
	FrontJoint, BackJoint     *Joint    // the corners, put together; nil where none is said
	Box                       [3]Length // the box worked out: wide, high, deep
	Front                     *BoxPart  // the front that shows
	Inner                     *BoxPart  // behind an applied front, the box's own; else nil
	Left, Right, Back, Bottom *BoxPart
}

// DrawerPart is what the plan says of a drawer's front, back or sides.
type DrawerPart struct {
	Of      Stuff
	Cut     Length
	Applied Flag
	Back    Choice // under or grooved
	Notch   Pair   // of a back, at both lower corners: wide x high
	Span    diag.Span
}

// DrawerBottom is what the plan says of a drawer's bottom.
type DrawerBottom struct {
	Of       Stuff
	Groove   Pair
	Up       Length
	Slot     Length
	PastBack Length
	Grain    Choice
	Span     diag.Span
}

// Corner is the joint between a drawer's sides and its front or back.
type Corner struct {
	At    Choice // front or back
	Joint *Joint
	Span  diag.Span
}

// BoxPart is one part of a drawer, worked out.
type BoxPart struct {
	Name   string // "left", "front"
	Of     *Material
	Size   Size3
	Cut    Length // as stated, along the grain
	Drawer *Drawer
	Span   diag.Span
}

// Placed is a frame, a case or an assembly that is drawn elsewhere and stands here.
type Placed struct {
	Item
	Part     Ref[Assembly]
	Mirrored Flag

	Turned bool // its left became the front
	Flat   bool // its plane lies level: its top became the back
}

// End is one end of a member, or one edge of a panel, a back or a pane, and what it meets.
type End struct {
	Of    Node // *Member, *Panel or *Glass
	Side  Side
	Free  bool // at the outside of the assembly
	Faces Node // the neighbour that bounds the cell; nil where free
	Mates []*Member
	Joint *Joint // with its defaults filled in; nil where there is none
	Adds  Length // what the joint adds to the length at this end

	ways []*way // to each mate that is drawn elsewhere; shorter where the last ones are not
}

// Members ranges over every member of every assembly.
func (p *Plan) Members() iter.Seq[*Member] {
	return func(yield func(*Member) bool) {
		for _, a := range p.Assemblies {
			for _, m := range a.Members {
				if !yield(m) {
					return
				}
			}
		}
	}
}

// Nodes ranges over everything in an assembly's lists, outer before inner, in order.
func (a *Assembly) Nodes() iter.Seq[Node] {
	return func(yield func(Node) bool) {
		switch {
		case a.nodes != nil:
			for _, n := range a.nodes {
				if !yield(n) {
					return
				}
			}
		case a.Root != nil:
			walk(a.Root, yield)
		}
	}
}

func walk(n Node, yield func(Node) bool) bool {
	if !yield(n) {
		return false
	}
	if l, ok := n.(*List); ok {
		for _, inner := range l.Items {
			if !walk(inner, yield) {
				return false
			}
		}
	}
	return true
}

// AllOf ranges over the layout nodes of one type in the whole plan, such as *Door.
func AllOf[N Node](p *Plan) iter.Seq[N] {
	return func(yield func(N) bool) {
		for _, a := range p.Assemblies {
			for n := range a.Nodes() {
				if it, ok := n.(N); ok && !yield(it) {
					return
				}
			}
		}
	}
}
