package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/reference"
)

// mostBytes of the README: it is read in ten minutes, all else is the program's own to explain.
const mostBytes = 12_000

func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestReadmeIsShort(t *testing.T) {
	if n := len(readme(t)); n > mostBytes {
		t.Errorf("the README has %d bytes, more than %d", n, mostBytes)
	}
}

// TestReadmeHasTheTwoCommands that build a sample and run all checks.
func TestReadmeHasTheTwoCommands(t *testing.T) {
	for _, must := range []string{
		"\n    go run ./cmd/drawerwright build samples/bench-drawers.yaml -o out\n",
		"\n    bash .ci/check\n",
	} {
		if !strings.Contains(readme(t), must) {
			t.Errorf("the README has no line %q", must)
		}
	}
}

var codeBlock = regexp.MustCompile("(?s)\n```yaml\n(.*?)```\n")

// TestJobsOfReadmeBuild: each job of the README is whole, and builds as it stands, without a
// warning; the three files to look at first are written, and the page for a phone.
func TestJobsOfReadmeBuild(t *testing.T) {
	jobs := codeBlock.FindAllStringSubmatch(readme(t), -1)
	if len(jobs) != 3 {
		t.Fatalf("%d jobs", len(jobs))
	}
	firsts := regexp.MustCompile("`out/([^`]+)`").FindAllStringSubmatch(readme(t), -1)
	if len(firsts) != 4 {
		t.Fatalf("the README names %d files to look at first", len(firsts))
	}
	for _, m := range jobs {
		t.Chdir(t.TempDir())
		code, out, errs := call(t, m[1], "build", "-", "-o", "out")
		if code != exitDone || strings.Contains(out+errs, "warning:") {
			t.Errorf("%s\nexit %d: %s%s", m[1], code, out, errs)
		}
		for _, f := range firsts {
			if _, err := os.Stat(filepath.Join("out", f[1])); err != nil {
				t.Error(err)
			}
		}
	}
}

var (
	said     = regexp.MustCompile("`drawerwright ([a-z]+)([^`]*)`|\n    drawerwright ([a-z]+)([^\n]*)\n")
	flagName = regexp.MustCompile(`(?:^|[ (])--?([a-z][a-z-]*)`)
	short    = map[string]string{"o": "output"}
	apart    = regexp.MustCompile("`--([a-z-]+)[^`]*`")
)

// TestCommandsOfReadme: each command, flag and topic that the README names is there.
func TestCommandsOfReadme(t *testing.T) {
	root, flags := newRoot(streams{}), map[string]bool{}
	named := 0
	for _, m := range said.FindAllStringSubmatch(readme(t), -1) {
		name, rest := m[1]+m[3], m[2]+m[4]
		of := commandOf(root, []string{name})
		if of == nil {
			t.Errorf("the README names the command %s", name)
			continue
		}
		named++
		for _, f := range flagName.FindAllStringSubmatch(rest, -1) {
			long := f[1]
			if of.Flags().Lookup(long) == nil && of.Flags().Lookup(short[long]) == nil {
				t.Errorf("the README names %s with the flag %s", name, f[1])
			}
		}
		topic := strings.TrimSpace(rest)
		if name == "help" && regexp.MustCompile(`^[a-z-]+$`).MatchString(topic) && !slices.Contains(reference.Topics, topic) {
			t.Errorf("the README names the topic %s", topic)
		}
	}
	if named < 12 {
		t.Errorf("the README names %d commands", named)
	}
	for _, c := range root.Commands() {
		for _, f := range apart.FindAllStringSubmatch(readme(t), -1) {
			flags[f[1]] = flags[f[1]] || c.Flags().Lookup(f[1]) != nil
		}
	}
	for f, there := range flags {
		if !there {
			t.Errorf("the README names the flag --%s", f)
		}
	}
}

// TestTopicsOfReadme: it names the first and the last of the topics that help lists.
func TestTopicsOfReadme(t *testing.T) {
	m := regexp.MustCompile("topics from `([a-z-]+)` to `([a-z-]+)`").FindStringSubmatch(readme(t))
	_, out, _ := call(t, "", "--help")
	listed := "one of these topics: " + strings.Join(reference.Topics, ", ") + "."
	if m == nil || m[1] != reference.Topics[0] || m[2] != reference.Topics[len(reference.Topics)-1] ||
		!strings.Contains(strings.Join(strings.Fields(out), " "), listed) {
		t.Errorf("the README has topics %q, help %s", m, out)
	}
}

