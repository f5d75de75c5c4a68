package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Unprintable reports whether a character is none that a label, a page and a message can show as it is: a line break,
// a control character, a mark that turns the direction of writing, or no character at all.
func Unprintable(c rune) bool { return !unicode.IsPrint(c) || c == utf8.RuneError }

// formula are the characters with which a spreadsheet begins what it computes, also after a tab or a
// return.
const formula = "=+-@\t\r"

// Cell is a name as a cell of a CSV file: with an apostrophe first where a spreadsheet would take it
// for a formula, which it runs.
func Cell(name string) string {
	if name != "" && strings.Contains(formula, name[:1]) {
		return "'" + name
	}
	return name
}

// OfCell is the name that a cell has: of what [Cell] gives, what it was given.
func OfCell(cell string) string {
	if name, quoted := strings.CutPrefix(cell, "'"); quoted && Cell(name) == cell {
		return name
	}
	return cell
}
