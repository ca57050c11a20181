package report

// Two revisions of a piece against each other: what changed in the wood, not in the text.

import (
	"bufio"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// Revision is one of two revisions of a piece.
type Revision struct {
	Name     string // as a person knows it: a file, or a file at a revision
	Plan     *plan.Plan
	Findings []diag.Finding
}

// Comparison is what changed from one revision to another.
type Comparison struct {
	Old, New  Revision
	Changes   []Change
	NewFound  []diag.Finding // found in the new one alone
	GoneFound []diag.Finding // found in the old one alone
	SameFound int
}

// Change is a thing that is new, gone, or not as it was.
type Change struct {
	Section Section
	Name    string
	Was     string // "" of what is new
	Is      string // "" of what is gone
}

// Compare holds two revisions of a piece against each other. Things go by their names: what is renamed is
// gone and new. Sizes are shown by the new one's tape.
func Compare(before, after Revision) *Comparison {
	c := &Comparison{Old: before, New: after}
	was, is := takeInventory(before.Plan, after.Plan), takeInventory(after.Plan, after.Plan)
	type key struct {
		section Section
		name    string
	}
	old := make(map[key]string, len(was))
	for _, t := range was {
		old[key{t.section, t.name}] = t.is
	}
	kept := make(map[key]bool, len(is))
	var changed [Fixings + 1][]Change
	for _, t := range is {
		k := key{t.section, t.name}
		kept[k] = true
		if before, there := old[k]; !there || before != t.is {
			changed[t.section] = append(changed[t.section], Change{t.section, t.name, before, t.is})
		}
	}
	for _, t := range was {
		if !kept[key{t.section, t.name}] {
			changed[t.section] = append(changed[t.section], Change{t.section, t.name, t.is, ""})
		}
	}
	for _, s := range changed {
		c.Changes = append(c.Changes, s...)
	}
	c.NewFound, c.GoneFound, c.SameFound = Since(before.Findings, after.Findings, func(f *diag.File) string {
		if f == before.Plan.File || f == after.Plan.File {
			return "" // a plan is the same, whatever its file is called
		}
		return filepath.Base(f.Name)
	})
	return c
}

// sort is what became of the thing.
func (c Change) sort() string {
	switch {
	case c.Was == "":
		return "new"
	case c.Is == "":
		return "gone"
	}
	return "changed"
}

// CompareText writes a comparison for people.
func CompareText(w io.Writer, c *Comparison, colored bool) error {
	p := printer{w: bufio.NewWriter(w), ink: newInk(colored)}
	p.line(Plain(c.Old.Name), " → ", Plain(c.New.Name))
	if len(c.Changes) == 0 {
		p.line()
		p.line("The piece is the same.")
	}
	for i, change := range c.Changes {
		if i == 0 || change.Section != c.Changes[i-1].Section {
			p.line()
			p.line(on(p.strong, change.Section.String()))
		}
		name := Plain(change.Name)
		switch change.sort() {
		case "new":
			p.line("  new      ", name, ": ", Plain(change.Is))
		case "gone":
			p.line("  gone     ", name, ": ", Plain(change.Was))
		default:
			p.line("  changed  ", name)
			p.line("      was  ", Plain(change.Was))
			p.line("      is   ", Plain(change.Is))
		}
	}
	for _, s := range []struct {
		head  string
		found []diag.Finding
	}{{"found now, and not before", c.NewFound}, {"found before, and no more", c.GoneFound}} {
		if len(s.found) == 0 {
			continue
		}
		p.line()
		p.line(on(p.strong, s.head))
		for i := range s.found {
			p.line()
			p.finding(&s.found[i])
		}
	}
	p.line()
	p.line(on(p.strong, c.Summary()))
	return p.w.Flush()
}

// Summary counts what changed, in a line.
func (c *Comparison) Summary() string {
	changes := "nothing changed in the piece"
	if n := len(c.Changes); n > 0 {
		changes = count(n, "change", "changes") + " in the piece"
	}
	return fmt.Sprintf("%s; findings: %d new, %d gone, %d as before", changes, len(c.NewFound), len(c.GoneFound), c.SameFound)
}

// CompareMarkdown writes a comparison for the discussion of a change.
func CompareMarkdown(w io.Writer, c *Comparison) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "**%s**\n", cell(c.Summary()))
	for i, change := range c.Changes {
		if i == 0 || change.Section != c.Changes[i-1].Section {
			fmt.Fprintf(b, "\n| %s | was | is |\n| --- | --- | --- |\n", change.Section)
		}
		fmt.Fprintf(b, "| %s | %s | %s |\n", cell(change.Name), cell(change.Was), cell(change.Is))
	}
	for _, s := range []struct {
		head  string
		found []diag.Finding
	}{{"Found now, and not before", c.NewFound}, {"Found before, and no more", c.GoneFound}} {
		if len(s.found) > 0 {
			fmt.Fprintf(b, "\n%s\n\n", s.head)
		}
		for i := range s.found {
			f := &s.found[i]
			fmt.Fprintf(b, "- %s%s: %s `%s`\n", cell(place(f.Span)), f.Severity, cell(f.Message), f.Rule)
		}
	}
	return b.Flush()
}

// cell is a text as it may stand in a cell of a table: on one line, with nothing that marks up.
func cell(s string) string {
	return strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "<", `\<`, ">", `\>`, "[", `\[`, "]", `\]`, "#", `\#`).Replace(Plain(s))
}

// CompareJSON writes a comparison as one object:
//
//	version  1
//	old new  the names of the two revisions
//	changes  a list of {section, name, change, was, is}: change is "new", "gone" or "changed"
//	findings {new, gone, same}: two lists as in the JSON of a check, and a number
func CompareJSON(w io.Writer, c *Comparison) error {
	type jsonChange struct {
		Section string `json:"section"`
		Name    string `json:"name"`
		Change  string `json:"change"`
		Was     string `json:"was"`
		Is      string `json:"is"`
	}
	var out struct {
		Version  int          `json:"version"`
		Old      string       `json:"old"`
		New      string       `json:"new"`
		Changes  []jsonChange `json:"changes"`
		Findings struct {
			New  []jsonFinding `json:"new"`
			Gone []jsonFinding `json:"gone"`
			Same int           `json:"same"`
		} `json:"findings"`
	}
	out.Version, out.Old, out.New = Version, c.Old.Name, c.New.Name
	out.Changes = make([]jsonChange, 0, len(c.Changes))
	for _, change := range c.Changes {
		out.Changes = append(out.Changes, jsonChange{change.Section.String(), change.Name, change.sort(), change.Was, change.Is})
	}
	out.Findings.New, out.Findings.Gone, out.Findings.Same = toJSONs(c.NewFound), toJSONs(c.GoneFound), c.SameFound
	return writeJSON(w, out)
}
