package main

import (
	"github.com/spf13/cobra"
)

func newCompletion(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "Print a completion script for bash, zsh, fish or powershell",
		Example: `  $ source <(drawerwright completion bash)
  $ drawerwright completion fish > ~/.config/fish/completions/drawerwright.fish`,
		ValidArgs: []string{"bash", "zsh", "fish", "powershell"},
		Args:      cobra.MatchAll(cobra.ExactArgs(1), cobra.OnlyValidArgs),
		RunE: func(c *cobra.Command, args []string) error {
			var err error
			switch args[0] {
			case "bash":
				err = c.Root().GenBashCompletionV2(s.out, true)
			case "zsh":
				err = c.Root().GenZshCompletion(s.out)
			case "fish":
				err = c.Root().GenFishCompletion(s.out, true)
			case "powershell":
				err = c.Root().GenPowerShellCompletionWithDesc(s.out)
			}
			return done(err)
		},
	}
}
