// Package outside holds the tests that check the product's files with programs
// and libraries from outside the project: ezdxf, dxf-parser and dxflib for DXF,
// shapely for what a bit reaches, admesh and manifold-3d for solids. They run the built command as a shop would and
// read what it left on disk. `.ci/check` installs what they need and runs them;
// a missing tool is a failure, never a skip.
package outside

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"drawerwright/geom/geomtest"
)

// python is Debian's: another may come first on the PATH, without the packages.
const python = "/usr/bin/python3"

// command is the built product; what it builds for several tests is below shared.
var command, shared string

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "drawerwright-outside")
	if err != nil {
		panic(err)
	}
	command, shared = filepath.Join(dir, "drawerwright"), dir
	build := exec.Command("go", "build", "-o", command, "drawerwright/cmd/drawerwright")
	build.Stderr = os.Stderr
	if err := build.Run(); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// patience is how long a program may take: several times what the longest needs on a busy machine.
const patience = 10 * time.Minute

// lines runs a program with an input and decodes its output, one JSON value a line.
func lines[T any](t testing.TB, input string, name string, args ...string) []T {
	t.Helper()
	list, err := decode[T](input, name, args...)
	if err != nil {
		t.Error(err)
	}
	return list
}

func decode[T any](input string, name string, args ...string) (list []T, err error) {
	within, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	run := exec.CommandContext(within, name, args...)
	run.Stdin = strings.NewReader(input)
	var out, errs bytes.Buffer
	run.Stdout, run.Stderr = &out, &errs
	// What the program started ends with it, or no test would ever see the end of its output.
	run.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	all := func() error { return syscall.Kill(-run.Process.Pid, syscall.SIGKILL) }
	run.Cancel, run.WaitDelay = all, time.Second
	failed := run.Run()
	if run.Process != nil {
		_ = all() // none of them is left, in most cases
	}
	for line := range bytes.Lines(out.Bytes()) {
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		var v T
		if err := json.Unmarshal(line, &v); err != nil {
			return nil, fmt.Errorf("%s %.200q: %w: %s", name, args, err, line)
		}
		list = append(list, v)
	}
	if failed != nil {
		err = fmt.Errorf("%s %.200q: %w\n%s", name, args, failed, errs.String())
	}
	return list, err
}

// report is what these tests read of report.json.
type report struct {
	Format int
	Units  string
	DXF    struct{ Elevation bool }
	Router routing
	Stocks []struct {
		Name           string
		Thickness, Max float64
	}
	Sheets []struct {
		Stock  string
		Sheets []struct{ Layers []legendRow }
	}
	Drawers []drawer
	Parts   []part
	Layers  []legendRow
	Faces   []struct {
		Part    string
		Flipped bool
		Beyond  float64
		Blank   [2]float64
	}
}

// routing is how a router's cuts were asked for.
type routing struct {
	Overcut        float64
	Relief         string
	Reliefs        map[string]string // of single operations
	ExactSlots     string            `json:"exact_slots"`
	DepthFrom      string            `json:"depth_from"`
	IntoSpoilboard float64           `json:"into_spoilboard"`
}

type drawer struct {
	Name, Machine string
	Preview       string // milled where its solids are
	Outside       struct{ Width, Height, Depth float64 }
	Parts         []string
}

type part struct {
	Name, Role, Drawer, Stock string
	Label                     string
	Quantity                  int
	Length, Width, Thickness  float64
	Outline                   [][]float64
	Operations                []operation
	Placements                []stand
	Files                     struct{ Inside, Outside, STL string }
	Engraved                  *struct{ Number, Reason string }
}

type operation struct {
	Kind, Face string
	Depth      float64
	Outline    [][]float64
}

// stand is where a panel's origin is in its box, and where its x and y run.
type stand struct {
	Origin [3]float64 `json:"origin"`
	X      [3]float64 `json:"x"`
	Y      [3]float64 `json:"y"`
}

// legendRow is what the report says of one layer of one drawing.
type legendRow struct {
	File, Layer, Operation, Face, Stated, Bit string
	Depth, Remaining, Diameter                float64
	Line                                      bool
	Cuts                                      int
}

// mm converts the report's numbers.
func (r report) mm() float64 {
	if r.Units == "in" {
		return 25.4
	}
	return 1
}

// onces keeps what was worked out before, by a key.
type onces[T any] struct {
	lock sync.Mutex
	made map[string]func() (T, error)
}

