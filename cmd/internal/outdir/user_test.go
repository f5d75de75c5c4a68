//go:build darwin || linux

package outdir

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// nobody is a user without rights, for tests that root would pass through.
const nobody = 65534

// asNobody runs the calling test once more as a user without rights, if the
// user is root, and reports whether it did. The binary is copied to where that
// user can reach it.
func asNobody(t *testing.T) bool {
	t.Helper()
	if os.Geteuid() != 0 {
		return false
	}
	home, err := os.MkdirTemp("", "outdir-nobody-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(home) })
	copied := filepath.Join(home, "test")
	if err := errors.Join(os.Chmod(home, 0o777), copyFile(os.Args[0], copied)); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(copied, "-test.run=^"+t.Name()+"$", "-test.v")
	cmd.Dir = home
	cmd.Env = append(os.Environ(), "TMPDIR="+home)
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	out, err := cmd.CombinedOutput()
	if err != nil || !strings.Contains(string(out), "--- PASS: "+t.Name()) {
		t.Fatalf("as nobody: %v\n%s", err, out)
	}
	return true
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE, 0o755)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}

// TestNotAllowed: folders that the user may not write, and files that the user
// may not read. Nothing changes, and nothing is left.
func TestNotAllowed(t *testing.T) {
	if asNobody(t) {
		return
	}
	for name, c := range map[string]struct {
		path string // loses the rights, below the parent
		mode os.FileMode
		rule error
		says string
	}{
		"parent":          {".", 0o555, ErrParent, "permission denied"},
		"folder":          {"out", 0o555, ErrReadOnly, "cannot replace out: permission denied"},
		"closed folder":   {"out", 0, ErrReadOnly, "cannot replace out"},
		"folder below":    {"out/router", 0o555, ErrReadOnly, "cannot replace out/router: permission denied"},
		"file":            {"out/a", 0, ErrReadOnly, "cannot replace out/a: permission denied"},
		"manifest":        {"out/" + ManifestName, 0, ErrReadOnly, "cannot replace out/" + ManifestName},
		"parent, not yet": {".", 0o555, ErrParent, "cannot make new in "},
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			t.Chdir(parent)
			mustBuild(t, "out", 1)
			if err := os.Chmod(c.path, c.mode); err != nil {
				t.Fatal(err)
			}
			dir := "out"
			if name == "parent, not yet" {
				dir = "new"
			}
			_, err := Create(dir)
			if err := os.Chmod(c.path, 0o755); err != nil {
				t.Fatal(err)
			}
			expectRule(t, err, c.rule, c.says)
			if !errors.Is(err, os.ErrPermission) {
				t.Errorf("the system's error is lost: %v", err)
			}
			expectWhole(t, "out", 1)
			expectAlone(t, ".", "out")
		})
	}
	t.Run("parent closed during the build", func(t *testing.T) {
		parent := t.TempDir()
		dir := filepath.Join(parent, "out")
		mustBuild(t, dir, 1)
		s, err := Create(dir)
		if err != nil {
			t.Fatal(err)
		}
		if err := errors.Join(s.WriteFile("a", nil), os.Chmod(parent, 0o555)); err != nil {
			t.Fatal(err)
		}
		err = s.Commit()
		if err := os.Chmod(parent, 0o755); err != nil {
			t.Fatal(err)
		}
		expectRule(t, err, ErrSwap, "permission denied")
		expectWhole(t, dir, 1)
		mustBuild(t, dir, 2)
		expectAlone(t, parent, "out")
	})
}

// TestCompareNotAllowed: what the user may not read is named, and all else compared.
func TestCompareNotAllowed(t *testing.T) {
	if asNobody(t) {
		return
	}
	for path, want := range map[string][]Foreign{
		".":          {{"b", Changed}},
		"a":          {{"a", Unreadable}, {"b", Changed}},
		"router":     {{"b", Changed}, {"router", Unreadable}},
		ManifestName: {{ManifestName, Unreadable}},
	} {
		dir := filepath.Join(t.TempDir(), "out")
		mustBuild(t, dir, 1)
		if err := os.WriteFile(filepath.Join(dir, "b"), nil, 0o644); err != nil {
			t.Fatal(err)
		}
		closed := filepath.Join(dir, path)
		if path != "." {
			if err := os.Chmod(closed, 0); err != nil {
				t.Fatal(err)
			}
		}
		found, listed, err := Compare(dir)
		if err := os.Chmod(closed, 0o755); err != nil {
			t.Fatal(err)
		}
		if err != nil || !listed || !slices.Equal(found, want) {
			t.Errorf("%s closed: %v, %v, want %v", path, found, err, want)
		}
	}
}
