package paper

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Corner is where pieces of a box meet in a plane across it, near a place in that plane: seen
// from the right, or from above.
type Corner struct {
	Pieces []Piece
	Axis   Axis
	At     float64 // of the plane, mm
	Near   geom.Point
}

// Measures of a corner, in mm of the box: how far from its place sizes belong to it, and what
// is shown about them.
const (
	cornerReach = 45.0
	cornerShown = 2.0
)

// cornerScales are those that a corner is drawn at, the largest that fits: 5:1, 2:1 and 1:1, as usual as ISO 5455 has
// them (from memory), with two between, at which two corners of thicker boards have room on a page.
var cornerScales = []float64{5, 4, 2.5, 2, 1}

// size is a size of a piece between two places in the plane, level or upright.
type size struct {
	from, to geom.Point
	words    string
}

// upright reports whether it is measured up the sheet.
func (s size) upright() bool { return math.Abs(s.to.X-s.from.X) < math.Abs(s.to.Y-s.from.Y) }

// Corners draws corners one above the other, each at the largest of the usual scales at which all have room, the first
// ones larger than those after them, and gives the scales. Each shows its pieces pushed together, hatched each another
// way, with every size of what is cut into them there, the clearances that are left, and their names.
func Corners(list []Corner, in Frame, number Number) (all drawing.Drawing, scales []float64) {
	views, at := make([]cornerView, len(list)), make([]int, len(list)) // which of the scales each has
	for i, c := range list {
		views[i] = c.view(number)
		for at[i] = range cornerScales {
			if views[i].draw(cornerScales[at[i]]); views[i].out.Width <= in.Width {
				break
			}
		}
	}
	for {
		if all = stacked(views); all.Height <= in.Height {
			break
		}
		largest := 0
		for i := range at {
			if at[i] <= at[largest] {
				largest = i
			}
		}
		if at[largest]+1 == len(cornerScales) {
			break
		}
		at[largest]++
		views[largest].draw(cornerScales[at[largest]])
	}
	for _, v := range views {
		scales = append(scales, v.scale)
	}
	return all, scales
}

// stacked are corners that are drawn, from above.
func stacked(views []cornerView) (all drawing.Drawing) {
	const between = 2.0
	for i := range slices.Backward(views) {
		out := views[i].out
		if all.Height > 0 {
			all.Height += between
		}
		all.Add(out, geom.Point{Y: all.Height}, 1)
		all.Width, all.Height = max(all.Width, out.Width), all.Height+out.Height
	}
	return all
}

// view is the corner with its sizes, not drawn yet.
func (c Corner) view(number Number) cornerView {
	v := cornerView{Corner: c}
	for _, p := range c.Pieces {
		if s, ok := p.cut(c.Axis, c.At); ok && v.near(s.place(v.end(s), 0)) {
			v.slices = append(v.slices, s)
		}
	}
	for _, s := range v.slices {
		v.measure(s, number)
		v.clearances(s, number)
	}
	v.window = v.shown()
	v.bodies = geom.Rect{Min: v.window.Max, Max: v.window.Min}
	for _, s := range v.slices {
		v.bodies = v.bodies.Union(s.bounds().Intersect(v.window))
	}
	return v
}

// cornerView is a corner in the making.
type cornerView struct {
	Corner
	slices []slice // of pieces that reach the corner
	sizes  []size
	window geom.Rect // what is shown, in the plane
	bodies geom.Rect // what of it the pieces take up
	scale  float64
	o      geom.Point // of the window in the drawing
	out    drawing.Drawing
}

// near reports whether a place belongs to the corner.
func (v *cornerView) near(p geom.Point) bool {
	return math.Abs(p.X-v.Near.X) < cornerReach && math.Abs(p.Y-v.Near.Y) < cornerReach
}

// end is that of a piece which is nearer to the corner.
func (v *cornerView) end(s slice) float64 {
	ends := s.ends()
	far := func(along float64) float64 { return s.place(along, s.Panel.Thickness/2).To(v.Near) }
	if far(ends.Max) < far(ends.Min) {
		return ends.Max
	}
	return ends.Min
}

// ends are those of what a plane shows of a piece.
func (s slice) ends() geom.Interval {
	return geom.Interval{Min: s.runs[0].Min, Max: s.runs[len(s.runs)-1].Max}
}

