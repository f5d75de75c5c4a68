package main

import (
	"errors"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

func newFit(s streams) *cobra.Command {
	c := printing(s, &cobra.Command{
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
	var chart string
	c.Flags().StringVar(&chart, "chart", "", "draw the control charts of the job's log into this new file, as SVG")
	prints := c.RunE
	c.RunE = func(c *cobra.Command, args []string) error {
		if chart != "" {
			if err := drawLog(args[0], chart, s); err != nil {
				return err
			}
		}
		return prints(c, args)
	}
	return c
}

// drawLog draws the control charts of the log that a job names.
func drawLog(job, file string, s streams) error {
	if job == "-" {
		return errors.New("--chart needs a job file, not standard input")
	}
	l, err := ready(job, false, s)
	if err != nil {
		return err
	}
	learned := record.LearnedOf(l.Batch)
	if learned == nil {
		return hinted{"--chart: the job names no log", "write `log: shop.csv` into the job, with the name of its log"}
	}
	svg, err := present.LogChart(learned, l.Batch.Units)
	if err == nil && svg == nil {
		return hinted{"--chart: the log has too few cuts to draw", "add test cuts by adjust, with --log"}
	}
	if err == nil {
		err = writeNew(file, svg)
	}
	if err != nil {
		return failure(err, file, false, s)
	}
	return nil
}
