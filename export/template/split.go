package template

import (
	"fmt"
	"math"
	"slices"

	"drawerwright/geom"
)

// Measures of the joint between pieces, in mm: keys that are wider at their heads than
// at their necks, and how much larger the sockets are (common practice, no source).
const (
	keyDepth     = 9.0
	keyNeck      = 9.0
	keyHead      = 15.0
	keyApart     = 70.0
	keyClearance = 0.1
	seamRoom     = 3.0  // between a joint and what is cut
	seamMoves    = 30.0 // by which a seam gives way to what is cut
	thinBeam     = 0.5  // what leaves corners sharp enough for keys
	roundMost    = 3.3  // radius for which keys have room
)

// round is the radius of the keys' corners, which a bit has to get round.
func (o Options) round() float64 {
	if o.MinBridge <= thinBeam {
		return 0
	}
	return min(o.MinBridge/2+keyClearance, roundMost)
}

// rounded gives the corners of keys and of their sockets, alone in turning by more than
// a right angle, a radius.
func rounded(l geom.Loop, radius float64) geom.Loop {
	if radius == 0 {
		return l
	}
	var out geom.Loop
	for i, v := range l {
		if math.Abs(l.Turn(i)) < math.Pi/2+0.1 {
			out = append(out, v)
			continue
		}
		from, to, _ := l.Fillet(i, radius)
		out = append(out, from, to)
	}
	return out
}

// seams are the places, upright and level, where a plate of a size is parted so that
// its pieces fit the bed; ok is false where no bed so small holds them.
func (o Options) seams(wide, high float64, walls [2][]float64) (seams [2][]float64, ok bool) {
	if o.fits(wide, high) {
		return seams, true
	}
	for i, bed := range []geom.Point{o.Bed, {X: o.Bed.Y, Y: o.Bed.X}} {
		across, one := parted(wide, bed.X, walls[0])
		up, two := parted(high, bed.Y, walls[1])
		way := [2][]float64{across, up}
		if one && two && (i == 0 || !ok || pieces(way) < pieces(seams)) {
			seams, ok = way, true
		}
	}
	return seams, ok
}

func pieces(seams [2][]float64) int { return (len(seams[0]) + 1) * (len(seams[1]) + 1) }

// morePieces is how many pieces more than a length asks for are tried, to keep seams off
// what is cut.
const morePieces = 8

// parted are the fewest seams that leave no piece longer than a bed, its keys with it.
func parted(long, bed float64, walls []float64) (seams []float64, ok bool) {
	if bed < 2*(keyDepth+seamRoom) { // joints alone would fill it
		return nil, false
	}
	least := int(math.Ceil(long / bed))
	for n := least; n <= least+morePieces; n++ {
		seams = nil
		from, fits := 0.0, true
		for k := 1; k < n; k++ {
			at := clear(long*float64(k)/float64(n), walls)
			fits = fits && at > from && at+keyDepth-from <= bed
			seams, from = append(seams, at), at
		}
		if fits && long-from <= bed {
			return seams, true
		}
	}
	return nil, false
}

func (o Options) fits(wide, high float64) bool {
	return wide <= o.Bed.X && high <= o.Bed.Y || wide <= o.Bed.Y && high <= o.Bed.X
}

// clear is the place nearest to one at which a joint keeps off walls.
func clear(at float64, walls []float64) float64 {
	for by := 0.0; by <= seamMoves; by += 2 {
		for _, c := range []float64{at + by, at - by} {
			near := func(wall float64) bool { return wall > c-seamRoom-3 && wall < c+keyDepth+seamRoom+3 }
			if !slices.ContainsFunc(walls, near) {
				return c
			}
		}
	}
	return at
}

// seamZones are the strips that joints take up.
func (p *Plate) seamZones() (list []geom.Rect) {
	b := p.Outline.Bounds()
	for _, x := range p.seams[0] {
		list = append(list, geom.Rect{Min: geom.Point{X: x - seamRoom, Y: b.Min.Y},
			Max: geom.Point{X: x + keyDepth + seamRoom, Y: b.Max.Y}})
	}
	for _, y := range p.seams[1] {
		list = append(list, geom.Rect{Min: geom.Point{X: b.Min.X, Y: y - seamRoom},
			Max: geom.Point{X: b.Max.X, Y: y + keyDepth + seamRoom}})
	}
	return list
}

