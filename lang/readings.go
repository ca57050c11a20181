package lang

// What reads two ways, or nearly says a number: both readings are shown, and the maker
// chooses.

import (
	"fmt"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"plancheck/internal/diag"
)

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
	f.Fixes = []diag.Fix{rewrite(at, next.Pos.Offset, "- ", quote(minus))}
	second := "(-" + next.Value + ")"
	switch {
	case makeMixed(before, next):
		second = next.Value
	case p.depth > 0 || next.Type == anOpen || next.Type == aCall:
		return f
	}
	f.Fixes = append(f.Fixes, rewrite(at, end(next), second, quote(before.Value+" "+second)))
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
	if makeMixed(p.last, next) {
		f.Message = quote(p.last.Value+"-"+next.Value) + " reads two ways: a mixed number has a blank, a subtraction blanks on both sides of `-`"
		mixed := p.last.Value + " " + next.Value
		f.Fixes = []diag.Fix{rewrite(p.last.Pos.Offset, end(next), mixed, quote(mixed)), minus}
		return f
	}
	f.Fixes = []diag.Fix{minus}
	return f
}

// makeMixed reports whether two numbers make a mixed one: 27 and 1/2.
func makeMixed(a, b *lexer.Token) bool {
	n, _ := scanNumber(b.Value, 0)
	return a.Type == aNumber && allDigits(a.Value) && b.Type == aNumber && n.whole == "" && n.feet == "" && !n.slope
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
