package outdir

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// target is the folder that a build makes or replaces.
type target struct {
	name   string // as the user gave it, for messages
	parent string // absolute, symbolic links resolved
	base   string
}

// stageSuffix ends the name of the hidden folder beside the target.
const stageSuffix = ".drawerwright-build"

// path is where the folder stands.
func (t target) path() string { return filepath.Join(t.parent, t.base) }

// stage is the hidden folder that a build works in. It has the same parent, so
// that it is on the same file system and a rename is enough.
func (t target) stage() string { return filepath.Join(t.parent, "."+t.base+stageSuffix) }

// resolve finds where a folder that a user named stands. Links on the way to it
// are followed as the system follows them, also before a "..".
func resolve(dir string) (target, error) {
	if dir == "" {
		return target{}, fault(ErrNoName, "", nil, "the name of the output folder is empty", "name a folder, as in: -o out")
	}
	volume := filepath.VolumeName(dir)
	rest := strings.TrimRightFunc(dir[len(volume):], separator)
	if rest == "" {
		return target{}, mountPoint(dir)
	}
	named := volume + rest
	t := target{name: filepath.ToSlash(named)}
	parent, base := filepath.Split(named)
	if base == "." || base == ".." {
		at, err := realFolder(named)
		if err != nil {
			return target{}, noParent(t, named, err)
		}
		if parent, base = filepath.Split(at); base == "" {
			return target{}, mountPoint(named)
		}
	}
	at, err := realFolder(cmp.Or(parent, "."))
	if err != nil {
		return target{}, noParent(t, parent, err)
	}
	t.parent, t.base = at, base
	return t, nil
}

func separator(r rune) bool { return r < 0x80 && os.IsPathSeparator(uint8(r)) }

// realFolder gives the absolute path of a folder, with links resolved.
func realFolder(name string) (string, error) {
	at, err := filepath.EvalSymlinks(name)
	if err != nil {
		return "", err
	}
	if at, err = filepath.Abs(at); err != nil {
		return "", err
	}
	if info, err := os.Stat(at); err != nil || !info.IsDir() {
		return "", cmp.Or(err, errors.New("not a folder"))
	}
	return at, nil
}

func mountPoint(name string) error {
	return fault(ErrMountPoint, name, nil,
		shown(name)+" is the top of a disk or mounted there, and cannot be replaced as a whole",
		"name a folder inside it")
}

// noParent is the error for a folder that stands nowhere: its parent cannot be found.
func noParent(t target, parent string, err error) error {
	if !errors.Is(err, fs.ErrNotExist) {
		return cannotMake(t, parent, err)
	}
	return fault(ErrParent, t.name, nil, "cannot make "+shown(t.name)+": there is no folder "+plainPath(parent),
		"make that folder first, or check the spelling")
}

// cannotMake is the error for a folder whose parent does not take it.
func cannotMake(t target, parent string, err error) error {
	return fault(ErrParent, t.name, err, "cannot make "+shown(t.name)+" in "+plainPath(parent), advice(err))
}

// plainPath is a path for a message, with slashes and without detours.
func plainPath(path string) string { return shown(filepath.ToSlash(filepath.Clean(path))) }

// look judges what stands under the name, without its contents. A folder that
// is not there is fine: info is nil.
func (t target) look() (info fs.FileInfo, err error) {
	info, err = os.Lstat(t.path())
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, cannotMake(t, t.parent, err)
	}
	if info.Mode()&fs.ModeSymlink != 0 {
		// To replace the link would leave the folder it leads to as it was; to
		// follow it would replace a folder that was not named. Neither is sure to
		// be what was meant, so the user says it.
		to, err := os.Readlink(t.path())
		if err != nil {
			to = "?"
		}
		return nil, fault(ErrSymlink, t.name, nil, shown(t.name)+" is a symbolic link to "+shown(to),
			"name the folder it leads to")
	}
	if !info.IsDir() {
		return nil, fault(ErrNotFolder, t.name, nil, shown(t.name)+" is not a folder",
			"name another folder, or move what has this name")
	}
	if holdsCurrent(info) {
		return nil, fault(ErrCurrent, t.name, nil, shown(t.name)+" is the current folder, or holds it",
			"name a folder of its own for the output, as in: -o out")
	}
	mounted, err := isMountPoint(t.path(), info)
	if err != nil {
		return nil, cannotMake(t, t.parent, err)
	}
	if mounted {
		return nil, mountPoint(t.name)
	}
	return info, nil
}

// holdsCurrent reports whether a folder is the current one or one of its parents.
// A current folder that has been removed is in no other.
func holdsCurrent(info fs.FileInfo) bool {
	at, err := os.Getwd()
	if err != nil {
		return false
	}
	if real, err := filepath.EvalSymlinks(at); err == nil {
		at = real
	}
	for {
		if here, err := os.Stat(at); err == nil && os.SameFile(here, info) {
			return true
		}
		up := filepath.Dir(at)
		if up == at {
			return false
		}
		at = up
	}
}
