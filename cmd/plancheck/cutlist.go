package main

// plancheck cutlist: every part of a piece with its sizes.

import (
	"fmt"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
)

func newCutlist(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "cutlist PATH",
		Short: "list every part with its worked-out sizes",
		Long: `List every part of a piece with its finished sizes, the length with the grain first; how many to
cut, of what, and where each belongs. A size that the plan leaves open is worked out; one that
cannot be stands as ?. Where edging goes on, the core is the size to cut before it does.

A plan with errors still gets its list, with a line on top that says so, and exit code 1. For a
spreadsheet take --format csv: it also has every size in millimetres, as plain numbers.`,
		Example: `  plancheck cutlist cabinet.plan
  plancheck cutlist --format csv cabinet.plan > cabinet.csv`,
		Args:              oneArg("cutlist"),
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), csv for a spreadsheet, json for programs", "text", "csv", "json")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		return listOf(s, paths[0], func(p *plan.Plan, errors int) error {
			rows := report.CuttingList(p)
			switch format.is {
			case "csv":
				return report.CutListCSV(s.out, p, rows)
			case "json":
				return report.CutListJSON(s.out, p, rows, errors)
			}
			return report.CutListText(s.out, p, rows, errors)
		})
	}
	return cmd
}

// oneArg asks for one plan.
func oneArg(command string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) != 1 {
			return fmt.Errorf("name one plan, as in `plancheck %s cabinet.plan`", command)
		}
		return nil
	}
}

// listOf writes a list of what is in one plan. A plan with errors still gets it, and the command fails.
func listOf(s *streams, path string, write func(p *plan.Plan, errors int) error) error {
	src, err := onePlan(path)
	if err != nil {
		return err
	}
	p, result := judge(src, s)
	if result.err != nil {
		return report.Failure{Path: src.name, Err: result.err}
	}
	errors := 0
	for _, f := range result.findings {
		if f.Severity == diag.Error {
			errors++
		}
	}
	if err := write(p, errors); err != nil {
		return err
	}
	if errors > 0 {
		s.complain(fmt.Errorf("%s has errors; `plancheck check` shows them", src.name))
		return errFound
	}
	return nil
}

// onePlan is the one plan that a path stands for.
func onePlan(path string) (source, error) {
	sources, failures := gather([]string{path})
	switch {
	case len(failures) > 0:
		return source{}, failures[0]
	case len(sources) > 1:
		return source{}, report.Failure{Path: path, Err: fmt.Errorf("there are %d plans in this folder; name one, such as %s", len(sources), sources[0].name)}
	}
	return sources[0], nil
}
