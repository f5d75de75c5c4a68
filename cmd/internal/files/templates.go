package files

import (
	"bytes"
	"context"
	"fmt"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
	"drawerwright/export/template"
)

// writeTemplates writes every plate as drawn and, where its kerf is known, once more
// with the kerf made up for.
func writeTemplates(ctx context.Context, b batch.Batch, to Folder) error {
	if b.Templates == nil {
		return nil
	}
	list := b.Templates.Plates
	if err := Each(ctx, len(list), func() func(int) error { return func(i int) error { return writePlate(b, to, list[i]) } }); err != nil {
		return err
	}
	// One document for all: most of a small one would be its letters.
	pages := func(yield func(drawing.Page) bool) {
		for _, p := range b.Templates.Prints {
			for _, page := range printed(b, p) {
				yield(page) // the writer takes all
			}
		}
	}
	if len(b.Templates.Prints) == 0 {
		return nil
	}
	var pdf bytes.Buffer
	if err := drawing.WritePDF(&pdf, drawing.Info{Title: b.Title + ": templates", Subject: "marking templates at their true size"}, pages); err != nil {
		return fmt.Errorf("%s: %w", batch.TemplatesPDF, err)
	}
	return to.WriteFile(batch.TemplatesPDF, pdf.Bytes())
}

func writePlate(b batch.Batch, to Folder, p batch.TemplatePlate) error {
	if err := writeCut(b, to, p.Drawn, p.DrawnDXF, p.DrawnSVG); err != nil || p.MadeDXF == "" {
		return err
	}
	return writeCut(b, to, p.Made, p.MadeDXF, p.MadeSVG)
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
	stamped := c.Title + ", " + strings.ToLower(c.Stamp())
	if err := paper.WithSquare(c.Picture(), stamped, c.Unit).WriteSVG(&lines, c.Title); err != nil {
		return fmt.Errorf("%s: %w", svg, err)
	}
	return to.WriteFile(svg, lines.Bytes())
}

// printed are the pages of a plate: on sheets, or on one length of a roll.
func printed(b batch.Batch, p template.Plate) []drawing.Page {
	picture, notes := p.OnPaper()
	if roll := b.Templates.RollWidth; roll > 0 {
		if page, fits := paper.OnRoll(picture, roll, p.Title, notes, p.Unit); fits {
			return []drawing.Page{page}
		}
	}
	size, known := paper.SizeOf(b.Paper.Size)
	if !known {
		size = paper.A4
	}
	return paper.Tile(picture, size, p.Title, notes, p.Unit)
}
