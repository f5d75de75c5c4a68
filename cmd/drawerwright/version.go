package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"drawerwright/cmd/internal/report"

	"github.com/spf13/cobra"
)

func newVersion(s streams) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version, and that of report.json",
		Example: "  $ drawerwright version",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			built := "devel"
			if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
				built = info.Main.Version
			}
			if _, err := fmt.Fprintf(s.out, "drawerwright %s, report format %d, %s %s/%s\n", built, report.Format, runtime.Version(), runtime.GOOS, runtime.GOARCH); err != nil {
				return jobError{err}
			}
			return nil
		},
	}
}
