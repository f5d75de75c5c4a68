package packet

import (
	"fmt"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// cover says what to make, what becomes of the boxes, and every warning, with a picture
// of the first box.
func (m maker) cover() error {
	m.Page(drawing.Bookmark{Name: "What to make"})
	m.Heading(0, title(m.batch))
	t := present.NewTable(present.Words("drawer"), present.Numbers("boxes"),
		present.Numbers("outside, width x height x depth"), present.Numbers("inside"), present.Words("corner"))
	boxes := 0
	for _, d := range m.batch.Drawers {
		boxes += d.Spec.Count
		t.Add(d.Spec.Name, fmt.Sprint(d.Spec.Count), m.size(d.Outside), m.size(d.Inside), string(d.Spec.Joint))
	}
	m.Text(fmt.Sprintf("%s of %s. Lengths are in %s. Everything here was worked out from measured boards; measure a "+
		"test piece before you cut a run.", words.Count(boxes, "box", "boxes"),
		words.Count(len(t.Rows), "kind", "kinds"), unitWords[m.unit]))
	m.Text(record.VerdictOn(m.batch).Text)
	for _, v := range m.sheet.Verdicts {
		m.Item(0, "·", v.String())
	}
	m.Small(present.Basis)
	for _, line := range present.Gathered(m.report.Warnings, geom.LevelWarning) {
		m.Item(0, "!", line)
	}
	if notes := present.Gathered(m.report.Warnings, geom.LevelNote); len(notes) > 0 {
		m.Small("Notes: more work, but nothing that comes out wrong:")
		for _, line := range notes {
			m.Item(0, "-", line)
		}
	}
	m.table(t)
	if len(m.batch.Drawers) > 0 {
		picture, err := m.exploded(m.batch.Drawers[0], pictured)
		if err != nil {
			return err
		}
		m.Figure(picture, m.batch.Drawers[0].Spec.Name+", taken apart, with the numbers of the cut list.")
	}
	return nil
}

// pictured is the room for a picture, in mm.
var pictured = geom.Point{X: 150, Y: 105}
