package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const loggedJob = "../../samples/log/sewing-box.yaml"

// TestLogIsUsed: fit and setup say how the log changes the odds, from that of the job without it, on how many cuts that
// rests and what it leaves open, and that the cutter drifts; JSON has the same.
func TestLogIsUsed(t *testing.T) {
	text, err := os.ReadFile(loggedJob)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	without := filepath.Join(dir, "job.yaml")
	usually := strings.Replace(string(text), "accuracy: from-log\n", "", 1)
	if err := os.WriteFile(without, []byte(usually), 0o644); err != nil {
		t.Fatal(err)
	}
	log, err := os.ReadFile(filepath.Join(filepath.Dir(loggedJob), "shop.csv"))
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, "shop.csv"), log, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	type forecast struct {
		Drawers []struct{ Odds float64 }
		Log     struct {
			File       string
			Quantities []struct {
				What, Drift string
				Cuts        int
			}
			Drawers []struct{ Before, After, Min, Max float64 }
		}
	}
	read := func(file string) (f forecast) {
		if err := json.Unmarshal([]byte(ranOut(t, "fit", file, "--json")), &f); err != nil {
			t.Fatal(err)
		}
		return f
	}
	by, usual := read(loggedJob), read(without)
	d := by.Log.Drawers[0]
	if d.Before != usual.Drawers[0].Odds || d.After != by.Drawers[0].Odds ||
		d.After >= d.Before || d.Min >= d.After || d.Max <= d.After {
		t.Errorf("%+v, and without the log %g", d, usual.Drawers[0].Odds)
	}
	if len(usual.Log.Drawers) != 0 || len(usual.Log.Quantities) != 4 {
		t.Errorf("not asked for: %+v", usual.Log)
	}
	for _, q := range by.Log.Quantities {
		// The table of the log: a line for each of 12 days, six of them with a second cut; one fence was moved.
		cuts := map[string]int{"cut": 6, "cutter": 12, "fence": 12, "height": 12}[q.What]
		if q.Cuts != cuts || (q.Drift != "") != (q.What == "cutter") {
			t.Errorf("%+v", q)
		}
	}
	for _, command := range []string{"fit", "setup"} {
		said := strings.Join(strings.Fields(ran(t, 0, command, loggedJob)), " ")
		for _, want := range []string{"By the log shop.csv, 948 of 1,000 boxes of spools come out right; by what was stated, 998.",
			"It rests on 42 cuts; nine shops of ten with such cuts have", "bench saw dado stack, cutter: the newest cut is narrower than chance makes one."} {
			if !strings.Contains(said, want) {
				t.Errorf("%s does not say %q: %s", command, want, said)
			}
		}
	}
	if said := ran(t, 0, "fit", loggedJob, "--all"); !strings.Contains(said, "what the log shop.csv shows") {
		t.Error(said)
	}
}

// TestLogChart: the chart of the sample's log has a dot for each cut of a quantity, and rings about those that a rule
// names; a job without a log, or with nothing to draw, says so, and a file that is there stays.
func TestLogChart(t *testing.T) {
	svg := filepath.Join(t.TempDir(), "chart.svg")
	ran(t, 0, "fit", loggedJob, "--chart", svg)
	data, err := os.ReadFile(svg)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, want := range []string{"<svg", "bench saw dado stack, cutter<", "the newest cut is narrower than chance makes one",
		"stack, fence<", "stack, height<", "stack, cut<"} {
		if !strings.Contains(text, want) {
			t.Errorf("the chart does not have %q", want)
		}
	}
	// Filled, a dot a cut: 6 + 3 times 12.
	if dots := strings.Count(text, `fill="#000000"`) - strings.Count(text, "<text"); dots != 42 {
		t.Errorf("%d dots, not 42", dots)
	}
	if said := ran(t, 1, "fit", loggedJob, "--chart", svg); !strings.Contains(said, "is there already") {
		t.Error(said)
	}
	if now, _ := os.ReadFile(svg); string(now) != text {
		t.Error("a chart that is there was written over")
	}
	if said := ran(t, 2, "fit", bench, "--chart", svg+"2"); !strings.Contains(said, "the job names no log") {
		t.Error(said)
	}
}
