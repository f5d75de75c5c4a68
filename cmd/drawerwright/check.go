package main

import (
	"fmt"

	"drawerwright/cmd/internal/words"

	"github.com/spf13/cobra"
)

func newCheck(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check JOB",
		Short: "Read a job file and say what is wrong in it",
		Long: `check reads a job file, works out every drawer, and lists all that is wrong or
doubtful in it, in one run, each with its line and what would do. It writes no files.
JOB may be - for standard input.`,
		Example: `  $ drawerwright check samples/bench-drawers.yaml
  samples/bench-drawers.yaml: 2 kinds of drawer, 6 boxes, no errors, no warnings`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			if asJSON {
				return done(writeJSON(s.out, checked{OK: true, Problems: found(l), More: l.More}))
			}
			_, err = fmt.Fprintf(s.out, "%s: %s, %s, no errors, %s\n", plain(l.Job.File), words.Count(len(l.Batch.Drawers), "kind of drawer", "kinds of drawer"),
				words.Count(l.Batch.Boxes(), "box", "boxes"), words.Count(len(l.Warnings), "warning", "warnings"))
			return done(err)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the problems as JSON")
	return c
}
