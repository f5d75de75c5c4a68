package outside

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"drawerwright/geom/geomtest"
)

// cutFile is what  reports of a drawing.
type cutFile struct {
	Dir, File, Face string
	Length, Width   float64
	Bent            bool         // its outline has arcs
	Outline         [][2]float64 // what the profile's bit leaves of the panel
	Cuts            []shapedCut
}

// shapedCut is a line as shapely cuts it, in millimeters and panel coordinates.
type shapedCut struct {
	Layer                         string
	Bit                           float64
	Corners, Arcs                 int
	Drawn, Reached, Swept, Beyond float64
	Bounds                        [4]float64
	Shape                         [][][][2]float64 // polygons of rings
}

// box is the extent of what was swept.
func (c shapedCut) box() (w, h float64) { return c.Bounds[2] - c.Bounds[0], c.Bounds[3] - c.Bounds[1] }

// maxArea is the most, in square millimeters, that areas of a cut may differ:
// chords for arcs make up a tenth of it.
const maxArea = 0.01

// maxBent is that where the outline has arcs: the proof takes chords for them that
// keep within 0.001 mm, and two thirds of that along a pull's 126 mm are 0.084 mm2.
const maxBent = 0.1

var cuts onces[[]cutFile]

// shapely cuts the drawings of folders anew, once for all tests: nobody changes what it gives.
func shapely(t *testing.T, args ...string) []cutFile {
	t.Helper()
	list, err := cuts.get(fmt.Sprintf("%q", args), func() ([]cutFile, error) {
		return decode[cutFile]("", python, append([]string{"dxf_cuts.py"}, args...)...)
	})
	if err != nil {
		t.Error(err)
	}
	return list
}

// sameCuts compares the cuts of a folder with those of its proof, and reports how far
// the areas are apart at most.
func sameCuts(files []cutFile, p proven) (worst float64, err error) {
	index := map[string]int{}
	total := 0
	for i, f := range files {
		index[f.File] = i
		total += len(f.Cuts)
	}
	at := map[string]int{}
	var faults []string
	for _, d := range p.Proof {
		for _, c := range d.Cuts {
			i, known := index[c.File]
			n := at[c.File]
			if !known || n >= len(files[i].Cuts) {
				return 0, fmt.Errorf("%s has no cut %d on %s", c.File, n, c.Layer)
			}
			at[c.File]++
			total--
			s := files[i].Cuts[n]
			off := max(math.Abs(c.Drawn-s.Drawn), math.Abs(c.Reached-s.Reached), math.Abs(c.Swept-s.Swept))
			limit := maxArea
			if files[i].Bent {
				limit = maxBent
			}
			worst = max(worst, off)
			if c.Layer != s.Layer || off > limit || math.Abs(c.Bit*p.mm()-s.Bit) > micrometer || math.Abs(c.Beyond*p.mm()-s.Beyond) > micrometer {
				faults = append(faults, fmt.Sprintf("%s:%d: %s: drawn %.4f, reached %.4f, swept %.4f, beyond %.4f, bit %.4f; shapely has %s %.4f, %.4f, %.4f, %.4f, %.4f",
					c.File, c.Line, c.Layer, c.Drawn, c.Reached, c.Swept, c.Beyond*p.mm(), c.Bit*p.mm(), s.Layer, s.Drawn, s.Reached, s.Swept, s.Beyond, s.Bit))
			}
		}
	}
	switch {
	case len(faults) > 0:
		return worst, fmt.Errorf("%d of the cuts differ:\n%s", len(faults), strings.Join(faults, "\n"))
	case total != 0:
		return worst, fmt.Errorf("the proof leaves out %d cuts", total)
	}
	return worst, nil
}

// roundedArea holds shapely itself against a closed form: what a disc reaches of a
// rectangle is all but (4 - pi) r2 in the corners, and about a center line likewise.
func roundedArea(files []cutFile) (n int, err error) {
	for _, f := range files {
		for _, c := range f.Cuts {
			if c.Arcs > 0 || c.Corners != 4 && c.Corners != 2 || strings.HasPrefix(c.Layer, "ENGRAVE") { // of any direction
				continue
			}
			w, h := c.box()
			if want := w*h - (4-math.Pi)*c.Bit*c.Bit/4; math.Abs(c.Swept-want) > maxArea {
				return n, fmt.Errorf("%s, %s: %.4f mm2, in closed form %.4f", f.File, c.Layer, c.Swept, want)
			}
			n++
		}
	}
	return n, nil
}

