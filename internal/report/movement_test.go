package report_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/rules"
)

func read(t *testing.T, path string) *plan.Plan {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	p, _ := rules.Run(diag.NewFile(filepath.Base(path), string(text)), nil)
	return p
}

// The table has what moves in every way: a top on buttons, breadboard ends on pegs, legs of which no cut is said.
func TestMovement(t *testing.T) {
	p := read(t, "../../fixtures/projects/table/sound.plan")
	for name, write := range map[string]func(io.Writer) error{
		"movement":      func(w io.Writer) error { return report.MovementText(w, p) },
		"movement-csv":  func(w io.Writer) error { return report.MovementCSV(w, p) },
		"movement-json": func(w io.Writer) error { return report.MovementJSON(w, p, 0) },
	} {
		assertWritten(t, name, write)
	}
}

// Fronts that lap their case have no gaps in an opening, but one to each front beside them.
func TestMovementBetweenFronts(t *testing.T) {
	p := read(t, "../../fixtures/rules/fronts-meet-when-humid/meet.plan")
	assertWritten(t, "movement-fronts", func(w io.Writer) error { return report.MovementText(w, p) })
}

// Layups in inches that differ in every way, and one in millimetres that a door is made of; leaves that are cut up.
func TestLayups(t *testing.T) {
	inches := read(t, "../../fixtures/rules/unbalanced-layup/pairs.plan")
	metric := read(t, "../../fixtures/rules/unbalanced-layup/metric.plan")
	sideboard := read(t, "../../fixtures/projects/sideboard/sound.plan")
	for name, write := range map[string]func(io.Writer) error{
		"layup-leaves":      func(w io.Writer) error { return report.LayupText(w, sideboard, report.Layups(sideboard, "")) },
		"layup-leaves-json": func(w io.Writer) error { return report.LayupJSON(w, sideboard, report.Layups(sideboard, "light"), 0) },
		"layup":             func(w io.Writer) error { return report.LayupText(w, inches, report.Layups(inches, "")) },
		"layup-metric":      func(w io.Writer) error { return report.LayupText(w, metric, report.Layups(metric, "")) },
		"layup-json":        func(w io.Writer) error { return report.LayupJSON(w, inches, report.Layups(inches, ""), 0) },
	} {
		assertWritten(t, name, write)
	}
}

func assertWritten(t *testing.T, name string, write func(io.Writer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	golden(t).Assert(t, name, b.Bytes())
}

// Fifteen slats that are alike are one line, and so are three panels.
func TestRowsMoveAsOne(t *testing.T) {
	p := read(t, "../../fixtures/projects/bed/sound.plan")
	of := map[string]int{}
	for _, m := range report.Movement(p) {
		of[m.Path]++
	}
	for _, f := range report.Fittings(p) {
		of[f.Path]++
	}
	for path, times := range map[string]int{"bed.lath": 1, "bed.lath-1": 0, "bed.lath-2": 0, "head-frame.field": 2, "head-frame.field-1": 0, "head-frame.field-3": 0} {
		if of[path] != times {
			t.Errorf("%s stands there %d times, want %d", path, of[path], times)
		}
	}
}
