package paper

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// Number prints a length in mm as the shop reads it.
type Number func(mm float64) string

// figure is the size of the letters of drawings: figures 3.5 mm high, as usual as ISO 3098
// has them (from memory).
var figure = drawing.Capitals(3.5)

// scales are those that drawings are made at, as usual as ISO 5455 has them (from
// memory), with 1:2.5 between.
var scales = []float64{1, 1.0 / 2, 1 / 2.5, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 50}

// ScaleText names a scale.
func ScaleText(s float64) string {
	if s >= 1 {
		return fmt.Sprintf("%g:1", s)
	}
	return fmt.Sprintf("1:%g", math.Round(10/s)/10)
}

// Frame is what a drawing may take up of a page, in mm.
type Frame struct {
	Width  float64
	Height float64
	Most   float64 // how high it may be where no scale makes it as low as Height
	Least  float64 // the scale down to which it is made smaller for that
}

// caption is the size of the letters of words under a view, their capitals 2.5 mm high.
var caption = drawing.Capitals(2.5)

// Part is a panel to draw, with a name for each pocket: a letter for what is cut along
// lines, a number for a hole.
type Part struct {
	geom.Panel
	Names []string
	// Letter stands for a distance from the datum, in mm along an axis of a face as it lies before you, where the
	// drawing is of several parts that differ in it; it is empty where they do not.
	Letter func(f geom.Face, axis geom.Axis, at float64) string
	// Words go under a view of a face at a scale.
	Words  func(geom.Face, float64) string
	planes []plane // of the face that has sections
}

// View is a drawing of one face of a part.
type View struct {
	drawing.Drawing
	Scale float64
	Left  bool // there was no room for all distances: tables have the others
}

// onFace is a view of a face of the part, not drawn yet.
func (p Part) onFace(face geom.Face, number Number) view {
	v := view{face: face, number: number, alone: len(Faces(p.Panel)) == 1}
	if face == geom.Outside {
		p.Panel = turnedOver(p.Panel)
	}
	v.Part = p
	return v
}

// Face draws one face of a part as it lies before you, as large as one of the usual scales
// lets it be in the frame, with the distances of what is cut into it from the left end and
// the lower edge, where a mark stands. Planes of a part that is [Part.Sectioned] are marked in the view of its first
// face and drawn above it and to its right at its own scale.
func (p Part) Face(face geom.Face, in Frame, number Number) View {
	first := p.onFace(face, number)
	if face != Faces(p.Panel)[0] {
		first.planes = nil
	}
	first.margins()
	var largest *View
	for _, scale := range scales {
		out, fits := first.at(scale, in)
		if !fits {
			continue
		}
		if out.Height <= in.Height && (largest == nil || scale >= in.Least) {
			return out
		}
		if largest == nil && out.Height <= in.Most {
			largest = &out
		}
	}
	if largest == nil {
		out, _ := first.at(first.shrunk(in), in)
		largest = &out
	}
	return *largest
}

// at is the view at a scale; fits is false where it is wider than its frame, or surely higher.
func (v view) at(scale float64, in Frame) (out View, fits bool) {
	v.scale, v.planes = scale, slices.Clone(v.planes)
	above, beside := v.beyond()
	if v.left+float64(scale*v.Length())+beside > in.Width || v.below+float64(scale*v.Width())+above > in.Most {
		return View{}, false // not worth drawing
	}
	if v.draw(); v.out.Width > in.Width {
		return View{}, false
	}
	return View{Drawing: v.out, Scale: v.scale, Left: v.leftOut}, true
}

// Faces are those of a panel that a view each is needed of, the one with the sections first:
// of the other face, rabbets along a whole edge are seen in those.
func Faces(p geom.Panel) []geom.Face {
	inside, outside := p.CutOn(geom.Inside), p.CutOn(geom.Outside)
	switch {
	case !outside:
		return []geom.Face{geom.Inside}
	case !inside:
		return []geom.Face{geom.Outside}
	}
	for _, k := range p.Pockets {
		if b := k.Outline.Bounds(); k.Face == geom.Outside &&
			(k.Kind != geom.Rabbet || b.Width() < p.Length()-same && b.Height() < p.Width()-same) {
			return []geom.Face{geom.Inside, geom.Outside}
		}
	}
	return []geom.Face{geom.Inside}
}

// same is by how much, in mm, two places are the same: half of what is printed.
const same = 0.005

// turnedOver is a panel end for end, its outside face up.
func turnedOver(p geom.Panel) geom.Panel {
	long := p.Length()
	p.Outline = p.Outline.TurnOver(long)
	p.Holes = slices.Clone(p.Holes)
	for i, h := range p.Holes {
		p.Holes[i] = h.TurnOver(long)
	}
	p.Pockets = slices.Clone(p.Pockets)
	for i := range p.Pockets {
		k := &p.Pockets[i]
		k.Outline = k.Outline.TurnOver(long)
		k.Face = geom.Inside + geom.Outside - k.Face
	}
	return p
}

