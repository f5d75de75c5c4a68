// Command licenses prints the licenses of all that is linked into the program on the systems
// that are released, as their modules have them:
//
//	go run ./.ci/licenses > others.txt && mv others.txt cmd/internal/licenses/
//	go run ./.ci/licenses -list
//
// It fails where a module has none. With -list it prints a line for every module that the program, its tests
// and its tools ask for: version, newest version, days of both, kind of license.
package main

import (
	"bufio"
	"bytes"
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// mark begins the line over each text; the tests of the texts know it.
const mark = "==== "

// legal are the files of a module that have to go with it.
var legal = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([.-].*)?$`)

// letters is the license of the letters of paper and pictures, which stands beside their files.
const letters = "font/gofont/ttfs/README"

// module is one that is linked. That of Go itself has no version: it is the compiler's.
type module struct{ name, dir string }

func main() {
	linked, err := modules("linux", "darwin", "windows")
	if err != nil {
		fatal(err)
	}
	if len(os.Args) > 1 && os.Args[1] == "-list" {
		if err := list(os.Stdout, linked); err != nil {
			fatal(err)
		}
		return
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		fatal(err)
	}
	out := bufio.NewWriter(os.Stdout)
	for _, m := range append([]module{{"Go, its library and runtime", strings.TrimSpace(string(root))}}, linked...) {
		files, err := m.files()
		if err != nil {
			fatal(err)
		}
		for _, file := range files {
			text, err := os.ReadFile(filepath.Join(m.dir, file))
			if err != nil {
				fatal(err)
			}
			fmt.Fprintf(out, "%s%s: %s\n\n%s\n", mark, m.name, filepath.ToSlash(file), tidy(text))
		}
	}
	if err := out.Flush(); err != nil {
		fatal(err)
	}
}

// modules lists what the program is linked of on any of the systems, but for itself, by name.
func modules(systems ...string) ([]module, error) {
	found := map[module]bool{}
	for _, system := range systems {
		const each = "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}"
		list := exec.Command("go", "list", "-deps", "-f", each, "./cmd/drawerwright")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		list.Stderr = os.Stderr
		text, err := list.Output()
		if err != nil {
			return nil, fmt.Errorf("go list for %s: %w", system, err)
		}
		for line := range strings.Lines(string(text)) {
			if name, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				found[module{name, dir}] = true
			}
		}
	}
	var all []module
	for m := range found {
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b module) int { return cmp.Compare(a.name, b.name) })
	return all, nil
}

// files are the names of a module's license and what belongs to it.
func (m module) files() ([]string, error) {
	entries, err := os.ReadDir(m.dir)
	if err != nil {
		return nil, err
	}
	var names []string
	for _, e := range entries {
		if !e.IsDir() && legal.MatchString(e.Name()) {
			names = append(names, e.Name())
		}
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("%s has no license in %s", m.name, m.dir)
	}
	if _, err := os.Stat(filepath.Join(m.dir, letters)); err == nil {
		names = append(names, letters)
	}
	return names, nil
}

// tidy ends lines alike, and the text with one of them.
func tidy(text []byte) []byte {
	text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
	return append(bytes.TrimSpace(text), '\n')
}

func fatal(err error) {
	fmt.Fprintln(os.Stderr, "licenses:", err)
	os.Exit(1)
}
