package packet

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/load"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/nest"
)

// samples are the job files that come with the program.
func samples(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob("../../../samples/*.yaml")
	if err != nil || len(list) == 0 {
		t.Fatal("no samples", err)
	}
	return list
}

func read(t testing.TB, file string, text []byte) batch.Batch {
	t.Helper()
	j, problems := job.Read(file, strings.NewReader(string(text)), job.Files(load.Beside(file)))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, _ := batch.Make(t.Context(), j)
	return b
}

// many is a job of n different drawers with two boxes of each.
func many(n int) []byte {
	var out strings.Builder
	out.WriteString("units: mm\nstock:\n  ply: {thickness: [12.21, 12.16], grain: length}\n  board: {thickness: 5.9, grain: none}\ncutter: {kind: saw, width: 6.35}\ndrawers:\n")
	for i := range n {
		fmt.Fprintf(&out, "  - {name: box-%d, count: 2, outside: %d x %d x %d, sides: ply, bottom: board, joint: dado-rabbet}\n", i+1, 300+5*i, 80+i, 350+3*i)
	}
	return []byte(out.String())
}

// reading is how far two boxes may run into each other, in mm: letters do not fill
// the boxes that they are measured with.
const reading = 0.05

// collisions lists texts of a page that run into each other or leave it.
func collisions(d drawing.Drawing) (list []string) {
	for i, text := range d.Texts {
		a := text.Box()
		if a.Min.X < 0 || a.Min.Y < 0 || a.Max.X > d.Width || a.Max.Y > d.Height {
			list = append(list, fmt.Sprintf("%q leaves the page: %v", text.String, a))
		}
		inner := geom.Rect{Min: geom.Point{X: a.Min.X + reading, Y: a.Min.Y + reading}, Max: geom.Point{X: a.Max.X - reading, Y: a.Max.Y - reading}}
		for _, other := range d.Texts[:i] {
			if b := other.Box(); inner.Overlaps(b) {
				list = append(list, fmt.Sprintf("%q runs into %q: %v %v", text.String, other.String, a, b))
			}
		}
	}
	return list
}

// TestNoWordsCollide: on no page of any sample, on either sheet, does a text run into
// another or off the page.
func TestNoWordsCollide(t *testing.T) {
	dimensions := 0
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, size := range []string{"A4", "Letter", "A3"} {
			b := read(t, file, text)
			b.Paper.Size = size
			var pages []drawing.Page
			plan, err := sheets.Of(t.Context(), b, nil, sheets.Search{Options: nest.Options{Effort: 20}})
			if err != nil {
				t.Fatal(err)
			}
			r := record.MakeKept(b, plan, nil)
			if err := lay(t.Context(), b, r, plan, func(p drawing.Page) { pages = append(pages, p) }); err != nil {
				t.Fatal(err)
			}
			for n, p := range pages {
				for _, c := range collisions(p.Drawing) {
					t.Errorf("%s on %s, page %d: %s", filepath.Base(file), size, n+1, c)
				}
				for _, w := range p.Texts {
					if w.Value {
						dimensions++
					}
				}
			}
		}
	}
	if dimensions < 1000 {
		t.Errorf("only %d numbers of dimensions", dimensions)
	}
}

// TestCollisions: what the test above looks for is found.
func TestCollisions(t *testing.T) {
	d := drawing.Drawing{Width: 100, Height: 100}
	d.Words(10, 10, 3, drawing.Regular, "12.21")
	d.Write(drawing.Text{String: "6.1", At: geom.Point{X: 14, Y: 12}, Size: 3, Quarter: 1})
	if got := collisions(d); len(got) != 1 {
		t.Errorf("two texts across each other: %q", got)
	}
	d.Words(95, 50, 3, drawing.Regular, "12.21")
	if got := collisions(d); len(got) != 2 {
		t.Errorf("a text that leaves the page: %q", got)
	}
}

// BenchmarkHundred makes the packet of 100 different drawers, 200 boxes.
func BenchmarkHundred(b *testing.B) {
	batch := read(b, "hundred", many(100))
	r := record.MakeKept(batch, sheets.Plan{}, nil)
	for b.Loop() {
		if err := Write(b.Context(), io.Discard, batch, r, sheets.Plan{}); err != nil {
			b.Fatal(err)
		}
	}
}
