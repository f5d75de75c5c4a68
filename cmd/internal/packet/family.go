package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// family is parts that one drawing shows: alike in what is cut and in the order of all places along both axes, and
// different in sizes and distances alone. Letters stand for what differs, and a table has the figures of each part
// (tabular dimensioning, ISO 129-1, from memory). A part that is like no other is a family of one without letters.
type family struct {
	maker
	groups  []batch.Group
	letters []letter
	at      map[faceAxis][]letterAt
}

// letter stands for a distance or a size along an axis, in mm for each part.
type letter struct {
	name   string
	axis   geom.Axis
	values []float64
}

// faceAxis is an axis of a face as it lies before you.
type faceAxis struct {
	face geom.Face
	axis geom.Axis
}

// letterAt is where a letter stands in the drawing, in mm.
type letterAt struct {
	mm   float64
	name string
}

// maxLetters are how many a family has at most: a joiner reads each in a table, in a row of his part.
const maxLetters = 8

// families gathers groups of parts that one drawing shows, in the order of their first ones.
func (m maker) families(groups []batch.Group) (list []family) {
	at := make(map[string]int)
	for _, g := range groups {
		key := familyKey(g.Parts[0])
		i, known := at[key]
		if !known {
			i = len(list)
			at[key] = i
			list = append(list, family{maker: m})
		}
		list[i].groups = append(list[i].groups, g)
	}
	var out []family
	for _, f := range list {
		if f.lettered(); len(f.letters) <= maxLetters {
			out = append(out, f)
			continue
		}
		for _, g := range f.groups {
			out = append(out, family{maker: m, groups: []batch.Group{g}})
		}
	}
	slices.SortStableFunc(out, func(a, b family) int { return a.part().Number - b.part().Number })
	return out
}

// part is the one that is drawn.
func (f *family) part() *batch.Part { return f.groups[0].Parts[0] }

// familyKey is alike for parts that one drawing shows.
func familyKey(p *batch.Part) string {
	var key strings.Builder
	fmt.Fprintf(&key, "%q %q %g %d", p.Stock.Name, p.Role, p.Panel.Thickness, paper.Faces(p.Panel))
	loop := func(l geom.Loop) {
		_, r, _ := l.AsCircle()
		fmt.Fprintf(&key, " %d %.3f:", len(l), r)
		for _, v := range l {
			if v.Bulge != 0 {
				fmt.Fprintf(&key, " %.4f", v.Bulge)
			}
		}
	}
	loop(p.Panel.Outline)
	for _, h := range p.Panel.Holes {
		loop(h)
	}
	for _, k := range p.Panel.Pockets {
		fmt.Fprintf(&key, "; %d %d %.4f", k.Kind, k.Face, k.Depth)
		loop(k.Outline)
	}
	for _, k := range p.Panel.EdgeCuts {
		fmt.Fprintf(&key, "; %d %d", k.Kind, len(k.Area))
	}
	places := placesOf(p.Panel)
	for axis := range places {
		key.WriteString(ranks(places[axis]))
	}
	return key.String()
}

// placesOf are all places of a panel along both axes in mm, in an order that is alike for panels of one family: the
// corners of its outline, holes, cuts, and cuts of its edges.
func placesOf(p geom.Panel) (list [2][]float64) {
	add := func(loops ...geom.Loop) {
		for _, l := range loops {
			for _, q := range ends(l) {
				list[0], list[1] = append(list[0], q.X), append(list[1], q.Y)
			}
		}
	}
	for _, v := range p.Outline {
		list[0], list[1] = append(list[0], v.X), append(list[1], v.Y)
	}
	add(p.Holes...)
	for _, k := range p.Pockets {
		add(k.Outline)
	}
	for _, k := range p.EdgeCuts {
		add(k.Area)
	}
	return list
}

