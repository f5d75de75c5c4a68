package sheets

import (
	"fmt"
	"slices"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/mill"
	"drawerwright/geom/nest"
)

// pinWeb is the least wood about the hole of a registration pin, in mm; common practice, no
// source.
const pinWeb = 3.0

// Pin is a registration hole of a sheet.
type Pin struct {
	Radius   float64 // mm
	FromEdge float64 // of its middle from the end of the shortest sheet
	Three    bool    // a third one is in the middle of the upper edge
	Bit      mill.Bit
}

// pinFor is the hole that parts of a stock are turned over on, or one that their
// smallest bit makes; none where no router cuts them.
func pinFor(b batch.Batch, groups []batch.Group) (pin Pin) {
	var smallest mill.Bit
	for _, g := range groups {
		for _, p := range g.Parts {
			for _, c := range p.Work.Cuts {
				if _, r, round := c.Outline.AsCircle(); round && c.Operation == mill.Registering && r > pin.Radius {
					pin = Pin{Radius: r, Bit: p.Bits[c.Bit]}
				}
			}
			for _, bit := range p.Bits {
				if bit.Engraves {
					continue
				}
				if smallest.Diameter == 0 || bit.Diameter < smallest.Diameter {
					smallest = bit
				}
			}
		}
	}
	if pin.Radius == 0 && smallest.Diameter > 0 {
		pin = Pin{Radius: max(mill.UsualPin(b.Units), b.Router.Register.Diameter, smallest.Diameter) / 2, Bit: smallest}
	}
	return pin
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
	sheet := router.Sheet{Name: fmt.Sprintf("%s %d", s.Name, one.Number), Quantity: one.Count, Stock: s.Name,
		Length: geom.Length(size.Length).MM(), Width: geom.Length(size.Width).MM(), Thickness: s.Stock.Thickness.Mean,
		FromSpoilboard: s.Router.FromSpoilboard, Grain: s.Grained(), Pins: s.Holes(one), PinBit: s.Pin.Bit}
	if s.Routed {
		sheet.KeepOut = s.KeepOut
	}
	sheet.Slots, sheet.Marks = one.Slots, one.Marks
	for _, p := range one.Placed {
		part := s.Parts[p.Piece][0]
		sheet.Parts = append(sheet.Parts, router.Placed{Part: part.Drawn(s.Router.FromSpoilboard), X: geom.Length(p.X).MM(), Y: geom.Length(p.Y).MM(), Turned: p.Turned})
	}
	whole := sheet.Whole()
	var list []Drawing
	for _, face := range whole.Work.Faces {
		layers, err := router.Layers(whole, face, o)
		if err != nil {
			return nil, err
		}
		list = append(list, Drawing{Face: face, File: s.drawing(one, face), Part: whole, Layers: layers, DXF: o})
	}
	faces := make([][]router.Layer, len(list))
	for i := range list {
		faces[i] = list[i].Layers
	}
	o.FewestChanges(faces...)
	return list, nil
}

// Files of a sheet: its drawings and pictures, relative to the output folder.
func (s *Stock) Files(one Sheet) []string {
	var list []string
	for _, f := range s.Faces(one) {
		list = append(list, s.drawing(one, f))
	}
	pictures := []string{s.Picture(one)}
	for i := range one.Offcuts {
		pictures = append(pictures, s.OffcutPicture(one, i))
	}
	for _, p := range pictures {
		list = append(list, p+".svg", p+".png")
	}
	return list
}

// OffcutPicture is that of one of a sheet's offcuts, without the ending of its name.
func (s *Stock) OffcutPicture(one Sheet, i int) string {
	return fmt.Sprintf("%s.offcut-%d", s.Picture(one), i+1)
}

// Picture of a sheet, without the ending of its name.
func (s *Stock) Picture(one Sheet) string { return fmt.Sprintf("%s-%d", s.File, one.Number) }

func (s *Stock) drawing(one Sheet, f geom.Face) string {
	return fmt.Sprintf("%s-%d.%s.dxf", s.File, one.Number, f)
}

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
		if slices.ContainsFunc(one.Placed, func(p nest.Placed) bool { return slices.Contains(s.Parts[p.Piece][0].Work.Faces, f) }) {
			list = append(list, f)
		}
	}
	return list
}
