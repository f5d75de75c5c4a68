package job

import (
	"bytes"
	"cmp"
	"slices"
	"strconv"
)

// Node is a value of a job file with its place, for a form. It has a text, entries or
// items, or, where it could not be read, none of them.
type Node struct {
	At      Position
	Text    string
	Entries []NodeEntry
	Items   []*Node
}

// NodeEntry is a key with its value.
type NodeEntry struct {
	Key   string
	Value *Node
}

// Outline is what a job file holds, whether or not a job can be made of it.
type Outline struct {
	Root *Node
	// Sound reports whether its layout has no mistake, so that single values can be
	// written into it.
	Sound  bool
	src    *source
	places []place
}

// place is where a value or a key stands, and the path to it.
type place struct {
	at   Position
	path []string
	leaf bool // a value that has no entries
}

// Outlined reads the layout of a job file. Of a file that is no YAML it holds what
// could be read.
func Outlined(file []byte) Outline {
	r := &reporter{}
	src, ok := readSource("", bytes.NewReader(file), r)
	if !ok {
		return Outline{Root: &Node{}}
	}
	root, _ := parse(src, r)
	o := Outline{Sound: len(r.problems) == 0, src: src}
	o.Root = o.node(root, nil)
	slices.SortStableFunc(o.places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.at.Line, b.at.Line), cmp.Compare(a.at.Column, b.at.Column))
	})
	return o
}

func (o *Outline) node(n *node, path []string) *Node {
	o.places = append(o.places, place{o.src.inFile(n.at), path, len(n.entries)+len(n.items) == 0})
	out := &Node{At: o.src.inFile(n.at), Text: n.text}
	for _, e := range n.entries {
		way := append(slices.Clip(path), e.key)
		o.places = append(o.places, place{o.src.inFile(e.at), way, false})
		out.Entries = append(out.Entries, NodeEntry{e.key, o.node(e.value, way)})
	}
	for i, item := range n.items {
		out.Items = append(out.Items, o.node(item, append(slices.Clip(path), strconv.Itoa(i))))
	}
	return out
}

// PathOf is the path to what a problem of the file is about: a value that begins at
// its place, else the outermost one that does, else what stands before it. A missing
// entry is named by its problem.
func (o Outline) PathOf(p Problem) []string {
	at := Position{p.Line, p.Column}
	var path []string
	exact, leaf := false, false
	for _, c := range o.places { // in the order of the file, outer ones first
		before := cmp.Or(cmp.Compare(c.at.Line, at.Line), cmp.Compare(c.at.Column, at.Column))
		if before > 0 {
			break
		}
		if before < 0 {
			path = c.path
			continue
		}
		if !exact || c.leaf && !leaf && p.Key == "" {
			path, exact, leaf = c.path, true, c.leaf
		}
	}
	if p.Key != "" {
		return append(slices.Clip(path), p.Key)
	}
	return path
}

// At is the value at a path of names and numbers; nil where there is none.
func (o Outline) At(path ...string) *Node {
	n := o.Root
	for _, step := range path {
		n = n.child(step)
		if n == nil {
			return nil
		}
	}
	return n
}

func (n *Node) child(step string) *Node {
	for _, e := range n.Entries {
		if e.Key == step {
			return e.Value
		}
	}
	if i, err := strconv.Atoi(step); err == nil && i >= 0 && i < len(n.Items) {
		return n.Items[i]
	}
	return nil
}
