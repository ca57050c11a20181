package rules_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// climates are those in which the sound pieces are sound as they are drawn: most are drawn for wood of 8 %
// that goes to 6 and to 11. In a mild place it goes less far. Where the winter is dry, and where the air is
// humid all year, it is worked drier or moister, and goes about as far from there. The last is a heated house
// in an invented place, whose humidity is kept.
var climates = []struct{ name, text string }{
	{"mild", "climate { shop 8% ; dry 7% ; humid 9% }"},
	{"dry in winter", "climate { shop 7% ; dry 5% ; humid 9% }"},
	{"humid", "climate { shop 11% ; dry 9% ; humid 13% }"},
	{"house", `climate { shop 8% ; house {
  heated 68F ; least 35% ; greatest 55%
  month january 28F 70% ; month february 30F 68% ; month march 39F 65% ; month april 50F 60%
  month may 61F 62% ; month june 70F 65% ; month july 75F 66% ; month august 73F 70%
  month september 66F 72% ; month october 54F 70% ; month november 43F 72% ; month december 32F 73%
} }`},
}

var (
	aClimate = regexp.MustCompile(`(?m)^climate \{(?:[^{}]|\{[^{}]*\})*\}.*$`) // one with a house in it has braces of its own
	measured = regexp.MustCompile(`\bat [0-9.]+%`)                             // wood that belongs to the climate that it was measured in
)

func TestSoundInOtherClimates(t *testing.T) {
	for _, root := range []string{projects, ruleFixtures} {
		for _, folderName := range foldersIn(t, root) {
			dir := filepath.Join(root, folderName)
			for _, name := range plansIn(t, dir) {
				if !strings.HasPrefix(name, "sound") {
					continue
				}
				text, err := os.ReadFile(filepath.Join(dir, name))
				if err != nil {
					t.Fatal(err)
				}
				if !aClimate.Match(text) || measured.Match(text) {
					continue
				}
				for _, c := range climates {
					moved := aClimate.ReplaceAllLiteralString(string(text), c.text)
					got := check(&folder{dir: dir, texts: map[string]string{name: moved}}, name)
					if len(got.found) > 0 {
						t.Errorf("%s/%s, %s: the sound piece must be silent, got\n%s", folderName, name, c.name, render(got.found))
					}
				}
			}
		}
	}
}
