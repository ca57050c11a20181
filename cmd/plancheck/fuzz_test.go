package main

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
)

// FuzzCommand gives each command any text there is: it ends with one of its exit codes, writes
// nothing that would move a terminal's cursor, and JSON that is JSON.
func FuzzCommand(f *testing.F) {
	filepath.WalkDir("../../fixtures", func(path string, d fs.DirEntry, err error) error {
		if err == nil && filepath.Ext(path) == ".plan" {
			if text, err := os.ReadFile(path); err == nil {
				f.Add(string(text))
			}
		}
		return nil
	})
	f.Fuzz(func(t *testing.T, text string) {
		for _, line := range []string{
			"check -", "check --format json -", "cutlist -", "cutlist --format csv -", "cutlist --format json -",
			"setups -", "setups --format csv -", "setups --format json -",
			"hardware -", "hardware --format csv -", "hardware --format json -",
			"fmt -", "fmt --diff -",
		} {
			code, out, stderr := command(t, text, strings.Fields(line)...)
			if code < clean || code > failed {
				t.Fatalf("%s: exit %d", line, code)
			}
			if strings.Contains(line, "json") && !json.Valid([]byte(out)) {
				t.Fatalf("%s: not JSON:\n%s", line, out)
			}
			if strings.HasPrefix(line, "fmt") || strings.Contains(line, "csv") {
				out = "" // the plan's own text
			}
			for _, r := range out + stderr {
				if r != '\n' && !unicode.IsPrint(r) {
					t.Fatalf("%s lets %U through", line, r)
				}
			}
		}
	})
}
