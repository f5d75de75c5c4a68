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