// view is a face of a panel in the making; the face that is up is its inside one.
type view struct {
	Part
	face        geom.Face // as the panel has it
	alone       bool      // no other face is drawn
	number      Number
	scale       float64
	left, below float64 // what numbers take up of the drawing
	right, top  float64 // ends of the view in it
	leftOut     bool
	out         drawing.Drawing
}

// Measures about a view, in mm.
const (
	planeRoom  = 8.0  // for the ends of cutting planes and their letters
	nameRoom   = 6.0  // for names beyond all
	rim        = 0.3  // about all numbers
	underTitle = 4.5  // of a section to the right, beyond which its name goes
	titleRoom  = 13.0 // for the name of a section beside it
	cornering  = 4.0  // by which numbers below go beyond the view's ends
	lowering   = 2.0  // by which those to the left go below the view
	spreading  = 9.0  // and above it
)

// margins are what numbers take up to the left of the view and below it.
func (v *view) margins() {
	straight := 0.0
	if len(v.planes) > 0 {
		straight = planeRoom - 1.5
	}
	v.below = straight + rim + drawing.Reach(v.marks(geom.AlongX, v.places(geom.AlongX, all)), figure)
	v.left = straight + rim + drawing.Reach(v.marks(geom.AlongY, v.places(geom.AlongY, all)), figure)
}

// shrunk is a scale at which the view is surely no wider than a frame and no higher.
func (v *view) shrunk(in Frame) float64 {
	v.scale = scales[len(scales)-1]
	above, beside := v.beyond()
	const surely = 0.999
	return surely * min(v.scale, (in.Width-v.left-beside)/v.Length(), (in.Most-v.below-above)/v.Width())
}

// beyond is what sections take up above the view and to its right.
func (v *view) beyond() (above, beside float64) {
	above, beside = nameRoom, cornering+0.5*figure
	if len(v.planes) > 0 {
		above, beside = planeRoom, planeRoom
	}
	for _, s := range v.planes {
		if s.along == geom.AlongX {
			above, beside = planeRoom+float64(v.scale*v.Thickness)+nameRoom, max(beside, titleRoom)
		} else {
			beside = planeRoom + float64(v.scale*v.Thickness) + underTitle
		}
	}
	return above, beside
}

// Ranks of places, by which those are left out that there is no room for: the panel's own
// ends never, then what is cut, what is cut of the edges, and holes, which a table has.
const (
	ends = iota
	cuts
	edges
	holes
	all = holes
)

// places are those along an axis up to a rank.
func (v *view) places(axis geom.Axis, rank int) []float64 {
	most := v.Length()
	if axis == geom.AlongY {
		most = v.Width()
	}
	list := []float64{0, most}
	add := func(p geom.Point) {
		along, _ := axis.Of(p)
		list = append(list, along)
	}
	round := func(l geom.Loop) {
		if c, _, ok := l.AsCircle(); ok {
			add(c)
			return
		}
		b := l.Bounds()
		add(b.Min)
		add(b.Max)
	}
	for _, k := range v.Pockets {
		_, _, hole := k.Outline.AsCircle()
		if (k.Face == geom.Inside || v.alone) && (hole && rank >= holes || !hole && rank >= cuts) {
			round(k.Outline)
		}
	}
	for _, h := range v.Holes {
		if rank >= holes {
			round(h)
		}
	}
	for _, q := range v.Outline {
		if rank >= edges {
			add(q.Point)
		}
	}
	return list
}

// marks sorts places along an axis and names each once. What pockets have beyond the panel is not
// measured on it.
func (v *view) marks(axis geom.Axis, places []float64) []drawing.Mark {
	most := v.Length()
	if axis == geom.AlongY {
		most = v.Width()
	}
	return marks(places, most, func(mm float64) string {
		if v.Letter != nil {
			if letter := v.Letter(v.face, axis, mm); letter != "" {
				return letter
			}
		}
		return v.number(mm)
	})
}

// marks sorts distances and says each up to a most once.
func marks(places []float64, most float64, say Number) (list []drawing.Mark) {
	slices.Sort(places)
	for _, x := range places {
		if x < -same || x > most+same || len(list) > 0 && x-list[len(list)-1].At < same {
			continue
		}
		list = append(list, drawing.Mark{At: x, Text: say(x)})
	}
	return list
}

