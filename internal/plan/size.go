package plan

import (
	"plancheck/internal/diag"
	"plancheck/internal/wood"
	"plancheck/lang"
)

// How says how a size came to be.
type How uint8

const (
	Unknown How = iota // nobody said, and nothing fixes it
	Written            // stated in the plan
	Default            // unsaid: the language's or the assembly's rule
	Derived            // worked out from other sizes
	waiting            // stated as an expression that is not worked out yet
	failed             // stated, but it could not be worked out, and that was reported
)

// Length is a size in the piece: how much, where it is stated, and how it came to be.
// Its value means nothing unless Known.
type Length struct {
	wood.Length // while waiting: the number of its expression among the pending ones
	Span        diag.Span
	How         How
}

// Known reports whether there is a value to work with.
func (l Length) Known() bool { return l.How == Written || l.How == Default || l.How == Derived }

// Said reports whether the plan states it, whatever became of the statement.
func (l Length) Said() bool { return l.How == Written || l.How == waiting || l.How == failed }

// Or is l where the plan says it or it is known, else the length d as a default.
func (l Length) Or(d wood.Length) Length {
	if l.How != Unknown {
		return l
	}
	return Length{Length: d, How: Default}
}

func derived(l wood.Length) Length { return Length{Length: l, How: Derived} }

// Figure is a quantity that is not a length, in the base unit of its Dim (see lang.Dim):
// percent, degrees, degrees Celsius, kilograms, newtons, pascals, seconds, or a bare number.
type Figure struct {
	Value float64
	Dim   lang.Dim
	Span  diag.Span
	How   How
}

// Known reports whether there is a value to work with.
func (f Figure) Known() bool { return f.How == Written || f.How == Default || f.How == Derived }

// Or is f where it is said, else v as a default.
func (f Figure) Or(v float64) float64 {
	if f.Known() {
		return f.Value
	}
	return v
}

// Count is a whole number of things.
type Count struct {
	N    int
	Span diag.Span
	How  How
}

// Known reports whether there is a number to work with.
func (c Count) Known() bool { return c.How == Written || c.How == Default || c.How == Derived }

// Or is the number where it is said, else n.
func (c Count) Or(n int) int {
	if c.Known() {
		return c.N
	}
	return n
}

// Flag is a word that is there or not.
type Flag struct {
	On   bool
	Span diag.Span
}

// Choice is one of a closed list of words; "" where nothing was said.
type Choice struct {
	Is   string
	Span diag.Span
}

// Or is the word where one is said, else word.
func (c Choice) Or(word string) string {
	if c.Is != "" {
		return c.Is
	}
	return word
}

// Text is a text in double quotes.
type Text struct {
	Text string
	Span diag.Span
}

// Pair is a size of two numbers, such as a groove's `5/16 x 3/8`: wide x deep,
// thick x long. Where one number was given it is the second, how deep or how long.
type Pair struct {
	Across Length // wide, thick; for a gap across the grain; for a rabbet into the thickness
	Deep   Length // deep, long; for a gap along the grain; for a rabbet from the edge
}

// Ref names something that stands elsewhere. To is nil until, and unless, it is found.
type Ref[T any] struct {
	Name string
	Span diag.Span
	To   *T
}

// Said reports whether the plan names anything here.
func (r Ref[T]) Said() bool { return r.Name != "" }

// Stuff is a material and, where it is said, how thick it stands.
type Stuff struct {
	Material Ref[Material]
	Said     Length // the thickness as written after the material
}

// Thick is how thick the stuff stands: as written, else the material's own thickness.
func (s Stuff) Thick() Length {
	if s.Said.How != Unknown {
		return s.Said
	}
	if s.Material.To != nil {
		return s.Material.To.Thickness()
	}
	return Length{}
}
