package prove

import (
	"math"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// loopOf is a loop of the report; ok is false for what is none.
func loopOf(corners []record.Vertex) (l geom.Loop, ok bool) {
	for _, v := range corners {
		l = append(l, geom.Vertex{Point: geom.Point{X: v.X.MM(), Y: v.Y.MM()}, Bulge: v.Bulge})
	}
	return l, len(l) > 1
}

// differs is how far, in millimeters, an outline as drawn lies from the one that
// the job has, and where. Near corners into which another part goes a bit may have
// cleared as much as it is wide.
func differs(drawn, asked geom.Loop, relieve []int, bit float64) (off float64, at geom.Point) {
	spared := func(p geom.Point) bool {
		for _, i := range relieve {
			if i >= 0 && i < len(asked) && p.To(asked[i].Point) < bit*reliefReach {
				return true
			}
		}
		return false
	}
	see := func(ring, other geom.Ring, asked bool) {
		for i, a := range ring {
			for k, p := range []geom.Point{a, a.Middle(ring[(i+1)%len(ring)])} {
				// A corner that stands out is where it was asked for, whatever was cleared
				// beside it.
				if tip := asked && k == 0 && outer(ring, i); !tip && spared(p) {
					continue
				}
				if d := other.Distance(p); d > off {
					off, at = d, p
				}
			}
		}
	}
	a, b := drawn.Flatten(outlineChord), asked.Flatten(outlineChord)
	if len(a)*len(b) > maxCompared { // nobody drew that
		return math.Inf(1), geom.Point{}
	}
	see(a, b, false)
	see(b, a, true)
	return off, at
}

// outer reports whether a counter-clockwise ring turns to the left at a corner.
func outer(ring geom.Ring, i int) bool {
	n := len(ring)
	p, q, r := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
	return q.Sub(p).Cross(r.Sub(q)) > 0
}

// maxCompared is how many pairs of corners are looked at: two outlines of two
// thousand each take some hundredths of a second.
const maxCompared = 1 << 22

// outlineChord is how far, in millimeters, chords keep to the arcs of outlines that
// are compared: half of what sizes may differ by.
const outlineChord = sameSize / 2

// reliefReach is how far from its corner a relief reaches, of the bit's diameter.
const reliefReach = 1.1

// region is a panel as a rectangle with bites taken out of its edges: notches,
// finger gaps, pulls. The ring is its outline, where it has bites.
type region struct {
	box   geom.Rect
	ring  geom.Ring
	bites []geom.Ring
}

// regionOf finds the bites of an outline: the chains that leave the box about it
// and come back, closed along the box.
func regionOf(l geom.Loop) region {
	ring := l.Flatten(judgedChord)
	r := region{box: l.Bounds()}
	n := len(ring)
	on := func(p geom.Point) bool {
		b := r.box
		return math.Min(math.Min(p.X-b.Min.X, b.Max.X-p.X), math.Min(p.Y-b.Min.Y, b.Max.Y-p.Y)) < tick
	}
	start := -1
	for i := range ring { // a side that lies on the box
		if on(ring[i]) && on(ring[(i+1)%n]) && on(ring[i].Middle(ring[(i+1)%n])) {
			start = i
			break
		}
	}
	if start < 0 {
		return r
	}
	var bite geom.Ring
	for k := 1; k <= n; k++ {
		p, q := ring[(start+k)%n], ring[(start+k+1)%n]
		if on(p) && on(q) && on(p.Middle(q)) || k == n {
			if len(bite) > 0 {
				bite = append(bite, p)
				r.bites = append(r.bites, r.closed(bite))
				bite = nil
			}
			continue
		}
		bite = append(bite, p)
	}
	if len(r.bites) > 0 {
		r.ring = ring
	}
	return r
}

// closed adds to a bite the corner of the box that it has taken away, if it has.
func (r region) closed(bite geom.Ring) geom.Ring {
	a, b := bite[0], bite[len(bite)-1]
	if math.Abs(a.X-b.X) < tick || math.Abs(a.Y-b.Y) < tick {
		return bite
	}
	for _, c := range r.box.Corners() {
		level := func(p geom.Point) bool { return math.Abs(p.X-c.X) < tick || math.Abs(p.Y-c.Y) < tick }
		if level(a) && level(b) {
			return append(bite, c)
		}
	}
	return bite
}

// free reports which sides of a rectangle lie on a bite, so that a cut may run past
// them by so much: left, lower, right, upper; 0 for those that do not.
func (r region) free(b geom.Rect, by float64) (slack [4]float64) {
	m := b.Center()
	for i, p := range [4]geom.Point{{X: b.Min.X, Y: m.Y}, {X: m.X, Y: b.Min.Y}, {X: b.Max.X, Y: m.Y}, {X: m.X, Y: b.Max.Y}} {
		for _, bite := range r.bites {
			if bite.Distance(p) < sameSize {
				slack[i] = by
			}
		}
	}
	return slack
}

// blur is the area, in square millimeters, by which [region.within] may be wrong along the
// bites, whose arcs are chords.
func (r region) blur() float64 {
	long := 0.0
	for _, bite := range r.bites {
		for i, p := range bite[1:] {
			long += bite[i].To(p)
		}
	}
	return judgedChord * long
}

// within is the area of a loop inside a region.
func (r region) within(l geom.Loop, chord float64) float64 {
	b := l.Bounds()
	switch {
	case len(r.ring) > 0 && len(l)*len(r.ring) < maxCompared:
		return commonArea(l.Flatten(judgedChord), r.ring) // as the ring is: finer chords would stand out of it
	case r.box.Contains(b):
		return math.Abs(l.Area())
	}
	return math.Abs(l.Flatten(chord).ClipTo(r.box).Area())
}
