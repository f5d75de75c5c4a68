package mill

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// reliefOver is how much larger than its bit a relief is, in millimeters of the
// radius: enough that every toolpath program takes the bit through it.
const reliefOver = 0.1

// inTheWay is how much wood, in millimeters across a corner, may stand where a
// square part goes before the corner needs relief: a slip of glue.
const inTheWay = 1e-3

// needRelief reports which corners of a pocket a round bit of a radius leaves in the
// way of the part that goes in. What other pockets clear is not in its way.
func needRelief(pocket, takes geom.Loop, radius float64, cleared []geom.Ring) []bool {
	need := make([]bool, len(pocket))
	in := takes.Flatten(flatWithin)
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
			p := v.Along(along, s).Along(back, t)
			if s >= 0 && t >= 0 && reaches(in, p) && !slices.ContainsFunc(cleared, func(r geom.Ring) bool { return reaches(r, p) }) {
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

// reaches reports whether a point is within a ring, or on it.
func reaches(r geom.Ring, p geom.Point) bool { return r.Contains(p) || r.Distance(p) < touching }

// square gives the unit directions along the two sides that leave an inside
// corner of 90 degrees between straight sides.
func square(l geom.Loop, i int) (along, back geom.Point, ok bool) {
	before := l.Before(i)
	if l[i].Bulge != 0 || l[before].Bulge != 0 {
		return along, back, false
	}
	v := l[i].Point
	along, back = l.Next(i).Sub(v).Unit(), l[before].Sub(v).Unit()
	// Above 0 inside a counter-clockwise corner.
	return along, back, math.Abs(along.Dot(back)) < 1e-6 && along.Cross(back) > 0
}

// relieve gives a pocket with relief at the corners that need it; ok is false
// where its sides are too short for that.
func relieve(pocket geom.Loop, need []bool, radius float64, shape Relief) (out geom.Loop, ok bool) {
	r := reliever{pocket, need, radius}
	at := r.bisector
	if shape == ReliefTBone {
		at = r.side
	}
	for i, v := range pocket {
		if !need[i] {
			out = append(out, v)
			continue
		}
		vertices, ok := at(i)
		if !ok {
			return nil, false
		}
		out = append(out, vertices...)
	}
	return out, true
}

// reliever is a pocket with the corners that a bit of a radius has to relieve.
type reliever struct {
	pocket geom.Loop
	need   []bool
	radius float64
}

func (r reliever) length(side int) float64 { return r.pocket[side].To(r.pocket.Next(side).Point) }

// on is the place so far along a side.
func (r reliever) on(side int, along float64) geom.Point {
	return r.pocket[side].Lerp(r.pocket.Next(side).Point, along/r.length(side))
}

// outward is the point a distance outside the middle of a side.
func (r reliever) outward(side int, by float64) geom.Point {
	a, b := r.pocket[side].Point, r.pocket.Next(side).Point
	return a.Middle(b).Along(b.Sub(a).Unit().Right(), by)
}

// shorter is the side through which a corner's relief goes along a side: its own,
// which leaves it, or the one before.
func (r reliever) shorter(i int) int {
	if before := r.pocket.Before(i); r.length(before) <= r.length(i) {
		return before
	}
	return i
}

// side relieves a corner along its shorter side.
func (r reliever) side(i int) (out []geom.Vertex, ok bool) {
	v, side := r.pocket[i], r.shorter(i)
	long := r.length(side)
	rho := math.Min(r.radius+reliefOver, long/2)
	if rho < r.radius-touching {
		return nil, false
	}
	after := r.pocket.After(i)
	other := after // the corner at the far end of that side
	if side != i {
		other = side
	}
	shared := r.need[other] && r.shorter(other) == side && 4*rho > long
	switch {
	case shared && side == i: // the first of two that run into each other
		mid := r.outward(side, math.Sqrt(math.Max(0, float64(rho*rho)-float64((long/2-rho)*(long/2-rho)))))
		return []geom.Vertex{arcTo(v.Point, mid, r.on(side, rho)), arcTo(mid, r.pocket[after].Point, r.on(side, long-rho))}, true
	case shared: // the second: drawn with the first
		return []geom.Vertex{v}, true
	case side == i:
		return []geom.Vertex{{Point: v.Point, Bulge: 1}, {Point: r.on(side, 2*rho)}}, true
	}
	return []geom.Vertex{{Point: r.on(side, long-2*rho), Bulge: 1}, v}, true
}

// bisector relieves a corner through its middle, by as much of both sides.
func (r reliever) bisector(i int) (out []geom.Vertex, ok bool) {
	rho := r.radius + reliefOver
	cut, half := rho*math.Sqrt2, rho/math.Sqrt2 // along both sides, and that to the middle
	before, after := r.pocket.Before(i), r.pocket.After(i)
	left := func(side, far int) float64 {
		if r.need[far] {
			return r.length(side) - cut
		}
		return r.length(side)
	}
	// Two reliefs on one side that run into each other cross on its middle.
	crossing := func(side, far int) (geom.Point, bool) {
		off := r.length(side)/2 - half
		return r.outward(side, math.Sqrt(float64(rho*rho)-float64(off*off))-half), r.need[far] && r.length(side) >= 2*r.radius-touching
	}
	start, ok := r.on(before, r.length(before)-cut), true
	if left(before, before) < cut {
		if start, ok = crossing(before, before); !ok {
			return nil, false
		}
	}
	end, alone := r.on(i, cut), left(i, after) >= cut
	if !alone {
		if end, ok = crossing(i, after); !ok {
			return nil, false
		}
	}
	along, back, _ := square(r.pocket, i)
	out = append(out, arcTo(start, end, r.pocket[i].Along(along.Add(back), half)))
	if alone {
		out = append(out, geom.Vertex{Point: end})
	}
	return out, true
}

// arcTo is the vertex at a whose side is the counter-clockwise arc to b about a center.
func arcTo(a, b, center geom.Point) geom.Vertex {
	return geom.Vertex{Point: a, Bulge: geom.ArcAbout(center, a, b).Bulge}
}
