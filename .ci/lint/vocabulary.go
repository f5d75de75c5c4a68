package main

import (
	"go/ast"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"golang.org/x/tools/go/packages"
)

// ukSpelling is in no text, comment or name: the project writes as the United States do. The
// glossary (help words) has the words of the United Kingdom beside them.
var ukSpelling = regexp.MustCompile(`(?i)colour|centre|centring|[a-z]metre|\bmetres?\b|plough|\bmitre|\bgrey|neighbour|labelled\b|` +
	`travell|cancelled|\bfibre|moulder|misspelt|judgement|recognis|optimis[ei]|aluminium|\bwhilst\b|` +
	`\b(?:to|after|in|out|up|down|back|for)wards\b`)

// retired are words that texts no longer say, and what they say now; a text is one with a
// space in it, since a single word may be a name that programs read.
var retired = map[string]string{
	"play": "clearance", "plays": "clearances", "slack": "clearance", "captured": "grooved in", "over-run": "overcut",
	"over-runs": "overcuts", "slid-in": "slide-in", "rebate": "rabbet", "rebates": "rabbets", "traveller": "traveler",
}

// retiredPhrases are the same of more than one word.
var retiredPhrases = map[string]string{
	"a skin": "an onion skin", "glue room": "glue space", "is no head": "is no column heading",
	"left in hand": "remainder", "four walls": "four parts of the box", "insides of the walls": "insides of sides, box front and back",
	"height of the walls": "height of sides, box front and back", "the box's front": "the box front",
	"are no setup": "cannot be cut",
}

// retiredHeadings are words that no column of a table or a CSV file is headed by: out of a
// sentence they say nothing.
var retiredHeadings = map[string]string{"gives": "piece", "left": "remainder, or wood left", "through": "through cut"}

// columnsOf are the functions of package present that make a column of a heading.
var columnsOf = map[string]bool{"Words": true, "Numbers": true, "In": true}

// headings are the headings of columns that a call has: of the first line of a CSV file, or of a
// column of a table.
func headings(call *ast.CallExpr) (list []*ast.BasicLit) {
	if len(call.Args) == 0 {
		return nil
	}
	name := ""
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	if line, is := call.Args[0].(*ast.CompositeLit); is && name == "Write" {
		for _, e := range line.Elts {
			if s, is := e.(*ast.BasicLit); is {
				list = append(list, s)
			}
		}
	}
	if s, is := call.Args[0].(*ast.BasicLit); is && columnsOf[name] {
		list = append(list, s)
	}
	return list
}

var aWord = regexp.MustCompile(`[\w-]+`)

// notOurs are files that say what others wrote, or have the words of both countries.
var notOurs = regexp.MustCompile(`^(\.git|testdata/golden|cmd/internal/licenses|go\.|\.ci/(tools\.|lint/vocabulary))|topics/words\.md$|export/step/units\.go$|\.png$`)

// texts are files that are read by people as they are, besides the strings of the program.
var texts = regexp.MustCompile(`^(README\.md|samples/.*\.yaml|cmd/internal/reference/topics/.*\.md|cmd/internal/page/assets/index\.html)$`)

// vocabulary finds words that are not those of the project.
func vocabulary(found places, loaded []*packages.Package) {
	for _, p := range loaded {
		for _, f := range p.Syntax {
			name := p.Fset.Position(f.Pos()).Filename
			if strings.HasSuffix(name, "_test.go") || strings.HasPrefix(p.PkgPath, "drawerwright/testdata") {
				continue
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if _, tag := n.(*ast.Field); tag {
					return false
				}
				if call, ok := n.(*ast.CallExpr); ok {
					for _, s := range headings(call) {
						headedByRetired(found, p.Fset.Position(s.Pos()), s.Value)
					}
				}
				if s, ok := n.(*ast.BasicLit); ok && s.Kind == token.STRING {
					if text, err := strconv.Unquote(s.Value); err == nil && strings.Contains(strings.TrimSpace(text), " ") {
						saysRetired(found, p.Fset.Position(s.Pos()), text)
					}
				}
				return true
			})
		}
	}
	filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || d.Name() == ".git") {
			return filepath.SkipDir
		}
		if d.Type()&fs.ModeType != 0 || notOurs.MatchString(path) {
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		for i, line := range strings.Split(string(data), "\n") {
			at := token.Position{Filename: path, Line: i + 1}
			if uk := ukSpelling.FindString(strings.ReplaceAll(line, "labelledby", "")); uk != "" {
				found.add("uk-spelling", at, uk)
			}
			if texts.MatchString(path) {
				saysRetired(found, at, line)
			}
		}
		return nil
	})
}

// headedByRetired finds a heading of a retired word: a single word too, other than in texts.
func headedByRetired(found places, at token.Position, quoted string) {
	heading, err := strconv.Unquote(quoted)
	if err != nil {
		return
	}
	for _, w := range regexp.MustCompile(`[a-z-]+`).FindAllString(heading, -1) {
		now := retiredHeadings[w]
		if now == "" || w != heading {
			now = retired[w]
		}
		if now != "" {
			found.add("retired-words", at, "the heading "+w+" is "+now)
		}
	}
}

// saysRetired finds what a text no longer says.
func saysRetired(found places, at token.Position, text string) {
	lower := strings.ToLower(text)
	for _, w := range aWord.FindAllString(lower, -1) {
		if now := retired[w]; now != "" {
			found.add("retired-words", at, w+" is "+now)
		}
	}
	for phrase, now := range retiredPhrases {
		if strings.Contains(lower, phrase) {
			found.add("retired-words", at, phrase+" is "+now)
		}
	}
}
