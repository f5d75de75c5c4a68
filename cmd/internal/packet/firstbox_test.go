package packet

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"drawerwright/cmd/internal/firstbox"
	"drawerwright/export/drawing"
)

var printedNumber = regexp.MustCompile(`^-?\d+\.\d+$`)

// TestFirstBoxIsTheTable: the forms on paper have the rows of the table to fill in, each with its name, its target and
// its limits, in its order.
func TestFirstBoxIsTheTable(t *testing.T) {
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		var pages []drawing.Page
		m := maker{Book: book(b, "", func(p drawing.Page) { pages = append(pages, p) }), batch: b, unit: b.Units}
		m.firstBoxes()
		m.Close()
		var names, numbers, said, printed []string
		for _, at := range firstbox.First(b) {
			for _, f := range firstbox.Of(b, at).Fields() {
				names, numbers = append(names, f.What), append(numbers, f.Right, f.Least, f.Most)
			}
		}
		for _, p := range pages {
			for _, w := range p.Texts {
				if printedNumber.MatchString(w.String) {
					printed = append(printed, w.String)
				} else {
					said = append(said, w.String)
				}
			}
			for _, wrong := range collisions(p.Drawing) {
				t.Errorf("%s: %s", file, wrong)
			}
		}
		if len(names) < 18 || fmt.Sprint(printed) != fmt.Sprint(numbers) {
			t.Errorf("%s: printed are %v, the table has %v", file, printed, numbers)
		}
		rest := strings.Join(said, " ")
		for _, name := range names {
			before, after, found := strings.Cut(rest, name)
			if !found {
				t.Fatalf("%s: no %q in its place: %q", file, name, before)
			}
			rest = after
		}
	}
}
