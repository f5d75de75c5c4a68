package mutate

import "strings"

// oddCells are those of a table.
var oddCells = append([]string{"=1+1", "=HYPERLINK(\"x\")", "+1", "-x", "@SUM(A1)", "'=x", `"`, `""`, `"a`, `a"b`, `"a""`, "\"a\nb\"", `"a,b"`, ";", "1;2", "12,5", "100 mm", "1/2 in", "19 5/8 in", "1/0 in",
	"part", "sheet", "offcut", "yes", "no", "birch", "kind", "name", "length", "width", "count", "price", "turn", "batch", "match", "set", "stock"}, oddWords...)

// ofTables spoil columns and cells. They take a table apart by its commas alone, as people do.
var ofTables = []way{
	eachRow(func(cells []string, a, _ int) []string { return append(cells[:a:a], cells[a+1:]...) }),
	eachRow(func(cells []string, a, _ int) []string { return append(cells[:a+1:a+1], cells[a:]...) }),
	eachRow(func(cells []string, a, b int) []string {
		if b < len(cells) {
			cells[a], cells[b] = cells[b], cells[a]
		}
		return cells
	}),
	cell, cell, cell, cell,
	func(s *spoiler, text string) string {
		return strings.ReplaceAll(text, ",", one(s, []string{";", "\t", ", ", ",,", "|"}))
	},
}

// eachRow changes the same columns of all rows.
func eachRow(change func(cells []string, a, b int) []string) way {
	return func(s *spoiler, text string) string {
		rows := strings.Split(text, "\n")
		columns := strings.Count(rows[0], ",") + 1
		a, b := s.IntN(columns), s.IntN(columns)
		for i, row := range rows {
			if cells := strings.Split(row, ","); a < len(cells) && row != "" {
				rows[i] = strings.Join(change(cells, a, b), ",")
			}
		}
		return strings.Join(rows, "\n")
	}
}

// cell puts an odd value into a cell.
func cell(s *spoiler, text string) string {
	from, to := line(text, s.place(text))
	cells := strings.Split(strings.TrimRight(text[from:to], "\r\n"), ",")
	cells[s.IntN(len(cells))] = one(s, s.format.odd)
	return text[:from] + strings.Join(cells, ",") + "\n" + text[to:]
}
