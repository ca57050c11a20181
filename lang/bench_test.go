package lang

import (
	goparser "go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
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

// To be read beside BenchmarkGoParser: a plan is read at least as fast as the standard
// library reads as many lines of Go.
func BenchmarkParse(b *testing.B) { benchmarkParse(b, 100_000) }

// Ten times the lines take ten times as long.
func BenchmarkParseMillion(b *testing.B) {
	if testing.Short() {
		b.Skip("a million lines")
	}
	benchmarkParse(b, 1_000_000)
}

func benchmarkParse(b *testing.B, n int) {
	text := realistic(b, n)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		if _, found := Parse(diag.NewFile("big.plan", text)); len(found) > 0 {
			b.Fatal(found[0].Message)
		}
	}
	b.ReportMetric(lines(text)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

// A file in which every twentieth line is broken costs no more than a sound one.
func BenchmarkParseBroken(b *testing.B) {
	all := strings.SplitAfter(realistic(b, 100_000), "\n")
	for i := 0; i < len(all); i += 20 {
		all[i] = "wide 27-1/2 " + all[i]
	}
	text := strings.Join(all, "")
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Parse(diag.NewFile("big.plan", text))
	}
	b.ReportMetric(lines(text)*float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}

func BenchmarkFormat(b *testing.B) {
	text := realistic(b, 100_000)
	tree, _ := Parse(diag.NewFile("big.plan", text))
	b.ReportAllocs()
	for b.Loop() {
		Format(tree)
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
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		tb.Skip("no Go source to read: ", err)
	}
	err = filepath.WalkDir(filepath.Join(strings.TrimSpace(string(root)), "src", "net"), func(path string, d fs.DirEntry, err error) error {
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

// Memory grows with the text, not faster, whatever the text is.
func TestCostIsLinear(t *testing.T) {
	for name, text := range map[string]func(n int) string{
		"a plan":             func(n int) string { return realistic(t, n) },
		"one line":           func(n int) string { return "a" + strings.Repeat(" 3/4 b", n) },
		"one text":           func(n int) string { return `a "` + strings.Repeat("b ", n) },
		"quotes":             func(n int) string { return "a " + strings.Repeat(`"\`, n) },
		"brackets on lines":  func(n int) string { return strings.Repeat("a (\n# b\n\n", n) },
		"brackets, then air": func(n int) string { return "a (3 +" + strings.Repeat("\n# b\n\n", n) + "4)" },
		"odd signs":          func(n int) string { return strings.Repeat("½", n) },
		"odd lines":          func(n int) string { return strings.Repeat("½\n", n) },
		"control signs":      func(n int) string { return strings.Repeat("\x00", n) },
		"closing braces":     func(n int) string { return strings.Repeat("}\n", n) },
		"opening braces":     func(n int) string { return strings.Repeat("a {\n", n) },
		"blocks":             func(n int) string { return strings.Repeat("a {\n", n) + strings.Repeat("}\n", n) },
		"a staircase":        func(n int) string { return strings.Repeat("a\n b\n  c {\n", n) },
		"comments":           func(n int) string { return strings.Repeat("a # b\n", n) },
		"blank":              func(n int) string { return strings.Repeat(" \n;", n) },
		"digits":             func(n int) string { return "a " + strings.Repeat("7", n) },
		"letters":            func(n int) string { return "a 7" + strings.Repeat("e", n) },
	} {
		cost := func(n int) float64 {
			file := diag.NewFile("test.plan", text(n))
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			tree, found := Parse(file)
			if len(found) == 0 {
				Format(tree)
			}
			runtime.ReadMemStats(&after)
			return float64(after.TotalAlloc - before.TotalAlloc + uint64(len(file.Text)))
		}
		few, many := cost(5_000), cost(50_000)
		if many > 15*few+1e6 {
			t.Errorf("%s: ten times the text takes %.1f times the memory", name, many/few)
		}
	}
}

// participle reads a text that it is handed whole.
func TestLexWhole(t *testing.T) {
	w, err := grammar.ParseString("test.plan", "rail head 3\nrail foot 4 { of oak }\n")
	if err != nil || len(w.lines) != 3 || w.lines[1].Values[1].Qty.Value.String() != "4" {
		t.Errorf("%d lines, %v", len(w.lines), err)
	}
}
