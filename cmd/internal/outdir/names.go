package outdir

import (
	"io/fs"
	"path/filepath"
	"strings"
	"unicode"
)

// validName reports whether a name can be a file's in the folder: relative, with
// slashes, each part a real one on this system, nothing that a manifest's line
// or a screen would trip over, and not the manifest's own.
func validName(name string) bool {
	return fs.ValidPath(name) && name != "." && filepath.IsLocal(filepath.FromSlash(name)) &&
		!strings.ContainsRune(name, '\\') && strings.IndexFunc(name, unicode.IsControl) < 0 &&
		fold(name) != ManifestName
}

// fold makes names equal that some file systems take for the same. One that stays as it is takes no room of its own:
// of thousands of drawers there are tens of thousands.
func fold(name string) string {
	if folded := strings.ToLower(strings.ToUpper(name)); folded != name {
		return folded
	}
	return name
}

// names are the files and folders written so far, by fold of the path, so that
// a folder comes out the same on every file system.
type names map[string]known

type known struct {
	spelling string
	folder   bool
}

// add notes a file and the folders it is in. It gives the folders that are new,
// outermost first, or the name that stands against it.
func (n names) add(name string) (folders []string, clash string) {
	for i, r := range name {
		if r != '/' {
			continue
		}
		up := name[:i]
		switch k, ok := n[fold(up)]; {
		case !ok:
			folders = append(folders, up)
		case !k.folder || k.spelling != up:
			return nil, k.spelling
		}
	}
	if k, ok := n[fold(name)]; ok {
		return nil, k.spelling
	}
	for _, up := range folders {
		n[fold(up)] = known{up, true}
	}
	n[fold(name)] = known{name, false}
	return folders, ""
}
