// Package internal_test holds the doors between the packages: which of ours each may know,
// and through which one each library from outside comes in.
package internal_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "plancheck/"

// door says what a package may import: ours, and from outside. The standard library is
// free, save for the network.
type door struct {
	pkg           string
	ours, outside []string
}

// doors are all there are, in the order in which data passes through the packages.
var doors = []door{
	{"internal/diag", nil, nil},
	{"lang", []string{"internal/diag"}, []string{"github.com/alecthomas/participle/v2"}},
	{"internal/wood", nil, []string{"gonum.org/v1/gonum"}},
	{"internal/plan", []string{"internal/diag", "lang", "internal/wood"}, nil},
	{"rules", []string{"internal/diag", "lang", "internal/wood", "internal/plan"}, nil},
	{"internal/draw", []string{"internal/wood", "internal/plan"}, nil},
	{
		"internal/report",
		[]string{"internal/diag", "lang", "internal/wood", "internal/plan", "rules", "internal/draw"},
		[]string{"github.com/fatih/color"},
	},
	{
		"cmd/plancheck",
		[]string{"internal/diag", "lang", "internal/wood", "internal/plan", "rules", "internal/report"},
		[]string{
			"github.com/spf13/cobra", "github.com/spf13/pflag", "golang.org/x/term",
			"github.com/fsnotify/fsnotify", "github.com/rogpeppe/go-internal/diff",
		},
	},
}

// forTests are the libraries that only tests may import.
var forTests = []string{
	"github.com/sebdah/goldie/v2",
	"github.com/rogpeppe/go-internal",
	"pgregory.net/rapid",
	"github.com/santhosh-tekuri/jsonschema/v6",
}

func TestDoors(t *testing.T) {
	seen := make(map[string]bool)
	err := filepath.WalkDir("..", func(file string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name := entry.Name(); name != ".." && strings.HasPrefix(name, ".") || name == "fixtures" {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(file, ".go") {
			return nil
		}
		name := filepath.ToSlash(strings.TrimPrefix(file, ".."+string(filepath.Separator)))
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		seen[path.Dir(name)] = true
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			if !mayImport(name, imported) {
				t.Errorf("%s may not import %s", name, imported)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range doors {
		if !seen[d.pkg] {
			t.Errorf("%s has a door and is not there", d.pkg)
		}
	}
}

// mayImport reports whether a file, by its path in the module, may import a package.
// A test may look at all of ours, since what it proves may take the whole way.
func mayImport(file, imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	isTest := strings.HasSuffix(file, "_test.go")
	i := slices.IndexFunc(doors, func(d door) bool { return d.pkg == path.Dir(file) })
	switch own, isOwn := strings.CutPrefix(imported, module); {
	case isOwn:
		return isTest || i >= 0 && slices.Contains(doors[i].ours, own)
	case first == "net":
		return imported == "net/url" // which reads and writes addresses, and opens none
	case !strings.Contains(first, "."):
		return true // the standard library
	}
	return isTest && within(forTests, imported) || i >= 0 && within(doors[i].outside, imported)
}

// within reports whether a package is one of the libraries, or inside one.
func within(libraries []string, pkg string) bool {
	return slices.ContainsFunc(libraries, func(l string) bool { return pkg == l || strings.HasPrefix(pkg, l+"/") })
}

func TestMayImport(t *testing.T) {
	tests := []struct {
		file, imported string
		want           bool
	}{
		{"lang/parse.go", "plancheck/internal/diag", true},
		{"lang/parse.go", "plancheck/rules", false},
		{"lang/parse.go", "github.com/alecthomas/participle/v2/lexer", true},
		{"rules/rules.go", "github.com/alecthomas/participle/v2", false},
		{"rules/rules.go", "github.com/fatih/color", false},
		{"internal/wood/laminate.go", "gonum.org/v1/gonum/mat", true},
		{"rules/rules.go", "gonum.org/v1/gonum/mat", false},
		{"rules/rules.go", "github.com/sebdah/goldie/v2", false},
		{"rules/rules_test.go", "github.com/sebdah/goldie/v2", true},
		{"rules/rules_test.go", "plancheck/internal/report", true},
		{"cmd/plancheck/main.go", "net/http", false},
		{"cmd/plancheck/main_test.go", "net", false},
		{"internal/report/sarif.go", "net/url", true},
		{"cmd/plancheck/main.go", "net/netip", false},
		{"newcomer/a.go", "plancheck/internal/diag", false},
		{"newcomer/a.go", "strings", true},
		{"internal/diag/sort.go", "plancheck/lang", false},
	}
	for _, test := range tests {
		if got := mayImport(test.file, test.imported); got != test.want {
			t.Errorf("%s importing %s: %t", test.file, test.imported, got)
		}
	}
}
