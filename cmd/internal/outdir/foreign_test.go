package outdir

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"testing"
)

// TestForeign: whatever this package did not write, or somebody changed, stops a
// build, and stays as it is.
func TestForeign(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(dir string) error
		says  []string
	}{
		"a file more": {
			func(dir string) error { return os.WriteFile(filepath.Join(dir, "notes.txt"), nil, 0o644) },
			[]string{"out holds 1 thing that is not this tool's\n", "\n  out/notes.txt was not written by this tool\n", "\n  hint: "},
		},
		"a file more below": {
			func(dir string) error { return os.WriteFile(filepath.Join(dir, "router", "notes"), nil, 0o644) },
			[]string{"out/router/notes was not written by this tool"},
		},
		"same size": {
			func(dir string) error { return os.WriteFile(filepath.Join(dir, "a"), []byte("x"), 0o644) },
			[]string{"out/a was changed since it was built"},
		},
		"another size": {
			func(dir string) error { return os.WriteFile(filepath.Join(dir, "empty"), []byte("x"), 0o644) },
			[]string{"out/empty was changed since it was built"},
		},
		"a folder for a file": {
			func(dir string) error {
				return errors.Join(os.Remove(filepath.Join(dir, "a")), os.Mkdir(filepath.Join(dir, "a"), 0o755))
			},
			[]string{"out/a was not written by this tool"},
		},
		"an empty folder": {
			func(dir string) error { return os.Mkdir(filepath.Join(dir, "mine"), 0o755) },
			[]string{"out/mine was not written by this tool"},
		},
		"a link for a file": {
			func(dir string) error {
				name := filepath.Join(dir, "a")
				return errors.Join(os.Rename(name, dir+"-a"), symlink(dir+"-a", name))
			},
			[]string{"out/a is a symbolic link"},
		},
		"a link for a folder": {
			func(dir string) error {
				name := filepath.Join(dir, "router")
				return errors.Join(os.Rename(name, dir+"-r"), symlink(dir+"-r", name))
			},
			[]string{"out/router is a symbolic link"},
		},
		"manifest changed": {
			func(dir string) error {
				return os.WriteFile(filepath.Join(dir, ManifestName), []byte("drawerwright manifest 2\n"), 0o644)
			},
			[]string{"out/.drawerwright-manifest is not a list that this version of the tool wrote", "\n  out/a was not"},
		},
		"manifest gone": {
			func(dir string) error { return os.Remove(filepath.Join(dir, ManifestName)) },
			[]string{"out holds 6 things that are not this tool's (it has no .drawerwright-manifest", "\n  and 1 more\n"},
		},
		"several": {
			func(dir string) error {
				var errs error
				for i := range 12 {
					errs = errors.Join(errs, os.WriteFile(filepath.Join(dir, fmt.Sprintf("c%02d", i)), nil, 0o644))
				}
				return errors.Join(errs, os.WriteFile(filepath.Join(dir, "a"), []byte("x"), 0o644))
			},
			[]string{"out holds 13 things", "\n  out/a was changed since it was built\n  out/c00 was not written by this tool\n", "out/c03", "\n  and 8 more\n"},
		},
		"many": {
			func(dir string) error {
				var errs error
				for i := range foreignLimit + 10 {
					errs = errors.Join(errs, os.WriteFile(filepath.Join(dir, fmt.Sprintf("n%d", i)), nil, 0o644))
				}
				return errs
			},
			[]string{"out holds at least 1000 things", "and at least 995 more"},
		},
		"a name that would work the screen": {
			func(dir string) error {
				if runtime.GOOS == "windows" {
					return errors.ErrUnsupported
				}
				return os.WriteFile(filepath.Join(dir, "\x1b[2J"), nil, 0o644)
			},
			[]string{`"out/\x1b[2J" was not`},
		},
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			t.Chdir(parent)
			mustBuild(t, "out", 1)
			if err := c.spoil(filepath.Join(parent, "out")); errors.Is(err, errors.ErrUnsupported) {
				t.Skip(err)
			} else if err != nil {
				t.Fatal(err)
			}
			before, err := contents(parent)
			if err != nil {
				t.Fatal(err)
			}
			_, err = Create("out")
			expectRule(t, err, ErrForeign, c.says...)
			if after, err := contents(parent); err != nil || !maps.Equal(before, after) {
				t.Errorf("the folder was changed: %v", err)
			}
			if _, err := os.Lstat(".out" + stageSuffix); err == nil {
				t.Error("a working folder is left")
			}
		})
	}
}

