package job

import (
	"cmp"
	"slices"
)

// eachEntry calls visit with every value below a mapping that has a key of the job file, and with
// that key, in the order of the file. Sections come before what is in them.
func eachEntry(n *node, keys []key, visit func(n *node, k *key)) {
	for _, e := range n.entries {
		i := slices.IndexFunc(keys, func(k key) bool { return k.name == e.key })
		if i < 0 {
			continue
		}
		k := &keys[i]
		visit(e.value, k)
		switch k.form {
		case formSection:
			eachEntry(e.value, k.keys, visit)
		case formNamed:
			for _, named := range e.value.entries {
				eachEntry(named.value, k.keys, visit)
			}
		case formList:
			for _, item := range e.value.items {
				eachEntry(item, k.keys, visit)
			}
		}
	}
}

// change is text that is to stand in the place of a mark.
type change struct {
	mark int
	text string
}

// changed writes texts in the places of marks, each of one mark.
func (l *layout) changed(list []change) []byte {
	slices.SortFunc(list, func(a, b change) int { return cmp.Compare(a.mark, b.mark) })
	var out []byte
	at := 0
	for _, c := range list {
		out = append(append(out, l.data[at:l.begins[c.mark]]...), c.text...)
		at = l.ends[c.mark]
	}
	return append(out, l.data[at:]...)
}
