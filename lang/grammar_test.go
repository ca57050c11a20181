package lang

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
)

// What each kind of line is read as.
func TestShapes(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"shelf middle", "shelf middle"},
		{"button x 8", "button x 8"},
		{"button x8", "button x 8"},
		{"clamp bar x 6", "clamp (x bar 6)"},
		{"part leg x 4 { of oak }", "part (x leg 4) {\n  of oak"},
		{"part leg x 2 + 2", "part (x leg (+ 2 2))"},
		{"button x 2 * sides", "button x (* 2 sides)"},
		{"size 30x12x3/4", "size (x 30 12 3/4)"},
		{"size 18mmx30mm", "size (x 18mm 30mm)"},
		{"size 30 x 12 - 1 x 3/4", "size (x 30 (- 12 1) 3/4)"},
		{"at 3, 14", "at (list 3 14)"},
		{"at 3 , a", "at (list 3 a)"},
		{"each side, top, shelf edging front cherry 1/4", "each (list side top shelf) edging front cherry 1/4"},
		{"way 30 x 78, 34 x 78", "way (list (x 30 78) (x 34 78))"},
		{"joint tenon thick 5/16 long 1 1/4", "joint tenon thick 5/16 long 5/4"},
		{"reveal 1 1/16", "reveal 17/16"},
		{"let gap = 1/8", "let gap = 1/8"},
		{"let total=a + 2 * b", "let total = (+ a (* 2 b))"},
		{"let w = (wide)", "let w = (group wide)"},
		{"let box = 3 x 4, 5", "let box = (list (x 3 4) 5)"},
		{"wide carcass.wide / 2", "wide (/ carcass.wide 2)"},
		{"wide a - b - c", "wide (- (- a b) c)"},
		{"wide a-b", "wide a-b"},
		{"wide a+b", "wide (+ a b)"},
		{"wide 27+1/2", "wide (+ 27 1/2)"},
		{"wide 3/a", "wide (/ 3 a)"},
		{"wide 1 / 2", "wide (/ 1 2)"},
		{"wide (a + 3) * 2", "wide (* (group (+ a 3)) 2)"},
		{"wide max(a, 3 * b, 1/2) - min(c)", "wide (- (max a (* 3 b) 1/2) (min c))"},
		{"wide round(a, 1/16) + abs(b)", "wide (+ (round a 1/16) (abs b))"},
		{"dry -5C 40%", "dry (neg 5C) 40%"},
		{"set -1/8", "set (neg 1/8)"},
		{"set +1/8", "set (pos 1/8)"},
		{"set 3 * -a", "set (* 3 (neg a))"},
		{"set 3 - -2, -1", "set (list (- 3 (neg 2)) (neg 1))"},
		{"set (.5) * -.5 x.5", "set (x (* (group 1/2) (neg 1/2)) 1/2)"},
		{"set (-a)", "set (group (neg a))"},
		{"wide (a +\n  b\n  - c)", "wide (group (- (+ a b) c))"},
		{"wide (\n a # why\n + b\n)\nhigh 3", "wide (group (+ a b))\nhigh 3"},
		{`check "fits" a.wide >= 17 1/2`, `check "fits" (>= a.wide 35/2)`},
		{`check "a" a == b within 1/8`, `check "a" (== a b) within 1/8`},
		{`check "a" (a + b) != c`, `check "a" (!= (group (+ a b)) c)`},
		{`plan "say \"so\" \\ 3"`, `plan "say \"so\" \\ 3"`},
		{`holds 3/4" "text"`, `holds 3/4in "text"`},
		{"size L 4", "size L 4"},
		{"hinge brass 3 in-line", "hinge brass 3 in-line"},
		{"turn 36 into 34", "turn 36 into 34"},
		{"for 5 min(a, b)", "for 5 (min a b)"},
		{"quarters 5/4", "quarters 5/4"},
		{"board oak x 6 { quarters 4/4 ; wide 8 }", "board (x oak 6) {\n  quarters 1\n  wide 8"},
		{"thick 11/2", "thick 11/2"},
		{"shop 66F 45%", "shop 66F 45%"},
		{"slope 1:7", "slope 1/7:"},
		{"a { b { c } d } e", "a {\n  b {\n    c\n  d\ne"},
		{"a{b;c}", "a {\n  b\n  c"},
		{"a ;; b ;", "a\nb"},
		{"a # b { c", "a"},
		{"Tür größe", "Tür größe"},
		{"x1y 3", "x1y 3"},
		{"\ufeffa 1\r\nb 2\r\n", "a 1\nb 2"},
		{"", ""},
		{"# alone", ""},
	} {
		if got := strings.TrimSuffix(outline(sound(t, c.text)), "\n"); got != c.want {
			t.Errorf("%q is read as\n%s\nnot as\n%s", c.text, got, c.want)
		}
	}
}

