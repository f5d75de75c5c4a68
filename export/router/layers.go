package router

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"drawerwright/export/dxf"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Layers that are not of a pocket or the outline. Only REGISTER is cut.
const (
	LabelLayer    = "LABEL"    // the part's words, in single strokes
	BlankLayer    = "BLANK"    // what is not cut but there to line up with: a mark in the panel's first corner, its outline, pins
	ScaleLayer    = "SCALE"    // a square to measure: 100 mm or 4 in
	RegisterLayer = "REGISTER" // holes, right through, on which the panel lies when it has been turned over
)

// DefaultPattern is the layer names of the contract: OPERATION_FACE_DEPTH.
const DefaultPattern = "{operation}_{face}_{depth}"

// DefaultOrder is the order in which operations are cut; dados, grooves and
// rabbets are pockets to a router and share a place.
var DefaultOrder = []string{mill.Registering, "drill", "dado", "groove", "rabbet", "cutout", mill.Profile, mill.Slotting}

// Layer is one layer that is cut, as the legend tells it.
type Layer struct {
	Name      string
	Operation string
	Face      geom.Face
	Depth     float64 // mm, from the face
	Left      float64 // mm of wood under it; 0 where it goes through
	Floor     bool    // the name tells Left, not Depth
	Line      bool    // open paths of the bit's centre
	Bit       int     // index into the part's bits; -1 for a saw
	Cuts      []mill.Cut
}

// Through tells whether the cuts go through the panel.
func (l Layer) Through() bool { return l.Left == 0 }

// Layers gathers what is cut on one face into layers, in the order of cutting. The
// error says of a layer name what no DXF reader would take, or that two different
// cuts would share it.
func Layers(p Part, face geom.Face, o Options) ([]Layer, error) {
	cuts := make([]mill.Cut, 0, len(p.Work.Cuts))
	for _, c := range p.Work.Cuts {
		if c.Face == face {
			cuts = append(cuts, c)
		}
	}
	slices.SortStableFunc(cuts, func(a, b mill.Cut) int { return cmp.Compare(o.rank(a), o.rank(b)) })
	var list []Layer
	at := make(map[string]int, len(cuts))
	for _, c := range cuts {
		l := p.layer(c)
		l.Name = o.Name(p.Bits, p.Stock, l)
		i, known := at[l.Name]
		if !known {
			if err := l.valid(o.Version); err != nil {
				return nil, err
			}
			i = len(list)
			at[l.Name] = i
			list = append(list, l)
		} else if clash := list[i].clash(l, o.Unit); clash != "" {
			return nil, fmt.Errorf("layer %s would hold cuts that differ in %s", l.Name, clash)
		}
		list[i].Cuts = append(list[i].Cuts, c)
	}
	return list, nil
}

// valid judges a layer's name by the rules of the version, and keeps it off the
// names that are not for pockets.
func (l Layer) valid(v dxf.Version) error {
	err := dxf.ValidLayerName(v, l.Name)
	if errors.Is(err, dxf.ErrLayerNameLong) {
		return fmt.Errorf("layer %s has %d characters; R12 takes 31, R2000 255", l.Name, len(l.Name))
	}
	if l.Operation != mill.Registering && slices.Contains([]string{LabelLayer, BlankLayer, SheetLayer, ScaleLayer, RegisterLayer, "0"}, l.Name) {
		return fmt.Errorf("layer %s is for something else than a %s", l.Name, l.Operation)
	}
	return err
}

// clash says in what two cuts differ that must not share a layer; depths may
// differ by what their printed numbers round off.
func (l Layer) clash(other Layer, u geom.Unit) string {
	switch {
	case l.Face != other.Face:
		return "face"
	case depthText(l, u) != depthText(other, u):
		return "depth"
	case l.Bit != other.Bit:
		return "bit"
	case (l.Operation == mill.Profile) != (other.Operation == mill.Profile):
		return "the side of the line that is cut"
	}
	return ""
}

// Name fills the pattern in. A name that several bits of the job would share has that
// of the bit after it.
func (o Options) Name(bits []mill.Bit, stock string, l Layer) string {
	name := o.fill(bits, stock, l)
	if o.Shared[name] && l.Bit >= 0 {
		name += "_" + word(bits[l.Bit].Name)
	}
	return name
}

