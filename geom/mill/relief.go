package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// reliefOver is how much larger than its bit a relief is, in millimetres of the
// radius: enough that every toolpath program takes the bit through it.
const reliefOver = 0.1

// inTheWay is how much wood, in millimetres across a corner, may stand where a
// square part goes before the corner needs relief: a slip of glue.
const inTheWay = 1e-3

// needRelief tells which corners of a pocket a round bit of a radius leaves in the
// way of the part that goes in. What other pockets clear is not in its way.
func needRelief(pocket, takes geom.Loop, radius float64, cleared []geom.Loop) []bool {
	need := make([]bool, len(pocket))
	for i := range pocket {
		along, back, ok := square(pocket, i)
		if !ok || len(takes) == 0 {
			continue
		}
		v := pocket[i].Point
		for k := 1; k < arcSteps; k++ {
			// A point of the wood beside the bit's round, a hair into the corner.
			sin, cos := math.Sincos(math.Pi / 2 * float64(k) / arcSteps)
			s, t := radius-float64((radius+inTheWay)*cos), radius-float64((radius+inTheWay)*sin)
			p := geom.Point{X: v.X + float64(s*along.X) + float64(t*back.X), Y: v.Y + float64(s*along.Y) + float64(t*back.Y)}
			if s >= 0 && t >= 0 && inside(p, takes) && !slices.ContainsFunc(cleared, func(l geom.Loop) bool { return inside(p, l) }) {
				need[i] = true
				break
			}
		}
	}
	return need
}

// arcSteps is at how many places along its quarter of a turn the wood beside a
// round is looked at.
const arcSteps = 256

// inside tells whether a point is within a loop of straight sides, or on it.
func inside(p geom.Point, l geom.Loop) bool {
	in := false
	for i, a := range l {
		b := l[(i+1)%len(l)]
		d := a.To(b.Point)
		if d < touching {
			continue
		}
		s := (float64((p.X-a.X)*(b.X-a.X)) + float64((p.Y-a.Y)*(b.Y-a.Y))) / d
		if off := (float64((p.X-a.X)*(b.Y-a.Y)) - float64((p.Y-a.Y)*(b.X-a.X))) / d; math.Abs(off) < touching && s > -touching && s < d+touching {
			return true
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+float64((p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X)) {
			in = !in
		}
	}
	return in
}

// square gives the unit directions along the two sides that leave an inside
// corner of 90 degrees between straight sides.
func square(l geom.Loop, i int) (along, back geom.Point, ok bool) {
	n := len(l)
	before := (i + n - 1) % n
	if l[i].Bulge != 0 || l[before].Bulge != 0 {
		return along, back, false
	}
	v, next, prev := l[i].Point, l[(i+1)%n].Point, l[before].Point
	a, b := v.To(next), v.To(prev)
	along = geom.Point{X: (next.X - v.X) / a, Y: (next.Y - v.Y) / a}
	back = geom.Point{X: (prev.X - v.X) / b, Y: (prev.Y - v.Y) / b}
	dot := float64(along.X*back.X) + float64(along.Y*back.Y)
	cross := float64(along.X*back.Y) - float64(along.Y*back.X) // above 0 inside a counter-clockwise corner
	return along, back, math.Abs(dot) < 1e-6 && cross > 0
}

// relieve gives a pocket with relief at the corners that need it; ok is false
// where its sides are too short for that.
func relieve(pocket geom.Loop, need []bool, radius float64, shape Relief) (out geom.Loop, ok bool) {
	n := len(pocket)
	rho := radius + reliefOver
	length := func(i int) float64 { return pocket[i].To(pocket[(i+1)%n].Point) }
	at := func(i int, along float64) geom.Point { // on side i
		a, b := pocket[i].Point, pocket[(i+1)%n].Point
		f := along / length(i)
		return geom.Point{X: a.X + float64(f*(b.X-a.X)), Y: a.Y + float64(f*(b.Y-a.Y))}
	}
	// shorter tells through which of a corner's sides a relief of the shape "side"
	// goes: its own, which leaves it, or the one before.
	shorter := func(i int) int {
		if before := (i + n - 1) % n; length(before) <= length(i) {
			return before
		}
		return i
	}
	for i, v := range pocket {
		if !need[i] {
			out = append(out, v)
			continue
		}
		before, after := (i+n-1)%n, (i+1)%n
		if shape == ReliefSide {
			side := shorter(i)
			r := math.Min(rho, length(side)/2)
			if r < radius-touching {
				return nil, false
			}
			other := after // the corner at the far end of that side
			if side == before {
				other = before
			}
			shared := need[other] && shorter(other) == side && 4*r > length(side)
			switch {
			case shared && side == i: // the first of two that run into each other
				mid := outward(pocket, side, math.Sqrt(math.Max(0, float64(r*r)-float64((length(side)/2-r)*(length(side)/2-r)))))
				out = append(out, arcTo(v.Point, mid, at(side, r)), arcTo(mid, pocket[after].Point, at(side, length(side)-r)))
			case shared: // the second: drawn with the first
				out = append(out, v)
			case side == i:
				out = append(out, geom.Vertex{Point: v.Point, Bulge: 1}, geom.Vertex{Point: at(side, 2*r)})
			default:
				out = append(out, geom.Vertex{Point: at(side, length(side)-2*r), Bulge: 1}, v)
			}
			continue
		}
		cut := rho * math.Sqrt2 // along both sides
		used := func(side, far int) float64 {
			if need[far] {
				return length(side) - cut
			}
			return length(side)
		}
		half := rho / math.Sqrt2
		// Two reliefs on one side that run into each other cross on its middle.
		crossing := func(side int) geom.Point {
			off := length(side)/2 - half
			return outward(pocket, side, math.Sqrt(float64(rho*rho)-float64(off*off))-half)
		}
		centre := func(c int) geom.Point {
			along, back, _ := square(pocket, c)
			p := pocket[c].Point
			return geom.Point{X: p.X + float64(half*(along.X+back.X)), Y: p.Y + float64(half*(along.Y+back.Y))}
		}
		start, end := geom.Point{}, geom.Point{}
		switch {
		case used(before, before) >= cut:
			start = at(before, length(before)-cut)
		case need[before] && length(before) >= 2*radius-touching:
			start = crossing(before)
		default:
			return nil, false
		}
		switch {
		case used(i, after) >= cut:
			end = at(i, cut)
		case need[after] && length(i) >= 2*radius-touching:
			end = crossing(i)
		default:
			return nil, false
		}
		out = append(out, arcTo(start, end, centre(i)))
		if used(i, after) >= cut {
			out = append(out, geom.Vertex{Point: end})
		}
	}
	return out, true
}

// outward is the point a distance outside the middle of a side.
func outward(l geom.Loop, side int, by float64) geom.Point {
	a, b := l[side].Point, l[(side+1)%len(l)].Point
	d := a.To(b)
	return geom.Point{X: (a.X+b.X)/2 + float64(by*(b.Y-a.Y))/d, Y: (a.Y+b.Y)/2 - float64(by*(b.X-a.X))/d}
}

// arcTo is the vertex at a whose side is the counter-clockwise arc to b about a centre.
func arcTo(a, b, centre geom.Point) geom.Vertex {
	sweep := math.Atan2(b.Y-centre.Y, b.X-centre.X) - math.Atan2(a.Y-centre.Y, a.X-centre.X)
	if sweep <= 0 {
		sweep += 2 * math.Pi
	}
	return geom.Vertex{Point: a, Bulge: math.Tan(sweep / 4)}
}
