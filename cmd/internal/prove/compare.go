package prove

import (
	"cmp"
	"math"
	"slices"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/mill"
	"drawerwright/geom/proof"
)

// doubled looks for lines that are there twice: a bit would run them twice, or a
// program stop at them.
func (r *panelReader) doubled() {
	type key struct {
		face geom.Face
		at   [5]int64
	}
	seen := make(map[key]int)
	for _, c := range r.drawn {
		l := c.loop
		if c.path != nil {
			l = geom.Loop(c.path)
		}
		b := l.Bounds()
		k := key{face: c.face}
		for i, v := range []float64{b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, math.Abs(l.Area())} {
			k.at[i] = int64(math.Round(v / tick))
		}
		if line, twice := seen[k]; twice {
			r.fault("doubled", r.place(c.file, c.at), "delete one of the two",
				"a line on %s lies on the one that begins on line %d", c.layer, line)
			continue
		}
		seen[k] = c.at
	}
}

// compare holds what is cut against what the job asks for, so that a mistake has a
// name; whether the box goes together is not decided here.
func (r *panelReader) compare() {
	used := make([]bool, len(r.drawn))
	face := func(op record.Operation) string { return op.Face }
	other := func(op record.Operation) string {
		if op.Face == "outside" {
			return "inside"
		}
		return "outside"
	}
	found := r.match(used, make([]int, len(r.part.Operations)), face)
	turned := r.match(used, found, other)
	for k, op := range r.part.Operations {
		if found[k] == 0 && turned[k] != 0 {
			c := r.drawn[turned[k]-1]
			r.fault("wrong-face", r.place(c.file, c.at), rebuild,
				"the %s on %s is cut on the %s face; the job wants it on the %s face", op.Kind, c.layer, other(op),
				op.Face)
			continue
		}
		if found[k] == 0 {
			r.fault("missing", r.place(r.file(op.Face), 0), rebuild,
				"nothing cuts the %s of %s on the %s face", op.Kind, r.part.Name, op.Face)
			continue
		}
		c := r.drawn[found[k]-1]
		if off := r.offBy(op, c); off > mill.SlotRoom/2+sameSize {
			r.fault("moved", r.place(c.file, c.at), rebuild,
				"a side of the %s on %s is %s off where the job has it", op.Kind, c.layer, r.text(off))
		}
		want, deep := op.Depth.MM(), c.depth
		if c.through {
			deep = r.out.thickness
		}
		if math.Abs(deep-want) > 2*tick+sameDepth {
			r.fault("depth", r.place(c.file, c.at), rebuild,
				"the %s on %s comes out %s deep; the job wants %s", op.Kind, c.layer, r.text(deep), r.text(want))
		}
	}
	for i, c := range r.drawn {
		number := c.operation == engraving && r.part.Engraved != nil && r.part.Engraved.Reason == "" &&
			r.part.Engraved.Face == c.face.String()
		if !used[i] && !number && c.within > proof.MinLeft+r.region.blur() {
			r.fault("extra", r.place(c.file, c.at), "delete it, or build the job into a new folder",
				"the job has no such %s on the %s face as there is on %s", c.operation, c.face, c.layer)
		}
	}
}

// match finds a cut for each operation that has none yet, on the face that is
// given, and marks it as used: the pairs that lie nearest to each other first. It
// gives the cuts' indices and 1, or 0 for none.
func (r *panelReader) match(used []bool, had []int, face func(record.Operation) string) []int {
	type pair struct {
		op, cut int
		off     float64
	}
	var pairs []pair
	for k, op := range r.part.Operations {
		for i, c := range r.drawn {
			if had[k] != 0 || used[i] || c.operation != op.Kind || c.face.String() != face(op) || len(c.reach) == 0 {
				continue
			}
			if off := r.offBy(op, c); !math.IsInf(off, 1) {
				pairs = append(pairs, pair{k, i, off})
			}
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(a.off, b.off) })
	found := make([]int, len(r.part.Operations))
	for _, p := range pairs {
		if found[p.op] == 0 && !used[p.cut] {
			found[p.op], used[p.cut] = p.cut+1, true
		}
	}
	return found
}

