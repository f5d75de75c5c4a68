package prove

import (
	"slices"
	"strings"

	"drawerwright/cmd/internal/readback"
	"drawerwright/cmd/internal/record"
)

// printedPlates are the files in which templates are to be printed, each with those in it.
func (p *Prover) printedPlates() (files []string, of map[string][]record.Template) {
	of = make(map[string][]record.Template)
	for _, t := range p.report.Templates {
		for _, name := range t.Files {
			if !strings.HasSuffix(name, ".pdf") {
				continue
			}
			if of[name] == nil {
				files = append(files, name)
			}
			of[name] = append(of[name], t)
		}
	}
	return files, of
}

// platesCheck looks for the title of each template on the pages to be printed, of a piece for that of the whole.
func (w *Worker) platesCheck(file string, list []record.Template, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedTemplate, Name: file,
		Faults: []record.Fault{}}}
	data, ok := c.file(file, read)
	if !ok {
		return c.out
	}
	pages, err := readback.Pages(file, data)
	if err != nil {
		c.fault("unreadable", place{file, file, 0}, rebuild, "no PDF that can be read: %v", err)
		return c.out
	}
	for _, t := range list {
		if !slices.ContainsFunc(pages, func(texts []string) bool {
			whole, _, _ := strings.Cut(t.Title, ", piece ")
			return titled(texts, whole)
		}) {
			c.fault("template-page", place{t.Name, file, 0}, rebuild, "no page is that of %q", t.Title)
		}
	}
	return c.out
}

// titled reports whether texts have a title, in one or, where it is too long for a line, in several one after
// the other.
func titled(texts []string, title string) bool {
	solid := func(s string) string { return strings.Join(strings.Fields(s), "") }
	for i := range texts {
		rest, goesOn := solid(title), true
		for _, s := range texts[i:] {
			if rest, goesOn = strings.CutPrefix(rest, solid(strings.TrimSuffix(s, readback.Broken))); !goesOn || rest == "" {
				break
			}
		}
		if goesOn && rest == "" {
			return true
		}
	}
	return false
}
