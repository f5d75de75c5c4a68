package reference

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/record"
)

// screen is how many lines of a terminal are seen at once; a topic has at most two of them.
const screen = 50

// fits checks the width of a text, and that it has no more than so many lines.
func fits(t *testing.T, name, text string, lines int) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if n := utf8.RuneCountInString(line); n > Columns {
			t.Errorf("%s has a line of %d columns: %s", name, n, line)
		}
	}
	if n := strings.Count(text, "\n"); n > lines {
		t.Errorf("%s has %d lines, more than %d", name, n, lines)
	}
}

// TestTextsFit: all that is printed for a terminal is as wide as the narrowest one; the tree of
// entries is one screen, a topic two, but for the list of messages.
func TestTextsFit(t *testing.T) {
	fits(t, "the tree", Tree(), screen)
	for _, name := range Topics {
		lines := 2 * screen
		if name == "messages" { // it is looked up in
			lines = len(messages()) * 10
		}
		fits(t, name, Topic(name).Text(), lines)
	}
	for _, e := range job.Entries() {
		fits(t, e.Path, Entry(e).Text(), screen)
	}
	for _, path := range Levels() {
		fits(t, path, Level(path).Text(), 2*screen)
	}
	entries, err := job.Explained("width")
	if err != nil || len(entries) < 3 {
		t.Fatalf("%d entries, %v", len(entries), err)
	}
	fits(t, "a choice", Choose("width", entries).Text(), screen)
}

// TestTreeNamesEveryEntry of the job file, below the section that it stands in.
func TestTreeNamesEveryEntry(t *testing.T) {
	words := strings.Fields(strings.ReplaceAll(Tree(), "*", ""))
	for _, e := range job.Entries() {
		steps := strings.Split(e.Path, ".")
		if !slices.Contains(words, steps[len(steps)-1]) {
			t.Errorf("the tree has no %s", e.Path)
		}
	}
}

// TestEveryEntryIsExplained: each has its meaning, its type, what holds without it, why a
// default is what it is, and an example.
func TestEveryEntryIsExplained(t *testing.T) {
	for _, e := range job.Entries() {
		switch {
		case len(e.Doc) < 9 || strings.HasSuffix(e.Doc, "."):
			t.Errorf("%s means %q", e.Path, e.Doc)
		case e.Type == "" || strings.HasSuffix(e.Type, " "):
			t.Errorf("%s has the type %q", e.Path, e.Type)
		case !e.Required && e.Default == "" && e.Without == "" && !strings.HasPrefix(e.Path, "drawers.outside"):
			t.Errorf("%s does not say what holds without it", e.Path)
		case e.Default != "" && len(e.Why) < 10:
			t.Errorf("%s does not say why it is %s", e.Path, e.Default)
		case !strings.Contains(e.Example, e.Path[strings.LastIndexByte(e.Path, '.')+1:]+":"):
			t.Errorf("%s has the example %q", e.Path, e.Example)
		}
		text := Entry(e).Text()
		for _, must := range []string{e.Path, strings.Fields(e.Type)[0], e.Default} {
			if !strings.Contains(text, must) {
				t.Errorf("%s is printed without %q", e.Path, must)
			}
		}
	}
}

// TestExamplesOfTopicsBuild: each piece of a job file in a topic is taken by a job that builds.
func TestExamplesOfTopicsBuild(t *testing.T) {
	examples := 0
	for _, name := range Topics {
		for _, b := range Topic(name) {
			if b.Kind == Code {
				examples++
				if why := builds(b.Text); why != "" {
					t.Errorf("%s:\n%s%s", name, b.Text, why)
				}
			}
		}
	}
	if examples < 9 {
		t.Errorf("%d examples", examples)
	}
}

var quoted = regexp.MustCompile("`([^`]+)`")

// TestTopicsNameWhatThereIs: what stands in backquotes is an entry of the job file, alone or
// with a word that it takes, such a word, a field of the report, a command, a flag, a file, a folder
// or the name of a layer.
func TestTopicsNameWhatThereIs(t *testing.T) {
	words, written := make(map[string]bool), make(map[string]bool)
	for _, file := range filesOfSamples(t) {
		written[file], written[path.Base(file)] = true, true
		for dir := path.Dir(file); dir != "."; dir = path.Dir(dir) {
			written[dir+"/"] = true
		}
	}
	for _, e := range job.Entries() {
		for _, w := range e.Words {
			words[w] = true
		}
	}
	for _, s := range record.Explained() {
		for _, f := range s.Fields {
			words[f.Name] = true
		}
	}
	known := func(said string) bool {
		key, value, pair := strings.Cut(said, ": ")
		_, err := job.Explained(key)
		switch {
		case strings.HasPrefix(said, "drawerwright "), strings.HasPrefix(said, "--"), strings.HasPrefix(said, "DADO_"),
			said == "as-drawn", written[said]:
			return true
		case pair:
			return err == nil && (words[value] || strings.ContainsAny(value, "0123456789"))
		}
		return err == nil || words[said]
	}
	for _, name := range Topics {
		text, err := texts.ReadFile("topics/" + name + ".md")
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range quoted.FindAllStringSubmatch(string(text), -1) {
			if !known(m[1]) {
				t.Errorf("%s names `%s`, which is nothing of the program", name, m[1])
			}
		}
	}
	if known("bottom-fitt") || known("joint: glue") || known("part.csv") {
		t.Error("anything is taken for a name")
	}
}

