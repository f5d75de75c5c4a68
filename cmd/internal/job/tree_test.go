package job

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// show writes a node as brackets and quotes.
func (n *node) show() string {
	var parts []string
	switch n.kind {
	case mapping:
		for _, e := range n.entries {
			parts = append(parts, fmt.Sprintf("%q: %s", e.key, e.value.show()))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case list:
		for _, item := range n.items {
			parts = append(parts, item.show())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case scalar:
		return fmt.Sprintf("%q", n.text)
	case nothing:
		return "nothing"
	default:
		return "broken"
	}
}

// showLibrary does the same for the tree of the library's parser.
func showLibrary(n ast.Node) string {
	var parts []string
	switch n := n.(type) {
	case *ast.MappingNode:
		for _, v := range n.Values {
			parts = append(parts, fmt.Sprintf("%q: %s", v.Key.GetToken().Value, showLibrary(v.Value)))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case *ast.SequenceNode:
		for _, v := range n.Values {
			parts = append(parts, showLibrary(v))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	default:
		return fmt.Sprintf("%q", n.GetToken().Value)
	}
}

// gaps reports whether a value is missing in the tree.
func (n *node) gaps() bool {
	return n.kind == nothing || slices.ContainsFunc(n.items, (*node).gaps) ||
		slices.ContainsFunc(n.entries, func(e entry) bool { return e.value.gaps() })
}

// checkTree compares the tree of a text that holds no mistake in its layout
// with the one that the library's parser makes of it: a job must mean here
// what it means to every other reader of YAML. Texts with missing values,
// which no job has, are not compared: after an empty dash the library takes
// the next key in the column of the dash into the list.
func checkTree(t *testing.T, text string) {
	t.Helper()
	r := &reporter{}
	src, ok := readSource("job.yaml", strings.NewReader(text), r)
	if !ok || len(r.problems) > 0 {
		return
	}
	root, _ := parse(src, r)
	if len(r.problems) > 0 || root.gaps() {
		return
	}
	plain := strings.ReplaceAll(strings.Join(src.lines, "\n"), "\t", " ") + "\n"
	file, err := parser.ParseBytes([]byte(plain), 0, parser.AllowDuplicateMapKey())
	if err != nil {
		t.Fatalf("the library refuses %q, read here as %s:\n%v", text, root.show(), err)
	}
	if got, want := root.show(), showLibrary(file.Docs[0].Body); got != want {
		t.Errorf("%q is read as\n%s, by the library as\n%s", text, got, want)
	}
}

func TestTreeIsThatOfTheLibrary(t *testing.T) {
	for _, text := range goodFiles {
		checkTree(t, text)
	}
	for _, m := range mistakes {
		checkTree(t, m.file())
	}
}

func FuzzTree(f *testing.F) {
	for _, text := range goodFiles {
		f.Add(text)
	}
	for _, m := range mistakes {
		f.Add(m.file())
	}
	f.Fuzz(checkTree)
}
