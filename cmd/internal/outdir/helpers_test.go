package outdir

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// version gives the files of one version of a small folder; versions differ in
// every file and in which files there are.
func version(n int) map[string]string {
	files := map[string]string{
		"a":                   fmt.Sprintf("%d", n),
		"b":                   fmt.Sprintf("%d", n),
		"empty":               "",
		"router/x.inside.dxf": strings.Repeat(fmt.Sprintf("x of %d\n", n), 500+n),
		"preview/w/x.stl":     strings.Repeat(fmt.Sprintf("mesh of %d\n", n), 2000),
	}
	files[fmt.Sprintf("sheets/only-in-%d", n)] = "sheet"
	return files
}

// build writes files into a folder by way of a stage.
func build(dir string, files map[string]string, sys system) error {
	s, err := create(dir, sys)
	if err != nil {
		return err
	}
	defer s.Abort()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := s.WriteFile(name, []byte(files[name])); err != nil {
			return err
		}
	}
	return s.Commit()
}

// mustBuild builds a version for real.
func mustBuild(t testing.TB, dir string, n int) {
	t.Helper()
	if err := build(dir, version(n), realSystem()); err != nil {
		t.Fatal(err)
	}
}

// contents reads a folder back: each file's bytes, or where a
// link leads, by its path.
func contents(dir string) (map[string]string, error) {
	files := map[string]string{}
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, name)
		if err != nil {
			return err
		}
		if d.Type()&fs.ModeSymlink != 0 {
			to, err := os.Readlink(name)
			files[filepath.ToSlash(rel)] = "-> " + to
			return err
		}
		data, err := os.ReadFile(name)
		files[filepath.ToSlash(rel)] = string(data)
		return err
	})
	return files, err
}

// whole gives the version that a folder holds, complete, with nothing else but
// the manifest; 0 if the folder is not there, an error otherwise.
func whole(dir string, versions ...int) (int, error) {
	got, err := contents(dir)
	if errors.Is(err, fs.ErrNotExist) {
		if _, err := os.Lstat(dir); errors.Is(err, fs.ErrNotExist) {
			return 0, nil
		}
	}
	if err != nil {
		return 0, err
	}
	m, err := parseManifest(got[ManifestName])
	if err != nil {
		return 0, err
	}
	delete(got, ManifestName)
	if len(m.files) != len(got) {
		return 0, fmt.Errorf("%d files, %d in the manifest", len(got), len(m.files))
	}
	for _, n := range versions {
		if maps.Equal(got, version(n)) {
			return n, nil
		}
	}
	return 0, fmt.Errorf("no version is whole: %q", slices.Sorted(maps.Keys(got)))
}

// expectWhole fails unless a folder holds one of the versions.
func expectWhole(t testing.TB, dir string, versions ...int) {
	t.Helper()
	switch n, err := whole(dir, versions...); {
	case err != nil:
		t.Fatal(err)
	case n == 0:
		t.Fatalf("%s is gone", dir)
	}
}

// expectAlone fails if a folder's parent holds anything but the named entries.
func expectAlone(t testing.TB, parent string, want ...string) {
	t.Helper()
	list, err := os.ReadDir(parent)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, d := range list {
		got = append(got, d.Name())
	}
	if !slices.Equal(got, want) {
		t.Errorf("beside the folder: %q, want %q", got, want)
	}
}

// expectRule fails unless an error has the rule and its text the words.
func expectRule(t testing.TB, err, rule error, words ...string) {
	t.Helper()
	var e *Error
	if !errors.Is(err, rule) || !errors.As(err, &e) {
		t.Fatalf("error %v, want rule %q", err, rule)
	}
	for _, w := range words {
		if !strings.Contains(err.Error(), w) {
			t.Errorf("error %q lacks %q", err, w)
		}
	}
}

func write(t testing.TB, name, data string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(data), 0o644); err != nil {
		t.Fatal(err)
	}
}

// symlink makes a link. Windows allows it to some only, and Wine says that it did when it did not.
func symlink(to, name string) error {
	err := os.Symlink(to, name)
	if _, gone := os.Lstat(name); runtime.GOOS == "windows" && (err != nil || gone != nil) {
		return fmt.Errorf("a link: %w", errors.ErrUnsupported)
	}
	return err
}

// needLinks skips a test where a system makes no links.
func needLinks(t *testing.T) {
	t.Helper()
	if err := symlink("nowhere", filepath.Join(t.TempDir(), "link")); errors.Is(err, errors.ErrUnsupported) {
		t.Skip(err)
	}
}
