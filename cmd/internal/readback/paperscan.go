package readback

import (
	"io"
	"iter"
	"math"
	"regexp"
	"slices"
	"strings"
)

// paperScan goes through the lines of a packet, without their title blocks. It has
// some lines about the one that is read and no more, so that a packet may have any number of pages.
type paperScan struct {
	r     *reading
	lines [][]pdfText
	pages []int // on which the lines stand
	at    int
	below int // lines in which the heads that were found last go on
	page  func() ([]pdfText, bool)
	read  int // how many pages
	close func()
}

// ahead are lines after this one that are there, if there are any more; maxPassed are those before
// it that are kept.
const ahead, maxPassed = 8, 4096

func (r *reading) paper(in io.Reader) *paperScan {
	s := &paperScan{r: r}
	s.page, s.close = iter.Pull(pdfPages(r, in, s.counted))
	return s
}

// forget lets lines go that were read, so that their places change.
func (s *paperScan) forget() {
	if s.at > maxPassed {
		s.lines, s.pages, s.at = slices.Clone(s.lines[s.at-1:]), slices.Clone(s.pages[s.at-1:]), 1
	}
}

// more reads pages until the lines ahead are there, and reports whether there is this one.
func (s *paperScan) more() bool {
	for s.at+ahead >= len(s.lines) {
		page, more := s.page()
		if !more {
			break
		}
		s.read++
		for _, line := range s.r.titleBlock(pdfLines(page), s.read) {
			s.lines, s.pages = append(s.lines, line), append(s.pages, s.read)
		}
	}
	return s.at < len(s.lines)
}

func (s *paperScan) cells() []string { return cells(s.lines[s.at]) }

// next is the line after this one, nil after the last.
func (s *paperScan) next() []pdfText {
	if s.more(); s.at+1 < len(s.lines) {
		return s.lines[s.at+1]
	}
	return nil
}

// begins reports whether this line has these heads, blank ones left out. A crowded table breaks them: what is left of
// them then stands in the lines below, in their order.
func (s *paperScan) begins(heads ...string) bool {
	list := s.cells()
	if len(list) != len(heads) {
		return false
	}
	s.below = 0
	var left []string
	for i, h := range heads {
		switch {
		case strings.HasPrefix(list[i], h):
		case strings.HasPrefix(h, list[i]+" "):
			left = append(left, h[len(list[i])+1:])
		default:
			return false
		}
	}
	for len(left) > 0 {
		s.below++
		s.more()
		if s.at+s.below >= len(s.lines) {
			return false
		}
		var still []string
		line := cells(s.lines[s.at+s.below])
		for _, h := range left {
			if len(line) == 0 || line[0] != h && !strings.HasPrefix(h, line[0]+" ") {
				return false
			}
			if line[0] != h {
				still = append(still, h[len(line[0])+1:])
			}
			line = line[1:]
		}
		if len(line) > 0 {
			return false
		}
		left = still
	}
	return true
}

// beginsAfter is begins for the line that is so many after this.
func (s *paperScan) beginsAfter(lines int, heads ...string) bool {
	s.at += lines
	found := s.at < len(s.lines) && s.begins(heads...)
	s.at -= lines
	return found
}

// table takes the rows, of so many cells, below the heads in this line, and tells the reading
// on which page they stand. Heads stand again on the next page; a cell that is broken goes
// on below itself.
func (s *paperScan) table(columns int) iter.Seq[[]string] {
	rows, pages := s.rows(columns)
	return func(yield func([]string) bool) {
		for i, row := range rows {
			if s.r.at = pages[i]; !yield(row) {
				return
			}
		}
	}
}

func (s *paperScan) rows(columns int) (rows [][]string, pages []int) {
	heads := s.cells()
	var last []pdfText
	for s.at += 1 + s.below; s.more(); s.at++ {
		line := s.lines[s.at]
		switch {
		case cutsBegin(line):
			return rows, pages
		case slices.Equal(cells(line), heads):
			s.at += s.below
		case len(rows) > 0 && s.closeBelow() && goesOn(line, last, rows[len(rows)-1]):
		case len(line) == columns:
			last = line
			rows, pages = append(rows, cells(line)), append(pages, s.pages[s.at])
		default:
			return rows, pages
		}
	}
	return rows, pages
}