// bounds are those of a piece in the plane.
func (s slice) bounds() geom.Rect {
	return geom.Around(s.place(s.ends().Min, 0), s.place(s.ends().Max, s.Panel.Thickness))
}

// measure adds the sizes of a piece at the corner. A plane may pass a round hole anywhere: what it shows of one is
// not measured.
func (v *cornerView) measure(s slice, number Number) {
	if thick := s.Panel.Thickness; v.near(s.place(v.end(s), thick)) {
		v.add(size{s.place(v.end(s), 0), s.place(v.end(s), thick), number(thick) + " thick"})
	}
	for _, r := range s.runs {
		if (r.Inside > 0 || r.Outside > 0) && s.kind(r) != geom.Drill.Noun() &&
			v.near(s.place(r.Min, 0)) && v.near(s.place(r.Max, 0)) {
			v.cutSizes(s, r, number)
		}
	}
}

// tongued reports whether something is cut into a face at the corner, into which a tongue goes.
func (v *cornerView) tongued() bool {
	return slices.ContainsFunc(v.slices, func(s slice) bool {
		return slices.ContainsFunc(s.runs, func(r geom.Run) bool {
			kind := s.kind(r)
			return v.near(s.place(r.Mid(), 0)) && (kind == geom.Dado.String() || kind == geom.Groove.String())
		})
	})
}

// cutSizes adds the sizes of a cut of a piece.
func (v *cornerView) cutSizes(s slice, r geom.Run, number Number) {
	ends, thick := s.ends(), s.Panel.Thickness
	kind := s.kind(r)
	face, wood := s.faceWood(r)
	atEnd := r.Min-ends.Min < same || ends.Max-r.Max < same
	width, depth := " "+kind+" width", " "+kind+" depth"
	if kind == geom.Rabbet.String() && atEnd && r.Outside > 0 && v.tongued() {
		width = " tongue length"
		v.add(size{s.place(r.Mid(), thick-face), s.place(r.Mid(), wood), number(math.Abs(thick-face-wood)) + " tongue"})
	}
	v.add(size{s.place(r.Min, face), s.place(r.Max, face), number(r.Len()) + width})
	v.add(size{s.place(r.Mid(), face), s.place(r.Mid(), wood), number(math.Abs(face-wood)) + depth})
	if !atEnd {
		near, of := r.Min, ends.Min
		if ends.Max-r.Max < r.Min-ends.Min {
			near, of = r.Max, ends.Max
		}
		v.add(size{s.place(of, face), s.place(near, face), number(math.Abs(near-of)) + " to the " + kind})
	}
}

// leastClearance is the least room beside a part that a size is drawn of, in mm: what rounding leaves is none.
const leastClearance = 0.005

// clearances adds the room that other pieces leave in the cuts of a piece, at their walls and their floors.
func (v *cornerView) clearances(s slice, number Number) {
	ends := s.ends()
	for _, r := range s.runs {
		face, wood := s.faceWood(r)
		cut := geom.Around(s.place(r.Min, face), s.place(r.Max, wood))
		if face == wood || !v.near(cut.Center()) {
			continue
		}
		walls := []geom.Point{s.place(r.Mid(), wood)}
		if r.Min-ends.Min > same {
			walls = append(walls, s.place(r.Min, (face+wood)/2))
		}
		if ends.Max-r.Max > same {
			walls = append(walls, s.place(r.Max, (face+wood)/2))
		}
		for _, t := range v.slices {
			in, met := t.within(cut)
			for _, w := range walls {
				near := geom.Point{X: min(max(w.X, in.Min.X), in.Max.X), Y: min(max(w.Y, in.Min.Y), in.Max.Y)}
				if far := near.To(w); met && far > leastClearance && (near.X == w.X || near.Y == w.Y) {
					v.add(size{near, w, number(far) + " clearance"})
				}
			}
		}
	}
}

// within is what a piece takes of a box in the plane; ok is false where it takes nothing.
func (s slice) within(box geom.Rect) (taken geom.Rect, ok bool) {
	taken = geom.Rect{Min: box.Max, Max: box.Min}
	for _, l := range s.rings() {
		if l = l.ClipTo(box); math.Abs(l.Area()) > chord*chord {
			ok = true
			for _, p := range l {
				taken = taken.Include(p)
			}
		}
	}
	return taken, ok
}

