package prove

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// sameEdge is what the edge of a region may be off by, in millimeters, on a sheet
// against the part's own drawing: two roundings of six decimals, and two chords.
const sameEdge = sameSize + 2*ringChord

// judge says what a sheet's drawings make of its parts.
func (r *sheetReader) judge(out *record.OnSheet) {
	r.doubled()
	r.pinned()
	r.runCard()
	r.inBounds()
	r.keptOut()
	r.lay()
	for i := range r.parts {
		p := &r.parts[i]
		for _, face := range []geom.Face{geom.Outside, geom.Inside} {
			r.inPlace(p, face)
		}
		r.marksOf(p)
	}
	r.strayMarks()
	if !r.saw {
		r.held(out)
	}
	r.strayTabs()
}

// lay takes the parts' own drawings, which are read once more, to where the parts lie.
func (r *sheetReader) lay() {
	own := make(map[string]panel)
	for _, q := range r.laid.Placements {
		found, read := own[q.Part]
		if !read {
			if _, known := r.drawer[q.Part]; !known {
				continue
			}
			found = r.worker.reader(r.report.Parts.At(r.worker.parts[q.Part]), r.read, false).out
			own[q.Part] = found
		}
		p := placedPart{SheetPlacement: q, panel: found}
		if !p.whole { // said before
			continue
		}
		p.outline = rings{}.with(p.panel.outline.Ring())
		r.parts = append(r.parts, p)
	}
}

// boxOf is the box of a part as it lies, in mm.
func (r *sheetReader) boxOf(p *placedPart) geom.Rect {
	at := geom.Point{X: p.X.MM(), Y: p.Y.MM()}
	return geom.Rect{Min: at, Max: geom.Point{X: at.X + p.Length.MM(), Y: at.Y + p.Width.MM()}}
}

// toPart gives where in a part's coordinates a place on the sheet is.
func (r *sheetReader) toPart(p *placedPart) func(geom.Point) geom.Point {
	b := r.boxOf(p)
	if p.Rotated { // a quarter to the left: what was up looks to the left
		return func(q geom.Point) geom.Point { return geom.Point{X: q.Y - b.Min.Y, Y: b.Max.X - q.X} }
	}
	return func(q geom.Point) geom.Point { return geom.Point{X: q.X - b.Min.X, Y: q.Y - b.Min.Y} }
}

// toSheet is toPart the other way.
func (r *sheetReader) toSheet(p *placedPart) func(geom.Point) geom.Point {
	b := r.boxOf(p)
	if p.Rotated {
		return func(q geom.Point) geom.Point { return geom.Point{X: b.Max.X - q.Y, Y: b.Min.Y + q.X} }
	}
	return func(q geom.Point) geom.Point { return geom.Point{X: b.Min.X + q.X, Y: b.Min.Y + q.Y} }
}

// inPlace compares what one face of the sheet has cut of a part with what the part's own
// drawings have cut there: in level lines between all places at which anything begins or
// ends.
func (r *sheetReader) inPlace(p *placedPart, face geom.Face) {
	var own, here []layer
	for i, c := range p.cuts {
		if c.face == face {
			own = append(own, layer{rings{}.with(c.shape.Ring()), c.deepest(p.thickness), i})
		}
	}
	lies, box := r.toPart(p), r.boxOf(p)
	for i, c := range r.cuts {
		if c.face == face && !c.region.box.Apart(box) {
			here = append(here, layer{c.region.mapped(lies), c.depth, i})
		}
	}
	found := differing{r: r, p: p, more: make(map[int]patch), less: make(map[int]patch)}
	var heights []float64
	for _, list := range [][]layer{{{rings: p.outline}}, own, here} {
		for _, l := range list {
			for _, ring := range l.list {
				for _, v := range ring {
					heights = append(heights, math.Max(p.outline.box.Min.Y, math.Min(p.outline.box.Max.Y, v.Y)))
				}
			}
		}
	}
	slices.Sort(heights)
	from := p.outline.box.Min.Y
	for _, y := range heights {
		if y-from > sameEdge/4 {
			found.line((from+y)/2, y-from, own, here)
			from = y
		}
	}
	found.tell(face)
}

// deepest is how deep a cut is in a board as it was meant.
func (c boardCut) deepest(thickness float64) float64 {
	if c.through {
		return thickness + 1
	}
	return c.depth
}

// patch is an area, with a place in it and the depths there.
type patch struct {
	area      float64
	at        geom.Point
	is, wants float64
	of        int // the other's cut, -1 for none
}

// differing gathers where a part is cut otherwise than it should be, by the cut that is to
// blame: one of the sheet that takes more, or one of the part's own that is not made.
type differing struct {
	r          *sheetReader
	p          *placedPart
	more, less map[int]patch
}

// line compares on a level line that stands for so much of the height.
func (d *differing) line(y, thick float64, own, here []layer) {
	across := func(list []float64, r rings) []float64 { return r.spans(list, y) }
	inside := d.p.outline.spans(nil, y)
	for k := 0; k+1 < len(inside); k += 2 {
		a, b := deepest(own, across, inside[k], inside[k+1]), deepest(here, across, inside[k], inside[k+1])
		for _, s := range b {
			if s.which >= 0 && s.to-s.from > sameEdge && thick > sameEdge && !slices.Contains(d.p.touched, s.which) {
				d.p.touched = append(d.p.touched, s.which)
			}
		}
		for i, j := 0, 0; i < len(a) && j < len(b); {
			from, to := math.Max(a[i].from, b[j].from), math.Min(a[i].to, b[j].to)
			if to-from > sameEdge && math.Abs(a[i].depth-b[j].depth) > 2*tick+sameDepth {
				d.note(a[i], b[j], float64((to-from)*thick), geom.Point{X: (from + to) / 2, Y: y})
			}
			if a[i].to < b[j].to {
				i++
			} else {
				j++
			}
		}
	}
}

