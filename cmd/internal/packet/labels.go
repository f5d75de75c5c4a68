package packet

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"maps"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/nest"
)

// row is the order in which the walls of a box lie side by side for the triangle, from the left. Labels are on inside
// faces: inside faces up and lower edges toward one, the walls follow each other as for one who stands in the box and
// turns to the right, each with the end beside the next at which the two join.
var row = []struct {
	role   joinery.Role
	left   bool
	called string
}{{joinery.Side, true, "left side"}, {joinery.Back, false, "back"}, {joinery.Side, false, "right side"},
	{joinery.Front, false, "box front"}}

// laidOut is the row in words.
func laidOut() string {
	var list []string
	for _, r := range row {
		list = append(list, r.called)
	}
	return strings.Join(list, ", ")
}

// faces are the face and the edge that a label shows: its inside face as it looks in the box.
func faces(p joinery.Part) (face, edge string) {
	edge = "lower edge"
	switch p.Role {
	case joinery.Bottom:
		edge = "front edge"
	case joinery.DrawerFrontRole, joinery.DividerRole, joinery.InsertRole:
	default:
		return "inside face", edge
	}
	switch n := p.Placements[0].Normal(); {
	case n.Z > 0.5:
		return "upper face", edge
	case n.Y > 0.5:
		return "rear face", edge
	case n.Y < -0.5:
		return "front face", edge
	case n.X > 0.5:
		return "right face", edge
	}
	return "left face", edge
}

// WriteLabels writes the packet's labels as a document of their own.
func WriteLabels(ctx context.Context, w io.Writer, b batch.Batch, p sheets.Plan) error {
	var failed error
	pages := func(yield func(drawing.Page) bool) {
		out := func(p drawing.Page) { yield(p) } // the writer takes all
		m := maker{Book: book(b, "", out), batch: b, plan: p, unit: b.Units}
		failed = m.labels()
	}
	about := drawing.Info{Title: title(b) + ": labels", Subject: "labels for the pieces of drawer boxes"}
	err := drawing.WritePDF(w, about, pages)
	return cmp.Or(ctx.Err(), failed, err)
}

// labels ends the packet with one for every piece.
func (m maker) labels() error {
	if m.batch.Paper.Labels == job.LabelsNone {
		m.Close()
		return nil
	}
	grid := paper.Grid{Columns: m.batch.Paper.Columns, Rows: m.batch.Paper.Rows}
	if m.batch.Paper.Labels == job.LabelsPage {
		grid = paper.Grid{Columns: 1, Rows: 1}
	}
	if s := m.batch.Paper.Sheet; s != nil {
		grid.Wide, grid.High, grid.Aside, grid.Between = s.Wide, s.High, s.Aside, s.Between
	}
	list := m.labelsOfParts()
	list = append(list, offcutLabels(m.plan)...)
	return m.Labels(list, grid)
}

// labelsOfParts are those of all pieces, drawer by drawer.
func (m maker) labelsOfParts() (list []paper.Label) {
	from := make(map[string][]sheets.Source)
	for i := range m.plan.Stocks {
		maps.Copy(from, m.plan.Stocks[i].Sources())
	}
	measured := make(map[string][]record.MeasuredSheet)
	for _, k := range m.report.Sheets {
		measured[k.Stock] = k.Measured
	}
	for _, d := range m.batch.Drawers {
		for _, p := range d.Parts {
			for n := range p.Quantity {
				l := m.label(p, n)
				if n < len(from[p.Name]) {
					l.Board = from[p.Name][n].Board
					if sheet := fmt.Sprint(from[p.Name][n].Sheet); !strings.HasPrefix(l.Board, sheet) {
						l.Facts += ", sheet " + sheet // a board's name begins with that of the first sheet cut so
					}
					if list, at := measured[p.Stock.Name], from[p.Name][n].Sheet-1; at < len(list) {
						l.Facts += ", " + present.MeasuredSheet(list[at], m.unit)
					}
				}
				list = append(list, l)
			}
		}
	}
	return list
}

// offcutLabels are for the pieces that are left of sheets and are worth keeping.
func offcutLabels(p sheets.Plan) (list []paper.Label) {
	for i := range p.Stocks {
		s := &p.Stocks[i]
		for _, one := range s.Laid {
			for k, o := range one.Offcuts {
				for n := range one.Count {
					list = append(list, paper.Label{Drawer: "offcut of " + s.Name, Part: p.OffcutName(s.Name, one, n, k),
						Piece: 1, Of: 1, Grain: s.Grained(), Face: beforeUse(s),
						Facts: offcutSize(o, p.Units) + " " + p.Units.String()})
				}
			}
		}
	}
	return list
}

// beforeUse says what the size on the label of an offcut is worth: what a saw leaves is larger until its edges are
// trimmed.
func beforeUse(s *sheets.Stock) string {
	if s.Trim > 0 && !s.Routed {
		return "when trimmed; measure it"
	}
	return "measure it before use"
}

// offcutSize is the size of an offcut, no side longer than it is.
func offcutSize(o nest.Offcut, u geom.Unit) string {
	return words.SizeAtMost(geom.Length(o.Length).MM(), u) + " x " + words.SizeAtMost(geom.Length(o.Width).MM(), u)
}

// boxOf is the box that the n-th piece of a part goes into, in words; pieces of a part are numbered box by box.
func boxOf(p batch.Part, n int) string {
	each := len(p.Placements)
	boxes := (p.Quantity - p.Spares) / each
	if n/each >= boxes {
		return "spare"
	}
	return fmt.Sprintf("box %d of %d", n/each+1, boxes)
}

func (m maker) label(p batch.Part, n int) paper.Label {
	l := paper.Label{Drawer: p.Drawer, Part: p.Name, Number: p.Number, Piece: n + 1, Of: p.Quantity,
		Grain: p.Stock.Grain != joinery.GrainNone,
		Facts: fmt.Sprintf("%s x %s %s, %s", m.number(p.Panel.Length()), m.number(p.Panel.Width()), m.unit, p.Stock.Name)}
	l.Job, l.Box = m.batch.Code, boxOf(p, n)
	l.Face, l.Edge = faces(*p.Part)
	// Of sides that are twins, every second one is the right one.
	right := p.Label == "right" || p.Label == "" && n%2 == 1
	if p.Role == joinery.Side {
		l.Hand = "LEFT"
		if right {
			l.Hand = "RIGHT"
		}
	}
	for i, r := range row {
		if r.role == p.Role && (r.role != joinery.Side || r.left != right) {
			l.Place, l.Set = i+1, len(row)
		}
	}
	return l
}
