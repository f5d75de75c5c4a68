package joinery

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// gridded is a box of 460 x 140 x 500 with walls of 12.2 and an insert of 6 in it.
func gridded(n Insert) Spec {
	s := saw(460, 140, 500, 0, sheet("ply", 12.2), sheet("thin", 6.1))
	s.Cutter = Cutter{Kind: Router, Width: 5}
	s.DadoClearance, s.GrooveClearance, s.BottomClearance = DefaultDadoClearance, DefaultGrooveClearance, 2
	n.Stock = Stock{Name: "six", Thickness: Measure(6, 6.1, 5.9)}
	s.Insert = &n
	return s
}

// TestInsertCells: inside 460 - 2 x 12.2 = 435.6 from side to side and 500 - 2 x 12.2 = 475.6 from
// front to back, less a strip of 6 between two cells.
func TestInsertCells(t *testing.T) {
	const wide, deep, strip = 435.6, 475.6, 6.0
	half := []float64{(deep - strip) / 2}
	thirds := func(of float64) []float64 { return []float64{(of - 2*strip) / 3, (of-2*strip)*2/3 + strip} }
	for name, c := range map[string]struct {
		columns, rows []float64
		across, along []float64 // near faces of the strips, from the walls' inside faces
	}{
		"equal": {make([]float64, 3), make([]float64, 2), half, thirds(wide)},
		"measured": {[]float64{70, 80, 0}, []float64{0, 200}, []float64{deep - 210 - strip},
			[]float64{80, 80 + strip + 90}},
		// 435.6 - 6 - 2 x 110 = 209.6 left, half for each.
		"shared": {[]float64{100, 100}, []float64{0, 0, 0}, thirds(deep), []float64{110 + 104.8}},
		// 4 + 10 is less than a finger: 20.
		"narrow": {[]float64{4, 0}, []float64{0, 0}, half, []float64{20}},
	} {
		d, problems := Build(gridded(Insert{Columns: c.columns, Rows: c.rows, ContentsClearance: 10, WallClearance: 2}))
		if len(problems) > 0 || len(d.Parts) != 6 {
			t.Fatalf("%s: %v, %d parts", name, problems, len(d.Parts))
		}
		for _, p := range d.Parts {
			want, from, length, cut := c.across, 12.2+strip, wide-2.0, 4*len(c.along)
			of := func(s geom.Placement) float64 { return s.Origin.Y }
			if p.Label == string(Along) {
				want, from, length, cut = c.along, 12.2, deep-2, 4*len(c.across)
				of = func(s geom.Placement) float64 { return s.Origin.X }
			}
			if p.Role != InsertRole {
				continue
			}
			corners := len(p.Panel.Outline)
			if len(p.Placements) != len(want) || math.Abs(p.Panel.Length()-length) > 1e-9 || corners != 4+cut {
				t.Fatalf("%s %s: %d strips %g long with %d corners", name, p.Label, len(p.Placements),
					p.Panel.Length(), corners)
			}
			for i, s := range p.Placements {
				if got := of(s) - from; math.Abs(got-want[i]) > 1e-9 {
					t.Errorf("%s %s: strip %d is %.3f from the wall, by hand %.3f", name, p.Label, i, got, want[i])
				}
			}
		}
	}
}

// TestInsertHeight: the box has 140 over a bottom whose top is at 6.1 + 6.1 and a hair of 0.03; a
// strip that swells by a hundredth stays below the edges by the 3 that a loose board does, and its
// slots have room for it.
func TestInsertHeight(t *testing.T) {
	s := gridded(Insert{Columns: make([]float64, 2), Rows: make([]float64, 2), WallClearance: 2})
	still, _ := Build(s)
	s.Insert.Stock.Swelling = 0.01
	moves, _ := Build(s)
	a, b := still.Parts[4].Panel, moves.Parts[4].Panel
	room := 140 - 6.1 - 6.1 - bottomRoom
	if math.Abs(a.Width()-(room-3)) > 1e-9 || math.Abs(b.Width()-(room/1.01-3)) > 1e-9 {
		t.Errorf("%g and %g high", a.Width(), b.Width())
	}
	wide := func(p geom.Panel) float64 { return p.EdgeCuts[0].Area.Bounds().Width() }
	if grown := wide(b) - wide(a); math.Abs(grown-0.06) > 1e-9 {
		t.Errorf("slots grow by %g, strips by 0.06", grown)
	}
}

// TestInsertRefused: what is refused, with what was measured.
func TestInsertRefused(t *testing.T) {
	two := make([]float64, 2)
	for name, c := range map[string]struct {
		insert          Insert
		code            geom.Code
		measured, limit float64
	}{
		"one row":  {Insert{Columns: two, Rows: two[:1]}, "insert-cells", 0, 0},
		"too high": {Insert{Columns: two, Rows: two, Height: 130}, "insert-height", 130, 140 - 12.2 - bottomRoom},
		// 3 x 145 + 2 x 6 - 435.6 = 11.4 too much.
		"too wide": {Insert{Columns: []float64{145, 145, 145}, Rows: two}, "insert-room", 460, 471.4},
		// Two free ones of 20 beside 400 and two strips: 452 - 435.6 = 16.4 too much.
		"no room for the free": {Insert{Columns: []float64{0, 400, 0}, Rows: two}, "insert-room", 460, 476.4},
	} {
		c.insert.WallClearance = 2
		_, problems := Build(gridded(c.insert))
		if len(problems) != 1 || problems[0].Code != c.code || !problems[0].IsError() {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		mm := func(v geom.Quantity) float64 {
			of, _ := v.(geom.Millimeters)
			return float64(of)
		}
		if p := problems[0]; math.Abs(mm(p.Measured)-c.measured) > 1e-9 || math.Abs(mm(p.Limit)-c.limit) > 1e-9 {
			t.Errorf("%s: measured %v, limit %v, by hand %g and %g", name, p.Measured, p.Limit, c.measured, c.limit)
		}
	}
}
