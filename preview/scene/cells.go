package scene

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/joinery"
)

// block is a cuboid along the axes of the box.
type block = carcass.Block

// longest is the axis along which the block is longest, of those that are not one.
func longest(b block, not int) int {
	best := -1
	for k := range 3 {
		if k != not && (best < 0 || b.High[k]-b.Low[k] > b.High[best]-b.Low[best]) {
			best = k
		}
	}
	return best
}

func array(v geom.Vec3) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }
func vector(a [3]float64) geom.Vec3 {
	return geom.Vec3{X: a[0], Y: a[1], Z: a[2]}
}

// placed is a block of a panel where the panel stands.
func placed(b block, at geom.Placement) block {
	p, q := array(at.Apply(vector(b.Low))), array(at.Apply(vector(b.High)))
	for k := range 3 {
		b.Low[k], b.High[k] = min(p[k], q[k]), max(p[k], q[k])
	}
	return b
}

// standing is the wood of a piece: blocks in the box, and the one about them.
type standing struct {
	about  block
	blocks []block
}

// stand places the blocks of all pieces.
func stand(parts []Part, pieces []Piece) []standing {
	wood := make([][]block, len(parts))
	for i, p := range parts {
		wood[i] = blocks(p.Panel)
	}
	list := make([]standing, len(pieces))
	for i, p := range pieces {
		for k, b := range wood[p.Part] {
			b = placed(b, p.Placement)
			if k == 0 {
				list[i].about = b
			}
			list[i].about = list[i].about.Over(b)
			list[i].blocks = append(list[i].blocks, b)
		}
	}
	return list
}

// Wood is a drawer by the wood of its pieces.
func Wood(d joinery.Drawer) (list []carcass.Piece) {
	for _, p := range d.Parts {
		wood := blocks(p.Panel)
		for k, at := range p.Placements {
			one := carcass.Piece{Name: PieceName(p, k), Role: p.Role}
			for _, b := range wood {
				b = placed(b, at)
				one.Blocks = append(one.Blocks, b)
			}
			list = append(list, one)
		}
	}
	return list
}

// blocks is the wood of a panel as blocks in panel coordinates, touching but not
// overlapping: exact where all lines are along x and y, as they are in joints. Where
// there are arcs, as in pulls, a block counts by its middle; about the flanks of dovetails only what is
// wood all through.
func blocks(p geom.Panel) (list []block) {
	loops := append([]geom.Loop{p.Outline}, p.Holes...)
	for _, k := range p.Pockets {
		loops = append(loops, k.Outline)
	}
	var xs, ys []float64
	slanted := slantedAt(p)
	for _, l := range loops {
		box := l.Bounds()
		xs, ys = append(xs, box.Min.X, box.Max.X), append(ys, box.Min.Y, box.Max.Y)
		for _, v := range l {
			xs, ys = append(xs, v.X), append(ys, v.Y)
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	sections := p.SectionLines(1)
	for j := 1; j < len(ys); j++ {
		row := len(list)
		section := sections.At(geom.AlongX, (ys[j-1]+ys[j])/2)
		for i := 1; i < len(xs); i++ {
			inside, outside, on := section.Depths((xs[i-1] + xs[i]) / 2)
			from, to := outside, p.Thickness-inside
			cell := geom.Rect{Min: geom.Point{X: xs[i-1], Y: ys[j-1]}, Max: geom.Point{X: xs[i], Y: ys[j]}}
			if !on || to <= from || slices.ContainsFunc(slanted, cell.Overlaps) {
				continue
			}
			if n := len(list) - 1; n >= row && list[n].High[0] == xs[i-1] && list[n].Low[2] == from && list[n].High[2] == to {
				list[n].High[0] = xs[i]
				continue
			}
			list = append(list, block{Low: [3]float64{xs[i-1], ys[j-1], from}, High: [3]float64{xs[i], ys[j], to}})
		}
	}
	return list
}

// slantedAt are the places of walls that lean, or that are neither along x nor y.
func slantedAt(p geom.Panel) (list []geom.Rect) {
	for i, v := range p.Outline {
		if w := p.Outline.Next(i); v.Bulge == 0 && v.X != w.X && v.Y != w.Y {
			list = append(list, geom.Around(v.Point, w.Point))
		}
	}
	for _, k := range p.Pockets {
		if k.Lean != 0 {
			list = append(list, k.Outline.Bounds())
		}
	}
	return list
}
