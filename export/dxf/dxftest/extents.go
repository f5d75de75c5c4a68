package dxftest

import (
	"math"

	"drawerwright/export/dxf/dxfread"
)

// Extents gives the least x and y and the most x and y of what is drawn, arcs
// and circles with their full reach; infinities for nothing. It finds an arc's
// reach by angles about its center: chord c and bulge B have the radius
// c(1+B²)/(4|B|) and the sagitta |B|c/2.
func Extents(entities []dxfread.Entity) [4]float64 {
	box := [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	point := func(x, y float64) {
		box[0], box[1] = math.Min(box[0], x), math.Min(box[1], y)
		box[2], box[3] = math.Max(box[2], x), math.Max(box[3], y)
	}
	for _, e := range entities {
		if e.Type == "CIRCLE" {
			point(e.X-e.Radius, e.Y-e.Radius)
			point(e.X+e.Radius, e.Y+e.Radius)
			continue
		}
		for i, p := range e.Vertices {
			point(p.X, p.Y)
			if i+1 < len(e.Vertices) || e.Closed {
				arc(p, e.Vertices[(i+1)%len(e.Vertices)], point)
			}
		}
	}
	return box
}

// arc calls point with the outermost points of an arc that are not its ends.
func arc(p, q dxfread.Vertex, point func(x, y float64)) {
	chord := math.Hypot(q.X-p.X, q.Y-p.Y)
	if p.Bulge == 0 || chord == 0 {
		return
	}
	// The center lies on the chord's left for a positive angle below a half turn.
	offset := (1 - p.Bulge*p.Bulge) / (4 * p.Bulge)
	cx := (p.X+q.X)/2 - (q.Y-p.Y)*offset
	cy := (p.Y+q.Y)/2 + (q.X-p.X)*offset
	radius := math.Hypot(p.X-cx, p.Y-cy)
	start, sweep := math.Atan2(p.Y-cy, p.X-cx), 4*math.Atan(p.Bulge)
	if sweep < 0 {
		start, sweep = start+sweep, -sweep
	}
	for quarter := math.Ceil(start / (math.Pi / 2)); quarter*math.Pi/2 < start+sweep; quarter++ {
		sin, cos := math.Sincos(quarter * math.Pi / 2)
		point(cx+radius*cos, cy+radius*sin)
	}
}
