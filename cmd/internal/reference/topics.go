package reference

import (
	"embed"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/layer"
)

// Topics are the names of the texts, in the order in which they are read.
var Topics = []string{
	"job", "joints", "dovetails", "sizes", "wood", "slides", "fit", "test-cut", "packet", "router", "layers", "sheets",
	"templates", "folder", "page", "proof", "report", "messages", "safety", "words",
}

//go:embed topics
var texts embed.FS

// Topic is the text of that name; empty where there is none.
func Topic(name string) Doc {
	text, err := texts.ReadFile("topics/" + name + ".md")
	if !slices.Contains(Topics, name) || err != nil {
		return nil
	}
	return parsed(string(text))
}

// About is the first line of a topic, without its name.
func About(topic string) string {
	_, about, _ := strings.Cut(Topic(topic)[0].Text, ": ")
	return about
}

// Mentioned says which topics and entries tell something of a word that is no topic; nil where
// none does.
func Mentioned(word string) Doc {
	whole := regexp.MustCompile(`(?i)(^|[^\pL\d-])` + regexp.QuoteMeta(word) + `($|[^\pL\d-])`)
	var d Doc
	for _, t := range Topics {
		if whole.MatchString(Topic(t).Text()) {
			d = append(d, Block{Kind: Item, Term: t, Text: About(t) + "."})
		}
	}
	entries, err := job.Explained(word)
	if err == nil {
		d = append(d, Block{Kind: Paragraph, Text: fmt.Sprintf("Of the job file: `drawerwright explain %s` (%s).", word,
			words.Count(len(entries), "entry", "entries"))})
	}
	if len(d) == 0 {
		return nil
	}
	head := fmt.Sprintf("No topic is called %s. These say something of it, by `drawerwright help` and the name:", word)
	return append(Doc{{Kind: Paragraph, Text: head}}, d...)
}

// lists are what a text has in the place of {{name}}: from the tables of the program.
var lists = map[string]func() Doc{
	"operations": func() Doc { return meanings(layer.Operations) },
	"idle":       func() Doc { return meanings(layer.Idle) },
	"proof":      func() Doc { return wordItems(record.ProofVerdicts) },
	"verdicts":   func() Doc { return wordItems(record.FitVerdicts) },
	"messages":   messageItems,
	"report":     func() Doc { return fields(record.Explained()[0]) },
}

func meanings(list []layer.Meaning) (d Doc) {
	for _, m := range list {
		d = append(d, Block{Kind: Item, Term: strings.ToUpper(m.Word), Text: m.Text + "."})
	}
	return d
}

func wordItems(list []record.Word) (d Doc) {
	for _, w := range list {
		d = append(d, Block{Kind: Item, Term: w.Word, Text: w.Meaning + "."})
	}
	return d
}

// parsed reads a text: a title after #, paragraphs, items after a hyphen with their term in
// backquotes or asterisks before a colon, and lines of a job file that are indented.
func parsed(text string) (d Doc) {
	for _, part := range strings.Split(strings.TrimSpace(text), "\n\n") {
		switch name, list := strings.CutPrefix(part, "{{"); {
		case list:
			d = append(d, lists[strings.TrimSuffix(name, "}}")]()...)
		case strings.HasPrefix(part, "# "):
			d = append(d, Block{Kind: Title, Text: part[2:]})
		case strings.HasPrefix(part, "- "):
			for _, line := range strings.Split(part, "\n") {
				term, text := termed(line[2:])
				d = append(d, Block{Kind: Item, Term: term, Text: text})
			}
		case strings.HasPrefix(part, "    "):
			d = append(d, Block{Kind: Code, Text: strings.ReplaceAll("\n"+part, "\n    ", "\n")[1:] + "\n"})
		default:
			d = append(d, Block{Kind: Paragraph, Text: part})
		}
	}
	return d
}

// termed takes the term before the colon off an item; there is none where the item does not
// begin with a mark.
func termed(item string) (term, text string) {
	if term, text, ok := strings.Cut(item, ": "); ok && strings.ContainsAny(item[:1], "`*") {
		return strings.NewReplacer("`", "", "*", "").Replace(term), text
	}
	return "", item
}