// TestCuts: every line of every sample, as it is and in both versions and units, and
// of jobs that have what the samples do not, cut virtually from the DXF files alone by
// shapely, has the areas that the product's own proof gives. A bit of another
// radius is seen on every line that a bit cuts, of samples by night ([geomtest.All]).
func TestCuts(t *testing.T) {
	var lock sync.Mutex
	worst := 0.0
	t.Cleanup(func() { t.Logf("areas differ by %.2g mm2 at most", worst) })
	check := func(t *testing.T, job string, plant bool) []cutFile {
		t.Helper()
		dir, r := build(t, job)
		p, files := prove(t, dir), shapely(t, dir)
		off, err := sameCuts(files, p)
		if err != nil {
			t.Error(err)
		}
		lock.Lock()
		worst = max(worst, off)
		lock.Unlock()
		if n, err := roundedArea(files); err != nil || n == 0 {
			t.Errorf("%d rectangles, %v", n, err)
		}
		if plant && slices.ContainsFunc(r.Layers, func(l legendRow) bool { return l.Diameter > 0 }) {
			const more = "0.2" // more than a relief is larger than its bit
			for _, f := range shapely(t, "--radius", more, dir) {
				for i, c := range f.Cuts {
					j := slices.IndexFunc(files, func(g cutFile) bool { return g.File == f.File })
					if c.Arcs >= c.Corners-2 { // any bit that gets into a hole or a slot with round ends clears it
						continue
					}
					if math.Abs(c.Swept-files[j].Cuts[i].Swept) <= maxArea {
						t.Errorf("%s, %s: a radius larger by %s mm is not seen", f.File, c.Layer, more)
					}
				}
			}
		}
		return files
	}
	samples(t, []string{"mm", "in"}, func(t *testing.T, job, version, unit string) {
		check(t, job, geomtest.All() && version == "R2000" && unit == "mm")
	})
	asTheyAre(t, func(t *testing.T, job string) { check(t, job, false) })
	extras(t, func(t *testing.T, job extraJob, version, unit string) {
		files := check(t, job.text, true)
		if job.cuts != nil && !slices.ContainsFunc(files, func(f cutFile) bool { return slices.ContainsFunc(f.Cuts, job.cuts) }) {
			t.Error("the job has no cut of the kind that it is here for")
		}
	})
}

// TestCutsFind: the comparison sees another area, another layer, another bit, a cut
// that is missing and one that reaches further.
func TestCutsFind(t *testing.T) {
	dir, _ := build(t, extraJobs[0].text)
	p, files := prove(t, dir), slices.Clone(shapely(t, dir))
	for i := range files {
		files[i].Cuts = slices.Clone(files[i].Cuts)
	}
	if _, err := sameCuts(files, p); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(c *shapedCut){
		"drawn":   func(c *shapedCut) { c.Drawn += 2 * maxArea },
		"reached": func(c *shapedCut) { c.Reached -= 2 * maxArea },
		"swept":   func(c *shapedCut) { c.Swept += 2 * maxArea },
		"beyond":  func(c *shapedCut) { c.Beyond += 2 * micrometer },
		"layer":   func(c *shapedCut) { c.Layer += "X" },
		"bit":     func(c *shapedCut) { c.Bit += 2 * micrometer },
	} {
		for i := range files {
			if len(files[i].Cuts) == 0 {
				continue
			}
			kept := files[i].Cuts[0]
			spoil(&files[i].Cuts[0])
			if _, err := sameCuts(files, p); err == nil {
				t.Errorf("%s: not found in %s", name, files[i].File)
			}
			files[i].Cuts[0] = kept
		}
	}
	files[0].Cuts = files[0].Cuts[1:]
	if _, err := sameCuts(files, p); err == nil {
		t.Error("a missing cut is not found")
	}
}
