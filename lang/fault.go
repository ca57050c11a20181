package lang

// What the grammar says when it meets something it cannot read: what was expected
// here, in a maker's words, with an example, and the mend where there is one.
//
// The spans made here have no file yet; own sets it.

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

// Syntax is the rule under which every fault of the text is reported.
const Syntax = "syntax"

func fault(start, end int, format string, args ...any) *diag.Finding {
	return &diag.Finding{
		Rule: Syntax, Severity: diag.Error,
		Span:    diag.Span{Start: int32(start), End: int32(end)},
		Message: fmt.Sprintf(format, args...),
	}
}

func faultAt(t *lexer.Token, format string, args ...any) *diag.Finding {
	return fault(t.Pos.Offset, end(t), format, args...)
}

// quote shows a piece of the text inside a message, cut where it is long.
func quote(text string) string {
	const most = 40
	if len(text) > most {
		cut := most
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		text = text[:cut] + "…"
	}
	return "`" + strings.ToValidUTF8(text, "?") + "`"
}

// write is a mend that puts text in the place from start to end.
func write(start, end int, text string) diag.Fix {
	return rewrite(start, end, text, quote(text))
}

// rewrite is write for a place that is shown with what surrounds it.
func rewrite(start, end int, text, shown string) diag.Fix {
	return diag.Fix{
		Title: "write " + shown,
		Edits: []diag.Edit{{Span: diag.Span{Start: int32(start), End: int32(end)}, Text: text}},
	}
}

// safe marks a mend that leaves no doubt.
func safe(f diag.Fix) diag.Fix {
	f.Safe = true
	return f
}

// headFault is for a line that does not start with a word.
func headFault(t *lexer.Token, p *parser) *diag.Finding {
	if f := oddFault(t, p); f != nil {
		return f
	}
	const example = "such as `shelf middle` or `wide 30`"
	switch t.Type {
	case aNumber:
		return faultAt(t, "a line starts with a word that says what %s is, %s", quote(t.Value), example)
	case aPath:
		return faultAt(t, "a line starts with a plain word, but %s reaches inside something: put a word before it, such as `drawer carcass.upper`", quote(t.Value))
	}
	return faultAt(t, "a line starts with a word, not with %s: %s", quote(t.Value), example)
}

// valueFault is for a place where a value must stand and something else does.
func valueFault(t *lexer.Token, p *parser) *diag.Finding {
	if f := oddFault(t, p); f != nil {
		return f
	}
	const example = "a number, a name or a sum in brackets"
	after := quote(p.last.Value)
	if t.Type == anEnd {
		return fault(p.last.Pos.Offset, end(p.last), "expected a value after %s: %s", after, example)
	}
	if t.Type == aTightDash || t.Type == aTightComma {
		return leftoverFault(t, p)
	}
	return faultAt(t, "expected a value after %s, not %s: %s", after, quote(t.Value), example)
}

// leftoverFault is for what no value starts with, behind a value.
func leftoverFault(t *lexer.Token, p *parser) *diag.Finding {
	if f := oddFault(t, p); f != nil {
		return f
	}
	switch t.Type {
	case aTightDash:
		return tightDashFault(t, p)
	case aTightComma:
		return tightCommaFault(t, p)
	case aClose:
		f := faultAt(t, "`)` closes no bracket: leave it out, or open one before it with `(`")
		f.Fixes = []diag.Fix{rewrite(t.Pos.Offset, end(t), "", "the line without `)`")}
		return f
	case aCompare:
		return compareFault(t)
	case anEquals:
		return equalsFault(t, p)
	case aTimes, aComma, aStar, aStroke, aMinus:
		return faultAt(t, "expected a value before %s: a number, a name or a sum in brackets", quote(t.Value))
	}
	if p.head.Value == "let" {
		return faultAt(t, "a `let` ends with its value, but %s follows: such as `let gap = 1/8`", quote(t.Value))
	}
	return faultAt(t, "%s cannot stand here: expected a value, `;` or the end of the line", quote(t.Value))
}

func equalsFault(t *lexer.Token, p *parser) *diag.Finding {
	at := t.Pos.Offset
	switch {
	case p.head.Value == "check":
		f := faultAt(t, "`=` names a value in a `let`: to compare, write `==`")
		f.Fixes = []diag.Fix{safe(write(at, end(t), "=="))}
		return f
	case p.head.Value == "let":
		return faultAt(t, "a `let` has one name, one `=` and one value, such as `let gap = 1/8`")
	}
	f := faultAt(t, "`=` stands only in a `let`: a setting is a word and its value, such as `wide 30`")
	if next := p.after(t); next != nil {
		f.Fixes = []diag.Fix{safe(rewrite(end(p.last), next.Pos.Offset, " ", quote(p.last.Value+" "+next.Value)))}
	}
	return f
}

