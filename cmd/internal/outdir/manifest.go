package outdir

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"path"
	"slices"
	"strconv"
	"strings"
)

// ManifestName is the file, at the top of every folder written here, that lists
// the others. Its first line names the format; each further line is a file's
// SHA-256 in hexadecimal, its size in bytes and its path with slashes, two
// spaces apart, in the order of the paths' bytes.
const ManifestName = ".drawerwright-manifest"

// manifestFormat is the manifest's first line. A reader refuses any other.
const manifestFormat = "drawerwright manifest 1"

// manifestLimit bounds what is read as a manifest, in bytes: 100 times the
// largest that was seen.
const manifestLimit = 256 << 20

// entry is a file of the folder.
type entry struct {
	path string // slash-separated
	size int64  // in bytes
	sum  [32]byte
}

// manifest is what a folder is known to hold.
type manifest struct {
	files   map[string]entry
	folders map[string]bool // that hold one of the files, directly or deeper
}

// formatManifest gives the bytes of the file, the same for the same files.
func formatManifest(list []entry) []byte {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b entry) int { return strings.Compare(a.path, b.path) })
	var b bytes.Buffer
	b.WriteString(manifestFormat + "\n")
	for _, e := range list {
		fmt.Fprintf(&b, "%x  %d  %s\n", e.sum, e.size, e.path)
	}
	return b.Bytes()
}

// errManifest is why a file is not taken for a manifest.
var errManifest = errors.New("is not a list that this version of the tool wrote")

// parseManifest takes apart what formatManifest gave; anything else, a cut file
// or lines out of order among them, is errManifest with the line.
func parseManifest(text string) (manifest, error) {
	m := manifest{files: map[string]entry{}, folders: map[string]bool{}}
	text, ok := strings.CutPrefix(text, manifestFormat+"\n")
	if !ok {
		return manifest{}, notIn(1)
	}
	last := ""
	for number := 2; text != ""; number++ {
		var line string
		if line, text, ok = strings.Cut(text, "\n"); !ok {
			return manifest{}, notIn(number)
		}
		e, ok := parseEntry(line)
		if !ok || e.path <= last {
			return manifest{}, notIn(number)
		}
		last = e.path
		m.files[e.path] = e
		for up := path.Dir(e.path); up != "." && !m.folders[up]; up = path.Dir(up) {
			m.folders[up] = true
		}
	}
	return m, nil
}

// notIn is errManifest for the line that no manifest has.
func notIn(line int) error { return fmt.Errorf("%w: line %d is none of it", errManifest, line) }

func parseEntry(line string) (e entry, ok bool) {
	sum, rest, ok1 := strings.Cut(line, "  ")
	size, name, ok2 := strings.Cut(rest, "  ")
	if !ok1 || !ok2 || len(sum) != 2*len(e.sum) || !validName(name) {
		return entry{}, false
	}
	if _, err := hex.Decode(e.sum[:], []byte(sum)); err != nil {
		return entry{}, false
	}
	n, err := strconv.ParseInt(size, 10, 64)
	if err != nil || n < 0 {
		return entry{}, false
	}
	e.size, e.path = n, name
	return e, true
}
