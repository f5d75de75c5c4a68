//go:build !windows

package outdir

import (
	"fmt"
	"os"
	"time"
)

const (
	// lockTries and lockPause are how long a folder is waited for that another process
	// holds, which it does for the time of a rename.
	lockTries = 200
	lockPause = 10 * time.Millisecond
)

// lockFolder keeps other processes of this program from replacing a file of a folder.
func lockFolder(dir string) (unlock func(), err error) {
	f, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	for range lockTries {
		if held, err := tryLock(f); held || err != nil { // some file systems have no locks
			return func() { f.Close() }, nil
		}
		time.Sleep(lockPause)
	}
	f.Close()
	return nil, fmt.Errorf("another drawerwright is writing in %s", dir)
}
