package main

import (
	"drawerwright/cmd/internal/job"

	"github.com/spf13/cobra"
)

func newSchema(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of the job file",
		Long: `schema prints a JSON Schema (draft 2020-12) of the job file. An editor that knows
schemas completes keys and marks mistakes while you write.`,
		Example: `  $ drawerwright schema > drawerwright.schema.json
  then, as the first line of a job file:
  # yaml-language-server: $schema=drawerwright.schema.json`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := s.out.Write(job.Schema())
			return done(err)
		},
	}
}
