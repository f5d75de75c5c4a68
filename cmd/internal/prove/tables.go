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

	"drawerwright/cmd/internal/report"
)

// line is one of a table that the report has too: words that name it, and its numbers,
// each by its column.
type line struct {
	words   map[string]string
	numbers map[string]float64
}

// tableCheck holds a table against the report, row by row: each line of the report stands
// in it once, and nothing else.
func (w *Worker) tableCheck(file string, lines []line, other map[string]string, read Read) report.Checked {
	c := checking{Prover: w.Prover, out: report.Checked{What: report.CheckedTable, Name: file, Faults: []report.Fault{}}}
	data, ok := c.file(file, read)
	if !ok {
		return c.out
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.ReuseRecord = true
	heads, err := r.Read()
	if err != nil {
		c.fault("unreadable", file, file, 1, rebuild, "no table that can be read: %v", err)
		return c.out
	}
	column := make(map[string]int)
	for i, h := range heads {
		column[h] = i
	}
	for _, l := range lines[:min(1, len(lines))] {
		for _, names := range [][]string{keysOf(l.words), keysOf(l.numbers)} {
			for _, n := range names {
				if _, there := column[n]; !there {
					c.fault("table-column", file, file, 1, rebuild, "the column %s is missing", n)
					return c.out
				}
			}
		}
	}
	used := make([]bool, len(lines))
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		at, _ := r.FieldPos(0)
		if err != nil {
			var p *csv.ParseError
			if errors.As(err, &p) {
				at = p.Line
			}
			c.fault("unreadable", file, file, at, rebuild, "a row cannot be read: %v", err)
			return c.out
		}
		if !is(row, column, other) { // of something that is not compared
			continue
		}
		c.row(file, at, row, column, lines, used)
	}
	for i, l := range lines {
		if !used[i] {
			c.fault("table-row", l.name(), file, 0, rebuild, "%s does not stand in the table", l.name())
		}
	}
	return c.out
}

// row finds the line of the report that a row is, and compares its numbers.
func (c *checking) row(file string, at int, row []string, column map[string]int, lines []line, used []bool) {
	best, wrong, said := -1, math.MaxInt, ""
	for i, l := range lines {
		if used[i] || !is(row, column, l.words) {
			continue
		}
		n, text := 0, ""
		for _, name := range keysOf(l.numbers) {
			v, err := strconv.ParseFloat(row[column[name]], 64)
			if row[column[name]] == "" && name == "slide_line" { // of a slide without a height of its own
				continue
			}
			if err != nil || math.Abs(c.mm(v-l.numbers[name])) > printed {
				n++
				text += fmt.Sprintf("; %s is %s, the report has %s", name, row[column[name]], strconv.FormatFloat(l.numbers[name], 'f', -1, 64))
			}
		}
		if n < wrong {
			best, wrong, said = i, n, text
		}
	}
	switch {
	case best < 0:
		c.fault("table-row", file, file, at, rebuild, "the report has no such row: %s", strings.Join(row[:min(4, len(row))], ", "))
		return
	case wrong > 0:
		c.fault("table-number", lines[best].name(), file, at, rebuild, "%s%s", lines[best].name(), said)
	}
	used[best] = true
}

// printed is what the numbers of a table are rounded to at most, half of 0.01 mm, with
// something to spare.
const printed = 0.006

// is reports whether a row has these words.
func is(row []string, column map[string]int, words map[string]string) bool {
	for name, w := range words {
		if row[column[name]] != w {
			return false
		}
	}
	return true
}

// name is what the line is about.
func (l line) name() string {
	for _, k := range []string{"part", "name", "drawer"} {
		if w := l.words[k]; w != "" {
			return w
		}
	}
	return ""
}

func keysOf[V any](m map[string]V) []string {
	var list []string
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}

// partLines are those of parts.csv.
func (p *Prover) partLines() (list []line) {
	for _, q := range p.report.Parts {
		list = append(list, line{map[string]string{"part": q.Name, "drawer": q.Drawer, "role": q.Role, "stock": q.Stock, "inside_file": q.Files.Inside, "outside_file": q.Files.Outside},
			map[string]float64{"quantity": float64(q.Quantity), "length": q.Length, "width": q.Width, "thickness": q.Thickness}})
	}
	return list
}

// slideLines are those of cabinet/slide-lines.csv.
func (p *Prover) slideLines() (list []line) {
	for _, k := range p.report.Cabinets {
		for _, r := range k.Rows {
			list = append(list, line{map[string]string{"opening": k.Name, "drawer": r.Drawer},
				map[string]float64{"slide_line": r.Line, "box_bottom": r.BoxBottom, "front_bottom": r.FrontBottom, "front_height": r.FrontHeight, "shim": k.Shim}})
		}
	}
	return list
}

// placeLines are the parts of sheets/layout.csv.
func (p *Prover) placeLines() (list []line) {
	for _, k := range p.report.Sheets {
		for _, s := range k.Sheets {
			for _, q := range s.Placed {
				turned := "no"
				if q.Turned {
					turned = "yes"
				}
				list = append(list, line{map[string]string{"stock": k.Stock, "sheet": fmt.Sprint(s.Number), "kind": "part", "name": q.Part, "turned": turned},
					map[string]float64{"x": q.X, "y": q.Y, "length": q.Length, "width": q.Width, "alike": float64(s.Count)}})
			}
		}
	}
	return list
}
