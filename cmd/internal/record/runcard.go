package record

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/cmd/internal/job"
	"drawerwright/cmd/internal/sheets"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// Run is the card of a sheet for those who run the router.
type Run struct {
	// Zero says where the machine's zero is, on all faces.
	Zero string `json:"zero"`
	// IntoSpoilboard is how far what goes through goes on below the thickest board.
	IntoSpoilboard Length    `json:"into_spoilboard"`
	KeepOut        []Box     `json:"keep_out,omitempty"` // areas that nothing is cut in, from zero, on all faces
	Faces          []RunFace `json:"faces"`              // in the order in which they are cut
	// Minutes are estimated from the feeds of the bits; 0 where one of them was not said.
	Minutes float64 `json:"minutes,omitempty"`
}

// RunFace is what is done with one face of a sheet up.
type RunFace struct {
	File        string    `json:"file"`
	Face        string    `json:"face"`
	Preparation []string  `json:"preparation"`    // what to do first, in order
	Pins        []Pin     `json:"pins,omitempty"` // that are drilled with this face up
	Steps       []RunStep `json:"steps"`
}

// Pin is a registration hole: its middle as the sheet lies on the machine, from zero.
type Pin struct {
	X        Length `json:"x"`
	Y        Length `json:"y"`
	Diameter Length `json:"diameter"`
}

// RunStep is a layer as it is cut.
type RunStep struct {
	File      string `json:"bit_file,omitempty"` // that has it, where there is one for each change of bit
	Layer     string `json:"layer"`
	Operation string `json:"operation"`
	Bit       string `json:"bit"`
	BitChange bool   `json:"bit_change"`     // another bit than in the step before
	Tool      int    `json:"tool,omitempty"` // its number in the machine
	Diameter  Length `json:"diameter"`
	ToSet
	// Depth is how far the bit goes below the face of the thickest board, the spoilboard
	// with it.
	Depth   Length `json:"depth"`
	Through bool   `json:"through"`
	// Passes are how many the bit takes when it goes PassDepth deep in one; neither where the job
	// says no pass depth.
	Passes    int    `json:"passes,omitempty"`
	PassDepth Length `json:"pass_depth,omitempty"`
	// StartDepth is how deep the outlines before have opened all of it: passes and time are counted
	// from there.
	StartDepth Length  `json:"start_depth,omitempty"`
	Speed      float64 `json:"speed,omitempty"`     // turns a minute
	Feed       Length  `json:"feed,omitempty"`      // a minute; none where the bit only plunges
	Plunge     Length  `json:"plunge,omitempty"`    // a minute
	ChipLoad   Length  `json:"chip_load,omitempty"` // for each edge
	Cuts       int     `json:"cuts"`
	Minutes    float64 `json:"minutes,omitempty"`
}

