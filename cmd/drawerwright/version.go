package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

func newVersion(s streams) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version, and that of report.json",
		Example: "  $ drawerwright version",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(s.out, "drawerwright %s\n", version())
			return done(err)
		},
	}
}

// version says what was built, with what, and the layout of report.json.
func version() string {
	built := "devel"
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		built = info.Main.Version
	}
	return fmt.Sprintf("%s, report format %d, %s %s/%s", built, record.Format, runtime.Version(),
		runtime.GOOS, runtime.GOARCH)
}
