package geom_test

import (
	"go/ast"
	"go/token"
	"go/types"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom/geomtest"
)

// known are the types whose fields carry what a shop measured or looked up: materials,
// stocks, slides, openings, and what is worked out of them. A field of theirs that is
// set and never read, or read and never set, is physics lost on the way.
var known = map[string][]string{
	"drawerwright/geom/wood":    {"Sheet", "Species", "Season", "Air"},
	"drawerwright/geom/joinery": {"Stock", "Thickness", "Spec", "Limits", "Undermount", "Divider", "DrawerFront"},
	"drawerwright/geom/plate":   {"Bottom", "Sag"},
	"drawerwright/geom/opening": {"Opening", "Slide", "Bank", "Row", "Edges", "Plan", "Drawer", "Spacer"},
	"drawerwright/geom/fit":     {"Boards", "Spread", "Accuracy", "SlideFit"},
}

// tree is the project's code, to be searched for fields.
type tree struct{ *geomtest.Source }

func project(t *testing.T, root string) tree {
	t.Helper()
	return tree{geomtest.Project(t, root)}
}

// uses finds which fields are read and which are set.
func (t tree) uses() (read, set map[*types.Var]bool) {
	read, set = map[*types.Var]bool{}, map[*types.Var]bool{}
	for _, file := range t.Code {
		written := map[ast.Expr]bool{}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.AssignStmt:
				for _, left := range n.Lhs {
					written[ast.Unparen(left)] = n.Tok == token.ASSIGN || n.Tok == token.DEFINE
				}
			case *ast.UnaryExpr: // a place to write to
				if n.Op == token.AND {
					written[ast.Unparen(n.X)] = true
				}
			case *ast.CompositeLit:
				t.literal(n, set)
			case *ast.SelectorExpr:
				s := t.Info.Selections[n]
				if s == nil || s.Kind() != types.FieldVal {
					return true
				}
				field, _ := s.Obj().(*types.Var)
				if field = field.Origin(); written[n] {
					set[field] = true
				} else {
					read[field] = true
				}
			}
			return true
		})
	}
	return read, set
}

// literal marks the fields that a composite literal sets.
func (t tree) literal(n *ast.CompositeLit, set map[*types.Var]bool) {
	kind := t.Info.Types[n].Type
	if kind == nil {
		return
	}
	if p, ok := kind.Underlying().(*types.Pointer); ok {
		kind = p.Elem()
	}
	of, ok := kind.Underlying().(*types.Struct)
	if !ok {
		return
	}
	for i, e := range n.Elts {
		if pair, keyed := e.(*ast.KeyValueExpr); keyed {
			if field, ok := t.Info.Uses[pair.Key.(*ast.Ident)].(*types.Var); ok {
				set[field] = true
			}
		} else if i < of.NumFields() {
			set[of.Field(i)] = true
		}
	}
}

// lost lists the exported fields of the known types that code does not read, or not set.
func (t tree) lost(test *testing.T, known map[string][]string) (list []string) {
	read, set := t.uses()
	for path, names := range known {
		p := t.Packages[path]
		if p == nil {
			test.Fatalf("there is no package %s", path)
		}
		for _, name := range names {
			found := p.Scope().Lookup(name)
			if found == nil {
				test.Errorf("%s has no %s", path, name)
				continue
			}
			of, ok := found.Type().Underlying().(*types.Struct)
			if !ok {
				test.Errorf("%s.%s is no struct", path, name)
				continue
			}
			for f := range of.Fields() {
				at := strings.TrimPrefix(path, "drawerwright/") + "." + name + "." + f.Name()
				if f.Exported() && !read[f] {
					list = append(list, at+" is never read")
				}
				if f.Exported() && !set[f] {
					list = append(list, at+" is never set")
				}
			}
		}
	}
	slices.Sort(list)
	return list
}

// TestNoFigureIsLost: every exported field of a material, a stock, a slide and the like
// is set by the program and read by it, tests aside.
func TestNoFigureIsLost(t *testing.T) {
	for _, lost := range project(t, "..").lost(t, known) {
		t.Error(lost)
	}
}

// TestLostFiguresAreFound: the check sees a field that is set and not read, one that is
// read and not set, and none of those that are used in every way there is.
func TestLostFiguresAreFound(t *testing.T) {
	root := t.TempDir()
	for name, code := range map[string]string{
		"geom/wood/a.go": `package wood
type Sheet struct { Shear, Poisson, Creep, Density, Count float64; hidden int }
var sheets = []Sheet{{1, 2, 3, 4, 5, 6}}
func Find() Sheet { return sheets[0] }
`,
		"geom/stock/a.go": `package stock
type Stock struct { Shear, Poisson, Creep, Density, Count float64 }
`,
		"cmd/a.go": `package main
import ("drawerwright/geom/stock"; "drawerwright/geom/wood"; "fmt")
func main() {
	w := wood.Find()
	s := stock.Stock{Creep: w.Creep}
	s.Density = w.Density
	set(&s.Count)
	s.Count++
	if w.Count > 0 { s.Count += 1 }
	fmt.Println(s.Shear, s.Creep, s.Poisson, s.Density)
}
func set(*float64) {}
`,
		"cmd/a_test.go": "package main\nfunc f() { s := stock.Stock{Shear: wood.Find().Shear}; _ = s }\n",
		"export/a.go":   "package export\n", "preview/a.go": "package preview\n",
	} {
		if err := os.MkdirAll(filepath.Join(root, filepath.Dir(name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, name), []byte(code), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got := project(t, root).lost(t, map[string][]string{"drawerwright/geom/wood": {"Sheet"}, "drawerwright/geom/stock": {"Stock"}})
	want := []string{"geom/stock.Stock.Poisson is never set", "geom/stock.Stock.Shear is never set", "geom/wood.Sheet.Poisson is never read", "geom/wood.Sheet.Shear is never read"}
	if !slices.Equal(got, want) {
		t.Errorf("found %q, not %q", got, want)
	}
}
