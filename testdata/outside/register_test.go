package outside

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// registerWeb is the least wood, in millimeters, between a registration hole and
// what is cut.
const registerWeb = 3

// registered takes the registration holes, and the circles on BLANK for the pins
// that stand in them, out of what a reader found; in millimeters. Strokes of numbers are
// left out.
func registered(list []entity, scale float64) (holes, rest []entity) {
	for _, e := range list {
		if strings.HasPrefix(e.Layer, "ENGRAVE") {
			continue
		}
		if !strings.HasPrefix(e.Layer, "REGISTER") && (e.Layer != "BLANK" || e.Type != "CIRCLE") {
			rest = append(rest, e)
			continue
		}
		e.Center, e.Radius = [2]float64{e.Center[0] * scale, e.Center[1] * scale}, e.Radius*scale
		holes = append(holes, e)
	}
	return holes, rest
}

// checkRegister judges the registration holes in the drawings of both faces of a
// panel: they do their work whatever their place. They are drilled with the outside
// face, which is cut first; drawn is what else is cut or stands, with the inside up.
func checkRegister(inside, outside, drawn []entity, length, width float64) error {
	if len(inside) != 2 || len(outside) != 2 {
		return fmt.Errorf("%d pins on the inside face and %d holes on the outside", len(inside), len(outside))
	}
	has := func(layer string, list []entity, x, y, r float64) bool {
		return slices.ContainsFunc(list, func(e entity) bool {
			return strings.HasPrefix(e.Layer, layer) && e.Type == "CIRCLE" && math.Hypot(e.Center[0]-x,
				e.Center[1]-y) < micrometer && math.Abs(e.Radius-r) < micrometer
		})
	}
	for i, e := range outside {
		x, y, r := e.Center[0], e.Center[1], e.Radius
		// The pins stay; the panel is turned over between them: what was at x is at
		// length - x then.
		if !has("REGISTER", outside, length-x, y, r) || !has("BLANK", inside, x, y, r) {
			return fmt.Errorf("the hole at %.3f, %.3f is not on a pin when the panel is turned over", x, y)
		}
		// Turned over the long way, or about, it must not go on the pins.
		for _, o := range outside {
			if math.Abs(o.Center[1]-(width-y)) < r {
				return fmt.Errorf("the holes at y %.3f and %.3f take the panel the wrong way too", y, o.Center[1])
			}
		}
		in := x > 0 && x < length && y > 0 && y < width
		if in && math.Min(y, width-y) < r+registerWeb || !in && x > -r-registerWeb && x < length+r+registerWeb {
			return fmt.Errorf("the hole at %.3f, %.3f is on the panel's edge", x, y)
		}
		for _, o := range outside[i+1:] {
			if math.Hypot(x-o.Center[0], y-o.Center[1]) < 2*r+registerWeb {
				return fmt.Errorf("the holes run into each other")
			}
		}
		for _, d := range drawn {
			if in && (strings.HasPrefix(d.Layer, "PROFILE") || d.Layer == "BLANK" || d.Layer == "OUTLINE") || d.Layer == "SCALE" {
				continue
			}
			if near(d, x, y) < r+registerWeb-micrometer {
				return fmt.Errorf("the hole at %.3f, %.3f meets %s", x, y, d.Layer)
			}
		}
	}
	return nil
}

// near is how far a point is from the box about an entity.
func near(e entity, x, y float64) float64 {
	x0, y0, x1, y1 := boxOf(e)
	return math.Hypot(max(0, x0-x, x-x1), max(0, y0-y, y-y1))
}

// boxOf is the box about an entity, its arcs left out: no drawing here ends in one
// that is no circle.
func boxOf(e entity) (x0, y0, x1, y1 float64) {
	if e.Type == "CIRCLE" {
		return e.Center[0] - e.Radius, e.Center[1] - e.Radius, e.Center[0] + e.Radius, e.Center[1] + e.Radius
	}
	x0, y0, x1, y1 = e.Points[0][0], e.Points[0][1], e.Points[0][0], e.Points[0][1]
	for _, p := range e.Points {
		x0, y0, x1, y1 = min(x0, p[0]), min(y0, p[1]), max(x1, p[0]), max(y1, p[1])
	}
	return x0, y0, x1, y1
}

// TestRegisterFinds: the judgment of registration holes sees one that is off by
// 2 micrometers on one face, holes in the middle of the width, at the edge or in a
// cut, one missing, and holes that are drilled again where pins stand.
func TestRegisterFinds(t *testing.T) {
	at := func(layer string, x, y, x2, y2 float64) []entity {
		circle := entity{Layer: layer, Type: "CIRCLE", Closed: true, Center: [2]float64{x, y}, Radius: 3}
		other := circle
		other.Center = [2]float64{x2, y2}
		return []entity{circle, other}
	}
	drawn := []entity{{Layer: "GROOVE_INSIDE_6-00MM", Closed: true, Points: [][3]float64{{-4, 6}, {304, 6}, {304, 12}, {-4, 12}}}}
	both := func(x, y, x2, y2 float64) [2][]entity {
		return [2][]entity{at("BLANK", x, y, x2, y2), at("REGISTER", x, y, x2, y2)}
	}
	good := both(-14, 30, 314, 30)
	if err := checkRegister(good[0], good[1], drawn, 300, 90); err != nil {
		t.Fatal(err)
	}
	for name, holes := range map[string][2][]entity{
		"off":     {at("BLANK", -14+2*micrometer, 30, 314, 30), good[1]},
		"uneven":  both(-14, 30, 315, 30),
		"middle":  both(-14, 45, 314, 45),
		"edge":    both(-2, 30, 302, 30),
		"in cut":  both(-8, 12, 308, 12),
		"missing": {good[0], good[1][:1]},
		"again":   {good[1], good[1]},
	} {
		if checkRegister(holes[0], holes[1], drawn, 300, 90) == nil {
			t.Errorf("%s: not found", name)
		}
	}
}
