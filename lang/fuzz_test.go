package lang

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
)

func seed(f *testing.F) {
	one := func(text string) { f.Add(text) }
	one(fixture(f, "cabinet.plan"))
	one(fixture(f, "format/messy.plan"))
	for _, name := range []string{"lines", "missing-close", "missing-open", "stray", "bytes"} {
		one(fixture(f, "faults/"+name+".plan"))
	}
	one("let sum = (a + # in\n  # own\n  2' 6 1/2\" x 3,\n b)\n")
	one("a \ufeff {\ufeff\x80 ½\u00d7½")
	one("\ufeffa { b x 2 ; c \"\\\"\" }\r\n} {")
}

// Whatever the text, every place is inside it, and every line that no finding names is
// kept: it says the same when it is read alone.
func FuzzParse(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		tree, found := parse(t, text)
		faults := 0
		var count func(body []*Statement)
		count = func(body []*Statement) {
			for _, st := range body {
				if st.Faulty {
					faults++
				}
				if st.Block != nil {
					count(st.Block.Body)
				}
			}
		}
		count(tree.Body)
		if faults > 0 && len(found) == 0 {
			t.Fatalf("%q: a faulty line without a finding", text)
		}
		if lines := strings.Count(text, "\n") + 1; len(found) > 2*(lines+strings.Count(text, ";")+strings.Count(text, "{")+strings.Count(text, "}")) {
			t.Fatalf("%q: %d findings", text, len(found))
		}
		for _, finding := range found {
			for _, fix := range finding.Fixes {
				if fix.Safe {
					checkSafe(t, tree.File, finding, fix)
				}
			}
		}
	})
}

// checkSafe holds a safe mend to making no more faults than there were.
func checkSafe(t *testing.T, file *diag.File, f diag.Finding, fix diag.Fix) {
	_, before := Parse(file)
	mended, err := diag.Apply(file, fix.Edits)
	if err != nil {
		t.Fatal(err)
	}
	if _, after := Parse(diag.NewFile(file.Name, mended)); len(after) > len(before)+1 {
		t.Fatalf("%q: %s makes %d findings of %d", file.Text, fix.Title, len(after), len(before))
	}
}

func FuzzFormat(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		if _, found := parse(t, text); len(found) == 0 {
			checkFormat(t, text)
		}
	})
}
