package main

// plancheck check --fix: mends that say what to write are written.

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
	"plancheck/rules"
)

// safely is what --fix stands for alone: mends that change no size and lose no comment.
const safely = "safe"

// mostRounds bounds how often a plan is checked anew after its mends: a mend can bring to light what
// another fault hid.
const mostRounds = 20

// mender writes mends into texts, and the texts into their files when all are made.
type mender struct {
	*streams
	rules []string          // whose mends are written, besides the safe ones
	texts map[string]string // what was changed, by the name of the file
	first map[string]string // what stood there before
	said  string            // what is said of a mend
}

// fixAll writes the mends of what paths stand for. With dry it shows them instead, and all is done.
func fixAll(paths []string, value string, dry bool, s *streams) (done bool, err error) {
	m, err := newMender(s, value)
	if err != nil {
		return false, err
	}
	if dry {
		m.said = "would mend"
	}
	sources, _ := gather(paths) // what cannot be found is said when the rest is checked
	for _, src := range sources {
		if src.name == standardInputName {
			return false, errors.New("--fix writes into files; standard input is none")
		}
		if err := m.mend(src); err != nil {
			return false, report.Failure{Path: src.name, Err: err}
		}
	}
	if !dry {
		return false, m.write()
	}
	if err := m.diff(); err != nil {
		return true, err
	}
	if len(m.texts) > 0 {
		return true, errFound
	}
	return true, nil
}

// newMender reads the value of --fix: rules by name, with commas between.
func newMender(s *streams, value string) (*mender, error) {
	m := &mender{streams: s, texts: map[string]string{}, first: map[string]string{}, said: "mended"}
	for name := range strings.SplitSeq(value, ",") {
		switch {
		case name == safely:
		case rules.Find(name) != nil:
			m.rules = append(m.rules, name)
		default:
			return nil, unknownRule(name)
		}
	}
	return m, nil
}

// mend makes the mends of one plan and of what it uses, in memory, and says each.
func (m *mender) mend(src source) error {
	file, err := src.read(m.in)
	if err != nil {
		return err
	}
	shelf := src.shelf()
	defer shelf.Close()
	open := func(from *diag.File, name string) (*diag.File, error) {
		used, err := shelf.open(from, name)
		if err == nil {
			used = m.current(used)
		}
		return used, err
	}
	for range mostRounds {
		_, findings := rules.Run(m.current(file), open)
		made := m.choose(findings)
		if len(made) == 0 {
			break
		}
		for of, edits := range made {
			text, err := diag.Apply(of, edits)
			if err != nil {
				return err
			}
			if _, before := m.first[of.Name]; !before {
				m.first[of.Name] = of.Text
			}
			m.texts[of.Name] = text
		}
	}
	return nil
}

// current is a file as it is mended so far.
func (m *mender) current(f *diag.File) *diag.File {
	if text, changed := m.texts[f.Name]; changed {
		return diag.NewFile(f.Name, text)
	}
	return f
}

// choose takes from each finding the first mend that says what to write and that may be written, and
// leaves for another round what lies in the way of one before it.
func (m *mender) choose(findings []diag.Finding) map[*diag.File][]diag.Edit {
	made := map[*diag.File][]diag.Edit{}
	for _, f := range findings {
		i := slices.IndexFunc(f.Fixes, func(fix diag.Fix) bool {
			return len(fix.Edits) > 0 && fix.Edits[0].Span.File.Name != plan.GenericFile && (fix.Safe || slices.Contains(m.rules, f.Rule))
		})
		if i < 0 {
			continue
		}
		of, edits := f.Fixes[i].Edits[0].Span.File, f.Fixes[i].Edits
		both := slices.Concat(made[of], edits)
		if _, err := diag.Apply(of, both); err != nil {
			continue
		}
		made[of] = both
		line, column := f.Span.Position()
		fmt.Fprintf(m.err, "%s:%d:%d: %s: %s [%s]\n", report.Plain(f.Span.File.Name), line, column, m.said, report.Plain(f.Fixes[i].Title), f.Rule)
	}
	return made
}

// changed are the names of the files that were changed.
func (m *mender) changed() []string { return slices.Sorted(maps.Keys(m.texts)) }

// write puts the mended texts into their files.
func (m *mender) write() error {
	for _, name := range m.changed() {
		if err := replace(name, m.texts[name]); err != nil {
			return report.Failure{Path: name, Err: reason(err)}
		}
	}
	return nil
}

// diff shows what would be written.
func (m *mender) diff() error {
	for _, name := range m.changed() {
		if _, err := m.out.Write(plainDiff(name, m.first[name], m.texts[name], "mended")); err != nil {
			return err
		}
	}
	return nil
}
