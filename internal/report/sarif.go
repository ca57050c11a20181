package report

// Findings in SARIF 2.1.0, the OASIS standard for what checkers find, as code hosts and editors
// read it: https://docs.oasis-open.org/sarif/sarif/v2.1.0/

import (
	"bufio"
	"io"
	"net/url"
	"path/filepath"
	"strings"

	"plancheck/internal/diag"
	"plancheck/rules"
)

// SARIF writes an outcome as one run. version is that of plancheck, "" where it has none.
//
// Every rule that found something stands in the run with its explanation. A result has the
// working and the mends in its message, other places that took part as related locations, mends
// that say what to write where as fixes, and a fingerprint that survives edits elsewhere in the file.
// Columns count code points. What could not be checked stands as a notification.
func SARIF(w io.Writer, o *Outcome, version string) error {
	run := sarifRun{
		ColumnKind:  "unicodeCodePoints",
		Results:     make([]sarifResult, 0, len(o.Findings)),
		Invocations: []sarifInvocation{{Successful: len(o.Failures) == 0}},
	}
	run.Tool.Driver = sarifDriver{Name: "plancheck", Version: version, Rules: make([]sarifRule, 0)}
	for _, f := range o.Failures {
		run.Invocations[0].Notifications = append(run.Invocations[0].Notifications, sarifNotification{"error", sarifMessage{f.Error()}})
	}
	index := make(map[string]int) // of a rule in the run
	prints := Fingerprints(o.Findings, Named)
	for i := range o.Findings {
		f := &o.Findings[i]
		at, listed := index[f.Rule]
		if !listed {
			at = len(run.Tool.Driver.Rules)
			index[f.Rule] = at
			run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(f.Rule))
		}
		run.Results = append(run.Results, sarifResultOf(f, at, prints[i]))
	}
	return writeJSON(w, sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs:    []sarifRun{run},
	})
}

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool struct {
		Driver sarifDriver `json:"driver"`
	} `json:"tool"`
	Invocations []sarifInvocation `json:"invocations"`
	ColumnKind  string            `json:"columnKind"`
	Results     []sarifResult     `json:"results"`
}

type sarifDriver struct {
	Name    string      `json:"name"`
	Version string      `json:"version,omitempty"`
	Rules   []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID       string         `json:"id"`
	Short    *sarifMessage  `json:"shortDescription,omitempty"`
	Full     *sarifMessage  `json:"fullDescription,omitempty"`
	Help     *sarifMessage  `json:"help,omitempty"`
	Defaults *sarifDefaults `json:"defaultConfiguration,omitempty"`
}

type sarifDefaults struct {
	Level string `json:"level"`
}

type sarifMessage struct {
	Text string `json:"text"`
}

type sarifInvocation struct {
	Successful    bool                `json:"executionSuccessful"`
	Notifications []sarifNotification `json:"toolExecutionNotifications,omitempty"`
}

type sarifNotification struct {
	Level   string       `json:"level"`
	Message sarifMessage `json:"message"`
}

type sarifResult struct {
	RuleID       string            `json:"ruleId"`
	RuleIndex    int               `json:"ruleIndex"`
	Level        string            `json:"level"`
	Message      sarifMessage      `json:"message"`
	Locations    []sarifLocation   `json:"locations,omitempty"`
	Related      []sarifLocation   `json:"relatedLocations,omitempty"`
	Fingerprints map[string]string `json:"partialFingerprints"`
	Fixes        []sarifFix        `json:"fixes,omitempty"`
}

type sarifLocation struct {
	ID       int            `json:"id,omitempty"`
	Physical *sarifPhysical `json:"physicalLocation,omitempty"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifMessage  `json:"message,omitempty"`
}

type sarifLogical struct {
	Name string `json:"fullyQualifiedName"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   sarifRegion   `json:"region"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type sarifFix struct {
	Description sarifMessage  `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  sarifRegion  `json:"deletedRegion"`
	Inserted sarifMessage `json:"insertedContent"`
}

// sarifRuleOf is what a run says of a rule.
func sarifRuleOf(name string) sarifRule {
	rule := rules.Find(name)
	if rule == nil {
		return sarifRule{ID: name}
	}
	why, _, _ := strings.Cut(strings.TrimSpace(rule.Doc), "\n\n")
	return sarifRule{
		ID:       name,
		Short:    &sarifMessage{sentence(rule.Summary)},
		Full:     &sarifMessage{why},
		Help:     &sarifMessage{Explain(rule)},
		Defaults: &sarifDefaults{sarifLevel(rule.Severity)},
	}
}

// sentence is a line with a capital and a full stop.
func sentence(line string) string {
	return strings.ToUpper(line[:1]) + line[1:] + "."
}

func sarifLevel(s diag.Severity) string {
	if s == diag.Advice {
		return "note"
	}
	return s.String()
}

func sarifResultOf(f *diag.Finding, rule int, print string) sarifResult {
	out := sarifResult{
		RuleID: f.Rule, RuleIndex: rule, Level: sarifLevel(f.Severity),
		Message:      sarifMessage{told(f)},
		Fingerprints: map[string]string{"finding/v1": print},
	}
	if f.Span.Known() {
		place := sarifLocation{Physical: sarifPlace(f.Span)}
		if f.Subject != "" {
			place.Logical = []sarifLogical{{Plain(f.Subject)}}
		}
		out.Locations = []sarifLocation{place}
	}
	for _, n := range f.Notes {
		if n.Span.Known() {
			out.Related = append(out.Related, sarifLocation{ID: len(out.Related) + 1, Physical: sarifPlace(n.Span), Message: &sarifMessage{Plain(n.Message)}})
		}
	}
	for _, fix := range f.Fixes {
		if len(fix.Edits) == 0 {
			continue
		}
		change := sarifChange{Artifact: sarifPlace(fix.Edits[0].Span).Artifact} // a mend lies in one file
		for _, e := range fix.Edits {
			change.Replacements = append(change.Replacements, sarifReplacement{sarifPlace(e.Span).Region, sarifMessage{e.Text}})
		}
		out.Fixes = append(out.Fixes, sarifFix{sarifMessage{Plain(fix.Title)}, []sarifChange{change}})
	}
	return out
}

// told is a finding as the text report has it, below its first line the working, the notes and the mends.
func told(f *diag.Finding) string {
	var b strings.Builder
	p := printer{w: bufio.NewWriter(&b), ink: newInk(false)}
	p.line(Plain(f.Message))
	p.below(f)
	p.w.Flush()
	return strings.TrimSuffix(b.String(), "\n")
}

func sarifPlace(s diag.Span) *sarifPhysical {
	p := &sarifPhysical{Artifact: sarifArtifact{fileURI(s.File.Name)}}
	p.Region.StartLine, p.Region.StartColumn = s.Position()
	p.Region.EndLine, p.Region.EndColumn = s.File.Position(int(s.End))
	return p
}

// fileURI is a file's name as a reference: relative as it was given, else absolute.
func fileURI(name string) string {
	u := url.URL{Path: filepath.ToSlash(name)}
	if filepath.IsAbs(name) {
		u.Scheme = "file"
		if !strings.HasPrefix(u.Path, "/") { // a drive's letter stands first
			u.Path = "/" + u.Path
		}
	}
	return u.String()
}
