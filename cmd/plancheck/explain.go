package main

// plancheck explain: what one rule is about. plancheck rules: all of them.

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"plancheck/internal/report"
	"plancheck/rules"
)

func newExplain(s *streams) *cobra.Command {
	return &cobra.Command{
		Use:   "explain RULE",
		Short: "say what a rule is about, and what to do about its findings",
		Long: `Say what a rule is about: what goes wrong at the bench, what to do, where its figures come from,
and a short plan that shows the fault and its mend. The name of a rule stands in
brackets behind each of its findings.`,
		Example: `  plancheck explain rail-length`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("name one rule, as in `plancheck explain rail-length`; `plancheck rules` lists them")
			}
			return nil
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			var names []string
			for _, r := range rules.All {
				names = append(names, cobra.CompletionWithDesc(r.Name, r.Summary))
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			r := rules.Find(args[0])
			if r == nil {
				return unknownRule(args[0])
			}
			_, err := io.WriteString(s.out, report.Explain(r))
			return err
		},
	}
}

func unknownRule(name string) error {
	if near := rules.Nearest(name); near != "" {
		return fmt.Errorf("there is no rule %q; did you mean %q?", name, near)
	}
	return fmt.Errorf("there is no rule %q; `plancheck rules` lists them", name)
}

func newRules(s *streams) *cobra.Command {
	return &cobra.Command{
		Use:   "rules",
		Short: "list every rule",
		Long: `List every rule with its severity and the fault that it finds. An error will not go together, or
will break, bind or split; a warning is against good practice; advice is said once.`,
		Example: "  plancheck rules",
		Args:    nothing,
		RunE: func(*cobra.Command, []string) error {
			_, err := s.out.Write(ruleTable())
			return err
		},
	}
}

// ruleTable is every rule on a line, group by group.
func ruleTable() []byte {
	all := slices.Clone(rules.All)
	slices.SortStableFunc(all, func(a, b *rules.Rule) int { return cmp.Compare(a.Group, b.Group) })
	wide := 0
	for _, r := range all {
		wide = max(wide, len(r.Name))
	}
	var b bytes.Buffer
	for i, r := range all {
		if i > 0 && r.Group != all[i-1].Group {
			b.WriteString("\n")
		}
		if i == 0 || r.Group != all[i-1].Group {
			fmt.Fprintf(&b, "%s\n", r.Group)
		}
		fmt.Fprintf(&b, "  %-*s  %-7s  %s\n", wide, r.Name, r.Severity, r.Summary)
	}
	return b.Bytes()
}

// nothing refuses arguments.
func nothing(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("`%s` stands alone, without %q", cmd.CommandPath(), args[0])
	}
	return nil
}
