package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"syscall"

	"drawerwright/cmd/internal/report"
	"drawerwright/geom"
	"drawerwright/geom/nest"

	"github.com/schollz/progressbar/v3"
	"github.com/spf13/cobra"
)

func newSheets(s streams) *cobra.Command {
	var asJSON bool
	var search searching
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
			if err := search.check(); err != nil {
				return err
			}
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			o, ctx, end := search.start(c.Context(), s)
			defer end()
			laid, err := report.SheetsOf(ctx, l.Batch, o)
			if err != nil {
				return failure(err, args[0], asJSON, s)
			}
			return printSheets(laid, l.Batch.Units, asJSON, s)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print them as JSON, with the place of every part")
	search.flags(c)
	return c
}

func printSheets(laid report.Sheets, u geom.Unit, asJSON bool, s streams) error {
	var err error
	if asJSON {
		err = writeJSON(s.out, laid)
	} else {
		_, err = s.out.Write(report.SheetsText(laid, u))
	}
	if err == nil && slices.ContainsFunc(laid.Stocks, func(k report.SheetStock) bool { return len(k.Left) > 0 }) {
		return errShown // pieces without a sheet are named in what was printed
	}
	return done(err)
}

// searching is how long to search for a layout, and from where.
type searching struct {
	effort int
	seed   uint64
}

// mostEffort is a search of hours.
const mostEffort = 10_000_000

func (q *searching) flags(c *cobra.Command) {
	c.Flags().IntVar(&q.effort, "effort", nest.DefaultEffort, "how long to search: 1000 are some seconds")
	c.Flags().Uint64Var(&q.seed, "seed", 0, "begin the search elsewhere")
}

func (q *searching) check() error {
	if q.effort < 1 || q.effort > mostEffort {
		return fmt.Errorf("--effort %d: it is from 1 to %d", q.effort, mostEffort)
	}
	return nil
}

// start gives the options of a search that shows how far it is on a terminal, and a
// context that Ctrl-C ends.
func (q *searching) start(parent context.Context, s streams) (o nest.Options, ctx context.Context, end func()) {
	o = nest.Options{Effort: q.effort, Seed: q.seed}
	ctx, stop := signal.NotifyContext(parent, os.Interrupt, syscall.SIGTERM)
	if !terminal(s.err) {
		return o, ctx, stop
	}
	bar := progressbar.NewOptions(100, progressbar.OptionSetWriter(s.err), progressbar.OptionSetDescription("sheets"), progressbar.OptionClearOnFinish())
	o.Progress = func(p nest.Progress) {
		bar.Describe(fmt.Sprintf("%d sheets, cost %g, at least %g", p.Sheets, p.Cost, p.Least))
		bar.Set(int(100 * p.Done)) // only the screen could fail
	}
	return o, ctx, func() {
		bar.Finish()
		stop()
	}
}
