package main

// The command tree, its help, and what is said of a command line that cannot be read.

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"plancheck/internal/diag"
)

func newRoot(s *streams) *cobra.Command {
	check, version := newCheck(s), false
	root := &cobra.Command{
		Use:   "plancheck [check] PATH…",
		Short: "read a plan and say, before the first cut, what will not fit",
		Long: `Plancheck reads the plan of a piece of furniture and says, before the first cut, what
will not fit, with the arithmetic shown.`,
		Example: `  plancheck cabinet.plan              what is wrong with this plan?
  plancheck jobs                      … and with every plan in this folder?
  plancheck explain rail-length       what does a finding mean, and what is to be done?
  plancheck cutlist cabinet.plan      every part with its sizes
  plancheck setups cabinet.plan       how machines are set for its joints
  plancheck fmt --write cabinet.plan  set the plan out neatly
  plancheck help fmt                  how one command is used`,
		Args:          cobra.ArbitraryArgs,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(cmd *cobra.Command, args []string) error {
			if version {
				return printVersion(s.out)
			}
			if len(args) == 0 {
				help(s.err, cmd)
				return errFailed
			}
			if err := notACommand(cmd, args[0]); err != nil {
				return err
			}
			return check.RunE(cmd, args)
		},
		ValidArgsFunction: planFiles,
	}
	root.Flags().AddFlagSet(check.Flags())
	root.Flags().BoolVar(&version, "version", false, "say which plancheck this is")
	root.PersistentFlags().BoolP("help", "h", false, "say how a command is used")
	root.AddCommand(check, newReview(s), newExplain(s), newRules(s), newCutlist(s), newMovement(s), newLayup(s), newSetups(s), newHardware(s), newCarry(s), newCompare(s), newFmt(s), newWords(s), newVersion(s), newCompletion(s))

	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { help(s.out, cmd) })
	root.SetHelpCommand(newHelp(s))
	root.SetFlagErrorFunc(flagError)
	root.CompletionOptions.DisableDefaultCmd = true
	return root
}

// notACommand says so if the first word of a command line is neither a command nor
// anything that could be meant for a path.
func notACommand(root *cobra.Command, word string) error {
	if word == "" || word == "-" || strings.ContainsAny(word, `./\`) {
		return nil
	}
	if _, err := os.Lstat(word); err == nil {
		return nil
	}
	names := commandNames(root)
	if near := diag.Nearest(word, names); near != "" {
		return fmt.Errorf("%q is no file, folder or command; did you mean `plancheck %s`?", word, near)
	}
	return fmt.Errorf("%q is no file, folder or command; the commands are %s", word, strings.Join(names, ", "))
}

func commandNames(root *cobra.Command) []string {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	return names
}

// flagError puts what pflag says of a flag into plain words, with the nearest that there is.
func flagError(cmd *cobra.Command, err error) error {
	if word := cmd.Flags().Arg(0); !cmd.HasParent() && word != "" {
		if err := notACommand(cmd, word); err != nil {
			return err // a misspelt command has no flags to judge
		}
	}
	var unknown *pflag.NotExistError
	var value *pflag.InvalidValueError
	var missing *pflag.ValueRequiredError
	switch {
	case errors.As(err, &value):
		return fmt.Errorf("--%s %w", value.GetFlag().Name, value.Unwrap())
	case errors.As(err, &missing):
		return fmt.Errorf("--%s lacks its value: `--%s %s`", missing.GetSpecifiedName(), missing.GetSpecifiedName(), missing.GetFlag().Value.Type())
	case errors.As(err, &unknown):
		said := "--" + unknown.GetSpecifiedName()
		if unknown.GetSpecifiedShortnames() != "" {
			said = "-" + unknown.GetSpecifiedShortnames()
		}
		var names []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
		if near := diag.Nearest(unknown.GetSpecifiedName(), names); near != "" {
			return fmt.Errorf("there is no %s; did you mean --%s?", said, near)
		}
		return fmt.Errorf("there is no %s here; `%s --help` shows what there is", said, cmd.CommandPath())
	}
	return err
}

// choice is a flag that takes one of a closed list of words.
type choice struct {
	is string
	of []string
}

func (c *choice) String() string { return c.is }
func (c *choice) Type() string   { return strings.Join(c.of, "|") }

func (c *choice) Set(word string) error {
	if slices.Contains(c.of, word) {
		c.is = word
		return nil
	}
	last := len(c.of) - 1
	said := fmt.Sprintf("takes %s or %s, not %q", strings.Join(c.of[:last], ", "), c.of[last], word)
	if near := diag.Nearest(word, c.of); near != "" {
		said += fmt.Sprintf("; did you mean %s?", near)
	}
	return errors.New(said)
}

// choose gives a command a flag that takes one of some words, and what it is if left out.
func choose(cmd *cobra.Command, name, unsaid, usage string, words ...string) *choice {
	c := &choice{is: unsaid, of: words}
	cmd.Flags().Var(c, name, usage)
	cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	return c
}

// planFiles completes to plans and folders.
func planFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"plan"}, cobra.ShellCompDirectiveFilterFileExt
}

func newHelp(s *streams) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "say how a command is used",
		RunE: func(cmd *cobra.Command, args []string) error {
			about, rest, err := cmd.Root().Find(args)
			if err != nil || about == cmd.Root() && len(rest) > 0 {
				return unknownCommand(cmd.Root(), args[0])
			}
			help(s.out, about)
			return nil
		},
	}
}

func unknownCommand(root *cobra.Command, word string) error {
	names := commandNames(root)
	if near := diag.Nearest(word, names); near != "" {
		return fmt.Errorf("there is no command %q; did you mean %q?", word, near)
	}
	return fmt.Errorf("there is no command %q; the commands are %s", word, strings.Join(names, ", "))
}

// help says what a command does, how it is called, and what can be asked of it.
func help(w io.Writer, cmd *cobra.Command) {
	about := cmd.Long
	if about == "" {
		about = strings.ToUpper(cmd.Short[:1]) + cmd.Short[1:] + "."
	}
	use := cmd.Use
	if cmd.HasParent() {
		use = cmd.Parent().CommandPath() + " " + cmd.Use
	}
	fmt.Fprintf(w, "%s\n\n  %s\n", about, use)
	if cmd.Example != "" {
		fmt.Fprintf(w, "\nFor example\n%s\n", cmd.Example)
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintf(w, "\nCommands\n")
		for _, c := range cmd.Commands() {
			if c.IsAvailableCommand() {
				fmt.Fprintf(w, "  %-12s %s\n", c.Name(), c.Short)
			}
		}
	}
	if cmd.HasAvailableLocalFlags() {
		fmt.Fprintf(w, "\nFlags\n")
		cmd.LocalFlags().VisitAll(func(f *pflag.Flag) {
			flag := "--" + f.Name
			if f.Value.Type() != "bool" {
				flag += " " + f.Value.Type()
			}
			fmt.Fprintf(w, "  %-34s %s\n", flag, f.Usage)
		})
	}
	if !cmd.HasParent() {
		fmt.Fprintf(w, "\n%s\n", exits)
	}
}

const exits = `Exit code: 0 nothing found, 1 something was found that blocks, 2 the work could not be done.
A plan that is found clean is not thereby safe: loads, fixings and regulations stay for those who
are qualified to judge them.`
