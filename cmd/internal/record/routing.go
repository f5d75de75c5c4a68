package record

import (
	"fmt"
	"slices"
	"strings"

	"drawerwright/cmd/internal/batch"
	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// DXF says how the drawings were written.
type DXF struct {
	Version string `json:"version"`
	Units   string `json:"units"`
	Layers  string `json:"layers"` // the pattern of the names of layers that are cut
	Notes   bool   `json:"notes"`  // a label and a square to measure are drawn beside
	// Split says that beside each drawing there is a file for each change of bit.
	Split bool `json:"split,omitempty"`
	// Elevation says that cuts lie at the height of their floors, and are as thick as reaches
	// up to the face.
	Elevation bool `json:"elevation,omitempty"`
}

// Router says how a router's cuts were drawn.
type Router struct {
	Overcut Length `json:"overcut"` // beyond the bit's radius
	Relief  string `json:"relief"`
	// Reliefs are those of operations that have one of their own.
	Reliefs    map[string]mill.Relief `json:"reliefs,omitempty"`
	ExactSlots string                 `json:"exact_slots"`
	// DepthFrom is top, where layers tell depths, or spoilboard, where they tell the wood left.
	DepthFrom      string `json:"depth_from"`
	PartSpacing    Length `json:"part_spacing"`              // 0 when the job does not say
	IntoSpoilboard Length `json:"into_spoilboard,omitempty"` // how far cuts that go through go on
	Tabs           *Tabs  `json:"tabs,omitempty"`
}

// Tabs are the bridges that the job asks for.
type Tabs struct {
	Width   Length `json:"width"`
	Height  Length `json:"height"`
	Spacing Length `json:"spacing"`
	Marked  bool   `json:"marked,omitempty"` // they are only shown, for a program that makes its own
}

// Readings are what was measured of a stock.
type Readings struct {
	Name      string `json:"name"`
	Thickness Length `json:"thickness"` // the mean
	Min       Length `json:"min"`
	Max       Length `json:"max"`
}

// Layer is a line of the legend: what is cut on a layer of a drawing, and with what.
type Layer struct {
	File      string `json:"file"`
	Layer     string `json:"layer"`
	Operation string `json:"operation"`
	Face      string `json:"face"`
	Depth     Length `json:"depth"`     // from the face
	Remaining Length `json:"remaining"` // of the wood under it; 0 where it goes through
	Stated    string `json:"stated"`    // through, depth or remaining: what the name tells
	ToSet
	Line     bool   `json:"line"` // open paths for the middle of the bit
	Bit      string `json:"bit"`  // empty for a saw
	Diameter Length `json:"diameter"`
	Flutes   int    `json:"flutes,omitempty"`
	Tool     int    `json:"tool,omitempty"` // its number in the machine
	Cuts     int    `json:"cuts"`
	// Elevation is where the lines of the layer lie, Thickness how far up they reach from
	// there; nil where all lie at Z = 0.
	Elevation *Length `json:"elevation,omitempty"`
	Thickness *Length `json:"thickness,omitempty"`
	// BitFile is the file that has what is cut of the drawing until its bit is changed.
	BitFile string `json:"bit_file,omitempty"`
}

// Cutter is the bit that cuts the layer; the zero Bit where a saw does.
func (l Layer) Cutter() Bit { return Bit{l.Bit, l.Diameter, l.Flutes, l.Tool} }

// Faces says which faces of a part are cut, in the order of cutting.
type Faces struct {
	Part       string   `json:"part"`
	Cut        []string `json:"cut"`
	Flipped    bool     `json:"flipped"`     // it has to be turned over
	Beyond     Length   `json:"beyond"`      // how far pockets reach past its edges
	Spacing    Length   `json:"spacing"`     // how far apart parts must lie for that, and for the bit that cuts them out
	EndSpacing Length   `json:"end_spacing"` // beyond the ends, where registration holes may be
	// Blank is the least length and width of the piece that the part is cut from.
	Blank [2]Length `json:"blank"`
	Flip  *Flip     `json:"flip,omitempty"`
}

// Flip says what an error in turning a part over does to its joints.
type Flip struct {
	// Along and Across report whether an error along or across the length moves a cut
	// that matters; Allowed is how much of it, along, the joint takes.
	Along   bool   `json:"along"`
	Across  bool   `json:"across"`
	Allowed Length `json:"allowed"`
	Text    string `json:"text"`
}

func drawn(b batch.Batch) DXF {
	version := "R2000"
	if b.DXF.Version == dxf.R12 {
		version = "R12"
	}
	return DXF{version, b.DXF.Unit.String(), b.DXF.Pattern, !b.DXF.NoNotes, b.DXF.Split, b.DXF.Elevation}
}

func routed(b batch.Batch) Router {
	from := joinery.FromTop
	if b.Router.FromSpoilboard {
		from = joinery.FromSpoilboard
	}
	out := Router{Length(b.Router.Overcut), string(b.Router.Relief), b.Router.Reliefs, string(b.Router.Slots),
		string(from), Length(b.Router.PartSpacing), Length(b.Router.IntoSpoilboard), nil}
	if t := b.Router.Tabs; t.Width > 0 {
		out.Tabs = &Tabs{Length(t.Width), Length(t.Height), Length(t.Spacing), t.Marked}
	}
	return out
}

func readings(b batch.Batch) []Readings {
	list := []Readings{}
	for _, s := range b.Stocks {
		t := s.Thickness
		list = append(list, Readings{s.Name, Length(t.Mean), Length(t.Min), Length(t.Max)})
	}
	return list
}

func layers(b batch.Batch, p batch.Part) []Layer {
	var list []Layer
	for _, d := range p.Drawings {
		list = append(list, drawnBoard{p.Bits, b.DXF, p.Panel.Thickness}.legends(d.File, b.Layers(p, d))...)
	}
	return list
}

// Legend is that of one drawing, which is a file for all bits.
func Legend(p router.Part, layers []router.Layer, o router.Options) []Layer {
	o.Split = false
	return drawnBoard{p.Bits, o, p.Panel.Thickness}.legends("", layers)
}

// drawnBoard is what is drawn: a part or a sheet, its thickness in mm.
type drawnBoard struct {
	bits      []mill.Bit
	dxf       router.Options
	thickness float64
}

// legends are the lines of the layers of a drawing, in the order of cutting.
func (b drawnBoard) legends(file string, layers []router.Layer) (list []Layer) {
	var files []string // of the layers that bits cut
	for _, run := range b.dxf.Runs(file, layers, b.bits) {
		files = append(files, slices.Repeat([]string{run.File}, len(run.Layers))...)
	}
	for _, l := range layers {
		one := b.legend(file, l)
		if l.Bit >= 0 && len(files) > 0 {
			one.BitFile, files = files[0], files[1:]
		}
		list = append(list, one)
	}
	return list
}

// legend is the line of one of them.
func (b drawnBoard) legend(file string, l router.Layer) Layer {
	out := Layer{File: file, Layer: l.Name, Operation: l.Operation, Face: l.Face.String(), Depth: Length(l.Depth),
		Remaining: Length(l.Remaining), Stated: "depth", ToSet: toSet(l, b.thickness), Line: l.Line, Cuts: len(l.Cuts)}
	switch {
	case l.Through():
		out.Stated, out.Depth = "through", Length(b.thickness)
	case l.Floor:
		out.Stated = "remaining"
	}
	if b.dxf.Elevation {
		low, up := l.Level(b.thickness)
		elevation, thickness := Length(low), Length(up)
		out.Elevation, out.Thickness = &elevation, &thickness
	}
	if l.Bit >= 0 {
		bit := b.bits[l.Bit]
		out.Bit, out.Diameter, out.Flutes, out.Tool = bit.Name, Length(bit.Diameter), bit.Flutes, bit.Tool
	}
	return out
}

func faces(d batch.Drawer, p batch.Part, u geom.Unit) Faces {
	work := p.Work()
	length, width := work.Blank(p.Panel)
	out := Faces{Part: p.Name, Cut: []string{}, Flipped: work.TurnedOver(), Beyond: Length(work.Beyond),
		Spacing: Length(work.Gap), EndSpacing: Length(work.EndGap),
		Blank: [2]Length{Length(length), Length(width)}}
	for _, f := range work.Faces {
		out.Cut = append(out.Cut, f.String())
	}
	if out.Flipped && len(p.Bits) > 0 {
		out.Flip = flip(d, p, u)
	}
	return out
}

// flip says which way the cuts on the outside face can be off.
func flip(d batch.Drawer, p batch.Part, u geom.Unit) *Flip {
	f := mill.FlipOf(p.Panel, d.Spec.GlueSpace)
	out := &Flip{Along: f.Along, Across: f.Across, Allowed: Length(f.Allowed)}
	text := func(mm float64) string { return geom.LengthOf(mm).Text(u) }
	var clauses []string
	if out.Along {
		clauses = append(clauses, "an error along the length makes one tongue longer and the other shorter by as much")
		wider := "that makes the box wider and leaves a shoulder open"
		if d.Spec.GlueSpace > 0 {
			wider = fmt.Sprintf("what is over the glue space of %s makes the box wider and leaves a shoulder open",
				text(d.Spec.GlueSpace))
		}
		clauses = append(clauses, fmt.Sprintf("%s: up to %s is allowed", wider, text(f.Allowed)))
	}
	if out.Across {
		clauses = append(clauses, "an error across moves its cuts up or down")
	} else {
		clauses = append(clauses, "across, nothing moves, as these cuts run the full height")
	}
	out.Text = strings.Join(clauses, "; ")
	return out
}
