package router

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"drawerwright/export/dxf"
	"drawerwright/export/layer"
	"drawerwright/geom"
	"drawerwright/geom/mill"
	"drawerwright/geom/sweep"
)

// DefaultPattern is the layer names of the contract: OPERATION_FACE_DEPTH.
const DefaultPattern = "{operation}_{face}_{depth}"

// DefaultOrder is the order in which operations are cut; dados, grooves and
// rabbets are pockets to a router and share a place.
var DefaultOrder = []string{mill.Registering, "drill", "mortise", "dado", "groove", "rabbet", "flank",
	mill.EngravingOperation, "cutout", mill.Profile, mill.Slotting}

// Layer is one layer that is cut, as the legend tells it.
type Layer struct {
	Name      string
	Operation string
	Face      geom.Face
	Depth     float64 // mm, from the face
	Remaining float64 // mm of wood under it; 0 where it goes through
	Below     float64 // mm that it goes on into the spoilboard
	Overcut   float64 // mm that it goes on below the board as its thickness was measured, where its name says through
	Floor     bool    // the name has Remaining, not Depth
	// FromSpoilboard says that names tell the wood left, and what is below it.
	FromSpoilboard bool
	Line           bool    // open paths of the bit's center
	Bit            int     // index into the part's bits; -1 for a saw
	Diameter       float64 // of holes
	Cuts           []mill.Cut
}

// Through reports whether the cuts go through the panel.
func (l Layer) Through() bool { return l.Remaining == 0 }

// Layers gathers what is cut on one face into layers, in the order of cutting. With
// [Options.Elevation] cuts of different depths may have a name in common, and are one
// layer of the list for each depth. The error says of a layer name what no DXF reader
// would take, or that two different cuts would share it ([*LayerConflict]).
func Layers(p Part, face geom.Face, o Options) ([]Layer, error) {
	cuts := make([]mill.Cut, 0, len(p.Work.Cuts))
	for _, c := range p.Work.Cuts {
		if c.Face == face {
			cuts = append(cuts, c)
		}
	}
	slices.SortStableFunc(cuts,
		func(a, b mill.Cut) int { return cmp.Compare(o.rank(a.Operation), o.rank(b.Operation)) })
	var list []Layer
	first := make(map[string]int, len(cuts)) // of a name
	at := make(map[[2]string]int, len(cuts))
	for _, c := range cuts {
		l := p.layerOf(c)
		l.Name = o.Name(p.Bits, p.Stock, l)
		if i, known := first[l.Name]; !known {
			if err := l.valid(o.Version); err != nil {
				return nil, err
			}
			first[l.Name] = len(list)
		} else if err := o.clash(list[i], l); err != nil {
			return nil, err
		}
		key := [2]string{l.Name, depthText(l, o.Unit)}
		i, known := at[key]
		if !known {
			i = len(list)
			at[key] = i
			list = append(list, l)
		}
		list[i].Cuts = append(list[i].Cuts, c)
	}
	// What has a name in common stands together.
	slices.SortStableFunc(list, func(a, b Layer) int { return cmp.Compare(first[a.Name], first[b.Name]) })
	if p.sheet != nil {
		for i := range list {
			if err := list[i].unite(); err != nil {
				return nil, fmt.Errorf("layer %s: cuts of neighbors cannot be united: %w", list[i].Name, err)
			}
		}
	}
	o.MinToolChanges(list)
	return list, nil
}

// unite makes one outline of cuts that overlap, as those do that run past the edges of
// neighbors: a program that takes an outline within another for an island would leave
// wood there.
func (l *Layer) unite() error {
	if l.Line || slices.Contains([]string{mill.Registering, mill.Profile, geom.Drill.String()}, l.Operation) || len(l.Cuts) < 2 {
		return nil
	}
	outlines := make([]geom.Loop, len(l.Cuts))
	for i, c := range l.Cuts {
		outlines[i] = c.Outline
	}
	united, err := sweep.Union(outlines)
	if err != nil {
		return err
	}
	one := l.Cuts[0]
	l.Cuts = nil
	for _, o := range united {
		one.Outline = o
		l.Cuts = append(l.Cuts, one)
	}
	return nil
}

// valid judges a layer's name by the rules of the version, and keeps it off the
// names that are not for pockets.
func (l Layer) valid(v dxf.Version) error {
	err := dxf.ValidLayerName(v, l.Name)
	if errors.Is(err, dxf.ErrLayerNameLong) {
		return fmt.Errorf("layer %s has %d characters: %w; R12 takes 31, R2000 255", l.Name, len(l.Name),
			dxf.ErrLayerNameLong)
	}
	if slices.Contains(layer.NotCut, l.Name) {
		return fmt.Errorf("layer %s is for something else than a %s", l.Name, l.Operation)
	}
	return err
}

// LayerConflict is that two different cuts would share a layer.
type LayerConflict struct {
	Layer string
	In    string // what they differ in
}

func (c *LayerConflict) Error() string {
	return fmt.Sprintf("layer %s would hold cuts that differ in %s", c.Layer, c.In)
}

// InDepth is what cuts differ in that may share a layer if each tells its elevation.
const InDepth = "depth"