func (o *onces[T]) get(key string, work func() (T, error)) (T, error) {
	o.lock.Lock()
	if o.made == nil {
		o.made = map[string]func() (T, error){}
	}
	if o.made[key] == nil {
		o.made[key] = sync.OnceValues(work)
	}
	get := o.made[key]
	o.lock.Unlock()
	return get()
}

var folders onces[string]

// build runs the command on a job's text and reads the report back. The folder is
// the same for all tests that ask for it: nobody writes to it.
func build(t testing.TB, job string, options ...string) (dir string, r report) {
	t.Helper()
	dir, err := folders.get(fmt.Sprint(job, options), func() (string, error) {
		tmp, err := os.MkdirTemp(shared, "job")
		if err != nil {
			return "", err
		}
		path, dir := filepath.Join(tmp, "job.yaml"), filepath.Join(tmp, "out")
		if err := os.WriteFile(path, []byte(job), 0o644); err != nil {
			return "", err
		}
		// Files that samples name stand beside the job.
		if err := os.CopyFS(filepath.Join(tmp, "slides"), os.DirFS("../../samples/slides")); err != nil {
			return "", err
		}
		args := append([]string{"build", path, "-o", dir, "--exploded"}, options...)
		if out, err := exec.Command(command, args...).CombinedOutput(); err != nil {
			return "", fmt.Errorf("build: %w\n%s", err, out)
		}
		return dir, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return dir, readReport(t, dir)
}

func readReport(t testing.TB, dir string) (r report) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, "report.json"))
	if err == nil {
		err = json.Unmarshal(data, &r)
	}
	if err != nil {
		t.Fatal(err)
	}
	if r.Format != 6 {
		t.Fatalf("report.json has format %d, these tests read 6", r.Format)
	}
	return r
}

// sampleFiles are the job files of the project.
func sampleFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no samples: %v", err)
	}
	return files
}

func textOf(t *testing.T, file string) string {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// samples are the job files of the project, several at a time: each in one of the DXF
// versions and units in turn, or in every one of them ([geomtest.All]).
func samples(t *testing.T, units []string, each func(t *testing.T, job, version, unit string)) {
	t.Helper()
	for i, f := range sampleFiles(t) {
		text := textOf(t, f)
		for v, version := range []string{"R2000", "R12"} {
			for u, unit := range units {
				if !geomtest.All() && (v != i%2 || u != i/2%len(units)) {
					continue
				}
				t.Run(fmt.Sprintf("%s/%s/%s", filepath.Base(f), version, unit), func(t *testing.T) {
					t.Parallel()
					each(t, drawnIn(text, version, unit), version, unit)
				})
			}
		}
	}
}

// asTheyAre are the job files with the drawings that they ask for themselves: those that ask
// for what no other form of a sample has, own rules for drawings or inches, or all of them
// ([geomtest.All]).
func asTheyAre(t *testing.T, each func(t *testing.T, job string)) {
	t.Helper()
	for _, f := range sampleFiles(t) {
		text := textOf(t, f)
		if !geomtest.All() && !strings.Contains(text, "\ndxf:") && !strings.Contains(text, "\nunits: in") {
			continue
		}
		t.Run(filepath.Base(f)+"/as it is", func(t *testing.T) {
			t.Parallel()
			each(t, text)
		})
	}
}

// drawnIn is a job with its drawings in a version and a unit.
func drawnIn(job, version, unit string) string {
	var kept []string
	section := false
	for _, line := range strings.Split(job, "\n") {
		switch {
		case strings.HasPrefix(line, "dxf:"):
			section = true
		case line != "" && !strings.ContainsAny(line[:1], " #"):
			section = false
		}
		if !section {
			kept = append(kept, line)
		}
	}
	elevation := "no"
	if (version == "R12") == (unit == "in") { // so that each version and each unit has both
		elevation = "yes"
	}
	return strings.Join(kept, "\n") + fmt.Sprintf("\ndxf: {version: %s, units: %s, elevation: %s}\n",
		version, unit, elevation)
}

// glob lists files below a folder, at any depth, by their ending.
func glob(t *testing.T, dir, ending string) []string {
	t.Helper()
	var list []string
	err := filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(path, ending) {
			list = append(list, path)
		}
		return err
	})
	if err != nil || len(list) == 0 {
		t.Fatalf("no files %s: %v", ending, err)
	}
	return list
}
