package router

import (
	"slices"

	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/export/stroke"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Sheet is parts on one sheet, in mm, its lower left corner at 0, 0 with the inside face
// of all parts up. It is turned over end for end, as a part is.
type Sheet struct {
	Name           string
	Quantity       int // of sheets cut alike
	Stock          string
	Length, Width  float64
	Thickness      float64
	Grain          bool // runs along the length
	Parts          []Placement
	FromSpoilboard bool
	// Pins are the registration holes, and PinBit makes them, PinDepth into the spoilboard
	// below a board of Thickness.
	Pins     []geom.Loop
	PinBit   mill.Bit
	PinDepth float64
	// KeepOut are areas that nothing is cut in, from the lower left corner of the sheet as it
	// lies on the machine: the same, whichever face is up.
	KeepOut []geom.Rect
	// Slots are cut right through beside the parts' tabs, in the place of those that the
	// parts have by themselves.
	Slots []Slot
	// Marks are where a program makes tabs itself, likewise.
	Marks []geom.Loop
}

// Slot is cut with the bit that cuts a part out, which is given by its place on the sheet.
// It runs along the boxes about the parts' outlines, and is drawn along the outlines.
type Slot struct {
	Outline geom.Loop
	Part    int
}

// Placement is a part on a sheet: the lower left corner of its outline at X, Y; turned, it
// is turned a quarter to the left before that.
type Placement struct {
	Part
	X, Y    float64
	Rotated bool
}

// at moves vertices from the part's coordinates to the sheet's.
func (p Placement) at(list []geom.Vertex) []geom.Vertex {
	box := p.Panel.Outline.Bounds()
	out := make([]geom.Vertex, len(list))
	for i, v := range list {
		x, y := v.X-box.Min.X, v.Y-box.Min.Y
		if p.Rotated {
			x, y = box.Height()-y, x
		}
		out[i] = geom.Vertex{Point: geom.Point{X: p.X + x, Y: p.Y + y}, Bulge: v.Bulge}
	}
	return out
}

// onionSkinStays reports whether a part is cut out from its own face though the sheet is turned:
// one that an onion skin holds, with cuts on that face alone. Their overcuts would take the skin
// away if it lay under that face, and as it is it holds while the sheet is turned.
func (p Placement) onionSkinStays() bool {
	onionSkin := false
	for _, c := range p.Work.Cuts {
		switch c.Operation {
		case mill.Slotting:
			return false
		case mill.Profile:
			onionSkin = c.Remaining > 0
		}
	}
	return onionSkin && len(p.Work.Faces) == 1
}

// Whole is a sheet as one part with the work of all of them. What cuts parts out is
// moved to the face that is cut last, so that none is loose when the sheet is turned, but
// where a onionSkin has to stay ([Placement.onionSkinStays]); registration holes of parts give way to
// those of the sheet.
func (s Sheet) Whole() Part {
	out := Part{Name: s.Name, Quantity: s.Quantity, Stock: s.Stock, FromSpoilboard: s.FromSpoilboard, sheet: &s,
		Panel: geom.Panel{Outline: geom.Rectangle(0, 0, s.Length, s.Width), Thickness: s.Thickness}}
	if out.Work.Faces = s.faces(); len(out.Work.Faces) == 0 {
		return out
	}
	if len(out.Work.Faces) > 1 {
		out.pin(s)
	}
	out.Work.Tabs = s.tabs()
	slots := make([]mill.Cut, len(s.Parts)) // of each part that has its own
	for i, p := range s.Parts {
		for _, c := range p.Work.Cuts {
			if c.Operation == mill.Registering {
				continue
			}
			if c = out.adopt(p, c); c.Operation == mill.Slotting && len(s.Slots) > 0 {
				slots[i] = c
				continue
			}
			out.Work.Cuts = append(out.Work.Cuts, p.moved(c))
		}
	}
	out.Work.Cuts = append(out.Work.Cuts, s.slotted(slots, out.Work.Cuts)...)
	return out
}

// faces are those that any part is cut on, in the order in which one part is cut.
func (s Sheet) faces() (list []geom.Face) {
	for _, f := range []geom.Face{geom.Outside, geom.Inside} {
		if slices.ContainsFunc(s.Parts, func(p Placement) bool { return slices.Contains(p.Work.Faces, f) }) {
			list = append(list, f)
		}
	}
	return list
}

// pin adds the sheet's registration holes, on the face that is cut first.
func (p *Part) pin(s Sheet) {
	for _, hole := range s.Pins {
		p.Work.Pins = append(p.Work.Pins, hole)
		p.Work.Cuts = append(p.Work.Cuts, mill.Cut{Operation: mill.Registering, Face: p.Work.Faces[0],
			Depth: s.Thickness, Below: s.PinDepth, Bit: p.bit(s.PinBit), Outline: hole, Pocket: -1})
	}
}

// bit is the number of a bit among those of the part, which it joins if it is new.
func (p *Part) bit(b mill.Bit) int {
	i := slices.Index(p.Bits, b)
	if i < 0 {
		i = len(p.Bits)
		p.Bits = append(p.Bits, b)
	}
	return i
}

// tabs are the sheet's own marks, or else those of its parts.
func (s Sheet) tabs() []geom.Loop {
	list := s.Marks
	if len(list) > 0 {
		return list
	}
	for _, p := range s.Parts {
		for _, t := range p.Work.Tabs {
			list = append(list, p.at(t))
		}
	}
	return list
}

// adopt is a cut of a part on the sheet as the sheet makes it: from the face that is cut
// last where it cuts the part out, by the number that its bit has there.
func (p *Part) adopt(from Placement, c mill.Cut) mill.Cut {
	if (c.Operation == mill.Profile || c.Operation == mill.Slotting) && !from.onionSkinStays() {
		c.Face = p.Work.Faces[len(p.Work.Faces)-1]
	}
	if c.Bit >= 0 {
		c.Bit = p.bit(from.Bits[c.Bit])
	}
	return c
}

// moved is a cut of the part where it lies on the sheet, of none of its pockets.
func (p Placement) moved(c mill.Cut) mill.Cut {
	c.Outline = p.at(c.Outline)
	if c.Path = slices.Clone(c.Path); len(c.Path) > 0 {
		c.Path = p.at(c.Path)
	}
	c.Pocket = -1
	return c
}

// slotted are the sheet's slots, each cut as the slot of its part is, along the outlines
// that parts are cut out by.
func (s Sheet) slotted(ofPart, cuts []mill.Cut) (list []mill.Cut) {
	for _, slot := range s.Slots {
		c := ofPart[slot.Part]
		c.Outline = slot.Outline
		for _, k := range cuts {
			if k.Operation == mill.Profile {
				c.Outline = mill.Follow(c.Outline, k.Outline)
			}
		}
		list = append(list, c)
	}
	return list
}

// onSheet draws what is not cut: the sheet's outline, the areas to keep out of, and in each
// part its corner mark and its name.
func (d *pen) onSheet() {
	d.loop(d.out.Layer(layer.Sheet, layer.Color(layer.Sheet)), d.part.Panel.Outline)
	blank, label := d.out.Layer(layer.Blank, layer.Color(layer.Blank)), d.out.Layer(layer.Label,
		layer.Color(layer.Label))
	for _, k := range d.part.sheet.KeepOut {
		d.keepOut(blank, label, k)
	}
	last := len(d.part.Work.Faces) == 0 || d.face == d.part.Work.Faces[len(d.part.Work.Faces)-1]
	for _, p := range d.part.sheet.Parts {
		if !last { // they are cut from the other face
			d.loop(d.out.Layer(layer.Outline, layer.Color(layer.Outline)), p.at(p.Panel.Outline))
		}
		long, wide := p.Panel.Length(), p.Panel.Width()
		size := min(cornerMark, long/4, wide/4)
		box := p.Panel.Outline.Bounds()
		at := func(x, y float64) geom.Vertex {
			return geom.Vertex{Point: geom.Point{X: box.Min.X + x, Y: box.Min.Y + y}}
		}
		d.loop(blank, p.at([]geom.Vertex{at(0, 0), at(size, 0), at(0, size)}))
		if d.NoNotes {
			continue
		}
		// The name reads along the part, from its other face too.
		height := min(nameHeight, wide/5, 0.9*long/max(1, stroke.Width(p.Name, 1)))
		x := (long - stroke.Width(p.Name, height)) / 2
		stroke.Set(p.Name, height, x, (wide-height)/2, func(line []stroke.Point, closed bool) {
			path := make([]geom.Vertex, len(line))
			for i, q := range line {
				switch x, y := q.X, q.Y; {
				case d.face == geom.Inside:
					path[i] = at(x, y)
				case p.Rotated: // mirrored once more, so that it reads
					path[i] = at(x, wide-y)
				default:
					path[i] = at(long-x, y)
				}
			}
			if path = p.at(path); closed {
				d.loop(label, path)
			} else {
				d.path(label, path)
			}
		})
	}
}

// keepOut draws an area of the machine, which stays where it is when the sheet is turned.
func (d *pen) keepOut(blank, label dxf.LayerID, area geom.Rect) {
	d.polyline(blank, true, area.Loop())
	if d.NoNotes {
		return
	}
	const words = "keep out"
	height := min(nameHeight, area.Height()/2, 0.9*area.Width()/stroke.Width(words, 1))
	x, y := (area.Min.X+area.Max.X-stroke.Width(words, height))/2, (area.Min.Y+area.Max.Y-height)/2
	stroke.Set(words, height, x, y, func(line []stroke.Point, closed bool) {
		path := make([]geom.Vertex, len(line))
		for i, q := range line {
			path[i].Point = geom.Point{X: q.X, Y: q.Y}
		}
		d.polyline(label, closed, path)
	})
}

// nameHeight is the height of a part's name on a sheet, in mm.
const nameHeight = 12.0
