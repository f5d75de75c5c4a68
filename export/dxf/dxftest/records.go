package dxftest

import "strings"

// record is what stands between one group 0 and the next.
type record struct {
	kind string // the value of its group 0
	line int
	tags []Tag
}

// first gives the first tag of a code.
func (r record) first(code int) (Tag, bool) {
	for _, t := range r.tags {
		if t.Code == code {
			return t, true
		}
	}
	return Tag{Line: r.line}, false
}

// text gives the value of the first tag of a code.
func (r record) text(code int) string {
	t, _ := r.first(code)
	return t.Value
}

// number gives the whole number in the first tag of a code, or what stands for
// one that is left out.
func (r record) number(code, missing int) int {
	if t, ok := r.first(code); ok {
		return t.int()
	}
	return missing
}

// count gives how many tags of a code there are.
func (r record) count(code int) int {
	n := 0
	for _, t := range r.tags {
		if t.Code == code {
			n++
		}
	}
	return n
}

// section is one section of a file. The tags of a HEADER stand in head, all
// others in records.
type section struct {
	name    string
	line    int
	head    []Tag
	records []record
}

// sections splits a file at its groups 0. It keeps the comments, and what stands
// outside of any section in rest: EOF should be all.
func sections(tags []Tag) (all []section, comments []string, rest []record) {
	var current *section
	for i := 0; i < len(tags); {
		if tags[i].Code == 999 {
			comments = append(comments, tags[i].Value)
			i++
			continue
		}
		rec := record{kind: tags[i].Value, line: tags[i].Line}
		if tags[i].Code != 0 {
			rec.kind = ""
			rec.tags = append(rec.tags, tags[i])
		}
		for i++; i < len(tags) && tags[i].Code != 0; i++ {
			if tags[i].Code == 999 {
				comments = append(comments, tags[i].Value)
				continue
			}
			rec.tags = append(rec.tags, tags[i])
		}
		switch {
		case rec.kind == "SECTION":
			all = append(all, section{name: rec.text(2), line: rec.line})
			current = &all[len(all)-1]
			if len(rec.tags) > 1 {
				current.head = rec.tags[1:]
			}
		case current == nil:
			rest = append(rest, rec)
		case rec.kind == "ENDSEC":
			current = nil
		default:
			current.records = append(current.records, rec)
		}
	}
	return all, comments, rest
}

// find gives the section of a name, or an empty one.
func find(all []section, name string) section {
	for _, s := range all {
		if s.name == name {
			return s
		}
	}
	return section{name: name}
}

// table is one table of the TABLES section.
type table struct {
	head    record
	name    string
	records []record
	ended   bool
}

// tables splits the TABLES section. What stands between tables is left out, and
// Strict misses it by its counts.
func tables(s section) []table {
	var all []table
	for _, r := range s.records {
		last := len(all) - 1
		switch {
		case r.kind == "TABLE":
			all = append(all, table{head: r, name: r.text(2)})
		case last < 0 || all[last].ended:
		case r.kind == "ENDTAB":
			all[last].ended = true
		default:
			all[last].records = append(all[last].records, r)
		}
	}
	return all
}

// key is how names compare: without regard to capitals.
func key(name string) string { return strings.ToUpper(name) }

// variables splits a header at its groups 9.
func variables(s section) (names []string, values map[string][]Tag) {
	values = make(map[string][]Tag)
	name := ""
	for _, t := range s.head {
		if t.Code == 9 {
			name = t.Value
			names = append(names, name)
			continue
		}
		values[name] = append(values[name], t)
	}
	return names, values
}
