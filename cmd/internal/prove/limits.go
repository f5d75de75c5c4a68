package prove

import (
	"fmt"
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/export/dxf/dxfread"
	"drawerwright/geom"
)

// Limits of what is proved. What is beyond them was not written by build, and
// would take any time and memory.
const (
	maxPieces  = 64      // of a box
	maxLegend  = 256     // lines of the legend for one drawing; operations of one part
	maxOutline = 4_000   // corners of an outline; fingers along the highest wall have 2,000
	maxCorners = 1 << 13 // of all lines of one part, as drawn and as reached, arcs by their chords
	maxCuts    = 256     // that the bits reach within one part
	maxFaults  = 100     // told of one part

	farthest = 4 * geom.MaxExtent // mm: of a place, size or diameter
	thickest = 200.0              // mm: of a board, as a job file has it twice
)

// chords is about how many an entity has when its arcs are flattened as in
// proof.ShapeOf, and one for each straight side.
func (s *sheet) chords(e dxfread.Entity) int {
	// Chords within t of an arc of r span 2 sqrt(2 t / r) each.
	const t, most = 0.01, 4096.0
	arc := func(angle, r float64) int {
		if n := 1 + float64(math.Abs(angle)/2*math.Sqrt(r*s.scale/2/t)); n < most {
			return int(n)
		}
		return int(most)
	}
	if e.Type == "CIRCLE" {
		return arc(2*math.Pi, math.Abs(e.Radius))
	}
	n := 1
	for i, v := range e.Vertices {
		if v.Bulge == 0 {
			n++
			continue
		}
		w := e.Vertices[(i+1)%len(e.Vertices)]
		side := geom.Arc{A: geom.Point{X: v.X, Y: v.Y}, B: geom.Point{X: w.X, Y: w.Y}, Bulge: v.Bulge}
		n += arc(side.Sweep(), side.Radius())
	}
	return n
}

// longestNumber is the most figures of a part's number.
const longestNumber = 16

// check reports what is beyond the limits.
func (p *Prover) check() error {
	for _, s := range p.report.Stocks {
		if !isThickness(s.Thickness) || !isThickness(s.Min) || !isThickness(s.Max) {
			return wrong("the stock %q has no thickness", s.Name)
		}
	}
	for _, part := range p.report.Parts.All() {
		if err := p.checkPart(part); err != nil {
			return err
		}
		if err := p.checkOperations(part); err != nil {
			return err
		}
	}
	lines := make(map[string]int) // of each file
	for l := range p.report.Legend() {
		lines[l.File]++
	}
	for _, l := range p.report.Layers.All() {
		if err := checkLayer(l, lines[l.File]); err != nil {
			return err
		}
	}
	if !limited(farthest, p.report.Router.PartSpacing) {
		return wrong("a part-spacing of %g", p.report.Router.PartSpacing.In(p.unit))
	}
	if len(p.report.Drawers) == 0 {
		return wrong("no drawers")
	}
	for _, d := range p.report.Drawers {
		if err := p.checkPieces(d); err != nil {
			return err
		}
	}
	return p.checkLists()
}

// checkLists looks at lists that name what stands elsewhere in the report by its place.
func (p *Prover) checkLists() error {
	for _, k := range p.report.Sheets {
		for _, s := range k.Sheets {
			if s.Size < 0 || s.Size >= len(k.Sizes) {
				return wrong("a sheet of %q has the size %d of %d", k.Stock, s.Size, len(k.Sizes))
			}
		}
	}
	for _, g := range p.report.CutList {
		if len(g.Parts) == 0 {
			return wrong("number %d of the cut list is of no part", g.Number)
		}
	}
	return nil
}

func wrong(format string, args ...any) error {
	return fmt.Errorf("%w: "+format, append([]any{ErrReport}, args...)...)
}

// limited reports whether lengths are no more than a limit in millimeters.
func limited(limit float64, values ...record.Length) bool {
	for _, v := range values {
		if !(math.Abs(v.MM()) <= limit) {
			return false
		}
	}
	return true
}

func isThickness(v record.Length) bool { return v > 0 && limited(thickest, v) }

// checkPart looks at the size of a part, and where it stands.
func (p *Prover) checkPart(part record.Part) error {
	if !isThickness(part.Thickness) || !(part.Length > 0) || !(part.Width > 0) ||
		!limited(farthest, part.Length, part.Width) {
		return wrong("the part %q has no size", part.Name)
	}
	for _, s := range part.Placements {
		if !upright(s) || !limited(farthest, s.Origin[:]...) {
			return wrong("the part %q stands askew or far away", part.Name)
		}
	}
	for _, v := range part.Outline {
		if len(part.Outline) > maxOutline || !limited(farthest, v.X, v.Y, record.Length(v.Bulge)) {
			return wrong("the part %q has an outline far away", part.Name)
		}
	}
	return nil
}

// checkOperations looks at what is cut into a part.
func (p *Prover) checkOperations(part record.Part) error {
	if len(part.Operations) > maxLegend {
		return wrong("the part %q has %d operations", part.Name, len(part.Operations))
	}
	if e := part.Engraved; e != nil &&
		(len(e.Number) > longestNumber || !limited(farthest, e.X, e.Y, e.Height, e.Depth)) {
		return wrong("the part %q has a number that is none", part.Name)
	}
	for _, o := range part.Operations {
		if !limited(farthest, o.Depth) {
			return wrong("the part %q has a %s %g deep", part.Name, o.Kind, o.Depth.In(p.unit))
		}
		for _, v := range o.Outline {
			if !limited(farthest, v.X, v.Y, record.Length(v.Bulge)) {
				return wrong("the part %q has a %s far away", part.Name, o.Kind)
			}
		}
	}
	return nil
}

// checkLayer looks at a line of the legend, of as many as its drawing has.
func checkLayer(l record.Layer, lines int) error {
	if lines > maxLegend {
		return wrong("the legend of %q has %d lines", l.File, lines)
	}
	heights := []record.Length{0}
	for _, z := range []*record.Length{l.Elevation, l.Thickness} {
		if z != nil {
			heights = append(heights, *z)
		}
	}
	if !limited(farthest, l.Depth, l.Remaining, l.Diameter) || !limited(farthest, heights...) || l.Diameter < 0 {
		return wrong("the layer %q of %q has a depth or bit that is none", l.Layer, l.File)
	}
	return nil
}

// checkPieces counts those of a drawer, which are all listed.
func (p *Prover) checkPieces(d record.Drawer) error {
	pieces := 0
	for _, name := range d.Parts {
		i, known := p.parts[name]
		if !known {
			return wrong("the drawer %q has a part %q that is not listed", d.Name, name)
		}
		if pieces += 1 + len(p.report.Parts.At(i).Placements); pieces > 2*maxPieces {
			return wrong("the drawer %q has more than %d pieces", d.Name, maxPieces)
		}
	}
	return nil
}
