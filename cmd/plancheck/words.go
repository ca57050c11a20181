package main

// plancheck words: the language, printed from the table by which plans are read.

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
)

func newWords(s *streams) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "words [WORD]",
		Short: "print the words of the plan language",
		Long: `Print the words of the plan language, one a line; with a WORD all that it takes, what each
setting is if it is left out, and where it stands. A setting is found under its name too, and
so is a kind of joint.`,
		Example: `  plancheck words          every word
  plancheck words drawer   one word, with its settings
  plancheck words --all    the whole reference`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return fmt.Errorf("name one word, as in `plancheck words %s`", args[0])
			}
			return nil
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			var names []string
			for _, w := range plan.Words() {
				names = append(names, cobra.CompletionWithDesc(w.Name(), w.Doc))
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
	}
	all := cmd.Flags().Bool("all", false, "every word with its settings")
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		var b bytes.Buffer
		switch {
		case len(args) == 1:
			if err := describe(&b, args[0]); err != nil {
				return err
			}
		case *all:
			for i, e := range entries(plan.Words()) {
				if i > 0 {
					b.WriteString("\n")
				}
				e.write(&b)
			}
			for _, k := range plan.JointKinds {
				b.WriteString("\n" + jointKind(k))
			}
		default:
			list(&b)
		}
		_, err := s.out.Write(b.Bytes())
		return err
	}
	return cmd
}

// list writes each word on a line. A word that means the same in several places is
// written once.
func list(b *bytes.Buffer) {
	wide, said := 0, map[string]bool{}
	for _, w := range plan.Words() {
		wide = max(wide, len(w.Name()))
	}
	for _, w := range plan.Words() {
		if line := fmt.Sprintf("%-*s  %s\n", wide, w.Name(), w.Doc); !said[line] {
			said[line] = true
			b.WriteString(line)
		}
	}
}

// describe writes what there is to say of a word or a setting.
func describe(b *bytes.Buffer, name string) error {
	var known []string
	var words []*plan.Word
	var takers []string // words of which it is a setting
	for _, w := range plan.Words() {
		known = append(known, w.Names...)
		if slices.Contains(w.Names, name) {
			words = append(words, w)
		}
		for i := range w.Slots {
			if s := &w.Slots[i]; !s.NameOnly {
				known = append(known, s.Name)
				if s.Name == name {
					takers = append(takers, fmt.Sprintf("  of %s: %s\n", w.Name(), meaning(s)))
				}
			}
		}
	}
	var kinds []plan.JointKind // of joint, by this name or, of `joint` itself, all
	for _, k := range plan.JointKinds {
		known = append(known, k.Name)
		if name == k.Name || name == "joint" {
			kinds = append(kinds, k)
		}
	}
	if len(words)+len(takers)+len(kinds) == 0 {
		if near := diag.Nearest(name, known); near != "" {
			return fmt.Errorf("there is no word %q; did you mean %q?", name, near)
		}
		return fmt.Errorf("there is no word %q; `plancheck words` lists them", name)
	}
	var parts []string
	said := map[string]bool{}
	for _, e := range entries(words) {
		if e.text != "" && said[e.text] {
			e.text = "    and takes what the one above takes\n"
		}
		said[e.text] = true
		var part bytes.Buffer
		e.write(&part)
		parts = append(parts, part.String())
	}
	if len(takers) > 0 {
		parts = append(parts, name+" as a setting\n"+strings.Join(slices.Compact(takers), ""))
	}
	for _, k := range kinds {
		parts = append(parts, jointKind(k))
	}
	b.WriteString(strings.Join(parts, "\n"))
	return nil
}

// jointKind says what a kind of joint is, adds and takes.
func jointKind(k plan.JointKind) string {
	w := k.Word()
	text := fmt.Sprintf("%s, a kind of joint: %s\n", k.Name, k.Doc) +
		fmt.Sprintf("  for example         %s\n", k.Example) +
		hang("  adds to its length  ", k.Adds)
	if k.Unsaid != "" {
		text += hang("  left out            ", k.Unsaid)
	}
	if inside := holds(w); len(inside) > 0 {
		text += hang("  may hold            ", strings.Join(inside, ", "))
	}
	return text + settings(w)
}

// entry is what the reference says of a word, and all the places where that holds.
type entry struct {
	text string // what it takes
	word *plan.Word
	in   plan.Place
}

// entries makes one entry of what is said alike in several places.
func entries(words []*plan.Word) []*entry {
	var list []*entry
	at := map[string]*entry{}
	for _, w := range words {
		text := settings(w)
		key := strings.Join([]string{w.Name(), w.Doc, text}, "\n")
		if e := at[key]; e != nil {
			e.in |= w.In
			continue
		}
		at[key] = &entry{text, w, w.In}
		list = append(list, at[key])
	}
	return list
}

// write says what a word is, how it is written, where it stands and what it takes.
func (e *entry) write(b *bytes.Buffer) {
	w := e.word
	fmt.Fprintf(b, "%s: %s\n", strings.Join(w.Names, ", "), w.Doc)
	fmt.Fprintf(b, "  for example  %s\n", w.Example)
	b.WriteString(hang("  stands in    ", strings.Join(standsIn(e.in), ", ")))
	if inside := holds(w); len(inside) > 0 {
		b.WriteString(hang("  may hold     ", strings.Join(inside, ", ")))
	}
	b.WriteString(e.text)
}

// settings are a word's, a line each.
func settings(w *plan.Word) string {
	var b strings.Builder
	wide := 0
	for i := range w.Slots {
		wide = max(wide, len(written(&w.Slots[i])))
	}
	for i := range w.Slots {
		s := &w.Slots[i]
		b.WriteString(hang(fmt.Sprintf("    %-*s  ", wide, written(s)), meaning(s)))
	}
	return b.String()
}

// hang sets a text behind a lead, its further lines under its first.
func hang(lead, text string) string {
	const wide = 100
	var b strings.Builder
	b.WriteString(lead)
	at := len(lead)
	for i, word := range strings.Fields(text) {
		switch {
		case i == 0:
		case at+1+len(word) > wide:
			b.WriteString("\n" + strings.Repeat(" ", len(lead)))
			at = len(lead)
		default:
			b.WriteString(" ")
			at++
		}
		b.WriteString(word)
		at += len(word)
	}
	return b.String() + "\n"
}

// written shows a setting as a plan has it; one that stands without its name by what it is.
func written(s *plan.Slot) string {
	if s.NameOnly {
		return strings.ToUpper(s.Name)
	}
	return s.Example
}

func meaning(s *plan.Slot) string {
	text := s.Doc
	if len(s.Choices) > 0 {
		text += ": " + strings.Join(s.Choices, ", ")
	}
	switch {
	case s.Default != "":
		text += fmt.Sprintf(" (left out: %s)", s.Default)
	case s.Must:
		text += " (must be said)"
	}
	return text
}

// standsIn names the words in whose blocks a word stands.
func standsIn(place plan.Place) (names []string) {
	if place == plan.Anywhere {
		return []string{"any block"}
	}
	if place&plan.AtTop != 0 {
		names = append(names, "the plan itself")
	}
	for _, w := range plan.Words() {
		if w.Opens&place != 0 && !slices.Contains(names, w.Name()) {
			names = append(names, w.Name())
		}
	}
	return names
}

// holds names the words that may stand in a word's block.
func holds(w *plan.Word) (names []string) {
	for _, inner := range plan.Words() {
		if inner.In&w.Opens != 0 && inner.In != plan.Anywhere && !slices.Contains(names, inner.Name()) {
			names = append(names, inner.Name())
		}
	}
	return names
}
