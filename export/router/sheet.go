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

// skinStays reports whether a part is cut out from its own face though the sheet is turned:
// one that an onion skin holds, with cuts on that face alone. Their overcuts would take the skin
// away if it lay under that face, and as it is it holds while the sheet is turned.
func (p Placement) skinStays() bool {
	skin := false
	for _, c := range p.Work.Cuts {
		switch c.Operation {
		case mill.Slotting:
			return false
		case mill.Profile:
			skin = c.Remaining > 0
		}
	}
	return skin && len(p.Work.Faces) == 1
}

// Whole is a sheet as one part with the work of all of them. What cuts parts out is
// moved to the face that is cut last, so that none is loose when the sheet is turned, but
// where a skin has to stay ([Placement.skinStays]); registration holes of parts give way to
// those of the sheet.
func (s Sheet) Whole() Part {
	out := Part{Name: s.Name, Quantity: s.Quantity, Stock: s.Stock, Panel: geom.Panel{Outline: geom.Rectangle(0, 0, s.Length, s.Width), Thickness: s.Thickness},
		FromSpoilboard: s.FromSpoilboard, sheet: &s}
	faces := make(map[geom.Face]bool)
	for _, p := range s.Parts {
		for _, f := range p.Work.Faces {
			faces[f] = true
		}
	}
	for _, f := range []geom.Face{geom.Outside, geom.Inside} { // as one part is cut
		if faces[f] {
			out.Work.Faces = append(out.Work.Faces, f)
		}
	}
	if len(out.Work.Faces) == 0 {
		return out
	}
	last := out.Work.Faces[len(out.Work.Faces)-1]
	bit := func(b mill.Bit) int {
		i := slices.Index(out.Bits, b)
		if i < 0 {
			i = len(out.Bits)
			out.Bits = append(out.Bits, b)
		}
		return i
	}
	if len(out.Work.Faces) > 1 {
		for _, hole := range s.Pins {
			out.Work.Pins = append(out.Work.Pins, hole)
			out.Work.Cuts = append(out.Work.Cuts, mill.Cut{Operation: mill.Registering, Face: out.Work.Faces[0],
				Depth: s.Thickness, Below: s.PinDepth, Bit: bit(s.PinBit), Outline: hole, Pocket: -1})
		}
	}
	if out.Work.Tabs = s.Marks; len(s.Marks) == 0 {
		for _, p := range s.Parts {
			for _, t := range p.Work.Tabs {
				out.Work.Tabs = append(out.Work.Tabs, p.at(t))
			}
		}
	}
	var outlines []geom.Loop
	between := make([]mill.Cut, len(s.Parts)) // a slot of each part that has its own
	for i, p := range s.Parts {
		for _, c := range p.Work.Cuts {
			if c.Operation == mill.Registering {
				continue
			}
			if (c.Operation == mill.Profile || c.Operation == mill.Slotting) && !p.skinStays() {
				c.Face = last
			}
			if c.Bit >= 0 {
				c.Bit = bit(p.Bits[c.Bit])
			}
			if c.Operation == mill.Slotting && len(s.Slots) > 0 {
				between[i] = c
				continue
			}
			c.Outline = p.at(c.Outline)
			if c.Path = slices.Clone(c.Path); len(c.Path) > 0 {
				c.Path = p.at(c.Path)
			}
			if c.Operation == mill.Profile {
				outlines = append(outlines, c.Outline)
			}
			c.Pocket = -1
			out.Work.Cuts = append(out.Work.Cuts, c)
		}
	}
	for _, slot := range s.Slots {
		c := between[slot.Part]
		c.Outline = slot.Outline
		for _, l := range outlines {
			c.Outline = mill.Follow(c.Outline, l)
		}
		out.Work.Cuts = append(out.Work.Cuts, c)
	}
	return out
}

// onSheet draws what is not cut: the sheet's outline, the areas to keep out of, and in each
// part its corner mark and its name.
func (d *pen) onSheet() {
	d.loop(d.out.Layer(layer.Sheet, layer.Colour(layer.Sheet)), d.part.Panel.Outline)
	blank, label := d.out.Layer(layer.Blank, layer.Colour(layer.Blank)), d.out.Layer(layer.Label,
		layer.Colour(layer.Label))
	for _, k := range d.part.sheet.KeepOut {
		d.keepOut(blank, label, k)
	}
	last := len(d.part.Work.Faces) == 0 || d.face == d.part.Work.Faces[len(d.part.Work.Faces)-1]
	for _, p := range d.part.sheet.Parts {
		if !last { // they are cut from the other face
			d.loop(d.out.Layer(layer.Outline, layer.Colour(layer.Outline)), p.at(p.Panel.Outline))
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
