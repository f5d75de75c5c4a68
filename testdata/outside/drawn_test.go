package outside

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawerwright/geom"
)

// sheet is a panel with all that the drawings of its faces depend on, in
// millimeters.
type sheet struct {
	geom.Panel
	unit    geom.Unit // of the drawing
	routing           // Overcut in millimeters
	// bits are those that a layer of a name can be cut with; 0 is a saw.
	bits func(layer string) []float64
	// skin is left under the outline, and told as the depth.
	skin float64
}

const (
	slotRoom   = 0.05 // what a slot of the bit's own width is drawn wider
	reliefOver = 0.1  // what the radius of a relief is larger than the bit's
	markLeg    = 8.0  // of the triangle in the panel's first corner
	touching   = 1e-6 // two computed sizes that mean the same
)

// onFace gives a loop as the drawing of a face shows it.
func (s sheet) onFace(face geom.Face, e entity) entity {
	if face == geom.Inside {
		return e
	}
	// Mirrored and run backward: each corner has the side before it.
	turned := e
	turned.Center[0] = s.Length() - e.Center[0]
	turned.Points = make([][3]float64, len(e.Points))
	for i, p := range e.Points {
		before := e.Points[(i+len(e.Points)-1)%len(e.Points)]
		turned.Points[i] = [3]float64{s.Length() - p[0], p[1], before[2]}
	}
	slices.Reverse(turned.Points)
	return turned
}

// depthWords names a depth from a face of the panel.
func (s sheet) depthWords(depth float64, line bool) string {
	words := ""
	if line {
		words = "LINE_"
	}
	if depth > s.Thickness-touching {
		return words + "THROUGH"
	}
	if s.DepthFrom == "spoilboard" {
		words, depth = words+"FLOOR_", s.Thickness-depth
	}
	// Halves go up; the nudge keeps decimal halves halves in float64.
	if n := int(math.Floor(depth*100 + 0.5 + 1e-9)); s.unit == geom.Millimeter {
		return fmt.Sprintf("%s%d-%02dMM", words, n/100, n%100)
	}
	n := int(math.Floor(depth/25.4*10000 + 0.5 + 1e-9))
	return fmt.Sprintf("%s%d-%04dIN", words, n/10000, n%10000)
}

// loopEntity is a loop as it lies in the panel.
func loopEntity(layer string, l geom.Loop) entity {
	if c, r, ok := l.AsCircle(); ok {
		return entity{Layer: layer, Type: "CIRCLE", Closed: true, Center: [2]float64{c.X, c.Y}, Radius: r}
	}
	e := entity{Layer: layer, Closed: true}
	for _, v := range l {
		e.Points = append(e.Points, [3]float64{v.X, v.Y, v.Bulge})
	}
	return e
}

