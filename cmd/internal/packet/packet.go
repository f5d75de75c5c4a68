// Package packet makes packet.pdf of a batch, what goes to the bench on paper: what
// to make, cautions, the cut list, every setup with a drawing, every part with its
// sizes, corners, the order of assembly, a form for each drawer, and labels.
package packet

import (
	"cmp"
	"context"
	"io"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Write writes the pages of a batch, of its report and of its sheets as PDF, each as it is
// laid out. The context's end ends it between two chapters.
func Write(ctx context.Context, w io.Writer, b batch.Batch, r record.Kept, p sheets.Plan) error {
	var laid error
	pages := func(yield func(drawing.Page) bool) {
		laid = lay(ctx, b, r, p, func(p drawing.Page) { yield(p) }) // the writer takes all
	}
	about := drawing.Info{Title: title(b), Subject: "cut list, setups, parts, assembly and labels of drawer boxes"}
	err := drawing.WritePDF(w, about, pages)
	return cmp.Or(laid, err)
}

// lay lays the packet's pages out, one after the other.
func lay(ctx context.Context, b batch.Batch, r record.Kept, p sheets.Plan, out func(drawing.Page)) error {
	m := maker{Book: book(b, r.Date, out), batch: b, report: r, plan: p, unit: b.Units,
		sheet: present.SetupsOf(record.WorkOf(b)), taken: make(map[string]Taken)}
	m.work = present.OrderOfWork(r, m.sheet, record.BoardsOf(b)) // once: they are laid out in several ways
	if err := m.cover(); err != nil {
		return err
	}
	var failed error
	assembly := func() { failed = m.assembly(ctx) }
	sheets, parts, corners := func() { m.sheets(ctx) }, func() { m.parts(ctx) }, func() { m.corners(ctx) }
	setups := func() { m.setups(); m.log() }
	readings := func() { m.firstBoxes(); m.boxSizes(); m.travelers() }
	if err := m.inOrder(ctx, []func(){m.cutList, m.cautions, setups, sheets, parts, corners, assembly,
		readings, m.openings, m.templates}); err != nil {
		return err
	}
	return cmp.Or(failed, m.labels())
}

// book is empty, of the job's paper.
func book(b batch.Batch, date string, out func(drawing.Page)) *paper.Book {
	return &paper.Book{Size: PaperOf(b), Title: title(b), Out: out,
		Block: paper.Block{Code: b.Code, Boards: boards(b), Units: "lengths in " + unitWords[b.Units], Date: date}}
}

// unitWords are the units of lengths in a sentence.
var unitWords = map[geom.Unit]string{geom.Millimeter: "mm", geom.Inch: "inches"}

// boards are the stocks that parts are of with the thickness used of each.
func boards(b batch.Batch) string {
	var list []string
	for _, s := range b.Stocks {
		used := slices.ContainsFunc(b.Drawers, func(d batch.Drawer) bool {
			return slices.ContainsFunc(d.Parts, func(p batch.Part) bool { return p.Stock.Name == s.Name })
		})
		if used {
			list = append(list, s.Name+" "+geom.LengthOf(s.Thickness.Mean).AsSet(b.Units))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return names(list) + " thick"
}

// PaperOf is the size of a job's paper.
func PaperOf(b batch.Batch) paper.Size {
	size, known := paper.SizeOf(b.Paper.Size)
	if !known {
		return paper.A4
	}
	return size
}

func title(b batch.Batch) string {
	if b.Title == "" {
		return "Drawer boxes"
	}
	return b.Title
}

// maker writes the chapters one after the other.
type maker struct {
	*paper.Book
	batch  batch.Batch
	report record.Kept
	plan   sheets.Plan
	unit   geom.Unit
	sheet  present.SetupSheet
	taken  map[string]Taken // by drawer
	work   []string         // its order, a step each
}

// few reports whether drawers and sheets are so few that more than one way is tried to lay them out.
func (m maker) few() bool {
	laid := 0
	for _, k := range m.report.Sheets {
		laid += len(k.Sheets)
	}
	return max(len(m.batch.Drawers), laid) <= maxRepeated
}

// maxRepeated are how many drawers and sheets are laid out several times: that takes twice the time of a packet and more.
const maxRepeated = 12

// asSet prints mm that a cut is set to or a caliper reads, in a sentence or a drawing.
func (m maker) asSet(mm float64) string { return geom.LengthOf(mm).AsSet(m.unit) }

// number prints mm that a tape reads: true fractions in inches.
func (m maker) number(mm float64) string { return geom.LengthOf(mm).Taped(m.unit) }

// ruled is number with all digits of millimeters, in a drawing of what is marked with a rule.
func (m maker) ruled(mm float64) string {
	if m.unit == geom.Inch {
		return m.number(mm)
	}
	return m.caliper(mm)
}

// measured prints mm for a person with a rule: decimals of an inch with the nearest 64th.
func (m maker) measured(mm float64) string { return geom.LengthOf(mm).Measured(m.unit) }

// caliper prints mm with all digits that a caliper shows.
func (m maker) caliper(mm float64) string { return geom.LengthOf(mm).Fixed(m.unit) }

// reported prints a length of the report as [maker.caliper] does.
func (m maker) reported(l record.Length) string { return m.caliper(l.MM()) }

func (m maker) size(s joinery.Size) string {
	return m.number(s.Width) + " x " + m.number(s.Height) + " x " + m.number(s.Depth)
}

func names(list []string) string { return strings.Join(list, ", ") }

// headedBy is how many names a heading has at most: those of hundreds of drawers would go over pages, and nobody looks
// for one there.
const headedBy = 40

// headed are names in a heading.
func headed(list []string) string {
	if len(list) > headedBy {
		return words.Some(list)
	}
	return names(list)
}

// upper begins a text with a capital.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// table prints a table.
func (m maker) table(t present.Table) { table(m.Book, t) }

// ticked prints a table with a box to tick before each row.
func (m maker) ticked(t present.Table) { m.Table(ticked(t)) }

func ticked(t present.Table) ([]paper.Column, [][]string) {
	rows := t.Texts()
	for i := range rows {
		rows[i] = append([]string{""}, rows[i]...)
	}
	return append([]paper.Column{{Tick: true}}, columns(t)...), rows
}

func table(book *paper.Book, t present.Table) { book.Table(columns(t), t.Texts()) }

// columns are those of a table on paper.
func columns(t present.Table) []paper.Column {
	list := make([]paper.Column, len(t.Columns))
	for i, title := range t.Titles() {
		list[i] = paper.Column{Head: title, Right: t.Columns[i].Right}
	}
	return list
}
