package outdir

import (
	"errors"
	"os"
	"time"

	"golang.org/x/sys/windows"
)

// Windows renames no folder in which a program has a file open, and scanners
// open new files for a moment; so the rename is tried for two seconds.
const (
	renameTries = 40
	renamePause = 50 * time.Millisecond
)

// renameFolder renames a folder.
func renameFolder(from, to string) error {
	for try := 1; ; try++ {
		err := os.Rename(from, to)
		if try == renameTries || !errors.Is(err, windows.ERROR_ACCESS_DENIED) && !errors.Is(err, windows.ERROR_SHARING_VIOLATION) {
			return err
		}
		time.Sleep(renamePause)
	}
}
