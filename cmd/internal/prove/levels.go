package prove

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// facing is the part of a solid that looks up, or down, at one height: its area, in mm2, and its
// first moments about the panel's lower left corner.
type facing struct{ area, mx, my float64 }

func (f *facing) add(area, x, y float64) {
	f.area += area
	f.mx += float64(area * x)
	f.my += float64(area * y)
}

// levels are the flat faces of a panel's solid by their height over its outside face, in
// microns: those that look down, and those that look up.
type levels map[int64]*[2]facing

const down, up = 0, 1

func (l levels) at(z float64, way int) *facing {
	k := int64(math.Round(z * 1e3))
	if l[k] == nil {
		l[k] = new([2]facing)
	}
	return &l[k][way]
}

// shapeOf is what a part's solid should be: its flat faces, and what chords for arcs may
// make of their areas, in mm2.
type shapeOf struct {
	levels    levels
	allowed   float64
	thickness float64
	box       geom.Rect
}

// solidChord is what the chords of a solid's arcs may be off, 0.05 mm and some room; solidGrid the
// same of its corners, which are on a grid of a few microns. Both are in mm.
const solidChord, solidGrid = 0.06, 0.003

// shape works a part's solid out from the operations that the job asks for: in level
// lines between all places at which anything begins or ends.
func (p *Prover) shape(part record.Part) (out shapeOf, ok bool) {
	outline, ok := loopOf(part.Outline)
	if !ok {
		return out, false
	}
	out = shapeOf{levels: levels{}, thickness: part.Thickness.MM(), box: outline.Bounds()}
	panel := ringsOf(outline)
	out.allow(outline)
	var faces [2][]layer // from the outside, and from the inside
	for i, op := range part.Operations {
		l, ok := loopOf(op.Outline)
		if !ok {
			continue
		}
		out.allow(l)
		side := 0
		if op.Face == geom.Inside.String() {
			side = 1
		}
		faces[side] = append(faces[side], layer{ringsOf(l), op.Depth.MM(), i})
	}
	var heights []float64
	for _, list := range [][]layer{{{rings: panel}}, faces[0], faces[1]} {
		for _, l := range list {
			for _, ring := range l.list {
				for _, v := range ring {
					heights = append(heights, math.Max(out.box.Min.Y, math.Min(out.box.Max.Y, v.Y)))
				}
			}
		}
	}
	slices.Sort(heights)
	for i := 1; i < len(heights); i++ {
		thick, y := heights[i]-heights[i-1], (heights[i]+heights[i-1])/2
		if thick < 1e-9 {
			continue
		}
		across := func(list []float64, r rings) []float64 { return r.spans(list, y) }
		inside := panel.spans(nil, y)
		for k := 0; k+1 < len(inside); k += 2 {
			a, b := deepest(faces[0], across, inside[k], inside[k+1]), deepest(faces[1], across, inside[k], inside[k+1])
			for i, j := 0, 0; i < len(a) && j < len(b); {
				from, to := math.Max(a[i].from, b[j].from), math.Min(a[i].to, b[j].to)
				if low, high := a[i].depth, out.thickness-b[j].depth; low < high-1e-6 {
					area := float64((to - from) * thick)
					out.levels.at(low, down).add(area, (from+to)/2-out.box.Min.X, y-out.box.Min.Y)
					out.levels.at(high, up).add(area, (from+to)/2-out.box.Min.X, y-out.box.Min.Y)
				}
				if a[i].to < b[j].to {
					i++
				} else {
					j++
				}
			}
		}
	}
	return out, true
}

// allow adds what a loop may make of an area.
func (s *shapeOf) allow(l geom.Loop) {
	for i, v := range l {
		length := l.SideLength(i)
		s.allowed += float64(length * solidGrid)
		if v.Bulge != 0 {
			s.allowed += float64(length * (solidChord + ringChord))
		}
	}
}

// triangle of a solid, its corners counter-clockwise from outside.
type triangle [3]geom.Vec3

// levelsOf gathers the flat faces of triangles, about their box's lower left corner, and
// gives that box.
func levelsOf(list []triangle) (out levels, low, high geom.Vec3) {
	out = levels{}
	if len(list) == 0 {
		return out, low, high
	}
	low, high = list[0][0], list[0][0]
	for _, t := range list {
		for _, v := range t {
			low = geom.Vec3{X: math.Min(low.X, v.X), Y: math.Min(low.Y, v.Y), Z: math.Min(low.Z, v.Z)}
			high = geom.Vec3{X: math.Max(high.X, v.X), Y: math.Max(high.Y, v.Y), Z: math.Max(high.Z, v.Z)}
		}
	}
	for _, t := range list {
		a, b, c := t[0], t[1], t[2]
		if math.Abs(a.Z-b.Z) > 1e-4 || math.Abs(a.Z-c.Z) > 1e-4 {
			continue
		}
		area := (float64((b.X-a.X)*(c.Y-a.Y)) - float64((c.X-a.X)*(b.Y-a.Y))) / 2
		way := up
		if area < 0 {
			way, area = down, -area
		}
		out.at(a.Z-low.Z, way).add(area, (a.X+b.X+c.X)/3-low.X, (a.Y+b.Y+c.Y)/3-low.Y)
	}
	return out, low, high
}

// volume is that of closed triangles.
func volume(list []triangle) float64 {
	sum := 0.0
	for _, t := range list {
		a, b, c := t[0], t[1], t[2]
		sum += float64(a.X*(float64(b.Y*c.Z)-float64(b.Z*c.Y))) + float64(a.Y*(float64(b.Z*c.X)-float64(b.X*c.Z))) + float64(a.Z*(float64(b.X*c.Y)-float64(b.Y*c.X)))
	}
	return sum / 6
}

// volume of the shape that is wanted.
func (s shapeOf) volume() float64 {
	sum := 0.0
	for _, z := range s.levels.heights() {
		f := s.levels[z]
		sum += float64(float64(z) * 1e-3 * (f[up].area - f[down].area))
	}
	return sum
}

func (l levels) heights() []int64 {
	var list []int64
	for k := range l {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