// ends are the center of a circle, or the least and the greatest corner of what is about another loop.
func ends(l geom.Loop) []geom.Point {
	if c, _, round := l.AsCircle(); round {
		return []geom.Point{c}
	}
	b := l.Bounds()
	return []geom.Point{b.Min, b.Max}
}

// ranks says in which order places stand, and which are the same.
func ranks(places []float64) string {
	const same = 0.005 // mm, half of what is printed
	order := make([]int, len(places))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch d := places[a] - places[b]; {
		case math.Abs(d) < same:
			return 0
		case d < 0:
			return -1
		}
		return 1
	})
	rank, of := 0, make([]int, len(places))
	for i, k := range order {
		if i > 0 && places[k]-places[order[i-1]] >= same {
			rank++
		}
		of[k] = rank
	}
	return fmt.Sprint(of)
}

// each is a measure of every part, in mm.
func (f *family) each(measure func(geom.Panel) float64) []float64 {
	list := make([]float64, len(f.groups))
	for i, g := range f.groups {
		list[i] = measure(g.Parts[0].Panel)
	}
	return list
}

// lettered gives the letters of places in views of the faces that are drawn, in the order in which they stand.
func (f *family) lettered() {
	if len(f.groups) == 1 {
		return
	}
	f.at = make(map[faceAxis][]letterAt)
	f.say(geom.AlongX, f.each(geom.Panel.Length))
	f.say(geom.AlongY, f.each(geom.Panel.Width))
	for _, face := range paper.Faces(f.part().Panel) {
		for _, axis := range []geom.Axis{geom.AlongX, geom.AlongY} {
			f.letterView(face, axis)
		}
	}
}

// letterView gives the letters along an axis of a face as it lies before you.
func (f *family) letterView(face geom.Face, axis geom.Axis) {
	var columns [][]float64 // of each place, for each part
	for i, g := range f.groups {
		p := g.Parts[0].Panel
		places := placesOf(p)[axis]
		if columns == nil {
			columns = make([][]float64, len(places))
		}
		for k, at := range places {
			if face == geom.Outside && axis == geom.AlongX {
				at = p.Length() - at
			}
			if i == 0 {
				columns[k] = make([]float64, len(f.groups))
			}
			columns[k][i] = at
		}
	}
	slices.SortStableFunc(columns, func(a, b []float64) int { return slices.Compare(a[:1], b[:1]) })
	view := faceAxis{face, axis}
	for _, values := range columns {
		if !f.alike(values) && values[0] > 0 {
			f.at[view] = append(f.at[view], letterAt{values[0], f.say(axis, values)})
		}
	}
}

// letterOf is the letter of a place in a view; empty where all parts have the same distance there.
func (f *family) letterOf(face geom.Face, axis geom.Axis, at float64) string {
	const same = 0.005 // mm, as views have it
	for _, l := range f.at[faceAxis{face, axis}] {
		if math.Abs(l.mm-at) < same {
			return l.name
		}
	}
	return ""
}

// alike reports whether lengths in mm print alike.
func (f *family) alike(values []float64) bool {
	for _, v := range values[1:] {
		if f.caliper(v) != f.caliper(values[0]) || f.number(v) != f.number(values[0]) {
			return false
		}
	}
	return true
}

// say is a distance or size along an axis in words: its figure where all parts have the same, else its letter.
func (f *family) say(axis geom.Axis, values []float64) string {
	if f.alike(values) {
		return f.caliper(values[0])
	}
	if name := f.known(axis, values); name != "" {
		return name
	}
	name, whole := "L", geom.Panel.Length
	if axis == geom.AlongY {
		name, whole = "W", geom.Panel.Width
	}
	if !slices.Equal(values, f.each(whole)) {
		n := 1
		for _, l := range f.letters {
			if l.axis == axis && l.name != name {
				n++
			}
		}
		name += fmt.Sprint(n)
	}
	f.letters = append(f.letters, letter{name, axis, values})
	return name
}

