package prove

import (
	"fmt"
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// panel is a part as its drawings have it cut.
type panel struct {
	part      record.Part
	whole     bool // it has an outline and could be read
	thickness float64
	outline   proof.Shape
	left      geom.Loop // the same, its arcs as they are
	cuts      []boardCut
	stands    []geom.Placement
	lip       record.Lip // of a front
	turned    bool
	under     float64 // mm of wood that the cut of the outline leaves; 0 where it goes through
}

// boardCut is a region that a bit reached.
type boardCut struct {
	shape proof.Shape
	face  geom.Face
	depth float64 // mm from the face at the mean thickness
	// kept says that it is the wood under the cut that stays the same in every
	// board, not the depth.
	kept, through bool
	lean          int // which way its floor goes down along y, as of [geom.Pocket]

	file, layer string
	at          int // line of the file
	operation   string
	line        proof.Shape // as drawn
	left        float64     // mm2 of it within the panel that the bit does not reach
}

// board is the panel in a board of a thickness, with the errors of the options.
func (p panel) board(thickness float64, o Options) proof.Board {
	b := proof.Board{Outline: p.outline, Thickness: thickness, Cuts: make([]proof.Cut, 0, len(p.cuts))}
	for _, c := range p.cuts {
		if c.operation == engraving { // clear of all joints, or a fault
			continue
		}
		depth := c.deep(thickness, p.thickness, o)
		if depth <= 0 {
			continue
		}
		shape := c.shape
		if c.face == geom.Outside && p.turned && (o.FlipAlong != 0 || o.FlipAcross != 0) {
			shape = shape.Moved(o.FlipAlong, o.FlipAcross)
		}
		b.Cuts = append(b.Cuts, proof.Cut{Face: c.face, Depth: depth, Shape: shape, Lean: c.lean})
	}
	return b
}

// deep is the depth of a cut in a board of a thickness, where another was meant.
func (c boardCut) deep(thickness, meant float64, o Options) float64 {
	switch {
	case c.lean != 0:
		return thickness
	case c.through:
		return thickness + 1
	case c.kept:
		return c.depth + o.Depth + thickness - meant
	}
	return c.depth + o.Depth
}

// panelReader reads the drawings of one part.
type panelReader struct {
	*Prover
	part   record.Part
	saw    bool
	read   Read
	detail bool

	out      panel
	length   float64 // mm, as drawn
	width    float64
	region   region  // as drawn
	asked    region  // as the job has it, without relief
	widest   float64 // bit that cuts the outline
	drawn    []drawnCut
	register map[geom.Face][]hole
	faults   []record.Fault
	cuts     []record.Cut
	outlines int
	lines    int // corners of what is drawn
	corners  int // and of what the bits reach
	many     int // lines that are too many; 0 for those of a part
}

// most is how many lines and corners are read.
func (r *panelReader) most() int {
	if r.many > 0 {
		return r.many
	}
	return maxCorners
}

// hole is one to register by, in panel coordinates.
type hole struct {
	at     geom.Point
	radius float64
	line   int // of the file, where it matters
}

// drawnCut is a closed line of a drawing in panel coordinates, with what its
// layer says.
type drawnCut struct {
	boardCut
	row    int     // in the legend of its file; -1 where it is not listed
	bit    float64 // diameter, 0 for a saw
	loop   geom.Loop
	path   []geom.Vertex // an open line for the bit's center
	reach  []geom.Loop
	swept  float64 // mm2 reached, and of it within the panel
	within float64
	beyond float64
	inside geom.Rect // of what lies within the panel
}

// place is where a fault is: the line of a file, 0 for all of it, and the part that suffers
// from it.
type place struct {
	part, file string
	line       int
}

// place is one in a drawing of the part itself.
func (r *panelReader) place(file string, line int) place { return place{r.part.Name, file, line} }

func (r *panelReader) fault(code string, at place, hint, format string, args ...any) {
	r.faults = withFault(r.faults, code, at, hint, fmt.Sprintf(format, args...))
}

// withFault adds a fault to a list, until there are more than anybody reads.
func withFault(list []record.Fault, code string, at place, hint, message string) []record.Fault {
	if len(list) >= maxFaults {
		return list
	}
	return append(list,
		record.Fault{Code: code, Part: at.part, File: at.file, Line: at.line, Message: message, Hint: hint})
}

// tooMany gives a part up that nobody drew.
func (r *panelReader) tooMany(file string, line int) {
	r.out.whole = false
	r.fault("too-many", r.place(file, line), "export it again, or build the job into a new folder",
		"%s has more lines or corners than are proved", r.part.Name)
}

// panel reads all drawings of the part and judges them; r.out is what came of it.
func (r *panelReader) panel() {
	r.out = panel{part: r.part, thickness: r.part.Thickness.MM()}
	r.register = make(map[geom.Face][]hole)
	for _, name := range []string{r.part.Files.Inside, r.part.Files.Outside} {
		for _, l := range r.legend(name) {
			if l.Operation == "profile" {
				r.widest = math.Max(r.widest, l.Diameter.MM())
			}
		}
	}
	for _, s := range r.part.Placements {
		r.out.stands = append(r.out.stands, placement(s))
	}
	files := 0
	for _, f := range []struct {
		face geom.Face
		name string
	}{{geom.Inside, r.part.Files.Inside}, {geom.Outside, r.part.Files.Outside}} {
		if f.name == "" {
			continue
		}
		files++
		data, err := r.read(f.name)
		if err != nil {
			r.fault("missing-file", r.place(f.name, 0), rebuild,
				"the drawing of the %s face cannot be read: %v", f.face, err)
			continue
		}
		drawing, err := dxfread.Parse(data)
		if err != nil {
			line, why := broken(err)
			r.fault("unreadable", r.place(f.name, line), "export it again", noDXF, why)
			continue
		}
		if r.drawing(f.name, f.face, drawing); r.lines > maxCorners {
			return
		}
	}
	r.out.turned = files == 2 && !r.saw // a saw's fence knows no turning over
	if r.outlines == 0 && len(r.faults) == 0 {
		r.fault("no-outline", r.place(r.part.Name, 0), rebuild,
			"no drawing of %s has its outline on a layer that is cut", r.part.Name)
	}
	if !r.out.whole {
		return
	}
	for i := range r.drawn {
		if r.reach(&r.drawn[i]); r.corners > maxCorners || len(r.out.cuts) > maxCuts {
			r.tooMany(r.drawn[i].file, r.drawn[i].at)
			return
		}
	}
	r.doubled()
	r.compare()
	r.tabs()
	r.engraved()
	r.registered(files)
}