// offBy is how far, in millimeters, the side of a cut that is furthest off lies
// from where the job has it. A corner's relief may reach further.
func (r *panelReader) offBy(op record.Operation, c drawnCut) float64 {
	panel := r.region.box
	asked, ok := loopOf(op.Outline)
	if !ok {
		return math.Inf(1)
	}
	want := asked.Bounds().Intersect(panel)
	if at, radius, round := asked.AsCircle(); round {
		if c.path != nil {
			return math.Inf(1)
		}
		if center, drawn, ok := c.loop.AsCircle(); ok {
			return math.Max(at.To(center), math.Abs(radius-drawn))
		}
	}
	// A hole of any shape.
	if c.path == nil && slices.ContainsFunc(asked, func(v geom.Vertex) bool { return v.Bulge != 0 }) {
		off, _ := differs(c.loop, asked, nil, 0)
		return off
	}
	if c.path != nil {
		return furthest(want, c.inside, r.asked.free(want, c.bit+r.report.Router.Overcut.MM()))
	}
	// Where there is a straight side it says where the cut ends; else the rounds do,
	// which may reach further.
	got, sides := c.loop.Bounds(), straightSides(c.loop)
	rounded := slices.ContainsFunc(c.loop, func(v geom.Vertex) bool { return v.Bulge != 0 })
	slack := r.asked.free(want, c.bit+r.report.Router.Overcut.MM())
	for i, s := range [4]struct{ to, side *float64 }{{&got.Min.X, &sides.Min.X}, {&got.Min.Y, &sides.Min.Y}, {&got.Max.X, &sides.Max.X}, {&got.Max.Y, &sides.Max.Y}} {
		switch {
		// Else the rounds of both corners have taken it.
		case !math.IsInf(*s.side, 0) && (!rounded || math.Abs(*s.side-*s.to) < c.bit*reliefReach+tick):
			*s.to = *s.side
		case rounded:
			slack[i] = math.Max(slack[i], c.bit/2*1.1)
		}
	}
	return furthest(want, got.Intersect(panel), slack)
}

// furthest is how far the side that is furthest off lies from where it should be;
// further out each may be by its slack.
func furthest(want, got geom.Rect, slack [4]float64) float64 {
	off := 0.0
	for i, d := range [4]float64{want.Min.X - got.Min.X, want.Min.Y - got.Min.Y, got.Max.X - want.Max.X, got.Max.Y - want.Max.Y} {
		if d > 0 { // reaches further than asked
			d = math.Max(0, d-slack[i])
		}
		off = math.Max(off, math.Abs(d))
	}
	return off
}

// straightSides are the places of a loop's outermost upright and level sides,
// infinite where it has none.
func straightSides(l geom.Loop) geom.Rect {
	r := geom.Rect{Min: geom.Point{X: math.Inf(1), Y: math.Inf(1)}, Max: geom.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	for i, v := range l {
		w := l[(i+1)%len(l)]
		switch dx, dy := math.Abs(v.X-w.X), math.Abs(v.Y-w.Y); {
		case v.Bulge != 0:
		case dx < tick && dy > tick:
			r.Min.X, r.Max.X = math.Min(r.Min.X, v.X), math.Max(r.Max.X, v.X)
		case dy < tick && dx > tick:
			r.Min.Y, r.Max.Y = math.Min(r.Min.Y, v.Y), math.Max(r.Max.Y, v.Y)
		}
	}
	return r
}

func (r *panelReader) file(face string) string {
	f := r.part.Files.Inside
	if face == "outside" {
		f = r.part.Files.Outside
	}
	if f == "" {
		return r.part.Name
	}
	return f
}

// registered compares the holes that a panel is put down on before and after it
// is turned over: in panel coordinates they are the same.
func (r *panelReader) registered(files int) {
	in, out := r.register[geom.Inside], r.register[geom.Outside]
	if files < 2 || r.saw {
		return
	}
	if len(in) != 2 || len(out) != 2 {
		r.fault("register", r.place(r.file("outside"), 0), rebuild,
			"%d registration holes on the inside face and %d on the outside; each needs two", len(in), len(out))
		return
	}
	for _, a := range in {
		near := math.Inf(1)
		for _, b := range out {
			near = math.Min(near, math.Max(a.at.To(b.at), math.Abs(a.radius-b.radius)))
		}
		if near > tick {
			r.fault("register", r.place(r.file("outside"), 0), rebuild,
				"a registration hole of the inside face is %s off any on the outside, in place or radius: the turned "+
					"panel would be off", r.text(near))
			return
		}
	}
	// The pins stay where they are while the panel is turned over end for end.
	for _, a := range in {
		near := math.Inf(1)
		for _, b := range in {
			near = math.Min(near, math.Hypot(r.length-a.at.X-b.at.X, a.at.Y-b.at.Y))
		}
		if near > tick {
			r.fault("register", r.place(r.file("inside"), 0), rebuild,
				"the registration holes do not fall on their pins when the panel is turned over")
			return
		}
	}
}