// What is refused: a piece of the message, and what each mend makes of the line ("" for
// one that the maker must do).
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		text, message string
		mends         []string
	}{
		{"wide 27-1/2", "reads two ways", []string{"wide 27 1/2", "wide 27 - 1/2"}},
		{"wide 27 -1/2", "reads two ways", []string{"wide 27 - 1/2", "wide 27 1/2"}},
		{"wide 27.5-1/2", "blanks on both sides", []string{"wide 27.5 - 1/2"}},
		{"wide 27 -b", "reads two ways", []string{"wide 27 - b", "wide 27 (-b)"}},
		{"wide 27mm -1/2in", "reads two ways", []string{"wide 27mm - 1/2in", "wide 27mm (-1/2in)"}},
		{"wide a -(b)", "reads two ways", []string{"wide a - (b)"}},
		{"wide 2/3-1/2", "blanks on both sides", []string{"wide 2/3 - 1/2"}},
		{"wide a -b", "reads two ways", []string{"wide a - b", "wide a (-b)"}},
		{"wide (a -b)", "reads two ways", []string{"wide (a - b)"}},
		{"wide 27-b", "blanks on both sides", []string{"wide 27 - b"}},
		{"wide a- b", "blanks on both sides", []string{"wide a - b"}},
		{"wide 18mm-3mm", "blanks on both sides", []string{"wide 18mm - 3mm"}},
		{"wide (a)-b", "blanks on both sides", []string{"wide (a) - b"}},
		{"at 3,14", "reads two ways", []string{"at 3, 14", "at 3.14"}},
		{"long 1,250", "reads two ways", []string{"long 1, 250", "long 1.250", "long 1250"}},
		{"long 27 11/2", "below one", []string{"long 32 1/2"}},
		{"long 1/0", "divides by zero", nil},
		{"slope 1:0", "divides by zero", nil},
		{"long 3 4", "name the second", []string{""}},
		{"groove 1/4 1/2", "name the second", []string{""}},
		{"button x 8 3", "name the second", []string{""}},
		{"long 2' 6", "feet and inches", []string{`long 2' 6"`}},
		{"long 2ft 6 1/2in", "feet and inches", []string{`long 2' 6 1/2"`}},
		{"thick 5/4", "reads two ways", []string{"thick 1 1/4", "thick quarters 5/4"}},
		{"thick 4/4", "reads two ways", []string{"thick 1", "thick quarters 4/4"}},
		{"long 27½", "is written `1/2`", []string{"long 27 1/2"}},
		{"size 30×12½×¾″", "is written `x`", []string{`size 30 x 12 1/2 x 3/4"`}},
		{"long 2′ 6″", "is written `'`", []string{`long 2' 6"`}},
		{"opens 110°", "is written `deg`", []string{"opens 110deg"}},
		{"dry 66°F 45%", "is written", []string{"dry 66F 45%"}},
		{"name “oak”", "is written `\"`", []string{`name "oak"`}},
		{"wide a − b", "is written `-`", []string{"wide a - b"}},
		{"wide 27–1/2", "is written `-`", nil},
		{"wide\u00a027", "odd blank", []string{"wide 27"}},
		{"screw #8 long 1", "gauge 8", []string{"screw gauge 8 long 1", "screw # 8 long 1"}},
		{"wide 3#why", "blank before `#`", []string{"wide 3 #why"}},
		{"wide 18mn", "no unit", nil},
		{"wide 18MM", "no unit", []string{"wide 18mm"}},
		{"carries 20lbs", "no unit", []string{"carries 20lb"}},
		{"wide 1e9999", "no unit", nil},
		{"wide " + strings.Repeat("9", 10_000), "too large", nil},
		{"wide 1." + strings.Repeat("9", 10_000), "too large", nil},
		{"wide 1/" + strings.Repeat("9", 10_000), "too large", nil},
		{"let a 3", "`=` between", []string{"let a = 3"}},
		{"let a", "needs a name", nil},
		{"let a = ", "expected a value after `=`", nil},
		{"let a = 3 b", "ends with its value", nil},
		{"let a b = 3", "one name", nil},
		{"let a = 3 = 4", "one name", nil},
		{"wide = 30", "only in a `let`", []string{"wide 30"}},
		{`check "c" a = b`, "write `==`", []string{`check "c" a == b`}},
		{"let c = 1 < 2", "only in a `check`", nil},
		{`check "c" a < b < c`, "compares once", nil},
		{"wide 3 +", "expected a value after `+`", nil},
		{"wide 3 * / 2", "expected a value after `*`, not `/`", nil},
		{"wide * 2", "expected a value before `*`", nil},
		{"at 3,", "expected a value after `,`", nil},
		{"at , 3", "expected a value before `,`", nil},
		{"size 3 x", "expected a value after `x`", nil},
		{"wide (3 + 4", "not closed", []string{"wide (3 + 4)"}},
		{"wide (3 4)", "name the second", []string{""}},
		{"wide (3, 4)", "a list cannot stand in brackets", nil},
		{"wide ()", "expected a value after `(`", nil},
		{"wide 3)", "closes no bracket", []string{"wide 3"}},
		{"wide half(3)", "no function", []string{"wide half (3)"}},
		{"12 13", "starts with a word", nil},
		{"carcass.upper 3", "plain word", nil},
		{"(a)", "starts with a word", nil},
		{"x 3", "starts with a word", nil},
		{`species "oak`, "ends with `\"`", nil},
		{`species "oa\k"`, "behind a stroke", []string{`species "oa\\k"`}},
		{"wide carcass.3", "a point stands", nil},
		{"wide 27.", "a point stands", nil},
		{"wide 1.5.2", "a point stands", nil},
		{"shelf [3]", "stands nowhere", nil},
		{"shelf @", "stands nowhere", nil},
		{"shelf \x00 a", "U+0000", []string{"shelf  a"}},
		{"shelf \xff", "not UTF-8", nil},
		{"# \xff", "not UTF-8", nil},
		{"name \"a\x01\"", "U+0001", []string{`name "a"`}},
		{"a\rb", "U+000D", []string{"ab"}},
		{"a }", "closes nothing", []string{"a "}},
		{"a { b", "not closed", []string{"a { b }"}},
		{"a {\n  b 1\n", "not closed", []string{"a {\n  b 1\n}\n"}},
		{"{ b }", "of what it opens", nil},
		{"a\n{\n  b\n}\n", "of what it opens", []string{"a {\n\n  b\n}\n"}},
	} {
		file := diag.NewFile("test.plan", c.text)
		tree, found := Parse(file)
		checkPlaces(t, tree, found)
		if len(found) != 1 {
			t.Errorf("%.60q: %d findings", c.text, len(found))
		}
		if len(found) == 0 {
			continue
		}
		f := found[0]
		if !strings.Contains(f.Message, c.message) {
			t.Errorf("%.60q: %s", c.text, f.Message)
		}
		if len(f.Message) > 220 {
			t.Errorf("%.60q: a message of %d bytes", c.text, len(f.Message))
		}
		var mends []string
		for _, fix := range f.Fixes {
			if len(fix.Edits) == 0 {
				mends = append(mends, "")
				continue
			}
			mended, err := diag.Apply(file, fix.Edits)
			if err != nil {
				t.Fatal(err)
			}
			mends = append(mends, mended)
			sound(t, mended)
		}
		if strings.Join(mends, "|") != strings.Join(c.mends, "|") {
			t.Errorf("%.60q: mends are %q, not %q", c.text, mends, c.mends)
		}
	}
}

