package dxfread

import "strings"

// names keeps one copy of each name of a file.
type names struct {
	last string // the name that was asked for last, as drawings ask for it again and again
	all  map[string]string
}

// of gives the name without white space at its ends.
func (n *names) of(b []byte) string {
	b = trim(b)
	if string(b) == n.last {
		return n.last
	}
	name, ok := n.all[string(b)]
	if !ok {
		name = string(b)
		keep(&n.all, name, name)
	}
	n.last = name
	return name
}

// word gives the value as a word of the format, in capitals.
func (r *reader) word() string {
	switch string(r.value) {
	case "LWPOLYLINE":
		return "LWPOLYLINE"
	case "POLYLINE":
		return "POLYLINE"
	case "VERTEX":
		return "VERTEX"
	case "SEQEND":
		return "SEQEND"
	case "CIRCLE":
		return "CIRCLE"
	}
	b := trim(r.value)
	word, ok := r.words[string(b)]
	if !ok {
		asItIs := string(b)
		word = strings.ToUpper(asItIs)
		keep(&r.words, asItIs, word)
	}
	return word
}

func keep(all *map[string]string, key, name string) {
	if *all == nil {
		*all = make(map[string]string)
	}
	(*all)[key] = name
}
