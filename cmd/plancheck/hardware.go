package main

// plancheck hardware: what to buy for a piece, and where each sits.

import (
	"io"

	"github.com/spf13/cobra"

	"plancheck/internal/plan"
	"plancheck/internal/report"
)

func newHardware(s *streams) *cobra.Command {
	generic := false
	cmd := &cobra.Command{
		Use:   "hardware PATH",
		Short: "list what hardware to buy, and where each piece sits",
		Long: `List the hardware of a piece, what to buy with its figures and how many, and where each piece sits,
ready to be marked out: measured from a named edge or end to the middle of the piece or of its
hole, with what is cut for it and how deep.

What several parts have alike stands on one line. Slides are counted in pairs. Wood screws that come
with a hinge or a slide are counted only where the plan fastens something with them. A place that
the plan does not give stands as ?. Where common practice has a place for it (a slide's middle at
half of the box's sides, the plates of cup hinges 37mm behind the leaf), that stands, marked as
typical: the maker's sheet wins.

A plan with errors still gets its list, with a line on top that says so, and exit code 1.

Typical hardware of every kind comes with plancheck: hinges, catches and locks, slides, screws,
bolts, inserts, dowels, hooks and more. A plan takes it in by "use generic" and names it, as in
"hinge butt-2", and --generic prints it with the sources of its figures. The maker's own sheet
wins over it.`,
		Example: `  plancheck hardware cabinet.plan
  plancheck hardware --format csv cabinet.plan > hardware.csv
  plancheck hardware --generic`,
		Args: func(cmd *cobra.Command, args []string) error {
			if generic {
				return cobra.NoArgs(cmd, args)
			}
			return oneArg("hardware")(cmd, args)
		},
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), csv for a spreadsheet, json for programs", "text", "csv", "json")
	cmd.Flags().BoolVar(&generic, "generic", false, "print the typical hardware that comes with plancheck")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		if generic {
			_, err := io.WriteString(s.out, plan.Generic)
			return err
		}
		return listOf(s, paths[0], func(p *plan.Plan, errors int) error {
			rows := report.HardwareList(p)
			switch format.is {
			case "csv":
				return report.HardwareCSV(s.out, p, rows)
			case "json":
				return report.HardwareJSON(s.out, p, rows, errors)
			}
			return report.HardwareText(s.out, p, rows, errors)
		})
	}
	return cmd
}
