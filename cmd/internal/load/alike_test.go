package load_test

import (
	"fmt"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestOneMistakeOfManyDrawers: what is wrong with twenty drawers in the same words is told once, with their names,
// where the first stands; one way out mends all.
func TestOneMistakeOfManyDrawers(t *testing.T) {
	text := "units: mm\nstock: {birch: {thickness: [12.1, 12.1]}}\ncutter: {kind: saw, width: 3.2}\ndrawers:\n"
	for i := range 20 {
		text += fmt.Sprintf("  - {name: d%d, outside: %d x 100 x 300, sides: birch, bottom: birch}\n", i, 400+i)
	}
	l := read(text)
	tooThick := 0
	for _, p := range l.Problems {
		if p.Level != geom.LevelError || !strings.Contains(p.Message, "the bottom is 12.1 mm thick") {
			continue
		}
		tooThick++
		if p.Line != 5 || !strings.HasPrefix(p.Message, "d0, d1, d2, d3 and 16 more: ") {
			t.Errorf("%d: %s", p.Line, p.Message)
		}
		for _, w := range p.Ways {
			if len(w.Steps) > 2 && len(w.Steps)%20 != 0 { // entries of all, or as many of each drawer
				t.Errorf("%s: %d steps for 20 drawers", w.Label, len(w.Steps))
			}
		}
	}
	if tooThick != 1 {
		t.Errorf("told %d times: %v", tooThick, l.Problems)
	}
}
