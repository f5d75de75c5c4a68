package mill

import "drawerwright/geom"

// alongside is the slot outside an outline, from one place to another along it, as
// wide as given. It follows an outline without inside corners; of another, whose
// places lie on the box about it, it follows the box, and clears what is between:
// notches narrower than twice the slot would cross themselves.
func alongside(l geom.Loop, from, to, width float64) geom.Loop {
	inner := stretchOf(l, from, to)
	outer := l
	if !convex(l) {
		outer = l.Bounds().Loop()
		round := outer.Perimeter()
		from, to = place(outer, inner[0].Point), place(outer, inner[len(inner)-1].Point)
		if to <= from {
			to += round
		}
	}
	return append(offset(outer, from, to, width), inner.Reverse()...)
}

// stretchOf is the part of an outline from one place to another, as an open chain.
func stretchOf(l geom.Loop, from, to float64) (chain geom.Loop) {
	n, start := len(l), 0.0
	for i := 0; i < 2*n; i++ { // once round, and on where it passes the first corner
		v, length := l[i%n], l.SideLength(i%n)
		next := l[(i+1)%n].Point
		on := func(s float64) geom.Point { return v.Lerp(next, s/length) } // of a straight side
		if start > from && start < to {
			chain = append(chain, v)
		}
		if from >= start && from < start+length {
			chain = append(chain, geom.Vertex{Point: on(from - start)})
		}
		if to > start && to <= start+length {
			return append(chain, geom.Vertex{Point: on(to - start)})
		}
		start += length
	}
	return chain
}

// offset is the chain at a distance outside an outline of straight sides without
// inside corners, with mitered corners.
func offset(l geom.Loop, from, to, width float64) geom.Loop {
	n := len(l)
	direction := func(i int) geom.Point { return l.Next(i % n).Sub(l[i%n].Point).Unit() }
	var out geom.Loop
	// The miter: width along both outward normals.
	add := func(at, in, leave geom.Point) {
		out = append(out, geom.Vertex{Point: at.Along(in.Add(leave).Right(), width/(1+in.Dot(leave)))})
	}
	start := 0.0
	for i := 0; i < 2*n; i++ {
		a, d := l[i%n].Point, direction(i)
		length := a.To(l[(i+1)%n].Point)
		on := func(s float64) { add(a.Along(d, s), d, d) }
		if start > from && start < to {
			add(a, direction(i+n-1), d)
		}
		if from >= start && from < start+length {
			on(from - start)
		}
		if to > start && to <= start+length {
			on(to - start)
			break
		}
		start += length
	}
	return out
}
