package main

import (
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
)

var (
	inTicks = regexp.MustCompile("`([^`\\s]+?)/?`")
	isPlace = regexp.MustCompile(`^[\w./-]+\.(go|js|mjs|py)$|^\w[\w-]*(/[\w-]+)+$|^(Test|Fuzz|Benchmark)[A-Z]\w*$`)
	mapRow  = regexp.MustCompile("^\\| `([\\w/]+)` \\| .* \\| (.*) \\|$")
)

// names holds DEVELOPERS.md to the code: files, folders, tests and names of packages that it
// has in backticks exist, and its map has every package with what that imports.
func names(found places, loaded []*packages.Package) {
	at, known := token.Position{Filename: "DEVELOPERS.md"}, map[string]bool{}
	byName, imports := map[string]*packages.Package{}, map[string]string{}
	filepath.WalkDir(".", func(path string, _ fs.DirEntry, _ error) error {
		for rest, more := path, true; more; _, rest, more = strings.Cut(rest, "/") {
			known[rest] = true
		}
		return nil
	})
	for _, p := range loaded {
		for id := range p.TypesInfo.Defs {
			known[id.Name] = true
		}
		if p.ID != p.PkgPath || strings.HasPrefix(p.ID, "drawerwright/testdata") || strings.HasSuffix(p.ID, ".test") {
			continue
		}
		var list []string
		for _, path := range slices.Sorted(maps.Keys(p.Imports)) {
			if strings.HasPrefix(path, "drawerwright/") {
				list = append(list, "`"+filepath.Base(path)+"`")
			}
		}
		byName[filepath.Base(p.ID)], imports[strings.TrimPrefix(p.ID, "drawerwright/")] = p, strings.Join(list, ", ")
	}
	text, _ := os.ReadFile(at.Filename) // without it the map lacks every package
	for line := range strings.SplitSeq(string(text), "\n") {
		at.Line++
		for _, word := range inTicks.FindAllStringSubmatch(line, -1) {
			of, name, _ := strings.Cut(word[1], ".")
			p, place := byName[of], isPlace.MatchString(word[1])
			if place && !known[word[1]] || !place && p != nil && name != "" && !resolves(p, p.Syntax[0], name) {
				found.add("lost-names", at, "there is no "+word[1])
			}
		}
		if row := mapRow.FindStringSubmatch(line); row != nil && row[2] == imports[row[1]] {
			delete(imports, row[1])
		}
	}
	for folder, list := range imports {
		found.add("lost-names", at, "the map has to say that "+folder+" imports "+list)
	}
}
