// Package packet makes packet.pdf of a batch, what goes to the bench on paper: what
// to make, cautions, the cut list, every setup with a drawing, every part with its
// sizes, corners, the order of assembly, a form for each drawer, and labels.
package packet

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// Make makes the pages of a batch, of its report and of its sheets as PDF.
func Make(b batch.Batch, r record.Report, p sheets.Plan) ([]byte, error) {
	var out bytes.Buffer
	var laid error
	pages := func(yield func(drawing.Page) bool) {
		laid = lay(b, r, p, func(p drawing.Page) { yield(p) }) // the writer takes all
	}
	err := drawing.WritePDF(&out, drawing.Info{Title: title(b), Subject: "cut list, setups, parts, assembly and labels of drawer boxes"}, pages)
	return out.Bytes(), cmp.Or(laid, err)
}

// lay lays the packet's pages out, one after the other.
func lay(b batch.Batch, r record.Report, p sheets.Plan, out func(drawing.Page)) error {
	size, known := paper.SizeOf(b.Paper.Size)
	if !known {
		size = paper.A4
	}
	m := maker{Book: &paper.Book{Size: size, Title: title(b), Out: out}, batch: b, report: r, plan: p, unit: b.Units,
		sheet: present.SetupsOf(b)}
	if err := m.cover(); err != nil {
		return err
	}
	m.cautions()
	m.cutList()
	m.sheets()
	m.setups()
	m.parts()
	m.corners()
	m.assembly()
	m.openings()
	m.templates()
	m.travellers()
	return m.labels()
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
	report record.Report
	plan   sheets.Plan
	unit   geom.Unit
	sheet  present.SetupSheet
}

// number prints mm as a shop reads sizes: true fractions in inches.
func (m maker) number(mm float64) string { return geom.LengthOf(mm).Number(m.unit) }

// measured prints mm for a person with a rule: decimals of an inch with the nearest 64th.
func (m maker) measured(mm float64) string { return geom.LengthOf(mm).Measured(m.unit) }

// caliper prints mm with all digits that a caliper shows.
func (m maker) caliper(mm float64) string { return geom.LengthOf(mm).Fixed(m.unit) }

// reported prints a number of the report, which is in the job's unit.
func (m maker) reported(v float64) string { return m.caliper(v * m.unit.MM()) }

func (m maker) size(s joinery.Size) string {
	return m.number(s.Width) + " x " + m.number(s.Height) + " x " + m.number(s.Depth)
}

func names(list []string) string { return strings.Join(list, ", ") }

func (m maker) cautions() {
	s := m.sheet
	m.Heading(0, "Before you begin")
	m.Text(s.First)
	say := func(list []present.Caution) {
		for _, c := range list {
			m.Item(0, "!", cited(c))
		}
	}
	say(s.General)
	for _, c := range s.Machines {
		m.Heading(2, upper(batch.MachineName(joinery.CutterKind(c.Machine))))
		say(c.Cautions)
	}
	m.Space(2)
	cites := s.Cited()
	for i, source := range s.Sources {
		if cites[i+1] {
			m.Small(fmt.Sprintf("[%d] %s", i+1, source))
		}
	}
}

func cited(c present.Caution) string {
	if c.Source > 0 {
		return fmt.Sprintf("%s [%d]", c.Text, c.Source)
	}
	return c.Text
}

