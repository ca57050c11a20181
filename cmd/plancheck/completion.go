package main

// plancheck completion: scripts that let a shell complete plancheck's words.

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"plancheck/internal/diag"
)

func newCompletion(s *streams) *cobra.Command {
	shells := []string{"bash", "zsh", "fish", "powershell"}
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "write a script that completes commands, rules and plans in a shell",
		Long: `Write a script with which a shell completes commands, flags, rules and plans at the press of a
key. SHELL is bash, zsh, fish or powershell. Have the shell read it when it starts.`,
		Example: `  source <(plancheck completion bash)     in ~/.bashrc
  source <(plancheck completion zsh)      in ~/.zshrc, after compinit
  plancheck completion fish > ~/.config/fish/completions/plancheck.fish
  plancheck completion powershell | Out-String | Invoke-Expression     in $PROFILE`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("name one shell: %s", strings.Join(shells, ", "))
			}
			return nil
		},
		ValidArgs: shells,
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			switch args[0] {
			case "bash":
				return root.GenBashCompletionV2(s.out, true)
			case "zsh":
				return root.GenZshCompletion(s.out)
			case "fish":
				return root.GenFishCompletion(s.out, true)
			case "powershell":
				return root.GenPowerShellCompletionWithDesc(s.out)
			}
			if near := diag.Nearest(args[0], shells); near != "" {
				return fmt.Errorf("no completion for %q; did you mean %s?", args[0], near)
			}
			return fmt.Errorf("no completion for %q; there is one for %s", args[0], strings.Join(shells, ", "))
		},
	}
}
