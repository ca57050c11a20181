// Package lang reads the text of a plan into a tree, and writes a tree as text.
//
// A plan is a list of lines. Each is a word of the trade, its values, sometimes a block.
// Which words there are, and what each takes, this package does not know.
//
//	File      = { Line } .                              (a stack makes the blocks, outside the grammar)
//	Line      = Statement End | "}" .
//	Statement = Word [ times Sum ] { Value } [ "=" Value ] [ "{" ] .   ("=" only in a let, which must have it)
//	End       = newline | ";" | before "}" | end of file .             (behind "{" and "}" a Line may follow at once)
//	Value     = List .
//	List      = Chain { "," Chain } .                   (between digits a comma needs a blank behind it)
//	Chain     = Expr { times Expr } .                   (a size, or a name and its count)
//	Expr      = Sum [ Compare Sum ] .                   (a comparison only in a check, only one)
//	Sum       = Term { ( "+" | "-" ) Term } .
//	Term      = Unary { ( "*" | "/" ) Unary } .
//	Unary     = [ sign ] Primary .
//	Primary   = Number | Path | Text | Func Sum { "," Sum } ")" | "(" Sum ")" .
//	Path      = Word { "." Word } .                     (one token)
//	Func      = Word "(" .                              (one token: min( max( abs( round( )
//	Word      = letter { letter | digit | "_" | "-" ( letter | digit ) } .
//	times     = "x" .                                   (alone, or before digits: 30x12)
//	Number    = ( Int ":" Int | Mixed | Feet ) [ Unit ] .              (one token, inner blanks included)
//	Mixed     = Int [ "." Int ] | "." Int | Int "/" Int | Int blanks Int "/" Int .
//	Feet      = Int [ "." Int ] "'" [ [ blanks ] Mixed '"' ] .
//
// What the grammar alone does not say:
//
//   - A `"` straight behind a number is inches, else it opens a text, which ends on its line.
//   - A `-` with blanks on both sides subtracts. One with a blank only before it is the
//     sign of a value, and may not follow a value on the line: `a -b` reads two ways.
//   - Two bare numbers may not stand side by side, nor may inches behind feet without
//     their mark.
//   - A fraction of fours that is one or more, such as 5/4, stands only behind `quarters`.
//   - Inside brackets a newline is a blank if it stands beside an operator, a comma or a
//     bracket; otherwise the bracket is not closed.
//   - A `#` behind something needs a blank before it, and none may stand glued to a digit
//     there.
//
// # How a text becomes a tree
//
// A hand-written lexer (scan.go) cuts some lines at a time into tokens; participle
// (grammar.go) parses those into statements; a stack (parse.go) puts each into its
// block. The window of tokens is bounded and used again, since copying and growing
// tokens is what costs; for the same reason the productions are written as methods
// (participle's Parseable), not as tags. Measured on the benchmark's plan of 100,000
// lines: 2.2 million lines a second by windows of lines, 1.2 million line by line, where
// go/parser in the same run reads 2.3 million lines of Go, with about as many
// words on each.
//
// # What happens at a fault
//
// A production that fails leaves one finding, and the rest of its line is passed over;
// a brace at the end of the line still opens its block. So a fault inside a line costs
// that line. Only braces that do not balance reach further: recover.go tells how the
// left edges of the lines then help. A text that does not end on its line is only its
// quote, so that it cannot take a brace with it.
package lang
