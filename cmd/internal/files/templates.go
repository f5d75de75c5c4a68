package files

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/export/template"
)

// writeTemplates writes every plate as drawn, in four formats, and once more with its
// kerf made up for.
func writeTemplates(b batch.Batch, to Folder) error {
	if b.Templates == nil {
		return nil
	}
	for _, p := range b.Templates.Plates {
		for _, f := range []struct {
			name string
			cut  template.Cut
		}{{p.DrawnDXF, p.Drawn}, {p.MadeDXF, p.Made}} {
			if f.name == "" {
				continue
			}
			var out bytes.Buffer
			if _, err := template.Draw(f.cut, b.DXF.Version, b.DXF.Unit).WriteTo(&out); err != nil {
				return fmt.Errorf("%s: %w", f.name, err)
			}
			if err := to.WriteFile(f.name, out.Bytes()); err != nil {
				return err
			}
		}
		picture, title := p.Drawn.Picture(), p.Drawn.Title
		var svg, pdf bytes.Buffer
		if err := paper.WithSquare(picture, title+", "+strings.ToLower(p.Drawn.Stamp())).WriteSVG(&svg, title); err != nil {
			return fmt.Errorf("%s: %w", p.SVG, err)
		}
		if err := to.WriteFile(p.SVG, svg.Bytes()); err != nil {
			return err
		}
		if err := drawing.WritePDF(&pdf, drawing.Info{Title: title, Subject: "a marking template at its true size, as drawn"}, slices.Values(printed(b, p, picture))); err != nil {
			return fmt.Errorf("%s: %w", p.PDF, err)
		}
		if err := to.WriteFile(p.PDF, pdf.Bytes()); err != nil {
			return err
		}
	}
	return nil
}

// printed are the pages of a plate: on sheets, or on one length of a roll.
func printed(b batch.Batch, p batch.TemplatePlate, picture drawing.Drawing) []drawing.Page {
	title := p.Drawn.Title + ", " + strings.ToLower(p.Drawn.Stamp())
	if roll := b.Templates.Roll; roll > 0 {
		if page, fits := paper.OnRoll(picture, roll, title); fits {
			return []drawing.Page{page}
		}
	}
	size, known := paper.SizeOf(b.Paper.Size)
	if !known {
		size = paper.A4
	}
	return paper.Tile(picture, size, title, p.Drawn.Notes)
}
