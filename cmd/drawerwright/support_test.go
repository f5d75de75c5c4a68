package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// TestSupport: what version --support says of each system is what .ci/nightly does, and all of it.
func TestSupport(t *testing.T) {
	script, err := os.ReadFile("../../.ci/nightly")
	if err != nil {
		t.Fatal(err)
	}
	runs := map[string]runner{"linux/amd64": byTests}
	for _, found := range regexp.MustCompile(`(?m)^other (\w+) qemu-\w+$`).FindAllStringSubmatch(string(script), -1) {
		runs["linux/"+found[1]] = byEmulator
	}
	if regexp.MustCompile(`(?m)^bash .ci/windows$`).Match(script) {
		runs["windows/amd64"] = byWine
	}
	_, said, _ := call(t, "", "version", "--support")
	for _, s := range systems {
		want, run := runs[s.name]
		if !run {
			want = never
		}
		if s.ranBy != want {
			t.Errorf("it says of %s: %s; .ci/nightly: %s", s.name, s.ranBy, want)
		}
		if !regexp.MustCompile(`(?m)^` + s.name + ` +(released|for tests) +` + regexp.QuoteMeta(string(s.ranBy))).MatchString(said) {
			t.Errorf("version --support has no such line of %s:\n%s", s.name, said)
		}
		delete(runs, s.name)
	}
	for name := range runs {
		t.Errorf(".ci/nightly runs %s, of which nothing is said", name)
	}
	if lines := strings.Count(said, "\n"); lines != len(systems) {
		t.Errorf("%d lines of %d systems", lines, len(systems))
	}
}
