package main

// plancheck carry: what is carried to the room, and in which order it is put together there.

import (
	"github.com/spf13/cobra"

	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/rules"
)

func newCarry(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "carry PATH",
		Short: "list what is carried to its room, and how it is put together there",
		Long: `List each thing that a piece comes apart into ("apart"), or the piece that has a way to go ("way"):
how many, how large and how heavy each is, what holds it when it stands, and whether that is undone
by hand or with which tool. They stand in the order in which the plan's steps stand, fit and hang
them; what joints hold for good is carried as one.

A plan with errors still gets its list, with a line on top that says so, and exit code 1.`,
		Example: `  plancheck carry wardrobe.plan
  plancheck carry --format csv wardrobe.plan > carry.csv`,
		Args:              oneArg("carry"),
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), csv for a spreadsheet, json for programs", "text", "csv", "json")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		return listOf(s, paths[0], func(p *plan.Plan, errors int) error {
			rows := rules.CarryList(p)
			switch format.is {
			case "csv":
				return report.CarryCSV(s.out, p, rows)
			case "json":
				return report.CarryJSON(s.out, p, rows, errors)
			}
			return report.CarryText(s.out, p, rows, errors)
		})
	}
	return cmd
}
