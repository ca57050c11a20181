package lang

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/sebdah/goldie/v2"
	"pgregory.net/rapid"

	"plancheck/internal/diag"
)

func golden(t *testing.T, folder string) *goldie.Goldie {
	return goldie.New(t, goldie.WithFixtureDir(filepath.Join("..", "fixtures", "lang", folder)), goldie.WithNameSuffix(".golden"))
}

// plans are the fixtures in a folder, by name.
func plans(t *testing.T, folder string) map[string]string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("..", "fixtures", "lang", folder, "*.plan"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no plans in %s: %v", folder, err)
	}
	texts := map[string]string{}
	for _, path := range paths {
		name := strings.TrimSuffix(filepath.Base(path), ".plan")
		texts[name] = fixture(t, filepath.Join(folder, name+".plan"))
	}
	return texts
}

func TestFormatGolden(t *testing.T) {
	texts := plans(t, "format")
	texts["cabinet"] = fixture(t, "cabinet.plan")
	for name, text := range texts {
		t.Run(name, func(t *testing.T) {
			golden(t, "format").Assert(t, name, []byte(checkFormat(t, text)))
		})
	}
}

// checkFormat formats a sound plan and holds the result to what Format promises.
func checkFormat(t rapid.TB, text string) string {
	t.Helper()
	tree := sound(t, text)
	once := Format(tree)
	again, found := Parse(diag.NewFile("again.plan", once))
	checkPlaces(t, again, found)
	if len(found) > 0 {
		t.Fatalf("%q\nis laid out as %q:\n%s", text, once, found[0].Message)
	}
	if a, b := outline(tree), outline(again); a != b {
		t.Fatalf("%q\nis laid out as %q,\nwhich says\n%s\nnot\n%s", text, once, b, a)
	}
	if a, b := commentTexts(tree), commentTexts(again); !slices.Equal(a, b) {
		t.Fatalf("%q\nis laid out as %q\nwith the comments %q, not %q", text, once, b, a)
	}
	if twice := Format(again); twice != once {
		t.Fatalf("%q\nis laid out first as\n%s\nthen as\n%s", text, once, twice)
	}
	for line := range strings.Lines(once) {
		if line != strings.TrimRight(line, " \t\r\n")+"\n" {
			t.Fatalf("%q\nis laid out with the line %q", text, line)
		}
	}
	return once
}

// Any plan, however it is laid out, keeps what it says and its comments.
func TestFormatKeeps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var g generator
		g.T = t
		g.body(0)
		checkFormat(t, g.text.String())
	})
}

// generator writes a plan at random, in any layout.
type generator struct {
	*rapid.T
	text strings.Builder
}

func (g *generator) put(choices ...string) {
	g.text.WriteString(rapid.SampledFrom(choices).Draw(g.T, "text"))
}

func (g *generator) times(what string, most int) int {
	return rapid.IntRange(0, most).Draw(g.T, what)
}

func (g *generator) blank() { g.put(" ", " ", "  ", "\t", "      ") }

func (g *generator) body(depth int) {
	for range g.times("statements", 5) {
		g.put("", "", "", "\n", "\n\n\n", "  ", "# about this\n", "\n# above\n\n", "\n  # above\n")
		g.statement(depth)
		g.put("\n", "\n", "\n", ";", " ; ", "  # behind\n", "\n\n", " ;# tight\n", " ; ; ")
	}
	g.put("", "", "\n# last\n", "# last\n\n\n")
}

func (g *generator) statement(depth int) {
	g.put("shelf", "rail", "of", "let gap =", "edging", "check", "frame", "joint")
	if strings.HasSuffix(g.text.String(), "=") {
		g.blank()
		g.value(0)
		return
	}
	if g.times("count", 8) == 0 {
		g.put(" x 3 for", " x8 for", " x (a + 1)\tfor")
	}
	for range g.times("values", 4) {
		g.blank()
		g.value(0)
		g.put(" word", " word", "\tfoot", " with-a-long-name", " \"a text\"") // no two numbers side by side
	}
	if depth < 3 && g.times("block", 3) == 0 {
		g.put("{", " {", " {\n", " { # open\n")
		g.body(depth + 1)
		g.put("}", " }", "\n}", "\n\n  }")
	}
}

func (g *generator) value(depth int) {
	g.put("3", "3  1/2", "18 mm", "a", "carcass.upper", `"a text # none"`, "66F", `2'6"`, "1:7", "(-3)")
	for range g.times("more", 2) {
		g.put(" + ", " - ", " * ", " / ", ", ", " x ", "  ,\t")
		if depth < 2 && g.times("bracket", 2) == 0 {
			g.put("(", "min(", "( ", "(\n", "( # in\n  # own\n", "(\n\n")
			g.put("3", "b", "-b", "3  1/2")
			g.put(" + c", " -\n c", " # in\n * 3", "", "\n  # own\n / 2")
			g.put(")", " )", "\n)", " # in\n\n)")
			continue
		}
		g.put("4", "5 1/2", "b", "18mm")
	}
}
