package main

import (
	"cmp"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"drawerwright/cmd/internal/licenses"
	"drawerwright/cmd/internal/record"

	"github.com/spf13/cobra"
)

// .ci/release has the linker set these, since it builds without the version control's stamp.
var releaseVersion, releaseCommit, releaseDate string

func newVersion(s streams) *cobra.Command {
	var texts, tried bool
	c := &cobra.Command{
		Use:   "version",
		Short: "Print the version, its source, systems and licenses",
		Long: `version prints which version this is, the commit and the date of its source, and the
format of the report.json that it writes and reads.`,
		Example: `  $ drawerwright version
  $ drawerwright version --support
  $ drawerwright version --licenses > LICENSES.txt`,
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			text := version()
			switch {
			case texts:
				text = licenseText()
			case tried:
				text = support()
			}
			_, err := io.WriteString(s.out, text)
			return done(err)
		},
	}
	c.Flags().BoolVar(&texts, "licenses", false, "print the license, and those of all that the program is made of")
	c.Flags().BoolVar(&tried, "support", false, "print for which systems it is made, and what has run it on each")
	c.MarkFlagsMutuallyExclusive("licenses", "support")
	return c
}

// source is what a program knows of where it comes from; what it does not know is empty.
type source struct {
	version string
	commit  string
	date    string // of the commit, RFC 3339
	changed bool   // since the commit
}

// version says what was built, of which source, with what, and the format of report.json.
func version() string {
	from := source{version: releaseVersion, commit: releaseCommit, date: releaseDate}
	if info, ok := debug.ReadBuildInfo(); ok && releaseCommit == "" {
		from = stamped(info)
	}
	return from.String() + fmt.Sprintf("report.json: report format %d\nbuilt with: %s for %s/%s\n",
		record.Format, runtime.Version(), runtime.GOOS, runtime.GOARCH)
}

// stamped is what go build and go install note of the source.
func stamped(info *debug.BuildInfo) source {
	from := source{}
	if info.Main.Version != "(devel)" {
		from.version = info.Main.Version
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			from.commit = s.Value
		case "vcs.time":
			from.date = s.Value
		case "vcs.modified":
			from.changed = s.Value == "true"
		}
	}
	return from
}

func (from source) String() string {
	commit := cmp.Or(from.commit, "unknown: go run notes none, nor does go build with -buildvcs=false")
	if from.changed {
		commit += ", and changes that are in no commit"
	}
	return fmt.Sprintf("drawerwright %s\ncommit: %s\ndate of the source: %s\n",
		cmp.Or(from.version, "built from source"), commit, cmp.Or(from.date, "unknown"))
}

// licenseText is the license of the program, and what its parts ask to be printed.
func licenseText() string {
	var b strings.Builder
	b.WriteString("drawerwright is under this license:\n\n")
	b.WriteString(licenses.Own)
	b.WriteString("\nIt is made with the libraries and letters below, each under its own license.\n\n")
	b.WriteString(licenses.Others)
	return b.String()
}
