package main

// plancheck review: a page for the bench.

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
	"plancheck/internal/report"
)

func newReview(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "review PATH [-o FILE]",
		Short: "make the review for the bench: a page to print",
		Long: `Make the review of a plan for the evening before cutting: one HTML page, without script and network,
that prints on A4 and on Letter. It has what must be mended, drawings to scale on which each finding
is marked, the cutting list with boxes to tick, and the plan itself.

A plan with errors gets its review too, and exit code 1.`,
		Example: `  plancheck review cabinet.plan -o review.html
  plancheck review cabinet.plan > review.html`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name one plan, as in `plancheck review cabinet.plan -o review.html`")
			}
			return nil
		},
		ValidArgsFunction: planFiles,
	}
	output := cmd.Flags().StringP("output", "o", "", "write into this file, whole or not at all")
	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		src, err := onePlan(paths[0])
		if err != nil {
			return err
		}
		p, result := judge(src, s)
		if result.err != nil {
			return report.Failure{Path: src.name, Err: result.err}
		}
		var page bytes.Buffer
		if err := report.Review(&page, p, result.findings, revisionNow(src)); err != nil {
			return err
		}
		if *output == "" {
			_, err = s.out.Write(page.Bytes())
		} else if err = create(*output, page.String()); err != nil {
			err = report.Failure{Path: *output, Err: reason(err)}
		}
		if err == nil && blocks(result.findings, diag.Error.String()) {
			err = errFound
		}
		return err
	}
	return cmd
}

// revisionNow is the revision in git at which a plan stands, and whether it was changed since; "" where
// git has none.
func revisionNow(src source) string {
	if src.name == standardInputName {
		return ""
	}
	folder := filepath.Dir(src.name)
	git := func(args ...string) (string, error) {
		out, err := exec.Command("git", append([]string{"-C", folder}, args...)...).Output()
		return strings.TrimSpace(string(out)), err
	}
	at, err := git("log", "-1", "--format=%h", "--", filepath.Base(src.name))
	if err != nil || at == "" {
		return ""
	}
	if changed, err := git("status", "--porcelain", "--", filepath.Base(src.name)); err != nil || changed != "" {
		at += " and changes since"
	}
	return at
}

// create writes a file, whole or not at all.
func create(path, text string) error {
	if _, err := os.Lstat(path); err == nil {
		return replace(path, text)
	}
	return put(path, text, 0o644)
}
