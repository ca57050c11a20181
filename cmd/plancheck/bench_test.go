package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// BenchmarkCheck100k is the whole check of a plan of 100,000 lines: read from a file, worked
// out, judged by every rule, and reported as text.
func BenchmarkCheck100k(b *testing.B) {
	path, lines := bigPlan(b, 100_000)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for b.Loop() {
		var out, errs bytes.Buffer
		if code := run([]string{"check", path}, nil, &out, &errs); code != clean {
			b.Fatalf("exit %d\n%s%.2000s", code, errs.String(), out.String())
		}
	}
	runtime.ReadMemStats(&after)
	n := float64(b.N)
	b.ReportMetric(float64(lines)*n/b.Elapsed().Seconds(), "lines/s")
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/n/1e6, "MB/op")
}

// bigPlan writes a plan of about so many lines: what the sound cabinet defines, once, and
// the cabinet itself again and again, each under names of its own.
func bigPlan(tb testing.TB, most int) (path string, lines int) {
	tb.Helper()
	text, err := os.ReadFile("../../fixtures/projects/cabinet/sound.plan")
	if err != nil {
		tb.Fatal(err)
	}
	defined, drawn, ok := strings.Cut(string(text), "\ncase carcass {")
	if !ok {
		tb.Fatal("the cabinet does not start with its carcass")
	}
	drawn = "\ncase carcass {" + drawn

	path = filepath.Join(tb.TempDir(), fmt.Sprintf("big-%d.plan", most))
	file, err := os.Create(path)
	if err != nil {
		tb.Fatal(err)
	}
	write := func(text string) {
		if _, err := io.WriteString(file, text); err != nil {
			tb.Fatal(err)
		}
		lines += strings.Count(text, "\n")
	}
	write(strings.Replace(defined, " ; leaves 24", "", 1)) // as many as it takes
	for i := 1; lines < most; i++ {
		write(strings.NewReplacer("carcass", fmt.Sprint("carcass-", i), "leaf-frame", fmt.Sprint("leaf-frame-", i), "assembly plinth", fmt.Sprint("assembly plinth-", i)).Replace(drawn))
	}
	if err := file.Close(); err != nil {
		tb.Fatal(err)
	}
	return path, lines
}
