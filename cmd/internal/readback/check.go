package readback

import (
	"regexp"
	"slices"
	"strings"
)

var (
	warningLine = regexp.MustCompile(`^\S.*?:\d+:\d+: warning: (.+)$`)
	errorLine   = regexp.MustCompile(`^\S.*?:\d+:\d+: error: (.+)$`)
	checkedLine = regexp.MustCompile(`: (\d+) kinds? of drawer, (\d+) box(?:es)?, no errors, (no|\d+) warnings?$`)
)

// checkText reads what check prints on both streams.
func checkText(r *reading, text string) {
	var said []string
	summed := false
	for _, line := range strings.Split(text, "\n") {
		if m := warningLine.FindStringSubmatch(line); m != nil {
			said = append(said, m[1])
		}
		if names, _, ok := strings.Cut(line, ": "); ok && strings.HasSuffix(line, " come out right") && slices.Contains(r.job.Drawers, strings.Split(withoutMore(names), ", ")[0]) {
			r.judged(line)
			continue
		}
		if errorLine.MatchString(line) {
			r.fail("an error: %s", line)
		}
		if m := checkedLine.FindStringSubmatch(line); m != nil {
			summed = true
			r.words("total", "job", "kinds", m[1])
			r.words("total", "job", "boxes", m[2])
			if m[3] == "no" {
				m[3] = "0"
			}
			r.words("total", "job", "warnings listed", m[3])
		}
	}
	if !summed {
		r.fail("no line that sums up: %s", text)
	}
	r.count("total", "job", "warnings listed", len(said))
	r.warnings(said)
}

// verdict is one on some drawers, in a list for programs.
type verdict struct {
	Drawers []string
	Said    string
}

func (r *reading) verdicts(list []verdict) {
	for _, v := range list {
		for _, d := range v.Drawers {
			r.words("verdict", d, "said", v.Said)
		}
	}
}

func checkJSON(r *reading, text string) {
	var j struct {
		OK       bool
		Problems []struct{ Level, Message string }
		More     int
		Verdicts []verdict
	}
	r.decode(text, &j)
	if !j.OK || j.More > 0 {
		r.fail("not all is well: %s", text)
	}
	r.verdicts(j.Verdicts)
	var said []string
	for _, p := range j.Problems {
		said = append(said, p.Message)
	}
	r.warnings(said)
}
