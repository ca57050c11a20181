package main

// The built command as a process of its own: what it says, how long it takes, and how much
// memory it has at its peak.

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// build builds the package in a folder.
func build(t *testing.T, folder string) (program string) {
	t.Helper()
	program = filepath.Join(t.TempDir(), "program.exe") // a name that every system takes
	command := exec.Command("go", "build", "-o", program, ".")
	command.Dir = folder
	if out, err := command.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return program
}

// spent is what one run of a program came to.
type spent struct {
	code int
	out  string
	time time.Duration // by the clock
	work time.Duration // of all processors together; other programs take no part in it
	peak int64         // bytes; 0 where the system does not say
}

// spend runs a program, by way of a process of this test that has little memory: where a
// process starts another one, Linux counts its own peak as the other's.
func spend(t *testing.T, program string, args ...string) spent {
	t.Helper()
	note := filepath.Join(t.TempDir(), "spent")
	command := exec.Command("spend", append([]string{note, program}, args...)...)
	var out bytes.Buffer
	command.Stdout, command.Stderr = &out, &out
	var exit *exec.ExitError
	if err := command.Run(); err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	s := spent{code: command.ProcessState.ExitCode(), out: out.String()}
	said, err := os.ReadFile(note)
	if err != nil {
		t.Fatalf("%v\n%.2000s", err, out.String())
	}
	if _, err := fmt.Sscan(string(said), &s.time, &s.work, &s.peak); err != nil {
		t.Fatal(err)
	}
	return s
}

// spendMain is the process between: it runs a program and notes what that took.
func spendMain() {
	note, program := os.Args[1], exec.Command(os.Args[2], os.Args[3:]...)
	program.Stdin, program.Stdout, program.Stderr = os.Stdin, os.Stdout, os.Stderr
	start := time.Now()
	program.Run() // how it ended is in its state
	took := time.Since(start)
	state := program.ProcessState
	said := fmt.Sprintln(int64(took), int64(state.UserTime()+state.SystemTime()), peakOf(state))
	if err := os.WriteFile(note, []byte(said), 0o600); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(state.ExitCode())
}