// TestFitOfReadme: what fit begins with is called so in the README.
func TestFitOfReadme(t *testing.T) {
	job := codeBlock.FindStringSubmatch(readme(t))[1]
	_, out, _ := call(t, job, "fit", "-")
	m := regexp.MustCompile(`(?s)drawerwright fit my\.yaml.*?drawerwright setup`).FindString(readme(t))
	if !strings.Contains(out, "\nWatch: ") || !strings.Contains(m, "what to watch") {
		t.Errorf("the README says %s, fit %s", m, out)
	}
}

// TestTablesOfReadme: the shelf and the list are read as they stand, and used.
func TestTablesOfReadme(t *testing.T) {
	text := readme(t)
	tables := regexp.MustCompile("(?s)\n```csv\n(.*?)```\n").FindAllStringSubmatch(text, -1)
	job := codeBlock.FindStringSubmatch(text)[1]
	if len(tables) != 2 {
		t.Fatalf("%d tables", len(tables))
	}
	t.Chdir(t.TempDir())
	for i, name := range []string{"offcuts.csv", "list.csv"} {
		if !strings.Contains(text, name) {
			t.Errorf("the README does not say that it is %s", name)
		}
		if err := os.WriteFile(name, []byte(tables[i][1]), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	code, out, errs := call(t, job, "sheets", "-", "--shelf", "offcuts.csv", "--all")
	if code != exitDone || !strings.Contains(out, "left from the desk") {
		t.Error(out, errs)
	}
	code, out, errs = call(t, "", "layout", "list.csv")
	if code != exitDone || !strings.Contains(out, "1 sheet of birch, 1525.00 x 1525.00 mm") {
		t.Error(out, errs)
	}
}

// TestEntriesOfReadme: entries that it names with a value in passing take it.
func TestEntriesOfReadme(t *testing.T) {
	found := regexp.MustCompile("`([a-z]+): \\{([a-z-]+): ([a-z]+)\\}`").FindAllStringSubmatch(readme(t), -1)
	if len(found) < 2 {
		t.Fatalf("the README names %d entries", len(found))
	}
	for _, m := range found {
		entries, err := job.Explained(m[1] + "." + m[2])
		if err != nil || !slices.Contains(entries[0].Words, m[3]) {
			t.Errorf("%s: %v", m[0], err)
		}
	}
}

var linked = regexp.MustCompile(`\]\(([^)]+)\)`)

// TestFilesOfReadme: what it links or names in the project is there.
func TestFilesOfReadme(t *testing.T) {
	names := regexp.MustCompile(`(samples|\.ci|testdata|cmd)/[a-z./-]*[a-z]`).FindAllString(readme(t), -1)
	for _, m := range linked.FindAllStringSubmatch(readme(t), -1) {
		names = append(names, m[1])
	}
	if len(names) < 8 {
		t.Fatalf("only %q", names)
	}
	for _, name := range names {
		if _, err := os.Stat(filepath.Join("../..", name)); err != nil {
			t.Error(err)
		}
	}
}

// TestFiguresOfReadme: each figure beside a link to a table stands in that table.
func TestFiguresOfReadme(t *testing.T) {
	lines := regexp.MustCompile(`(?s)\n- \[\w+\]\((testdata/[^)]+)\)(.*?)\x60go run`).FindAllStringSubmatch(readme(t), -1)
	if len(lines) != 2 {
		t.Fatalf("%d lines with figures", len(lines))
	}
	for _, m := range lines {
		table, err := os.ReadFile(filepath.Join("../..", m[1]))
		if err != nil {
			t.Fatal(err)
		}
		figures := regexp.MustCompile(`\d[\d,.]*\d( m?s\b| %)?`).FindAllString(m[2], -1)
		if len(figures) < 3 {
			t.Errorf("%s: only %q", m[1], figures)
		}
		for _, f := range figures {
			if !strings.Contains(string(table), f) {
				t.Errorf("%s has no %s", m[1], f)
			}
		}
	}
}
