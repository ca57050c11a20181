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

// oddFault is for the signs that stand nowhere in a plan; nil for others.
func oddFault(t *lexer.Token, p *parser) *diag.Finding {
	at := t.Pos.Offset
	switch t.Type {
	case aQuote:
		return faultAt(t, "a text ends with `\"` on the line where it starts, such as `\"white oak\"`; inches stand straight after a digit, such as `3/4\"`")
	case aHash:
		f := faultAt(t, "a comment needs a blank before `#`, such as `wide 30 # over all`")
		f.Fixes = []diag.Fix{rewrite(at, at, " ", "a blank before `#`")}
		f.Fixes[0].Safe = true
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

func equalsFault(t *lexer.Token, p *parser) *diag.Finding {
	at := t.Pos.Offset
	switch {
	case p.head.Value == "check":
		f := faultAt(t, "`=` names a value in a `let`: to compare, write `==`")
		f.Fixes = []diag.Fix{write(at, end(t), "==")}
		return f
	case p.head.Value == "let":
		return faultAt(t, "a `let` has one name, one `=` and one value, such as `let gap = 1/8`")
	}
	f := faultAt(t, "`=` stands only in a `let`: a setting is a word and its value, such as `wide 30`")
	if next := p.after(t); next != nil {
		f.Fixes = []diag.Fix{rewrite(end(p.last), next.Pos.Offset, " ", quote(p.last.Value+" "+next.Value))}
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
		f.Fixes = []diag.Fix{rewrite(int(values[0].Span.End), int(values[1].Span.Start), " = ", "`=` between them")}
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

// signFault is for `a -b`: one value less another, or two values.
func signFault(before, sign *lexer.Token, p *parser) *diag.Finding {
	at := sign.Pos.Offset
	next := p.after(sign)
	if next == nil {
		return faultAt(sign, "expected a value after `-`")
	}
	minus := before.Value + " - " + next.Value
	f := fault(before.Pos.Offset, end(next), "%s reads two ways: a subtraction has blanks on both sides of `-`, and a value below nothing stands in brackets",
		quote(before.Value+" -"+next.Value))
	f.Fixes = []diag.Fix{rewrite(at, end(sign), "- ", quote(minus))}
	if before.Type == aNumber && next.Type == aNumber {
		if n, _ := scanNumber(next.Value, 0); n.num != "" && n.whole == "" {
			f.Fixes = append(f.Fixes, rewrite(at, end(sign), "", quote(before.Value+" "+next.Value)))
		}
		return f
	}
	f.Fixes = append(f.Fixes, rewrite(at, end(next), "(-"+next.Value+")", quote(before.Value+" (-"+next.Value+")")))
	return f
}

// tightDashFault is for a dash glued to the value before it: `27-1/2`, `27-b`, `a- b`.
func tightDashFault(t *lexer.Token, p *parser) *diag.Finding {
	next := p.after(t)
	if next == nil {
		return faultAt(t, "expected a value after `-`, such as `wide - 1/2`")
	}
	minus := rewrite(end(p.last), next.Pos.Offset, " - ", quote(p.last.Value+" - "+next.Value))
	f := fault(p.last.Pos.Offset, end(next), "%s needs blanks on both sides of `-`", quote(p.last.Value+"-"+next.Value))
	before, _ := scanNumber(p.last.Value, 0)
	after, _ := scanNumber(next.Value, 0)
	if p.last.Type == aNumber && next.Type == aNumber && before.num == "" && before.unit == "" && after.whole == "" {
		f.Message = quote(p.last.Value+"-"+next.Value) + " reads two ways: a mixed number has a blank, a subtraction blanks on both sides of `-`"
		mixed := p.last.Value + " " + next.Value
		f.Fixes = []diag.Fix{rewrite(p.last.Pos.Offset, end(next), mixed, quote(mixed)), minus}
		return f
	}
	f.Fixes = []diag.Fix{minus}
	return f
}

// tightCommaFault is for `3,14`: a list, a decimal or thousands.
func tightCommaFault(t *lexer.Token, p *parser) *diag.Finding {
	next := p.after(t)
	if next == nil {
		return faultAt(t, "expected a value after `,`")
	}
	a, b := p.last.Value, next.Value
	f := fault(p.last.Pos.Offset, end(next), "%s reads two ways: a list has a blank after its comma, a decimal has a point", quote(a+","+b))
	from, to := p.last.Pos.Offset, end(next)
	f.Fixes = []diag.Fix{write(from, to, a+", "+b)}
	if allDigits(a) {
		f.Fixes = append(f.Fixes, write(from, to, a+"."+b))
		if n, _ := scanNumber(b, 0); len(n.whole) == 3 {
			f.Fixes = append(f.Fixes, write(from, to, a+b))
		}
	}
	return f
}

func allDigits(s string) bool { return digitsEnd(s, 0) == len(s) }

// sideBySideFault is for two numbers that could be read as one.
func sideBySideFault(a, b *lexer.Token, unit Unit) *diag.Finding {
	shown := a.Value + " " + b.Value
	from, to := a.Pos.Offset, end(b)
	if unit == Foot {
		n, _ := scanNumber(b.Value, 0)
		inches := strings.TrimSpace(strings.TrimSuffix(b.Value, n.unit))
		feet, _ := scanNumber(a.Value, 0)
		one := feet.whole + "' " + inches + `"`
		f := fault(from, to, "%s reads as one length: feet and inches are written %s", quote(shown), quote(one))
		f.Fixes = []diag.Fix{write(from, to, one)}
		return f
	}
	f := fault(from, to, "two numbers stand side by side in %s: name the second, such as `thick %s`", quote(shown), b.Value)
	f.Fixes = []diag.Fix{{Title: fmt.Sprintf("write a word before `%s`", b.Value)}}
	return f
}

// improper is for a mixed number whose fraction is one or more.
func improper(text string, at int, n numeral) *diag.Finding {
	f := fault(at, at+len(text), "%s is no mixed number: its fraction must be below one, such as `27 1/2`", quote(text))
	if sum := decimal(n.whole).Add(NewRat(digits(n.num), digits(n.den))); !sum.TooLarge() {
		f.Fixes = []diag.Fix{write(at, at+len(text), mixed(sum)+n.unit)}
	}
	return f
}

// quarterFault is for 5/4: a length, or the trade's name for a thickness of rough boards.
func quarterFault(text string, at int, n numeral) *diag.Finding {
	length := mixed(NewRat(digits(n.num), digits(n.den))) + n.unit
	f := fault(at, at+len(text), "%s reads two ways: as a length it is %s, and rough boards are named by `quarters %s`",
		quote(text), quote(length), n.num+"/4")
	f.Fixes = []diag.Fix{
		write(at, at+len(text), length),
		write(at, at+len(text), "quarters "+n.num+"/4"),
	}
	return f
}

// mixed shows a fraction as makers write it: 1 1/4.
func mixed(r Rat) string {
	floor, ok := r.Floor()
	if !ok || r.IsInt() || floor == 0 {
		return r.String()
	}
	return fmt.Sprintf("%d %s", floor, r.Sub(whole(floor)))
}

func unitFault(unit string, at int) *diag.Finding {
	f := fault(at, at+len(unit), "%s is no unit: there are `mm cm m in ft`, `lb kg`, `deg`, `F C`, `%%`, `psf psi`, `min h d` and their like", quote(unit))
	for u, facts := range units {
		for _, name := range facts.names {
			if strings.EqualFold(name, strings.TrimSuffix(unit, "s")) || strings.EqualFold(name, unit) {
				f.Fixes = append(f.Fixes, write(at, at+len(unit), units[u].names[0]))
			}
		}
	}
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
