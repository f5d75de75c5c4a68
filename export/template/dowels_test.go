package template

import (
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

// dowelHoles are the middles of the holes that dowels of a diameter bear in: they touch the lower or the left edge of
// the part from outside.
func dowelHoles(p Plate, pin float64) (lower, end []geom.Point) {
	for _, l := range p.Made(0).Paths.Openings {
		c, r, round := l.AsCircle()
		if !round || math.Abs(r-pin/2) > 1e-9 {
			continue
		}
		switch {
		case math.Abs(c.Y+r-p.Origin.Y) < 1e-9:
			lower = append(lower, c)
		case math.Abs(c.X+r-p.Origin.X) < 1e-9:
			end = append(end, c)
		}
	}
	return lower, end
}

// TestDowels: a template has holes for two dowels that bear on the part's lower edge and for one that bears on its end,
// or none; it, and of one in pieces each piece, says to put dowels where it has such holes and not where it has
// none: with strips, with what cuts it taking away a whole hole, without room for three. What has neither dowels nor
// strips is not pushed home, but laid by measure.
func TestDowels(t *testing.T) {
	with, without, pieces := 0, 0, [2]int{}
	rapid.Check(t, func(t *rapid.T) {
		s := spec(rapid.SampledFrom([]joinery.Joint{joinery.DadoRabbet, joinery.BoxJoint, joinery.Rabbet}).Draw(t, "joint"))
		s.Width, s.Depth = rapid.Float64Range(150, 900).Draw(t, "w"), rapid.Float64Range(150, 700).Draw(t, "d")
		s.Height = rapid.Float64Range(60, 300).Draw(t, "h")
		o := options()
		o.Bed = geom.Point{X: rapid.Float64Range(150, 1000).Draw(t, "bed"), Y: rapid.Float64Range(150, 600).Draw(t, "bed")}
		o.Pin, o.Dowel = rapid.Float64Range(2, 12).Draw(t, "pin"), rapid.SampledFrom([]string{"5 mm (0.197 in)", "1/4 in"}).Draw(t, "sold as")
		o.MinBridge = rapid.SampledFrom([]float64{0, 0.18, 3.175, 6}).Draw(t, "kerf")
		o.Register = rapid.SampledFrom([]Register{Pins, Pins, Lip}).Draw(t, "register")
		o.Unit = rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		panels := built(s)
		if rapid.Bool().Draw(t, "of short parts") {
			long := rapid.Float64Range(6, 40).Draw(t, "long")
			hole := geom.Circle(geom.Point{X: long / 2, Y: 30}, 1)
			panels = []Panel{{Name: "short", Panel: geom.Panel{Outline: geom.Rectangle(0, 0, long, 60), Thickness: 12, Holes: []geom.Loop{hole}}, Stop: "front end"}}
		}
		plates, _ := Panels(panels, o)
		for _, p := range plates {
			lower, end := dowelHoles(p, o.Pin)
			text := strings.Join(p.Notes, " ")
			dowels := strings.Contains(text, "dowel")
			switch {
			case len(lower) == 2 && len(end) == 1:
				with++
			case len(lower)+len(end) == 0:
				without++
			default:
				t.Fatalf("%s: holes for %d dowels below and %d at the end", p.Name, len(lower), len(end))
			}
			if dowels != (len(lower) > 0) || dowels && !strings.Contains(text, "dowel of "+o.Dowel) {
				t.Fatalf("%s: %d holes: %s", p.Name, len(lower)+len(end), text)
			}
			if dowels && o.Pin <= o.MinBridge {
				t.Fatalf("%s: a hole of %g for what takes away %g", p.Name, o.Pin, o.MinBridge)
			}
			stopped, strip := dowels || o.Register == Lip, strings.Contains(p.Name, "-lip-")
			if !strip && strings.Contains(text, "push it home") != stopped {
				t.Fatalf("%s: nothing stops it: %s", p.Name, text)
			}
			far := p.Outline.Bounds().Max.Sub(geom.Point{X: overhang, Y: overhang}) // the part's
			for _, c := range lower {
				if c.X < p.Origin.X || c.X > far.X {
					t.Fatalf("%s: a dowel at %v is beside the part", p.Name, c)
				}
			}
			for _, c := range end {
				if c.Y < p.Origin.Y || c.Y > far.Y {
					t.Fatalf("%s: a dowel at %v is beside the part", p.Name, c)
				}
			}
			for _, q := range p.Split() {
				lower, end := dowelHoles(q, o.Pin)
				said, holes := strings.Contains(strings.Join(q.Notes, " "), "dowel"), len(lower)+len(end)
				if said != (holes > 0) {
					t.Fatalf("%s: %d holes: %v", q.Name, holes, q.Notes)
				}
				if q.Name != p.Name && dowels {
					pieces[min(holes, 1)]++
				}
			}
		}
	})
	if with == 0 || without == 0 || pieces[0] == 0 || pieces[1] == 0 {
		t.Errorf("%d templates with dowels, %d without; of pieces %d without and %d with", with, without, pieces[0],
			pieces[1])
	}
}
