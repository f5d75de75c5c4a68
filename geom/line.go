package geom

// Meeting is where two lines meet, p + t d and q + u e: the shares t of d and u of e.
// ok is false for parallel lines; lines that are nearly so meet far away.
func Meeting(p, d, q, e Point) (t, u float64, ok bool) {
	det := d.Cross(e)
	if det == 0 {
		return 0, 0, false
	}
	w := q.Sub(p)
	return w.Cross(e) / det, w.Cross(d) / det, true
}

// Beside is where p lies by the line from a to another place b: how far along it from a,
// and how far to its left, in millimeters.
func Beside(p, a, b Point) (along, left float64) {
	d, v := b.Sub(a), p.Sub(a)
	n := d.Norm()
	return v.Dot(d) / n, d.Cross(v) / n
}

// Foot is the place nearest to p on the line through a and b, as a share of the way
// from a to b; not a number where these are one place.
func Foot(p, a, b Point) float64 {
	d := b.Sub(a)
	return p.Sub(a).Dot(d) / d.Dot(d)
}

// Nearest is the place nearest to p between a and b.
func Nearest(p, a, b Point) Point {
	if d := b.Sub(a); d.Dot(d) == 0 { // the same place, or so near that the square of its distance is none
		return a
	}
	return a.Lerp(b, Interval{0, 1}.Clamp(Foot(p, a, b)))
}