// runOf is the card of a sheet that is laid out; nil where no router cuts it.
func runOf(s *sheets.Stock, one sheets.Sheet, drawings []sheets.Drawing, u geom.Unit) *Run {
	if len(drawings) == 0 || len(drawings[0].Part.Bits) == 0 {
		return nil
	}
	out := &Run{Zero: "the lower left corner of the sheet as it lies, at the top of the board",
		IntoSpoilboard: Length(s.Router.IntoSpoilboard)}
	if s.Router.FromSpoilboard {
		out.Zero = "the lower left corner of the sheet as it lies, at the top of the spoilboard; what is set are " +
			"heights over it, negative ones end in it"
	}
	for _, k := range s.KeepOut {
		out.KeepOut = append(out.KeepOut, BoxOf(k))
	}
	known, bit := true, -1
	for i, d := range drawings {
		drawn := drawnBoard{d.Part.Bits, d.DXF, s.Stock.Thickness.Mean}
		face := RunFace{File: d.File, Face: d.Face.String(), Preparation: before(s, one, drawings, i, u)}
		for _, pin := range d.Part.Work.Pins {
			if c, r, round := pin.AsCircle(); round && i == 0 {
				if d.Face == geom.Outside { // its drawing is turned over
					c.X = d.Part.Panel.Length() - c.X
				}
				face.Pins = append(face.Pins, Pin{Length(c.X), Length(c.Y), Length(2 * r)})
			}
		}
		files := drawn.legends(d.File, d.Layers)
		for k, l := range d.Layers {
			if l.Bit < 0 {
				continue
			}
			b := d.Part.Bits[l.Bit]
			deep := l.Deepest(s.Stock.Thickness.Mean, s.Stock.Thickness.Max)
			from := begins(s, d, l)
			step := RunStep{File: files[k].BitFile, Layer: l.Name, Operation: l.Operation, Bit: b.Name, Tool: b.Tool,
				BitChange: l.Bit != bit,
				Diameter:  Length(b.Diameter), ToSet: toSet(l, s.Stock.Thickness.Mean), Depth: Length(deep), Through: l.Through(),
				StartDepth: Length(from), PassDepth: Length(b.PassDepth), Speed: b.Speed, Plunge: Length(b.Plunge),
				Cuts: len(l.Cuts)}
			if slices.ContainsFunc(l.Cuts, func(c mill.Cut) bool { return !c.PlungeArea(b) }) {
				step.Feed, step.ChipLoad = Length(b.Feed), Length(b.ChipLoad())
			}
			if b.PassDepth > 0 {
				step.Passes = b.Passes(deep - from)
			}
			bit = l.Bit
			for _, c := range l.Cuts {
				step.Minutes += c.Minutes(b, deep-from)
			}
			known = known && b.Feed > 0
			step.Minutes = minutes(step.Minutes)
			out.Minutes += step.Minutes
			face.Steps = append(face.Steps, step)
		}
		out.Faces = append(out.Faces, face)
	}
	if out.Minutes = minutes(out.Minutes); !known {
		out.Minutes = 0
	}
	return out
}

// begins is how deep the outlines of a sheet have opened all of a layer of slots, in mm; 0
// of other layers.
func begins(s *sheets.Stock, d sheets.Drawing, l router.Layer) float64 {
	if l.Operation != mill.Slotting {
		return 0
	}
	var outlines []mill.Floor
	for _, o := range d.Layers {
		if o.Operation == mill.Profile {
			deep := o.Deepest(s.Stock.Thickness.Mean, s.Stock.Thickness.Max)
			outlines = append(outlines, mill.Floor{Depth: deep, Outlines: o.Cuts})
		}
	}
	return mill.BeginAt(l.Cuts, outlines, d.Part.Bits)
}

// minutes rounds an estimate to a tenth of a minute.
func minutes(m float64) float64 { return math.Round(10*m) / 10 }

// before says what to do before a face of a sheet is cut.
func before(s *sheets.Stock, one sheets.Sheet, drawings []sheets.Drawing, face int, u geom.Unit) []string {
	up := func(f geom.Face) string { return fmt.Sprintf("the %s face of its parts up", f) }
	d := drawings[face]
	on, _ := s.FlipRegistration()
	stops := on == job.FlipOnStops
	if face == 0 {
		said := []string{"Lay the sheet down with " + up(d.Face) + ", its lower left corner at zero, and hold it down clear of the cuts."}
		if d.Face == geom.Outside {
			label := "Parts are labeled by the names in this drawing"
			if len(drawings) > 1 {
				label += ", or by the picture once the sheet is turned over"
			}
			said = append(said,
				"The picture of the sheet shows inside faces up: the left of the picture is at the right "+
					"now. "+label+".")
		}
		switch {
		case len(drawings) < 2:
		case stops:
			said = append(said, "Set two stops along its lower edge and one at its left end. Do not move zero until "+
				"the sheet is done.")
		default:
			said = append(said, "Cut the registration holes first, right through and into the spoilboard; they stay "+
				"the machine's place for the sheet. Do not move zero until the sheet is done.")
		}
		return said
	}
	turn := "Stop the spindle, clear the chips, put pins into the holes in the spoilboard, and turn the sheet over " +
		"end for end, left and right changing places, onto the pins: " + up(d.Face) + "."
	if stops {
		length := geom.Length(s.Sheets[one.Sheet].Length).Text(u)
		turn = "Stop the spindle, clear the chips, take the stop at the left end away, set one at the right end, " +
			length + " from zero, and turn the sheet over end for end, left and right changing places, against " +
			"it and the stops along its lower edge: " + up(d.Face) + "."
	}
	return []string{turn, "Keep the zero after turning: both drawings are from the same corner of the table, beside which the sheet's own corner may now lie."}
}
