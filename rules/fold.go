package rules

// What is said once: a finding in a pattern that is built more than once, or in a row of
// things that are alike.

import (
	"slices"
	"strconv"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

// fold says findings that differ only in their subject once. Where the line stands in a
// pattern, a note names the builds that raise it, unless all do.
func fold(p *plan.Plan, found []diag.Finding) []diag.Finding {
	type same struct {
		rule    string
		span    diag.Span
		message string
	}
	patterns := readBuilds(p)
	at := make(map[same]int, len(found)) // in folded
	folded := found[:0]
	raisedBy := make(map[int][]built)
	type raising struct {
		finding int
		path    string
	}
	counted := make(map[raising]bool)
	for _, f := range found {
		key := same{f.Rule, f.Span, f.Message}
		i, again := at[key]
		if !again {
			i = len(folded)
			at[key] = i
			folded = append(folded, f)
		}
		if b, ok := patterns.builder(f); ok && !counted[raising{i, b.path}] {
			counted[raising{i, b.path}] = true
			raisedBy[i] = append(raisedBy[i], b)
		}
	}
	for i, by := range raisedBy {
		if len(by) < patterns.times[by[0].build.Pattern.To] {
			folded[i].Notes = append(folded[i].Notes, diag.Note{Span: by[0].build.Span, Message: nameBuilds(by)})
		}
	}
	return folded
}

// built is one build of a pattern; its path is how a finding's subject starts.
type built struct {
	build *plan.Build
	path  string
}

// builds are the builds of a plan by their names, and how often each pattern is built.
type builds struct {
	named map[string][]*plan.Build // one for each pattern
	times map[*plan.Pattern]int
}

func readBuilds(p *plan.Plan) builds {
	bs := builds{named: make(map[string][]*plan.Build), times: make(map[*plan.Pattern]int)}
	for _, b := range p.Builds {
		if b.Pattern.To == nil {
			continue
		}
		bs.times[b.Pattern.To]++
		known := bs.named[b.Name.Text]
		if !slices.ContainsFunc(known, func(k *plan.Build) bool { return k.Pattern.To == b.Pattern.To }) {
			bs.named[b.Name.Text] = append(known, b)
		}
	}
	return bs
}

// builder is the build that made what a finding is about, from the pattern in which the
// finding stands.
func (bs builds) builder(f diag.Finding) (built, bool) {
	if len(bs.named) == 0 {
		return built{}, false
	}
	for path := range outward(f.Subject) {
		for _, b := range bs.named[path[strings.LastIndexByte(path, '.')+1:]] {
			if covers(b.Pattern.To, f.Span) {
				return built{b, path}, true
			}
		}
	}
	return built{}, false
}

// covers reports whether a place is in a pattern's text.
func covers(p *plan.Pattern, at diag.Span) bool {
	text := p.Name.Span
	if n := len(p.Body); n > 0 {
		text = text.To(p.Body[n-1].Span)
	}
	return at.File == text.File && text.Start <= at.Start && at.End <= text.End
}

// nameBuilds is a note's text: `in build "left"`, `in builds "left" and "right"`.
func nameBuilds(by []built) string {
	const most = 5
	var names []string
	for _, b := range by[:min(len(by), most)] {
		names = append(names, strconv.Quote(b.path))
	}
	if more := len(by) - len(names); more > 0 {
		names = append(names, strconv.Itoa(more)+" more")
	}
	if len(names) == 1 {
		return "in build " + names[0]
	}
	last := len(names) - 1
	return "in builds " + strings.Join(names[:last], ", ") + " and " + names[last]
}
