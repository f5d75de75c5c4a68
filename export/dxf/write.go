package dxf

import "io"

// writing is one drawing on its way into a file.
type writing struct {
	*tags
	d    *Drawing
	rows []layer // the layer table: "0" and the declared layers
}

// WriteTo writes the drawing as a DXF file and gives the number of bytes that
// the writer took. The first error of the drawing, a version or unit
// that does not exist, or a layer name that the version does not allow comes
// back before a byte is written; after that an error is the writer's own. Bytes
// are handed on in blocks of 64 KiB, so that no other buffer is needed between
// WriteTo and a file. The drawing is not changed and can be written again, in
// another version too.
func (d *Drawing) WriteTo(w io.Writer) (int64, error) {
	if err := d.ready(); err != nil {
		return 0, err
	}
	t, done := newTags(w)
	defer done()
	f := writing{tags: t, d: d, rows: d.layerRows()}
	comments(f.tags, d.Unit, d.Comments)
	if d.Version == R12 {
		f.r12()
	} else {
		f.r2000()
	}
	f.str(0, "EOF")
	f.flush()
	return f.written, f.err
}

// ready gives what forbids to write the drawing as it is now set.
func (d *Drawing) ready() error {
	if d.err != nil {
		return d.err
	}
	if d.Version != R2000 && d.Version != R12 {
		return &Error{Rule: ErrVersion, Entity: -1, Vertex: -1, Quantity: "version", Value: float64(d.Version)}
	}
	if d.Unit != Millimeter && d.Unit != Inch {
		return &Error{Rule: ErrUnit, Entity: -1, Vertex: -1, Quantity: "unit", Value: float64(d.Unit)}
	}
	for _, l := range d.layers {
		if err := ValidLayerName(d.Version, l.name); err != nil {
			return err
		}
	}
	return nil
}

// layerRows gives the rows of the layer table. Layer "0" belongs to every file;
// where it was not declared it stands first, in the color 7 (black or white).
func (d *Drawing) layerRows() []layer {
	if _, ok := d.byName["0"]; ok {
		return d.layers
	}
	return append([]layer{{"0", 7}}, d.layers...)
}

// section writes one section around what body writes.
func (f *writing) section(name string, body func()) {
	f.str(0, "SECTION")
	f.str(2, name)
	body()
	f.str(0, "ENDSEC")
}
