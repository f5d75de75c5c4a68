package scene

import (
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/carcass"
	"drawerwright/geom/joinery"
)

// block is a cuboid along the axes of the box, by its least and greatest corner.
type block struct{ low, high [3]float64 }

// and is what two blocks have in common.
func (b block) and(c block) block {
	for k := range 3 {
		b.low[k], b.high[k] = max(b.low[k], c.low[k]), min(b.high[k], c.high[k])
	}
	return b
}

// over is the smallest block about both.
func (b block) over(c block) block {
	for k := range 3 {
		b.low[k], b.high[k] = min(b.low[k], c.low[k]), max(b.high[k], c.high[k])
	}
	return b
}

// least is the smallest of the block's three extents; below 0 for none at all.
func (b block) least() float64 {
	return min(b.high[0]-b.low[0], b.high[1]-b.low[1], b.high[2]-b.low[2])
}

// longest is the axis along which the block is longest, of those that are not one.
func (b block) longest(not int) int {
	best := -1
	for k := range 3 {
		if k != not && (best < 0 || b.high[k]-b.low[k] > b.high[best]-b.low[best]) {
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
	p, q := array(at.Apply(vector(b.low))), array(at.Apply(vector(b.high)))
	for k := range 3 {
		b.low[k], b.high[k] = min(p[k], q[k]), max(p[k], q[k])
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
			list[i].about = list[i].about.over(b)
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
				one.Blocks = append(one.Blocks, carcass.Block{Low: b.low, High: b.high})
			}
			list = append(list, one)
		}
	}
	return list
}

// blocks is the wood of a panel as blocks in panel coordinates, touching but not
// overlapping: exact where all lines are along x and y, as they are in joints. Where
// there are arcs, as in pulls, a block counts by its middle.
func blocks(p geom.Panel) (list []block) {
	loops := append([]geom.Loop{p.Outline}, p.Holes...)
	for _, k := range p.Pockets {
		loops = append(loops, k.Outline)
	}
	var xs, ys []float64
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
			if !on || to <= from {
				continue
			}
			if n := len(list) - 1; n >= row && list[n].high[0] == xs[i-1] && list[n].low[2] == from && list[n].high[2] == to {
				list[n].high[0] = xs[i]
				continue
			}
			list = append(list, block{[3]float64{xs[i-1], ys[j-1], from}, [3]float64{xs[i], ys[j], to}})
		}
	}
	return list
}