// Sharing gathers the names of layers that cuts of several bits would share.
type Sharing struct {
	bits map[string]mill.Bit // of the first cut on each
	list map[string]bool
}

// Add takes the cuts of a part.
func (s *Sharing) Add(p Part, o Options) {
	if s.bits == nil {
		s.bits, s.list = make(map[string]mill.Bit), make(map[string]bool)
	}
	for _, c := range p.Work.Cuts {
		if c.Bit < 0 {
			continue
		}
		name, bit := o.fill(p.Bits, p.Stock, p.layer(c)), p.Bits[c.Bit]
		if first, known := s.bits[name]; !known {
			s.bits[name] = bit
		} else if first != bit {
			s.list[name] = true
		}
	}
}

// Names are those that are shared, for [Options].
func (s *Sharing) Names() map[string]bool { return s.list }

// layer is that of one cut, without its name.
func (p Part) layer(c mill.Cut) Layer {
	return Layer{Operation: c.Operation, Face: c.Face, Depth: c.Depth, Left: c.Left, Floor: p.FromSpoilboard && c.Left > 0, Line: len(c.Path) > 0, Bit: c.Bit}
}

func (o Options) fill(bits []mill.Bit, stock string, l Layer) string {
	if l.Operation == mill.Registering {
		return RegisterLayer
	}
	pattern := o.Pattern
	if pattern == "" {
		pattern = DefaultPattern
	}
	operation, bit := l.Operation, ""
	if l.Line && !strings.Contains(pattern, "{depth}") { // an open path always says so
		operation += "-LINE"
	}
	if l.Bit >= 0 {
		bit = bits[l.Bit].Name
	}
	return strings.NewReplacer("{operation}", word(operation), "{face}", word(l.Face.String()), "{depth}", depthText(l, o.Unit),
		"{cutter}", word(bit), "{stock}", word(stock)).Replace(pattern)
}

// Tokens are what a pattern of layer names can hold.
var Tokens = []string{"{operation}", "{face}", "{depth}", "{cutter}", "{stock}"}

// depthText is THROUGH, or the depth in the drawing's unit, rounded to 0.01 mm or
// 0.001 in, a dash for its decimal point; FLOOR before it when it is the wood left,
// LINE when it is the bit's centre that is drawn.
func depthText(l Layer, u geom.Unit) string {
	text := ""
	if l.Line {
		text = "LINE_"
	}
	if l.Through() {
		return text + "THROUGH"
	}
	depth := l.Depth
	if l.Floor {
		text, depth = text+"FLOOR_", l.Left
	}
	return text + strings.Replace(geom.LengthOf(depth).Fixed(u), ".", "-", 1) + strings.ToUpper(u.String())
}

// word makes text fit for a layer name: capitals, digits and dashes.
func word(text string) string {
	out := []byte(strings.ToUpper(text))
	for i, c := range out {
		if !(c >= 'A' && c <= 'Z' || c >= '0' && c <= '9') {
			out[i] = '-'
		}
	}
	return string(out)
}

// rank is an operation's place in the order of cutting: those that the options
// name first, then the others as usual.
func (o Options) rank(c mill.Cut) int {
	operation := c.Operation
	if i := slices.Index(o.Order, operation); i >= 0 && operation != mill.Profile && operation != mill.Slotting { // which cut the panel loose
		return i
	}
	usual := slices.Index(DefaultOrder, operation)
	switch operation {
	case "groove", "rabbet":
		usual = slices.Index(DefaultOrder, "dado")
	}
	return len(o.Order) + usual
}

// Colours, as index numbers of the DXF Reference (group code 62).
const (
	labelColour = 8
	scaleColour = 9
	blankColour = 253
	sheetColour = 252
)

// cutColour gives the i-th cut layer a colour of its own: steps of seven round
// the 24 full hues (10, 20, ... 240), so that neighbours in the list are nowhere
// near each other, then the darker shades of each.
func cutColour(i int) int {
	return 10*(1+(7*i+2)%24) + 2*(i/24%5)
}
