package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/reference"

	"github.com/spf13/cobra"
)

// newRoot puts the commands together. Each stands in a file of its own.
func newRoot(s streams) *cobra.Command {
	cobra.MousetrapHelpText = "" // a double click on Windows is no mistake
	v := viewing{open: true, wait: closedWait}
	root := &cobra.Command{
		Use:   "drawerwright",
		Short: "From a job file to drawer boxes that fit",
		Long: `drawerwright works out drawer boxes from measured openings, or from outside
sizes, and the measured thickness of the stock. It writes what a shop cuts from:
a cut list, setups for saw and router table, marking templates for hand work,
layered DXF for a CNC router, and STL of each part and of the box. It reads the
drawings back and proves that the boxes they make go together.

It computes; it does not know your machines. Follow the local rules and the
manuals of your machines, and measure a test piece before you cut a run.

Alone on a terminal, or by a double click, it opens a page in the browser to
begin a job on, as view does.

` + topics(),
		Example: `  drawerwright init drawers.yaml
  drawerwright check drawers.yaml
  drawerwright build drawers.yaml -o out`,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(c *cobra.Command, _ []string) error {
			if !byPerson(s) {
				return done(c.Help())
			}
			return v.run(c.Context(), "", s)
		},
		// Errors of subcommands' names are usage errors, with the nearest names.
		SuggestionsMinimumDistance: 2,
		CompletionOptions:          cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	v.flags(root)
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.AddCommand(
		newInit(s), newCheck(s), newBuild(s), newProve(s), newParts(s), newFit(s), newSetup(s), newSheets(s),
		newLayout(s), newAdjust(s), newInspect(s), newCoupon(s), newView(s),
		newSchema(s), newExplain(s), newCompletion(s), newVersion(s),
	)
	root.SetHelpFunc(func(c *cobra.Command, _ []string) {
		c.InitDefaultHelpFlag()
		printHelp(s, c) // what cannot be written is known to run
	})
	root.SetHelpCommand(newHelp(s))
	root.InitDefaultHelpCmd()
	root.Version = version()
	root.SetVersionTemplate("{{.Version}}")
	return root
}

// topics says what else is explained, within the width of a terminal.
func topics() string {
	text := "drawerwright explain lists and explains the entries of the job file; " +
		"drawerwright help TOPIC explains one of these topics: " + strings.Join(reference.Topics, ", ") + "."
	return reference.Doc{{Kind: reference.Paragraph, Text: text}}.Text()
}

// oneJob asks for the job file in a shop's words.
func oneJob(_ *cobra.Command, args []string) error {
	switch len(args) {
	case 0:
		return errors.New("give the job file, or - for standard input")
	case 1:
		return nil
	}
	return fmt.Errorf("one job file at a time; here are %d", len(args))
}

// jobFiles completes the names of job files.
func jobFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// wordOf is a flag that takes one of some words.
type wordOf struct {
	to                 *string
	name, usual, usage string
}

// wordFlag adds a flag that takes one of some words, and completes them.
func wordFlag(c *cobra.Command, f wordOf, words ...string) {
	c.Flags().StringVar(f.to, f.name, f.usual, f.usage+": "+strings.Join(words, " or "))
	// It fails only for a flag that is not there, or twice.
	if err := c.RegisterFlagCompletionFunc(f.name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic(err)
	}
}

// oneOf refuses a word that a flag does not take.
func oneOf(name, word string, words ...string) error {
	if slices.Contains(words, word) {
		return nil
	}
	return fmt.Errorf("--%s %s: write %s", name, word, strings.Join(words, " or "))
}
