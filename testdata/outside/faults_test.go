package outside

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"drawerwright/geom/geomtest"
)

// Two states of a job: what a build finds, and what it writes.
const (
	faultyBefore = extraStock + `
cutter: {kind: router, diameter: 6}
drawers:
  - {name: tray, outside: 400 x 120 x 450, sides: ply 12, bottom: ply 6}
`
	faultyAfter = extraStock + `
cutter: {kind: router, diameter: 6}
drawers:
  - {name: tray, outside: 420 x 120 x 450, sides: ply 12, bottom: ply 6}
  - {name: tall, outside: 420 x 180 x 450, sides: ply 12, bottom: ply 6}
`
)

// faults are what can be missing or in the way while the command runs, as a shell sets it up for
// the command in "$@", and how the command ends then.
var faults = map[string]struct {
	shell string
	code  int
}{
	"32 open files":              {`ulimit -n 32; exec "$@"`, 0},
	"16 open files":              {`ulimit -n 16; exec "$@"`, 0},
	"files of 20 KiB":            {`ulimit -f 20; exec "$@"`, 1},
	"files of 100 KiB":           {`ulimit -f 100; exec "$@"`, 1},
	"no space for what is told":  {`exec "$@" >/dev/full`, 1},
	"closed output":              {`exec "$@" >&-`, 0},
	"no input, output or errors": {`exec "$@" <&- >&- 2>&-`, 0},
	"a reader that goes":         {`"$@" | true; exit "${PIPESTATUS[0]}"`, -1},
	"a read-only folder":         {held("${3%/*}"), 1},
	"a read-only output":         {held("$5"), 1},
	"no environment":             {`exec env -i "$@"`, 0},
	"no home or scratch folder":  {`export HOME=/nowhere TMPDIR=/nowhere XDG_CACHE_HOME=/nowhere; exec "$@"`, 0},
	"a clock that was set back":  {`find "${3%/*}" -exec touch -d 2040-01-01 {} +; exec "$@"`, 0},
	"one processor":              {`GOMAXPROCS=1 exec "$@"`, 0},
	"two processors":             {`GOMAXPROCS=2 exec "$@"`, 0},
	"eight processors":           {`GOMAXPROCS=8 exec "$@"`, 0},
}

// held is a command while a folder is read-only, to root too: what lets root write anywhere is dropped.
func held(folder string) string {
	return `at="` + folder + `"; chmod a-w "$at"; drop=
[ "$(id -u)" != 0 ] || drop="setpriv --bounding-set=-dac_override,-dac_read_search --inh-caps=-all"
$drop "$@"; code=$?; chmod u+w "$at"; exit $code`
}

// contents are the files of a folder, by their sums; none where there is no folder.
func contents(t *testing.T, dir string) map[string][32]byte {
	t.Helper()
	all := map[string][32]byte{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		all[name] = sha256.Sum256(data)
		return err
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return all
}

// faulty is a folder with a job that was built, and changed since.
func faulty(t *testing.T) (dir string, before, after map[string][32]byte) {
	t.Helper()
	old, _ := build(t, faultyBefore)
	now, _ := build(t, faultyAfter)
	dir = t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "job.yaml"), []byte(faultyAfter), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(dir, "out"), os.DirFS(old)); err != nil {
		t.Fatal(err)
	}
	return dir, contents(t, old), contents(t, now)
}

func faultyBuild(dir string) []string {
	return []string{command, "build", filepath.Join(dir, "job.yaml"), "-o", filepath.Join(dir, "out"), "--exploded"}
}