// known is the letter along an axis that stands for lengths; empty where there is none.
func (f *family) known(axis geom.Axis, values []float64) string {
	const rounding = 1e-6 // mm
	for _, l := range f.letters {
		if l.axis == axis && slices.EqualFunc(l.values, values, func(a, b float64) bool {
			return math.Abs(a-b) < rounding
		}) {
			return l.name
		}
	}
	return ""
}

// span says from where to where something is along an axis.
func (f *family) span(axis geom.Axis, from, to []float64) string {
	return words.To(f.say(axis, from), f.say(axis, to))
}

// extent says how long something is along an axis from some places to others.
func (f *family) extent(axis geom.Axis, from, to []float64) string {
	long := make([]float64, len(from))
	for i := range from {
		long[i] = to[i] - from[i]
	}
	if f.alike(long) {
		return f.caliper(long[0])
	}
	if name := f.known(axis, long); name != "" {
		return name
	}
	return "(" + f.say(axis, to) + " - " + f.say(axis, from) + ")"
}

// lengthsAre is the letter of an axis with a space before it, where the parts differ along it.
func (f *family) lengthsAre(name string) string {
	if slices.ContainsFunc(f.letters, func(l letter) bool { return l.name == name }) {
		return " " + name
	}
	return ""
}

// numbers are those of the parts; of many the first.
func (f *family) numbers() string { return firstOf(f.all()) }

// all are the numbers of the parts.
func (f *family) all() (list []int) {
	for _, g := range f.groups {
		list = append(list, g.Parts[0].Number)
	}
	return list
}

// name is that of the part, or what the names of several end in alike, or what they are.
func (f *family) name() string {
	tail := strings.Split(f.part().Name, "-")
	var roles []string
	count := 0
	for _, g := range f.groups {
		for _, p := range g.Parts {
			count++
			if role := string(p.Role); !slices.Contains(roles, role) {
				roles = append(roles, role)
			}
			tail = tail[len(tail)-alikeEnds(tail, strings.Split(p.Name, "-")):]
		}
	}
	if count == 1 {
		return f.part().Name
	}
	for len(tail) > 0 && strings.Trim(tail[0], "0123456789") == "" { // of a row
		tail = tail[1:]
	}
	if len(tail) == 0 {
		return names(roles)
	}
	return strings.Join(tail, "-")
}

// alikeEnds is how many of the last words of two names are alike.
func alikeEnds(a, b []string) (n int) {
	for n < min(len(a), len(b)) && a[len(a)-1-n] == b[len(b)-1-n] {
		n++
	}
	return n
}

// edge is what lies below in the drawing: bottoms have their front edge there.
func (f *family) edge() string {
	if f.part().Role == joinery.Bottom {
		return "front edge"
	}
	return "lower edge"
}

// unseen are the letters that there was no room for in views.
func (f *family) unseen(views []paper.View) (list []string) {
	for _, l := range f.letters {
		seen := func(v paper.View) bool {
			return slices.ContainsFunc(v.Texts, func(w drawing.Text) bool { return w.Value && w.String == l.name })
		}
		if !slices.ContainsFunc(views, seen) {
			list = append(list, l.name)
		}
	}
	return list
}

// bounds are where a loop of each part begins and ends along both axes, in mm; turned, as seen on the outside face.
func (f *family) bounds(of func(geom.Panel) geom.Loop, turned bool) (left, right, low, high []float64) {
	at := func(end func(geom.Rect) float64) []float64 {
		return f.each(func(p geom.Panel) float64 {
			b := of(p).Bounds()
			if turned {
				b.Min.X, b.Max.X = p.Length()-b.Max.X, p.Length()-b.Min.X
			}
			return end(b)
		})
	}
	left, right = at(func(b geom.Rect) float64 { return b.Min.X }), at(func(b geom.Rect) float64 { return b.Max.X })
	low, high = at(func(b geom.Rect) float64 { return b.Min.Y }), at(func(b geom.Rect) float64 { return b.Max.Y })
	return left, right, low, high
}
