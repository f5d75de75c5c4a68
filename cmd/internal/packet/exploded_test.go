package packet

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// numbersIn counts how often each text stands in a drawing.
func numbersIn(d drawing.Drawing) map[string]int {
	list := make(map[string]int)
	for _, t := range d.Texts {
		list[t.String]++
	}
	return list
}

// eachTaken does something with every box of the samples.
func eachTaken(t *testing.T, do func(name string, taken Taken)) {
	t.Helper()
	for _, file := range samples(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		b := read(t, file, text)
		for _, d := range b.Drawers {
			taken, err := take(b.Stocks, d)
			if err != nil {
				t.Fatal(err)
			}
			name := filepath.Base(file) + ": " + d.Spec.Name
			do(name, taken)
		}
	}
}

// TestExploded: every part of every box of the samples has its number in a balloon of the exploded picture for each of
// its pieces that is seen, and once in the legend; no two texts touch, and the picture keeps to its room.
func TestExploded(t *testing.T) {
	room := geom.Point{X: 180, Y: 120}
	eachTaken(t, func(name string, taken Taken) {
		drawn := taken.Exploded(room)
		if drawn.Width > room.X+reading || drawn.Height > room.Y+reading {
			t.Errorf("%s is %.1f x %.1f mm", name, drawn.Width, drawn.Height)
		}
		for _, said := range collisions(drawn) {
			t.Errorf("%s: %s", name, said)
		}
		found := numbersIn(drawn)
		for _, p := range taken.drawer.Parts {
			if n := found[fmt.Sprint(p.Number)]; n < 2 {
				t.Errorf("%s: number %d of %s stands %d times in picture and legend", name, p.Number, p.Name, n)
			}
		}
		corner, err := taken.Corner(room)
		if err != nil {
			t.Fatal(name, err)
		}
		if n := len(corner.Texts); n != 3 {
			t.Errorf("%s: the corner has %d numbers", name, n)
		}
		for _, s := range corner.Shapes {
			for _, path := range s.Paths {
				sheet := geom.Rect{Max: geom.Point{X: corner.Width, Y: corner.Height}}
				if r := geom.Loop(path).Bounds(); !sheet.Contains(r) {
					t.Errorf("%s: the picture of the corner is cropped at %v", name, r)
				}
			}
		}
	})
}

// TestSawnCorner: of a panel of 500 x 300 that stands 10 and 20 mm from the corner of its box, 90 x 80 are left within
// 100 mm of the corner; of one that runs the other way from 510, the 90 at its far end.
func TestSawnCorner(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 500, 300), Thickness: 12}
	for _, c := range []struct{ from, x, wide float64 }{{10, 1, 0}, {510, -1, 410}} {
		at := geom.Placement{Origin: geom.Vec3{X: c.from, Z: 20}, X: geom.Vec3{X: c.x}, Y: geom.Vec3{Z: 1}}
		want := geom.Rect{Min: geom.Point{X: c.wide}, Max: geom.Point{X: c.wide + 90, Y: 80}}
		got := cornerOf(panel, at, 100).Outline.Bounds()
		if !got.Grow(1e-9).Contains(want) || !want.Grow(1e-9).Contains(got) {
			t.Errorf("from %g: %v is left, should be %v", c.from, got, want)
		}
	}
}
