package paper

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/export/drawing"
	"drawerwright/geom"
)

// hundredths are numbers as a shop reads them.
func hundredths(mm float64) string { return strconv.FormatFloat(mm, 'f', 2, 64) }

// nearFence is a distance that no board is broken for, with the widest words and cutter that there are, in mm.
const nearFence = 75

// anyCut is a cut of any hold, its fence as far as boards are long.
func anyCut(t *rapid.T) Cut {
	draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	c := Cut{Hold: rapid.SampledFrom([]Hold{Flat, AtEnd, OnEnd, OnJig}).Draw(t, "hold"), Cutter: draw("cutter", 1, 30),
		Thickness: draw("thickness", 5, 35)}
	c.Height = draw("height", 1, c.Thickness)
	switch c.Hold {
	case Flat:
		far := rapid.SampledFrom([][2]float64{{0, brokenFace}, {brokenFace, nearFence}, {nearFence, 2000}}).Draw(t, "far")
		c.Fence = draw("fence", far[0], far[1])
		c.End = rapid.SampledFrom([]string{"", "FRONT end"}).Draw(t, "end")
	case AtEnd:
		c.Fence = -draw("buried", 0, c.Cutter)
	case OnEnd:
		c.Fence = draw("fence", 0, c.Thickness)
		return c
	case OnJig:
		return c
	}
	for range rapid.IntRange(0, 15).Draw(t, "passes") {
		c.Then = append(c.Then, draw("then", 0, 2000))
	}
	if c.Touching = c.Hold == AtEnd && len(c.Then) > 0; c.Touching {
		c.Fence = 0
	}
	return c
}

// TestOperatorFits: the picture of any cut is no wider than its room, nothing leaves it, no word touches another, and
// every distance of the fence stands whole in a line. Where the fence is drawn nearer than it is, it says so.
func TestOperatorFits(t *testing.T) {
	const room = 180
	broken, whole, several := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := anyCut(t)
		d := Operator(c, hundredths, room)
		if d.Width > room+1e-9 {
			t.Fatalf("%g mm wide", d.Width)
		}
		sheet := geom.Rect{Max: geom.Point{X: d.Width, Y: d.Height}}.Grow(drawing.Thick.Width / 2)
		said, far := "", -1.0 // how far the fence is drawn from the cutter
		for i, w := range d.Texts {
			box := w.Box()
			if !sheet.Contains(box) {
				t.Fatalf("%q leaves the picture: %v", w.String, box)
			}
			for _, other := range d.Texts[:i] {
				if box.Grow(-0.5).Overlaps(other.Box()) {
					t.Fatalf("%q runs into %q", w.String, other.String)
				}
			}
			said += w.String + "\n"
		}
		for _, s := range d.Shapes {
			for _, p := range s.Paths {
				if box := geom.Loop(p).Flatten(chord).Bounds(); !sheet.Contains(box) {
					t.Fatalf("a line leaves the picture: %v", box)
				}
			}
			if s.Fill == fenceInk {
				far = s.Paths[0][0].X - cutterOf(d).Max.X
			}
		}
		if c.Hold == Flat {
			if is := far > c.Fence-1e-9 && far < c.Fence+1e-9; is == strings.Contains(said, shorter) {
				t.Fatalf("the fence is %g mm from the cutter, drawn at %g: %q", c.Fence, far, said)
			} else if is {
				whole++
			} else if broken++; c.Fence < nearFence {
				t.Fatalf("the board is broken though the fence is only %g mm from the cutter", c.Fence)
			}
		}
		for _, at := range c.Then {
			if !strings.Contains(said, "then "+hundredths(at)) {
				t.Fatalf("%q does not say that the fence comes to %g", said, at)
			}
		}
		if strings.Count(said, "\n") > 5 {
			several++
		}
	})
	if broken == 0 || whole == 0 || several == 0 {
		t.Errorf("%d boards are broken, %d are not; %d lists take several lines", broken, whole, several)
	}
}

// cutterOf is where the cutter of a picture is.
func cutterOf(d drawing.Drawing) geom.Rect {
	for _, s := range d.Shapes {
		if s.Fill == steel {
			return geom.Loop(s.Paths[0]).Bounds()
		}
	}
	return geom.Rect{}
}
