package outdir

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"
	"github.com/rogpeppe/go-internal/robustio"
)

// claim is a stage folder that this process alone works in, until it ends.
type claim struct {
	dir  string
	root *os.Root // of dir: what is in it is not left by a link that somebody puts there
	lock *flock.Flock
}

// giveUp leaves the folder to others, as it is.
func (c *claim) giveUp() error { return errors.Join(c.root.Close(), c.lock.Close()) }

// claimTries bounds how often a stage folder is looked for again that another
// build took away between two steps.
const claimTries = 100

// claimPause is how long one waits for Windows, which opens no file that another build is about to remove.
const claimPause = 10 * time.Millisecond

// lockName is the lock file's name in the stage folder.
const lockName = "lock"

// takeClaim makes the stage folder, or takes over one that an interrupted build
// left, and locks it. Two builds never hold it at once, whichever way they got
// there: the lock counts only if the locked file is still the one in the folder.
func (s system) takeClaim(t target) (*claim, error) {
	dir := t.stage()
	for tries := range claimTries {
		if err := s.mkdir(dir, 0o700); err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, cannotMake(t, t.parent, err)
		}
		if info, err := os.Lstat(dir); err == nil && !info.IsDir() {
			return nil, fault(ErrNotFolder, dir, nil,
				shown(dir)+" is not a folder, and a build needs the name", "move it away")
		}
		lock, free, err := s.lock(filepath.Join(dir, lockName))
		var open *fs.PathError
		switch {
		case errors.Is(err, fs.ErrNotExist): // the folder has gone meanwhile
		case robustio.IsEphemeralError(err) && tries < claimTries-1:
			time.Sleep(claimPause)
		case errors.As(err, &open):
			s.remove(dir) // it is empty, or not ours to remove
			return nil, cannotMake(t, dir, err)
		case err != nil:
			return nil, fault(ErrParent, t.name, err, "cannot lock a file beside "+shown(t.name),
				"name a folder on a disk of this computer")
		case !free:
			return nil, busy(t)
		case isStill(lock):
			root, err := os.OpenRoot(dir)
			if err != nil {
				return nil, errors.Join(cannotMake(t, dir, err), lock.Close())
			}
			return &claim{dir, root, lock}, nil
		default:
			lock.Close() // of a file that has gone
		}
	}
	return nil, busy(t)
}

func busy(t target) error {
	return fault(ErrBusy, t.name, nil, "another build into "+shown(t.name)+" is running",
		"wait for it to end, or name another folder")
}

// isStill reports whether a locked file is the one of its name.
func isStill(lock *flock.Flock) bool {
	locked, err := lock.Stat()
	if err != nil {
		return false
	}
	there, err := os.Lstat(lock.Path())
	return err == nil && os.SameFile(locked, there)
}