// after is the token behind t, which is the one to be read next; nil at the end.
func (p *parser) after(t *lexer.Token) *lexer.Token {
	at := p.tokens.RawCursor()
	next := &p.tokens.Range(at+1, at+2)[0]
	if t.Type == anEnd || next.Type == anEnd {
		return nil
	}
	return next
}

func letFault(s *Statement, values []Expr) *diag.Finding {
	const example = "such as `let gap = 1/8`"
	if len(values) == 2 && values[0].Op == Name {
		f := fault(int(s.Word.Span.Start), int(values[1].Span.End), "a `let` has `=` between its name and its value, %s", example)
		f.Fixes = []diag.Fix{safe(rewrite(int(values[0].Span.End), int(values[1].Span.Start), " = ", "`=` between them"))}
		return f
	}
	return fault(int(s.Word.Span.Start), int(s.Word.Span.End), "a `let` needs a name, `=` and a value, %s", example)
}

func compareFault(t *lexer.Token) *diag.Finding {
	return faultAt(t, "%s compares, which stands only in a `check`, such as `check \"it goes in\" bay.wide >= 17`", quote(t.Value))
}

func againFault(t *lexer.Token) *diag.Finding {
	return faultAt(t, "one `check` compares once, but %s follows: write a second `check`", quote(t.Value))
}

func functionFault(t *lexer.Token, name string) *diag.Finding {
	f := faultAt(t, "%s is no function: there are `%s`", quote(name), strings.Join(functions, "`, `"))
	if len(name) > 0 {
		f.Fixes = []diag.Fix{rewrite(end(t)-1, end(t), " (", quote(name+" (…)")+" for a name and a value")}
	}
	return f
}

func deepBracketFault(t *lexer.Token) *diag.Finding {
	return faultAt(t, "brackets stand at most %d deep: name the inner sums with `let`", maxDepth)
}

func closeFault(t, open *lexer.Token, p *parser) *diag.Finding {
	if f := oddFault(t, p); f != nil {
		return f
	}
	switch t.Type {
	case aTightDash, aTightComma, aCompare:
		return leftoverFault(t, p)
	case aSign:
		return signFault(p.last, t, p)
	case aNumber:
		if p.last.Type == aNumber && p.sideBySide(t) {
			return sideBySideFault(p.last, t, p.lastUnit)
		}
	case aComma:
		return faultAt(t, "a list cannot stand in brackets: only `%s` take more than one value", strings.Join(functions, "`, `"))
	}
	f := faultAt(open, "%s is not closed: expected `)` after %s", quote(open.Value), quote(p.last.Value))
	f.Fixes = []diag.Fix{rewrite(end(p.last), end(p.last), ")", "`)` after "+quote(p.last.Value))}
	return f
}

// unquote is what a text says without its quotes; \" and \\ stand for " and \.
func unquote(t *lexer.Token) (string, *diag.Finding) {
	body := t.Value[1 : len(t.Value)-1]
	if bad, size := foulAt(body); size > 0 {
		return "", foulFault(body[bad:bad+size], t.Pos.Offset+1+bad)
	}
	if strings.IndexByte(body, '\\') < 0 {
		return body, nil
	}
	var out strings.Builder
	for i := 0; i < len(body); i++ {
		if body[i] == '\\' {
			i++
			if body[i] != '"' && body[i] != '\\' {
				at := t.Pos.Offset + i
				f := fault(at, at+2, `a text holds only \" and \\ behind a stroke: write \\ for the stroke itself`)
				f.Fixes = []diag.Fix{rewrite(at, at, `\`, "`\\\\`")}
				return "", f
			}
		}
		out.WriteByte(body[i])
	}
	return out.String(), nil
}

// own sets the file of everything in a finding.
func own(f *diag.Finding, file *diag.File) {
	f.Span.File = file
	for i := range f.Notes {
		f.Notes[i].Span.File = file
	}
	for i := range f.Fixes {
		for j := range f.Fixes[i].Edits {
			f.Fixes[i].Edits[j].Span.File = file
		}
	}
}
