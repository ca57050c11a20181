package main

// plancheck movement: what the wood of a piece does through the year.

import (
	"github.com/spf13/cobra"

	"plancheck/internal/plan"
	"plancheck/internal/report"
)

func newMovement(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "movement PATH",
		Short: "list what the solid parts do through the year, and the room left in each fit",
		Long: `List every part of solid wood with its width across the grain as it is cut, at its driest and at
its most humid, and every fit that depends on it with the room that is left: panels and backs in
their grooves, inset leaves and fronts in their openings, drawers in the height of theirs.

A plan without solid wood is said to have none, and is no fault. A plan with errors still gets its
list, and exit code 1.`,
		Example: `  plancheck movement cabinet.plan
  plancheck movement --format csv cabinet.plan > movement.csv`,
		Args:              oneArg("movement"),
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), csv for a spreadsheet, json for programs", "text", "csv", "json")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		return listOf(s, paths[0], func(p *plan.Plan, errors int) error {
			switch format.is {
			case "csv":
				return report.MovementCSV(s.out, p)
			case "json":
				return report.MovementJSON(s.out, p, errors)
			}
			return report.MovementText(s.out, p)
		})
	}
	return cmd
}
