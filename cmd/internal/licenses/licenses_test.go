package licenses

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// section is a text of [Others].
type section struct{ module, file, text string }

func sections(t *testing.T) (all []section) {
	t.Helper()
	for _, part := range strings.Split("\n"+Others, "\n==== ")[1:] {
		head, text, _ := strings.Cut(part, "\n")
		module, file, ok := strings.Cut(head, ": ")
		if !ok {
			t.Fatalf("the line %q names no file", head)
		}
		all = append(all, section{module, file, text})
	}
	return all
}

// have are the modules, with their versions, of which a text that grants something is there.
func have(t *testing.T) (modules []string) {
	t.Helper()
	for _, s := range sections(t) {
		if strings.HasPrefix(strings.ToUpper(s.file), "LICENSE") && len(s.text) > 500 &&
			strings.Contains(s.text, "Copyright") {
			modules = append(modules, s.module)
		}
	}
	return modules
}

// TestEveryLinkedModuleHasItsLicense: each module of which a package is linked into the program
// here has its license, in the version that is linked. .ci/check holds the whole file, for
// all systems, against the modules.
func TestEveryLinkedModuleHasItsLicense(t *testing.T) {
	const each = "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}"
	list, err := exec.Command("go", "list", "-deps", "-f", each, "drawerwright/cmd/drawerwright").Output()
	if err != nil {
		t.Fatal(err)
	}
	linked := slices.Compact(slices.Sorted(slices.Values(strings.Split(strings.TrimSpace(string(list)), "\n"))))
	if len(linked) < 10 {
		t.Fatalf("go list names only %q", linked)
	}
	modules := have(t)
	for _, m := range append(linked, "Go, its library and runtime") {
		if m != "" && !slices.Contains(modules, m) {
			t.Errorf("%s is linked, and its license is not in others.txt: see .ci/licenses", m)
		}
	}
}

// TestVersionsAreThoseOfTheModuleFile: no license is of a version, or a module, that go.mod does not ask for.
func TestVersionsAreThoseOfTheModuleFile(t *testing.T) {
	text, err := os.ReadFile("../../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	var asked []string
	for line := range strings.Lines(string(text)) {
		asked = append(asked, strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(line), "// indirect")))
	}
	for _, m := range have(t) {
		if !strings.HasPrefix(m, "Go,") && !slices.Contains(asked, m) {
			t.Errorf("others.txt has a license of %s, which go.mod does not ask for", m)
		}
	}
}

// TestLettersHaveTheirLicense: the letters of paper and pictures are works of their own.
func TestLettersHaveTheirLicense(t *testing.T) {
	for _, s := range sections(t) {
		if strings.Contains(s.file, "gofont") && strings.Contains(s.text, "Copyright (c) 2016 Bigelow & Holmes") {
			return
		}
	}
	t.Error("others.txt has no license of the letters in golang.org/x/image/font/gofont")
}
