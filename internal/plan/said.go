package plan

import (
	"plancheck/internal/diag"
	"plancheck/lang"
)

// Thing is whatever a name can stand for: an *Assembly, a Node, a *Part, a *Material, hardware …
type Thing struct {
	Is   any
	Path string
}

// Part is a part that is declared by itself and used where it is named.
type Part struct {
	Member       // its settings; it has no place of its own
	Blank  Size3 // size L x W x T
	Uses   []*Member
}

// Fixing says what fastens two things that no layout joins.
type Fixing struct {
	A, B  Ref[Thing]
	Wall  Flag // fastened to the wall, in place of B
	With  []*FixingPart
	Glue  []*FixingGlue
	Fixed Choice
	Grain Choice // along or across: of what is fastened, to that of what it is fastened to
	Span  diag.Span
}

// FixingPart is a screw, bolt, dowel, peg or button of a fixing.
type FixingPart struct {
	Word               string
	Of                 Ref[Fastener]
	Count              Count
	At                 []Length // across the grain of what is fastened
	Along              []Length // along it
	Slotted            Length
	Round              Flag
	Pilot, Counterbore Length
	Tongue, Groove     Length
	Span               diag.Span
}

// FixingGlue is the glue of a fixing and where it stands.
type FixingGlue struct {
	Of    Ref[Glue]
	Where Choice // all, centre, front, back
	Wide  Length
	Span  diag.Span
}

// Set is things that must agree in size, or come from one board or one run of veneer.
type Set struct {
	Name  Text
	Parts []Ref[Thing]
	Agree []Choice
	Board Choice
	Match Choice
	Skin  Ref[Material]
	Span  diag.Span
}

// Check is a relation of the maker's own.
type Check struct {
	Why          Text
	Said         *lang.Expr
	Within       Length
	Left, Right  Value // what the two sides came to, where Known
	Known, Holds bool
	Terms        [2][]Term // what is added up and taken off on each side, where Known
	Subject      string    // path of the build that made it; "" in the plan itself
	Span         diag.Span

	scope *scope
}

// Term is one thing that is added or taken off in a side of a check.
type Term struct {
	Value Value
	Minus bool
	Said  string // as the plan writes it
}

// Allow silences one rule where it stands, or on what it names.
type Allow struct {
	Rule    Text
	Reason  Text
	On      []Ref[Thing]
	Subject string // path of the thing in whose block it stands; "" at plan level
	Span    diag.Span

	owner any // the node in whose block it stands
}

// Limit sets a threshold of a rule.
type Limit struct {
	Rule, Figure Text
	Said         *lang.Expr
	Value        Value
	Reason       Text
	Subject      string
	Span         diag.Span

	owner any // the node in whose block it stands
	scope *scope
}

// Let is a name for a value.
type Let struct {
	Name
	Said  *lang.Expr
	Value Value

	known  bool
	queued bool // it waits for another let to be worked out first
	state  state
	scope  *scope
}

// Pattern is something drawn once and built more than once.
type Pattern struct {
	Name
	Takes []*Take
	Body  []*lang.Statement

	source *source
}

// Take is what a pattern takes from whoever builds it.
type Take struct {
	Name
	Else *lang.Expr // what it is when nothing is given; nil where it must be given
}

// Build is one use of a pattern.
type Build struct {
	Name
	Pattern  Ref[Pattern]
	Mirrored Flag
	Span     diag.Span

	values []lang.Expr // its line: its name, `from`, the pattern, and what that takes
	faulty bool        // the line could not all be read
	outer  *scope      // where its line stands
	scope  *scope      // what it made
	within *Build      // the build in whose pattern it stands
	placed *Placed     // where it stands in a list; nil where it does not
}

// Used is a file that a plan takes in.
type Used struct {
	Path Text
	Span diag.Span
}
