package geomtest

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// Source is the project's code without its tests, with types as far as the project's own
// code determines them: packages from elsewhere are not looked at.
type Source struct {
	Packages map[string]*types.Package // by their paths
	Info     *types.Info
	Code     []*ast.File
	Files    *token.FileSet
	root     string
}

var errElsewhere = errors.New("a package from elsewhere")

// Import reads a package of the project.
func (t *Source) Import(path string) (*types.Package, error) {
	folder, ours := strings.CutPrefix(path, "drawerwright/")
	if !ours {
		return nil, errElsewhere
	}
	if p := t.Packages[path]; p != nil {
		return p, nil
	}
	names, err := filepath.Glob(filepath.Join(t.root, folder, "*.go"))
	if err != nil {
		return nil, err
	}
	var list []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") || name != strings.TrimSuffix(name, "_windows.go") {
			continue
		}
		file, err := parser.ParseFile(t.Files, name, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		list = append(list, file)
	}
	check := types.Config{Importer: t, Error: func(error) {}} // what is from elsewhere is unknown
	p, _ := check.Check(path, t.Files, list, t.Info)
	t.Packages[path] = p
	t.Code = append(t.Code, list...)
	return p, nil
}

// Project reads all packages below the root.
func Project(t testing.TB, root string) *Source {
	t.Helper()
	all := &Source{root: root, Files: token.NewFileSet(), Packages: map[string]*types.Package{},
		Info: &types.Info{Selections: map[*ast.SelectorExpr]*types.Selection{}, Uses: map[*ast.Ident]types.Object{},
			Types: map[ast.Expr]types.TypeAndValue{}}}
	for _, top := range []string{"geom", "export", "preview", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, top), func(path string, d fs.DirEntry, err error) error {
			if err != nil || !d.IsDir() {
				return err
			}
			if code, _ := filepath.Glob(filepath.Join(path, "*.go")); len(code) == 0 {
				return nil
			}
			folder, err := filepath.Rel(root, path)
			if err != nil {
				return err
			}
			_, err = all.Import("drawerwright/" + filepath.ToSlash(folder))
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return all
}
