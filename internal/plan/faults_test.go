package plan_test

// One fault in a plan's text makes one finding, or few: a plan in which any one token is
// missing, doubled or garbled is still read, and what leans on the fault is silent.

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

// faultsIn are the findings that a text raises, as lines that can be read.
func faultsIn(text string) []string {
	tree, faults := lang.Parse(diag.NewFile("slip.plan", text))
	_, more := plan.Resolve(tree, nil)
	var lines []string
	for _, f := range append(faults, more...) {
		line, column := f.Span.Position()
		lines = append(lines, fmt.Sprintf("%d:%d: %s", line, column, f.Message))
	}
	return lines
}

// tokens are the places of the words, numbers, texts and marks of a plan.
func tokens(text string) (found [][2]int) {
	for start := 0; start < len(text); {
		end := start + 1
		switch c := text[start]; {
		case c == ' ' || c == '\n':
			start++
			continue
		case c == '#':
			start += strings.IndexByte(text[start:], '\n')
			continue
		case c == '"':
			end = start + 2 + strings.IndexByte(text[start+1:], '"')
		case !strings.ContainsRune("{};,=", rune(c)):
			end = start + strings.IndexAny(text[start:], " \n,;")
		}
		found = append(found, [2]int{start, end})
		start = end
	}
	return found
}

// What is not there is missed once, wherever it is named.
func TestMissedOnce(t *testing.T) {
	tree, _ := lang.Parse(diag.NewFile("text.plan", `frame a { of aok ; wide 20 ; high 30 ; thick 1 ; across { stile l 2 of aok ; open ; stile r 2 } }
frame b { of aok ; wide 20 ; high 30 ; thick 1 ; across { stile l 2 ; open ; stile r 2 } }
wood oak { species "white oak" }
`))
	_, found := plan.Resolve(tree, nil)
	if len(found) != 1 || len(found[0].Notes) != 2 || len(found[0].Fixes) != 1 || len(found[0].Fixes[0].Edits) != 3 {
		t.Errorf("found %+v", found)
	}
}

func TestSingleFaults(t *testing.T) {
	const most = 4 // findings of one fault
	mangle := map[string]func(token string) string{
		"deleted": func(string) string { return "" },
		"doubled": func(token string) string { return token + " " + token },
		"garbled": func(token string) string {
			if last := len(token) - 1; last > 0 {
				return token[:last/2] + "q" + token[last/2:]
			}
			return "q"
		},
	}
	text, err := os.ReadFile("../../fixtures/projects/cabinet/slip.plan")
	if err != nil {
		t.Fatal(err)
	}
	whole := string(text)
	if found := faultsIn(whole); len(found) > 0 {
		t.Fatalf("found %q", found)
	}
	counts := make(map[int]int)
	for how, change := range mangle {
		for _, at := range tokens(whole) {
			token := whole[at[0]:at[1]]
			mangled := whole[:at[0]] + change(token) + whole[at[1]:]
			found := faultsIn(mangled)
			counts[len(found)]++
			if len(found) > most {
				line := strings.Count(whole[:at[0]], "\n") + 1
				t.Errorf("line %d: %q %s: %d findings\n\t%s", line, token, how, len(found), strings.Join(found, "\n\t"))
			}
		}
	}
	for n := range slices.Max(slices.Collect(maps.Keys(counts))) + 1 {
		t.Logf("%d findings: %d times", n, counts[n])
	}
}
