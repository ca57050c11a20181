// Plancheck reads a furniture maker's plan and says before the first cut what will not fit.
package main

import (
	"errors"
	"io"
	"os"
	"runtime/debug"

	"golang.org/x/term"

	"plancheck/internal/report"
)

func main() {
	if os.Getenv("GOGC") == "" {
		// Nearly all that a check makes lives until its plan is judged: looking for what does not,
		// as often as Go does by itself, takes a third of the time and finds little.
		debug.SetGCPercent(300)
	}
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// What the process says to who started it.
const (
	clean  = 0 // nothing found
	found  = 1 // findings that block, or a file that is not formatted
	failed = 2 // could not do its work
)

var (
	// These two end a command whose outcome has been said already.
	errFound  = errors.New("found")
	errFailed = errors.New("failed")

	errNoPath = errors.New("name a plan, a folder with plans, or - for standard input")
)

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot(&streams{in: stdin, out: stdout, err: stderr})
	root.SetArgs(append([]string{}, args...)) // never nil, which would mean the process's own
	switch err := root.Execute(); {
	case err == nil:
		return clean
	case errors.Is(err, errFound):
		return found
	case errors.Is(err, errFailed):
		return failed
	default:
		io.WriteString(stderr, "plancheck: "+report.Plain(err.Error())+"\n")
		return failed
	}
}

// streams are what a command reads from and writes to.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// complain says that something could not be done, and goes on.
func (s *streams) complain(err error) {
	io.WriteString(s.err, "plancheck: "+report.Plain(err.Error())+"\n")
}

// colored decides whether what goes to standard output is coloured.
func (s *streams) colored(flag string) bool {
	file, ok := s.out.(*os.File)
	return report.UseColor(flag, os.Getenv, ok && term.IsTerminal(int(file.Fd())))
}
