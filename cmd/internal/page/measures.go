package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
)

// measure is a dimension in the picture with the entry of the job that governs it.
type measure struct {
	// Axis is that of the box: 0 from left to right, 1 from front to back, 2 upward.
	Axis int `json:"axis"`
	// Piece is the piece whose place it is, as the scene names it; empty for a size of the box.
	Piece string   `json:"piece,omitempty"`
	Name  string   `json:"name"` // as "width of the opening base"
	Path  []string `json:"path"`
	Text  string   `json:"text"` // as the file has it
	// MM is how far a piece stands from its wall.
	MM float64 `json:"mm,omitempty"`
	// Places are all numbers of the entry of a divider, of which this one is At.
	Places []string `json:"places,omitempty"`
	At     int      `json:"at"`
	// Ways are what decides a size that follows from a measured opening, which a click must not
	// change; none where the entry itself is asked for.
	Ways []deciding `json:"ways,omitempty"`
}

// deciding is an entry that decides a size.
type deciding struct {
	Name string   `json:"name"`
	Path []string `json:"path"`
}

// boxAxes are the sides of an outside size, width x height x depth, in the order of the axes.
var boxAxes = [3]struct {
	name string
	side int
}{{"width", 0}, {"depth", 2}, {"height", 1}}

// measuresOf are the dimensions of a drawer that can be changed in its picture: those of the
// box, which follow from its outside size or from the opening, and the places of dividers.
func measuresOf(o job.Outline, w worked, drawer int) (list []measure) {
	path := func(keys ...string) []string { return w.Job.DrawerPath(drawer, keys...) }
	sides := job.Sides(o, path("outside")...)
	for axis, a := range boxAxes {
		m := measure{Axis: axis, Name: "outside " + a.name, Path: path("outside", strconv.Itoa(a.side))}
		if sides == nil {
			m = openingMeasure(o, w.Job.DrawerPath(drawer), axis)
		} else {
			m.Text = sides[a.side]
		}
		if m.Path != nil {
			list = append(list, m)
		}
	}
	return append(list, dividerMeasures(o, w.Batch.Drawers[drawer], path, w.Job.Units)...)
}

// openingMeasure is the entry that governs a size of a box that an opening makes.
func openingMeasure(o job.Outline, drawer []string, axis int) measure {
	a := boxAxes[axis]
	m := measure{Axis: axis}
	of := func(key string) []string { return append(drawer[:len(drawer):len(drawer)], key) }
	heights, opening := of("box-heights"), o.At(of("opening")...)
	switch {
	case a.name == "height" && o.At(heights...) != nil:
		m.Path, m.Name = heights, "heights of boxes to choose from"
	case opening != nil:
		m.Path, m.Name = []string{"openings", opening.Text, a.name}, a.name+" of the opening "+opening.Text
		own := map[string]deciding{"width": {"slide", of("slide")}, "depth": {"length of the slide", of("slide")},
			"height": {"drawers above each other", of("rows")}}
		m.Ways = []deciding{own[a.name], {m.Name, m.Path}}
	}
	n := o.At(m.Path...)
	if n == nil {
		return measure{}
	}
	m.Text = textOf(n)
	return m
}

// textOf is a value as a field of the form has it.
func textOf(n *job.Node) string {
	if len(n.Items) == 0 {
		return n.Text
	}
	var list []string
	for _, item := range n.Items {
		list = append(list, item.Text)
	}
	return strings.Join(list, ", ")
}

// dividerMeasures are the places of the dividers of a drawer: from the inside of the box front,
// or of the left side.
func dividerMeasures(o job.Outline, d batch.Drawer, path func(...string) []string, u geom.Unit) (list []measure) {
	entry := 0
	for _, p := range d.Parts {
		if p.Role != joinery.DividerRole {
			continue
		}
		way := path("dividers", strconv.Itoa(entry), "at")
		spec := d.Spec.Dividers[entry]
		if spec.Folders.Width > 0 { // a place is of two boards
			entry++
			continue
		}
		m := measure{Path: way, Axis: 1, Name: "from the inside of the box front"}
		if spec.Direction == joinery.Along {
			m.Axis, m.Name = 0, "from the inside of the left side"
		}
		order := inFile(spec.At, len(p.Placements))
		m.Places = make([]string, len(order))
		for i, at := range d.DividerPlaces[entry] {
			m.Places[order[i]] = geom.LengthOf(at).Number(u)
		}
		if n := o.At(way...); n != nil && len(n.Items) == len(order) {
			for i, item := range n.Items {
				m.Places[i] = item.Text
			}
		}
		for i := range p.Placements {
			m.Piece, m.At, m.MM = scene.PieceName(*p.Part, i), order[i], d.DividerPlaces[entry][i]
			m.Text = m.Places[m.At]
			list = append(list, m)
		}
		entry++
	}
	return list
}

// inFile gives for each placement of dividers, which stand in ascending order, the number of
// its distance in the file; of dividers that are counted only, their order.
func inFile(at []float64, n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	if len(at) == n {
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(at[i], at[j]) })
	}
	return order
}