// pocket draws a pocket for a bit by the stated rules: rectangles run past the
// panel's edges by the bit's radius and the overcut, are made a hair wider than
// their bit or become its center line, and their corners are cleared for the
// square part that goes in. Everything else is drawn as it is.
func (s sheet) pocket(k geom.Pocket, bit float64) entity {
	name := func(line bool) string {
		return strings.ToUpper(fmt.Sprintf("%s_%s_%s", k.Kind, k.Face, s.depthWords(k.Depth, line)))
	}
	whole := loopEntity(name(false), k.Outline)
	x0, y0, x1, y1, ok := s.pastEdges(k, bit)
	if !ok || bit == 0 {
		return whole
	}
	narrow := math.Min(x1-x0, y1-y0)
	if s.ExactSlots == "centerline" && narrow < bit+touching {
		a, b := [3]float64{x0 + bit/2, (y0 + y1) / 2}, [3]float64{x1 - bit/2, (y0 + y1) / 2}
		if x1-x0 < y1-y0 {
			a, b = [3]float64{(x0 + x1) / 2, y0 + bit/2}, [3]float64{(x0 + x1) / 2, y1 - bit/2}
		}
		return entity{Layer: name(true), Points: [][3]float64{a, b}}
	}
	if more := (bit + slotRoom - narrow) / 2; more > 0 {
		if x1-x0 < y1-y0 {
			x0, x1 = x0-more, x1+more
		} else {
			y0, y1 = y0-more, y1+more
		}
	}
	corners := [4][2]float64{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
	var clear [4]bool
	for i, c := range corners {
		clear[i] = s.inTheWay(k, c, [4]float64{1, -1, -1, 1}[i], [4]float64{1, 1, -1, -1}[i], bit/2)
	}
	return entity{Layer: name(false), Closed: true, Points: cleared(corners, clear, bit/2, s.reliefOf(k.Kind.String()))}
}

// reliefOf is the relief of an operation: its own, or that of all.
func (r routing) reliefOf(operation string) string {
	if own := r.Reliefs[operation]; own != "" {
		return own
	}
	return r.Relief
}

// inTheWay reports whether a bit of a radius leaves wood in a corner of a pocket where
// a square part goes, that no other pocket as deep takes away. The pocket lies from
// the corner in the directions dx and dy; others that matter here run across all of
// the corner.
func (s sheet) inTheWay(k geom.Pocket, corner [2]float64, dx, dy, r float64) bool {
	if len(k.Takes) == 0 {
		return false
	}
	// From the corner: the part is in the square of the bit's round from u0 to u1 and
	// from v0 on.
	takes := k.Takes.Bounds()
	u0, u1 := away(corner[0], dx, takes.Min.X, takes.Max.X)
	v0, v1 := away(corner[1], dy, takes.Min.Y, takes.Max.Y)
	u0, u1, v0, v1 = max(0, u0), min(r, u1), max(0, v0), min(r, v1)
	if u0 >= u1 || v0 >= v1 {
		return false
	}
	for changed := true; changed; { // strips that begin where the part does
		changed = false
		for _, o := range s.Pockets {
			b := o.Outline.Bounds()
			a0, a1 := away(corner[0], dx, b.Min.X, b.Max.X)
			c0, c1 := away(corner[1], dy, b.Min.Y, b.Max.Y)
			if o.Kind != k.Kind && o.Face == k.Face && o.Depth > k.Depth-touching && c0 < v0+touching && c1 > v1-touching && a0 < u0+touching && a1 > u0+touching {
				u0, changed = a1, true
			}
		}
	}
	// The point of the part that is nearest to the corner is furthest from the middle
	// of the bit, which is at r, r.
	return u0 < u1 && math.Hypot(r-u0, r-v0) > r+micrometer
}

// away is a range as seen from a place in a direction, which is 1 or -1.
func away(from, direction, low, high float64) (near, far float64) {
	a, b := (low-from)*direction, (high-from)*direction
	return min(a, b), max(a, b)
}

// pastEdges is a rectangular pocket, its sides on the panel's edges moved out by a
// bit's radius and the overcut.
func (s sheet) pastEdges(k geom.Pocket, bit float64) (x0, y0, x1, y1 float64, ok bool) {
	x0, y0, x1, y1, ok = rectangleOf(loopEntity("", k.Outline).Points)
	past := bit/2 + s.Overcut
	if math.Abs(x0) < touching {
		x0 -= past
	}
	if math.Abs(y0) < touching {
		y0 -= past
	}
	if math.Abs(x1-s.Length()) < touching {
		x1 += past
	}
	if math.Abs(y1-s.Width()) < touching {
		y1 += past
	}
	return x0, y0, x1, y1, ok
}

// rectangleOf gives the corners of an upright rectangle.
func rectangleOf(points [][3]float64) (x0, y0, x1, y1 float64, ok bool) {
	if len(points) != 4 {
		return 0, 0, 0, 0, false
	}
	x0, y0, x1, y1 = points[0][0], points[0][1], points[2][0], points[2][1]
	for i, want := range [4][3]float64{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} {
		if points[i] != want {
			return 0, 0, 0, 0, false
		}
	}
	return x0, y0, x1, y1, true
}

// drawing lists what the drawing of a face holds but for LABEL and REGISTER. Of
// pockets it takes, from the bits of their layers, the one for which the layer has
// that name.
func (s sheet) drawing(face geom.Face) ([]entity, error) {
	var list []entity
	for _, k := range s.Pockets {
		if k.Face != face {
			continue
		}
		e, err := s.oneOf(k)
		if err != nil {
			return nil, err
		}
		list = append(list, s.onFace(face, e))
	}
	if face == s.last() {
		for _, h := range s.Holes {
			list = append(list, loopEntity(strings.ToUpper("cutout_"+face.String()+"_through"), h))
			list[len(list)-1] = s.onFace(face, list[len(list)-1])
		}
		list = append(list, s.onFace(face, loopEntity(strings.ToUpper(fmt.Sprintf("profile_%s_%s", face, s.depthWords(s.Thickness-s.skin, false))), s.Outline)))
	} else {
		list = append(list, s.onFace(face, loopEntity("OUTLINE", s.Outline)))
	}
	leg := min(markLeg, s.Length()/4, s.Width()/4)
	list = append(list, s.onFace(face, entity{Layer: "BLANK", Closed: true, Points: [][3]float64{{0, 0}, {leg, 0}, {0, leg}}}))
	side := 100.0
	if s.unit == geom.Inch {
		side = 4 * 25.4
	}
	beyond, err := s.beyond()
	low := s.Width() + beyond + side/5
	return append(list, loopEntity("SCALE", geom.Rectangle(0, low, side, low+side))), err
}

func (s sheet) oneOf(k geom.Pocket) (entity, error) {
	for _, line := range []bool{false, true} {
		layer := strings.ToUpper(fmt.Sprintf("%s_%s_%s", k.Kind, k.Face, s.depthWords(k.Depth, line)))
		for _, bit := range s.bits(layer) {
			if e := s.pocket(k, bit); e.Layer == layer {
				return e, nil
			}
		}
	}
	return entity{}, fmt.Errorf("no layer for the %s on the %s face", k.Kind, k.Face)
}

// last is the face from which the panel is cut out.
func (s sheet) last() geom.Face {
	if s.CutOn(geom.Outside) && !s.CutOn(geom.Inside) && len(s.Holes) == 0 {
		return geom.Outside
	}
	return geom.Inside
}

// beyond is how far pockets run past the panel.
func (s sheet) beyond() (float64, error) {
	most := 0.0
	for _, k := range s.Pockets {
		e, err := s.oneOf(k)
		if err != nil {
			return 0, err
		}
		round := 0.0 // about a center line
		if !e.Closed {
			round = s.bits(e.Layer)[0] / 2
		}
		for _, p := range e.Points {
			most = max(most, round-p[0], round-p[1], p[0]+round-s.Length(), p[1]+round-s.Width())
		}
	}
	return most, nil
}
