package paper

import (
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// wellSeen is how thick, in mm of the sheet, a part is drawn at least in a detail.
const wellSeen = 10.0

// enlarged is the scale of a detail of a part of a thickness.
func enlarged(thickness float64) float64 {
	for _, scale := range []float64{1, 2} {
		if scale*thickness >= wellSeen {
			return scale
		}
	}
	return 5
}

// enlargement is a detail in the making.
type enlargement struct {
	detail
	along         geom.Axis
	scale         float64
	thickness     float64
	places, faces []drawing.Mark // along the panel, and above the lower face
	o, size       geom.Point     // what is drawn lies at o in its drawing, size large
}

// detail draws a stretch of a section as it lies in the sheet, with the distances along
// the panel from its datum, and the depths from the face that is up.
func (v *view) detail(s detail, along geom.Axis, scale float64) drawing.Drawing {
	e := enlargement{detail: s, along: along, scale: scale, thickness: v.Thickness}
	e.places, e.faces = v.measured(s, along)
	d := e.sheet()
	v.cutOut(&d, s, e.put)
	sides := [2]drawing.Side{drawing.Below, drawing.RightSide}
	if along == geom.AlongY {
		sides = [2]drawing.Side{drawing.LeftSide, drawing.Below}
	}
	for i, marks := range [2][]drawing.Mark{e.places, e.faces} {
		d.Ordinates(e.edge(sides[i], len(marks)), marks, figure)
	}
	title := drawing.Text{String: s.name + " (" + ScaleText(scale) + ")", Size: figure, Face: drawing.Bold,
		At: geom.Point{Y: d.Height - figure}}
	d.Width = max(d.Width, rim+drawing.Width(title.Face, figure, title.String))
	d.Write(title)
	return d
}

// sheet is an empty drawing with room for the detail, its numbers and its title.
func (e *enlargement) sheet() (d drawing.Drawing) {
	const head = 8.5 // for the title
	long, thick := float64(e.scale*e.Len()), float64(e.scale*e.thickness)
	reach := func(marks []drawing.Mark) float64 { return rim + drawing.Reach(marks, figure) }
	beyond := func(marks []drawing.Mark, long float64) float64 { return slack(len(marks), long) + figure/2 }
	if e.along == geom.AlongX {
		wide := beyond(e.places, long)
		e.o = geom.Point{X: rim + wide, Y: max(reach(e.places), 2*beyond(e.faces, thick))}
		e.size = geom.Point{X: long, Y: thick}
		d.Width, d.Height = e.o.X+long+max(wide, reach(e.faces)), e.o.Y+thick+head
		return d
	}
	e.o = geom.Point{X: reach(e.places), Y: max(reach(e.faces), 2*beyond(e.places, long))}
	e.size = geom.Point{X: thick, Y: long}
	d.Width = e.o.X + thick + beyond(e.faces, thick) + rim
	d.Height = e.o.Y + long + head
	return d
}

// put is where a place along the section, and above the face that is down, is in the drawing.
func (e *enlargement) put(q geom.Point) geom.Point {
	q.X -= e.Min
	if e.along == geom.AlongY {
		q.X, q.Y = q.Y, q.X
	}
	return e.o.Along(q, e.scale)
}

// edge is a side of what is drawn, with room for so many numbers: upright ones go beyond its
// lower end alone, for the title is above.
func (e *enlargement) edge(side drawing.Side, n int) drawing.Edge {
	at := drawing.Edge{Side: side, From: e.o, To: e.o.Add(geom.Point{X: e.size.X}), Scale: e.scale}
	beyond := slack(n, e.size.X)
	at.Before, at.After = beyond, beyond
	if side == drawing.LeftSide || side == drawing.RightSide {
		at.To = e.o.Add(geom.Point{Y: e.size.Y})
		at.Before, at.After = 2*slack(n, e.size.Y), 0
	}
	if off := (geom.Point{X: e.size.X}); side == drawing.RightSide {
		at.From, at.To = at.From.Add(off), at.To.Add(off)
	}
	return at
}

// slack is by how much, in mm, so many numbers go beyond both ends of an edge.
func slack(n int, long float64) float64 {
	e := drawing.Edge{To: geom.Point{X: long}}
	for e.Before = 0.5; e.Room(figure) < n; e.Before += 0.5 {
		e.After = e.Before
	}
	return e.Before
}

// measured are the places of a stretch that have numbers: along the panel, and above the
// face that is down, with their distances from the face that is up, from which a depth is
// measured and the wood that a cut into the other face leaves.
func (v *view) measured(s detail, axis geom.Axis) (places, faces []drawing.Mark) {
	var along []float64
	if s.end < 0 {
		along = append(along, s.Min)
	}
	if s.end > 0 {
		along = append(along, s.Max)
	}
	down := []float64{0, v.Thickness}
	for _, r := range s.runs {
		if r.Inside == 0 && r.Outside == 0 {
			continue
		}
		along = append(along, r.Min, r.Max)
		if r.Inside > 0 {
			down = append(down, r.Inside)
		}
		if r.Outside > 0 {
			down = append(down, v.Thickness-r.Outside)
		}
	}
	places = v.marks(axis, along)
	for i := range places {
		places[i].At -= s.Min
	}
	for _, m := range marks(down, v.Thickness, v.number) {
		faces = append(faces, drawing.Mark{At: v.Thickness - m.At, Text: m.Text})
	}
	reverse(faces)
	return places, faces
}

// reverse turns a list of marks about.
func reverse(list []drawing.Mark) {
	for i, j := 0, len(list)-1; i < j; i, j = i+1, j-1 {
		list[i], list[j] = list[j], list[i]
	}
}

// cutOut draws the wood of a stretch, open where the panel goes on.
func (v *view) cutOut(d *drawing.Drawing, s detail, put func(geom.Point) geom.Point) {
	window := geom.Rect{Min: geom.Point{X: s.Min, Y: -1}, Max: geom.Point{X: s.Max, Y: v.Thickness + 1}}
	if s.end < 0 {
		window.Min.X--
	}
	if s.end > 0 {
		window.Max.X++
	}
	for _, l := range profiles(s.runs, v.Thickness) {
		ring := make(geom.Ring, len(l))
		for i, q := range l {
			ring[i] = q.Point
		}
		outlined(d, ring.ClipTo(window), window, put, false)
	}
}
