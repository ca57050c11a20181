package main

// plancheck check: the findings of every plan.

import (
	"errors"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/rules"
)

func newCheck(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "check PATH…",
		Short: "say what is wrong with plans (the word check may be left out)",
		Long: `Say what is wrong with plans: every length that does not add up, every joint that will not
close, with the arithmetic and, where there is one, what to write instead.

A PATH is a file, a folder (every *.plan in it and below, without what is hidden), or - for
standard input. What a plan uses must lie in the folder that is given, or beside the
file that is given. The word check may be left out.`,
		Example: `  plancheck cabinet.plan
  plancheck jobs/*.plan shop
  plancheck --fail-on error jobs
  plancheck --format json jobs > findings.json
  plancheck --fix cabinet.plan                     write the mends that change no size
  plancheck --fix=rail-length cabinet.plan         … and those of one rule, whatever they change
  plancheck --fix=rail-length --dry-run cabinet.plan
  cat cabinet.plan | plancheck -`,
		ValidArgsFunction: planFiles,
	}
	format := choose(cmd, "format", "text", "text (the default), json, or sarif for code hosts", "text", "json", "sarif")
	color := colorFlag(cmd)
	failOn := failOnFlag(cmd)
	fix := cmd.Flags().String("fix", "", "write mends: the safe ones, and those of the named rules")
	cmd.Flags().Lookup("fix").NoOptDefVal = safely
	dry := cmd.Flags().Bool("dry-run", false, "with --fix: show what would be written, and write nothing")

	since := cmd.Flags().String("since", "", "report only what was not found at this revision in git")
	again := cmd.Flags().Bool("watch", false, "check again whenever a plan is saved, until Ctrl-C")

	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		switch {
		case len(paths) == 0:
			return errNoPath
		case *dry && *fix == "":
			return errors.New("--dry-run shows what --fix would write; say --fix too")
		case *again && *fix != "":
			return errors.New("take one of --watch and --fix")
		case *again && slices.Contains(paths, standardInput):
			return errors.New("--watch needs files; standard input is read once")
		case *fix != "":
			if done, err := fixAll(paths, *fix, *dry, s); done || err != nil {
				return err
			}
		}
		if *since != "" {
			for _, path := range paths {
				if err := knownRevision(*since, folderOf(path)); err != nil {
					return err
				}
			}
		}
		say := func() error {
			outcome := check(paths, *since, s)
			for _, f := range outcome.Failures {
				s.complain(f)
			}
			var err error
			switch format.is {
			case "json":
				err = report.JSON(s.out, outcome)
			case "sarif":
				err = report.SARIF(s.out, outcome, releaseVersion())
			default:
				err = report.Text(s.out, outcome, s.colored(color.is))
			}
			switch {
			case err != nil:
				return err
			case len(outcome.Failures) > 0:
				return errFailed
			case blocks(outcome.Findings, failOn.is):
				return errFound
			}
			return nil
		}
		if *again {
			return watch(paths, s, say)
		}
		return say()
	}
	return cmd
}

func colorFlag(cmd *cobra.Command) *choice {
	return choose(cmd, "color", report.ColorAuto, "auto (the default): on a terminal, unless NO_COLOR is set",
		report.ColorAuto, report.ColorAlways, report.ColorNever)
}

func failOnFlag(cmd *cobra.Command) *choice {
	return choose(cmd, "fail-on", diag.Warning.String(), "exit 1 from this severity up (by default from warning)",
		diag.Advice.String(), diag.Warning.String(), diag.Error.String())
}

// blocks reports whether a finding is at or above a severity.
func blocks(findings []diag.Finding, severity string) bool {
	for i := range findings {
		for at := findings[i].Severity; at >= diag.Advice; at-- {
			if at.String() == severity {
				return true
			}
		}
	}
	return false
}

// check checks what paths stand for, several plans at a time, and sets the findings down
// in the order in which the paths were given. With since, findings that were there at that revision
// are counted, and left out.
func check(paths []string, since string, s *streams) *report.Outcome {
	sources, failures := gather(paths)
	results := make([]result, len(sources))
	var next, done atomic.Int64
	var busy sync.WaitGroup
	stop := s.progress(len(sources), &done)
	for range min(runtime.GOMAXPROCS(0), len(sources)) {
		busy.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(sources); i = next.Add(1) - 1 {
				results[i] = checkOne(sources[i], since, s)
				done.Add(1)
			}
		})
	}
	busy.Wait()
	stop()

	outcome := &report.Outcome{Failures: failures}
	for i, r := range results {
		if r.err != nil {
			outcome.Failures = append(outcome.Failures, report.Failure{Path: sources[i].name, Err: r.err})
			continue
		}
		outcome.Checked.Add(r.checked)
		outcome.Findings = append(outcome.Findings, r.findings...)
		outcome.Older += r.older
	}
	if len(results) > 1 {
		outcome.Findings = once(outcome.Findings)
	}
	return outcome
}

// result is what checking one plan came to. It keeps no plan, so that a folder of thousands
// takes no more room than its findings.
type result struct {
	findings []diag.Finding
	older    int // findings that were there before, and are left out
	checked  report.Checked
	err      error
}

func checkOne(src source, since string, s *streams) result {
	_, r := judge(src, s)
	if since == "" || len(r.findings) == 0 || src.name == standardInputName {
		return r
	}
	before := src
	before.at = since
	_, old := judge(before, s)
	if old.err == nil { // a plan that is new since then has only new findings
		r.findings, _, r.older = report.Since(old.findings, r.findings, report.Named)
	}
	return r
}

// judge reads, works out and judges one plan.
func judge(src source, s *streams) (*plan.Plan, result) {
	file, err := src.read(s.in)
	if err != nil {
		return nil, result{err: err}
	}
	shelf := src.shelf()
	defer shelf.Close()
	p, findings := rules.Run(file, shelf.open)
	return p, result{findings: findings, checked: report.CheckedIn(p)}
}

// once drops what was said before: a fault in a file that several plans use.
func once(findings []diag.Finding) []diag.Finding {
	type saying struct {
		file          string
		start, end    int32
		rule, message string
	}
	said := make(map[saying]bool, len(findings))
	return slices.DeleteFunc(findings, func(f diag.Finding) bool {
		k := saying{start: f.Span.Start, end: f.Span.End, rule: f.Rule, message: f.Message}
		if f.Span.File != nil {
			k.file = f.Span.File.Name
		}
		before := said[k]
		said[k] = true
		return before
	})
}
