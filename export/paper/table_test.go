package paper

import (
	"testing"

	"drawerwright/export/drawing"
)

// TestHeadsBreakFirst: where a table is too wide, its heads are broken between words before
// any cell is; a name broken within would be read wrong.
func TestHeadsBreakFirst(t *testing.T) {
	const name = "REGISTER_OUTSIDE_BELOW_5-00MM"
	heads := []string{"layer", "over the spoilboard", "feed in millimeters", "plunge in millimeters",
		"chip load in millimeters", "minutes as estimated"}
	book := &Book{Size: A4, Out: func(drawing.Page) {}}
	tab := table{Book: book, size: small, columns: make([]Column, len(heads)), heads: heads, rows: [][]string{{name, "5.00", "4000", "1000", "0.11",
		"12.3"}}}
	tab.measure()
	if got := len(drawing.Wrap(drawing.Regular, small, tab.widths[0], name)); got != 1 {
		t.Errorf("the name takes %d lines", got)
	}
	if got := tab.total(); got > book.Width()+1e-3 {
		t.Errorf("the table is %.2f wide on a page of %.2f", got, book.Width())
	}
	one := table{Book: book, size: small, columns: make([]Column, 3), heads: heads[:3], rows: [][]string{{"A", "1", "2"}}}
	one.measure()
	if got := len(drawing.Wrap(drawing.Bold, small, one.widths[1], heads[1])); got != 1 {
		t.Errorf("a head is broken into %d lines though there is room", got)
	}
}

// TestNumbersAreNotBroken: in a table that is too wide, words give way and numbers do not.
func TestNumbersAreNotBroken(t *testing.T) {
	const number = "10.079 (10 5/64)"
	book := &Book{Size: A4, Out: func(drawing.Page) {}}
	columns := []Column{{Head: "what it is that is " +
		"meant"}, {Head: "at", Right: true}, {Head: "from", Right: true}, {Head: "to",
		Right: true}}
	words := "a sentence of many words, none of which is long, which goes on over several lines of its cell"
	tab := newTable(book, columns, [][]string{{words, number, number, number}, {words, number, number, number}})
	for i := 1; i < len(columns); i++ {
		if got := drawing.Wrap(drawing.Regular, tab.size, tab.widths[i], number); len(got) != 1 {
			t.Errorf("column %d: the number is broken: %q", i, got)
		}
	}
	if got := tab.total(); got > book.Width()+1e-3 {
		t.Errorf("the table is %.2f wide on a page of %.2f", got, book.Width())
	}
	narrow := &Book{Size: Size{Width: 130, Height: 200}, Out: func(drawing.Page) {}}
	tab = newTable(narrow, columns, tab.rows)
	if got := drawing.Wrap(drawing.Regular, tab.size, tab.widths[2], number); len(got) != 1 {
		t.Errorf("on a narrow page the number is broken: %q", got)
	}
}
