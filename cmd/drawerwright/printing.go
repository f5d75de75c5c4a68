package main

import (
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

// printing completes a command that prints one thing of a job, as JSON or for people: below the
// verdict on the job, with what to do next.
func printing(s streams, c *cobra.Command, next string, of func(batch.Batch) (record any, said present.Screen)) *cobra.Command {
	var asJSON, all bool
	c.Args, c.ValidArgsFunction = oneJob, jobFiles
	c.RunE = func(_ *cobra.Command, args []string) error {
		l, err := ready(args[0], asJSON, s)
		if err != nil {
			return err
		}
		data, said := of(l.Batch)
		if asJSON {
			return done(writeJSON(s.out, data))
		}
		said.Head = l.head(args[0], next)
		for i, text := range present.LogLines(record.LearnedOf(l.Batch)) {
			said.Head = slices.Insert(said.Head, 2+i, present.Line{Text: text})
		}
		said.More = c.CommandPath() + " " + plain(args[0]) + " --all"
		said.All = all
		return done(s.show(said))
	}
	allFlag(c, &all)
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}
