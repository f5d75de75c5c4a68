package dxftest

import (
	"bytes"
	"io"
	"strings"
)

// File is what a DXF file holds, as far as this project writes it.
type File struct {
	Version  string           // $ACADVER: AC1009 or AC1015
	Unit     string           // "mm" or "in", from $INSUNITS or else from the comment; empty where neither says
	Comments []string         // groups 999
	Header   map[string][]Tag // the values of each header variable
	Layers   []Layer          // in the order of the layer table
	Entities []Entity         // in the order of the ENTITIES section
}

// Layer is a record of the layer table.
type Layer struct {
	Name     string
	Colour   int
	Linetype string
}

// Vertex is a corner of a polyline in drawing units, with the bulge of the edge
// to the next.
type Vertex struct{ X, Y, Bulge float64 }

// Entity is a polyline or a circle, in drawing units.
type Entity struct {
	Type     string // LWPOLYLINE, POLYLINE or CIRCLE
	Layer    string
	Closed   bool     // true for a circle
	Vertices []Vertex // of a polyline
	X, Y     float64  // centre of a circle
	Radius   float64  // of a circle
	Line     int      // where it begins in the file, counted from 1
}

// ReadBack writes a drawing into memory, judges it by [Strict], and reads it.
func ReadBack(drawing io.WriterTo) (*File, error) {
	var out bytes.Buffer
	if _, err := drawing.WriteTo(&out); err != nil {
		return nil, err
	}
	if err := Strict(out.Bytes()); err != nil {
		return nil, err
	}
	return Parse(&out)
}

// Parse reads a file. It takes whatever can be understood and reports only what
// is not made of tags at all ([ErrTags]) or what the reader reports; for the
// rest there is [Strict].
func Parse(r io.Reader) (*File, error) {
	tags, err := ReadTags(r)
	if err != nil {
		return nil, err
	}
	return parse(tags), nil
}

func parse(tags []Tag) *File {
	all, comments, _ := sections(tags)
	f := &File{Comments: comments}
	_, f.Header = variables(find(all, "HEADER"))
	if v := f.Header["$ACADVER"]; len(v) > 0 {
		f.Version = v[0].Value
	}
	f.Unit = unit(f.Header, comments)
	for _, t := range tables(find(all, "TABLES")) {
		if t.name != "LAYER" {
			continue
		}
		for _, r := range t.records {
			f.Layers = append(f.Layers, Layer{r.text(2), r.number(62, 0), r.text(6)})
		}
	}
	f.Entities = entities(find(all, "ENTITIES").records)
	return f
}

// unit reads the unit from the header, or from a comment.
func unit(header map[string][]Tag, comments []string) string {
	if v := header["$INSUNITS"]; len(v) > 0 {
		switch v[0].int() {
		case 4:
			return "mm"
		case 1:
			return "in"
		}
	}
	return commentUnit(comments)
}

// commentUnit reads the unit from the comment that states it.
func commentUnit(comments []string) string {
	for _, c := range comments {
		switch strings.TrimSpace(c) {
		case "Units: millimetres":
			return "mm"
		case "Units: inches":
			return "in"
		}
	}
	return ""
}

// entities gathers polylines and circles. The vertices of a POLYLINE are records
// of their own that follow it.
func entities(records []record) []Entity {
	var all []Entity
	old := -1 // the POLYLINE that vertices now belong to
	for _, r := range records {
		e := Entity{Type: r.kind, Layer: r.text(8), Line: r.line}
		switch r.kind {
		case "CIRCLE":
			e.Closed = true
			for _, t := range r.tags {
				switch t.Code {
				case 10:
					e.X = t.float()
				case 20:
					e.Y = t.float()
				case 40:
					e.Radius = t.float()
				}
			}
			all = append(all, e)
		case "LWPOLYLINE":
			e.Closed = r.number(70, 0)&1 != 0
			e.Vertices = vertices(r)
			all = append(all, e)
		case "POLYLINE":
			e.Closed = r.number(70, 0)&1 != 0
			old = len(all)
			all = append(all, e)
		case "VERTEX":
			if old >= 0 {
				all[old].Vertices = append(all[old].Vertices, vertices(r)...)
			}
		case "SEQEND":
			old = -1
		}
	}
	return all
}

// vertices gathers the vertices of one record: each begins with its group 10.
func vertices(r record) []Vertex {
	var all []Vertex
	for _, t := range r.tags {
		if t.Code == 10 {
			all = append(all, Vertex{X: t.float()})
			continue
		}
		if len(all) == 0 {
			continue
		}
		last := &all[len(all)-1]
		switch t.Code {
		case 20:
			last.Y = t.float()
		case 42:
			last.Bulge = t.float()
		}
	}
	return all
}
