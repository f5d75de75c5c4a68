package present

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// table writes rows in columns two spaces apart; columns whose head begins with
// ">" are flush right.
func table(out *bytes.Buffer, head []string, rows [][]string) {
	width := make([]int, len(head))
	right := make([]bool, len(head))
	titles := make([]string, len(head))
	for i, h := range head {
		titles[i], right[i] = strings.CutPrefix(h, ">")
	}
	aligned(out, append([][]string{titles}, rows...), width, right)
}

// rowsOf writes rows without a head.
func rowsOf(out *bytes.Buffer, rows [][]string) {
	if len(rows) > 0 {
		aligned(out, rows, make([]int, len(rows[0])), make([]bool, len(rows[0])))
	}
}

func aligned(out *bytes.Buffer, all [][]string, width []int, right []bool) {
	for _, row := range all {
		for i, cell := range row {
			width[i] = max(width[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range all {
		line := ""
		for i, cell := range row {
			pad := strings.Repeat(" ", width[i]-utf8.RuneCountInString(cell))
			if right[i] {
				cell = pad + cell
			} else {
				cell += pad
			}
			line += cell + "  "
		}
		out.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}
