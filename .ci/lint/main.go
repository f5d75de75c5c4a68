// Command lint holds the project's code against the rules that no other checker knows. It
// prints each place that breaks one and fails where a rule has more of them than
// .ci/lint/left allows: numbers in that file only ever become less.
package main

import (
	"bufio"
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
)

const (
	maxLines      = 60  // of a function
	maxColumns    = 120 // of a line outside tables, a tab counting four
	maxParameters = 5
)

// places are where each rule is broken.
type places map[string][]string

func (p places) add(rule string, at token.Position, what string) {
	p[rule] = append(p[rule], fmt.Sprintf("%s:%d: %s", at.Filename, at.Line, what))
}

func main() {
	left, err := allowed(".ci/lint/left")
	if err != nil {
		fatal(err)
	}
	loaded, err := packages.Load(&packages.Config{Mode: packages.LoadAllSyntax, Tests: true}, "./cmd/...", "./geom/...", "./export/...", "./preview/...", "./testdata/outside", "./testdata/peers", "./testdata/nesting", "./testdata/picture")
	if err != nil {
		fatal(err)
	}
	if packages.PrintErrors(loaded) > 0 {
		os.Exit(1)
	}
	found := places{}
	each := map[string]bool{}
	for _, p := range loaded {
		for _, f := range p.Syntax {
			if at := p.Fset.Position(f.Pos()); !each[at.Filename] && !strings.HasSuffix(at.Filename, ".test") {
				each[at.Filename] = true
				ofFile(found, p, f)
			}
		}
	}
	unused(found, loaded)
	names(found, loaded)
	vocabulary(found, loaded)
	os.Exit(judge(found, left))
}

func fatal(err error) {
	fmt.Fprintln(os.Stderr, "lint:", err)
	os.Exit(1)
}

// allowed reads lines of a rule's name and how many places may break it.
func allowed(file string) (map[string]int, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	left := map[string]int{}
	for s := bufio.NewScanner(f); s.Scan(); {
		var rule string
		var n int
		if _, err := fmt.Sscan(s.Text(), &rule, &n); err != nil {
			return nil, fmt.Errorf("%s: %q: %w", file, s.Text(), err)
		}
		left[rule] = n
	}
	return left, nil
}

func judge(found places, left map[string]int) (code int) {
	folder, _ := os.Getwd()
	for rule := range found {
		left[rule] += 0 // one that the file does not name has none left
	}
	for _, rule := range slices.Sorted(maps.Keys(left)) {
		n := len(found[rule])
		fmt.Printf("%s: %d, at most %d\n", rule, n, left[rule])
		if n == left[rule] && len(os.Args) < 2 {
			continue
		}
		slices.Sort(found[rule])
		for _, place := range found[rule] {
			fmt.Println("\t" + strings.TrimPrefix(place, folder+"/"))
		}
		if n != left[rule] {
			fmt.Printf("%s: .ci/lint/left has to say %d, and not more than before\n", rule, n)
			code = 1
		}
	}
	return code
}

// ofFile finds what is too long in a file.
func ofFile(found places, p *packages.Package, f *ast.File) {
	name := p.Fset.Position(f.Pos()).Filename
	tests := strings.HasSuffix(name, "_test.go")
	for _, d := range f.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		at := p.Fset.Position(fn.Pos())
		if n := p.Fset.Position(fn.End()).Line - at.Line + 1; n > maxLines && !tests {
			found.add("long-functions", at, fmt.Sprintf("%s has %d lines", fn.Name.Name, n))
		}
		if n := fn.Type.Params.NumFields(); n > maxParameters && !tests {
			found.add("many-parameters", at, fmt.Sprintf("%s has %d parameters", fn.Name.Name, n))
		}
		if fn.Name.IsExported() && !tests {
			for _, param := range fn.Type.Params.List {
				if id, ok := param.Type.(*ast.Ident); ok && id.Name == "bool" {
					found.add("boolean-parameters", at, fn.Name.Name+" has a boolean parameter")
				}
			}
		}
	}
	for _, group := range f.Comments {
		for _, link := range docLink.FindAllStringSubmatch(group.Text(), -1) {
			if !resolves(p, f, strings.TrimPrefix(link[1], "*")) {
				found.add("dead-doc-links", p.Fset.Position(group.Pos()), "["+link[1]+"] names nothing")
			}
		}
	}
	rows := tableRows(p.Fset, f)
	data, err := os.ReadFile(name)
	if err != nil {
		fatal(err)
	}
	for i, line := range strings.Split(string(data), "\n") {
		if n := len([]rune(strings.ReplaceAll(line, "\t", "    "))); n > maxColumns && !rows[i+1] {
			found.add("long-lines", token.Position{Filename: name, Line: i + 1}, fmt.Sprintf("%d columns", n))
		}
	}
}

