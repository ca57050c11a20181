// Package diag holds the words that every stage shares: a file and a place in it,
// a finding with its working, its notes and its mends.
//
// Places are byte offsets. Lines and columns are made once, at the edge, where a
// person or an editor reads them (see File.Position).
package diag

// Severity says how much a finding matters.
type Severity uint8

const (
	// Advice is said once and never blocks.
	Advice Severity = iota + 1
	// Warning is against good practice.
	Warning
	// Error will not go together, or will break, bind or split; or could not be read.
	Error
)

func (s Severity) String() string {
	switch s {
	case Advice:
		return "advice"
	case Warning:
		return "warning"
	case Error:
		return "error"
	}
	return "none"
}

// Finding is one thing wrong with a plan: what, where, the arithmetic, and the mend.
type Finding struct {
	Rule     string // the rule's name, such as "rail-length"
	Severity Severity
	Subject  string // path of the thing it is about, such as "carcass.upper"; "" for the text itself
	Span     Span
	Message  string // one line: lower case, names quoted, no full stop
	Working  Working
	Notes    []Note
	Fixes    []Fix
}

// Note points at another place that took part in a finding.
type Note struct {
	Span    Span
	Message string
}

// Fix is one way to put a finding right.
type Fix struct {
	Title string // a verb first: "write `cut 16 13/16`"
	Edits []Edit // none where the maker must choose
	Safe  bool   // changes no size and loses no comment
}

// Edit replaces the text at Span by Text.
type Edit struct {
	Span Span
	Text string
}

// Working is a sum as it would stand on paper, line under line.
type Working []Step

// Step is one line of a working. Value is shown as a maker reads it; a step without
// one is a remark between the lines.
type Step struct {
	Op    Op
	Value string // "18 13/16", "6 mm"
	Label string // "width of leaf-frame"
}

// Op is the sign that stands before a line of a working.
type Op uint8

const (
	Start  Op = iota // the first line of a sum
	Plus             // added
	Minus            // taken off
	Times            // multiplied by
	Over             // divided by
	Equals           // a result
	Versus           // what the result is held against
)

// Sign is how the op is written.
func (o Op) Sign() string {
	return [...]string{"", "+", "-", "x", "/", "=", ":"}[o]
}