// cellLeading is how far, in points, a line of a broken cell stands below the one before it: the next row, and a number
// in a picture beside a table, do not stand so.
const cellLeading = 12.8

// leadings are how far the lines of a paragraph stand below each other, in sizes of its letters: usually, and where a
// chapter is tightened. What stands otherwise is another paragraph.
var leadings = [...]float64{1.4, 1.3}

// leads reports whether a line is of the paragraph of the one above it.
func leads(above, line pdfText) bool {
	return above.size == line.size && slices.ContainsFunc(leadings[:], func(l float64) bool {
		return math.Abs(above.y-line.y-l*line.size) < 0.05
	})
}

// closeBelow reports whether this line stands below the one before it as lines of a cell do.
func (s *paperScan) closeBelow() bool {
	return s.pages[s.at] == s.pages[s.at-1] && math.Abs(s.lines[s.at-1][0].y-s.lines[s.at][0].y-cellLeading) < 0.1
}

// goesOn adds what is below cells, at the same distance from the left, to them; false where it belongs to none.
func goesOn(line, last []pdfText, row []string) bool {
	at := make([]int, len(line))
	for k, t := range line {
		at[k] = slices.IndexFunc(last, func(c pdfText) bool { return math.Abs(c.x-t.x) < 1 })
		if at[k] < 0 {
			return false
		}
	}
	for k, t := range line {
		row[at[k]] = joinLines(row[at[k]], t.text)
	}
	return true
}

// Broken is at the end of a line of paper that a word is broken at the end of: a soft hyphen, which no word has of its
// own.
const Broken = "\u00ad"

// joinLines are words with those of the next line.
func joinLines(text, next string) string {
	next = strings.TrimSpace(next)
	if part, cut := strings.CutSuffix(text, Broken); cut {
		return part + next
	}
	return text + " " + next
}

// paragraph is this line, of one cell, with those after it that are of the same paragraph on this page, and how many
// lines it has.
func (s *paperScan) paragraph() (text string, lines int) {
	text = s.cells()[0]
	for lines = 1; s.at+lines < len(s.lines) && s.pages[s.at+lines] == s.pages[s.at]; lines++ {
		before, line := s.lines[s.at+lines-1][0], s.lines[s.at+lines]
		if len(line) != 1 || math.Abs(before.x-line[0].x) > 0.1 || !leads(before, line[0]) {
			break
		}
		text = joinLines(text, line[0].text)
	}
	return text, lines
}

// sentence is this paragraph with the lines after it up to one that ends in a full stop.
func (s *paperScan) sentence() string {
	text, lines := s.paragraph()
	s.at += lines - 1
	for !strings.HasSuffix(text, ".") && len(s.next()) == 1 {
		s.at++
		text = joinLines(text, s.cells()[0])
	}
	return text
}

// paperStart is how a line begins that goes on with none before it.
var paperStart = regexp.MustCompile(`^(?:Cut a test piece|One setting for|Setting \d+:|\d+ passes, |One stack of|With the shop.s spacers|Nearest of|Notes: )`)

// together is the text of this line from a cell on, with the lines that go on with it at the
// same distance from the left.
func (s *paperScan) together(cell int) string { return s.joined(cell, joinLines) }

// ticked is the list whose entries, pieces with their number each, stand below each other from this line on behind
// boxes to tick.
func (s *paperScan) ticked() string {
	return s.joined(0, func(text, next string) string {
		if tickedPieces.MatchString(next) && !strings.HasSuffix(text, ",") {
			text += ","
		}
		return joinLines(text, next)
	})
}

// tickedPieces is how an entry of such a list begins.
var tickedPieces = regexp.MustCompile(`^\d+ x `)

// joined is [paperScan.together], lines joined as given.
func (s *paperScan) joined(cell int, join func(text, next string) string) string {
	x := s.lines[s.at][cell].x
	text := strings.TrimSpace(s.lines[s.at][cell].text)
	for {
		next := s.next()
		if len(next) != 1 || math.Abs(next[0].x-x) > 0.1 || paperStart.MatchString(next[0].text) {
			break
		}
		text = join(text, next[0].text)
		s.at++
	}
	return text
}
