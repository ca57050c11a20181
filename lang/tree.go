package lang

import "plancheck/internal/diag"

// Tree is one file, read: its statements in order and, beside them, its comments.
type Tree struct {
	File     *diag.File
	Body     []*Statement
	Comments []Comment // in the order of the text
}

// Statement is one line of a plan: a word of the trade, its values, sometimes a block.
//
//	shelf middle { load 40psf sag case }
//	let gap = 1/8
//	button x 8
type Statement struct {
	Span   diag.Span // from the word to the last value or the closing brace
	Word   Word
	Times  *Expr  // what follows x right after the word: `button x 8`; else nil
	Values []Expr // in order; `part leg x 4` is the word part and one Sized value
	Equals *Expr  // what follows = in a let; else nil
	Block  *Block // nil where there is none
	Faulty bool   // a fault in this line was reported: do not judge what it lacks, be it the word
}

// Head is the span of the statement's own line: all of it but the block.
func (s *Statement) Head() diag.Span {
	head := s.Word.Span
	if s.Times != nil {
		head = head.To(s.Times.Span)
	}
	if n := len(s.Values); n > 0 {
		head = head.To(s.Values[n-1].Span)
	}
	if s.Equals != nil {
		head = head.To(s.Equals.Span)
	}
	return head
}

// Word is the word that heads a line, as written.
type Word struct {
	Text string
	Span diag.Span
}

// Block is what stands between braces.
type Block struct {
	Open, Close diag.Span // the braces; Open is empty and Close unknown where it was never written
	Body        []*Statement
}

// Comment is one comment, from its # to the end of the line.
type Comment struct {
	Span diag.Span
	Own  bool // alone on its line, not behind a statement
}

// Op says what an expression is.
type Op uint8

const (
	Number Op = iota + 1 // a quantity as written: 27 1/2"
	Name                 // a name or path: carcass.middle
	Text                 // a text in double quotes
	Call                 // a function: Text is its name, Args what it takes
	Group                // one expression in brackets
	Neg                  // minus Args[0]
	Pos                  // plus Args[0]
	Add                  // Args[0] + Args[1]; so do those that follow have two
	Sub
	Mul
	Div
	Same    // ==
	Differs // !=
	Below   // <
	AtMost  // <=
	Above   // >
	AtLeast // >=
	Sized   // values joined by x: 30 x 12 x 3/4, or a name and its count
	List    // values joined by commas
)

// Sign is how a two-sided op is written; "" for the others.
func (o Op) Sign() string {
	switch o {
	case Add:
		return "+"
	case Sub:
		return "-"
	case Mul:
		return "*"
	case Div:
		return "/"
	case Same:
		return "=="
	case Differs:
		return "!="
	case Below:
		return "<"
	case AtMost:
		return "<="
	case Above:
		return ">"
	case AtLeast:
		return ">="
	}
	return ""
}

// Expr is a value as written: a number, a name, a text, or what joins them.
// Its Span covers all of it and nothing more.
type Expr struct {
	Op   Op
	Span diag.Span
	Text string   // of a Name, a Text (unquoted) or a Call
	Qty  Quantity // of a Number
	Args []Expr
}
