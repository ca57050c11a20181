package rules

import (
	"fmt"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

var lookAlikeNames = &Rule{
	Name: "look-alike-names", Group: Hygiene, Severity: diag.Warning,
	Summary: "two names differ only in case, or look alike",
	Doc: `"rail-1" and "rail-l" are two rails to plancheck and one to whoever reads the cutting list at the saw. A plan in which "Oak"
and "oak" are two woods is read wrong sooner or later.

Give one of them a name that is another word. Capitals, 0 and O, 1 and l and I, - and _ count as one. Inside an assembly names
are its own, so that each frame may have a rail "head".`,
	Sources: "Common practice, no source.",
	Sound:   `Names that differ in a letter that is seen, numbers that differ, and like names in two frames.`,
	Bad: `wood oak { species "white oak" ; sawn quarter }
wood Oak { species "northern red oak" ; sawn flat }
`,
	Good: `wood oak     { species "white oak" ; sawn quarter }
wood red-oak { species "northern red oak" ; sawn flat }
`,
	Check: func(pass *Pass) {
		p := pass.Plan
		file := alikes{}
		for d := range supplies(p) {
			file.add(pass, d, "")
		}
		for _, a := range p.Assemblies {
			if a.Build == nil {
				file.add(pass, declaration{a.Kind.String(), &a.Name}, "")
			}
			inside := alikes{}
			for n := range a.Nodes() {
				if it := plan.It(n); it.Name.Text != "" && it.Row == "" {
					inside.add(pass, declaration{it.Word, &it.Name}, plan.PathOf(a)+".")
				}
			}
		}
	},
}

// alikes are the names of one space, by what they look like: in small letters, and with
// letters and figures of one shape taken as one.
type alikes map[string]declaration

var oneShape = strings.NewReplacer("0", "o", "O", "o", "1", "l", "I", "l", "_", "-")

// add takes in a name, and reports it if an earlier one looks like it; in is the path of what
// they stand in.
func (seen alikes) add(pass *Pass, d declaration, in string) {
	for _, look := range slices.Compact([]string{strings.ToLower(d.name.Text), oneShape.Replace(d.name.Text)}) {
		first, again := seen[look]
		if !again {
			seen[look] = d
			continue
		}
		if first.name.Text == d.name.Text {
			return // the same name, in what another build made
		}
		if first.name.Text > d.name.Text { // the order of the text never matters
			first, d = d, first
		}
		pass.Report(diag.Finding{
			Subject: in + d.name.Text,
			Span:    d.name.Span,
			Message: fmt.Sprintf("%s looks like %s: give one of them another name", d, first),
			Notes:   []diag.Note{{Span: first.name.Span, Message: "this is the other"}},
		})
		return
	}
}
