package packet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/picture"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

// Seen is how pictures look on a box: from before, a little from the right, and above.
var Seen = picture.From(-30, 30)

// Taken is a box that is taken apart as the page of boxes shows it, with the solids of its parts.
type Taken struct {
	drawer batch.Drawer
	box    scene.Box
	meshes []solid.Mesh // by part, each in its panel
	grid   float64
	tones  map[string]drawing.Tint // by stock
	scenes map[sceneKey]paper.Scenery
}

// sceneKey is a picture of assembly: the step of opening that is undone last, in clamps or not.
type sceneKey struct {
	from    int
	clamped bool
}

// scene is a picture of assembly, which is made once however often it is drawn.
func (t Taken) scene(key sceneKey, draw func() paper.Scenery) paper.Scenery {
	s, made := t.scenes[key]
	if !made {
		s = draw()
		t.scenes[key] = s
	}
	return s
}

// Take is a drawer with the solids of its parts, made on a grid, and the stocks of its job.
func Take(stocks []joinery.Stock, d batch.Drawer, meshes []solid.Mesh, grid float64) Taken {
	return Taken{drawer: d, box: scene.Opened(d.Drawer), meshes: meshes, grid: grid, tones: tones(stocks),
		scenes: make(map[sceneKey]paper.Scenery)}
}

// take is a drawer with its solids; of few drawers, each is made once. Errors are those of [solid.Build], with the
// part.
func (m maker) take(d batch.Drawer) (Taken, error) {
	t, made := m.taken[d.Spec.Name]
	if made {
		return t, nil
	}
	t, err := take(m.batch.Stocks, d)
	if err == nil && m.few() {
		m.taken[d.Spec.Name] = t
	}
	return t, err
}

// take makes the solids of a drawer. Errors are those of [solid.Build], with the part.
func take(stocks []joinery.Stock, d batch.Drawer) (Taken, error) {
	largest := max(d.Outside.Width, d.Outside.Height, d.Outside.Depth)
	if f := d.Spec.DrawerFront; f != nil {
		largest = max(largest, f.Width, f.Height)
	}
	grid := geom.FineGrid(2 * largest)
	var meshes []solid.Mesh
	for _, p := range d.Parts {
		m, err := solid.Build(p.Panel, solid.Options{Grid: grid})
		if err != nil {
			return Taken{}, fmt.Errorf("%s: %w", p.Name, err)
		}
		meshes = append(meshes, m)
	}
	return Take(stocks, d, meshes, grid), nil
}

// tones are the wood tones of stocks.
func tones(stocks []joinery.Stock) map[string]drawing.Tint {
	out := make(map[string]drawing.Tint)
	for i, s := range stocks {
		out[s.Name] = drawing.Tint(scene.WoodTone(i))
	}
	return out
}

// at are the solids where they stand when opening has come to a number of steps, of the pieces given.
func (t Taken) at(steps float64, pieces []scene.Piece) []solid.Mesh {
	out := make([]solid.Mesh, len(pieces))
	for i, p := range pieces {
		p.Placement.Origin = p.Placement.Origin.Add(p.Offset(steps))
		out[i] = t.meshes[p.Part].Place(p.Placement, t.grid)
	}
	return out
}

// scenery is the picture of pieces when opening has come to a number of steps, with their numbers
// in the cut list and the ways given.
func (t Taken) scenery(steps float64, pieces []scene.Piece, paths []picture.Between) paper.Scenery {
	solids := t.at(steps, pieces)
	s := paper.Scenery{Band: paper.WideBand, Lines: picture.Draw(solids, Seen),
		Paths: picture.DrawBetween(paths, solids, Seen)}
	for i, loops := range picture.Areas(solids, Seen) {
		part := t.drawer.Parts[pieces[i].Part]
		s.Areas = append(s.Areas, paper.Area{Loops: loops, Tint: t.tones[part.Stock.Name], Mark: numberOf(part)})
	}
	return s
}

// Assembled is the picture of the box as it is put together.
func (t Taken) Assembled(room geom.Point) drawing.Drawing {
	s := t.scenery(0, t.box.Pieces, nil)
	for i := range s.Areas {
		s.Areas[i].Mark = ""
	}
	return s.Draw(room)
}

// Exploded is the picture of the box taken apart, with the numbers of its pieces, and the legend
// under it, no larger than a room of so many mm.
func (t Taken) Exploded(room geom.Point) drawing.Drawing {
	legend := t.legend(room.X)
	open := t.box.Apart().Open
	s := t.scenery(open, t.box.Pieces, t.paths(open, t.box.Pieces))
	d := s.Draw(geom.Point{X: room.X, Y: room.Y - legend.Height})
	out := drawing.Drawing{Width: max(d.Width, legend.Width), Height: d.Height + legend.Height}
	out.Put(d, geom.Point{X: (out.Width - d.Width) / 2, Y: legend.Height}, 1)
	out.Put(legend, geom.Point{X: (out.Width - legend.Width) / 2}, 1)
	return out
}

// numberOf is the number of a part in the cut list; empty where it has none.
func numberOf(p batch.Part) string {
	if p.Number == 0 {
		return ""
	}
	return strconv.Itoa(p.Number)
}

// legend says what each number is and what it is made of, no wider than given.
func (t Taken) legend(wide float64) drawing.Drawing {
	var rows []paper.LegendRow
	for _, p := range t.drawer.Parts {
		said := roleOf(*p.Part)
		i := slices.IndexFunc(rows, func(r paper.LegendRow) bool { return r.Number == numberOf(p) })
		if i < 0 {
			rows = append(rows, paper.LegendRow{Number: numberOf(p), Tint: t.tones[p.Stock.Name],
				Stock: p.Stock.Name})
			i = len(rows) - 1
		}
		if !slices.Contains(rows[i].Names, said) {
			rows[i].Names = append(rows[i].Names, said)
		}
	}
	return paper.Legend(rows, wide)
}

// roleOf is what a part is in its box, in words.
func roleOf(p joinery.Part) string {
	if p.Label == "" {
		return p.Role.String()
	}
	if p.Role == joinery.Side {
		return p.Label + " " + p.Role.String()
	}
	return p.Role.String() + " " + strings.ReplaceAll(p.Label, "-", " ")
}