// filesOfSamples are all files that builds of the samples write.
func filesOfSamples(t *testing.T) (files []string) {
	t.Helper()
	lists, err := filepath.Glob("../../../testdata/golden/folders/*.txt")
	if err != nil || len(lists) < 10 {
		t.Fatalf("%d lists, %v", len(lists), err)
	}
	for _, list := range lists {
		text, err := os.ReadFile(list)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, strings.Fields(string(text))...)
	}
	return files
}

// TestEveryFileIsExplained: what a build writes stands in the topic of its folder, alone or
// with the folder that it is in; a table by its name.
func TestEveryFileIsExplained(t *testing.T) {
	text, err := texts.ReadFile("topics/folder.md")
	if err != nil {
		t.Fatal(err)
	}
	said := make(map[string]bool)
	for _, m := range quoted.FindAllStringSubmatch(string(text), -1) {
		said[m[1]] = true
	}
	for _, file := range filesOfSamples(t) {
		folder, inside, _ := strings.Cut(file, "/")
		below, _, _ := strings.Cut(inside, "/")
		inFolder := path.Ext(file) != ".csv" && (said[folder+"/"] || said[folder+"/"+below+"/"])
		if !said[file] && !said[path.Base(file)] && !inFolder {
			t.Errorf("help folder does not explain %s", file)
		}
	}
}

// TestTopicsExplainEveryWord: each corner, fastening of the bottom, built-in slide, operation
// and verdict has an item in its topic.
func TestTopicsExplainEveryWord(t *testing.T) {
	for path, topic := range map[string]string{"drawers.joint": "joints", "joinery.bottom-fit": "joints", "slides.kind": "slides"} {
		entries, err := job.Explained(path)
		if err != nil || len(entries[0].Words) < 5 {
			t.Fatalf("%s: %v, %v", path, entries, err)
		}
		for _, word := range entries[0].Words {
			if !slices.ContainsFunc(Topic(topic), func(b Block) bool { return b.Kind == Item && b.Term == word }) {
				t.Errorf("%s does not explain %s", topic, word)
			}
		}
	}
}

// TestGlossary: the words of the trade are there, in alphabetical order, each with a meaning.
func TestGlossary(t *testing.T) {
	var terms []string
	for _, b := range Topic("words") {
		if b.Kind == Item {
			term, _, _ := strings.Cut(b.Term, " (")
			terms = append(terms, term)
			if len(b.Text) < 10 {
				t.Errorf("%s: %q", b.Term, b.Text)
			}
		}
	}
	if !slices.IsSortedFunc(terms, func(a, b string) int {
		return strings.Compare(strings.ToLower(a), strings.ToLower(b))
	}) {
		t.Errorf("not in order: %q", terms)
	}
	for _, must := range strings.Split("box front, drawer front, side, dado, rabbet, grooved-in bottom, "+
		"slide-in bottom, clearance, cutter height, fence distance, test piece, template, story stick, "+
		"throat plate, blank, strip, remainder, offcut, yield, rip, crosscut, clean-up cut, governing opening, "+
		"track saw", ", ") {
		if !slices.Contains(terms, must) {
			t.Errorf("no word %s", must)
		}
	}
}

// TestMarkdownHasEverything: the whole reference has each entry, topic and level of the report.
func TestMarkdownHasEverything(t *testing.T) {
	text := Markdown(Doc{{Kind: Title, Text: "Commands"}})
	for _, e := range job.Entries() {
		if !strings.Contains(text, "\n### "+e.Path+"\n") {
			t.Errorf("no entry %s", e.Path)
		}
	}
	for _, path := range Levels() {
		if !strings.Contains(text, "\n### report.json: "+path+"\n") {
			t.Errorf("no level %s", path)
		}
	}
	for _, name := range Topics {
		if !strings.Contains(text, "\n## "+Topic(name)[0].Text+"\n") {
			t.Errorf("no topic %s", name)
		}
	}
	if strings.Contains(text, "{{") {
		t.Error("a list is missing")
	}
}
