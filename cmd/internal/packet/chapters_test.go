package packet

import (
	"fmt"

	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
)

// filled lays chapters out on a page of which so many mm are left, each of so many lines, and gives how many pages
// there are and which chapters were tightened.
func filled(t *testing.T, drawers int, left float64, lines ...int) (pages int, tight []bool) {
	t.Helper()
	m := maker{Book: &paper.Book{Size: paper.A4, Out: func(drawing.Page) { pages++ }},
		batch: batch.Batch{Drawers: make([]batch.Drawer, drawers)}}
	m.Page()
	m.Space(m.Room() - left)
	tight = make([]bool, len(lines))
	var list []func()
	for i, n := range lines {
		list = append(list, func() {
			tight[i] = m.Tight // of several times the last counts
			for range n {
				m.Text("one line")
			}
		})
	}
	if err := m.inOrder(t.Context(), list); err != nil {
		t.Fatal(err)
	}
	m.Close()
	return pages, tight
}

// TestChaptersAreTightened: chapters are as usual where they fit or where no page is saved, and tightened where that
// saves one, of one chapter before it ends or before the next one does; never in a job of many drawers.
func TestChaptersAreTightened(t *testing.T) {
	for _, c := range []struct {
		drawers int
		left    float64
		lines   []int
		pages   int
		tight   string
	}{
		{1, 60, []int{10}, 1, "[false]"},
		{1, 52, []int{10}, 1, "[true]"},
		{1, 40, []int{10}, 2, "[false]"},
		{1, 60, []int{5, 5}, 1, "[false false]"},
		{1, 52, []int{5, 5}, 1, "[false true]"},
		{1, 49, []int{5, 5}, 1, "[true true]"},
		{maxRepeated + 1, 52, []int{10}, 2, "[false]"},
	} {
		pages, tight := filled(t, c.drawers, c.left, c.lines...)
		if pages != c.pages || fmt.Sprint(tight) != c.tight {
			t.Errorf("%v lines in %g mm: %d pages, %v", c.lines, c.left, pages, tight)
		}
	}
}
