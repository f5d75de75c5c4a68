package packet

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// pilotBack is the back of a drawer front with pilot holes, and the drawers that have it.
type pilotBack struct {
	paper.Elevation
	number  int
	deep    float64 // of a pilot hole at most, in mm
	thick   float64 // of the drawer front, in mm
	drawers []string
}

// pilots says where the pilot holes for the screws from inside the box are in the backs of drawer fronts: that
// with most holes is drawn, a table has the numbers of all.
func (m maker) pilots() {
	list := m.pilotBacks()
	if len(list) == 0 {
		return
	}
	first := list[0]
	for _, b := range list {
		if len(b.Holes) > len(first.Holes) {
			first = b
		}
	}
	m.Together(func() {
		m.Heading(2, "Pilot holes in the backs of drawer fronts")
		m.elevation(first.Elevation, slideHigh,
			fmt.Sprintf("Number %d from behind, lower edge below; dashed is its box.", first.number))
		m.table(m.pilotTable(list))
	})
	for _, group := range setup.Together(list, func(b pilotBack) string { return m.caliper(b.thick) }) {
		var numbers []string
		for _, b := range group {
			numbers = append(numbers, fmt.Sprint(b.number))
		}
		m.Text(fmt.Sprintf("Bore number %s no deeper than %s, by a stop or tape on the bit: the drawer front is %s "+
			"thick.", words.And(numbers), m.stop(group[0].deep), words.Length(group[0].thick, m.unit)))
	}
}

// stop is a depth in mm that a bit's stop is set to at most: whole millimeters, or 32nds of an inch.
func (m maker) stop(deep float64) string {
	if m.unit == geom.Inch {
		return words.TapeAtMost(deep, m.unit) + " in"
	}
	return geom.LengthOf(math.Floor(deep)).Text(m.unit)
}

// pilotBacks are the backs of the drawer fronts, those of one number once.
func (m maker) pilotBacks() (list []pilotBack) {
	for _, d := range m.batch.Drawers {
		front, box := partOf(d, joinery.DrawerFrontRole), partOf(d, joinery.Front)
		if front == nil || box == nil {
			continue
		}
		at := slices.IndexFunc(list, func(b pilotBack) bool { return b.number == front.Number })
		if at < 0 {
			e := m.pilotsOf(front.Part, box.Part)
			if len(e.Holes) == 0 {
				continue
			}
			thick := front.Stock.Thickness.Mean
			at, list = len(list), append(list, pilotBack{Elevation: e, number: front.Number, thick: thick,
				deep: joinery.PilotDepth(thick)})
		}
		list[at].drawers = append(list[at].drawers, d.Spec.Name)
	}
	return list
}

// pilotTable has the distances of pilot holes.
func (m maker) pilotTable(list []pilotBack) present.Table {
	t := present.NewTable(present.Words("no."), present.Numbers("from the left"), present.Numbers("from below"),
		present.Words("drawers"))
	for _, b := range list {
		var across, up []string
		for _, a := range b.Across {
			across = append(across, a.Text)
		}
		for _, u := range b.Up {
			up = append(up, u.Text)
		}
		t.Add(fmt.Sprint(b.number), names(across), names(up), names(b.drawers))
	}
	return t
}

// partOf is the first part of a role of a drawer, nil for none.
func partOf(d batch.Drawer, r joinery.Role) *batch.Part {
	for i := range d.Parts {
		if d.Parts[i].Role == r {
			return &d.Parts[i]
		}
	}
	return nil
}

// pilotsOf is the back of a drawer front with the places behind which the box front has holes for
// screws, and the box.
func (m maker) pilotsOf(front, box joinery.Part) (e paper.Elevation) {
	e.Width, e.Height = front.Panel.Length(), front.Panel.Width()
	stand, on := box.Placements[0], front.Placements[0]
	place := func(p geom.Point) geom.Point { // of the box front, on the drawer front
		v := stand.Apply(geom.Vec3{X: p.X, Y: p.Y}).Sub(on.Origin)
		return geom.Point{X: v.Dot(on.X), Y: v.Dot(on.Y)}
	}
	r := box.Panel.Outline.Bounds()
	e.Dashed = []geom.Rect{geom.Around(place(r.Min), place(r.Max))}
	var xs, ys []float64
	for _, at := range screwHoles(box.Panel) {
		p := place(at)
		e.Holes = append(e.Holes, geom.Circle(p, 1))
		xs, ys = append(xs, p.X), append(ys, p.Y)
	}
	for _, x := range sorted(xs) {
		e.Across = append(e.Across, m.mark(x))
	}
	for _, y := range sorted(ys) {
		e.Up = append(e.Up, m.mark(y))
	}
	return e
}

// screwHoles are the middles of the narrowest holes through a box front, which are those for the
// screws of its drawer front: those for handles are wider.
func screwHoles(p geom.Panel) (list []geom.Point) {
	least := 0.0
	for _, k := range p.Pockets {
		c, r, round := k.Outline.AsCircle()
		if !round || k.Kind != geom.Drill || !k.Through(p.Thickness) || least > 0 && r > least+0.005 {
			continue
		}
		if least == 0 || r < least-0.005 {
			least, list = r, nil
		}
		list = append(list, c)
	}
	return list
}
