package present

import (
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawerwright/geom"
)

// gutter is between two columns.
const gutter = "  "

// longest is the longest word that a column keeps whole when there is little room.
const longest = 20

// badMark stands before what is not right where a screen may have no color.
const badMark = "! "

// Print writes the table in columns two spaces apart, below their titles where any column
// has one, each line after an indent. Where a text has a width, cells are wrapped within
// their columns so that no line is longer. Where first cells would be hard to read then, they
// stand above their rows; and where there is no room for the others either, each row is a list
// of titles and cells.
func (t Table) Print(out *Printed, indent string) {
	if out.Width > 0 {
		t = t.withoutEmpty()
	}
	rows := t.marked(out.Width > 0)
	most := -1 // any
	if out.Width > 0 {
		most = max(0, out.Width-len(indent))
	}
	width, fits := t.widths(rows, most)
	if fits && !t.tall(rows, width) {
		for _, row := range rows {
			t.row(out, indent, row, width)
		}
		return
	}
	if at := t.paths(); at > 0 && out.Width > 0 {
		t.pathed(out, indent, at)
		return
	}
	if len(t.Columns) > 2 {
		rest := t.withoutFirst()
		below := rest.marked(true)
		if width, fits = rest.widths(below, most-len(gutter)); fits {
			without := len(rows) - len(below) // 1 where only the first column has a title
			for i, row := range rows {
				if first := row[0]; first.Text != "" {
					out.WriteString(indent + out.level(first.Level, first.Text) + "\n")
				}
				if i >= without {
					rest.row(out, indent+gutter, below[i-without], width)
				}
			}
			return
		}
	}
	t.list(out, indent)
}

// paths is the last column, where it has paths of files, which are not to be broken; 0 for none.
func (t Table) paths() int {
	last := len(t.Columns) - 1
	if slices.ContainsFunc(t.Rows, func(row []Cell) bool { return isPath(row[last].Text) }) {
		return last
	}
	return 0
}

// isPath reports whether a text is the path of a file.
func isPath(s string) bool { return path.Ext(s) != "" && strings.Contains(s, "/") }

// pathed writes the path of each row on a line below the others.
func (t Table) pathed(out *Printed, indent string, at int) {
	rest := Table{Columns: t.Columns[:at], UnitOnce: t.UnitOnce}
	for _, row := range t.Rows {
		rest.Rows = append(rest.Rows, row[:at])
	}
	rows := rest.marked(true)
	width, _ := rest.widths(rows, out.Width-len(indent))
	for i, row := range rows {
		rest.row(out, indent, row, width)
		if k := i - (len(rows) - len(t.Rows)); k >= 0 {
			out.WriteString(indent + gutter + t.Rows[k][at].Text + "\n")
		}
	}
}

