package lang

import (
	"fmt"
	"strings"
	"testing"

	"plancheck/internal/diag"
)

// What a person reads for a broken plan, and what is left of its tree.
func TestFaultsGolden(t *testing.T) {
	for name, text := range plans(t, "faults") {
		t.Run(name, func(t *testing.T) {
			file := diag.NewFile(name+".plan", text)
			tree, found := Parse(file)
			checkPlaces(t, tree, found)
			var out strings.Builder
			for _, f := range found {
				line, column := f.Span.Position()
				fmt.Fprintf(&out, "%d:%d: %s\n", line, column, f.Message)
				for _, n := range f.Notes {
					line, column := n.Span.Position()
					fmt.Fprintf(&out, "  %d:%d: %s\n", line, column, n.Message)
				}
				for _, fix := range f.Fixes {
					fmt.Fprintf(&out, "  mend: %s\n", fix.Title)
				}
			}
			out.WriteString("\n")
			out.WriteString(outline(tree))
			golden(t, "faults").Assert(t, name, []byte(out.String()))
		})
	}
}

// slip is one way to spoil a plan at a token: it returns what stands there instead.
type slip struct {
	name string
	at   func(token string) (instead string, applies bool)
	// How many other statements may be lost, on average and at worst; and how many
	// findings one slip may raise, on average.
	average, worst, findings float64
}

func without(signs string) func(string) (string, bool) {
	return func(token string) (string, bool) { return "", strings.Contains(signs, token) }
}

func before(sign string) func(string) (string, bool) {
	return func(token string) (string, bool) { return sign + " " + token, true }
}

var slips = []slip{
	{"a missing }", without("}"), 0, 0, 1},
	{"a missing {", without("{"), 0, 0, 1},
	{"a missing ;", without(";"), 0, 0, 1},
	{"a missing quote", func(token string) (string, bool) {
		return strings.TrimPrefix(token, `"`), strings.HasPrefix(token, `"`)
	}, 0, 0, 1},
	{"a missing word or number", func(token string) (string, bool) {
		return "", !strings.ContainsAny(token, `{};"`)
	}, 0.3, 30, 0.3}, // a brace whose line has no word left is taken for that of the line above
	{"a stray {", before("{"), 1.5, 44, 1.7},
	{"a stray }", before("}"), 0, 0, 1.3},
	{"a stray quote", before(`"`), 0, 0, 1.1},
	{"a stray (", before("("), 0, 0, 1},
	{"a stray )", before(")"), 0, 0, 1},
	{"a stray sign", before("@"), 0, 0, 1},
	{"a stray dash", before("-"), 0, 0, 1},
	{"a stray =", before("="), 0, 0, 1},
	{"a stray number", before("3"), 0, 0, 1},
}

// A slip of one token costs its own line and hardly anything else. The cabinet is
// spoiled at each of its tokens in turn, in each way.
func TestSlipsLoseLittle(t *testing.T) {
	text := fixture(t, "cabinet.plan")
	tokens := tokensOf(text)
	whole := statementKeys(sound(t, text))
	trials := 0
	for _, s := range slips {
		n, lost, worst, findings := 0, 0, 0, 0
		worstAt := ""
		for _, token := range tokens {
			instead, applies := s.at(token.Text())
			if !applies {
				continue
			}
			spoiled := text[:token.Start] + instead + text[token.End:]
			tree, found := parse(t, spoiled)
			line, _ := token.Position()
			lose := loss(whole, statementKeys(tree), line)
			n++
			lost += lose
			findings += len(found)
			if lose > worst {
				worst, worstAt = lose, fmt.Sprintf("%d: %s", line, token.File.Line(line))
			}
		}
		trials += n
		average, raised := float64(lost)/float64(n), float64(findings)/float64(n)
		t.Logf("%-24s %4d trials: %.2f others lost on average, %d at worst; %.2f findings  %s", s.name, n, average, worst, raised, worstAt)
		if average > s.average || float64(worst) > s.worst || raised > s.findings {
			t.Errorf("%s loses more than it may", s.name)
		}
	}
	t.Logf("%d trials", trials)
}

// tokensOf are the tokens of a text, braces and semicolons among them.
func tokensOf(text string) (spans []diag.Span) {
	s := newScanner(diag.NewFile("cabinet.plan", text))
	at := 0
	add := func(start, end int) {
		for i := at; i < start; i++ { // what stands between two tokens of the lexer
			if strings.IndexByte("{};", text[i]) >= 0 {
				spans = append(spans, s.span(i, i+1))
			}
			if text[i] == '#' {
				i += strings.IndexByte(text[i:], '\n')
			}
		}
		spans = append(spans, s.span(start, end))
		at = end
	}
	for s.fill() {
		for _, token := range s.tokens[:s.count] {
			if token.Type != anEnd {
				add(token.Pos.Offset, token.Pos.Offset+len(token.Value))
			}
		}
	}
	return spans
}

// statementKeys counts the statements of a tree by their lines, those of the blocks
// around them, and what they say.
func statementKeys(t *Tree) map[statementKey]int {
	keys := map[statementKey]int{}
	var body func(statements []*Statement, around string)
	body = func(statements []*Statement, around string) {
		for _, st := range statements {
			line, _ := st.Span.Position()
			keys[statementKey{line, around, strings.TrimSuffix(outlineHead(st), " (faulty)")}]++
			if st.Block != nil {
				body(st.Block.Body, fmt.Sprintf("%s/%d", around, line))
			}
		}
	}
	body(t.Body, "")
	return keys
}

type statementKey struct {
	line         int
	around, says string
}

// loss counts what is missing, but for the line that was spoiled.
func loss(whole, left map[statementKey]int, spoiled int) (n int) {
	for key, count := range whole {
		if key.line != spoiled {
			n += max(0, count-left[key])
		}
	}
	return n
}
