package joinery

import (
	"math"
	"slices"

	"drawerwright/geom"
)

// topEdge and bottomEdge are the longest sides of an outline that run along its
// upper and its lower end, by their first vertex.
func topEdge(l geom.Loop) int    { return levelEdge(l, l.Bounds().Max.Y) }
func bottomEdge(l geom.Loop) int { return levelEdge(l, l.Bounds().Min.Y) }

func levelEdge(l geom.Loop, y float64) int {
	best, longest := 0, -1.0
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if math.Abs(a.Y-y) < settle && math.Abs(b.Y-y) < settle && math.Abs(a.X-b.X) > longest {
			best, longest = i, math.Abs(a.X-b.X)
		}
	}
	return best
}

// minNotch is the narrowest notch in an outline that the router's smallest bit
// gets into, on files that round to a thousandth of an inch too.
func (l *layout) minNotch() float64 {
	if !l.Cutter.Kind.FollowsDrawing() {
		return 0
	}
	return l.Cutter.Width + notchRoom
}

// notchRoom is how much wider than its bit a notch is at least, in millimeters:
// toolpath programs find no way into one of just its width.
const notchRoom = 0.05

// cutEdge puts corners into a side of a panel's outline, in the direction in which
// it runs.
func cutEdge(p *geom.Panel, side int, corners []geom.Vertex) {
	p.Outline = slices.Insert(slices.Clone(p.Outline), side+1, corners...)
}

// notchCut is a rectangle out of the upper edge of a panel, down to y, or out of the lower
// one, up to y: for a part with square corners, or with inside corners of a radius.
type notchCut struct {
	kind      geom.EdgeKind
	top       bool
	x         geom.Interval
	y, radius float64
}

// cut cuts it out of a panel.
func (n notchCut) cut(p *geom.Panel) {
	kind, y, radius := n.kind, n.y, n.radius
	edge, side := p.Outline.Bounds().Max.Y, topEdge(p.Outline)
	from, to := n.x.Max, n.x.Min // the upper edge runs from right to left
	if !n.top {
		edge, side = p.Outline.Bounds().Min.Y, bottomEdge(p.Outline)
		from, to = n.x.Min, n.x.Max
	}
	at := func(x, y float64) geom.Vertex { return geom.Vertex{Point: geom.Point{X: x, Y: y}} }
	if radius == 0 {
		corners := []geom.Vertex{at(from, edge), at(from, y), at(to, y), at(to, edge)}
		cutEdge(p, side, geom.Loop(corners).With(geom.Relief, 1, 2))
		p.EdgeCuts = append(p.EdgeCuts, cutOut(kind, corners))
		return
	}
	in := math.Copysign(radius, to-from)
	up := math.Copysign(radius, edge-y)
	a, b := at(from, y+up), at(to-in, y)
	a.Bulge, b.Bulge = -geom.QuarterTurn, -geom.QuarterTurn // clockwise, into the panel
	corners := []geom.Vertex{at(from, edge), a, at(from+in, y), b, at(to, y+up), at(to, edge)}
	cutEdge(p, side, corners)
	p.EdgeCuts = append(p.EdgeCuts, cutOut(kind, corners))
}

// cutOut is what corners that were put into an edge cut off, which runs the other way
// round.
func cutOut(kind geom.EdgeKind, corners []geom.Vertex) geom.EdgeCut {
	return geom.EdgeCut{Kind: kind, Area: geom.Loop(corners).Reverse()}
}
