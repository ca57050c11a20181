package main

// What README.md shows is what there is: each plan in it stands in fixtures/readme, and
// each output is what the command prints. Write it anew with GOLDIE_UPDATE=true, the
// variable that accepts goldens.

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"
)

// shown is a block that README.md shows, between a line that says what it is and the end:
//
//	<!-- shown: cat fixtures/readme/first.plan -->
//	<!-- shown: plancheck fixtures/readme/broken.plan -->
var shown = regexp.MustCompile("(?s)<!-- shown: ([^\n]*) -->\n.*?<!-- end of what is shown -->\n")

func TestReadmeShowsWhatThereIs(t *testing.T) {
	t.Chdir("../..")
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	blocks := 0
	now := shown.ReplaceAllStringFunc(string(readme), func(block string) string {
		blocks++
		line := shown.FindStringSubmatch(block)[1]
		return "<!-- shown: " + line + " -->\n```\n" + outputOf(t, line) + "```\n<!-- end of what is shown -->\n"
	})
	if blocks == 0 {
		t.Fatal("README.md shows nothing")
	}
	if now == string(readme) {
		return
	}
	if os.Getenv("GOLDIE_UPDATE") != "true" {
		t.Fatal("README.md shows what is not so any more: run GOLDIE_UPDATE=true go test ./cmd/plancheck and read the difference")
	}
	if err := os.WriteFile("README.md", []byte(now), 0o644); err != nil {
		t.Fatal(err)
	}
}

// outputOf is what a command line of README.md prints.
func outputOf(t *testing.T, line string) string {
	words := strings.Fields(line)
	switch words[0] {
	case "cat":
		text, err := os.ReadFile(words[1])
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	case "plancheck":
		var out bytes.Buffer
		run(words[1:], strings.NewReader(""), &out, &out)
		return out.String()
	}
	t.Fatalf("README.md shows `%s`, which is neither cat nor plancheck", line)
	return ""
}
