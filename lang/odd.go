package lang

// Signs that stand nowhere in a plan, and what to write for those that only look odd.

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// lookalikes are signs that a word processor puts for plain ones, with what to write.
var lookalikes = map[string]string{
	"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
	"″": `"`, "”": `"`, "“": `"`, "„": `"`, "′": "'", "’": "'", "‘": "'",
	"×": "x", "°": "deg", "º": "deg",
	"−": "-", "–": "-", "—": "-", "÷": "/", "⁄": "/", "∕": "/", "≤": "<=", "≥": ">=", "≠": "!=",
	"\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u200b": "", "\ufeff": "",
}

// oddFault is for the signs that stand nowhere in a plan; nil for others.
func oddFault(t *lexer.Token, p *parser) *diag.Finding {
	at := t.Pos.Offset
	switch t.Type {
	case aQuote:
		return faultAt(t, "a text ends with `\"` on the line where it starts, such as `\"white oak\"`; inches stand straight after a digit, such as `3/4\"`")
	case aHash:
		f := faultAt(t, "a comment needs a blank before `#`, such as `wide 30 # over all`")
		f.Fixes = []diag.Fix{safe(rewrite(at, at, " ", "a blank before `#`"))}
		return f
	case aGauge:
		number := t.Value[1:]
		f := faultAt(t, "`#` starts a comment here: the gauge of a screw is written `gauge %s`, and a comment as `# %s`", number, number)
		f.Fixes = []diag.Fix{write(at, end(t), "gauge "+number), write(at, end(t), "# "+number)}
		return f
	case tooMany:
		return faultAt(t, "this line is too long: at most %d words and numbers", maxTokens)
	case anOdd:
		if lookalike(t.Value) {
			return lookalikeFault(t, p)
		}
		if bad, size := foulAt(t.Value); size > 0 {
			return foulFault(t.Value[bad:bad+size], at)
		}
		switch t.Value {
		case ".":
			return faultAt(t, "a point stands between digits, such as `27.5`, or between names, such as `carcass.middle`")
		case "'":
			return faultAt(t, "`'` stands straight after the number of feet, such as `2' 6 1/2\"`; texts stand in `\"`")
		case "[", "]":
			return faultAt(t, "%s stands nowhere in a plan: sums stand in `( )`, blocks in `{ }`", quote(t.Value))
		}
		return faultAt(t, "%s stands nowhere in a plan: expected a word, a number, a text in `\"` or one of `+ - * / ( ) { } ; , =`", quote(t.Value))
	}
	return nil
}

// lookalikeFault mends every lookalike of the line at once.
func lookalikeFault(first *lexer.Token, p *parser) *diag.Finding {
	plain := lookalikes[first.Value]
	f := faultAt(first, "%s is written %s", quote(first.Value), quote(plain))
	if strings.TrimSpace(plain) == "" {
		f.Message = "an odd blank stands here, which only looks like one: write a plain blank"
	}
	fix := diag.Fix{Title: "write " + quote(plain), Safe: true}
	var before, t *lexer.Token
	for at := p.tokens.RawCursor(); ; at++ {
		before, t = t, &p.tokens.Range(at, at+1)[0]
		if t.Type == anEnd {
			break
		}
		if at == p.tokens.RawCursor() {
			before = p.last
		}
		next := &p.tokens.Range(at+1, at+2)[0]
		if t.Type != anOdd || !lookalike(t.Value) {
			continue
		}
		if lookalikes[t.Value] == "-" && end(before) == t.Pos.Offset {
			return f // 27–1/2 may be a mixed number or a subtraction
		}
		fix.Edits = append(fix.Edits, diag.Edit{Span: span(t), Text: plainly(before, t, next)})
	}
	f.Fixes = []diag.Fix{fix}
	return f
}

// plainly is what to write for a lookalike, with the blanks that it needs between what
// stands before and behind it.
func plainly(before, t, next *lexer.Token) string {
	plain := lookalikes[t.Value]
	touches := end(before) == t.Pos.Offset && lookalikes[before.Value] != "x"
	touched := end(t) == next.Pos.Offset && next.Type != anEnd
	fraction := digitAt(plain, 0)
	switch {
	case plain == "deg" && touched && (next.Value == "F" || next.Value == "C"):
		return "" // a temperature: 66°F is 66F
	case touches && (fraction || plain == "x"):
		plain = " " + plain
	}
	if touched && (plain == "x" || plain == " x" || fraction && next.Type == aNumber) {
		plain += " "
	}
	return plain
}

func lookalike(sign string) bool {
	_, ok := lookalikes[sign]
	return ok
}

func foulFault(sign string, at int) *diag.Finding {
	r, _ := utf8.DecodeRuneInString(sign)
	f := fault(at, at+len(sign), "a control sign (U+%04X) stands here, which is no text: take it out", r)
	if r == utf8.RuneError {
		f.Message = fmt.Sprintf("this byte (%02X) is not UTF-8 text: save the plan as UTF-8", sign[0])
		return f
	}
	f.Fixes = []diag.Fix{rewrite(at, at+len(sign), "", "the line without it")}
	return f
}

// foulAt finds the first control byte or broken UTF-8 in what stands on one line.
func foulAt(text string) (at, size int) {
	for i := 0; i < len(text); {
		c := text[i]
		if c >= utf8.RuneSelf {
			r, n := utf8.DecodeRuneInString(text[i:])
			if r == utf8.RuneError && n == 1 {
				return i, 1
			}
			i += n
			continue
		}
		if c < ' ' && c != '\t' || c == 0x7f {
			return i, 1
		}
		i++
	}
	return 0, 0
}

func longFault(t *lexer.Token, what string, most int) *diag.Finding {
	return faultAt(t, "this %s is too long: at most %d letters", what, most)
}
