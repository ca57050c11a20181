package report_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/sebdah/goldie/v2"

	"plancheck/internal/diag"
	"plancheck/internal/report"
)

func golden(t *testing.T) *goldie.Goldie {
	t.Helper()
	return goldie.New(t, goldie.WithFixtureDir("../../fixtures/report"))
}

const cabinet = `frame leaf-frame {
  across {
    stile hinge-side 2 1/4
    rail  head 2 1/4 cut 14 5/16
  }
}
# ½ a remark
shelf low
`

// at is the span of the first place where a text stands.
func at(f *diag.File, text string) diag.Span {
	i := strings.Index(f.Text, text)
	if i < 0 {
		panic("not in the file: " + text)
	}
	return diag.Span{File: f, Start: int32(i), End: int32(i + len(text))}
}

// outcome has one finding of each sort that a report must lay out.
func outcome() *report.Outcome {
	plan := diag.NewFile("cabinet.plan", cabinet)
	shop := diag.NewFile("shop.plan", "climate { shop 7% }\n")
	cut := at(plan, "14 5/16")
	return &report.Outcome{
		Findings: []diag.Finding{
			{
				Rule: "rail-length", Severity: diag.Error, Subject: "leaf-frame.head", Span: at(plan, "head"),
				Message: `rail "head" is cut 14 5/16 but must be 16 13/16`,
				Working: diag.Working{
					{Op: diag.Start, Value: "19", Label: "opening carcass.left-door"},
					{Op: diag.Minus, Value: "3/32", Label: "reveal, hinge side"},
					{Op: diag.Minus, Value: "3/32", Label: "reveal, latch side"},
					{Op: diag.Equals, Value: "18 13/16", Label: "width of leaf-frame"},
					{Op: diag.Minus, Value: "2 1/4", Label: "stile hinge-side"},
					{Op: diag.Minus, Value: "2 1/4", Label: "stile latch-side"},
					{Op: diag.Equals, Value: "14 5/16", Label: "between shoulders"},
					{Op: diag.Plus, Value: "1 1/4", Label: "tenon into hinge-side"},
					{Op: diag.Plus, Value: "1 1/4", Label: "tenon into latch-side"},
					{Op: diag.Equals, Value: "16 13/16", Label: "needed"},
				},
				Fixes: []diag.Fix{{
					Title: "write `cut 16 13/16`",
					Edits: []diag.Edit{{Span: cut, Text: "16 13/16"}},
				}},
			},
			{
				Rule: "shelf-load", Severity: diag.Warning, Span: at(plan, "shelf low"),
				Message: `shelf "low" carries a load that nobody states`,
				Working: diag.Working{
					{Value: "100.5", Label: "over all"},
					{Op: diag.Minus, Value: "0.2362", Label: "back (the sheet's actual thickness)"},
					{Op: diag.Over, Value: "2", Label: "bays"},
					{Label: "which is about what a long row of books comes to"},
					{Op: diag.Equals, Value: "50.1319 ≈ 50 1/8", Label: "each"},
					{Op: diag.Versus, Value: "48"},
				},
				Notes: []diag.Note{
					{Span: at(plan, "stile"), Message: "it stands between this"},
					{Span: at(shop, "shop"), Message: "and the air of this"},
					{Message: "common practice, no source"},
				},
				Fixes: []diag.Fix{
					{Title: "write `load 40psf`"},
					{Title: "leave it out", Safe: true, Edits: []diag.Edit{{Span: at(plan, "shelf low"), Text: ""}}},
				},
			},
			{Rule: "no-climate", Severity: diag.Advice, Message: "the plan says nothing of the air"},
		},
		Checked: report.Checked{Files: 3, Parts: 12, Joints: 9, Unchecked: 4},
	}
}

