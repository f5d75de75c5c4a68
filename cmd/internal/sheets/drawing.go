package sheets

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/filing"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/nest"
	"drawerwright/geom/sheet"
)

// Pin is a registration hole of a sheet.
type Pin struct {
	sheet.Pin
	FromEdge float64 // of its middle from the end of the shortest sheet
	Three    bool    // a third one is in the middle of the upper edge
}

// Drawing is one face of a sheet that a router cuts.
type Drawing struct {
	Face   geom.Face
	File   string // relative to the output folder
	Part   router.Part
	Layers []router.Layer
	DXF    router.Options // with which it is drawn
}

// Drawings of a sheet, one for each face that is cut, in the order of cutting. All parts
// lie with their inside face up, and the sheet is turned over end for end. The error is
// about the names of layers.
func (s *Stock) Drawings(o router.Options, one Sheet) ([]Drawing, error) {
	size := s.Sheets[one.Sheet]
	whole := router.Sheet{Name: fmt.Sprintf("%s %d", s.Name, one.Number), Quantity: one.Count, Stock: s.Name,
		Length: geom.Length(size.Length).MM(), Width: geom.Length(size.Width).MM(), Thickness: s.Stock.Thickness.Mean,
		FromSpoilboard: s.Router.FromSpoilboard, Grain: s.Grained(), Pins: s.Holes(one),
		PinBit: s.Pin.Bit, PinDepth: s.Router.PinBelow(s.Stock.Thickness.Mean, s.Stock.Thickness.Max)}
	if s.Routed {
		whole.KeepOut = s.KeepOut
	}
	whole.Slots, whole.Marks = one.Slots, one.Marks
	for n, p := range one.Placements {
		whole.Parts = append(whole.Parts, router.Placement{Part: s.Part(one, n).Drawn(s.Router),
			X: geom.Length(p.X).MM(), Y: geom.Length(p.Y).MM(), Rotated: p.Rotated})
	}
	drawn := whole.Whole()
	var list []Drawing
	for _, face := range drawn.Work.Faces {
		layers, err := router.Layers(drawn, face, o)
		if err != nil {
			return nil, err
		}
		list = append(list, Drawing{Face: face, File: s.drawing(one, face), Part: drawn, Layers: layers, DXF: o})
	}
	faces := make([][]router.Layer, len(list))
	for i := range list {
		faces[i] = list[i].Layers
	}
	o.MinToolChanges(faces...)
	return list, nil
}

// Drawn are the drawings of a sheet of a job, which was found sound when it was laid out; none of a list, whose are
// made as they are written, and of one that saws cut. They are made anew each time: those of all sheets would be
// the most in memory.
func (s *Stock) Drawn(one Sheet) []Drawing {
	if s.Sawn || s.dxf == nil {
		return nil
	}
	list, _ := s.Drawings(*s.dxf, one)
	return list
}

// Files of a sheet, relative to the output folder: its drawings in the order of cutting, each
// with the files of its bits, and its picture.
func (s *Stock) Files(one Sheet, drawn []Drawing, looks filing.Looks) []string {
	if s.Sawn {
		return looks.Files(s.Picture(one))
	}
	var list []string
	for _, f := range s.Faces(one) {
		file := s.drawing(one, f)
		list = append(list, file)
		for _, d := range drawn {
			if d.File != file {
				continue
			}
			for _, run := range d.DXF.Runs(d.File, d.Layers, d.Part.Bits) {
				list = append(list, run.File)
			}
		}
	}
	return append(list, looks.Files(s.Picture(one))...)
}

// Picture of a sheet, without the ending of its name.
func (s *Stock) Picture(one Sheet) string { return filing.Sheets + s.name(one) }

func (s *Stock) drawing(one Sheet, f geom.Face) string {
	return fmt.Sprintf("%s%s.%s.dxf", filing.RouterSheets, s.name(one), f)
}

// name is what the names of a sheet's files begin with.
func (s *Stock) name(one Sheet) string { return fmt.Sprintf("%s-%d", s.File, one.Number) }

// Holes of a sheet are its registration holes, as they lie with inside faces up; none where
// one face is cut.
func (s *Stock) Holes(one Sheet) (list []geom.Loop) {
	size := s.Sheets[one.Sheet]
	if pins, ok := s.pins(geom.Length(size.Length).MM(), geom.Length(size.Width).MM()); ok && len(s.Faces(one)) > 1 {
		for _, q := range pins {
			list = append(list, geom.Circle(q, s.Pin.Radius))
		}
	}
	return list
}

// Faces of a sheet that are cut, in order.
func (s *Stock) Faces(one Sheet) (list []geom.Face) {
	for _, f := range []geom.Face{geom.Outside, geom.Inside} {
		if slices.ContainsFunc(one.Placements, func(p nest.Placement) bool { return slices.Contains(s.Parts[p.Piece][0].Work().Faces, f) }) {
			list = append(list, f)
		}
	}
	return list
}
