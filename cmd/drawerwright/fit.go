package main

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

func newFit(s streams) *cobra.Command {
	return printing(s, &cobra.Command{
		Use:   "fit JOB",
		Short: "Say what joints and boxes will do, with all off as it usually is",
		Long: `fit adds up what boards, cutter, settings and lengths are off, for each joint and
box: the clearance of tongues and bottom, shoulders, box fronts proud or recessed on either
seat, width against the slide, height, depth, diagonals. It gives the worst case, the
root of the sum of squares and random boxes, each with its verdict, and names what
moves a measure most and what halving it would buy.

Limits, the shop's own accuracy and readings of the boards are entries of the job.
JOB may be - for standard input.`,
		Example: `  $ drawerwright fit drawers.yaml
  $ drawerwright fit drawers.yaml --json`,
	}, "setup", func(b batch.Batch) (any, present.Screen) {
		f := record.ForecastOf(b)
		return f, present.Screen{
			Brief: func(out *present.Printed) { present.ForecastBrief(out, f, b.Units) },
			Whole: func(out *present.Printed) { present.PrintForecast(out, f, b.Units) },
		}
	})
}