// TestForeignDuringBuild: a file that comes into the folder, or is changed,
// while a build runs is found before the swap.
func TestForeignDuringBuild(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	mustBuild(t, dir, 1)
	s, err := Create(dir)
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, "b"), "my own remarks")
	expectRule(t, s.Commit(), ErrForeign, "/out/b was changed since it was built")
	if data, err := os.ReadFile(filepath.Join(dir, "b")); err != nil || string(data) != "my own remarks" {
		t.Errorf("%q %v", data, err)
	}
	expectAlone(t, parent, "out")
}

// TestNoObstacle: files that the user deleted, and what operating systems drop
// into folders.
func TestNoObstacle(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "out")
	mustBuild(t, dir, 1)
	if err := errors.Join(os.Remove(filepath.Join(dir, "a")), os.RemoveAll(filepath.Join(dir, "preview")), os.Remove(filepath.Join(dir, "sheets", "only-in-1"))); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{".DS_Store", "router/Thumbs.db", "desktop.ini", "._b", "router/._x.inside.dxf", "._router", "._" + ManifestName} {
		write(t, filepath.Join(dir, name), "junk")
	}
	mustBuild(t, dir, 2)
	expectWhole(t, dir, 2)
	for _, name := range []string{"._notes", "router/._b"} {
		write(t, filepath.Join(dir, name), "not of any file here")
		_, err := Create(dir)
		expectRule(t, err, ErrForeign, name)
		if err := os.Remove(filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(dir, ".DS_Store"), "junk")
	mustBuild(t, dir, 1)
	expectWhole(t, dir, 1)
}

// TestFileAtTheLastMoment: what somebody saves into the folder right before the
// swap is found in the folder that was swapped out, which is kept.
func TestFileAtTheLastMoment(t *testing.T) {
	for _, exchange := range []bool{true, false} {
		t.Run(fmt.Sprintf("exchange %t", exchange), func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "out")
			first, err := Create(dir)
			if err == nil {
				err = errors.Join(first.WriteFile("a", []byte("old")), first.Commit())
			}
			if err != nil {
				t.Fatal(err)
			}
			saved := false
			sys := watched(exchange, func(op string, do, _ func() error) error {
				if (op == "exchange" && exchange || op == "rename") && !saved {
					saved = true
					if err := os.WriteFile(filepath.Join(dir, "notes.txt"), []byte("mine"), 0o644); err != nil {
						t.Error(err)
					}
				}
				return do()
			})
			second, err := create(dir, sys)
			if err != nil {
				t.Fatal(err)
			}
			if err := second.WriteFile("a", []byte("new")); err != nil {
				t.Fatal(err)
			}
			if err := os.Mkdir(dir+keptSuffix, 0o777); err != nil { // so that the next name is taken
				t.Fatal(err)
			}
			if err := second.Commit(); !errors.Is(err, ErrKept) || !saved {
				t.Errorf("saved %t, committed: %v", saved, err)
			}
			for name, want := range map[string]string{"out/a": "new", "out.kept-2/a": "old", "out.kept-2/notes.txt": "mine"} {
				if got, err := os.ReadFile(filepath.Join(filepath.Dir(dir), name)); err != nil || string(got) != want {
					t.Errorf("%s holds %q, %v", name, got, err)
				}
			}
			if left, err := os.ReadDir(filepath.Dir(dir)); err != nil || len(left) != 3 {
				t.Errorf("beside the folder: %v, %v", left, err)
			}
		})
	}
}
