// Package reference explains the program in plain words: every entry of the job file, from the
// tables that its reader follows; topics; every field of report.json, from the tables beside its
// types. Each is a [Doc], printed for a terminal or as Markdown.
package reference

import (
	"strings"
	"unicode/utf8"
)

// Columns is the width of the narrowest terminal that texts are made for.
const Columns = 80

// Doc is a text of blocks, in order.
type Doc []Block

// Block is a title, a paragraph, an item of a list, or lines as they are.
type Block struct {
	Kind BlockKind
	Term string // of an item: what the text explains; may be empty
	Text string // of code with its line ends
}

// BlockKind is what a block is.
type BlockKind int

const (
	Title BlockKind = iota
	Heading
	Paragraph
	Item
	Code    // lines of a job file
	Command // lines typed at a terminal
)

// Text is a document for a terminal of [Columns]. Only lines as they are may be wider.
func (d Doc) Text() string {
	var b strings.Builder
	for i, block := range d {
		if i > 0 && !(block.Kind == Item && d[i-1].Kind == Item) {
			b.WriteByte('\n')
		}
		switch block.Kind {
		case Title, Heading:
			b.WriteString(bare(block.Text) + "\n")
		case Paragraph:
			b.WriteString(wrapped(bare(block.Text), "", ""))
		case Item:
			b.WriteString(d.item(i))
		case Code, Command:
			for _, line := range strings.SplitAfter(strings.TrimSuffix(block.Text, "\n"), "\n") {
				b.WriteString("  " + line)
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}

// widestTerm is the widest column of terms; a longer term has a line to itself.
const widestTerm = 20

// item prints an item, its text beside those of its list.
func (d Doc) item(i int) string {
	from, to := i, i
	for from > 0 && d[from-1].Kind == Item {
		from--
	}
	for to < len(d) && d[to].Kind == Item {
		to++
	}
	column := 0
	for _, one := range d[from:to] {
		column = max(column, min(utf8.RuneCountInString(one.Term), widestTerm))
	}
	if column == 0 {
		return wrapped(bare(d[i].Text), "- ", "  ")
	}
	column += len("    ") // two before the term, two after it
	term, indent := "  "+bare(d[i].Term), strings.Repeat(" ", column)
	if utf8.RuneCountInString(term) > column-2 {
		return term + "\n" + wrapped(bare(d[i].Text), indent, indent)
	}
	return wrapped(bare(d[i].Text), term+strings.Repeat(" ", column-utf8.RuneCountInString(term)), indent)
}

// bare is text for a terminal: without asterisks; what is in backquotes keeps them, as in the
// program's messages.
func bare(text string) string { return strings.ReplaceAll(text, "**", "") }

// wrapped breaks text into lines; the first begins with first, the others with indent.
func wrapped(text, first, indent string) string {
	var b strings.Builder
	line, empty := first, true
	for _, word := range strings.Fields(text) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > Columns {
			b.WriteString(strings.TrimRight(line, " ") + "\n")
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	return b.String() + strings.TrimRight(line, " ") + "\n"
}

// Markdown is a document with its title at a level: 1 is the first.
func (d Doc) Markdown(level int) string {
	var b strings.Builder
	for i, block := range d {
		if i > 0 && !(block.Kind == Item && d[i-1].Kind == Item) {
			b.WriteByte('\n')
		}
		switch block.Kind {
		case Title:
			b.WriteString(strings.Repeat("#", level) + " " + block.Text + "\n")
		case Heading:
			b.WriteString(strings.Repeat("#", level+1) + " " + block.Text + "\n")
		case Paragraph:
			b.WriteString(block.Text + "\n")
		case Item:
			term := ""
			if block.Term != "" {
				term = "**" + block.Term + "**: "
			}
			b.WriteString("- " + term + block.Text + "\n")
		case Code:
			b.WriteString("```yaml\n" + block.Text + "```\n")
		case Command:
			b.WriteString("```\n" + block.Text + "```\n")
		}
	}
	return b.String()
}
