package reference

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"drawerwright/cmd/internal/job"
)

// Entry explains an entry of the job file.
func Entry(e job.Entry) Doc {
	d := Doc{{Kind: Title, Text: e.Path}, {Kind: Paragraph, Text: e.Doc + "."}}
	item := func(term, text string) {
		if text != "" {
			d = append(d, Block{Kind: Item, Term: term, Text: text})
		}
	}
	item("called", e.Title)
	item("type", e.Type)
	item("unit", e.Unit)
	item("range", e.Range)
	switch {
	case e.Required:
		item("default", "none: it is required")
	case e.Default != "":
		item("default", "`"+e.Default+"`")
	default:
		item("when left out", e.Without)
	}
	item("why", e.Why)
	item("also in", strings.Join(e.Also, ", "))
	item("entries in it", strings.Join(e.Keys, ", "))
	return append(d, Block{Kind: Heading, Text: "Example"}, Block{Kind: Code, Text: e.Example})
}

// Choose lists entries of one name, to ask for one of them.
func Choose(name string, entries []job.Entry) Doc {
	d := Doc{{Kind: Paragraph, Text: fmt.Sprintf("%d entries have %s in their name or among their words; "+
		"`drawerwright explain` with one of these paths says all of it:",
		len(entries), name)}}
	for _, e := range entries {
		d = append(d, Block{Kind: Item, Term: e.Path, Text: e.Doc + "."})
	}
	return d
}

// treeColumn is where the entries of a section begin. Two short sections share a line, the
// second of them from column secondSection on.
const treeColumn, secondSection = 15, 44

// branch is a section of the tree: its name, the label before it, the names of its entries and what is
// printed.
type branch struct {
	name, label string
	keys, words []string
}

// text is the branch from column 0, in one line or more.
func (b branch) text() string {
	return wrapped(strings.Join(b.words, " "), fmt.Sprintf("%-*s", treeColumn, b.label),
		strings.Repeat(" ", treeColumn))
}

// inLineWith reports whether two branches fit into one line.
func (b branch) inLineWith(next branch) bool {
	inner := strings.HasPrefix(b.label, " ") && strings.HasPrefix(next.label, " ")
	return inner && utf8.RuneCountInString(b.text()) <= secondSection &&
		utf8.RuneCountInString(next.text()) <= Columns-secondSection
}

// like makes a branch short that has most of the entries of the one before it.
func (b *branch) like(last branch) {
	var missing, own []string
	for i, k := range b.keys {
		if !slices.Contains(last.keys, k) {
			own = append(own, b.words[i])
		}
	}
	for _, k := range last.keys {
		if !slices.Contains(b.keys, k) {
			missing = append(missing, k)
		}
	}
	if common := len(b.keys) - len(own); common > len(own)+len(missing) {
		b.words = []string{"as", last.name + ","}
		if len(missing) > 0 {
			b.words = append(append(b.words, "without"), strings.Join(missing, " ")+",")
		}
		if len(own) > 0 {
			b.words = append(append(b.words, "with"), own...)
		}
	}
}

// Tree names all entries of the job file on one screen.
func Tree() string {
	entries := job.Entries()
	has := func(path string) bool {
		return slices.ContainsFunc(entries, func(e job.Entry) bool { return e.Path == path })
	}
	allSections := func(name string, keys []string) bool {
		return !slices.ContainsFunc(keys, func(k string) bool {
			return !slices.ContainsFunc(entries, func(e job.Entry) bool {
				return e.Path == name+"."+k && len(e.Keys) > 0
			})
		})
	}
	required := func(path string) string {
		i := slices.IndexFunc(entries, func(e job.Entry) bool { return e.Path == path })
		if entries[i].Required {
			return "*"
		}
		return ""
	}
	var all []branch
	section := func(name, path string, depth int, keys []string) {
		b := branch{name: name, label: strings.Repeat("  ", depth) + name, keys: keys}
		for _, k := range keys {
			b.words = append(b.words, k+required(path+k))
		}
		if depth > 0 {
			last := all[len(all)-1]
			if last.label == last.name && allSections(last.name, last.keys) { // they share a line
				b.label, all = last.name+" "+name, all[:len(all)-1]
			} else {
				b.like(last)
			}
		}
		all = append(all, b)
	}
	var top []string
	for _, e := range entries {
		if !strings.Contains(e.Path, ".") && len(e.Keys) == 0 {
			top = append(top, e.Path)
		}
	}
	section("", "", 0, top)
	for _, e := range entries {
		if len(e.Keys) > 0 && has(e.Path+"."+e.Keys[0]) { // else they are told where they come first
			steps := strings.Split(e.Path, ".")
			section(steps[len(steps)-1], e.Path+".", len(steps)-1, e.Keys)
		}
	}
	return "Entries of the job file; * is required. More: drawerwright explain router.tabs\n" + drawn(all)
}

// drawn writes branches, short ones side by side.
func drawn(all []branch) string {
	var b strings.Builder
	for i := 0; i < len(all); i++ {
		text := all[i].text()
		if i+1 < len(all) && all[i].inLineWith(all[i+1]) {
			text = fmt.Sprintf("%-*s%s", secondSection, strings.TrimSuffix(text, "\n"), all[i+1].text())
			i++
		}
		b.WriteString(text)
	}
	return b.String()
}
