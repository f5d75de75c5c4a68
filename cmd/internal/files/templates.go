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

// writeTemplates writes every plate as drawn and, where its kerf is known, once more
// with the kerf made up for.
func writeTemplates(b batch.Batch, to Folder) error {
	if b.Templates == nil {
		return nil
	}
	for _, p := range b.Templates.Plates {
		if err := writeCut(b, to, p.Drawn, p.DrawnDXF, p.DrawnSVG); err != nil {
			return err
		}
		if p.MadeDXF != "" {
			if err := writeCut(b, to, p.Made, p.MadeDXF, p.MadeSVG); err != nil {
				return err
			}
		}
		var pdf bytes.Buffer
		if err := drawing.WritePDF(&pdf, drawing.Info{Title: p.Drawn.Title, Subject: "a marking template at its true size, as drawn"}, slices.Values(printed(b, p.Drawn))); err != nil {
			return fmt.Errorf("%s: %w", p.PDF, err)
		}
		if err := to.WriteFile(p.PDF, pdf.Bytes()); err != nil {
			return err
		}
	}
	return nil
}

// writeCut writes what a cutter reads.
func writeCut(b batch.Batch, to Folder, c template.Cut, dxf, svg string) error {
	var out bytes.Buffer
	if _, err := template.Draw(c, b.DXF.Version, b.DXF.Unit).WriteTo(&out); err != nil {
		return fmt.Errorf("%s: %w", dxf, err)
	}
	if err := to.WriteFile(dxf, out.Bytes()); err != nil {
		return err
	}
	var lines bytes.Buffer
	if err := paper.WithSquare(c.Picture(), stamped(c)).WriteSVG(&lines, c.Title); err != nil {
		return fmt.Errorf("%s: %w", svg, err)
	}
	return to.WriteFile(svg, lines.Bytes())
}

// stamped is a plate's title with whether its kerf is made up for.
func stamped(c template.Cut) string { return c.Title + ", " + strings.ToLower(c.Stamp()) }

// printed are the pages of a plate: on sheets, or on one length of a roll.
func printed(b batch.Batch, c template.Cut) []drawing.Page {
	picture, title := c.Picture(), stamped(c)
	if roll := b.Templates.Roll; roll > 0 {
		if page, fits := paper.OnRoll(picture, roll, title, c.Notes); fits {
			return []drawing.Page{page}
		}
	}
	size, known := paper.SizeOf(b.Paper.Size)
	if !known {
		size = paper.A4
	}
	return paper.Tile(picture, size, title, c.Notes)
}
