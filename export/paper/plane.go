package paper

import (
	"fmt"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// plane cuts a panel along an axis, at a distance across it from the datum.
type plane struct {
	name    string
	along   geom.Axis
	at      float64
	runs    []geom.Run
	details []detail
	box     geom.Rect   // of the section in the drawing
	frames  []geom.Rect // about what its details show
}

// A cut that is longer than so many thicknesses, or mm, has no detail: it would be a plain
// strip of wood.
const (
	long    = 4
	longest = 40.0
)

// cutPlanes finds a plane along the panel and one across it that show what is cut, and the
// details of both, each different one of a plane once.
func (v *view) cutPlanes() {
	told := make(map[string]bool)
	for _, axis := range []geom.Axis{geom.AlongX, geom.AlongY} {
		p, ok := v.cutPlane(axis)
		if !ok {
			continue
		}
		p.name = string(rune('A' + len(v.planes)))
		far := v.Length()
		if axis == geom.AlongY {
			far = v.Width()
		}
		for _, d := range details(p.runs, far, v.Thickness) {
			key := func(mirrored bool) string { return fmt.Sprint(axis, d.profile(mirrored)) }
			if !told[key(false)] && !told[key(true)] {
				told[key(false)] = true
				p.details = append(p.details, d)
			}
		}
		v.planes = append(v.planes, p)
	}
}

// roomyStretch is how wide, in mm of the panel, a stretch is that has room for a plane's letters.
const roomyStretch = 20.0

// cutPlane is the plane along an axis that shows the most cuts that leave wood, in a stretch in
// which nothing changes and that has room for its letters, if there is one; of such, in the
// widest. ok is false where none shows any.
func (v *view) cutPlane(axis geom.Axis) (best plane, ok bool) {
	most := 0
	var steps []float64
	add := func(l geom.Loop) {
		b := l.Bounds()
		for _, p := range []geom.Point{b.Min, b.Max} {
			_, across := axis.Of(p)
			steps = append(steps, across)
		}
	}
	for _, q := range v.Outline {
		_, across := axis.Of(q.Point)
		steps = append(steps, across)
	}
	for _, h := range v.Holes {
		add(h)
	}
	for _, k := range v.Pockets {
		add(k.Outline)
	}
	slices.Sort(steps)
	sections := v.SectionLines(chord)
	widest := 0.0
	roomy := false
	for i := 1; i < len(steps); i++ {
		wide := steps[i] - steps[i-1]
		if wide < 0.1 { // mm, less than any cut is wide
			continue
		}
		p := plane{along: axis, at: (steps[i] + steps[i-1]) / 2}
		p.runs = sections.At(axis, p.at).Runs()
		cut := 0
		for _, r := range p.runs {
			if (r.Inside > 0 || r.Outside > 0) && r.Len() < long*v.Thickness {
				cut++
			}
		}
		if cut == 0 || roomy && wide < roomyStretch {
			continue
		}
		if wide >= roomyStretch && !roomy || cut > most || cut == most && wide > widest {
			best, most, widest = p, cut, wide
			roomy = wide >= roomyStretch
		}
	}
	return best, most > 0
}

// section marks a plane in the view and draws what it shows beside that: above, seen from
// the lower edge, or to the right, seen from the left end; the face that is up points away
// from the view.
func (v *view) section(p *plane) {
	thick := float64(v.scale * v.Thickness)
	place := func(q geom.Point) geom.Point { return geom.Point{X: v.left, Y: v.top + planeRoom}.Along(q, v.scale) }
	title := drawing.Text{String: p.name + "-" + p.name, Size: figure, Face: drawing.Bold,
		At: geom.Point{X: v.right + 2, Y: v.top + planeRoom + (thick-figure*0.72)/2}}
	if p.along == geom.AlongY {
		place = func(q geom.Point) geom.Point {
			return geom.Point{X: v.right + planeRoom, Y: v.below}.Along(geom.Point{X: q.Y, Y: q.X}, v.scale)
		}
		title.At, title.Align = geom.Point{X: v.right + planeRoom + thick/2, Y: v.below - figure - 1}, drawing.Middle
	}
	for _, l := range profiles(p.runs, v.Thickness) {
		placed := make(geom.Loop, len(l))
		for i, q := range l {
			placed[i].Point = place(q.Point)
		}
		hatch(&v.out, placed, false)
		v.out.Loops(drawing.Thick, 0, placed)
		if b := placed.Bounds(); p.box == (geom.Rect{}) {
			p.box = b
		} else {
			p.box = p.box.Union(b)
		}
	}
	for _, d := range p.details {
		frame := geom.Around(place(geom.Point{X: d.Min, Y: 0}), place(geom.Point{X: d.Max, Y: v.Thickness})).Grow(1)
		p.frames = append(p.frames, frame)
		v.out.Loops(drawing.Thin, 0, frame.Loop())
	}
	v.out.Write(title)
}

// planeMarks draws a plane across the view: a chain line, wide at both ends, each with an
// arrow in the direction that one looks and with the plane's letter.
func (v *view) planeMarks(p plane) {
	at := v.sheet(p.along.At(0, p.at))
	ends := [2]geom.Point{{X: v.left, Y: at.Y}, {X: v.right, Y: at.Y}}
	out, look := geom.Point{X: 1}, geom.Point{Y: 1}
	if p.along == geom.AlongY {
		ends = [2]geom.Point{{X: at.X, Y: v.below}, {X: at.X, Y: v.top}}
		out, look = look, out
	}
	v.out.Line(drawing.Chain, ends[0], ends[1])
	for _, end := range ends {
		out = out.Scale(-1)
		v.out.Line(drawing.Thick, end.Along(out, 0.4), end.Along(out, 2.3))
		tip := end.Along(out, 1.5)
		v.out.Line(drawing.Thin, tip.Along(look, -4.5), tip)
		arrowhead(&v.out, tip, look)
		c := end.Along(out, 5.2)
		letter := drawing.Text{String: p.name, Size: figure, Face: drawing.Bold, Align: drawing.Middle,
			At: geom.Point{X: c.X, Y: c.Y - float64(0.36*figure)}}
		if free := roomOf(v.out); free.clear(letter.Box()) {
			v.out.Write(letter)
		} else {
			free.name(&v.out, p.name, figure, []geom.Point{tip}, 1)
		}
	}
}

// arrowhead draws a filled one that ends at a point.
func arrowhead(d *drawing.Drawing, tip, way geom.Point) {
	back := tip.Along(way, -2.2)
	side := way.Left().Scale(0.6)
	d.Loops(drawing.Pen{}, 1, geom.Polygon(tip, back.Add(side), back.Sub(side)))
}

// detail is a stretch of a section with what is cut there.
type detail struct {
	geom.Interval
	name string
	runs []geom.Run // of the section within it
	end  float64    // the end of the panel in it: -1 the near one, 1 the far one
}

// details are the stretches of a section in which cuts are near each other, with some wood
// beside them. Cuts that run along most of the section have none: there is nothing to see.
func details(runs []geom.Run, far, thickness float64) (list []detail) {
	for i := 0; i < len(runs); i++ {
		if runs[i].Inside == 0 && runs[i].Outside == 0 {
			continue
		}
		last := i
		for n := i + 1; n < len(runs) && runs[n].Min-runs[last].Max < thickness; n++ {
			if runs[n].Inside > 0 || runs[n].Outside > 0 {
				last = n
			}
		}
		d := detail{Interval: geom.Interval{Min: runs[i].Min, Max: runs[last].Max}}
		i = last
		beside := max(3, thickness/4)
		if d.Len() > min(long*thickness, longest) {
			continue
		}
		if d.Min -= beside; d.Min < beside {
			d.Min, d.end = 0, -1
		}
		if d.Max += beside; d.Max > far-beside {
			d.Max, d.end = far, 1
		}
		for _, r := range runs {
			if r.Max > d.Min && r.Min < d.Max {
				d.runs = append(d.runs, r)
			}
		}
		list = append(list, d)
	}
	return list
}

// signature is alike for stretches that look alike, wherever they are.
func (d detail) signature() string { return fmt.Sprint(d.end) + d.said(d.runs) }

// profile is alike for stretches whose cuts look alike, mirrored or not, with however much wood beside them: where
// they are the view says.
func (d detail) profile(mirrored bool) string {
	uncut := func(r geom.Run) bool { return r.Inside == 0 && r.Outside == 0 }
	runs, near, far := d.runs, d.end < 0, d.end > 0
	if mirrored {
		runs, near, far = slices.Clone(runs), far, near
		slices.Reverse(runs)
	}
	for len(runs) > 0 && uncut(runs[0]) {
		runs, near = runs[1:], false
	}
	for len(runs) > 0 && uncut(runs[len(runs)-1]) {
		runs, far = runs[:len(runs)-1], false
	}
	return fmt.Sprint(near, far) + d.said(runs)
}

// said are runs of a stretch in words; those that differ by the rounding of a sum alone are alike.
func (d detail) said(runs []geom.Run) (out string) {
	const rounding = 1e-6 // mm
	for _, r := range runs {
		long := r.Intersect(d.Interval).Len()
		out += fmt.Sprintf(" %.2f %.2f %.2f", long+rounding, r.Inside+rounding, r.Outside+rounding)
	}
	return out
}
