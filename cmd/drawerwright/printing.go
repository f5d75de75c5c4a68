package main

import (
	"drawerwright/cmd/internal/batch"

	"github.com/spf13/cobra"
)

// printing completes a command that prints one thing of a job, as text or as JSON.
func printing(s streams, c *cobra.Command, of func(batch.Batch) (record any, text []byte)) *cobra.Command {
	var asJSON bool
	c.Args, c.ValidArgsFunction = oneJob, jobFiles
	c.RunE = func(_ *cobra.Command, args []string) error {
		l, err := ready(args[0], asJSON, s)
		if err != nil {
			return err
		}
		record, text := of(l.Batch)
		if asJSON {
			return done(writeJSON(s.out, record))
		}
		_, err = s.out.Write(text)
		return done(err)
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}
