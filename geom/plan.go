package geom

import (
	"errors"
	"fmt"
	"math"

	"drawerwright/geom/internal/planar"
)

// Plan is a panel seen from above, cut into regions in which the depth is the
// same everywhere. Points lie on a square grid, so that whatever is built on a
// Plan fits together exactly. Rules and solids are made from it.
type Plan struct {
	Grid      float64 // mm from one grid point to the next
	Regions   []Region
	Points    []GridPoint    // in the order of x, then y
	Edges     []PlanEdge     // between regions
	Triangles []PlanTriangle // of every region, also of those beyond the panel

	covers *planar.Subdivision // which loops cover a region
}

// What a Plan is made of; numbers of points and regions are indices.
type (
	// GridPoint is a point of the grid; [Plan.Place] gives it in millimeters.
	GridPoint = planar.Point
	// PlanEdge runs from the lesser point to the greater, with the region to its
	// left Above it and that to its right Below.
	PlanEdge = planar.Edge
	// PlanTriangle has its corners counter-clockwise and is never flat.
	PlanTriangle = planar.Triangle
)

// Region is a part of a Plan, not always connected. Its pockets are the deepest
// from either face, as indices into Panel.Pockets, or -1.
type Region struct {
	OnPanel                     bool // inside the outline and outside every hole
	InsideDepth, OutsideDepth   float64
	InsidePocket, OutsidePocket int
	// floor are the rows of the grid between which the floor of the OutsidePocket leans, from where it is
	// as nothing to where it is as deep as OutsideDepth; the same of a level one.
	floor                         [2]int32
	throughPocket, outsideOutline bool
}

// rows are the rows of the grid between which a pocket's floor leans, or those that are there already.
func (plan *Plan) rows(k Pocket, rows [2]int32) [2]int32 {
	b := k.Outline.Bounds()
	low, high := int32(math.Round(b.Min.Y/plan.Grid)), int32(math.Round(b.Max.Y/plan.Grid))
	switch {
	case k.Lean > 0:
		return [2]int32{low, high}
	case k.Lean < 0:
		return [2]int32{high, low}
	}
	return rows
}

// Leans reports whether the region's lower side leans.
func (r Region) Leans() bool { return r.floor[0] != r.floor[1] }

// OutsideDepthAt is how deep the region is cut from the outside face at a point.
func (r Region) OutsideDepthAt(p GridPoint) float64 {
	if !r.Leans() {
		return r.OutsideDepth
	}
	return r.OutsideDepth * (float64(p.Y-r.floor[0]) / float64(r.floor[1]-r.floor[0]))
}

// Web is what is left between the depths from both faces: 0 or less where the
// panel is cut through or is not there.
func (r Region) Web(thickness float64) float64 {
	if !r.OnPanel {
		return 0
	}
	return thickness - r.InsideDepth - r.OutsideDepth
}

// MaxExtent is the largest coordinate that a Plan takes, in millimeters: beyond
// it float32 no longer resolves 1/4096 mm. It is also longer than any sheet.
const MaxExtent = 4096.0

// CoarseGrid is the grid on which every panel up to [MaxExtent] can be written
// in float32 without rounding, in millimeters.
const CoarseGrid = 1.0 / 4096

// float32Bits is the length of a float32's significand.
const float32Bits = 24

// FineGrid is the finest power of two on which all coordinates up to extent, in
// millimeters, are exact in float32.
func FineGrid(extent float64) float64 {
	_, exponent := math.Frexp(extent)
	return math.Ldexp(1, exponent-float32Bits)
}

// ErrExtent is wrapped by errors about coordinates that are not numbers or lie
// beyond [MaxExtent].
var ErrExtent = errors.New("coordinate out of range")

// NewPlan lays a panel out on a grid. Arcs become chords that keep within the
// chord tolerance ([Loop.Flatten]); both in millimeters and above 0. Errors wrap
// [ErrExtent].
func NewPlan(p Panel, chord, grid float64) (*Plan, error) {
	rings := make([][]planar.Point, 0, 1+len(p.Holes)+len(p.Pockets))
	var failed error
	add := func(l Loop) {
		ring, err := gridRing(l, chord, grid)
		if err != nil && failed == nil {
			failed = err
		}
		rings = append(rings, ring)
	}
	add(p.Outline)
	for _, h := range p.Holes {
		add(h)
	}
	for _, k := range p.Pockets {
		add(k.Outline)
	}
	if failed != nil {
		return nil, failed
	}
	s := planar.Arrange(rings)
	plan := &Plan{Grid: grid, Points: s.Points, Edges: s.Edges, Triangles: s.Triangles, covers: s}
	plan.Regions = make([]Region, s.Regions())
	for i := range plan.Regions {
		plan.Regions[i] = plan.region(p, int32(i))
	}
	return plan, nil
}

func (plan *Plan) region(p Panel, id int32) Region {
	r := Region{InsidePocket: -1, OutsidePocket: -1, outsideOutline: true}
	hole := false
	plan.covers.EachCover(id, func(ring int) {
		switch k := ring - 1 - len(p.Holes); {
		case ring == 0:
			r.outsideOutline = false
		case k < 0:
			hole = true
		case p.Pockets[k].Through(p.Thickness):
			r.throughPocket = true
			fallthrough
		default:
			depth, pocket := &r.InsideDepth, &r.InsidePocket
			if p.Pockets[k].Face == Outside {
				depth, pocket = &r.OutsideDepth, &r.OutsidePocket
			}
			if p.Pockets[k].Depth > *depth {
				*depth, *pocket = p.Pockets[k].Depth, k
				r.floor = plan.rows(p.Pockets[k], r.floor)
			}
		}
	})
	r.OnPanel = !r.outsideOutline && !hole
	return r
}

// Place gives a grid point in millimeters.
func (plan *Plan) Place(p GridPoint) Point {
	return Point{float64(p.X) * plan.Grid, float64(p.Y) * plan.Grid}
}

func gridRing(l Loop, chord, grid float64) ([]planar.Point, error) {
	for i, v := range l {
		for _, c := range [...]float64{v.X, v.Y, v.Bulge} {
			if math.IsNaN(c) || math.Abs(c) > MaxExtent {
				return nil, fmt.Errorf("%w: vertex %d at %g, %g, bulge %g; the limit is %g mm",
					ErrExtent, i, v.X, v.Y, v.Bulge, MaxExtent)
			}
		}
	}
	flat := l.Flatten(chord)
	ring := make([]planar.Point, len(flat))
	for i, p := range flat {
		x, y := math.Round(p.X/grid), math.Round(p.Y/grid)
		if !(math.Abs(p.X) <= MaxExtent && math.Abs(p.Y) <= MaxExtent && math.Abs(x) < planar.Limit && math.Abs(y) < planar.Limit) {
			return nil, fmt.Errorf("%w: a side reaches %g, %g; the limit is %g mm and %d steps of the grid", ErrExtent, p.X, p.Y, MaxExtent, planar.Limit)
		}
		ring[i] = planar.Point{X: int32(x), Y: int32(y)}
	}
	return ring, nil
}
