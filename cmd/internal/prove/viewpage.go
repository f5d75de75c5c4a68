package prove

import (
	"errors"
	"math"
	"slices"

	"drawerwright/cmd/internal/filing"
	"drawerwright/cmd/internal/record"
	"drawerwright/cmd/internal/words"
)

// viewPage is the page on which boxes are turned and opened.
const viewPage = filing.Page

// pageCheck holds the page's boxes against the report: every part with its sizes, every box
// with its size, and every piece in its place.
func (w *Worker) pageCheck(read Read) record.Checked {
	c := checking{Prover: w.Prover, out: record.Checked{Kind: record.CheckedScene, Name: viewPage,
		Faults: []record.Fault{}}}
	in, err := w.opened(viewPage, read)
	if err != nil {
		c.missing(viewPage, err)
		return c.out
	}
	defer in.Close()
	s, line, err := pageOf(in)
	switch {
	case errors.Is(err, errNoBoxes):
		c.fault("unreadable", place{viewPage, viewPage, 0}, rebuild, "%v", err)
		return c.out
	case err != nil:
		c.fault("unreadable", place{viewPage, viewPage, line}, rebuild, "the page's boxes cannot be read: %v", err)
		return c.out
	}
	parts := make(map[string]bool)
	for _, q := range s.Parts {
		i, known := c.parts[q.Name]
		if !known {
			c.fault("page-part", place{q.Name, viewPage, line}, rebuild,
				"the page has a part %q that the report does not have", q.Name)
			continue
		}
		parts[q.Name] = true
		want := c.report.Parts.At(i)
		if q.Role != want.Role || q.Stock != want.Stock || q.Quantity != want.Quantity ||
			off(q.Length, want.Length) || off(q.Width, want.Width) || off(q.Thickness, want.Thickness) {
			c.fault("page-part", place{q.Name, viewPage, line}, rebuild,
				"the page has %d of %s, a %s of %s, %s x %s x %s; the report has %d, a %s of %s, %s x %s x %s",
				q.Quantity, q.Name, q.Role, q.Stock, c.text(q.Length), c.text(q.Width), c.text(q.Thickness),
				want.Quantity, want.Role, want.Stock, c.text(want.Length.MM()), c.text(want.Width.MM()),
				c.text(want.Thickness.MM()))
		}
	}
	for _, q := range c.report.Parts.All() {
		if !parts[q.Name] {
			c.fault("page-part", place{q.Name, viewPage, line}, rebuild, "the page lacks %s", q.Name)
		}
	}
	if len(s.Boxes) != len(c.report.Drawers) {
		c.fault("page-box", place{viewPage, viewPage, line}, rebuild, "the page shows %s; the report has %d",
			words.Count(len(s.Boxes), "box", "boxes"), len(c.report.Drawers))
		return c.out
	}
	c.boxesShown(s, line)
	return c.out
}

// placedStand is a place of a part in its box.
type placedStand struct {
	part string
	record.Placement
}

// boxesShown compares the boxes, which come in the report's order.
func (c *checking) boxesShown(s shown, line int) {
	for k, d := range c.report.Drawers {
		b := s.Boxes[k]
		if b.Name != d.Name || b.Count != d.Count || off(b.Size[0], d.Outside.Width) ||
			off(b.Size[1], d.Outside.Height) || off(b.Size[2], d.Outside.Depth) {
			c.fault("page-box", place{d.Name, viewPage, line}, rebuild,
				"the page shows %d of %s, %s wide, %s high, %s deep; the report has %d of %s, %s wide, %s high, %s "+
					"deep",
				b.Count, b.Name, c.text(b.Size[0]), c.text(b.Size[1]), c.text(b.Size[2]),
				d.Count, d.Name, c.text(d.Outside.Width.MM()), c.text(d.Outside.Height.MM()),
				c.text(d.Outside.Depth.MM()))
			continue
		}
		var free []placedStand
		for _, name := range d.Parts {
			for _, stand := range c.report.Parts.At(c.parts[name]).Placements {
				free = append(free, placedStand{name, stand})
			}
		}
		for _, p := range b.Pieces {
			name := ""
			if p.Part >= 0 && p.Part < len(s.Parts) {
				name = s.Parts[p.Part].Name
			}
			i := slices.IndexFunc(free, func(q placedStand) bool {
				return q.part == name && q.X == p.X && q.Y == p.Y && !off(p.Origin[0], q.Origin[0]) &&
					!off(p.Origin[1], q.Origin[1]) && !off(p.Origin[2], q.Origin[2])
			})
			if i < 0 {
				c.fault("page-place", place{name, viewPage, line}, rebuild,
					"%s does not stand on the page as the report has it", name)
				continue
			}
			free = slices.Delete(free, i, i+1)
		}
		if len(free) > 0 {
			c.fault("page-place", place{free[0].part, viewPage, line}, rebuild, "the page lacks %s of %s", free[0].part,
				d.Name)
		}
	}
}

// off reports whether a length of the page, in millimeters with four decimals, is another
// than that of the report.
func off(mm float64, want record.Length) bool { return !(math.Abs(mm-want.MM()) <= sameSize) }