// upper begins a text with a capital.
func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// cutList prints the parts by stock, with the sheets that it is bought in.
func (m maker) cutList() {
	m.Chapter("Cut list")
	unit := m.unit.String()
	groups := batch.Merged(m.batch)
	for len(groups) > 0 {
		stock := groups[0].Parts[0].Stock
		n := slices.IndexFunc(groups, func(g batch.Group) bool { return g.Parts[0].Stock.Name != stock.Name })
		if n < 0 {
			n = len(groups)
		}
		said := fmt.Sprintf("%s, %s %s thick", stock.Name, m.number(groups[0].Parts[0].Panel.Thickness), unit)
		if stock.Length > 0 {
			said += fmt.Sprintf(", sheets of %s x %s", m.number(stock.Length), m.number(stock.Width))
		}
		if stock.Grain != joinery.GrainNone {
			said += "; the grain runs along the length"
		}
		m.Heading(2, said)
		var rows [][]string
		for _, g := range groups[:n] {
			var all []string
			for _, p := range g.Parts {
				all = append(all, p.Name)
			}
			p := g.Parts[0]
			rows = append(rows, []string{fmt.Sprint(g.Quantity), m.measured(p.Panel.Length()), m.measured(p.Panel.Width()), names(all)})
		}
		m.Table([]string{">pieces", ">length " + unit, ">width " + unit, "parts"}, rows)
		for _, said := range present.BlankNotes(groups[:n], m.unit) {
			m.Text(said + ".")
		}
		groups = groups[n:]
	}
	var rows [][]string
	for _, x := range m.report.Buy {
		rows = append(rows, []string{x.Kind, x.Name, fmt.Sprint(x.Quantity), x.Unit})
	}
	if len(rows) > 0 {
		m.Heading(2, "To buy")
		m.Table([]string{"kind", "what", ">quantity", "unit"}, rows)
	}
}

// openings prints the slide lines of each opening.
func (m maker) openings() {
	if len(m.report.Cabinets) == 0 {
		return
	}
	m.Chapter("Slides")
	unit := m.unit.String()
	for _, c := range m.report.Cabinets {
		m.Heading(1, fmt.Sprintf("%s: %s x %s x %s %s, %s", c.Name, m.reported(c.Opening.Width), m.reported(c.Opening.Height), m.reported(c.Opening.Depth), unit, c.Slide))
		if c.Packing > 0 {
			m.Text(fmt.Sprintf("Pack the cabinet's sides out by %s %s, level with its frame, where slides are screwed on.", m.reported(c.Packing), unit))
		}
		if c.Shim > 0 {
			text := present.ShimText(c, m.unit)
			m.Text(strings.ToUpper(text[:1]) + text[1:] + ".")
		}
		var rows [][]string
		for _, r := range c.Rows {
			line := "-"
			if len(c.Files) > 0 {
				line = m.reported(r.Line)
			}
			rows = append(rows, []string{r.Drawer, line, m.reported(r.BoxBottom), m.reported(r.FrontBottom), m.reported(r.FrontHeight)})
		}
		m.Table([]string{"drawer", ">slide line " + unit, ">box from", ">front from", ">front height"}, rows)
		for _, s := range c.Spacers {
			m.Item(0, "·", fmt.Sprintf("spacer of %s %s under the slides of %s", m.reported(s.Length), unit, names(s.Drawers)))
		}
	}
	for _, a := range m.report.Alike {
		text := present.AlikeText(a, m.unit)
		m.Text(strings.ToUpper(text[:1]) + text[1:])
	}
	m.Small("Heights are over the opening's lower edge. Measures of slides are usual ones: the slide maker's sheet comes first.")
}

// templates lists the plates and how they are used.
func (m maker) templates() {
	list := m.report.Templates
	if len(list) == 0 {
		return
	}
	m.Chapter("Templates")
	unit := m.unit.String()
	var rows [][]string
	for _, t := range list {
		rows = append(rows, []string{t.Name, fmt.Sprint(t.Count), m.reported(t.Size[0]), m.reported(t.Size[1]), names(t.Parts)})
	}
	said := fmt.Sprintf("Plates of %s. Files that say AS DRAWN have the lines as the plates should come out: let the cutter's program make up for what it takes away, or use those that say KERF, in which it is made up for; never both.", list[0].Stock)
	m.Text(said)
	m.Table([]string{"plate", ">pieces", ">length " + unit, ">width " + unit, "serves"}, rows)
	told := make(map[string]bool)
	for _, t := range list {
		for _, n := range t.Notes {
			if !told[n] {
				told[n] = true
				m.Item(0, "·", n)
			}
		}
	}
	for _, c := range present.TemplateCautions {
		m.Item(0, "!", cited(c))
	}
}
