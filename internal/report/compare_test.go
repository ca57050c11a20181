package report_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/report"
	"plancheck/rules"
)

func revision(t *testing.T, name, text string) report.Revision {
	t.Helper()
	p, found := rules.Run(diag.NewFile(name, text), nil)
	return report.Revision{Name: name, Plan: p, Findings: found}
}

// A whole piece against itself is the same; with one figure changed, what follows from it is told.
func TestCompareAWholePiece(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("../../fixtures/projects/cabinet/sound.plan"))
	if err != nil {
		t.Fatal(err)
	}
	old := revision(t, "old.plan", string(text))
	if c := report.Compare(old, revision(t, "new.plan", "# a remark\n"+string(text))); len(c.Changes)+len(c.NewFound)+len(c.GoneFound) > 0 {
		t.Errorf("the same piece has changed: %v", c.Changes)
	}
	for _, edit := range [][2]string{
		{"throw 1/4", "throw 3/16"},
		{"hinge brass in-line", "hinge brass ends 2"},
		{"ply  skin along", "ply skin across"},
		{"haunch 1/2", "haunch 5/8"},
		{"slide side", "slide side ; handle pull"},
	} {
		changed := strings.Replace(string(text), edit[0], edit[1], 1)
		if changed == string(text) {
			t.Fatalf("the cabinet does not say %q", edit[0])
		}
		if c := report.Compare(old, revision(t, "new.plan", changed)); len(c.Changes) == 0 {
			t.Errorf("%q in place of %q is no change", edit[1], edit[0])
		}
	}
	wider := strings.Replace(string(text), "wide  62", "wide  63", 1)
	var b bytes.Buffer
	if err := report.CompareText(&b, report.Compare(old, revision(t, "new.plan", wider)), false); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "compare", b.Bytes())
}

// Slats of a row that all change in one way are one change.
func TestCompareARow(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("../../fixtures/projects/bed/sound.plan"))
	if err != nil {
		t.Fatal(err)
	}
	more := strings.Replace(string(text), "thick 20 ; count 15", "thick 18 ; count 16", 1)
	c := report.Compare(revision(t, "old.plan", string(text)), revision(t, "new.plan", more))
	want := report.Change{Section: report.Parts, Name: "bed.lath", Was: "914 x 70 x 20 of ash, 15 of them", Is: "914 x 70 x 18 of ash, 16 of them"}
	if len(c.Changes) != 1 || c.Changes[0] != want {
		t.Errorf("got %v, want %v alone", c.Changes, want)
	}
}

func TestMarkdownMarksNothingUp(t *testing.T) {
	c := &report.Comparison{Changes: []report.Change{{Section: report.Parts, Name: "a|b*c", Was: "<i>", Is: "[x](y)\n# z"}}}
	var b bytes.Buffer
	if err := report.CompareMarkdown(&b, c); err != nil {
		t.Fatal(err)
	}
	if want := `| a\|b\*c | \<i\> | \[x\](y)\\n\# z |`; !strings.Contains(b.String(), want) {
		t.Errorf("no %s in\n%s", want, b.String())
	}
}
