package main

// plancheck setups: how machines are set for a piece.

import (
	"github.com/spf13/cobra"

	"plancheck/internal/plan"
	"plancheck/internal/report"
)

func newSetups(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "setups PATH",
		Short: "list how machines are set for the joints, each set-up once",
		Long: `List the set-ups that a piece needs: for each kind of cut how wide the cutter is, how deep it goes,
and how far from the face or the edge that lies against the fence. Joints that share one stand
together, with the stops for each part: how long the cut is, and how far from its end; and
how many there are to make. So a machine is set once for all of them.

Depths are those of what is cut, with what is left empty below a tenon. A tenon stands with its
thickness, its length and how far its cheek lies from the face. What the plan does not place
stands as ?. Dovetails and box fingers are set out by hand or by a jig and are not listed.

A plan with errors still gets its list, with a line on top that says so, and exit code 1.`,
		Example: `  plancheck setups cabinet.plan
  plancheck setups --format csv cabinet.plan > setups.csv`,
		Args:              oneArg("setups"),
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), csv for a spreadsheet, json for programs", "text", "csv", "json")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		return listOf(s, paths[0], func(p *plan.Plan, errors int) error {
			sets := report.SetUps(p)
			switch format.is {
			case "csv":
				return report.SetUpsCSV(s.out, p, sets)
			case "json":
				return report.SetUpsJSON(s.out, p, sets, errors)
			}
			return report.SetUpsText(s.out, p, sets, errors)
		})
	}
	return cmd
}
