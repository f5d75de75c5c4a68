package proof

import (
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// cell is a box of wood in the space of the drawer.
type cell struct{ low, high geom.Vec3 }

// solid is a panel in its place, by cells: the other way to find out what is in
// whose way.
type solid struct {
	panel geom.Panel
	stand geom.Placement
}

// cells splits the panel at all coordinates at which a pocket begins or ends. All
// pockets are upright rectangles, so this is exact.
func (s solid) cells() []cell {
	cut := func(f func(geom.Rect) [2]float64, size float64) []float64 {
		list := []float64{0, size}
		for _, k := range s.panel.Pockets {
			for _, v := range f(k.Outline.Bounds()) {
				list = append(list, math.Max(0, math.Min(size, v)))
			}
		}
		slices.Sort(list)
		return slices.Compact(list)
	}
	xs := cut(func(r geom.Rect) [2]float64 { return [2]float64{r.Min.X, r.Max.X} }, s.panel.Length())
	ys := cut(func(r geom.Rect) [2]float64 { return [2]float64{r.Min.Y, r.Max.Y} }, s.panel.Width())
	var list []cell
	for i := 1; i < len(xs); i++ {
		for j := 1; j < len(ys); j++ {
			x, y := (xs[i-1]+xs[i])/2, (ys[j-1]+ys[j])/2
			low, high := 0.0, s.panel.Thickness
			for _, k := range s.panel.Pockets {
				if r := k.Outline.Bounds(); x > r.Min.X && x < r.Max.X && y > r.Min.Y && y < r.Max.Y {
					if k.Face == geom.Outside {
						low = math.Max(low, k.Depth)
					} else {
						high = math.Min(high, s.panel.Thickness-k.Depth)
					}
				}
			}
			if low < high {
				a, b := s.stand.Apply(geom.Vec3{X: xs[i-1], Y: ys[j-1], Z: low}), s.stand.Apply(geom.Vec3{X: xs[i], Y: ys[j], Z: high})
				list = append(list, cell{
					geom.Vec3{X: math.Min(a.X, b.X), Y: math.Min(a.Y, b.Y), Z: math.Min(a.Z, b.Z)},
					geom.Vec3{X: math.Max(a.X, b.X), Y: math.Max(a.Y, b.Y), Z: math.Max(a.Z, b.Z)},
				})
			}
		}
	}
	return list
}

// common are the extents of what two cells have in common, below 0 where they
// are apart.
func (c cell) common(d cell) geom.Vec3 {
	return geom.Vec3{
		X: math.Min(c.high.X, d.high.X) - math.Max(c.low.X, d.low.X),
		Y: math.Min(c.high.Y, d.high.Y) - math.Max(c.low.Y, d.low.Y),
		Z: math.Min(c.high.Z, d.high.Z) - math.Max(c.low.Z, d.low.Z),
	}
}

// shared is the volume that two solids have in common.
func (s solid) shared(t solid) float64 {
	sum := 0.0
	for _, a := range s.cells() {
		for _, b := range t.cells() {
			v := a.common(b)
			sum += math.Max(0, v.X) * math.Max(0, v.Y) * math.Max(0, v.Z)
		}
	}
	return sum
}

// openings are the stretches along Y through which a solid can be moved without
// being in another: all others are barred by one cell or another. Those that all
// but are open end before they begin.
func (s solid) openings(of solid) [][2]float64 {
	var bars [][2]float64
	for _, a := range s.cells() {
		for _, b := range of.cells() {
			if v := a.common(b); v.X > penetration && v.Z > penetration {
				bars = append(bars, [2]float64{a.low.Y - b.high.Y, a.high.Y - b.low.Y})
			}
		}
	}
	slices.SortFunc(bars, func(p, q [2]float64) int { return slices.Compare(p[:], q[:]) })
	var list [][2]float64
	from := math.Inf(-1)
	for _, b := range bars {
		if b[0] > from-doubtful {
			list = append(list, [2]float64{from, b[0]})
		}
		from = math.Max(from, b[1])
	}
	return append(list, [2]float64{from, math.Inf(1)})
}

// solidsOf are the solids of a drawer, in the order of piecesOf.
func solidsOf(d joinery.Drawer) []solid {
	var list []solid
	for _, p := range d.Parts {
		for _, at := range p.Placements {
			panel := p.Panel
			panel.Pockets = slices.Clone(panel.Pockets)
			list = append(list, solid{panel, at})
		}
	}
	return list
}

// piece is the solid as this package takes it.
func (s solid) piece(name string) Piece {
	return Piece{Name: name, Board: boardOf(s.panel), Placement: s.stand}
}
