package readback

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
)

var (
	remarkLine  = regexp.MustCompile(`^\S.*?:\d+:\d+: (warning|note): (.+)$`)
	errorLine   = regexp.MustCompile(`^\S.*?:\d+:\d+: error: (.+)$`)
	checkedLine = regexp.MustCompile(`: (\d+) kinds? of drawer, (\d+) box(?:es)?, no errors, (no|\d+) warnings?(?:, (\d+) notes?)?$`)
)

// checkText reads what check prints on both streams.
func checkText(r *reading, text string) {
	said := map[string][]string{}
	summed := false
	for i, line := range strings.Split(text, "\n") {
		if answer := strings.TrimPrefix(line, "! "); i == 0 && answered.MatchString(answer) {
			r.words("total", "job", "answer", answer)
		}
		if m := remarkLine.FindStringSubmatch(line); m != nil {
			said[m[1]] = append(said[m[1]], m[2])
		}
		if names, _, ok := strings.Cut(line, ": "); ok && judgedLine.MatchString(line) &&
			slices.Contains(r.job.Drawers, strings.Split(withoutMore(names), ", ")[0]) {
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
			r.words("total", "job", "notes listed", cmp.Or(m[4], "0"))
		}
	}
	if !summed {
		r.fail("no line that sums up: %s", text)
	}
	r.count("total", "job", "warnings listed", len(said["warning"]))
	r.count("total", "job", "notes listed", len(said["note"]))
	r.remarks(said)
}

// verdict is one on some drawers, in a list for programs.
type verdict struct {
	Drawers []string
	Text    string
}

func (r *reading) verdicts(list []verdict) {
	for _, v := range list {
		for _, d := range v.Drawers {
			r.words("verdict", d, "said", v.Text)
		}
	}
}

func checkJSON(r *reading, text string) {
	var j struct {
		OK       bool
		Problems []warned
		More     int
		Verdicts []verdict
	}
	r.decode(text, &j)
	if !j.OK || j.More > 0 {
		r.fail("not all is well: %s", text)
	}
	r.verdicts(j.Verdicts)
	r.remarks(listed(j.Problems))
}
