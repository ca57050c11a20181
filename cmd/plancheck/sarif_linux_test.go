package main

// The SARIF of real plans, held against the validator that the makers of the format publish; skipped, with
// a word, where npm or its registry is not there. The schema alone is checked in internal/report.

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

func TestSARIFPassesTheValidator(t *testing.T) {
	if testing.Short() {
		t.Skip("fetches a large program")
	}
	npm := look(t, "npm")
	folder := t.TempDir()
	install := exec.Command(npm, "install", "--prefix", folder, "--no-audit", "--no-fund", "--ignore-scripts", "--silent", "@microsoft/sarif-multitool-linux@5.7.0")
	if out, err := install.CombinedOutput(); err != nil {
		t.Skipf("the validator cannot be had here: %v %.500s", err, out)
	}
	validator := filepath.Join(folder, "node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool")
	if err := os.Chmod(validator, 0o700); err != nil {
		t.Fatal(err)
	}
	_, log, _ := command(t, "", "--format", "sarif", "../../fixtures/projects", "../../fixtures/lang/faults", "nowhere.plan")
	in, out := filepath.Join(folder, "found.sarif"), filepath.Join(folder, "judged.sarif")
	if err := os.WriteFile(in, []byte(log), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.Command(validator, "validate", in, "--output", out).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%.2000s", err, said)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	var judged struct {
		Runs []struct {
			Results []struct {
				RuleID  string
				Level   string
				Message struct {
					Text, ID  string
					Arguments []string
				}
			}
		}
	}
	if err := json.Unmarshal(text, &judged); err != nil {
		t.Fatal(err)
	}
	for _, run := range judged.Runs {
		for _, r := range run.Results {
			if r.Level == "error" { // it ends well even then
				t.Errorf("%s: %+v", r.RuleID, r.Message)
			}
		}
	}
}
