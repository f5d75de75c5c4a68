package outside

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// freeFound is what carcass.py measures where a page tells a clearance, or a handle that is met.
type freeFound struct {
	File, Name, Meets string
	Said, Found       *float64
}

// sameFree, in mm, is what float32 and the rounding of the page's numbers leave.
const sameFree = 0.001

func (f freeFound) same() bool {
	return f.Said != nil && f.Found != nil && math.Abs(*f.Said-*f.Found) <= sameFree
}

// knobsMeet is a bank whose lower knob stands above its front, into the one over it.
const knobsMeet = `units: mm
stock:
  ply: {thickness: [12, 12.05, 11.95]}
  thin: {thickness: [6, 6.05, 5.95]}
cutter: {kind: router, bits: {large: {diameter: 6}, small: {diameter: 4}}}
openings: {o: {width: 500, height: 300, depth: 480, cabinet: frameless, fronts: overlay}}
drawers:
  - {name: a, opening: o, slide: side-mount, rows: 2, front-gap: 2, sides: ply, bottom: thin,
     drawer-front: {stock: ply, handles: knob, handle-from-top: 12.5}}
`

// TestOpeningClearances: by numpy, from the solids of the pages of all samples, what is free about
// the drawers of an opening is what the page tells; by shapely, handles meet fronts where it says so.
func TestOpeningClearances(t *testing.T) {
	t.Parallel()
	var pages []string
	for _, sample := range sampleFiles(t) {
		if text := textOf(t, sample); strings.Contains(text, "\nopenings:") {
			dir, _ := build(t, text)
			pages = append(pages, filepath.Join(dir, "boxes.html"))
		}
	}
	met, _ := build(t, knobsMeet)
	pages = append(pages, filepath.Join(met, "boxes.html"))
	measured, meets := 0, 0
	for _, f := range lines[freeFound](t, strings.Join(pages, "\n"), python, "carcass.py") {
		measured++
		if f.Meets != "" {
			meets++
		}
		if !f.same() {
			t.Errorf("%+v: said %v, found %v", f, value(f.Said), value(f.Found))
		}
	}
	if measured < 150 || meets != 1 {
		t.Errorf("%d clearances, %d handles that meet a front", measured, meets)
	}
}

func value(v *float64) any {
	if v == nil {
		return "nothing"
	}
	return *v
}

// TestOpeningClearancesComparator: the outside program sees a drawer that stands elsewhere.
func TestOpeningClearancesComparator(t *testing.T) {
	dir, _ := build(t, knobsMeet)
	good := textOf(t, filepath.Join(dir, "boxes.html"))
	bad := filepath.Join(t.TempDir(), "boxes.html")
	if err := os.WriteFile(bad, []byte(strings.Replace(good, `"at":[[`, `"at":[[1`, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	wrong := 0
	for _, f := range lines[freeFound](t, bad, python, "carcass.py") {
		if !f.same() {
			wrong++
		}
	}
	if wrong == 0 {
		t.Error("a drawer that stands elsewhere is not seen")
	}
}
