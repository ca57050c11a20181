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
setting is if it is left out, and where it stands. A setting is found under its name too.`,
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
			for i, w := range plan.Words() {
				if i > 0 {
					b.WriteString("\n")
				}
				entry(&b, w)
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
	var names []string
	var takers []string // words of which it is a setting
	for _, w := range plan.Words() {
		if slices.Contains(w.Names, name) {
			if b.Len() > 0 {
				b.WriteString("\n")
			}
			entry(b, w)
		}
		names = append(names, w.Names...)
		for i := range w.Slots {
			if s := &w.Slots[i]; !s.NameOnly {
				names = append(names, s.Name)
				if s.Name == name {
					takers = append(takers, fmt.Sprintf("  of %s: %s", w.Name(), meaning(s)))
				}
			}
		}
	}
	if len(takers) > 0 {
		if b.Len() > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(b, "%s as a setting\n%s\n", name, strings.Join(slices.Compact(takers), "\n"))
	}
	if b.Len() > 0 {
		return nil
	}
	if near := diag.Nearest(name, names); near != "" {
		return fmt.Errorf("there is no word %q; did you mean %q?", name, near)
	}
	return fmt.Errorf("there is no word %q; `plancheck words` lists them", name)
}

// entry writes one word: what it is, how it is written, where it stands, what it takes.
func entry(b *bytes.Buffer, w *plan.Word) {
	fmt.Fprintf(b, "%s: %s\n", strings.Join(w.Names, ", "), w.Doc)
	fmt.Fprintf(b, "  for example  %s\n", w.Example)
	fmt.Fprintf(b, "  stands in    %s\n", strings.Join(standsIn(w), ", "))
	if inside := holds(w); len(inside) > 0 {
		fmt.Fprintf(b, "  may hold     %s\n", strings.Join(inside, ", "))
	}
	wide := 0
	for i := range w.Slots {
		wide = max(wide, len(written(&w.Slots[i])))
	}
	for i := range w.Slots {
		s := &w.Slots[i]
		fmt.Fprintf(b, "    %-*s  %s\n", wide, written(s), meaning(s))
	}
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
func standsIn(w *plan.Word) []string {
	if w.In == plan.Anywhere {
		return []string{"any block"}
	}
	var in []string
	if w.In&plan.AtTop != 0 {
		in = append(in, "the plan itself")
	}
	return append(in, openedBy(w.In)...)
}

func openedBy(place plan.Place) (names []string) {
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
