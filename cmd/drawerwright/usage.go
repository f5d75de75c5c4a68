package main

import (
	"fmt"
	"strings"

	"drawerwright/cmd/internal/present"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// printHelp prints the help of a command as wide as the screen.
func printHelp(s streams, c *cobra.Command) error {
	out := present.Printed{Width: sizeOf(s.out).Width}
	about := c.Long
	if about == "" {
		about = c.Short
	}
	for _, paragraph := range strings.Split(about, "\n\n") {
		if strings.Contains(paragraph, "\n  ") { // it is laid out
			fmt.Fprintf(&out, "%s\n\n", paragraph)
			continue
		}
		out.Paragraph(strings.Join(strings.Fields(paragraph), " "))
		out.WriteString("\n")
	}
	fmt.Fprintf(&out, "Usage:\n  %s\n", c.UseLine())
	if c.HasAvailableSubCommands() {
		fmt.Fprintf(&out, "  %s COMMAND\n", c.CommandPath())
	}
	if c.Example != "" {
		fmt.Fprintf(&out, "\nExamples:\n%s\n", c.Example)
	}
	list := func(heading string, rows [][2]string) {
		if len(rows) == 0 {
			return
		}
		t := present.NewTable(present.Words(""), present.Words(""))
		for _, r := range rows {
			t.Add(r[0], r[1])
		}
		fmt.Fprintf(&out, "\n%s:\n", heading)
		t.Print(&out, "  ")
	}
	list("Commands", subcommands(c))
	list("Flags", flagRows(c))
	if c.HasAvailableSubCommands() {
		out.WriteString("\nMore: " + c.CommandPath() + " COMMAND --help\n")
	}
	_, err := s.out.Write(out.Wrapped())
	return err
}

func subcommands(c *cobra.Command) (rows [][2]string) {
	for _, sub := range c.Commands() {
		if sub.IsAvailableCommand() || sub.Name() == "help" {
			rows = append(rows, [2]string{sub.Name(), sub.Short})
		}
	}
	return rows
}

// flagRows are the flags with what they take, and what they do.
func flagRows(c *cobra.Command) (rows [][2]string) {
	c.LocalFlags().VisitAll(func(f *pflag.Flag) {
		takes, usage := pflag.UnquoteUsage(f)
		name := "    --" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", --" + f.Name
		}
		if takes != "" {
			name += " " + takes
		}
		if usual := f.DefValue; usual != "" && usual != "false" && usual != "[]" && usual != "0" {
			usage += " (else " + usual + ")"
		}
		rows = append(rows, [2]string{name, usage})
	})
	return rows
}