// faceWood are the heights of the face that a run is cut into and of what is left there, the same where it is not cut.
func (s slice) faceWood(r geom.Run) (face, wood float64) {
	if r.Inside == 0 {
		return 0, r.Outside
	}
	return s.Panel.Thickness, s.Panel.Thickness - r.Inside
}

// kind is what a cut of a section is; nothing where there is none.
func (s slice) kind(r geom.Run) string {
	at := s.along.At(r.Mid(), s.line)
	deep, face := r.Inside, geom.Inside
	if deep == 0 {
		deep, face = r.Outside, geom.Outside
	}
	for _, k := range s.Panel.Pockets {
		if k.Face == face && k.Depth == deep && k.Outline.Flatten(chord).Contains(at) {
			return k.Kind.Noun()
		}
	}
	return ""
}

// add takes a size once.
func (v *cornerView) add(s size) {
	if s.from.X > s.to.X || s.from.Y > s.to.Y {
		s.from, s.to = s.to, s.from
	}
	alike := func(t size) bool {
		return s.words == t.words && s.upright() == t.upright() &&
			(s.upright() && math.Abs(s.from.Y-t.from.Y) < same || !s.upright() && math.Abs(s.from.X-t.from.X) < same)
	}
	if !slices.ContainsFunc(v.sizes, alike) {
		v.sizes = append(v.sizes, s)
	}
}

// shown is the part of the plane that has all sizes, and some wood about them.
func (v *cornerView) shown() geom.Rect {
	w := geom.Rect{Min: v.Near, Max: v.Near}
	for _, s := range v.sizes {
		w = w.Include(s.from).Include(s.to)
	}
	return w.Grow(cornerShown)
}

// Measures of the sheet about a corner, in mm.
const (
	sizeRow   = 5.2 // from one line of a size to the next
	sizeWords = 1.5 // from a line to its words
)

// draw draws the corner at a scale.
func (v *cornerView) draw(scale float64) {
	v.scale = scale
	const toBody = 2.0 // from the first line of a size
	level, upright := v.parted()
	high, left := 0.0, float64(sizeRow*float64(len(upright)))+toBody
	words := func(s size) float64 { return sizeWords + drawing.Width(drawing.Regular, figure, s.words) }
	for _, s := range upright {
		high = max(high, float64(v.scale*(s.to.Y-v.bodies.Min.Y))+words(s))
	}
	for _, s := range level {
		left = max(left, words(s)-float64(v.scale*(s.from.X-v.bodies.Min.X))+rim)
	}
	wide, top := float64(v.scale*(v.window.Max.X-v.bodies.Min.X)), float64(v.scale*(v.window.Max.Y-v.bodies.Min.Y))
	v.out = drawing.Drawing{}
	low := geom.Point{X: left, Y: float64(sizeRow*float64(len(level))) + toBody} // of the bodies
	v.o = low.Along(v.bodies.Min.Sub(v.window.Min), -v.scale)
	v.out.Height = low.Y + max(high, top+figure+2) + 1
	for i, s := range v.slices {
		for _, l := range s.rings() {
			if l = l.ClipTo(v.window); math.Abs(l.Area()) > chord*chord {
				outlined(&v.out, l, v.window, v.put, i%2 == 1)
			}
		}
	}
	for i, s := range level {
		v.levelSize(s, low.Y-float64(sizeRow*float64(i))-toBody-1)
	}
	for i, s := range upright {
		v.uprightSize(s, low.X-float64(sizeRow*float64(i))-toBody-1)
	}
	v.out.Width = max(low.X+wide, v.names(low.X+wide, low.Y+top)) + 1
}

// parted are the level sizes and the upright ones, each in the order of their rows from the
// view outward: level ones that begin farthest to the left first and upright ones that end highest, so that no line of
// one meets the words of another.
func (v *cornerView) parted() (level, upright []size) {
	for _, s := range v.sizes {
		if s.upright() {
			upright = append(upright, s)
		} else {
			level = append(level, s)
		}
	}
	slices.SortStableFunc(level, func(a, b size) int { return cmp.Compare(a.from.X, b.from.X) })
	slices.SortStableFunc(upright, func(a, b size) int { return -cmp.Compare(a.to.Y, b.to.Y) })
	return level, upright
}

// put is where a place of the plane is in the drawing.
func (v *cornerView) put(p geom.Point) geom.Point { return v.o.Along(p.Sub(v.window.Min), v.scale) }

