package template

import (
	"slices"

	"drawerwright/geom"
)

// Line is the middle of a slide, over the opening's lower edge.
type Line struct {
	Name string
	At   float64
}

// Side is one side of a cabinet with the lines of its slides and the holes that they
// are screwed into: x from the front edge to the back, y up from the datum.
type Side struct {
	Name   string
	Height float64
	Lines  []Line
	Holes  []geom.Point
}

// Measures of a stick, in mm: it is as wide as the usual first hole's setback, 37, and
// some wood beyond, and its marks are this long.
const (
	stickWide = 56.0
	stickMark = 20.0
)

// Stick makes a story stick for the sides of a cabinet: it stands on the datum, its
// front edge level with the side's; each slide's middle is the edge of a slot, and holes
// near the front edge have a guide.
func Stick(s Side, o Options) Plate {
	p := Plate{Name: "stick-" + s.Name, Title: "story stick for the slides of " + s.Name, Parts: []string{s.Name}, Count: 1, Outline: geom.Rectangle(0, 0, s.Height, stickWide)}
	var lines []float64
	for _, l := range s.Lines {
		lines = append(lines, l.At)
	}
	p.seams, _ = o.seams(s.Height, stickWide, [2][]float64{lines, nil}) // no bed of a job is so small
	p.seams[1], p.round = nil, o.round()
	taken := p.seamZones()
	free := func(r geom.Rect) bool {
		return !slices.ContainsFunc(taken, func(t geom.Rect) bool { return r.Grow(minRib).Overlaps(t) })
	}
	put := func(l geom.Loop) bool {
		b := l.Bounds()
		if b.Min.X < minRib || b.Max.X > s.Height-minRib || !free(b) {
			return false
		}
		p.Openings = append(p.Openings, l)
		taken = append(taken, b)
		return true
	}
	for _, l := range s.Lines {
		y := minRib + 4.0 // before the holes, which stand on the same line
		if !put(geom.Rectangle(l.At, y, l.At+o.slot(), y+stickMark)) {
			p.Engrave = append(p.Engrave, []geom.Vertex{{Point: geom.Point{X: l.At, Y: 0}}, {Point: geom.Point{X: l.At, Y: stickWide}}})
		}
	}
	guides := false
	for _, h := range s.Holes {
		// Seen with the datum at the left and the front edge below, the stick lies on the
		// left side turned by a quarter.
		if h.X < stickWide-minRib-pilot {
			guides = put(geom.Circle(geom.Point{X: h.Y, Y: h.X}, max(pilot, o.MinBridge+slotRoom)/2)) || guides
		}
	}
	p.use(guides)
	w := p.writer()
	p.write(w, "DATUM", geom.Point{X: 0, Y: stickWide / 2}, 1)
	p.write(w, "FRONT", geom.Point{X: s.Height / 2, Y: 0}, 0)
	for _, l := range s.Lines {
		p.write(w, l.Name+" "+o.text(l.At), geom.Point{X: l.At + 20, Y: stickWide / 2}, 0)
	}
	p.write(w, s.Name, geom.Point{X: s.Height / 2, Y: stickWide / 2}, 0)
	p.write(w, o.Job, geom.Point{X: s.Height, Y: stickWide / 2}, 0)
	if stamp, ok := w.place(stampText, geom.Point{X: s.Height, Y: 0}, 0); ok {
		p.stamp = stamp
	}
	return p
}

// use says how a stick is used, with guides for screws or without, and how a print of it is.
func (p *Plate) use(guides bool) {
	holes, circles := "", ""
	if guides {
		holes = " Small holes are for an awl or a pilot bit: the first screw of each slide."
		circles = ", and in the middle of each circle: the first screw of each slide"
	}
	p.Notes = append(p.Notes, "Stand its DATUM end on the opening's lower edge, the side with the word FRONT level "+
		"with the cabinet side's front edge, and mark along that edge of each slot which is nearer to the datum."+holes+
		" Turn it over for the other side.")
	p.paper = []string{"Stand its DATUM end on the opening's lower edge, the long edge with the word FRONT along the " +
		"cabinet side's front edge, tape it down, and prick through at both ends of that long edge of each narrow " +
		"rectangle which is nearer to the datum" + circles + ". For the other side turn it over and prick through the " +
		"same places."}
}