// TestFaults: whatever is missing, what was built before is there whole, or what is built now,
// the same bytes as ever; and nothing is left beside it.
func TestFaults(t *testing.T) {
	t.Parallel()
	for name, f := range faults {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir, before, after := faulty(t)
			run := exec.Command("bash", append([]string{"-c", f.shell, "bash"}, faultyBuild(dir)...)...)
			said, err := run.CombinedOutput()
			if run.ProcessState == nil {
				t.Fatal(err)
			}
			code := run.ProcessState.ExitCode()
			if f.code >= 0 && code != f.code {
				t.Errorf("it ends with %d, not %d: %s", code, f.code, said)
			}
			if name == "no space for what is told" && !strings.Contains(string(said), "is written whole") {
				t.Errorf("it does not say that the build is there: %s", said)
			}
			if strings.Contains(string(said), "panic") || strings.Contains(string(said), "goroutine ") {
				t.Errorf("it panics: %s", said)
			}
			got := contents(t, filepath.Join(dir, "out"))
			if !maps.Equal(got, after) && (code == 0 || !maps.Equal(got, before)) {
				t.Errorf("it ends with %d, and the folder is neither the one before nor the one after", code)
			}
			if list := names(t, dir); len(list) != 2 {
				t.Errorf("beside job and folder: %q", list)
			}
		})
	}
}

// killable are what writes, with what it writes in the folder of a job; whether a second time changes
// nothing more; and how it is made ready.
var killable = map[string]struct {
	writes string
	again  bool
	writer writer
}{
	"build":             {"out", true, func(_ *testing.T, dir string) func() *writing { return runs(faultyBuild(dir)[1:]...) }},
	"sheets --put-back": {"offcuts.csv", false, putsBack},
	"adjust --write":    {"next.yaml", false, adjusts("6.40")},
	"adjust --log":      {"shop.csv", false, logs("2026-03-02")},
	// A text of the length of a large job, so that its write takes a while.
	"a save of the page": {"job.yaml", true, func(t *testing.T, dir string) func() *writing {
		return saves(t, dir, "job.yaml", faultyAfter+strings.Repeat("# a line\n", 50_000))
	}},
}

// shelfOf puts a shelf of offcuts beside a job.
func shelfOf(t *testing.T, dir string) {
	t.Helper()
	shelf := []byte("stock,name,length,width\nply 12,old,900,700\nply 6,oak,200,200\n")
	if err := os.WriteFile(filepath.Join(dir, "offcuts.csv"), shelf, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestKilled: what writes, killed at any moment, leaves what was there as it was or as it
// shall be, and the next run makes it, and leaves nothing beside it.
func TestKilled(t *testing.T) {
	t.Parallel()
	for name, c := range killable {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			place := func() string {
				dir, _, _ := faulty(t)
				shelfOf(t, dir)
				return dir
			}
			written := func(dir string) map[string][32]byte { return contents(t, filepath.Join(dir, c.writes)) }
			run := func(dir string) (took time.Duration) {
				w := c.writer(t, dir)()
				if w.code() != 0 {
					t.Fatalf("%d: %s", w.exit, w.said)
				}
				return w.took
			}
			dir := place()
			before := written(dir)
			took, after, beside := run(dir), written(dir), names(t, dir)
			if maps.Equal(before, after) {
				t.Fatal("it writes nothing")
			}
			random, old, times := rand.New(rand.NewPCG(1, 2)), 0, geomtest.Cases(8, 1000)
			for range times {
				dir := place()
				dying := c.writer(t, dir)()
				time.Sleep(time.Duration(random.Float64() * float64(took)))
				dying.process.Kill() // it may have ended
				dying.code()
				left := written(dir)
				asBefore := maps.Equal(left, before)
				if !asBefore && !maps.Equal(left, after) {
					t.Fatalf("%s is neither what it was nor what it shall be: %d files", c.writes, len(left))
				}
				if asBefore {
					old++
				}
				if asBefore || c.again {
					run(dir)
				}
				if got := names(t, dir); !maps.Equal(written(dir), after) || !slices.Equal(got, beside) {
					t.Fatalf("the next run makes something else, or leaves %q, not %q", got, beside)
				}
				os.RemoveAll(dir)
			}
			t.Logf("killed %d times: %d times it was as before, %d times as after", times, old, times-old)
		})
	}
}

// names are those of all that is in a folder, also of what is hidden.
func names(t *testing.T, dir string) (list []string) {
	t.Helper()
	all, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		list = append(list, e.Name())
	}
	return list
}
