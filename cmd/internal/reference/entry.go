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
	d := Doc{{Kind: Paragraph, Text: fmt.Sprintf("%s is the name of %d entries; `drawerwright explain` with one of these paths says all of it:",
		name, len(entries))}}
	for _, e := range entries {
		d = append(d, Block{Kind: Item, Term: e.Path, Text: e.Doc + "."})
	}
	return d
}

// treeColumn is where the entries of a section begin.
const treeColumn = 15

// Tree names all entries of the job file on one screen.
func Tree() string {
	entries := job.Entries()
	has := func(path string) bool {
		return slices.ContainsFunc(entries, func(e job.Entry) bool { return e.Path == path })
	}
	required := func(path string) string {
		i := slices.IndexFunc(entries, func(e job.Entry) bool { return e.Path == path })
		if entries[i].Required {
			return "*"
		}
		return ""
	}
	var b strings.Builder
	b.WriteString("Entries of the job file; * is required. More: drawerwright explain router.tabs\n\n")
	section := func(name, path string, depth int, keys []string) {
		label := strings.Repeat("  ", depth) + name
		if space := treeColumn - utf8.RuneCountInString(label); space > 0 {
			label += strings.Repeat(" ", space)
		} else {
			label += " "
		}
		var words []string
		for _, k := range keys {
			words = append(words, k+required(path+k))
		}
		b.WriteString(wrapped(strings.Join(words, " "), label, strings.Repeat(" ", treeColumn)))
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
	return b.String()
}
