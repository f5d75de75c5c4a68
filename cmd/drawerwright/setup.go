package main

import (
	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

func newSetup(s streams) *cobra.Command {
	return printing(s, &cobra.Command{
		Use:   "setup JOB",
		Short: "Print the setup sheet: height and fence for every cut, in order",
		Long: `setup says for each machine whether one fence distance and one cutter height serve
all drawers, what forcing one costs, and the fewest settings that are right;
and then every setting with its cuts in order: which parts, which face down, which
edge to the fence, what the caliper should read, and what can hurt.

The machine of each drawer is that of its cutter in the job: saw, router-table, router
(CNC) or hand. With spacers in the job, settings are made up of them. JOB may be - for standard input.`,
		Example: `  $ drawerwright setup drawers.yaml
  $ drawerwright setup drawers.yaml --json`,
	}, "sheets", func(b batch.Batch) (any, present.Screen) {
		sheet := present.SetupsOf(record.WorkOf(b))
		return sheet, present.Screen{
			Brief: func(out *present.Printed) { present.SetupBrief(out, sheet, b.Units) },
			Whole: func(out *present.Printed) { present.PrintSetup(out, sheet, b.Units) },
		}
	})
}
