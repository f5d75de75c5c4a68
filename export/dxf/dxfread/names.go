package dxfread

import "strings"

// names keeps one copy of each name of a file.
type names map[string]string

// of gives the name without white space at its ends.
func (n names) of(b []byte) string {
	b = trim(b)
	name, ok := n[string(b)]
	if !ok {
		name = string(b)
		n[name] = name
	}
	return name
}

// word gives the value as a word of the format, in capitals.
func (r *reader) word() string {
	b := trim(r.value)
	word, ok := r.words[string(b)]
	if !ok {
		word = strings.ToUpper(string(b))
		r.words[string(b)] = word
	}
	return word
}
