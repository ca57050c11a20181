package main

// Measurements of whole processes, as figures and as ratios to what anyone can repeat on the
// same machine: an empty Go program, and the standard library reading Go. The figures are
// printed. Bounds are loose, and on the work of the processors, not on the clock, since
// machines that run tests are slow and shared.

import (
	"cmp"
	"fmt"
	goparser "go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

func TestMeasure(t *testing.T) {
	if testing.Short() {
		t.Skip("takes half a minute")
	}
	t.Log("repeat with: go test ./cmd/plancheck -run Measure -v -count 1")
	t.Logf("%s/%s, %d processors, %s; medians", runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), runtime.Version())
	plancheck := build(t, ".")
	check := func(path string) spent { return mustBeClean(t, spend(t, plancheck, path)) }

	path, lines := bigPlan(t, 100_000)
	big := median(5, func() spent { return check(path) })
	t.Logf("%d lines: %s, %.0f lines/s", lines, big, float64(lines)/big.time.Seconds())
	if big.work > 3*time.Second || big.peak > 400<<20 {
		t.Error("a plan of 100,000 lines takes more than 3 s or 400 MB")
	}

	reading := readGo(t, lines)
	t.Logf("go/parser reads as many lines in %s: a whole check takes %.1f times that", reading.Round(time.Millisecond), big.time.Seconds()/reading.Seconds())

	nothing := emptyProgram(t)
	small, _ := bigPlan(t, 300)
	var checks, empties []spent
	for range 25 { // in turn, so that both meet the same machine
		empties = append(empties, spend(t, nothing))
		checks = append(checks, check(small))
	}
	empty, short := middle(empties), middle(checks)
	t.Logf("300 lines: %s, %.1f ms more than an empty program", short, 1000*(short.time-empty.time).Seconds())
	if short.work-empty.work > 50*time.Millisecond {
		t.Error("a plan of 300 lines takes more than 50 ms more than an empty program")
	}

	folder := manyPlans(t, 1000)
	many := median(3, func() spent { return check(folder) })
	t.Logf("1000 plans of 300 lines: %s", many)
	if many.work > 6*time.Second {
		t.Error("1000 plans of 300 lines take more than 6 s of work")
	}

	path, tenfold := bigPlan(t, 1_000_000)
	huge := check(path)
	if again := check(path); again.work < huge.work { // other programs only ever add to it
		huge = again
	}
	slower := huge.work.Seconds() / big.work.Seconds()
	larger := float64(huge.peak) / float64(max(big.peak, 1))
	t.Logf("%d lines: %s: %.1f times the work, %.1f times the memory", tenfold, huge, slower, larger)
	if slower > 14 || larger > 14 && big.peak > 0 {
		t.Error("ten times the lines take far more than ten times as much")
	}
}

// manyPlans is a folder with so many plans of 300 lines.
func manyPlans(t *testing.T, n int) string {
	t.Helper()
	one, _ := bigPlan(t, 300)
	text, err := os.ReadFile(one)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	for i := range n {
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("piece-%04d.plan", i)), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// mustBeClean holds a run to having found nothing.
func mustBeClean(t *testing.T, s spent) spent {
	t.Helper()
	if s.code != clean {
		t.Fatalf("exit %d\n%.2000s", s.code, s.out)
	}
	return s
}

func (s spent) String() string {
	return fmt.Sprintf("%.1f ms (%.1f ms of work), peak %.1f MB", 1000*s.time.Seconds(), 1000*s.work.Seconds(), float64(s.peak)/1e6)
}

// median is the middle one, by time, of n runs.
func median(n int, run func() spent) spent {
	runs := make([]spent, n)
	for i := range runs {
		runs[i] = run()
	}
	return middle(runs)
}

func middle(runs []spent) spent {
	slices.SortFunc(runs, func(a, b spent) int { return cmp.Compare(a.time, b.time) })
	return runs[len(runs)/2]
}

// emptyProgram is a Go program that does nothing.
func emptyProgram(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	for name, text := range map[string]string{"go.mod": "module empty\n", "main.go": "package main\n\nfunc main() {}\n"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return build(t, folder)
}

// readGo is how long the standard library takes to read so many lines of Go.
func readGo(t *testing.T, lines int) time.Duration {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	var sources [][]byte
	err = filepath.WalkDir(filepath.Join(strings.TrimSpace(string(root)), "src", "net"), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.Contains(path, "testdata") {
			return err
		}
		text, err := os.ReadFile(path)
		sources = append(sources, text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	var times []time.Duration
	for range 5 {
		left, start := lines, time.Now()
		for i := 0; left > 0; i = (i + 1) % len(sources) {
			if _, err := goparser.ParseFile(token.NewFileSet(), "x.go", sources[i], goparser.ParseComments|goparser.SkipObjectResolution); err != nil {
				t.Fatal(err)
			}
			left -= strings.Count(string(sources[i]), "\n")
		}
		times = append(times, time.Since(start))
	}
	slices.Sort(times)
	return times[len(times)/2]
}
