package prove

import (
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/milled"
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
	leaning   float64 // mm3 under floors that lean
	allowed   float64
	thickness float64
	box       geom.Rect
	nearness
}

// solidGrid is what the corners of a solid may be off, in mm: they are on a grid of a few microns.
const solidGrid = 0.003

// nearness is how near solids are to what they are compared with, in millimeters: how far the
// chords of that are from its arcs, what solids may be off along arcs, and along all sides, since
// their corners are on a grid.
type nearness struct{ chord, arcs, grid float64 }

// asDesigned is that of solids of the design: chords within 0.05 mm and some room.
var asDesigned = nearness{chord: ringChord, arcs: 0.06 + ringChord, grid: solidGrid}

// asMilled is that of solids of what the bits leave, by the same drawings and with the same chords.
var asMilled = nearness{chord: milled.Chord, arcs: 1e-3, grid: 1e-4}

// shape works a part's solid out from the operations that the job asks for.
func (p *Prover) shape(part record.Part) (out shapeOf, ok bool) {
	outline, ok := loopOf(part.Outline)
	if !ok {
		return out, false
	}
	panel := geom.Panel{Outline: outline, Thickness: part.Thickness.MM()}
	for _, op := range part.Operations {
		l, ok := loopOf(op.Outline)
		if !ok {
			continue
		}
		k := geom.Pocket{Face: geom.Outside, Depth: op.Depth.MM(), Outline: l}
		if op.Face == geom.Inside.String() {
			k.Face = geom.Inside
		}
		if op.Kind == geom.Flank.String() {
			k.Lean = leanOf(outline, l.Bounds())
		}
		panel.Pockets = append(panel.Pockets, k)
	}
	return shapeFrom(panel, asDesigned), true
}

// shapeFrom works the solid of a panel out, in level lines between all places at which anything
// begins or ends.
func shapeFrom(p geom.Panel, near nearness) (out shapeOf) {
	out = shapeOf{levels: levels{}, thickness: p.Thickness, box: p.Outline.Bounds(), nearness: near}
	flat := func(l geom.Loop) rings {
		out.allow(l)
		return rings{}.with(l.Flatten(near.chord))
	}
	panel := flat(p.Outline)
	var faces [2][]layer // from the outside, and from the inside
	for i, k := range p.Pockets {
		side := 0
		if k.Face == geom.Inside {
			side = 1
		}
		faces[side] = append(faces[side], layer{flat(k.Outline), k.Depth, i})
	}
	for i, h := range p.Holes {
		faces[0] = append(faces[0], layer{flat(h), p.Thickness + 1, len(p.Pockets) + i})
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
	wood := geom.Rect{Min: out.box.Max, Max: out.box.Min}
	for i := 1; i < len(heights); i++ {
		if heights[i]-heights[i-1] >= 1e-9 {
			out.slab(p.Pockets, panel, faces, heights[i-1:i+1], &wood)
		}
	}
	out.about(wood)
	return out
}

// slab adds what is left of a panel between two heights, and makes the box about all that is
// left contain it.
func (s *shapeOf) slab(pockets []geom.Pocket, panel rings, faces [2][]layer, between []float64, wood *geom.Rect) {
	thick, y := between[1]-between[0], (between[0]+between[1])/2
	leans := func(which int) bool { return which >= 0 && which < len(pockets) && pockets[which].Lean != 0 }
	for i, l := range faces[0] {
		if leans(l.which) {
			faces[0][i].depth = pockets[l.which].DepthAt(y)
		}
	}
	across := func(list []float64, r rings) []float64 { return r.spans(list, y) }
	inside := panel.spans(nil, y)
	for k := 0; k+1 < len(inside); k += 2 {
		a, b := deepest(faces[0], across, inside[k], inside[k+1]), deepest(faces[1], across, inside[k], inside[k+1])
		for i, j := 0, 0; i < len(a) && j < len(b); {
			from, to := math.Max(a[i].from, b[j].from), math.Min(a[i].to, b[j].to)
			if low, high := a[i].depth, s.thickness-b[j].depth; low < high-1e-6 {
				if to-from > tick {
					here := geom.Rect{Min: geom.Point{X: from, Y: between[0]}, Max: geom.Point{X: to, Y: between[1]}}
					*wood = wood.Union(here)
				}
				area := float64((to - from) * thick)
				if leans(a[i].which) {
					s.leaning += float64(area * low)
				} else {
					s.levels.at(low, down).add(area, (from+to)/2-s.box.Min.X, y-s.box.Min.Y)
				}
				s.levels.at(high, up).add(area, (from+to)/2-s.box.Min.X, y-s.box.Min.Y)
			}
			if a[i].to < b[j].to {
				i++
			} else {
				j++
			}
		}
	}
}

// about takes the box about what is left of a panel.
func (s *shapeOf) about(wood geom.Rect) {
	by := wood.Min.Sub(s.box.Min)
	for _, f := range s.levels {
		for way := range f {
			f[way].mx -= float64(f[way].area * by.X)
			f[way].my -= float64(f[way].area * by.Y)
		}
	}
	s.box = wood
}

// allow adds what a loop may make of an area.
func (s *shapeOf) allow(l geom.Loop) {
	for i, v := range l {
		length := l.SideLength(i)
		s.allowed += float64(length * s.grid)
		if v.Bulge != 0 {
			s.allowed += float64(length * s.arcs)
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
	return sum - s.leaning
}

func (l levels) heights() []int64 {
	var list []int64
	for k := range l {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
