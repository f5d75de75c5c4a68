package main

import (
	"regexp"
	"runtime/debug"
	"strings"
	"testing"

	"drawerwright/cmd/internal/licenses"
)

// TestSourceIsTold: what is known of the source is said, and what is not known is said to be so.
func TestSourceIsTold(t *testing.T) {
	stamp := func(version string, settings ...debug.BuildSetting) source {
		return stamped(&debug.BuildInfo{Main: debug.Module{Version: version}, Settings: settings})
	}
	revision := debug.BuildSetting{Key: "vcs.revision", Value: "0123abcd"}
	date := debug.BuildSetting{Key: "vcs.time", Value: "2026-11-29T14:51:23Z"}
	for name, c := range map[string]struct {
		from source
		want string
	}{
		"released": {source{version: "1.0.0", commit: "0123abcd", date: "2026-11-29T14:51:23Z"},
			"drawerwright 1.0.0\ncommit: 0123abcd\ndate of the source: 2026-11-29T14:51:23Z\n"},
		"stamped": {stamp("v1.0.0", revision, date, debug.BuildSetting{Key: "vcs.modified", Value: "false"}),
			"drawerwright v1.0.0\ncommit: 0123abcd\ndate of the source: 2026-11-29T14:51:23Z\n"},
		"changed": {stamp("v1.0.0+dirty", revision, date, debug.BuildSetting{Key: "vcs.modified", Value: "true"}),
			"drawerwright v1.0.0+dirty\ncommit: 0123abcd, and changes that are in no commit\n" +
				"date of the source: 2026-11-29T14:51:23Z\n"},
		"of a clone": {stamp("(devel)", revision, date), "drawerwright built from source\ncommit: 0123abcd\ndate of the source: 2026-11-29T14:51:23Z\n"},
		"go run": {stamp("(devel)"), "drawerwright built from source\n" +
			"commit: unknown: go run notes none, nor does go build with -buildvcs=false\ndate of the source: unknown\n"},
	} {
		t.Run(name, func(t *testing.T) {
			if got := c.from.String(); got != c.want {
				t.Errorf("it says\n%sand should say\n%s", got, c.want)
			}
		})
	}
}

// TestVersionLines: five facts, a line each, alike from the command and from the flag.
func TestVersionLines(t *testing.T) {
	_, said, _ := call(t, "", "version")
	want := regexp.MustCompile(`^drawerwright .+
commit: .+
date of the source: .+
report.json: report format \d+
built with: go\S+ for \w+/\w+
$`)
	if !want.MatchString(said) {
		t.Errorf("version prints\n%s", said)
	}
	if _, flag, _ := call(t, "", "--version"); flag != said {
		t.Errorf("--version prints\n%sand version\n%s", flag, said)
	}
}

// TestReadmeHasTheLicense that the program prints.
func TestReadmeHasTheLicense(t *testing.T) {
	_, printed, _ := call(t, "", "version", "--licenses")
	words := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	for name, text := range map[string]string{"README.md": readme(t), "version --licenses": printed} {
		if !strings.Contains(words(text), words(licenses.Own)) {
			t.Errorf("%s does not have the license as it is in own.txt", name)
		}
	}
	if !strings.HasSuffix(printed, licenses.Others) {
		t.Error("version --licenses does not end with the licenses of libraries and letters")
	}
}