func text(t *testing.T, o *report.Outcome, colored bool) string {
	t.Helper()
	var b bytes.Buffer
	if err := report.Text(&b, o, colored); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextReadsAsOnPaper(t *testing.T) {
	golden(t).Assert(t, "text", []byte(text(t, outcome(), false)))
}

func TestColor(t *testing.T) {
	// No variable of the environment may undo what UseColor decided.
	t.Setenv("NO_COLOR", "1")
	colored := text(t, outcome(), true)
	golden(t).Assert(t, "color", []byte(colored))
	if bare := regexp.MustCompile("\x1b\\[[0-9;]*m").ReplaceAllString(colored, ""); bare != text(t, outcome(), false) {
		t.Errorf("without its colours the report reads\n%s", bare)
	}
}

func TestSummary(t *testing.T) {
	file := diag.NewFile("a.plan", "x")
	here := diag.Span{File: file, Start: 0, End: 1}
	found := func(s ...diag.Severity) (fs []diag.Finding) {
		for _, s := range s {
			fs = append(fs, diag.Finding{Severity: s, Span: here})
		}
		return fs
	}
	for _, c := range []struct {
		o    report.Outcome
		want string
	}{
		{
			report.Outcome{Checked: report.Checked{Files: 1, Parts: 14, Joints: 22}},
			"nothing found in 1 file: 14 parts and 22 joints checked",
		},
		{
			report.Outcome{Checked: report.Checked{Files: 2, Parts: 1, Joints: 1}},
			"nothing found in 2 files: 1 part and 1 joint checked",
		},
		{
			report.Outcome{Checked: report.Checked{Files: 1}},
			"nothing found in 1 file, which draws no part to check",
		},
		{
			report.Outcome{Checked: report.Checked{Files: 3}},
			"nothing found in 3 files, which draw no part to check",
		},
		{
			report.Outcome{Checked: report.Checked{Files: 1, Parts: 3, Unchecked: 1}},
			"nothing found in 1 file: 3 parts and 0 joints checked; 1 size could not be worked out, and what leans on it was not checked",
		},
		{
			report.Outcome{Findings: found(diag.Error, diag.Error, diag.Warning), Checked: report.Checked{Files: 1, Parts: 3}},
			"2 errors, 1 warning in 1 file",
		},
		{
			report.Outcome{Findings: found(diag.Advice), Checked: report.Checked{Files: 5, Parts: 3, Unchecked: 4}},
			"1 piece of advice in 1 of 5 files; 4 sizes could not be worked out, and what leans on them was not checked",
		},
		{
			report.Outcome{Checked: report.Checked{Files: 1, Parts: 3, Joints: 2}, Failures: []report.Failure{{Path: "b.plan", Err: errors.New("no such file")}}},
			"nothing found in 1 file: 3 parts and 2 joints checked; 1 path could not be read",
		},
	} {
		if got := c.o.Summary(); got != c.want {
			t.Errorf("\n got %s\nwant %s", got, c.want)
		}
	}
}

func TestUseColor(t *testing.T) {
	for _, c := range []struct {
		flag     string
		env      string
		terminal bool
		want     bool
	}{
		{"auto", "", true, true},
		{"auto", "", false, false},
		{"always", "NO_COLOR=1 TERM=dumb", false, true},
		{"never", "CLICOLOR_FORCE=1", true, false},
		{"auto", "NO_COLOR=1", true, false},
		{"auto", "NO_COLOR=1 CLICOLOR_FORCE=1", true, false},
		{"auto", "CLICOLOR_FORCE=1", false, true},
		{"auto", "CLICOLOR_FORCE=0", false, false},
		{"auto", "CLICOLOR_FORCE=1 TERM=dumb", false, true},
		{"auto", "TERM=dumb", true, false},
	} {
		getenv := func(name string) string {
			for _, set := range strings.Fields(c.env) {
				if key, value, _ := strings.Cut(set, "="); key == name {
					return value
				}
			}
			return ""
		}
		if got := report.UseColor(c.flag, getenv, c.terminal); got != c.want {
			t.Errorf("--color %s, %q, terminal %v: got %v", c.flag, c.env, c.terminal, got)
		}
	}
}

func TestPlain(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{`a "shelf", 3 ½ × 2 ″`, `a "shelf", 3 ½ × 2 ″`},
		{"棚板", "棚板"},
		{"red\x1b[31m", `red\x1b[31m`},
		{"a\nb\tc\r", `a\nb\tc\r`},
		{"\x00\x7f", `\x00\x7f`},
		{"\u009b31m", `\u009b31m`},         // the eight-bit form of the escape
		{"abc\u202edef", `abc\u202edef`},   // turns the line round
		{"no\u00a0break", `no\u00a0break`}, // looks like a blank
		{"bad\xff\xc3", `bad\xff\xc3`},
		{"\U000e0041", `\U000e0041`},
	} {
		if got := report.Plain(c.in); got != c.want {
			t.Errorf("%q: got %q, want %q", c.in, got, c.want)
		}
	}
}

