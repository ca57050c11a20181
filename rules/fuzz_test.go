package rules_test

// Whatever the text, a check ends, and its findings are what findings must be.

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/lang"
	"plancheck/rules"
)

// longestFuzzed bounds the texts that are tried, and with them the time that one takes.
const longestFuzzed = 1 << 14

// seed gives a fuzz target every plan that a test reads, every example of a rule, and a few
// texts that lean on themselves.
func seed(f *testing.F) {
	f.Helper()
	err := filepath.WalkDir("../fixtures", func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".plan" {
			return err
		}
		text, err := os.ReadFile(path)
		f.Add(string(text))
		return err
	})
	if err != nil {
		f.Fatal(err)
	}
	for _, r := range rules.All {
		f.Add(r.Bad)
		f.Add(r.Good)
	}
	for _, text := range []string{
		"let a = b\nlet b = c.wide\ncase c { wide a ; high a ; deep 3 ; across { side l ; open o } }\n",
		"assembly a { across { assembly b part b ; open o } }\nassembly b { down { assembly a part a } }\n",
		"frame f { thick 1 ; across { stile a 2 ; door d { leaf f } ; stile b 2 } }\n",
		"pattern p { takes w 3 ; frame f { wide w ; across { stile a 2 ; open o count 3 between muntin 1 } } }\nbuild a from p w b.f.wide mirrored\nbuild b from p\n",
		"layup a { ply b ; ply c }\nlayup b { ply a }\nsheet c { kind mdf ; thick 1/4 }\npart p { of a ; size 3 x 4 x 5 }\n",
		"use \"self.plan\"\nlet a = 3 / (2 - 2) * 4kg\n",
	} {
		f.Add(text)
	}
}

// judge checks a text that may use itself, and nothing else.
func judge(text string) (*folder, []diag.Finding) {
	dir := &folder{texts: map[string]string{"self.plan": text}}
	c := check(dir, "self.plan")
	return dir, c.found
}

func FuzzCheck(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > longestFuzzed {
			return
		}
		dir, found := judge(text)
		for _, finding := range found {
			if rules.Find(finding.Rule) == nil {
				t.Errorf("%q is not in the list of rules", finding.Rule)
			}
			if finding.Severity.String() == "none" || finding.Message == "" || strings.Contains(finding.Message, "\n") {
				t.Errorf("%s says %q with severity %s", finding.Rule, finding.Message, finding.Severity)
			}
			inside(t, finding.Rule, finding.Span)
			for _, n := range finding.Notes {
				inside(t, "a note of "+finding.Rule, n.Span)
			}
			for _, fix := range finding.Fixes {
				applies(t, dir, finding.Rule, fix)
			}
		}
		if _, again := judge(text); render(again) != render(found) {
			t.Errorf("the same text gives other findings the second time\n%s\nand\n%s", render(found), render(again))
		}
	})
}

// inside holds a place to standing in the text of its file.
func inside(t *testing.T, what string, s diag.Span) {
	t.Helper()
	if s.File == nil || s.Start < 0 || s.End < s.Start || int(s.End) > len(s.File.Text) {
		t.Errorf("%s stands outside the text, at %d to %d", what, s.Start, s.End)
	}
}

// applies holds a mend to being one that can be made.
func applies(t *testing.T, dir *folder, rule string, fix diag.Fix) {
	t.Helper()
	if fix.Title == "" {
		t.Errorf("a mend of %s has no title", rule)
	}
	for _, file := range dir.read {
		var edits []diag.Edit
		for _, e := range fix.Edits {
			if e.Span.File == file {
				edits = append(edits, e)
			}
		}
		if _, err := diag.Apply(file, edits); err != nil {
			t.Errorf("mend %q of %s: %v", fix.Title, rule, err)
		}
	}
}

// The formatter moves blanks and nothing else: what was found in a plan is found in it still.
func FuzzFormatSamePiece(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > longestFuzzed || strings.Contains(text, "use") {
			return // another file stays as it is
		}
		tree, faults := lang.Parse(diag.NewFile("self.plan", text))
		if len(faults) > 0 {
			return
		}
		formatted := lang.Format(tree)
		_, before := judge(text)
		_, after := judge(formatted)
		if want, got := about(before), about(after); !slices.Equal(want, got) {
			t.Errorf("found before\n%s\nafter\n%s\nin\n%s", strings.Join(want, "\n"), strings.Join(got, "\n"), formatted)
		}
	})
}