// clash says in what two cuts of one name differ that must not share a layer; depths may
// differ by what their printed numbers round off, and by more where elevations tell them.
func (o Options) clash(l, other Layer) error {
	in := ""
	switch {
	case l.Face != other.Face:
		in = "face"
	case !o.Elevation && depthText(l, o.Unit) != depthText(other, o.Unit):
		in = InDepth
	case l.Bit != other.Bit:
		in = "bit"
	case (l.Operation == mill.Profile) != (other.Operation == mill.Profile):
		in = "the side of the line that is cut"
	case l.Line != other.Line:
		in = "whether the bit's middle follows the line"
	default:
		return nil
	}
	return &LayerConflict{l.Name, in}
}

// Level is where the lines of a layer lie, in mm, if elevations are asked for: at the
// floor of the cut, and as thick as reaches up to the face of a board of a thickness. Z = 0
// is the face that is cut, or the spoilboard's top where depths are from there.
func (l Layer) Level(thickness float64) (elevation, up float64) {
	depth := l.Depth + l.Below + l.Overcut
	if l.Through() {
		depth = thickness + l.Below + l.Overcut
	}
	if elevation = -depth; l.FromSpoilboard {
		elevation += thickness
	}
	return elevation, depth
}

// Set is what an operator sets for a layer of a board of a thickness, in mm: how deep below
// the face or, where depths are from the spoilboard, how high over its top, below 0 in it.
// Names of layers, heights of lines and run cards tell no other depth.
func (l Layer) Set(thickness float64) float64 {
	low, _ := l.Level(thickness)
	if l.FromSpoilboard {
		return low
	}
	return -low
}

// Deepest is how far the bit then goes below the face of the thickest board of a stock, in mm.
func (l Layer) Deepest(thickness, most float64) float64 {
	set := l.Set(thickness)
	if l.FromSpoilboard {
		return most - set
	}
	return set
}

// Name fills the pattern in. A name that several bits of the job would share has that
// of the bit after it.
func (o Options) Name(bits []mill.Bit, stock string, l Layer) string {
	name := o.fill(bits, stock, l)
	if o.Shared[name] && l.Bit >= 0 {
		name += "_" + o.word(bits[l.Bit].Name)
	}
	return name
}

// layerOf is that of one cut, without its name.
func (p Part) layerOf(c mill.Cut) Layer {
	l := Layer{Operation: c.Operation, Face: c.Face, Depth: c.Depth, Remaining: c.Remaining, Below: c.Below, Overcut: c.Overcut, FromSpoilboard: p.FromSpoilboard, Floor: p.FromSpoilboard && c.Remaining > 0, Line: len(c.Path) > 0, Bit: c.Bit}
	if _, r, round := c.Outline.AsCircle(); round && (c.Operation == geom.Drill.String() || c.Operation == mill.Registering) {
		l.Diameter = 2 * r
	}
	return l
}

func (o Options) fill(bits []mill.Bit, stock string, l Layer) string {
	pattern := o.Pattern
	if pattern == "" {
		pattern = DefaultPattern
	}
	operation, bit, tool := l.Operation, "", ""
	if l.saysLine() && !strings.Contains(pattern, "{depth}") { // an open path always says so
		operation += "-LINE"
	}
	if l.Bit >= 0 {
		bit, tool = o.word(bits[l.Bit].Name), layer.Word(bits[l.Bit].ToolName())
		if bits[l.Bit].Tool == 0 { // it has its name there
			tool = bit
		}
	}
	if !strings.Contains(pattern, "{diameter}") {
		l.Diameter = 0
	}
	diameter := ""
	if l.Diameter > 0 {
		diameter = "D" + layer.Number(l.Diameter, o.Unit)
	} else { // of what is no hole it says nothing
		pattern = aroundNoDiameter.Replace(pattern)
	}
	for _, t := range [...][2]string{ // no text has braces, so that none is taken for a token
		{"{diameter}", diameter}, {"{operation}", layer.Word(operation)}, {"{face}", layer.Word(l.Face.String())},
		{"{depth}", depthText(l, o.Unit)}, {"{cutter}", bit}, {"{tool}", tool}, {"{stock}", layer.Word(stock)},
	} {
		pattern = strings.ReplaceAll(pattern, t[0], t[1])
	}
	return pattern
}

// aroundNoDiameter takes the token of a diameter away, with what parts it from the next.
var aroundNoDiameter = strings.NewReplacer("_{diameter}", "", "{diameter}_", "")

// saysLine reports whether the name says that paths are open: strokes of numbers always are.
func (l Layer) saysLine() bool { return l.Line && l.Operation != mill.EngravingOperation }

// depthText is THROUGH, or the depth in the drawing's unit, rounded to 0.01 mm or
// 0.0001 in; FLOOR before it when it is the wood left, LINE when it is the bit's center
// that is drawn. What goes on into the spoilboard tells all of its depth, or, where
// depths are measured from the spoilboard, how far BELOW its top it ends.
func depthText(l Layer, u geom.Unit) string {
	text := ""
	if l.saysLine() {
		text = "LINE_"
	}
	depth := l.Depth
	switch {
	case l.Below > 0 && l.FromSpoilboard:
		return text + "BELOW_" + layer.Number(l.Below, u)
	case l.Below > 0:
		return text + layer.Number(depth+l.Below, u)
	case l.Through():
		return text + "THROUGH"
	}
	if l.Floor {
		text, depth = text+"FLOOR_", l.Remaining
	}
	return text + layer.Number(depth, u)
}

// rank is an operation's place in the order of cutting: those that the options
// name first, then the others as usual.
func (o Options) rank(operation string) int {
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
