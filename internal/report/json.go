package report

// Findings as programs read them.

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"

	"plancheck/internal/diag"
)

// Version is the version of the JSON that this package writes. Within one version fields
// may be added; none is renamed, removed or given another meaning.
const Version = 1

// JSON writes an outcome as one object:
//
//	version    1
//	findings   a list, in the order of the text report; each has
//	  rule       the rule's name, as `plancheck explain` takes it
//	  severity   "error", "warning" or "advice"
//	  subject    path of the thing that it is about, such as "carcass.upper"; "" for the text itself
//	  message    one line
//	  file line column endLine endColumn startByte endByte
//	             where it stands; lines and columns count from 1, columns in characters
//	             (code points), bytes from 0; the end is the first place behind it.
//	             A finding that is nowhere has line 0
//	  working    a list of {sign, value, label}: sign is "", "+", "-", "x", "/", "=" (a result)
//	             or ":" (what the result is held against); value is "" in a line of words
//	  notes      a list of {message, file, line …}: other places that took part
//	  fixes      a list of {title, safe, edits}; safe: changes no size and loses no comment;
//	             edits is a list of {text, file, line …}: put text in place of what stands there
//	failures   a list of {path, message}: what could not be checked at all
//	summary    {files, errors, warnings, advice, parts, joints, unchecked, older}: plans checked,
//	           findings by severity, parts and joints looked at, how many stated sizes could not be
//	           worked out, so that what leans on them was not checked, and how many findings are left out
//	           since they were there at an earlier revision
func JSON(w io.Writer, o *Outcome) error {
	out := jsonOutcome{
		Version:  Version,
		Findings: toJSONs(o.Findings),
		Failures: make([]jsonFailure, 0, len(o.Failures)),
		Summary: jsonSummary{
			Files:  o.Checked.Files,
			Errors: o.count(diag.Error), Warnings: o.count(diag.Warning), Advice: o.count(diag.Advice),
			Parts: o.Checked.Parts, Joints: o.Checked.Joints, Unchecked: o.Checked.Unchecked, Older: o.Older,
		},
	}
	for _, f := range o.Failures {
		out.Failures = append(out.Failures, jsonFailure{f.Path, f.Err.Error()})
	}
	return writeJSON(w, out)
}

type jsonOutcome struct {
	Version  int           `json:"version"`
	Findings []jsonFinding `json:"findings"`
	Failures []jsonFailure `json:"failures"`
	Summary  jsonSummary   `json:"summary"`
}

type jsonFinding struct {
	Rule     string `json:"rule"`
	Severity string `json:"severity"`
	Subject  string `json:"subject"`
	Message  string `json:"message"`
	jsonPlace
	Working []jsonStep `json:"working"`
	Notes   []jsonNote `json:"notes"`
	Fixes   []jsonFix  `json:"fixes"`
}

type jsonPlace struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"endLine"`
	EndColumn int    `json:"endColumn"`
	StartByte int32  `json:"startByte"`
	EndByte   int32  `json:"endByte"`
}

type jsonStep struct {
	Sign  string `json:"sign"`
	Value string `json:"value"`
	Label string `json:"label"`
}

type jsonNote struct {
	Message string `json:"message"`
	jsonPlace
}

type jsonFix struct {
	Title string     `json:"title"`
	Safe  bool       `json:"safe"`
	Edits []jsonEdit `json:"edits"`
}

type jsonEdit struct {
	Text string `json:"text"`
	jsonPlace
}

type jsonFailure struct {
	Path    string `json:"path"`
	Message string `json:"message"`
}

type jsonSummary struct {
	Files     int `json:"files"`
	Errors    int `json:"errors"`
	Warnings  int `json:"warnings"`
	Advice    int `json:"advice"`
	Parts     int `json:"parts"`
	Joints    int `json:"joints"`
	Unchecked int `json:"unchecked"`
	Older     int `json:"older"`
}

func toJSONs(findings []diag.Finding) []jsonFinding {
	out := make([]jsonFinding, 0, len(findings))
	for i := range findings {
		out = append(out, toJSON(&findings[i]))
	}
	return out
}

func toJSON(f *diag.Finding) jsonFinding {
	out := jsonFinding{
		Rule: f.Rule, Severity: f.Severity.String(), Subject: f.Subject, Message: f.Message,
		jsonPlace: jsonPlaceOf(f.Span),
		Working:   make([]jsonStep, 0, len(f.Working)),
		Notes:     make([]jsonNote, 0, len(f.Notes)),
		Fixes:     make([]jsonFix, 0, len(f.Fixes)),
	}
	for _, s := range f.Working {
		out.Working = append(out.Working, jsonStep{s.Op.Sign(), s.Value, s.Label})
	}
	for _, n := range f.Notes {
		out.Notes = append(out.Notes, jsonNote{n.Message, jsonPlaceOf(n.Span)})
	}
	for _, fix := range f.Fixes {
		edits := make([]jsonEdit, 0, len(fix.Edits))
		for _, e := range fix.Edits {
			edits = append(edits, jsonEdit{e.Text, jsonPlaceOf(e.Span)})
		}
		out.Fixes = append(out.Fixes, jsonFix{fix.Title, fix.Safe, edits})
	}
	return out
}

func jsonPlaceOf(s diag.Span) jsonPlace {
	if !s.Known() {
		return jsonPlace{}
	}
	p := jsonPlace{File: s.File.Name, StartByte: s.Start, EndByte: s.End}
	p.Line, p.Column = s.Position()
	p.EndLine, p.EndColumn = s.File.Position(int(s.End))
	return p
}

// writeJSON writes v indented. What does not print stands as an escape, which means the
// same to a program and nothing to a terminal.
func writeJSON(w io.Writer, v any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(escapeUnprinted(b.Bytes()))
	return err
}

func escapeUnprinted(text []byte) []byte {
	if isPlain(string(bytes.ReplaceAll(text, []byte("\n"), nil))) {
		return text
	}
	var b bytes.Buffer
	for len(text) > 0 {
		r, n := utf8.DecodeRune(text)
		switch {
		case r == '\n' || unicode.IsPrint(r):
			b.Write(text[:n])
		case r > 0xffff:
			high, low := (r-0x10000)>>10+0xd800, (r-0x10000)&0x3ff+0xdc00
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
		text = text[n:]
	}
	return b.Bytes()
}