func FuzzPlain(f *testing.F) {
	f.Add("shelf \"low\"")
	f.Add("\x1b]0;title\a\u202e\xff")
	f.Fuzz(func(t *testing.T, s string) {
		for _, r := range report.Plain(s) {
			if !unicode.IsPrint(r) {
				t.Fatalf("%q lets %U through", s, r)
			}
		}
	})
}

// hostile is a finding all of whose texts would move a terminal's cursor.
func hostile() *report.Outcome {
	const bad = "\x1b[2J\u009b2J\r"
	file := diag.NewFile("bad\x1b[2J.plan", bad)
	here := diag.Span{File: file, Start: 0, End: 1}
	return &report.Outcome{
		Findings: []diag.Finding{{
			Rule: "r" + bad, Severity: diag.Error, Span: here, Message: bad, Subject: bad,
			Working: diag.Working{{Value: bad, Label: bad}, {Label: bad}},
			Notes:   []diag.Note{{Span: here, Message: bad}, {Message: bad}},
			Fixes:   []diag.Fix{{Title: bad, Edits: []diag.Edit{{Span: here, Text: bad + "\U000e0041"}}}},
		}},
		Failures: []report.Failure{{Path: bad, Err: errors.New(bad)}},
	}
}

func TestNothingFromAPlanReachesTheTerminalRaw(t *testing.T) {
	var js bytes.Buffer
	if err := report.JSON(&js, hostile()); err != nil {
		t.Fatal(err)
	}
	for name, out := range map[string]string{
		"text": text(t, hostile(), false), "json": js.String(), "failure": hostile().Failures[0].Error(),
	} {
		for _, r := range out {
			if r != '\n' && !unicode.IsPrint(r) {
				t.Errorf("%s lets %U through:\n%q", name, r, out)
				break
			}
		}
	}
	var back struct {
		Findings []struct {
			Message string
			Fixes   []struct{ Edits []struct{ Text string } }
		}
	}
	if err := json.Unmarshal(js.Bytes(), &back); err != nil {
		t.Fatal(err)
	}
	if got, want := back.Findings[0].Fixes[0].Edits[0].Text, "\x1b[2J\u009b2J\r\U000e0041"; got != want {
		t.Errorf("a program reads %q, want %q", got, want)
	}
}

func TestJSON(t *testing.T) {
	o := outcome()
	o.Failures = []report.Failure{{Path: "lost.plan", Err: errors.New("no such file")}}
	var b bytes.Buffer
	if err := report.JSON(&b, o); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "json", b.Bytes())
}

// Lists are never null, so that a program can range over them unasked.
func TestJSONOfNothing(t *testing.T) {
	var b bytes.Buffer
	if err := report.JSON(&b, &report.Outcome{}); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, "json-empty", b.Bytes())
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

func TestAWriterThatFailsIsSaid(t *testing.T) {
	if report.Text(full{}, outcome(), false) == nil || report.JSON(full{}, outcome()) == nil ||
		report.Findings(full{}, outcome().Findings, false) == nil {
		t.Error("what could not be written was not reported")
	}
}
