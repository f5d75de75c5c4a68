package scene

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// move is how far a side of a panel's outline would have to move into the wood for a
// play to be shown exaggerated.
type move struct {
	side int
	by   float64
}

// fingerPlays finds the plays between fingers of two pieces, and by part how its
// fingers would narrow to exaggerate them. A gap has a finger on either side: that of
// the part that comes first narrows.
func fingerPlays(parts []Part, pieces []Piece, wood []standing) (list []Clearance, moves map[int][]move) {
	moves = make(map[int][]move)
	for i, p := range pieces {
		panel := parts[p.Part].Panel
		sides := fingerSides(panel)
		for j, q := range pieces {
			if q.Part <= p.Part || len(fingerSides(parts[q.Part].Panel)) == 0 {
				continue
			}
			var found []Clearance
			for _, side := range sides {
				gap, at, any := before(panel, side, p.Placement, wood[j])
				if !any {
					continue
				}
				across := axisOf(p.Placement.Y)
				found = append(found, Clearance{Gap: gap, Axis: across, Along: longest(at, across),
					Low: vector(at.Low), High: vector(at.High),
					Joint: notched(panel, side, p.Placement, i, j),
					Check: joinery.CheckID{Code: joinery.CheckFingerClearance, Part: joinery.Side}})
				if gap > minSeen {
					moves[p.Part] = append(moves[p.Part], move{side, float64((Exaggeration - 1) * gap)})
				}
			}
			slices.SortFunc(found, func(a, b Clearance) int { return cmp.Compare(a.Low.Z, b.Low.Z) })
			for n := range found {
				found[n].Name = fmt.Sprintf("fingers of the %s and the %s, %d from below", p.Name, q.Name, n+1)
			}
			list = append(list, found...)
		}
	}
	return list, moves
}

// notched is how a finger of another piece is in the notch at a side of a piece's finger.
func notched(p geom.Panel, side int, at geom.Placement, of, in int) Seated {
	v, w, all := p.Outline[side], p.Outline[(side+1)%len(p.Outline)], p.Outline.Bounds()
	long := math.Abs(w.X - v.X)
	if v.X+w.X > all.Min.X+all.Max.X {
		long = -long
	}
	up := w.X > v.X // panels of walls stand upright
	between := slices.ContainsFunc(fingerSides(p), func(other int) bool {
		o, q := p.Outline[other], p.Outline[(other+1)%len(p.Outline)]
		return (o.X+q.X > all.Min.X+all.Max.X) == (v.X+w.X > all.Min.X+all.Max.X) && (o.Y < v.Y) == up && o.Y != v.Y
	})
	return Seated{In: in, Of: of, Pocket: -1, Way: at.X.Scale(long), Up: up, Open: !between}
}

// fingerSides are the sides of an outline along which its fingers meet others: those
// that bear on another part, run along the panel and lie within its width.
func fingerSides(p geom.Panel) (list []int) {
	r := p.Outline.Bounds()
	for _, i := range p.Outline.Marked(geom.Mating) {
		v, w := p.Outline[i], p.Outline[(i+1)%len(p.Outline)]
		if v.Bulge == 0 && v.Y == w.Y && v.Y > r.Min.Y && v.Y < r.Max.Y {
			list = append(list, i)
		}
	}
	return list
}

// before finds the wood nearest before a side of a panel: the gap, and its block in
// the box. Beyond the most play there is none.
func before(p geom.Panel, side int, at geom.Placement, wood standing) (gap float64, empty block, any bool) {
	v, w := p.Outline[side], p.Outline[(side+1)%len(p.Outline)]
	b := block{Low: [3]float64{min(v.X, w.X), v.Y, 0}, High: [3]float64{max(v.X, w.X), v.Y, p.Thickness}}
	up := w.X < v.X // outlines run counter-clockwise
	if up {
		b.High[1] += maxPlay
	} else {
		b.Low[1] -= maxPlay
	}
	void := placed(b, at)
	if void.And(wood.about).Least() <= minSeen {
		return 0, block{}, false
	}
	for _, other := range wood.blocks {
		c := void.And(other)
		if c.Least() <= minSeen {
			continue
		}
		c = toPanel(c, at)
		if up {
			c.Low[1], c.High[1] = v.Y, c.Low[1]
		} else {
			c.Low[1], c.High[1] = c.High[1], v.Y
		}
		if d := c.High[1] - c.Low[1]; !any || d < gap {
			gap, empty, any = d, placed(c, at), true
		}
	}
	return gap, empty, any
}

// narrowed is a panel whose fingers' sides have moved, as far as there is wood.
func narrowed(p geom.Panel, moves []move) geom.Panel {
	old := p.Outline
	p.Outline = slices.Clone(old)
	for _, m := range moves {
		next := (m.side + 1) % len(old)
		into := 1.0
		if old[next].X < old[m.side].X {
			into = -1
		}
		y := old[m.side].Y + float64(into*min(m.by, spare(p, old, m.side, into)))
		if math.Abs(y-old[m.side].Y) > math.Abs(p.Outline[m.side].Y-old[m.side].Y) { // a part may stand twice
			p.Outline[m.side].Y, p.Outline[next].Y = y, y
		}
	}
	return p
}

// spare is the wood that a finger's side can move into, up or down: half of the finger,
// as its other side moves too, and not into a pocket.
func spare(p geom.Panel, outline geom.Loop, side int, into float64) float64 {
	y := outline[side].Y
	most := math.Inf(1)
	for _, v := range outline {
		if d := float64(into * (v.Y - y)); d > minSeen {
			most = min(most, (d-minLeft)/2)
		}
	}
	next := outline[(side+1)%len(outline)]
	for _, k := range p.Pockets {
		r := k.Outline.Bounds()
		if r.Max.X <= min(outline[side].X, next.X) || r.Min.X >= max(outline[side].X, next.X) {
			continue
		}
		near, far := float64(into*(r.Min.Y-y)), float64(into*(r.Max.Y-y))
		if max(near, far) > 0 {
			most = min(most, min(near, far)-minLeft)
		}
	}
	return max(0, most)
}
