package outside

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/kerf"
	"drawerwright/geom/sweep"
)

// movedShape is what offset_shapes.py reads, and what it says.
type movedShape struct {
	What  string         `json:"what"`
	By    float64        `json:"by"`
	Loop  [][3]float64   `json:"loop"`
	Moved [][][3]float64 `json:"moved"`
}

type movedAnswer struct {
	Area, Own, Apart float64
	Round            float64
	Holds            bool
}

func points(l geom.Loop) [][3]float64 {
	list := make([][3]float64, len(l))
	for i, v := range l {
		list[i] = [3]float64{v.X, v.Y, v.Bulge}
	}
	return list
}

func lists(loops []geom.Loop) [][][3]float64 {
	list := make([][][3]float64, len(loops))
	for i, l := range loops {
		list[i] = points(l)
	}
	return list
}

// What moved loops may differ from shapely's: the part of their area, and mm. Of arcs
// GEOS itself is off, all along them: of a circle with a radius of 20 mm moved in by 3,
// the area is pi 17^2 as closed forms have it, and GEOS's 1 part in a million more.
const (
	movedArea  = 1e-6
	movedApart = 0.002
	geosApart  = 2.5e-5
)

// plateLoops are loops of the size of templates and of what is cut in them.
func plateLoops(n int) (list []geom.Loop) {
	s := rand.New(rand.NewPCG(6, 1))
	between := func(low, high float64) float64 { return low + s.Float64()*(high-low) }
	for len(list) < n {
		w, h := between(20, 300), between(20, 200)
		switch s.IntN(5) {
		case 0:
			list = append(list, geom.Rectangle(0, 0, w, h))
		case 1:
			list = append(list, geom.RoundedRectangle(0, 0, w, h, between(4, 9))) // of arcs that all but vanish GEOS makes a chord
		case 2:
			list = append(list, geom.Circle(geom.Point{X: w, Y: h}, between(4, 20)))
		case 3: // with a step, and a bay
			x, y := between(0.3, 0.7)*w, between(0.3, 0.7)*h
			list = append(list, geom.Polygon(geom.Point{}, geom.Point{X: w}, geom.Point{X: w, Y: y}, geom.Point{X: x, Y: y}, geom.Point{X: x, Y: h}, geom.Point{X: x / 2, Y: h}, geom.Point{X: x / 2, Y: y}, geom.Point{X: x / 4, Y: y}, geom.Point{X: x / 4, Y: h}, geom.Point{Y: h}))
		default: // a bump and a bite, both round
			b, a := between(0.2, 0.9), between(0.2, 0.9)
			l := geom.Polygon(geom.Point{}, geom.Point{X: w / 3}, geom.Point{X: 2 * w / 3}, geom.Point{X: w}, geom.Point{X: w, Y: 2 * h}, geom.Point{X: 2 * w / 3, Y: 2 * h}, geom.Point{X: w / 3, Y: 2 * h}, geom.Point{Y: 2 * h})
			l[1].Bulge, l[5].Bulge = b, -a
			if w/6*a < 1.8*h {
				list = append(list, l)
			}
		}
	}
	return list
}

// TestOffsets: loops moved in and out are shapely's buffers.
func TestOffsets(t *testing.T) {
	t.Parallel()
	s := rand.New(rand.NewPCG(6, 2))
	var jobs []movedShape
	for _, l := range plateLoops(geomtest.Cases(15, 40)) {
		by := []float64{0.05, 0.09, 0.15, 0.5, 1.5875, 3}[s.IntN(6)]
		in, err := sweep.Inset(l, by)
		if err != nil {
			t.Fatal(err)
		}
		out, err := sweep.Outset(l, by)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, movedShape{"in", by, points(l), lists(in)}, movedShape{"out", by, points(l), lists(out)})
	}
	// The comparison sees a loop that was moved by a hundredth too much.
	wrong, _ := sweep.Inset(geom.Rectangle(0, 0, 100, 50), 1.01)
	jobs = append(jobs, movedShape{"in", 1, points(geom.Rectangle(0, 0, 100, 50)), lists(wrong)})
	compareMoved(t, jobs)
}

// TestKerf: a beam as wide as the kerf led along the lines cuts out the plate, and
// takes just its openings away.
func TestKerf(t *testing.T) {
	t.Parallel()
	s := rand.New(rand.NewPCG(6, 3))
	var jobs []movedShape
	for _, l := range plateLoops(geomtest.Cases(15, 40)) {
		wide := []float64{0.1, 0.18, 0.3, 3.175}[s.IntN(4)]
		cut, _ := kerf.Compensate(kerf.Plate{Outline: l, Openings: []geom.Loop{l}}, wide)
		jobs = append(jobs, movedShape{"cut", wide / 2, points(l), lists([]geom.Loop{cut.Outline})})
		if len(cut.Openings) > 0 {
			jobs = append(jobs, movedShape{"hole", wide / 2, points(l), lists(cut.Openings)})
		}
	}
	// The comparison sees an outline that was not moved at all.
	l := geom.Rectangle(0, 0, 100, 50)
	jobs = append(jobs, movedShape{"cut", 0.09, points(l), lists([]geom.Loop{l})})
	compareMoved(t, jobs)
}

// compareMoved asks shapely; the last job is the one that must differ.
func compareMoved(t *testing.T, jobs []movedShape) {
	t.Helper()
	var input strings.Builder
	for _, j := range jobs {
		line, err := json.Marshal(j)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	answers := lines[movedAnswer](t, input.String(), python, "offset_shapes.py")
	if len(answers) != len(jobs) {
		t.Fatalf("%d answers to %d shapes", len(answers), len(jobs))
	}
	worst, held := movedAnswer{}, 0
	for i, a := range answers {
		off := max(a.Own-a.Area, a.Area-a.Own)
		if slices.ContainsFunc(jobs[i].Loop, func(v [3]float64) bool { return v[2] != 0 }) {
			off = max(0, off-geosApart*a.Round)
		}
		off /= max(a.Area, 1)
		differs := off > movedArea || a.Apart > movedApart
		if last := i == len(answers)-1; differs != last {
			t.Errorf("%s by %g of %v: areas %.6f and %.6f mm2, %.6f mm apart", jobs[i].What, jobs[i].By,
				jobs[i].Loop, a.Own, a.Area, a.Apart)
		} else if !last {
			worst.Area, worst.Apart = max(worst.Area, off), max(worst.Apart, a.Apart)
		}
		if a.Holds {
			held++
		}
	}
	if held < len(answers)*9/10 {
		t.Errorf("only %d of %d left anything", held, len(answers))
	}
	t.Logf("%d shapes, areas within %.2g, outlines within %.2g mm", len(answers), worst.Area, worst.Apart)
}
