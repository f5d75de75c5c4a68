package main

import (
	"fmt"
	"os"
	"os/signal"
	"syscall"

	"drawerwright/cmd/internal/report"
	"drawerwright/geom/nest"

	"github.com/schollz/progressbar/v3"
	"github.com/spf13/cobra"
)

// mostEffort is a search of hours.
const mostEffort = 10_000_000

func newSheets(s streams) *cobra.Command {
	var asJSON bool
	var effort int
	var seed uint64
	c := &cobra.Command{
		Use:   "sheets JOB",
		Short: "Lay the parts out on sheets, and say how near to the best that is",
		Long: `sheets lays out the parts of every stock that has the size of its sheets, and prints
for each how many sheets it takes, what they cost, how much of them is parts, and a
bound: "best possible" where no layout needs less, else how far it may be from it.

The job's sheets section has the kerf, what is trimmed off, and whether parts are cut
from edge to edge (a saw) or each by itself (a router). Ctrl-C prints the best so far.
The same effort and seed give the same layout on any machine. JOB may be - for standard
input.`,
		Example: `  $ drawerwright sheets drawers.yaml
  $ drawerwright sheets drawers.yaml --effort 20000`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			if effort < 1 || effort > mostEffort {
				return fmt.Errorf("--effort %d: it is from 1 to %d", effort, mostEffort)
			}
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			o := nest.Options{Effort: effort, Seed: seed}
			if terminal(s.err) {
				bar := progressbar.NewOptions(100, progressbar.OptionSetWriter(s.err), progressbar.OptionSetDescription("sheets"), progressbar.OptionClearOnFinish())
				o.Progress = func(p nest.Progress) {
					bar.Describe(fmt.Sprintf("%d sheets, cost %g, at least %g", p.Sheets, p.Cost, p.Least))
					bar.Set(int(100 * p.Done)) // only the screen could fail
				}
				defer bar.Finish()
			}
			ctx, stop := signal.NotifyContext(c.Context(), os.Interrupt, syscall.SIGTERM)
			defer stop()
			laid, err := report.SheetsOf(ctx, l.batch, o)
			if err != nil {
				return jobError{err}
			}
			if asJSON {
				return done(writeJSON(s.out, laid))
			}
			_, err = s.out.Write(report.SheetsText(laid, l.batch.Units))
			return done(err)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print them as JSON, with the place of every part")
	c.Flags().IntVar(&effort, "effort", nest.DefaultEffort, "how long to search: 1000 are some seconds")
	c.Flags().Uint64Var(&seed, "seed", 0, "begin the search elsewhere")
	return c
}