// Split gives the pieces of a rectangular plate: itself where it fits the bed.
func (p Plate) Split() []Plate {
	if len(p.seams[0])+len(p.seams[1]) == 0 {
		return []Plate{p}
	}
	b := p.Outline.Bounds()
	xs := slices.Concat([]float64{b.Min.X}, p.seams[0], []float64{b.Max.X})
	ys := slices.Concat([]float64{b.Min.Y}, p.seams[1], []float64{b.Max.Y})
	columns, rows := len(xs)-1, len(ys)-1
	var list []Plate
	for r := range rows {
		for c := range columns {
			f := field{
				Rect: geom.Rect{Min: geom.Point{X: xs[c], Y: ys[r]}, Max: geom.Point{X: xs[c+1], Y: ys[r+1]}},
				left: c > 0, right: c < columns-1, below: r > 0, above: r < rows-1,
			}
			list = append(list, p.piece(f, len(list)+1, columns*rows))
		}
	}
	return list
}

// field is a rectangle of a plate between its seams, and at which sides another follows.
type field struct {
	geom.Rect
	left, right, below, above bool
}

// outline is that of the piece of a field, its keys to the right and upward, counter-
// clockwise from the lower left corner. Sockets are cut into the left and lower sides by
// the keys of the pieces before.
func (f field) outline() (l geom.Loop) {
	add := func(points ...geom.Point) {
		for _, q := range points {
			if n := len(l); n == 0 || l[n-1].Point != q {
				l = append(l, geom.Vertex{Point: q})
			}
		}
	}
	across := func(y float64, socket bool) []geom.Point { // from left to right
		place := func(along, out float64) geom.Point { return geom.Point{X: along, Y: y + out} }
		return keys(f.Min.X, f.Max.X, socket, place)
	}
	upright := func(x float64, socket bool) []geom.Point { // upward
		place := func(along, out float64) geom.Point { return geom.Point{X: x + out, Y: along} }
		return keys(f.Min.Y, f.Max.Y, socket, place)
	}
	add(f.Min)
	if f.below {
		add(across(f.Min.Y, true)...)
	}
	add(geom.Point{X: f.Max.X, Y: f.Min.Y})
	if f.right {
		add(upright(f.Max.X, false)...)
	}
	add(f.Max)
	if f.above {
		add(reversed(across(f.Max.Y, false))...)
	}
	add(geom.Point{X: f.Min.X, Y: f.Max.Y})
	if f.left {
		add(reversed(upright(f.Min.X, true))...)
	}
	if n := len(l) - 1; l[n].Point == l[0].Point {
		l = l[:n]
	}
	return l
}

// holds reports whether a place of the plate is on the piece of a field. Joints belong to
// the strip before which they stand.
func (f field) holds(q geom.Point) bool {
	return (q.X >= f.Min.X || !f.left) && (q.X < f.Max.X || !f.right) &&
		(q.Y >= f.Min.Y || !f.below) && (q.Y < f.Max.Y || !f.above)
}

// offSockets is where words go on the piece of a field, from the piece's lower left corner.
func (f field) offSockets() geom.Rect {
	b := geom.Rect{Max: f.Max.Sub(f.Min)}
	if f.left {
		b.Min.X = keyDepth + seamRoom
	}
	if f.below {
		b.Min.Y = keyDepth + seamRoom
	}
	return b
}

// piece is that of a field of the plate, by its number of so many.
func (p Plate) piece(f field, number, of int) Plate {
	out := p
	out.seams = [2][]float64{}
	out.Name, out.Title = fmt.Sprintf("%s-%d", p.Name, number), fmt.Sprintf("%s, piece %d of %d", p.Title, number, of)
	by := geom.Point{X: -f.Min.X, Y: -f.Min.Y}
	out.Outline, out.Origin = rounded(f.outline(), p.round).Translate(by), p.Origin.Add(by)
	out.keep(f, by)
	writer := out.writer()
	writer.within = f.offSockets()
	middle := writer.within.Center()
	out.write(writer, fmt.Sprintf("PIECE %d", number), middle, 0)
	if p.stamp.Text != "" && f.holds(p.stamp.box().Center()) {
		out.stamp.At = p.stamp.At.Add(by)
	} else {
		out.stamp, _ = writer.place(stampText, middle, 0)
	}
	dowels := slices.ContainsFunc(out.Holes, func(h Hole) bool { return h.Dowel })
	hangs := slices.ContainsFunc(out.Holes, func(h Hole) bool { return !h.Dowel })
	out.Notes = slices.DeleteFunc(slices.Clone(p.Notes), func(n string) bool {
		return n == p.dowels && !dowels || n == toHang && !hangs
	})
	out.Notes = append(out.Notes, "Put the pieces together by their keys on a flat surface "+
		"and push them home, so that their edges touch, with a drop of glue.")
	return out
}

