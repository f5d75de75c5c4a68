package packet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// pilotBack is the back of a drawer front with pilot holes, and the drawers that have it so: boards of one number
// are alike until they are bored, yet their boxes may have their holes elsewhere, or stand elsewhere behind them.
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
			fmt.Sprintf("Number %d of %s from behind, lower edge below; dashed is its box.", first.number,
				first.drawers[0]))
		m.table(m.pilotTable(list))
	})
	if len(numbersOf(list)) < len(list) {
		m.Text("Drawer fronts of one number differ in these holes: bore each for the drawer on its label.")
	}
	for _, group := range setup.Together(list, func(b pilotBack) string {
		return m.stop(b.deep) + " into " + words.Length(b.thick, m.unit)
	}) {
		drill, _ := words.Drill(joinery.PilotDiameter(m.unit), m.unit)
		m.Text(fmt.Sprintf("Bore number %s with a drill of %s, no deeper than %s, by a stop or tape on the bit: the "+
			"drawer front is %s thick.", words.And(numbersOf(group)), drill, m.stop(group[0].deep),
			words.Length(group[0].thick, m.unit)))
	}
}

// numbersOf are the numbers of drawer fronts, each once.
func numbersOf(list []pilotBack) (numbers []string) {
	for _, b := range list {
		if n := fmt.Sprint(b.number); !slices.Contains(numbers, n) {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

// stop is a depth in mm that a bit's stop is set to at most: whole millimeters, or 32nds of an inch.
func (m maker) stop(deep float64) string {
	if m.unit == geom.Inch {
		return words.TapeAtMost(deep, m.unit) + " in"
	}
	return geom.LengthOf(math.Floor(deep)).Text(m.unit)
}

// pilotBacks are the backs of the drawer fronts, once for those of one number whose distances are all printed alike.
func (m maker) pilotBacks() (list []pilotBack) {
	at := make(map[string]int)
	for _, d := range m.batch.Drawers {
		front, box := partOf(d, joinery.DrawerFrontRole), partOf(d, joinery.Front)
		if front == nil || box == nil {
			continue
		}
		thick := front.Stock.Thickness.Mean
		b := pilotBack{Elevation: m.pilotsOf(*front.Part, *box.Part), number: front.Number, thick: thick,
			deep: joinery.PilotDepth(thick)}
		if len(b.Holes) == 0 {
			continue
		}
		printed := strings.Join(b.printed(m.unit), "; ")
		i, known := at[printed]
		if !known {
			i = len(list)
			at[printed], list = i, append(list, b)
		}
		list[i].drawers = append(list[i].drawers, d.Spec.Name)
	}
	return list
}

// printed is what the table says of a back: its number, and the distances of its pilot holes.
func (b pilotBack) printed(u geom.Unit) []string {
	var across, up []string
	for _, a := range b.Across {
		across = append(across, words.Place(a.At, u))
	}
	for _, a := range b.Up {
		up = append(up, words.Place(a.At, u))
	}
	return []string{fmt.Sprint(b.number), names(across), names(up)}
}

// pilotTable has the distances of pilot holes. They are lists of numbers, thus flush left.
func (m maker) pilotTable(list []pilotBack) present.Table {
	t := present.NewTable(present.Words("no."), present.Words("from the left"), present.Words("from below"),
		present.Words("drawers"))
	for _, b := range list {
		t.Add(append(b.printed(m.unit), names(b.drawers))...)
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
