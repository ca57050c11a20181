package report_test

import (
	"os"
	"path/filepath"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/rules"
)

// Every tenon of the whole pieces has its cut, its mortise and its haunch, as often as its frame is
// made: both ends of four rails, in 2 doors and 2 sides of the wardrobe, and so on. A loose tenon has a
// mortise in both parts.
func TestSetUpsCount(t *testing.T) {
	for _, piece := range []struct {
		name string
		want map[string]int
	}{
		{"cabinet", map[string]int{"tenon": 2 * 2 * 2, "mortise": 2 * 2 * 2, "housing": 2*2 + 2 + 2*2 + 2}},
		{"table", map[string]int{"tenon": 2*2 + 2*2, "mortise": 4*2 + 2*2*2}},
		{"wardrobe", map[string]int{"tenon": (2 + 2) * 3 * 2, "mortise": (2 + 2) * 3 * 2}},
		{"desk", map[string]int{"rabbet": 2 * 2, "bolt hole": 2*2 + 4}},
	} {
		p := project(t, piece.name)
		got := make(map[string]int)
		for _, s := range report.SetUps(p) {
			sum := 0
			for _, c := range s.Cuts {
				sum += c.Count
			}
			if sum != s.Count {
				t.Errorf("%s: %s: its rows come to %d cuts, not to %d", piece.name, s.Kind, sum, s.Count)
			}
			got[s.Kind] += s.Count
		}
		for kind, want := range piece.want {
			if got[kind] != want {
				t.Errorf("%s: %d cuts are a %s, want %d", piece.name, got[kind], kind, want)
			}
		}
	}
}

func project(t *testing.T, name string) *plan.Plan {
	t.Helper()
	at := filepath.Join("../../fixtures/projects", name, "sound.plan")
	text, err := os.ReadFile(at)
	if err != nil {
		t.Fatal(err)
	}
	p, _ := rules.Run(diag.NewFile(at, string(text)), func(_ *diag.File, used string) (*diag.File, error) {
		text, err := os.ReadFile(filepath.Join(filepath.Dir(at), used))
		return diag.NewFile(used, string(text)), err
	})
	return p
}
