// Package outside holds the tests that check the product's files with programs
// and libraries from outside the project: ezdxf and dxf-parser for DXF, admesh
// and manifold-3d for solids. They run the built command as a shop would and
// read what it left on disk. `.ci/check` installs what they need and runs them;
// a missing tool is a failure, never a skip.
package outside

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// python is Debian's: another may come first on the PATH, without the packages.
const python = "/usr/bin/python3"

// command is the built product.
var command string

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "drawerwright-outside")
	if err != nil {
		panic(err)
	}
	command = filepath.Join(dir, "drawerwright")
	build := exec.Command("go", "build", "-o", command, "drawerwright/cmd/drawerwright")
	build.Stderr = os.Stderr
	if err := build.Run(); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// lines runs a program with an input and decodes its output, one JSON value a line.
func lines[T any](t *testing.T, input string, name string, args ...string) []T {
	t.Helper()
	run := exec.Command(name, args...)
	run.Stdin = strings.NewReader(input)
	var out, errs bytes.Buffer
	run.Stdout, run.Stderr = &out, &errs
	failed := run.Run()
	var list []T
	in := bufio.NewReader(&out)
	for {
		line, err := in.ReadBytes('\n')
		if len(bytes.TrimSpace(line)) > 0 {
			var v T
			if err := json.Unmarshal(line, &v); err != nil {
				t.Fatalf("%s %s: %v: %s", name, args, err, line)
			}
			list = append(list, v)
		}
		if err != nil {
			break
		}
	}
	if failed != nil {
		t.Errorf("%s %.200s: %v\n%s", name, args, failed, errs.String())
	}
	return list
}

// report is what these tests read of report.json.
type report struct {
	Units   string
	Drawers []struct {
		Name    string
		Outside struct{ Width, Height, Depth float64 }
		Parts   []string
	}
	Parts []part
}

type part struct {
	Name, Role               string
	Length, Width, Thickness float64
	Operations               []struct {
		Kind, Face string
		Depth      float64
		Outline    [][]float64
	}
	Files struct{ Inside, Outside, STL string }
}

// mm converts the report's numbers.
func (r report) mm() float64 {
	if r.Units == "in" {
		return 25.4
	}
	return 1
}

// build runs the command on a job's text and reads the report back.
func build(t *testing.T, job string) (dir string, r report) {
	t.Helper()
	tmp := t.TempDir()
	path := filepath.Join(tmp, "job.yaml")
	if err := os.WriteFile(path, []byte(job), 0o644); err != nil {
		t.Fatal(err)
	}
	dir = filepath.Join(tmp, "out")
	if out, err := exec.Command(command, "build", path, "-o", dir).CombinedOutput(); err != nil {
		t.Fatalf("build: %v\n%s", err, out)
	}
	return dir, readReport(t, dir)
}

func readReport(t *testing.T, dir string) (r report) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, "report.json"))
	if err == nil {
		err = json.Unmarshal(data, &r)
	}
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// samples are the job files of the project, each once for every DXF version and
// each of the units.
func samples(t *testing.T, units []string, each func(t *testing.T, job, version, unit string)) {
	t.Helper()
	files, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no samples: %v", err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var kept []string
		for _, line := range strings.Split(string(text), "\n") {
			if !strings.HasPrefix(line, "dxf:") {
				kept = append(kept, line)
			}
		}
		for _, version := range []string{"R2000", "R12"} {
			for _, unit := range units {
				t.Run(fmt.Sprintf("%s/%s/%s", filepath.Base(f), version, unit), func(t *testing.T) {
					each(t, strings.Join(kept, "\n")+fmt.Sprintf("\ndxf: {version: %s, units: %s}\n", version, unit), version, unit)
				})
			}
		}
	}
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