func (v *view) draw() {
	d := &v.out
	above, beside := v.beyond()
	v.right, v.top = v.left+float64(v.scale*v.Length()), v.below+float64(v.scale*v.Width())
	d.Width, d.Height = v.right+beside, v.top+above
	o := geom.Point{X: v.left, Y: v.below}
	var face drawing.Drawing
	for _, k := range v.Pockets {
		_, _, round := k.Outline.AsCircle()
		switch {
		case k.Face != geom.Inside && !k.Through(v.Thickness):
			face.Loops(drawing.Hidden, 0, k.Outline)
		case !round && k.Through(v.Thickness):
			face.Loops(drawing.Thick, 0, k.Outline)
		default:
			face.Loops(drawing.Thin, 0.08, k.Outline)
		}
	}
	face.Loops(drawing.Thick, 0, append([]geom.Loop{v.Outline}, v.Holes...)...)
	d.Add(face, o, v.scale)
	v.centers()
	v.ordinates(drawing.Edge{Side: drawing.Below, From: o, To: geom.Point{X: v.right, Y: o.Y},
		Before: cornering, After: cornering}, geom.AlongX)
	v.ordinates(drawing.Edge{Side: drawing.LeftSide, From: o, To: geom.Point{X: o.X, Y: v.top},
		Before: lowering, After: min(spreading, above-lowering-0.5)}, geom.AlongY)
	datum(d, o)
	for i := range v.planes {
		v.section(&v.planes[i])
	}
	for _, p := range v.planes {
		v.planeMarks(p)
	}
	v.name()
	v.words()
}

// words writes the caption between the numbers below, or under them where it has no room
// there.
func (v *view) words() {
	if v.Words == nil {
		return
	}
	t := drawing.Text{String: v.Words(v.face, v.scale), Size: caption, Align: drawing.Middle}
	wide := t.Box().Width()
	t.At = geom.Point{X: max(wide/2+0.5, (v.left+v.right)/2), Y: 1.2}
	v.out.Width = max(v.out.Width, t.At.X+wide/2+0.5)
	if !roomOf(v.out).clear(t.Box().Grow(0.3)) {
		low := v.out
		v.out = drawing.Drawing{Width: low.Width, Height: low.Height + 1.5*caption}
		v.out.Add(low, geom.Point{Y: 1.5 * caption}, 1)
	}
	v.out.Write(t)
}

// datum marks the corner that distances are measured from.
func datum(d *drawing.Drawing, at geom.Point) {
	const radius = 1.6
	d.Loops(drawing.Thin, 0, geom.Circle(at, radius))
	wedge := geom.Loop{{Point: at}, {Point: at.Add(geom.Point{Y: -radius})}, {Point: at.Add(geom.Point{X: -radius})}}
	d.Loops(drawing.Pen{}, 1, wedge)
}

// ordinates writes the distances along an edge of the view; those of the lowest ranks
// that there is no room for are left to the tables.
func (v *view) ordinates(e drawing.Edge, axis geom.Axis) {
	e.Scale = v.scale
	if len(v.planes) > 0 {
		e.Straight = planeRoom - 1.5
	}
	for rank := all; rank >= ends; rank-- {
		marks := v.marks(axis, v.places(axis, rank))
		if rank > ends && len(marks) > e.Room(figure) {
			v.leftOut = true
			continue
		}
		v.out.Ordinates(e, marks, figure)
		return
	}
}

// sheet is where a place of the panel is in the drawing.
func (v *view) sheet(p geom.Point) geom.Point {
	return geom.Point{X: v.left, Y: v.below}.Along(p, v.scale)
}

// centers marks those of the holes.
func (v *view) centers() {
	for _, k := range v.Pockets {
		if c, r, ok := k.Outline.AsCircle(); ok && k.Face == geom.Inside {
			at, arm := v.sheet(c), float64(v.scale*r)+1.2
			v.out.Line(drawing.Thin, at.Add(geom.Point{X: -arm}), at.Add(geom.Point{X: arm}))
			v.out.Line(drawing.Thin, at.Add(geom.Point{Y: -arm}), at.Add(geom.Point{Y: arm}))
		}
	}
}

// name writes the names of the cuts beside them, where they touch nothing.
func (v *view) name() {
	free := roomOf(v.out)
	for _, s := range v.planes {
		free.taken(s.box)
	}
	for i, k := range v.Pockets {
		if i >= len(v.Names) || k.Face != geom.Inside && !v.alone {
			continue
		}
		if c, r, ok := k.Outline.AsCircle(); ok {
			free.name(&v.out, v.Names[i], figure, []geom.Point{v.sheet(c)}, float64(v.scale*r)+0.6)
			continue
		}
		b := k.Outline.Bounds()
		var places []geom.Point
		for _, part := range []float64{0.42, 0.58, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
			at := b.Center()
			if b.Width() > b.Height() {
				at.X = b.Min.X + float64(part*b.Width())
			} else {
				at.Y = b.Min.Y + float64(part*b.Height())
			}
			places = append(places, v.sheet(at))
		}
		free.name(&v.out, v.Names[i], figure, places, 0)
	}
	for i, w := range v.planes {
		for k, f := range w.frames {
			b := f.Grow(0.5)
			corners := []geom.Point{b.Max, {X: b.Min.X, Y: b.Max.Y}, {X: b.Max.X, Y: b.Min.Y}, b.Min}
			free.name(&v.out, v.planes[i].details[k].name, figure, corners, 0)
		}
	}
}
