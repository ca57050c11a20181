package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"plancheck": main, "spend": spendMain})
}

// The command is tested as a command: each script of fixtures/cmd calls it as a shell would.
func TestCommand(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "../../fixtures/cmd",
		Setup: func(env *testscript.Env) error {
			recipes, err := filepath.Abs("../../fixtures/readme")
			env.Setenv("RECIPES", recipes)
			return err
		},
		UpdateScripts: os.Getenv("GOLDIE_UPDATE") == "true",
		Condition: func(cond string) (bool, error) {
			return cond == "root" && os.Geteuid() == 0, nil // who may read everything
		},
	})
}

// command runs the command in this process.
func command(t *testing.T, stdin string, args ...string) (code int, stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	code = run(args, strings.NewReader(stdin), &out, &err)
	return code, out.String(), err.String()
}

func TestVersionIsStamped(t *testing.T) {
	defer func(was string) { version = was }(version)
	version = "1.2.3"
	if _, out, _ := command(t, "", "version"); !strings.HasPrefix(out, "plancheck 1.2.3 (go") {
		t.Errorf("got %q", out)
	}
}

// Every command has a line for the list, a text, an example, and takes --help.
func TestEveryCommandIsHelpful(t *testing.T) {
	for _, c := range newRoot(&streams{}).Commands() {
		if c.Name() == "help" {
			continue
		}
		if c.Short == "" || c.Example == "" {
			t.Errorf("%s says too little of itself", c.Name())
		}
		code, out, stderr := command(t, "", c.Name(), "--help")
		if code != clean || stderr != "" || !strings.Contains(out, c.Example) {
			t.Errorf("%s --help: exit %d, %q\n%s", c.Name(), code, stderr, out)
		}
		for line := range strings.Lines(out) {
			if n := len([]rune(line)); n > 101 {
				t.Errorf("%s --help has a line of %d characters: %s", c.Name(), n-1, line)
			}
		}
	}
}

// Findings come in the order of the paths, however many plans are checked at a time.
func TestOrderIsStable(t *testing.T) {
	t.Chdir(t.TempDir())
	var args []string
	want := ""
	for i := range 200 {
		name := string(rune('a'+(i*7)%26)) + strings.Repeat("x", i) + ".plan"
		text := "let a = nosuch\n" + strings.Repeat("# a remark\n", (i*37)%200)
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, name)
		want += name + " "
	}
	for range 5 {
		code, out, stderr := command(t, "", args...)
		got := ""
		for line := range strings.Lines(out) {
			if name, _, ok := strings.Cut(line, ":1:9: error: "); ok {
				got += name + " "
			}
		}
		if code != found || stderr != "" || got != want {
			t.Fatalf("exit %d, %q, files in the order\n%s", code, stderr, got)
		}
	}
}
