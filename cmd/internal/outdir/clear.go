package outdir

import (
	"io/fs"
	"os"
	"path/filepath"
)

// clearFolder removes a folder with all in it, if it is there. Its files go
// first, several at a time: the disk's answer to each takes longer than asking.
func clearFolder(dir string) error {
	var files []string
	// What this walk does not see, or a worker does not remove, is for RemoveAll
	// to remove or to complain of.
	filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			files = append(files, name)
		}
		return nil
	})
	each(len(files), func(i int) { os.Remove(files[i]) })
	return os.RemoveAll(dir)
}
