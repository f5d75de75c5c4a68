package record

import (
	"go/ast"
	"go/parser"
	"go/token"
	"reflect"
	"slices"
	"strconv"
	"testing"
)

// TestEveryFieldIsExplained: each field of report.json has a meaning, and each meaning a field.
func TestEveryFieldIsExplained(t *testing.T) {
	seen := make(map[string]map[string]bool)
	var walk func(reflect.Type)
	walk = func(s reflect.Type) {
		for slices.Contains([]reflect.Kind{reflect.Pointer, reflect.Slice, reflect.Array, reflect.Map}, s.Kind()) {
			s = s.Elem()
		}
		if s.Kind() != reflect.Struct || s == vertexType || seen[s.Name()] != nil {
			return
		}
		seen[s.Name()] = make(map[string]bool)
		for i := range s.NumField() {
			f := s.Field(i)
			if name := nameOf(ownedField{f, s}); !f.Anonymous {
				seen[s.Name()][name] = true
				if len(meanings[s.Name()][name]) < 4 {
					t.Errorf("%s of %s is not explained", name, s.Name())
				}
			}
			walk(f.Type)
		}
	}
	walk(reflect.TypeFor[Report]())
	for s, fields := range meanings {
		for name := range fields {
			if !seen[s][name] {
				t.Errorf("%s has no %s any more", s, name)
			}
		}
	}
	sections, fields := 0, 0
	for _, s := range Explained() {
		sections++
		for _, f := range s.Fields {
			fields++
			if f.Meaning == "" || f.Name == "" {
				t.Errorf("%s.%s: %q", s.Path, f.Name, f.Meaning)
			}
		}
	}
	if sections < 50 || fields < 300 {
		t.Errorf("%d sections, %d fields", sections, fields)
	}
}

// constants are the values of those of a type in files, and of those without a type for "".
func constants(t *testing.T, typed string, files ...string) (values []string) {
	t.Helper()
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			decl, ok := d.(*ast.GenDecl)
			if !ok || decl.Tok != token.CONST {
				continue
			}
			for _, s := range decl.Specs {
				v := s.(*ast.ValueSpec)
				if len(v.Values) != 1 || !ofType(v.Type, typed) {
					continue
				}
				if literal, ok := v.Values[0].(*ast.BasicLit); ok {
					text, err := strconv.Unquote(literal.Value)
					if err != nil {
						t.Fatal(err)
					}
					values = append(values, text)
				}
			}
		}
	}
	return values
}

func ofType(e ast.Expr, name string) bool {
	switch x := e.(type) {
	case *ast.Ident:
		return x.Name == name
	case *ast.SelectorExpr:
		return x.Sel.Name == name
	}
	return e == nil && name == ""
}

// TestEveryWordIsExplained: all verdicts and checks that the code declares are in the tables,
// each once.
func TestEveryWordIsExplained(t *testing.T) {
	proofs := slices.DeleteFunc(constants(t, "", "proof.go"), func(s string) bool {
		return slices.Contains([]string{CheckedSheet, CheckedSolid, CheckedBox, CheckedScene, CheckedCabinet,
			CheckedTemplate, CheckedTable, CheckedDocument, CheckedPictures}, s)
	})
	for what, c := range map[string]struct {
		declared []string
		table    []Word
	}{
		"verdict": {constants(t, "Verdict", "../../../geom/joinery/checks.go"), FitVerdicts},
		"proof":   {proofs, ProofVerdicts},
		"measure": {constants(t, "CheckCode", "../../../geom/joinery/checkcode.go", "../../../geom/fit/box.go"),
			Checks},
	} {
		var told []string
		for _, w := range c.table {
			told = append(told, w.Word)
		}
		slices.Sort(c.declared)
		slices.Sort(told)
		if len(told) < 5 || !slices.Equal(c.declared, told) {
			t.Errorf("%s: declared %q\nexplained %q", what, c.declared, told)
		}
	}
}