// keep leaves what is cut into, scored and written on a field alone, moved by an offset.
func (p *Plate) keep(f field, by geom.Point) {
	openings, holes, engraved, words, edges := p.Openings, p.Holes, p.Engrave, p.Words, p.edges
	p.Openings, p.Holes, p.Engrave, p.Words, p.edges = nil, nil, nil, nil, nil
	for _, path := range edges {
		p.edges = append(p.edges, within(path, f.Rect, by)...)
	}
	for _, o := range openings {
		if f.holds(o.Bounds().Center()) {
			p.Openings = append(p.Openings, o.Translate(by))
		}
	}
	for _, h := range holes {
		if f.holds(h.Bounds().Center()) {
			p.Holes = append(p.Holes, Hole{h.Translate(by), h.Dowel})
		}
	}
	for _, path := range engraved {
		p.Engrave = append(p.Engrave, within(path, f.Rect, by)...)
	}
	for _, w := range words {
		if f.holds(w.box().Center()) {
			w.At = w.At.Add(by)
			p.Words = append(p.Words, w)
		}
	}
}

// keys are the corners of keys, or of the sockets for them, along a side. The sides
// themselves meet: play is about the keys alone, so that pieces pushed together are as
// long as the plate.
func keys(from, to float64, socket bool, place func(along, out float64) geom.Point) (list []geom.Point) {
	// Whole coordinates of the plate say where keys are, so that both sides agree.
	play := 0.0
	if socket {
		play = keyClearance
	}
	first := math.Ceil((from + keyHead) / keyApart)
	var at []float64
	for n := first; n*keyApart <= to-keyHead; n++ {
		at = append(at, n*keyApart)
	}
	if len(at) == 0 {
		at = []float64{math.Round((from + to) / 2)}
	}
	neck := keyNeck/2 + play
	head := neck + float64((keyDepth+play)*(keyHead-keyNeck)/(2*keyDepth)) // flanks are parallel to the key's
	list = append(list, place(from, 0))
	for _, c := range at {
		list = append(list, place(c-neck, 0), place(c-head, keyDepth+play), place(c+head, keyDepth+play),
			place(c+neck, 0))
	}
	return append(list, place(to, 0))
}

func reversed(list []geom.Point) []geom.Point {
	out := slices.Clone(list)
	slices.Reverse(out)
	return out
}

// within is the parts of a scored path in a rectangle.
func within(path []geom.Vertex, r geom.Rect, by geom.Point) (parts [][]geom.Vertex) {
	joined := false // the last part ends where this side begins
	for i := range len(path) - 1 {
		a, b := path[i], path[i+1].Point
		spans := side{a, b}.inside(r, 0, 1, halvings)
		for _, t := range spans {
			from, to := along(a, b, t.Min), along(a, b, t.Max)
			start := geom.Vertex{Point: from.Add(by), Bulge: part(a.Bulge, t.Len())}
			end := geom.Vertex{Point: to.Add(by)}
			if n := len(parts) - 1; joined && t.Min == 0 {
				parts[n][len(parts[n])-1] = start
				parts[n] = append(parts[n], end)
			} else {
				parts = append(parts, []geom.Vertex{start, end})
			}
			joined = false
		}
		joined = len(spans) > 0 && spans[len(spans)-1].Max == 1
	}
	return parts
}

// halvings find the place where a side leaves a rectangle to less than a micrometer.
const halvings = 22

// side is one of a loop, from its vertex to the next point.
type side struct {
	from geom.Vertex
	to   geom.Point
}

// inside are the spans, of 0 to 1, of a side that are in a rectangle.
func (s side) inside(r geom.Rect, from, to float64, depth int) []geom.Interval {
	a, b := s.from, s.to
	box := geom.Loop{{Point: along(a, b, from), Bulge: part(a.Bulge, to-from)}, {Point: along(a, b, to)}}.Bounds()
	switch {
	case r.Contains(box):
		return []geom.Interval{{Min: from, Max: to}}
	case depth == 0 || box.Apart(r):
		return nil
	}
	middle := (from + to) / 2
	list := s.inside(r, from, middle, depth-1)
	for _, t := range s.inside(r, middle, to, depth-1) {
		if n := len(list); n > 0 && list[n-1].Max == t.Min {
			list[n-1].Max = t.Max
		} else {
			list = append(list, t)
		}
	}
	return list
}

// part is the bulge of a part of a side.
func part(bulge, of float64) float64 { return geom.Arc{Bulge: bulge}.Part(of) }

// along is the point so far along a side, of 0 to 1: the ends themselves at both.
func along(a geom.Vertex, b geom.Point, t float64) geom.Point {
	switch {
	case t == 1:
		return b
	case a.Bulge == 0:
		return a.Lerp(b, t)
	}
	return geom.Arc{A: a.Point, B: b, Bulge: a.Bulge}.At(t)
}
