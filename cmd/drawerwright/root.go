package main

import (
	"github.com/spf13/cobra"
)

// newRoot puts the commands together. Each stands in a file of its own.
func newRoot(s streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "drawerwright",
		Short: "From a job file to drawer boxes that fit",
		Long: `drawerwright works out drawer boxes from measured openings and sheet stock, and
writes what a shop cuts from: a cut list, layered DXF for a router, and STL of
each part and of the box.

It computes; it does not know your machines. Follow the local rules and the
manuals of your machines, and measure a test piece before you cut a run.`,
		Example: `  drawerwright init drawers.yaml
  drawerwright check drawers.yaml
  drawerwright build drawers.yaml -o out`,
		SilenceErrors: true,
		SilenceUsage:  true,
		// Errors of subcommands' names are usage errors, with the nearest names.
		SuggestionsMinimumDistance: 2,
		CompletionOptions:          cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.AddCommand(
		newInit(s), newCheck(s), newBuild(s), newParts(s),
		newSchema(s), newCompletion(s), newVersion(s),
	)
	root.SetHelpCommand(&cobra.Command{Hidden: true})
	return root
}
