package main

import (
	"drawerwright/cmd/internal/present"

	"github.com/spf13/cobra"
)

func newFit(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "fit JOB",
		Short: "Say what the joints and boxes of a job will do, with boards, cutter and settings as they usually are off",
		Long: `fit adds up what boards, cutter, settings and lengths are off, for each joint and
box: the play of tongues and bottom, shoulders, fronts proud or recessed on either
seat, width against the slide, height, depth, diagonals. It gives the worst case, the
root of the sum of squares and random boxes, each with its verdict, and names what
moves a measure most and what halving it would buy.

Limits, the shop's own accuracy and readings of the boards are entries of the job.
JOB may be - for standard input.`,
		Example: `  $ drawerwright fit drawers.yaml
  $ drawerwright fit drawers.yaml --json`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			f := present.Forecasts(l.Batch)
			if asJSON {
				return done(writeJSON(s.out, f))
			}
			_, err = s.out.Write(present.ForecastText(f, l.Batch.Units))
			return done(err)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	return c
}
