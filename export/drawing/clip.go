package drawing

import (
	"drawerwright/geom"
)

// Clip gives the part of a drawing's lines that is in a window, its lower left corner the
// origin. Lines are cut, arcs as chords; fills and texts stay where all of them is
// inside.
func (d Drawing) Clip(w geom.Rect) Drawing {
	out := Drawing{Width: w.Width(), Height: w.Height()}
	move := func(p geom.Point) geom.Point { return p.Sub(w.Min) }
	for _, s := range d.Shapes {
		lines := s.flat()
		whole := true
		for _, l := range lines {
			for _, p := range l {
				whole = whole && w.Contains(geom.Around(p))
			}
		}
		if whole {
			out.Add(Drawing{Shapes: []Shape{s}}, w.Min.Scale(-1), 1)
			continue
		}
		for _, l := range lines {
			if s.Closed {
				l = append(l, l[0])
			}
			var kept []geom.Point
			for i := range len(l) - 1 {
				a, b, ok := cutTo(w, l[i], l[i+1])
				if !ok {
					continue
				}
				if n := len(kept); n == 0 || kept[n-1] != move(a) {
					out.Line(s.Pen, kept...)
					kept = []geom.Point{move(a)}
				}
				kept = append(kept, move(b))
			}
			out.Line(s.Pen, kept...)
		}
	}
	for _, t := range d.Texts {
		if w.Contains(t.Box()) {
			t.At = move(t.At)
			out.Write(t)
		}
	}
	return out
}

// cutTo is the part of a side in a window (Y.-D. Liang, B. A. Barsky, A new concept
// and method for line clipping, 1984).
func cutTo(w geom.Rect, a, b geom.Point) (from, to geom.Point, ok bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, e := range [4][2]float64{{-dx, a.X - w.Min.X}, {dx, w.Max.X - a.X}, {-dy, a.Y - w.Min.Y}, {dy, w.Max.Y - a.Y}} {
		switch p, q := e[0], e[1]; {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	at := func(t float64) geom.Point {
		switch t {
		case 0:
			return a
		case 1:
			return b
		}
		return a.Lerp(b, t)
	}
	return at(t0), at(t1), true
}
