package main

// plancheck fmt: plans set out neatly.

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"plancheck/internal/report"
	"plancheck/lang"
)

func newFmt(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "fmt [--write|--diff|--check|--list] PATH…",
		Short: "set plans out neatly",
		Long: `Set plans out neatly: two blanks for each block, the values of neighbouring lines under each other.
Comments and figures stay as they are written, and so does what the plan means.

Without a flag, one plan is written to standard output and its file stays as it is. A plan with a
line that cannot be read is left alone, whatever is asked.

Exit code: 0 done; 1 --check or --diff found a plan that is not set out so; 2 the work could not
be done.`,
		Example: `  plancheck fmt cabinet.plan            show it
  plancheck fmt --diff jobs             show what would change
  plancheck fmt --write jobs            change the files
  plancheck fmt --check jobs            for a build: exit 1 if a file differs
  plancheck fmt - < cabinet.plan        as a filter`,
		ValidArgsFunction: planFiles,
	}
	flags := cmd.Flags()
	write := flags.Bool("write", false, "rewrite files that differ, and name them")
	differ := flags.Bool("diff", false, "show what differs, line by line; exit 1 if anything does")
	check := flags.Bool("check", false, "name files that differ; exit 1 if any does")
	list := flags.Bool("list", false, "name files that differ; exit 0")

	cmd.RunE = func(_ *cobra.Command, paths []string) error {
		if len(paths) == 0 {
			return errNoPath
		}
		asked := 0
		for _, flag := range []bool{*write, *differ, *check, *list} {
			if flag {
				asked++
			}
		}
		if asked > 1 {
			return errors.New("take one of --write, --diff, --check and --list")
		}
		sources, failures := gather(paths)
		if asked == 0 && len(sources) > 1 {
			return fmt.Errorf("%d plans do not go to standard output together; add --write, --diff, --check or --list", len(sources))
		}
		for _, f := range failures {
			s.complain(f)
		}
		bad, different := len(failures) > 0, false
		for _, src := range sources {
			before, after, err := formatted(src, s)
			if err == nil && before != after {
				different = true
				switch {
				case *write:
					err = rewrite(src, after, s)
				case *differ:
					_, err = s.out.Write(plainDiff(src.name, before, after, "formatted"))
				case *check, *list:
					_, err = fmt.Fprintln(s.out, report.Plain(src.name))
				}
			}
			if err == nil && asked == 0 {
				_, err = io.WriteString(s.out, after)
			}
			if err != nil {
				bad = true
				s.complain(report.Failure{Path: src.name, Err: err})
			}
		}
		switch {
		case bad:
			return errFailed
		case different && (*check || *differ):
			return errFound
		}
		return nil
	}
	return cmd
}

// formatted is a plan's text as it is and as it should be. A plan that cannot be read whole is
// an error, after its faults were shown.
func formatted(src source, s *streams) (before, after string, err error) {
	file, err := src.read(s.in)
	if err != nil {
		return "", "", err
	}
	tree, faults := lang.Parse(file)
	if len(faults) > 0 {
		if err := report.Findings(s.err, faults, false); err != nil {
			return "", "", err
		}
		return "", "", errors.New("left alone, since not all of it can be read")
	}
	return file.Text, lang.Format(tree), nil
}

// plainDiff is what differs between a file and what would be written, line by line.
func plainDiff(name, before, after, how string) []byte {
	name = report.Plain(name)
	return diff.Diff(name, []byte(before), name+" ("+how+")", []byte(after))
}

// rewrite replaces a plan's file, or writes to standard output what came from standard input.
func rewrite(src source, text string, s *streams) error {
	if src.name == standardInputName {
		_, err := io.WriteString(s.out, text)
		return err
	}
	if err := replace(src.name, text); err != nil {
		return reason(err)
	}
	_, err := fmt.Fprintln(s.out, report.Plain(src.name))
	return err
}

// replace puts a text in place of a file's, whole or not at all, and keeps its mode. A link
// stays a link.
func replace(path, text string) error {
	path, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	old, err := os.OpenFile(path, os.O_RDWR, 0) // a file that may not be written is not replaced either
	if err != nil {
		return err
	}
	info, err := old.Stat()
	old.Close()
	if err != nil {
		return err
	}
	return put(path, text, info.Mode().Perm())
}

// put writes a file under a name that it gets once all of it is there.
func put(path, text string, mode os.FileMode) error {
	file, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(file.Name()) // fails once it has its new name
	_, err = file.WriteString(text)
	err = errors.Join(err, file.Chmod(mode), file.Sync(), file.Close())
	if err != nil {
		return err
	}
	return os.Rename(file.Name(), path)
}
