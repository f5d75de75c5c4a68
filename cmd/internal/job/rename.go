package job

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"drawerwright/geom/opening"
)

// Rename gives a stock, an opening or a slide of a job file another name, and writes it at every
// entry that refers to it; path is that of the thing, as in "stock", "birch". Of a drawer, as in
// "drawers", "0", it writes the entry "name": nothing refers to that. Comments and all else stay.
func Rename(file []byte, name string, path ...string) ([]byte, error) {
	out, err := renamed(file, strings.TrimSpace(name), path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be renamed: %w", quote(strings.Join(path, " > ")), err)
	}
	return out, nil
}

func renamed(file []byte, name string, path []string) ([]byte, error) {
	if len(path) != 2 {
		return nil, errors.New("stocks, openings, slides and drawers have names that other entries follow")
	}
	l, parent, at, err := openAt(file, path)
	if err != nil {
		return nil, err
	}
	if err := nameable(name, path[0], parent, at); err != nil {
		return nil, err
	}
	if path[0] == "drawers" {
		return Patch(file, Edit{Path: append(slices.Clone(path), "name"), Value: writeKey(name)})
	}
	e := &parent.entries[at]
	if e.key == name {
		return file, nil
	}
	changes := []change{{e.mark, writeKey(name)}}
	eachEntry(l.root, jobKeys, func(n *node, k *key) {
		if n.kind == scalar && n.text == e.key && k.refersTo(path[0]) {
			changes = append(changes, change{n.first, writeKey(name)})
			n.text = name
		}
	})
	e.key = name
	out := l.changed(changes)
	return out, l.holds(out)
}

// refersTo reports whether a value of the key is the name of a thing of a kind.
func (k *key) refersTo(kind string) bool {
	return k.form == formStock && kind == "stock" || k.form == formRef && k.name+"s" == kind
}

// nameable says why a thing of a kind cannot have a name beside the others.
func nameable(name, kind string, others *node, at int) error {
	k, _ := keyAt([]string{kind})
	if k == nil || k.form != formNamed && kind != "drawers" {
		return errors.New("stocks, openings, slides and drawers have names that other entries follow")
	}
	signs := nameSigns
	if kind == "stock" {
		signs += stockSigns
	}
	if fault := faultWithin(name, signs); fault != "" {
		return fmt.Errorf("the name %s %s", quote(name), fault)
	}
	if kind == "slides" && slices.Contains(opening.Kinds, opening.Kind(name)) {
		return fmt.Errorf("%s is the name of a built-in kind", quote(name))
	}
	for i, other := range namesIn(others) {
		if i != at && FileName(other) == FileName(name) {
			return fmt.Errorf("there is a %s %s already, and its files would have the same names", k.noun, quote(other))
		}
	}
	return nil
}

// namesIn are the keys of a mapping, or what the items of a list call themselves.
func namesIn(n *node) (names []string) {
	for _, e := range n.entries {
		names = append(names, e.key)
	}
	for _, item := range n.items {
		name := ""
		for _, e := range item.entries {
			if e.key == "name" {
				name = e.value.text
			}
		}
		names = append(names, name)
	}
	return names
}