// levelSize writes a size below the view, its words to the left of it.
func (v *cornerView) levelSize(s size, y float64) {
	a, b := v.put(s.from), v.put(s.to)
	for _, p := range []geom.Point{a, b} {
		v.out.Line(drawing.Thin, geom.Point{X: p.X, Y: v.put(v.bodies.Min).Y - 0.8}, geom.Point{X: p.X, Y: y - 1})
	}
	ticked(&v.out, geom.Point{X: a.X, Y: y}, geom.Point{X: b.X, Y: y})
	v.out.Write(drawing.Text{String: s.words, Size: figure, Value: true, Align: drawing.Right,
		At: geom.Point{X: a.X - sizeWords, Y: y - float64(0.36*figure)}})
}

// uprightSize writes a size to the left of the view, its words above it.
func (v *cornerView) uprightSize(s size, x float64) {
	a, b := v.put(s.from), v.put(s.to)
	for _, p := range []geom.Point{a, b} {
		v.out.Line(drawing.Thin, geom.Point{X: v.put(v.bodies.Min).X - 0.8, Y: p.Y}, geom.Point{X: x - 1, Y: p.Y})
	}
	ticked(&v.out, geom.Point{X: x, Y: a.Y}, geom.Point{X: x, Y: b.Y})
	v.out.Write(drawing.Text{String: s.words, Size: figure, Value: true, Quarter: 1,
		At: geom.Point{X: x + float64(0.36*figure), Y: b.Y + sizeWords}})
}

// ticked draws the line of a size, with a stroke across at both ends, as joiners do.
func ticked(d *drawing.Drawing, a, b geom.Point) {
	d.Line(drawing.Thin, a, b)
	const tick = 0.8
	for _, p := range []geom.Point{a, b} {
		d.Line(drawing.Thick, geom.Point{X: p.X - tick, Y: p.Y - tick}, geom.Point{X: p.X + tick, Y: p.Y + tick})
	}
}

// names writes the pieces' names to the right of the view, up beside what goes on there or lies
// wholly in it, or above those that do neither. It gives how far to the right they reach.
func (v *cornerView) names(right, top float64) (end float64) {
	var beside []slice
	for _, s := range v.slices {
		b := s.bounds()
		on := b.Intersect(v.window)
		switch {
		case on.Width() <= 0 || on.Height() <= 0:
		case v.window.Contains(b) || b.Max.X > v.window.Max.X:
			beside = append(beside, s)
		default:
			t := drawing.Text{String: s.Name, Size: figure, Face: drawing.Bold, Align: drawing.Middle}
			half := drawing.Width(t.Face, t.Size, t.String) / 2
			t.At = geom.Point{X: max(v.put(on.Center()).X, v.put(v.bodies.Min).X+half), Y: top + 2}
			v.out.Write(t)
			end = max(end, t.Box().Max.X)
		}
	}
	long := 0.0
	for _, s := range beside {
		long += drawing.Width(drawing.Bold, figure, s.Name) + 1
	}
	if long > top-rim { // they reach up to those above
		right = max(right, end-1)
	}
	return max(end, v.namesBeside(beside, right, top))
}

// namesBeside writes names to the right of the view, from above, each as near as there is room to what it names.
func (v *cornerView) namesBeside(list []slice, right, top float64) (end float64) {
	middle := func(s slice) float64 { return v.put(s.bounds().Intersect(v.window).Center()).Y }
	slices.SortStableFunc(list, func(a, b slice) int { return -cmp.Compare(middle(a), middle(b)) })
	below := 0.0 // of what the names after this one take up
	for _, s := range list {
		below += drawing.Width(drawing.Bold, figure, s.Name) + 1
	}
	for _, s := range list {
		long, y := drawing.Width(drawing.Bold, figure, s.Name), middle(s)
		below -= long + 1
		t := drawing.Text{String: s.Name, Size: figure, Face: drawing.Bold, Align: drawing.Middle, Quarter: 1}
		t.At = geom.Point{X: right + 2 + 0.72*figure, Y: max(rim+below+long/2, min(y, top-long/2))}
		if v.window.Contains(s.bounds()) {
			from := v.put(geom.Point{X: s.bounds().Max.X})
			v.out.Line(drawing.Thin, geom.Point{X: from.X, Y: y}, geom.Point{X: right + 1, Y: t.At.Y})
		}
		v.out.Write(t)
		top = t.At.Y - long/2 - 1
		end = max(end, t.Box().Max.X)
	}
	return end
}
