package readback

import (
	"iter"
	"slices"
	"strings"
)

// printedTable is a table as the program prints it: a line of heads, and rows, in columns
// two or more spaces apart.
type printedTable struct {
	head []string
	rows [][]string
	line int   // of its heads
	on   []int // the line of each, the heads first
}

// each gives the rows, and tells the reading where they stand.
func (t printedTable) each(r *reading) iter.Seq[[]string] {
	return func(yield func([]string) bool) {
		for i, row := range t.rows {
			if r.at = t.on[1+i]; !yield(row) {
				return
			}
		}
	}
}

// at is the place of the first column whose head begins so; -1 without.
func (t printedTable) at(head string) int {
	return slices.IndexFunc(t.head, func(h string) bool { return strings.HasPrefix(h, head) })
}

// get is the cell of a row below a head.
func (t printedTable) get(r *reading, row []string, head string) string {
	i := t.at(head)
	if i < 0 || i >= len(row) {
		r.fail("no column %q among %q", head, t.head)
	}
	return row[i]
}

// either is the first of some heads that the table has; empty without one.
func (t printedTable) either(heads ...string) string {
	for _, h := range heads {
		if t.has(h) {
			return h
		}
	}
	return ""
}

// has reports whether a table has a column.
func (t printedTable) has(head string) bool { return t.at(head) >= 0 }

// tableOf reads a table whose lines are given, the first of them its heads. Columns are
// apart where every line has two blanks.
func tableOf(lines []string) (t printedTable) {
	wide := 0
	cells := make([][]rune, len(lines))
	for i, l := range lines {
		cells[i] = []rune(l)
		wide = max(wide, len(cells[i]))
	}
	blank := func(x int) bool {
		for _, c := range cells {
			if x < len(c) && c[x] != ' ' {
				return false
			}
		}
		return true
	}
	var spans [][2]int
	for x := 0; x < wide; {
		if blank(x) {
			x++
			continue
		}
		from := x
		for x < wide && !(blank(x) && blank(x+1)) {
			x++
		}
		spans = append(spans, [2]int{from, x})
	}
	for i, c := range cells {
		row := make([]string, len(spans))
		for k, s := range spans {
			if s[0] < len(c) {
				row[k] = strings.TrimSpace(string(c[s[0]:min(s[1], len(c))]))
			}
		}
		if i == 0 {
			t.head = row
		} else {
			t.rows = append(t.rows, row)
		}
	}
	return t
}

// scanner goes through the lines of a text.
type scanner struct {
	r     *reading
	lines []string
	from  []int // on which line of the text each begins
	at    int
}

// folded is what a line of a file begins with that goes on with the one before.
const folded = "        "

// scan reads a text by lines, those that were folded as they were.
func (r *reading) scan(text string) *scanner {
	s := &scanner{r: r}
	for i, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if more, goesOn := strings.CutPrefix(line, folded); goesOn && r.out == PartsTxt && len(s.lines) > 0 {
			s.lines[len(s.lines)-1] += " " + more
			continue
		}
		s.lines, s.from = append(s.lines, line), append(s.from, i+1)
	}
	return s
}

func (s *scanner) more() bool { return s.at < len(s.lines) }

// taken is how much of the lines a reader was for.
type taken int

const (
	notTaken taken = iota
	lineTaken
	tableTaken // the line with those after it, up to the one that is read next
)

// line is the one that is read.
func (s *scanner) line() string {
	s.r.at = s.from[s.at]
	return s.lines[s.at]
}

// table takes the table that begins at this line, up to an empty one or one that ends it.
func (s *scanner) table(ends ...string) printedTable {
	return s.tableUntil(func(line string) bool {
		return slices.ContainsFunc(ends, func(e string) bool { return strings.HasPrefix(line, e) })
	})
}

func (s *scanner) tableUntil(ends func(line string) bool) printedTable {
	from := s.at
	if !s.more() {
		s.r.fail("a table is cut off")
	}
	for s.more() && strings.TrimSpace(s.line()) != "" && (s.at == from || !ends(s.line())) {
		s.at++
	}
	t := tableOf(s.lines[from:s.at])
	t.line, t.on = s.from[from], s.from[from:s.at]
	return t
}

// cutLast parts a text at the last place of a separator.
func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}
