package outside

import "math"

// cleared is a rectangle, its corners counter-clockwise from the lower left, some
// of which a bit of a radius clears for a square part: by a round through the
// corner whose middle is on its bisector, or by one on its shorter side.
func cleared(corners [4][2]float64, clear [4]bool, radius float64, shape string) [][3]float64 {
	var out [][3]float64
	for i, c := range corners {
		if !clear[i] {
			out = append(out, [3]float64{c[0], c[1]})
			continue
		}
		if shape == "t-bone" {
			out = append(out, sideRelief(corners, clear, i, radius+reliefOver)...)
		} else {
			out = append(out, bisectorRelief(corners, clear, i, radius+reliefOver)...)
		}
	}
	return out
}

type vector [2]float64

func (v vector) plus(w vector, k float64) vector { return vector{v[0] + k*w[0], v[1] + k*w[1]} }

// to gives the unit direction from one corner to another, and how far it is.
func to(a, b [2]float64) (vector, float64) {
	d := math.Hypot(b[0]-a[0], b[1]-a[1])
	return vector{(b[0] - a[0]) / d, (b[1] - a[1]) / d}, d
}

// arcCorner is the corner of a line at a, from which an arc about c goes
// counter-clockwise to b.
func arcCorner(a, b, c vector) [3]float64 {
	turn := math.Mod(math.Atan2(b[1]-c[1], b[0]-c[0])-math.Atan2(a[1]-c[1], a[0]-c[0])+2*math.Pi, 2*math.Pi)
	return [3]float64{a[0], a[1], math.Tan(turn / 4)}
}

// bisectorRelief is a round of radius r through corner i. It cuts both sides at
// r times the root of 2; on a side shorter than two of that it meets the round of
// the other corner above the side's middle.
func bisectorRelief(corners [4][2]float64, clear [4]bool, i int, r float64) [][3]float64 {
	at, before, after := vector(corners[i]), (i+3)%4, (i+1)%4
	back, lengthBack := to(corners[i], corners[before])
	ahead, lengthAhead := to(corners[i], corners[after])
	middle := at.plus(back, r/math.Sqrt2).plus(ahead, r/math.Sqrt2)
	// A quarter turn to the right of the way ahead is out of the rectangle; of the
	// way back, the way ahead reversed.
	meet := func(along vector, length float64, out vector) vector {
		off := length/2 - r/math.Sqrt2
		return at.plus(along, length/2).plus(out, math.Sqrt(r*r-off*off)-r/math.Sqrt2)
	}
	from, to := at.plus(back, r*math.Sqrt2), at.plus(ahead, r*math.Sqrt2)
	if clear[before] && lengthBack < 2*math.Sqrt2*r {
		from = meet(back, lengthBack, vector{-ahead[0], -ahead[1]})
	}
	if clear[after] && lengthAhead < 2*math.Sqrt2*r {
		to = meet(ahead, lengthAhead, vector{-back[0], -back[1]})
		return [][3]float64{arcCorner(from, to, middle)}
	}
	return [][3]float64{arcCorner(from, to, middle), {to[0], to[1]}}
}

// sideRelief is a half round on the shorter side at corner i, from the corner on;
// on a side shorter than two of them it meets that of the other corner outside the
// side's middle. A round is never wider than the side.
func sideRelief(corners [4][2]float64, clear [4]bool, i int, r float64) [][3]float64 {
	at, before, after := vector(corners[i]), (i+3)%4, (i+1)%4
	back, lengthBack := to(corners[i], corners[before])
	ahead, lengthAhead := to(corners[i], corners[after])
	along, length, other, out := ahead, lengthAhead, after, vector{-back[0], -back[1]}
	if lengthBack <= lengthAhead {
		along, length, other, out = back, lengthBack, before, vector{-ahead[0], -ahead[1]}
	}
	r = math.Min(r, length/2)
	middle := at.plus(along, r)
	end := at.plus(along, 2*r)
	shared := clear[other] && length < 4*r
	if shared {
		off := length/2 - r
		end = at.plus(along, length/2).plus(out, math.Sqrt(r*r-off*off))
	}
	switch {
	case other == after && shared: // the other corner goes on from the meeting point
		return [][3]float64{arcCorner(at, end, middle)}
	case other == after:
		return [][3]float64{arcCorner(at, end, middle), {end[0], end[1]}}
	default:
		return [][3]float64{arcCorner(end, at, middle), {at[0], at[1]}}
	}
}
