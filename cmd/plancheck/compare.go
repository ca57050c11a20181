package main

// plancheck compare: what changed in a piece from one revision to another.

import (
	"errors"

	"github.com/spf13/cobra"

	"plancheck/internal/report"
)

func newCompare(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "say what changed in the piece, not in the text",
		Long: `Say what changed in a piece from one revision to another: outside sizes, parts that are new, gone or
of another size, joints, doors, materials and hardware; and which findings are new and which are
gone. Lines that moved, comments and another way to say the same are no change.

OLD and NEW are files, or REVISION:FILE for a file as it stood at a revision in git. For a whole
folder of plans, ` + "`plancheck check --since REVISION`" + ` tells the new findings.

Exit code: 1 only where a finding is new that blocks; what was found before does not count.`,
		Example: `  plancheck compare HEAD:cabinet.plan cabinet.plan
  plancheck compare v1:cabinet.plan v2:cabinet.plan
  plancheck compare --format markdown main:cabinet.plan cabinet.plan > change.md`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return errors.New("name two revisions, as in `plancheck compare HEAD:cabinet.plan cabinet.plan`")
			}
			return nil
		},
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), json, or markdown", "text", "json", "markdown")
	color := colorFlag(cmd)
	failOn := failOnFlag(cmd)
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		var revisions [2]report.Revision
		for i, path := range paths {
			src, err := revisionOf(path)
			if err != nil {
				return err
			}
			p, result := judge(src, s)
			if result.err != nil {
				return report.Failure{Path: path, Err: result.err}
			}
			revisions[i] = report.Revision{Name: path, Plan: p, Findings: result.findings}
		}
		c := report.Compare(revisions[0], revisions[1])
		var err error
		switch format.is {
		case "json":
			err = report.CompareJSON(s.out, c)
		case "markdown":
			err = report.CompareMarkdown(s.out, c)
		default:
			err = report.CompareText(s.out, c, s.colored(color.is))
		}
		if err == nil && blocks(c.NewFound, failOn.is) {
			err = errFound
		}
		return err
	}
	return cmd
}
