package main

import (
	"drawerwright/cmd/internal/report"

	"github.com/spf13/cobra"
)

func newSetup(s streams) *cobra.Command {
	var asJSON bool
	var on string
	c := &cobra.Command{
		Use:   "setup JOB",
		Short: "Print the setup sheet: cutter, height and fence for every cut, in order, with its limits and cautions",
		Long: `setup says for each machine whether one fence distance and one cutter height serve
all drawers, what forcing it costs and the least number of settings that is right;
and then every setting with its cuts in order: which parts, which face down, which
edge to the fence, what the caliper should read, and what can hurt.

With spacers in the job, settings are made up of them. JOB may be - for standard input.`,
		Example: `  $ drawerwright setup drawers.yaml
  $ drawerwright setup drawers.yaml --on router-table`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			if err := oneOf("on", on, report.Machines...); err != nil {
				return err
			}
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			sheet := report.SetupsOf(l.Batch, on)
			if asJSON {
				return done(writeJSON(s.out, sheet))
			}
			_, err = s.out.Write(report.SetupText(sheet, l.Batch.Units))
			return done(err)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print it as JSON")
	wordFlag(c, &on, "on", report.Machines[0], "where drawers for a saw are cut", report.Machines...)
	return c
}
