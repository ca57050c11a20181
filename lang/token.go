package lang

// The kinds of token, and the lexer as participle knows it.

import (
	"io"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// The kinds of token.
const (
	aWord       lexer.TokenType = iota + 1
	aPath                       // carcass.middle
	aCall                       // min( with its bracket
	aNumber                     // 27 1/2", inner blanks and unit included
	aText                       // "white oak", quotes included
	aTimes                      // x
	anEquals                    // =
	aCompare                    // == != < <= > >=
	aPlus                       // +
	aMinus                      // - with blanks on both sides
	aSign                       // - before a value
	aTightDash                  // - glued to the value before it
	aStar                       // *
	aStroke                     // /
	aComma                      // ,
	aTightComma                 // , between digits without a blank
	anOpen                      // (
	aClose                      // )
	aQuote                      // " that opens a text that does not end on its line
	aHash                       // # glued to what stands before it
	aGauge                      // # glued to a digit behind it
	anOdd                       // anything else
	tooMany                     // stands where a statement became too long
	anEnd                       // of a statement
)

// maxTokens bounds one statement, and with it memory and the depth of its values.
const maxTokens = 10_000

// symbols is the lexer as participle knows it.
type symbols struct{}

// Symbols names kinds of token for the use of tags, of which the grammar has none.
func (symbols) Symbols() map[string]lexer.TokenType {
	return map[string]lexer.TokenType{"EOF": lexer.EOF}
}

// Lex is for a text that is handed to participle whole.
func (symbols) Lex(name string, r io.Reader) (lexer.Lexer, error) {
	var text strings.Builder
	if _, err := io.Copy(&text, r); err != nil {
		return nil, err
	}
	s := newScanner(diag.NewFile(name, text.String()))
	for s.rest() {
		s.piece()
	}
	s.finish()
	return &replay{s.tokens[:s.count+1]}, nil
}

// replay hands out tokens that are there already.
type replay struct{ tokens []lexer.Token }

func (r *replay) Next() (lexer.Token, error) {
	t := r.tokens[0]
	if len(r.tokens) > 1 {
		r.tokens = r.tokens[1:]
	}
	return t, nil
}
