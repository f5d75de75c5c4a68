package paper

import (
	"strings"
	"testing"

	"drawerwright/export/drawing"
)

// TestHeadings: what finds no room below a heading takes it along to the next page, with its entry in the contents; a
// heading that goes over pages itself stays where it is.
func TestHeadings(t *testing.T) {
	for _, c := range []struct {
		name  string
		pages int // on which the last words of the heading stand, and what follows
	}{{"Corners", 2}, {strings.Repeat("name-of-a-drawer, ", 2000) + "last", 0}} {
		var pages []drawing.Page
		b := &Book{Size: A4, Out: func(p drawing.Page) { pages = append(pages, p) }}
		b.Chapter("First")
		b.Space(0.6 * b.Room())
		b.Chapter("Second")
		b.Heading(1, c.name)
		b.Figure(drawing.Drawing{Width: 10, Height: 0.9 * b.whole()}, "the figure")
		b.Close()
		if c.pages == 0 {
			if n := len(pages); n < 3 {
				t.Errorf("%d pages", n)
			}
			continue
		}
		var words []string
		for _, w := range pages[c.pages-1].Texts {
			words = append(words, w.String)
		}
		if said := strings.Join(words, "|"); !strings.HasPrefix(said, "Second|"+c.name+"|the figure|") {
			t.Errorf("page %d says %q", c.pages, said)
		}
		if marks := pages[1].Bookmarks; len(pages[0].Bookmarks) != 1 || len(marks) != 1 || marks[0].Name != "Second" {
			t.Errorf("entries of the contents: %v, %v", pages[0].Bookmarks, marks)
		}
	}
}
