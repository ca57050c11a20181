package rules_test

// The table of rules in README.md says what the list of rules says. Write it anew with
// GOLDIE_UPDATE=true, the variable that accepts goldens.

import (
	"cmp"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"plancheck/rules"
)

const (
	readme     = "../README.md"
	tableStart = "<!-- rules: written by go test ./rules -->\n"
	tableEnd   = "<!-- end of rules -->\n"
)

func TestReadmeTable(t *testing.T) {
	bytes, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(bytes), tableStart)
	written, after, end := strings.Cut(rest, tableEnd)
	if !ok || !end {
		t.Fatalf("README.md lacks the lines between which the table stands:\n%s%s", tableStart, tableEnd)
	}
	table := rulesTable()
	if written == table {
		return
	}
	if os.Getenv("GOLDIE_UPDATE") != "true" {
		t.Fatalf("the table of rules in README.md is out of date: run GOLDIE_UPDATE=true go test ./rules\nwant\n%s", table)
	}
	if err := os.WriteFile(readme, []byte(before+tableStart+table+tableEnd+after), 0o644); err != nil {
		t.Fatal(err)
	}
}

// rulesTable is every rule, group by group, in Markdown.
func rulesTable() string {
	all := slices.Clone(rules.All)
	slices.SortStableFunc(all, func(a, b *rules.Rule) int { return cmp.Compare(a.Group, b.Group) })
	var b strings.Builder
	b.WriteString("\n| rule | severity | what it finds |\n| --- | --- | --- |\n")
	for i, r := range all {
		if i == 0 || r.Group != all[i-1].Group {
			fmt.Fprintf(&b, "| **%s** | | |\n", r.Group)
		}
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", r.Name, r.Severity, strings.ReplaceAll(r.Summary, "|", `\|`))
	}
	b.WriteString("\n")
	return b.String()
}