func (d *differing) note(own, here stretch, area float64, at geom.Point) {
	list, which, of := d.less, own.which, here.which
	if here.depth > own.depth {
		list, which, of = d.more, here.which, own.which
	}
	q := list[which]
	if q.area == 0 {
		q = patch{at: at, is: here.depth, wants: own.depth, of: of}
	}
	q.area += area
	list[which] = q
}

// tell names the cuts.
func (d *differing) tell(face geom.Face) {
	r, p := d.r, d.p
	for _, which := range sorted(d.more) {
		q := d.more[which]
		if q.area < proof.MinCut {
			continue
		}
		c := r.cuts[which]
		r.fault("cuts-part", p.cutBy(c), rebuild,
			"the %s on %s cuts %s of %s on its %s face, near x %s, y %s of it, %s deep; its own drawing has %s there",
			c.operation, c.layer, r.area(q.area), p.Part, face, r.text(q.at.X), r.text(q.at.Y), r.text(r.real(q.is)),
			r.depth(q.wants))
	}
	for _, which := range sorted(d.less) {
		q := d.less[which]
		if q.area < proof.MinCut {
			continue
		}
		own := p.cuts[which]
		at := place{p.Part, cmp.Or(r.files[face], r.part.Name), 0}
		if near := r.meant(p, own, face); near >= 0 {
			at = p.cutBy(r.cuts[near])
		} else if q.of >= 0 {
			at = p.cutBy(r.cuts[q.of])
		}
		r.fault("not-cut", at, rebuild,
			"%s of the %s of %s (line %d of %s) on its %s face, near x %s, y %s of it, comes out %s; its own drawing "+
				"has %s",
			r.area(q.area), own.operation, p.Part, own.at, own.file, face, r.text(q.at.X), r.text(q.at.Y),
			r.depth(q.is), r.depth(q.wants))
	}
}

// meant is the cut of the sheet that is most likely meant for one of a part's own: of the
// same kind, of those that lie on its place the one most like it; -1 where there is none.
func (r *sheetReader) meant(p *placedPart, own boardCut, face geom.Face) int {
	to := r.toSheet(p)
	b := own.shape.Bounds()
	want := rings{}.with([]geom.Point{to(b.Min), to(geom.Point{X: b.Max.X, Y: b.Min.Y}), to(b.Max)}).box
	best, found := math.Inf(1), -1
	for i, c := range r.cuts {
		if c.face != face || c.operation != own.operation {
			continue
		}
		g := c.region.box
		if g.Apart(want) {
			continue
		}
		off := math.Max(math.Max(math.Abs(g.Min.X-want.Min.X), math.Abs(g.Max.X-want.Max.X)),
			math.Max(math.Abs(g.Min.Y-want.Min.Y), math.Abs(g.Max.Y-want.Max.Y)))
		if off < best {
			best, found = off, i
		}
	}
	return found
}

// cutBy is the place of a cut of the sheet that the part suffers from.
func (p *placedPart) cutBy(c sheetCut) place { return place{p.Part, c.file, c.at} }

// real is a depth no greater than the board.
func (r *sheetReader) real(depth float64) float64 { return math.Min(depth, r.out.thickness) }

func (r *sheetReader) depth(v float64) string {
	if v == 0 {
		return "nothing"
	}
	return r.text(r.real(v))
}

// marksOf looks for a part's corner mark on each face.
func (r *sheetReader) marksOf(p *placedPart) {
	at := r.toSheet(p)(geom.Point{})
	for _, face := range r.faces {
		found := slices.IndexFunc(r.marks[face], func(m markAt) bool { return cornered(m.box, at, r.boxOf(p)) })
		if found < 0 {
			r.fault("mirror", place{p.Part, r.files[face], 0}, "mirror it end for end, or build the job into a new folder",
				"%s has no corner mark in its first corner, at x %s, y %s of the sheet with inside faces up", p.Part,
				r.text(at.X), r.text(at.Y))
			continue
		}
		r.marks[face] = slices.Delete(r.marks[face], found, found+1)
	}
}

// cornered reports whether a mark lies in a part, in the corner at a point.
func cornered(m geom.Rect, at geom.Point, part geom.Rect) bool {
	x := math.Abs(m.Min.X-at.X) < tick && at.X < part.Max.X-tick || math.Abs(m.Max.X-at.X) < tick &&
		at.X > part.Min.X+tick
	y := math.Abs(m.Min.Y-at.Y) < tick && at.Y < part.Max.Y-tick || math.Abs(m.Max.Y-at.Y) < tick &&
		at.Y > part.Min.Y+tick
	return x && y
}

// strayMarks names marks that are no part's.
func (r *sheetReader) strayMarks() {
	if len(r.parts) < len(r.laid.Placements) { // some could not be read
		return
	}
	for _, face := range r.faces {
		for _, m := range r.marks[face] {
			r.fault("mirror", r.place(r.files[face], m.line), rebuild,
				"a corner mark at x %s, y %s is in no part's first corner", r.text(m.box.Min.X), r.text(m.box.Min.Y))
		}
	}
}

func sorted(m map[int]patch) []int {
	var list []int
	for k := range m {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
