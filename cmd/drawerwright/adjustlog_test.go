package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestAdjustLogs: a test cut goes into the log behind what is there, once all is measured that is asked for.
func TestAdjustLogs(t *testing.T) {
	shop := filepath.Join(t.TempDir(), "shop.csv")
	log := func(code int, readings string, more ...string) string {
		t.Helper()
		args := append([]string{"adjust", bench}, strings.Fields(readings)...)
		return ran(t, code, append(append(args, "--log", shop, "--date", "2026-03-02"), more...)...)
	}
	holds := func(want string) {
		t.Helper()
		if got, _ := os.ReadFile(shop); string(got) != want {
			t.Errorf("the log is %q, not %q", got, want)
		}
	}
	const good = "slot=6.40 edge=6.12 depth=6.12 tongue=6.12 slot=6.38"
	const head = "date,machine,cutter,what,aimed,measured,units,then\r\n"
	if text := log(0, "slot=6.42"); !strings.Contains(text, "Nothing is added to the log yet") {
		t.Error(text)
	}
	if text := log(0, "edge=6.5 tongue=6.1"); !strings.Contains(text, "readings contradict each other") {
		t.Error(text)
	}
	if text := log(0, "diagonals=680,680"); !strings.Contains(text, "it takes slot, edge, depth and front-length") {
		t.Error(text)
	}
	holds("")
	// What is left is as a run is cut; what is moved is not.
	if text := log(0, good); !strings.Contains(text, "4 lines added to") {
		t.Error(text)
	}
	kept := head + "2026-03-02,saw,,cutter,6.35,6.4,mm,kept\r\n" +
		"2026-03-02,saw,,fence,6.1,6.12,mm,kept\r\n" +
		"2026-03-02,saw,,height,6.1,6.12,mm,kept\r\n2026-03-02,saw,,cut,6.4,6.38,mm,kept\r\n"
	holds(kept)
	log(0, "slot=6.35 edge=6.3 tongue=6.3 depth=6.1 tongue-length=6.1 "+
		"recess=0.4 clearance=0.05 "+
		"front-thickness=12.2 sides-thickness=12.2 front-length=447.8 width=460", "--json")
	moved := "2026-03-02,saw,,cutter,6.35,6.35,mm,kept\r\n2026-03-02,saw,,fence,6.1,6.3,mm,moved\r\n" +
		"2026-03-02,saw,,height,6.1,6.1,mm,kept\r\n2026-03-02,saw,,length,447.8,447.8,mm,kept\r\n"
	holds(kept + moved)
	// A log with a mistake stays as it is, and the mistake is named.
	if err := os.WriteFile(shop, []byte(head+"2026-03-02,saw,,fence,6.1,6.12,feet,kept\r\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if text := log(1, good); !strings.Contains(text, `shop.csv:2: column 7, units: "feet" is no unit`) {
		t.Error(text)
	}
	holds(head + "2026-03-02,saw,,fence,6.1,6.12,feet,kept\r\n")
	for args, want := range map[string]string{"--date 2026-03-02": "give both", "--log - ": "takes no standard input",
		"--log x.csv --date 2.3.26": "as YYYY-MM-DD"} {
		if text := ran(t, 2, append([]string{"adjust", bench, "slot=6.4"}, strings.Fields(args)...)...); !strings.Contains(text, want) {
			t.Errorf("%s: %s", args, text)
		}
	}
}
