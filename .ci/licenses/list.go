package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"
	"time"
)

// release is what `go list -m` says of a version of a module.
type release struct {
	Path, Version, Dir string
	Time               *time.Time
	Error              *struct{ Err string }
}

// on is the day of a release.
func (r release) on() string {
	if r.Time == nil {
		return "day unknown"
	}
	return r.Time.Format(time.DateOnly)
}

// list prints every module that the two module files name: what for, version, license, and the newest
// release, where the proxy answers. It fails where a license is of no kind that is known here.
func list(w io.Writer, linked []module) error {
	inProgram := map[string]bool{}
	for _, m := range linked {
		inProgram[m.name] = true
	}
	table := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "MODULE\tFOR\tVERSION\tOF\tNEWEST\tOF\tLICENSE")
	var unknown []error
	listed := map[string]bool{}
	for _, file := range []string{"go.mod", ".ci/tools.mod"} {
		paths, err := required(file)
		if err != nil {
			return err
		}
		// A license can be read only of what is here.
		if said, err := exec.Command("go", "mod", "download", "-modfile="+file).CombinedOutput(); err != nil {
			return fmt.Errorf("go mod download of %s: %w: %s", file, err, said)
		}
		used, err := releases(file, paths)
		if err != nil {
			return err
		}
		for i, p := range paths {
			paths[i] = p + "@latest"
		}
		newest, err := releases(file, paths)
		if err != nil {
			return err
		}
		for i, r := range used {
			if name := r.Path + " " + r.Version; !listed[name] {
				listed[name] = true
				why := "tools"
				if file == "go.mod" {
					why = "tests"
				}
				if inProgram[name] {
					why = "program"
				}
				kind, err := module{name, r.Dir}.kind()
				unknown = append(unknown, err)
				last := newest[i].Version + "\t" + newest[i].on()
				if newest[i].Error != nil {
					last = "not told\t"
				}
				fmt.Fprintf(table, "%s\t%s\t%s\t%s\t%s\t%s\n", r.Path, why, r.Version, r.on(), last, kind)
			}
		}
	}
	return errors.Join(append(unknown, table.Flush())...)
}

// required are the modules that a module file names.
func required(file string) (paths []string, err error) {
	text, err := exec.Command("go", "mod", "edit", "-json", file).Output()
	if err != nil {
		return nil, fmt.Errorf("go mod edit of %s: %w", file, err)
	}
	var mod struct{ Require []struct{ Path string } }
	if err := json.Unmarshal(text, &mod); err != nil {
		return nil, err
	}
	for _, r := range mod.Require {
		paths = append(paths, r.Path)
	}
	return paths, nil
}

// releases asks for modules, in their order.
func releases(file string, modules []string) (all []release, err error) {
	args := append([]string{"list", "-modfile=" + file, "-mod=readonly", "-m", "-e", "-json"}, modules...)
	ask := exec.Command("go", args...)
	ask.Stderr = os.Stderr
	text, err := ask.Output()
	if err != nil {
		return nil, fmt.Errorf("go list -m of %s: %w", file, err)
	}
	for d := json.NewDecoder(bytes.NewReader(text)); ; {
		var r release
		if err := d.Decode(&r); err == io.EOF {
			break
		} else if err != nil {
			return nil, err
		}
		all = append(all, r)
	}
	if len(all) != len(modules) {
		return nil, fmt.Errorf("go list -m of %s tells of %d modules of %d", file, len(all), len(modules))
	}
	return all, nil
}

// kinds are the licenses that are known here, by words that each alone has.
var kinds = map[string]string{
	"Apache-2.0":   "Apache License Version 2.0, January 2004",
	"BSD-3-Clause": "Neither the name of",
	"MIT":          "The above copyright notice and this permission notice shall be included in all",
	"MPL-2.0":      "Mozilla Public License Version 2.0",
}

// kind names the license of a module.
func (m module) kind() (string, error) {
	files, err := m.files()
	if err != nil {
		return "none", err
	}
	text, err := os.ReadFile(filepath.Join(m.dir, files[0]))
	if err != nil {
		return "none", err
	}
	said := strings.Join(strings.Fields(string(text)), " ")
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		if strings.Contains(said, kinds[kind]) {
			return kind, nil
		}
	}
	return "unknown", fmt.Errorf("%s has a license of a kind that is not known: %s", m.name, filepath.Join(m.dir, files[0]))
}
