package main

import (
	"errors"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

func newParts(s streams) *cobra.Command {
	var asJSON, asCSV, all bool
	c := &cobra.Command{
		Use:   "parts JOB",
		Short: "Print the cut list, the settings and the fit of a job",
		Long: `parts works out a job and prints its cut list by stock, the fence distance and
cutter height that serve it, what the joints will do, and how much board it takes.
JOB may be - for standard input.`,
		Example: `  $ drawerwright parts drawers.yaml
  $ drawerwright parts drawers.yaml --csv > parts.csv`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			if asJSON && asCSV {
				return errors.New("--json or --csv, not both")
			}
			l, err := ready(args[0], asJSON, s)
			switch {
			case err != nil:
				return err
			case asJSON:
				return done(writeJSON(s.out, record.Make(l.Batch, l.Plan, l.Warnings)))
			case asCSV:
				_, err = s.out.Write(present.PartsCSV(record.MakeKept(l.Batch, l.Plan, l.Warnings)))
				return done(errors.Join(err, l.show(s)))
			}
			r := record.MakeKept(l.Batch, l.Plan, l.Warnings)
			return done(s.show(present.Screen{
				Head:  l.head(args[0], "setup"),
				Brief: func(out *present.Printed) { present.PartsBrief(out, r) },
				Whole: func(out *present.Printed) { present.PrintParts(out, r) },
				More:  "drawerwright parts " + plain(args[0]) + " --all",
				All:   all,
			}))
		},
	}
	allFlag(c, &all)
	c.Flags().BoolVar(&asJSON, "json", false, "print the whole report as JSON")
	c.Flags().BoolVar(&asCSV, "csv", false, "print the cut list as CSV")
	return c
}
