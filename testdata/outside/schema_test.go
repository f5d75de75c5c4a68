package outside

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestSchema: the printed schema is sound by its own draft, takes every sample
// and what init writes, and refuses a slip in a key, a missing stock, and a
// word that is none of the known ones.
func TestSchema(t *testing.T) {
	dir := t.TempDir()
	schema, err := exec.Command(command, "schema").Output()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "schema.json")
	if err := os.WriteFile(path, schema, 0o644); err != nil {
		t.Fatal(err)
	}
	good, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(good) == 0 {
		t.Fatalf("no samples: %v", err)
	}
	bench, err := os.ReadFile("../../samples/bench-drawers.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, units := range []string{"mm", "in"} {
		name := filepath.Join(dir, units+".yaml")
		if out, err := exec.Command(command, "init", name, "--units", units, "--yes").CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		good = append(good, name)
	}
	var bad []string
	for from, to := range map[string]string{"    sides:": "    sidse:", "stock:": "stocks:", "kind: saw": "kind: axe", "count: 2": "count: two"} {
		text := strings.Replace(string(bench), from, to, 1)
		if text == string(bench) {
			t.Fatalf("no %q in the sample", from)
		}
		name := filepath.Join(dir, "bad"+strings.Trim(from, " :")+".yaml")
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		bad = append(bad, name)
	}
	type answer struct {
		Schema, File, Draft string
		Faults              []string
	}
	answers := lines[answer](t, "", python, append([]string{"schema_check.py", path}, append(good, bad...)...)...)
	if len(answers) != 1+len(good)+len(bad) {
		t.Fatalf("%d answers", len(answers))
	}
	if answers[0].Schema != "" || !strings.Contains(answers[0].Draft, "2020-12") {
		t.Errorf("the schema itself: %+v", answers[0])
	}
	for i, a := range answers[1:] {
		if i < len(good) && len(a.Faults) > 0 {
			t.Errorf("%s: %q", a.File, a.Faults)
		}
		if i >= len(good) && len(a.Faults) == 0 {
			t.Errorf("%s: no fault found", a.File)
		}
	}
}
