package rules

// `allow RULE "reason"`: what it silences, and what is wrong with one that does not.

import (
	"fmt"
	"iter"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var (
	unknownRule = &Rule{
		Name: "unknown-rule", Group: Reading, Severity: diag.Error, Always: true,
		Summary: "`allow` or `limit` names a rule that there is not",
		Doc: `The line changes nothing, while whoever reads the plan believes that it does.

Write the rule's name as it stands in brackets behind a finding. "plancheck rules" lists them all.`,
		Sources: "The list of rules itself.",
		Bad: `allow nosuch-rule "the doors were bought"
`,
		Good: `let play = 3/32
`,
	}

	notAllowable = &Rule{
		Name: "not-allowable", Group: Reading, Severity: diag.Error, Always: true,
		Summary: "`allow` names a fault that cannot be allowed",
		Doc: `A line that cannot be read, a name that nothing bears, a value in the wrong unit or sizes that wait
for one another leave nothing to judge: what such a line was meant to say is not checked at all.
An "allow" would hide that.

Mend the line that the finding shows, and take the "allow" out.`,
		Sources: "The language itself.",
		Bad: `allow unknown-name "the hinges are not chosen yet"
`,
		Good: `let play = 3/32
`,
	}

	missingReason = &Rule{
		Name: "missing-reason", Group: Reading, Severity: diag.Error, Always: true,
		Summary: "`allow` or `limit` gives no reason",
		Doc: `A year later nobody knows why the rule was silenced, and whether it still may be.

Say in the quotes why the piece is right as it is: what was measured, tried or agreed.`,
		Sources: "Common practice, no source.",
		Bad: `allow rail-length "  "
`,
		Good: `allow rail-length "the rails were cut before the stiles"
`,
	}

	unusedAllow = &Rule{
		Name: "unused-allow", Group: Reading, Severity: diag.Warning, Always: true,
		Summary: "`allow` silences nothing",
		Doc: `The fault that it was written for is gone, or stands somewhere else. Left in, it will silence the next
fault of that kind, which nobody has looked at.

Take the line out; or, where the finding still shows, move it into the block that the finding is about.
In a file that draws nothing, such as a shop's shelf of definitions, nothing counts as unused, and as long
as something of the plan could not be read or worked out nothing is said either.`,
		Sources: "Common practice, no source.",
		Bad: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame lattice {
  of    oak
  wide  18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  allow rail-length "the rails were cut first"
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
		Good: `climate { shop 8% ; dry 6% ; humid 11% }
wood oak { species "white oak" ; sawn quarter }
frame lattice {
  of    oak
  wide  18 ; high 24 ; thick 3/4
  joint tenon thick 1/4 long 1 1/4
  across {
    stile left 2 1/4
    down { rail head 2 1/4 ; space middle ; rail foot 3 }
    stile right 2 1/4
  }
}
`,
	}

	wrongLimit = &Rule{
		Name: "wrong-limit", Group: Reading, Severity: diag.Error, Always: true,
		Summary: "`limit` sets what a rule does not have, or what stands",
		Doc: `The rule goes on judging by its own figure, while whoever reads the plan believes that it judges by
another. A figure that is published, or that follows from geometry, cannot be set: where the piece is right all
the same, "allow" says so with its reason.

"plancheck explain RULE" shows a rule's figures, where each comes from, and which may be set.`,
		Sources: "The list of rules itself.",
		Bad: `limit unknown-name letters 2 "short names here"
`,
		Good: `let play = 3/32
`,
	}
)

// silence leaves out what the plan allows, and adds what is wrong with its allows.
// An allow that silenced nothing is reported unless blind: then its rule may not have seen
// what it was written for.
func silence(p *plan.Plan, all []*Rule, found []diag.Finding, blind bool) []diag.Finding {
	if len(p.Allows) == 0 {
		return found
	}
	allows, wrong := readAllows(p, all)
	used := make(map[diag.Span]bool) // by where they stand: each build has an allow of its own
	kept := found[:0]
	for _, f := range found {
		silenced := false
		for subject := range outward(f.Subject) {
			for _, a := range allows[allowed{f.Rule, subject}] {
				silenced, used[a.Span] = true, true
			}
		}
		if !silenced {
			kept = append(kept, f)
		}
	}
	kept = append(kept, wrong...)
	if blind {
		return kept
	}
	drawn := filesThatDraw(p)
	for _, a := range p.Allows {
		r := find(all, a.Rule.Text)
		if r == nil || r.Always || used[a.Span] || !drawn[a.Span.File] {
			continue
		}
		used[a.Span] = true // said once
		kept = append(kept, diag.Finding{
			Rule: unusedAllow.Name, Severity: unusedAllow.Severity, Subject: a.Subject, Span: a.Span,
			Message: fmt.Sprintf("`allow %s` silences nothing here", r.Name),
			Fixes:   []diag.Fix{{Title: "take the line out"}},
		})
	}
	return kept
}

// allowed is a rule and the path of what it is allowed on.
type allowed struct{ rule, subject string }

func readAllows(p *plan.Plan, all []*Rule) (map[allowed][]*plan.Allow, []diag.Finding) {
	allows := make(map[allowed][]*plan.Allow)
	var wrong []diag.Finding
	for _, a := range p.Allows {
		r := find(all, a.Rule.Text)
		switch {
		case a.Rule.Text == "":
			continue // it names none, and that was reported
		case r == nil:
			wrong = append(wrong, *noSuchRule(all, a.Rule, a.Subject))
			continue
		case r.Always:
			wrong = append(wrong, diag.Finding{
				Rule: notAllowable.Name, Severity: notAllowable.Severity, Subject: a.Subject, Span: a.Rule.Span,
				Message: fmt.Sprintf("`%s` cannot be allowed: mend what it reports", r.Name),
				Fixes:   []diag.Fix{{Title: "take the line out"}},
			})
			continue
		case blank(a.Reason):
			wrong = append(wrong, *noReason("allow "+r.Name, a.Subject, a.Span))
		}
		for _, subject := range subjectsOf(a) {
			key := allowed{r.Name, subject}
			allows[key] = append(allows[key], a)
		}
	}
	return allows, wrong
}

// subjectsOf are the paths on which an allow silences its rule: what `on` names, else the
// block in which it stands.
func subjectsOf(a *plan.Allow) []string {
	if len(a.On) == 0 {
		return []string{a.Subject}
	}
	var on []string
	for _, ref := range a.On {
		if ref.To != nil {
			on = append(on, ref.To.Path)
		}
	}
	return on
}

// outward ranges over a path and all that it is inside of: "carcass.upper.front",
// "carcass.upper", "carcass", and "", the plan.
func outward(path string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for yield(path) && path != "" {
			path = path[:max(strings.LastIndexByte(path, '.'), 0)]
		}
	}
}

// filesThatDraw are the files in which a piece, or a part of one, is drawn.
func filesThatDraw(p *plan.Plan) map[*diag.File]bool {
	files := make(map[*diag.File]bool)
	for _, a := range p.Assemblies {
		files[a.Name.Span.File] = true
	}
	for _, b := range p.Builds {
		files[b.Span.File] = true
	}
	return files
}

func blank(t plan.Text) bool { return strings.TrimSpace(t.Text) == "" }

func noSuchRule(all []*Rule, name plan.Text, subject string) *diag.Finding {
	f := &diag.Finding{
		Rule: unknownRule.Name, Severity: unknownRule.Severity, Subject: subject, Span: name.Span,
		Message: fmt.Sprintf("there is no rule `%s`", name.Text),
	}
	if near := nearest(all, name.Text); near != "" {
		f.Message += fmt.Sprintf(": did you mean `%s`?", near)
		f.Fixes = []diag.Fix{{
			Title: fmt.Sprintf("write `%s`", near), Safe: true,
			Edits: []diag.Edit{{Span: name.Span, Text: near}},
		}}
	}
	return f
}

func noReason(line, subject string, at diag.Span) *diag.Finding {
	return &diag.Finding{
		Rule: missingReason.Name, Severity: missingReason.Severity, Subject: subject, Span: at,
		Message: fmt.Sprintf("`%s` gives no reason: say why in quotes, such as \"measured on the finished case\"", line),
	}
}
