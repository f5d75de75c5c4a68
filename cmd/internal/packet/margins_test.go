package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// Jobs whose pictures of cuts do not fit a page as they are.
const (
	// farFence has dados 372 mm from the fence, and rabbets in five passes.
	farFence = "units: mm\nstock:\n  ply 15: {thickness: [15.2, 15.1, 15.15], grain: length}\n" +
		"  ply 9: {thickness: [8.8, 8.9], grain: length}\n  rail: {thickness: [3, 3.05], material: hardboard}\n" +
		"cutter: {kind: saw, width: 3.25, groove-cutter: 3.2}\ndrawers:\n" +
		"  - {name: letters, outside: 800 x 320 x 500, joint: rabbet, sides: ply 15, bottom: ply 9, " +
		"dividers: [{direction: along, at: 2, stock: rail, folders: 330 x 240 x 20}]}\n"
	// manyPasses has rabbets of 41 mm in seven passes.
	manyPasses = "units: mm\nstock:\n  side: {thickness: [12.1, 12, 12.2], grain: length}\n" +
		"  front: {thickness: [19.1, 19], grain: width}\n  ply: {thickness: [6.1, 6.05, 6.2], grain: none}\n" +
		"cutter: {kind: saw, width: 6.35}\nopenings: {k: {width: 563, height: 700, depth: 520, cabinet: frameless, " +
		"fronts: overlay}}\ndrawers:\n  - {name: k, opening: k, slide: side-mount, rows: [130, free, 300], " +
		"overlay: 16, joint: rabbeted-front, sides: side, box-front: front, bottom: ply}\n"
)

// within is what of a page is written and drawn on: 15 mm on three sides are free, and 8 mm below the title block.
func within(p drawing.Page) geom.Rect {
	const line = 0.25 // half of one lies beyond its place
	return geom.Rect{Min: geom.Point{X: 15, Y: 8}, Max: geom.Point{X: p.Width - 15, Y: p.Height - 15}}.Grow(line)
}

// outside lists what of a page lies outside a rectangle.
func outside(p drawing.Page, room geom.Rect) (list []string) {
	for _, w := range p.Texts {
		if b := w.Box(); !room.Contains(b) {
			list = append(list, fmt.Sprintf("%q from %.1f to %.1f", w.String, b.Min, b.Max))
		}
	}
	for _, s := range p.Shapes {
		for _, path := range s.Paths {
			if box := geom.Loop(path).Flatten(0.05).Bounds(); !room.Contains(box) {
				list = append(list, fmt.Sprintf("a line from %.1f to %.1f", box.Min, box.Max))
			}
		}
	}
	return list
}

// TestNothingLeavesThePage: on every page before the labels, of samples, of random jobs, of one with a far fence and of
// one with many passes, all that is drawn and written lies within the margins.
func TestNothingLeavesThePage(t *testing.T) {
	list := []packetOf{layOutBatch(t, "far fence", date, read(t, "far.yaml", []byte(farFence)), nil),
		layOutBatch(t, "many passes", date, read(t, "passes.yaml", []byte(manyPasses)), nil)}
	randomJobs(t, geomtest.Cases(12, 400), func(name string, b batch.Batch) {
		list = append(list, layOutBatch(t, name, date, b, nil))
	})
	pages, pictures := 0, 0
	for _, k := range append(list, packets(t)...) {
		for i, p := range k.pages {
			if begins(p, "Labels") {
				break // they go by the sheet that they are printed on
			}
			pages++
			for _, w := range p.Texts {
				if w.Value && strings.HasPrefix(w.String, "cutter ") {
					pictures++
				}
			}
			for _, o := range outside(p, within(p)) {
				t.Errorf("%s, page %d: %s", k.file, i+1, o)
			}
		}
	}
	if pages < 300 || pictures < 50 {
		t.Errorf("%d pages with %d pictures of cuts", pages, pictures)
	}
}

// TestOutsideIsFound: what the test above looks for is found, at each edge.
func TestOutsideIsFound(t *testing.T) {
	p := drawing.Page{Drawing: drawing.Drawing{Width: 210, Height: 297}}
	p.Loops(drawing.Thick, 0, geom.Rectangle(15, 9, 195, 282))
	p.Words(15, 100, 3, drawing.Regular, "12.21")
	if got := outside(p, within(p)); len(got) != 0 {
		t.Fatalf("nothing is wrong: %q", got)
	}
	for _, at := range []geom.Point{{X: 14.5, Y: 100}, {X: 195.5, Y: 100}, {X: 100, Y: 282.5}, {X: 100, Y: 7.5}} {
		bad := p
		bad.Shapes, bad.Texts = slices.Clone(p.Shapes), slices.Clone(p.Texts)
		bad.Line(drawing.Thin, geom.Point{X: 100, Y: 100}, at)
		bad.Write(drawing.Text{String: "12.21", Size: 3, At: at, Align: drawing.Middle})
		if got := outside(bad, within(p)); len(got) != 2 {
			t.Errorf("at %v: %q", at, got)
		}
	}
}
