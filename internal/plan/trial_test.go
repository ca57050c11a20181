package plan_test

// How a small plan is tried: its text, the sizes that it must come to, and what must be
// found in it.

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

// trial is one small plan.
type trial struct {
	name  string
	text  string
	files map[string]string // the files that it uses, by name
	sizes byHand            // of these paths: long x wide x thick, or wide x high x deep
	named byHand            // what these expressions come to, asked for before anything else is worked out
	found []string          // parts of the messages, in order
}

// try works out every plan behind the same first lines, once for its sizes and once more for
// what its names come to.
func try(t *testing.T, before string, trials []trial) {
	t.Helper()
	for _, test := range trials {
		t.Run(test.name, func(t *testing.T) {
			p, found := resolveFiles(before+test.text, test.files)
			sizes := sizesOf(p)
			for path, want := range test.sizes {
				if sizes[path] != want {
					t.Errorf("%s: got %q, by hand %q", path, sizes[path], want)
				}
			}
			if test.named != nil {
				found = asked(t, before+test.text, test)
			}
			matches := len(found) == len(test.found)
			for i := range min(len(found), len(test.found)) {
				matches = matches && strings.Contains(found[i], test.found[i])
			}
			if !matches {
				t.Errorf("found\n\t%s\nwant\n\t%s", strings.Join(found, "\n\t"), strings.Join(test.found, "\n\t"))
			}
		})
	}
}

// asked puts a let for each expression before the plan, and compares what they come to.
func asked(t *testing.T, text string, test trial) []string {
	var lets strings.Builder
	expressions := slices.Sorted(maps.Keys(test.named))
	for i, e := range expressions {
		fmt.Fprintf(&lets, "let asked-%d = %s\n", i, e)
	}
	p, found := resolveFiles(lets.String()+text, test.files)
	for i, e := range expressions {
		got := "?"
		v := p.Lets[i].Value
		if l, ok := v.Length(); ok && (v.Dim == lang.Length || v.Sign() != 0) {
			got = p.Show(l)
		}
		if got != test.named[e] {
			t.Errorf("%s: got %q, by hand %q", e, got, test.named[e])
		}
	}
	return found
}

// resolveText works out a text that stands by itself, and gives what was found in it as lines.
func resolveText(text string) (*plan.Plan, []string) { return resolveFiles(text, nil) }

func resolveFiles(text string, files map[string]string) (*plan.Plan, []string) {
	tree, faults := lang.Parse(diag.NewFile("text.plan", text))
	p, more := plan.Resolve(tree, func(_ *diag.File, name string) (*diag.File, error) {
		if text, ok := files[name]; ok {
			return diag.NewFile(name, text), nil
		}
		return nil, fmt.Errorf("there is no such file")
	})
	var found []string
	for _, f := range append(faults, more...) {
		found = append(found, f.Message)
	}
	return p, found
}
