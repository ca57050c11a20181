package report_test

import (
	"bytes"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"plancheck/internal/diag"
	"plancheck/internal/report"
	"plancheck/rules"
)

func sarif(t *testing.T, o *report.Outcome) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := report.SARIF(&b, o, "1.2.3"); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestSARIF(t *testing.T) {
	o := outcome()
	o.Failures = []report.Failure{{Path: "lost.plan", Err: errors.New("there is no such file or folder")}}
	got := sarif(t, o)
	golden(t).Assert(t, "sarif", got)
	validSARIF(t, got)
	validSARIF(t, sarif(t, &report.Outcome{}))
}

// Every rule has what a code host shows of it.
func TestSARIFOfEveryRule(t *testing.T) {
	o := &report.Outcome{}
	for _, r := range rules.All {
		file := diag.NewFile("a b/½.plan", "rail\n")
		o.Findings = append(o.Findings, diag.Finding{Rule: r.Name, Severity: r.Severity, Message: r.Summary, Span: diag.Span{File: file, End: 4}})
	}
	got := sarif(t, o)
	validSARIF(t, got)
	for _, want := range []string{`"uri": "a%20b/%C2%BD.plan"`, `"endColumn": 5`} {
		if !bytes.Contains(got, []byte(want)) {
			t.Errorf("no %s", want)
		}
	}
	if bytes.Contains(got, []byte(`"text": ""`)) {
		t.Error("a rule has nothing to show")
	}
}

// validSARIF holds a log against the schema of the standard, as its validator ships it.
func validSARIF(t *testing.T, log []byte) {
	t.Helper()
	schema, err := jsonschema.NewCompiler().Compile("../../fixtures/report/sarif-2.1.0.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(log))
	if err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(v); err != nil {
		t.Error(err)
	}
}

func TestFingerprintsSurviveEditsElsewhere(t *testing.T) {
	findings := func(text string) []diag.Finding {
		f := diag.NewFile("a.plan", text)
		return []diag.Finding{
			{Rule: "syntax", Span: at(f, "?")},
			{Rule: "rail-length", Subject: "leaf.head", Span: at(f, "head"), Message: "cut 14 but must be 15"},
			{Rule: "rail-length", Subject: "leaf.head", Span: at(f, "head"), Message: "its other end"},
			{Rule: "rail-length", Subject: "leaf.foot", Span: at(f, "foot")},
		}
	}
	before := report.Fingerprints(findings("rail ?\nhead 2\nfoot 3\n"), report.Named)
	after := report.Fingerprints(findings("# a remark\nstile left 2\n  rail  ?\nhead 2 1/2\n\nfoot 3\n"), report.Named)
	if !slices.Equal(before, after) {
		t.Errorf("\n got %v\nwant %v", after, before)
	}
	slices.Sort(before)
	if len(slices.Compact(before)) != 4 {
		t.Error("two findings have one fingerprint")
	}
	for _, p := range after {
		if len(p) != 32 || strings.Trim(p, "0123456789abcdef") != "" {
			t.Errorf("%q is no fingerprint", p)
		}
	}
}