// docLink is a name in brackets, as Go's documentation has it.
var docLink = regexp.MustCompile(`(?m)^(?:[^\t].*[ (]|)\[(\*?[A-Za-z_]\w*(?:\.[A-Za-z_]\w*){0,2})\](?:[ ,.;:)]|$)`)

// resolves reports whether a link in a comment of a file names something: X, X.Y, or with
// the name of an imported package before it.
func resolves(p *packages.Package, f *ast.File, link string) bool {
	names, scope := strings.Split(link, "."), p.Types.Scope()
	if scope.Lookup(names[0]) == nil {
		for _, i := range f.Imports {
			path := strings.Trim(i.Path.Value, `"`)
			if of := p.Imports[path]; of != nil && (of.Name == names[0] || i.Name != nil && i.Name.Name == names[0]) {
				scope, names = of.Types.Scope(), names[1:]
				break
			}
		}
	}
	if len(names) == 0 {
		return true // a package
	}
	o := scope.Lookup(names[0])
	if o == nil || len(names) == 1 {
		return o != nil
	}
	member, _, _ := types.LookupFieldOrMethod(o.Type(), true, p.Types, names[1])
	return member != nil
}

// tableRows are the lines of composite literals and of raw strings, which are tables.
func tableRows(set *token.FileSet, f *ast.File) map[int]bool {
	rows := map[int]bool{}
	ast.Inspect(f, func(n ast.Node) bool {
		raw, isText := n.(*ast.BasicLit)
		_, isTable := n.(*ast.CompositeLit)
		if isTable || isText && strings.HasPrefix(raw.Value, "`") {
			for l := set.Position(n.Pos()).Line; l <= set.Position(n.End()).Line; l++ {
				rows[l] = true
			}
		}
		return true
	})
	return rows
}

// unused finds what is exported and has no user outside tests.
func unused(found places, loaded []*packages.Package) {
	type place struct {
		file string
		at   int
	}
	defined, used := map[place]types.Object{}, map[place]bool{}
	where := func(p *packages.Package, o types.Object) place {
		at := p.Fset.Position(o.Pos())
		return place{at.Filename, at.Offset}
	}
	for _, p := range loaded {
		for id, o := range p.TypesInfo.Defs {
			file := p.Fset.Position(id.Pos()).Filename
			if o != nil && id.IsExported() && !strings.HasSuffix(file, "_test.go") && counted(o) {
				defined[where(p, o)] = o
			}
		}
		for id, o := range p.TypesInfo.Uses {
			if !strings.HasSuffix(p.Fset.Position(id.Pos()).Filename, "_test.go") {
				used[where(p, origin(o))] = true
			}
		}
	}
	for at, o := range defined {
		folder := o.Pkg().Path()
		if used[at] || slices.ContainsFunc(forTests, func(of string) bool { return strings.HasSuffix(folder, of) }) {
			continue
		}
		p := loaded[0].Fset.Position(o.Pos())
		found.add("exported-unused", p, o.Name())
	}
}

// forTests are packages that only tests use.
var forTests = []string{"/geomtest", "/dxftest", "/jobtest", "/mutate", "/readback"}

// counted reports whether an object is one whose users are to be counted: what is declared
// at the level of a package, and methods that no interface of another package asks for.
func counted(o types.Object) bool {
	switch o := o.(type) {
	case *types.Func:
		return o.Signature().Recv() == nil || !asked[o.Name()]
	case *types.Const, *types.TypeName, *types.Var:
		return o.Parent() == o.Pkg().Scope()
	}
	return false
}

// asked are methods that are called by an interface: of the standard library,
// or an interface of the package that uses them.
var asked = map[string]bool{"ReadFile": true, "WriteFile": true, "Stream": true, "ServeHTTP": true, "Push": true, "Pop": true, "String": true, "Error": true, "Unwrap": true, "Is": true, "Write": true, "Read": true, "Close": true, "Get": true, "Put": true, "Len": true, "Less": true, "Swap": true,
	"Accept": true, "MarshalJSON": true, "UnmarshalJSON": true, "MarshalText": true, "UnmarshalText": true, "In": true}

// origin is an object as declared, where it is an instance of a generic one.
func origin(o types.Object) types.Object {
	switch o := o.(type) {
	case *types.Func:
		return o.Origin()
	case *types.Var:
		return o.Origin()
	}
	return o
}