// One broken line of a hundred costs one finding and itself.
func TestEveryLineForItself(t *testing.T) {
	whole := strings.Split(strings.TrimSpace(fixture(t, "cabinet.plan")), "\n")
	for i, line := range whole {
		bare := strings.TrimSpace(line)
		if bare == "" || bare == "}" || strings.HasPrefix(bare, "#") {
			continue
		}
		broken := append([]string(nil), whole...)
		word, rest, _ := strings.Cut(bare, " ")
		broken[i] = word + " 27-1/2 " + rest
		_, found := parse(t, strings.Join(broken, "\n"))
		if line, _ := firstPlace(found); len(found) != 1 || line != i+1 {
			t.Errorf("%s: %d findings, the first on line %d, not %d", broken[i], len(found), line, i+1)
		}
	}
}

func firstPlace(found []diag.Finding) (line, column int) {
	if len(found) == 0 {
		return 0, 0
	}
	return found[0].Span.Position()
}

// What is nested beyond use, or too long, costs one finding and no stack.
func TestLimits(t *testing.T) {
	const n = 10_000
	for name, text := range map[string]string{
		"blocks":         strings.Repeat("a {\n", n) + strings.Repeat("}\n", n),
		"blocks inline":  strings.Repeat("a { ", n) + strings.Repeat("}", n),
		"brackets":       "a " + strings.Repeat("(", n) + "1" + strings.Repeat(")", n),
		"brackets open":  "a " + strings.Repeat("(", n),
		"brackets lines": "a " + strings.Repeat("(\n", n),
		"functions":      "a " + strings.Repeat("min(", n),
		"signs":          "a " + strings.Repeat("- ", n),
		"sum":            "a 1" + strings.Repeat(" + 1", n),
		"list":           "a 1" + strings.Repeat(", 1", n),
		"values":         "a" + strings.Repeat(" b", n),
		"closing":        strings.Repeat("}", n),
		"quotes":         `a "` + strings.Repeat(`\"`, 100*n),
	} {
		if _, found := parse(t, text); len(found) != 1 {
			t.Errorf("%s: %d findings", name, len(found))
		}
	}
	_, found := parse(t, strings.Repeat("½\n", 3*maxFaults))
	if n := len(found); n > maxFaults+2*windowLines || !strings.Contains(found[n-1].Message, "the rest is not read") {
		t.Errorf("endless faults: %d findings, at last %q", n, found[n-1].Message)
	}
	deep := "a 1" + strings.Repeat(" + 1", maxTokens/2-2)
	if again := Format(sound(t, deep)); again != deep+"\n" {
		t.Error("the longest sum is not written as it stood")
	}
}
