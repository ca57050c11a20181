package main

// plancheck layup: the plies of pressed boards, and how they keep flat.

import (
	"fmt"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
)

func newLayup(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "layup PATH [NAME]",
		Short: "show the plies of a pressed board, and how far it may warp",
		Long: `Show each layup of a plan, or the one that is named: its plies from face to back, how stiff it is,
how far the largest thing that is made of it may come out of flat at the driest and the most humid
of the year, which ply is to blame, and the least change that would balance it. The warp is an
upper guide.`,
		Example: `  plancheck layup cabinet.plan
  plancheck layup cabinet.plan face`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 1 || len(args) > 2 {
				return fmt.Errorf("name one plan, and a layup in it if you like, as in `plancheck layup cabinet.plan face`")
			}
			return nil
		},
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), json for programs", "text", "json")
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		name := ""
		if len(args) == 2 {
			name = args[1]
		}
		return listOf(s, args[0], func(p *plan.Plan, errors int) error {
			layups := report.Layups(p, name)
			switch {
			case len(layups) == 0:
				return report.Failure{Path: args[0], Err: noLayup(p, name)}
			case format.is == "json":
				return report.LayupJSON(s.out, p, layups, errors)
			}
			return report.LayupText(s.out, p, layups)
		})
	}
	return cmd
}

// noLayup says that a plan has no layup, or none of a name.
func noLayup(p *plan.Plan, name string) error {
	var names []string
	for _, m := range report.Layups(p, "") {
		names = append(names, m.Name.Text)
	}
	near := diag.Nearest(name, names)
	switch {
	case len(names) == 0:
		return fmt.Errorf("the plan presses no layup")
	case near != "":
		return fmt.Errorf("there is no layup %q; did you mean %q?", name, near)
	}
	return fmt.Errorf("there is no layup %q; there is %q", name, names[0])
}
