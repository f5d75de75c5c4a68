package main

import (
	"errors"
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"

	"github.com/spf13/cobra"
)

func newCheck(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check JOB",
		Short: "Read a job file and say what is wrong in it",
		Long: `check reads a job file, works out every drawer, and lists all that is wrong or
doubtful in it, in one run, each with its line and what would do. Of a job without
errors it says for each kind of drawer what becomes of its boxes, with boards and
machine off as they usually are. It begins with the worst that is true: "Cannot be
cut" of cuts beyond the limits of the shop's machine, "Does not fit", "May not fit",
"Overloaded", or "Fits". All but errors are warnings: the exit code is 0. It writes
no files.
JOB may be - for standard input.`,
		Example: `  $ drawerwright check samples/bench-drawers.yaml
  bench-wide, bench-narrow: goes together: more than 999 of 1,000 boxes come out right
  samples/bench-drawers.yaml: 2 kinds of drawer, 6 boxes, no errors, no warnings`,
		Args:              oneJob,
		ValidArgsFunction: jobFiles,
		RunE: func(c *cobra.Command, args []string) error {
			l, err := ready(args[0], asJSON, s)
			if err != nil {
				return err
			}
			if asJSON {
				return done(writeJSON(s.out, checked{OK: true, Problems: found(l), More: l.More,
					Verdicts: record.VerdictsOf(l.Batch)}))
			}
			head := l.answer()
			if head[0].Level == present.Good { // else what would do stands below, with each warning
				head = append(head, nextLine("build", args[0]))
			}
			said := present.Screen{Head: head, All: true, Whole: func(out *present.Printed) {
				for _, v := range record.VerdictsOf(l.Batch) {
					fmt.Fprintln(out, plain(v.String()))
				}
				fmt.Fprintf(out, "%s: %s, %s, no errors, %s\n", plain(l.Job.File),
					l.Batch.KindsSaid(),
					words.Count(l.Batch.Boxes(), "box", "boxes"), l.counted())
			}}
			return done(errors.Join(s.show(said), l.show(s)))
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "print the problems as JSON")
	return c
}
