// Package report turns findings and the worked-out piece into what people and programs
// read: text for a terminal, JSON, and the cutting list. Colour lives only here.
package report

import (
	"fmt"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// Outcome is what a run came to.
type Outcome struct {
	Findings []diag.Finding // in the order in which they are shown
	Failures []Failure      // what could not be checked at all
	Checked  Checked
	Older    int // findings that are left out, since they were there at an earlier revision
}

// Failure is a file or folder that could not be checked, and why.
type Failure struct {
	Path string
	Err  error
}

// Error names the path and says why.
func (f Failure) Error() string {
	return Plain(f.Path) + ": " + Plain(f.Err.Error())
}

// Checked says how much was looked at.
type Checked struct {
	Files     int // plans asked for, without what they use
	Parts     int // members, panels, panes, drawers, tops and declared parts, alike ones each
	Joints    int // ends and edges that a joint holds
	Unchecked int // sizes that are stated and could not be worked out
}

// CheckedIn is what there is to look at in one plan.
func CheckedIn(p *plan.Plan) Checked {
	c := Checked{Files: 1, Parts: len(p.Parts) + len(p.Tops), Unchecked: p.Unchecked}
	for _, a := range p.Assemblies {
		if a.Rail != nil {
			c.Parts++ // the one rail of a polygon
		}
		for _, e := range a.Ends {
			if e.Joint != nil {
				c.Joints++
			}
		}
		for n := range a.Nodes() {
			switch n.(type) {
			case *plan.Member, *plan.Panel, *plan.Glass, *plan.Drawer:
				c.Parts++
			}
		}
	}
	return c
}

// Add counts more in.
func (c *Checked) Add(more Checked) {
	c.Files += more.Files
	c.Parts += more.Parts
	c.Joints += more.Joints
	c.Unchecked += more.Unchecked
}

// count is how many findings there are of each severity.
func (o *Outcome) count(s diag.Severity) int {
	n := 0
	for i := range o.Findings {
		if o.Findings[i].Severity == s {
			n++
		}
	}
	return n
}

// Summary is the last line of a report: what was found, in how many files, and how much
// was and could not be checked.
func (o *Outcome) Summary() string {
	var found []string
	for _, s := range []struct {
		severity  diag.Severity
		one, many string
	}{
		{diag.Error, "error", "errors"},
		{diag.Warning, "warning", "warnings"},
		{diag.Advice, "piece of advice", "pieces of advice"},
	} {
		if n := o.count(s.severity); n > 0 {
			found = append(found, count(n, s.one, s.many))
		}
	}
	var line string
	switch {
	case len(found) > 0:
		line = strings.Join(found, ", ") + " in " + o.where()
	case o.Checked.Files == 0:
		line = "nothing was checked"
	case o.Checked.Parts == 0:
		line = "nothing found in " + count(o.Checked.Files, "file", "files") + ", which draw no part to check"
		if o.Checked.Files == 1 {
			line = "nothing found in 1 file, which draws no part to check"
		}
	default:
		line = fmt.Sprintf("nothing found in %s: %s and %s checked",
			count(o.Checked.Files, "file", "files"),
			count(o.Checked.Parts, "part", "parts"), count(o.Checked.Joints, "joint", "joints"))
	}
	if n := o.Checked.Unchecked; n > 0 {
		line += "; " + count(n, "size", "sizes") + " could not be worked out, and what leans on them was not checked"
		if n == 1 {
			line = strings.TrimSuffix(line, "what leans on them was not checked") + "what leans on it was not checked"
		}
	}
	if o.Older > 0 {
		line += "; " + count(o.Older, "older finding is", "older findings are") + " not shown"
	}
	if n := len(o.Failures); n > 0 {
		line += "; " + count(n, "path", "paths") + " could not be read"
	}
	return line
}

// where says in how many files the findings stand: "2 files", "2 of 5 files".
func (o *Outcome) where() string {
	files := map[string]bool{}
	for i := range o.Findings {
		if f := o.Findings[i].Span.File; f != nil {
			files[f.Name] = true
		}
	}
	n := max(len(files), 1)
	if n < o.Checked.Files {
		return fmt.Sprintf("%d of %d files", n, o.Checked.Files)
	}
	return count(n, "file", "files")
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
