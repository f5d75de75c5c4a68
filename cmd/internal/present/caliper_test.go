package present_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
)

// printed are the limits of a setup sheet as they stand in its text.
type printed struct{ what, is, least, most string }

// rows reads the tables of limits out of the text: those lines under "right" that end
// with "least to most".
func rows(text []byte) (list []printed) {
	in := false
	for _, line := range strings.Split(string(text), "\n") {
		words := strings.Fields(line)
		switch n := len(words); {
		case n >= 3 && words[0] == "what" && words[n-1] == "right":
			in = true
		case !in || n < 5 || words[n-2] != "to":
			in = false
		default:
			if _, err := strconv.ParseFloat(words[n-3], 64); err != nil {
				in = false // a sentence below the table can end in a range too
				continue
			}
			list = append(list, printed{strings.Join(words[:n-4], " "), words[n-4], words[n-3], words[n-1]})
		}
	}
	return list
}

// check holds the printed limits of a job's sheet against each other and against the
// numbers for programs.
func check(t *testing.T, name, text string, count map[string]int) {
	t.Helper()
	j, problems := job.Read(name, strings.NewReader(text), job.Files(load.Beside(name)))
	if problems.Failed() {
		return
	}
	b, found := batch.Make(t.Context(), j)
	for _, p := range found {
		if p.IsError() {
			return
		}
	}
	sheet := present.SetupsOf(record.WorkOf(b))
	list := rows(present.SetupText(sheet, b.Units))
	var checks []present.Check
	for _, m := range sheet.Machines {
		before, said := len(checks), len(m.ChecksText)
		for _, s := range m.Settings {
			checks, said = append(checks, s.Checks...), said+len(s.ChecksText)
		}
		checks = append(checks, m.Checks...)
		if len(checks) == before && said == 0 {
			t.Errorf("%s: nothing is said of the readings at the %s of %v", name, m.Machine, m.Drawers)
		}
	}
	if len(checks) != len(list) {
		t.Errorf("%s: %d limits for programs, %d on paper: %v", name, len(checks), len(list), list)
		return
	}
	count["jobs "+b.Units.String()]++
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Errorf("%s: %q is no number", name, s)
		}
		return v
	}
	for i, p := range list {
		is, least, most := number(p.is), number(p.least), number(p.most)
		if is < least || is > most || least >= most {
			t.Errorf("%s: %s should be %s and is right from %s to %s", name, p.what, p.is, p.least, p.most)
		}
		if c := checks[i]; c.What != p.what || c.Target.In(b.Units) != is || c.Min.In(b.Units) != least || c.Max.In(b.Units) != most {
			t.Errorf("%s: on paper %v, for programs %+v", name, p, c)
		}
		count["limits"]++
	}
}

// TestTargetsAreInside: what a caliper should read is between its limits, as they are
// printed, in the samples and in random jobs of both units.
func TestTargetsAreInside(t *testing.T) {
	count := map[string]int{}
	samples, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(samples) == 0 {
		t.Fatal("no samples", err)
	}
	for _, name := range samples {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		check(t, name, string(bytes.TrimSpace(text)), count)
	}
	for seed := range uint64(60) {
		check(t, "seed "+strconv.FormatUint(seed, 10), jobtest.Text(seed), count)
	}
	t.Log(count)
	if count["jobs mm"] < 20 || count["jobs in"] < 20 || count["limits"] < 500 {
		t.Errorf("too little was looked at: %v", count)
	}
}
