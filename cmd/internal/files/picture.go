package files

import (
	"bytes"
	"fmt"

	"drawerwright/cmd/internal/filing"
	"drawerwright/export/drawing"
	"drawerwright/export/paper"
)

// dots is how many a picture has to the inch where it is written in dots.
const dots = 120

// pictureOf is a picture on its way to a folder, named without the ending.
type pictureOf struct {
	name, title string
	drawn       drawing.Drawing
}

// write writes a picture. Dots take longer than all else of a build.
func (p pictureOf) write(to Folder, as filing.Looks) error {
	d := paper.Framed(p.drawn)
	var svg bytes.Buffer
	if err := d.WriteSVG(&svg, p.title); err != nil {
		return fmt.Errorf("%s: %w", p.name, err)
	}
	data := [][]byte{svg.Bytes()}
	if as.PNG {
		var png bytes.Buffer
		if err := d.WritePNG(&png, dots); err != nil {
			return fmt.Errorf("%s: %w", p.name, err)
		}
		data = append(data, png.Bytes())
	}
	for i, file := range as.Files(p.name) {
		if err := to.WriteFile(file, data[i]); err != nil {
			return err
		}
	}
	return nil
}
