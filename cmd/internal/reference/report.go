package reference

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/record"
)

// fields are the items of a level of report.json.
func fields(s record.Section) (d Doc) {
	for _, f := range s.Fields {
		text := f.Meaning
		if f.As != "" {
			text += ", with the fields of " + f.As
		}
		d = append(d, Block{Kind: Item, Term: f.Name, Text: text + "."})
	}
	return d
}

// Level explains the fields of a level of report.json; nil where there is none of that path.
func Level(path string) Doc {
	all := record.Explained()
	i := slices.IndexFunc(all, func(s record.Section) bool { return s.Path == path && path != "" })
	if i < 0 {
		return nil
	}
	d := Doc{{Kind: Title, Text: "report.json: " + path}}
	for _, f := range all[i].Fields {
		text := f.Meaning
		if f.As != "" {
			text += ", as " + f.As
		}
		d = append(d, Block{Kind: Item, Term: f.Name, Text: text + " (" + f.Type + ")."})
	}
	if path == "fit" {
		d = append(d, Block{Kind: Paragraph, Text: "Checks:"})
		d = append(d, wordItems(record.Checks)...)
	}
	return d
}

// Levels are the paths of the levels of report.json below the first.
func Levels() (list []string) {
	for _, s := range record.Explained()[1:] {
		list = append(list, s.Path)
	}
	return list
}

// reportInWhole are all levels.
func reportInWhole(level int) string {
	var b strings.Builder
	for _, path := range Levels() {
		b.WriteString("\n" + Level(path).Markdown(level))
	}
	return b.String()
}
