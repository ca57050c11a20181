package lang

import (
	goparser "go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"plancheck/internal/diag"
)

// realistic is a plan of at least n lines: the whole cabinet, again and again.
func realistic(tb testing.TB, n int) string {
	one := fixture(tb, "cabinet.plan")
	return strings.Repeat(one, 1+n/strings.Count(one, "\n"))
}

func fixture(tb testing.TB, name string) string {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join("..", "fixtures", "lang", name))
	if err != nil {
		tb.Fatal(err)
	}
	return string(text)
}

func lines(text string) float64 { return float64(strings.Count(text, "\n")) }

// The two benchmarks are to be read side by side: a plan is read at least as fast as
// the standard library reads as many lines of Go.
func BenchmarkParse(b *testing.B) {
	text := realistic(b, 100_000)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, found := Parse(diag.NewFile("big.plan", text)); len(found) > 0 {
			b.Fatal(found[0].Message)
		}
	}
	b.ReportMetric(lines(text)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

func BenchmarkGoParser(b *testing.B) {
	sources, count := goSource(b, 100_000)
	b.ReportAllocs()
	for b.Loop() {
		for _, source := range sources {
			if _, err := goparser.ParseFile(token.NewFileSet(), "x.go", source, goparser.ParseComments|goparser.SkipObjectResolution); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.ReportMetric(count*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

// goSource is at least n lines of the standard library.
func goSource(tb testing.TB, n int) (sources []string, count float64) {
	root := filepath.Join(runtime.GOROOT(), "src")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.Contains(path, "testdata") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		sources = append(sources, string(text))
		if count += lines(string(text)); count >= float64(n) {
			return filepath.SkipAll
		}
		return nil
	})
	if err != nil {
		tb.Fatal(err)
	}
	return sources, count
}
