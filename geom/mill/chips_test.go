package mill

import (
	"math"
	"strings"
	"testing"

	"drawerwright/geom"
)

// TestChipLoad: a bit of 2 edges at 18,000 turns and 4,320 mm a minute goes on by
// 4320 / (18000 x 2) = 0.12 mm for each edge, the formula of tool makers' tables
// (feed per tooth), from memory.
func TestChipLoad(t *testing.T) {
	if got := (Bit{Flutes: 2, Feeds: Feeds{Feed: 4320, Speed: 18000}}).ChipLoad(); math.Abs(got-0.12) > 1e-12 {
		t.Errorf("chip load %v, want 0.12", got)
	}
	if got := (Bit{Feeds: Feeds{Feed: 4320, Speed: 18000}}).ChipLoad(); got != 0 {
		t.Errorf("chip load %v of a bit whose edges are not known", got)
	}
}

// TestMinutes holds the estimate against closed forms.
func TestMinutes(t *testing.T) {
	bit := Bit{Diameter: 6, Feeds: Feeds{Feed: 3000, Plunge: 1000, Pass: 5}}
	for _, c := range []struct {
		name  string
		cut   Cut
		depth float64
		want  float64
	}{
		// Outside a square of 100 mm the bit's middle goes 400 mm and one circle of 6 mm;
		// 12 mm take 3 passes of at most 5.
		{"profile", Cut{Operation: Profile, Outline: geom.Rectangle(0, 0, 100, 100)}, 12, 3*(400+6*math.Pi)/3000 + 12.0/1000},
		// A slot as wide as the bit, 300 mm long: area 1800, over the diameter 300 mm, once.
		{"slot", Cut{Operation: "dado", Outline: geom.Rectangle(0, 0, 300, 6)}, 5, 300.0/3000 + 5.0/1000},
		{"line", Cut{Operation: "dado", Path: []geom.Vertex{{Point: geom.Point{X: 3}}, {Point: geom.Point{X: 297}}}}, 5, 294.0/3000 + 5.0/1000},
		// 300 x 15 is 2 x 4500 / 630 = 14.2857 mm wide: 1 + ceil(8.2857 / 3) = 4 times 4500 / 14.2857 = 315.
		{"pocket", Cut{Operation: "rabbet", Outline: geom.Rectangle(0, 0, 300, 15)}, 6, 2*4*315.0/3000 + 6.0/1000},
	} {
		if got := c.cut.Minutes(bit, c.depth); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v minutes, want %v", c.name, got, c.want)
		}
		if got := c.cut.Minutes(Bit{Diameter: 6}, c.depth); got != 0 {
			t.Errorf("%s: %v minutes without a feed", c.name, got)
		}
	}
}

// TestCompressionBitFrays: what is shallower than the up-cut tip is cut by it alone.
func TestCompressionBitFrays(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12,
		Pockets: []geom.Pocket{{Kind: geom.Dado, Face: geom.Inside, Depth: 6, Outline: geom.Rectangle(50, 0, 57, 200)}}}
	for tip, want := range map[float64]bool{5: false, 6: false, 6.1: true, 0: false} {
		s := Settings{Bits: []Bit{{Name: "comp", Diameter: 6, Feeds: Feeds{Type: Compression, Tip: tip}}}, OverRun: 1, SmallPart: 100}
		_, faults := Prepare(Part{Panel: panel, Least: 12, Most: 12}, s)
		found := false
		for _, f := range faults {
			found = found || f.Code == "bit-frays" && strings.Contains(f.Message, "tip")
		}
		if found != want {
			t.Errorf("a tip of %v mm: %v, want a warning: %t", tip, faults, want)
		}
	}
}

// TestSpoilboardAllowance: a bit must reach through the thickest board and as far into
// the spoilboard as cuts go on.
func TestSpoilboardAllowance(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12, Holes: []geom.Loop{geom.Circle(geom.Point{X: 100, Y: 100}, 20)}}
	for through, want := range map[float64]bool{0: false, 0.7: false, 0.8: true} {
		s := Settings{Bits: []Bit{{Name: "six", Diameter: 6, Reach: 13}}, SmallPart: 100, Through: through}
		_, faults := Prepare(Part{Panel: panel, Least: 11.7, Most: 12.3}, s)
		if short := len(faults) > 0; short != want {
			t.Errorf("%v into the spoilboard: %v, want too short a bit: %t", through, faults, want)
		}
	}
}
