package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// whole reads a whole number.
func whole(r *reading, text string) int {
	n, err := strconv.Atoi(text)
	if err != nil {
		r.fail("%q is no whole number", text)
	}
	return n
}

// remarks adds the warnings and the notes of an output.
func (r *reading) remarks(lines map[string][]string) {
	for _, level := range []string{"warning", "note"} {
		r.remarked(level, lines[level])
	}
}

// remarked adds those of a level. A line names drawers, the first four and how
// many more, before what is said of them; outputs gather drawers in their own ways, so
// that what is said, and of how many drawers, is what has to agree.
func (r *reading) remarked(level string, lines []string) {
	of, named := make(map[string]int), make(map[string]map[string]bool)
	for _, line := range lines {
		if line == "" {
			continue
		}
		drawers, more, message := r.job.named(line)
		if named[message] == nil {
			named[message] = make(map[string]bool)
		}
		of[message] += more
		for _, d := range drawers {
			named[message][d] = true
		}
	}
	for message, drawers := range named {
		r.count(level, message, "drawers", of[message]+len(drawers))
	}
	r.count("total", "job", "different "+level+"s", len(named))
}

var (
	before  = regexp.MustCompile(`^([^:]+): (.+)$`)
	andMore = regexp.MustCompile(`^(.+) and (\d+) more$`)
)

// named parts a line into the drawers that it begins with, and what is said of them.
func (j Job) named(line string) (drawers []string, more int, message string) {
	m := before.FindStringSubmatch(line)
	if m == nil {
		return nil, 0, line
	}
	names := m[1]
	if n := andMore.FindStringSubmatch(names); n != nil {
		names = n[1]
		more, _ = strconv.Atoi(n[2])
	}
	drawers = strings.Split(names, ", ")
	for _, d := range drawers {
		if !slices.Contains(j.Drawers, d) {
			return nil, 0, line
		}
	}
	return drawers, more, m[2]
}

// someOf names the first four, and how many more there are.
func someOf(names []string) string {
	if n := len(names); n > 4 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:4], ", "), n-4)
	}
	return strings.Join(names, ", ")
}

// warned is a warning or a note of a program's list.
type warned struct{ Level, Drawer, Message string }

// listed are those of a program's list as lines, by their level.
func listed(list []warned) map[string][]string {
	lines := make(map[string][]string)
	for _, w := range list {
		if w.Drawer != "" {
			w.Message = w.Drawer + ": " + w.Message
		}
		lines[w.Level] = append(lines[w.Level], w.Message)
	}
	return lines
}