// marked are the cells below their titles, where there are any, with marks for a screen.
func (t Table) marked(screen bool) (rows [][]Cell) {
	titles := t.Titles()
	if strings.Join(titles, "") != "" {
		row := make([]Cell, len(titles))
		for i, title := range titles {
			row[i].Text = title
		}
		rows = append(rows, row)
	}
	for _, row := range t.Rows {
		row = slices.Clone(row)
		for k := range row {
			if screen && row[k].Level == Bad {
				row[k].Text = badMark + row[k].Text
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// withoutEmpty is the table without a last column that says nothing.
func (t Table) withoutEmpty() Table {
	last := len(t.Columns) - 1
	said := func(row []Cell) bool { return len(row) > last && row[last].Text != "" }
	if last < 1 || t.Titles()[last] != "" || slices.ContainsFunc(t.Rows, said) {
		return t
	}
	out := Table{Columns: t.Columns[:last], UnitOnce: t.UnitOnce}
	for _, row := range t.Rows {
		out.Rows = append(out.Rows, row[:min(last, len(row))])
	}
	return out
}

// withoutFirst is the table without its first column.
func (t Table) withoutFirst() Table {
	rest := Table{Columns: t.Columns[1:], UnitOnce: t.UnitOnce}
	for _, row := range t.Rows {
		rest.Rows = append(rest.Rows, row[1:])
	}
	return rest
}

// tallest is on how many lines the first cell of a row is read without losing its row.
const tallest = 2

// tall reports whether first cells would stand on more lines than that.
func (t Table) tall(rows [][]Cell, width []int) bool {
	return len(t.Columns) > 2 && slices.ContainsFunc(rows, func(row []Cell) bool {
		return len(folded(row[0].Text, width[0])) > tallest
	})
}

// widths are those of the columns: as wide as the longest cell, or, where that is more than a
// width that is not below 0, narrower: titles first, for they are wrapped once, then the widest
// columns of words. fits is false where the words are too long for that.
func (t Table) widths(rows [][]Cell, most int) (width []int, fits bool) {
	n := len(t.Columns)
	width, least, cells := make([]int, n), make([]int, n), make([]int, n)
	headed := len(rows) > len(t.Rows)
	for r, row := range rows {
		for i, cell := range row {
			wide := utf8.RuneCountInString(cell.Text)
			width[i] = max(width[i], wide)
			least[i] = max(least[i], t.least(i, cell.Text, r == 0 && headed))
			if r > 0 || !headed {
				cells[i] = max(cells[i], wide)
			}
		}
	}
	total := len(gutter) * (n - 1)
	for _, w := range width {
		total += w
	}
	for ; total > most && most >= 0; total-- {
		widest := -1
		for _, titles := range []bool{true, false} {
			for i := range width {
				if width[i] > least[i] && (!titles || width[i] > cells[i]) && (widest < 0 || width[i] > width[widest]) {
					widest = i
				}
			}
			if widest >= 0 {
				break
			}
		}
		if widest < 0 {
			return width, false
		}
		width[widest]--
	}
	return width, true
}

// least is how narrow a cell may get: numbers stay on one line, titles and words are wrapped.
func (t Table) least(column int, cell string, title bool) (n int) {
	if t.Columns[column].Right && !title && isNumber(cell) {
		return utf8.RuneCountInString(cell)
	}
	for _, word := range geom.Words(cell) {
		wide := utf8.RuneCountInString(word)
		if !isPath(word) {
			wide = min(wide, longest)
		}
		n = max(n, wide)
	}
	return n
}

// isNumber reports whether a cell is a number or a range, without words beside it.
func isNumber(cell string) bool {
	cell = strings.ReplaceAll(cell, " to ", " ")
	return strings.ContainsAny(cell, "0123456789") && !strings.ContainsFunc(cell, unicode.IsLetter)
}

// row writes one row, on as many lines as its longest cell takes.
func (t Table) row(out *Printed, indent string, row []Cell, width []int) {
	lines, most := make([][]string, len(row)), 1
	for i, cell := range row {
		lines[i] = folded(cell.Text, width[i])
		most = max(most, len(lines[i]))
	}
	for n := range most {
		line := indent
		for i, cell := range row {
			text := ""
			if n < len(lines[i]) {
				text = lines[i][n]
			}
			pad := strings.Repeat(" ", max(0, width[i]-utf8.RuneCountInString(text)))
			text = out.level(cell.Level, text)
			if t.Columns[i].Right {
				line += pad + text + gutter
			} else {
				line += text + pad + gutter
			}
		}
		out.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// folded is a cell on lines of a width; words that are too long are broken, after a sign that
// joins their parts where there is one.
func folded(cell string, width int) (lines []string) {
	now := ""
	for _, word := range geom.Words(cell) {
		for utf8.RuneCountInString(word) > width {
			room := width - utf8.RuneCountInString(now)
			if now != "" {
				room--
			}
			head := breakable(word, room)
			if head == 0 && now != "" {
				lines, now = append(lines, now), ""
				continue
			}
			if head == 0 {
				head = min(width, utf8.RuneCountInString(word))
			}
			r := []rune(word)
			lines, now, word = append(lines, strings.TrimLeft(now+" "+string(r[:head]), " ")), "", string(r[head:])
		}
		switch {
		case now == "":
			now = word
		case utf8.RuneCountInString(now)+1+utf8.RuneCountInString(word) > width:
			lines, now = append(lines, now), word
		default:
			now += " " + word
		}
	}
	if utf8.RuneCountInString(cell) <= width { // blanks within it stay
		return []string{cell}
	}
	return append(lines, now)
}

// breakable is after how many signs a word of more can be broken within a width; 0 where it
// cannot.
func breakable(word string, width int) int {
	at := 0
	for i, r := range []rune(word) {
		if i+1 <= width && slices.Contains([]rune("-_/.,="), r) {
			at = i + 1
		}
	}
	return at
}

// list writes each row as lines of a title and a cell, the first cell above the others.
func (t Table) list(out *Printed, indent string) {
	titles := t.Titles()
	rows := t.marked(true)
	for _, row := range rows[len(rows)-len(t.Rows):] {
		if row[0].Text != "" {
			out.WriteString(indent + row[0].Text + "\n")
		}
		for k := 1; k < len(row); k++ {
			if row[k].Text == "" {
				continue
			}
			line := strings.TrimLeft(titles[k]+": "+row[k].Text, ": ")
			for _, l := range wrap(out.Width, indent+gutter+line) {
				out.WriteString(out.level(row[k].Level, l) + "\n")
			}
		}
	}
}
