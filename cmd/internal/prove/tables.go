package prove

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// table is a list for programs that the report has too: its columns of words and of
// numbers, and its lines by these.
type table struct {
	file           string
	words, numbers []string
	lines          []line
	// blank are numbers that may be left out where the report has none.
	blank []string
	unit  geom.Unit // of lengths
}

// line is one of a table, in the order of its columns. Name is what it is about.
type line struct {
	name    string
	words   []string
	numbers []float64 // lengths in the unit of the table
	lacks   bool      // the numbers that may be left out, whatever the report has
}

// tableReader finds the lines of the report among the rows of a table.
type tableReader struct {
	*checking
	table
	by   map[string][]int // lines by their words
	used []bool           // lines that a row was found for
}

// tableCheck holds a table against the report, row by row: each line of the report stands
// in it once, and nothing else.
func (w *Worker) tableCheck(t table, read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedTable, Name: t.file,
		Faults: []record.Fault{}}}
	data, ok := c.file(t.file, read)
	if !ok {
		return c.out
	}
	by := make(map[string][]int, len(t.lines))
	for i, l := range t.lines {
		key := strings.Join(l.words, "\x00")
		by[key] = append(by[key], i)
	}
	r := tableReader{checking: &c, table: t, by: by, used: make([]bool, len(t.lines))}
	whole := c.rows(t.file, data, append(t.words, t.numbers...), r.row)
	for i, l := range t.lines {
		if whole && !r.used[i] {
			c.fault("table-row", place{l.name, t.file, 0}, rebuild, "%s does not stand in the table: %s", l.name,
				strings.Join(l.words, ", "))
		}
	}
	return c.out
}

// rows gives the cells of some columns, row by row with its line. It is false where the
// table cannot be read.
func (c *checking) rows(file string, data []byte, columns []string, each func(at int, cells []string)) bool {
	r := csv.NewReader(bytes.NewReader(data))
	r.ReuseRecord = true
	heads, err := r.Read()
	if err != nil {
		c.fault("unreadable", place{file, file, 1}, rebuild, "no table that can be read: %v", err)
		return false
	}
	column := make(map[string]int)
	for i, h := range heads {
		column[h] = i
	}
	for _, n := range columns {
		if _, there := column[n]; !there {
			c.fault("table-column", place{file, file, 1}, rebuild, "the column %s is missing", n)
			return false
		}
	}
	cells := make([]string, len(columns))
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return true
		}
		if err != nil {
			at := 0 // a row that cannot be read may have no field whose place could be asked for
			if p := (*csv.ParseError)(nil); errors.As(err, &p) {
				at = p.StartLine
			}
			c.fault("unreadable", place{file, file, at}, rebuild, "a row cannot be read: %v", err)
			return false
		}
		for i, n := range columns {
			cells[i] = row[column[n]]
		}
		at, _ := r.FieldPos(0)
		each(at, cells)
	}
}

// row finds the line of the report that a row is, of those with its words, and compares
// its numbers.
func (r *tableReader) row(at int, cells []string) {
	words, numbers := cells[:len(r.words)], cells[len(r.words):]
	best, wrong, said := -1, math.MaxInt, ""
	for _, i := range r.by[strings.Join(words, "\x00")] {
		if r.used[i] {
			continue
		}
		n, text := 0, ""
		for k, want := range r.lines[i].numbers {
			if numbers[k] == "" && slices.Contains(r.blank, r.numbers[k]) && (want == 0 || r.lines[i].lacks) {
				continue
			}
			v, err := strconv.ParseFloat(numbers[k], 64)
			if err != nil || math.Abs(v-want)*r.table.unit.MM() > printed {
				n++
				text += fmt.Sprintf("; %s is %s, the report has %s", r.numbers[k], numbers[k],
					strconv.FormatFloat(want, 'f', -1, 64))
			}
		}
		if n < wrong {
			best, wrong, said = i, n, text
		}
		if n == 0 {
			break
		}
	}
	switch {
	case best < 0:
		r.fault("table-row", place{r.table.file, r.table.file, at}, rebuild, "the report has no such row: %s", strings.Join(words, ", "))
		return
	case wrong > 0:
		r.fault("table-number", place{r.lines[best].name, r.table.file, at}, rebuild, "%s%s", r.lines[best].name, said)
	}
	r.used[best] = true
}

// printed is what the numbers of a table are rounded to at most, half of 0.01 mm, with
// something to spare.
const printed = 0.006
