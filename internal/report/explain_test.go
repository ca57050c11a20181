package report_test

import (
	"strings"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/report"
	"plancheck/internal/wood"
	"plancheck/lang"
	"plancheck/rules"
)

func TestExplainShowsFigures(t *testing.T) {
	got := report.Explain(&rules.Rule{
		Name: "thin-tenon", Severity: diag.Warning, Summary: "a tenon is thin", Doc: "It snaps.\n", Bad: "bad\n", Good: "good\n",
		Figures: []*rules.Figure{
			{Name: "least", Why: "what holds", Basis: rules.Practice, Source: "benches", Dim: lang.Length, Length: wood.Inch * 3 / 16},
			{Name: "share", Why: "of the rail", Basis: rules.Published, Source: "a handbook", Dim: lang.Percent, Number: 33.5},
			{Name: "load", Why: "on it", Basis: rules.Published, Source: "a handbook", Dim: lang.Pressure, Number: 50 * wood.PSI / 144},
			{Name: "clamped", Why: "with", Basis: rules.Published, Source: "a handbook", Dim: lang.Pressure, Number: 150 * wood.PSI},
			{Name: "weight", Why: "of it", Basis: rules.Published, Source: "a handbook", Dim: lang.Weight, Number: 15 * wood.Pound},
		},
	})
	for _, want := range []string{
		"thin-tenon (warning): a tenon is thin\n\nIt snaps.\n",
		"\nPut right:\n\n  good\n",
		"least 3/16 in (4.763 mm): what holds (common practice, no source: benches)\n    otherwise in your shop: limit thin-tenon least VALUE",
		"share 33.5%: of the rail (published: a handbook)\n",
		"load 50psf (2.39kPa): on it", "clamped 150psi (1030kPa): with", "weight 15lb (6.8kg): of it",
		`  allow thin-tenon "the reason"`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if strings.Contains(got, "limit thin-tenon share") {
		t.Error("a published figure is offered for setting")
	}
}
