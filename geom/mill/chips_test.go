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
	bit := Bit{Diameter: 6, Feeds: Feeds{Feed: 3000, Plunge: 1000, PassDepth: 5}}
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
		// Of a slot that is drawn SlotRoom wider too: area 900 x 6.05 over 2 x 5445 / 1812.1 = 6.01 mm.
		{"long slot", Cut{Operation: Slotting, Outline: geom.Rectangle(0, 0, 900, 6.05)}, 5,
			5445/(2*5445/1812.1)/3000 + 5.0/1000},
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

// TestCompressionBitFrays: the first pass has to go deeper than the up-cut tip, or this
// cuts the edge by itself, of a dado 6 deep as of an outline 12 deep.
func TestCompressionBitFrays(t *testing.T) {
	dadoed := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12,
		Pockets: []geom.Pocket{{Kind: geom.Dado, Face: geom.Inside, Depth: 6, Outline: geom.Rectangle(50, 0, 57, 200)}}}
	plain := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12}
	for _, c := range []struct {
		name      string
		panel     geom.Panel
		tip, pass float64
		want      string // of the message, empty for no warning
	}{
		{"no tip said", dadoed, 0, 0, ""},
		{"deeper than the tip", dadoed, 5, 0, ""},
		{"as deep", dadoed, 6, 0, ""},
		{"shallower", dadoed, 6.1, 0, "the dado on the inside face is 6 mm deep"},
		{"passes of the tip", dadoed, 5, 5, ""},
		{"passes shallower than the tip", dadoed, 5, 4, "the first pass of the dado on the inside face, 6 mm deep, goes down 4 mm"},
		{"an outline in shallow passes", plain, 5, 4, "the first pass of the outline, 12 mm deep, goes down 4 mm"},
		{"an outline in one pass", plain, 5, 0, ""},
		{"a board thinner than the tip", plain, 12.5, 0, "the outline is 12 mm deep"},
	} {
		feeds := Feeds{Type: Compression, Tip: c.tip, PassDepth: c.pass}
		s := Settings{Bits: []Bit{{Name: "comp", Diameter: 6, Feeds: feeds}}, Overcut: 1, SmallPart: 100}
		_, faults := Prepare(Part{Panel: c.panel, MinThickness: 12, MaxThickness: 12}, s)
		said := ""
		for _, f := range faults {
			if f.Code == "bit-frays" {
				said = f.Fact.In(geom.Millimeter)
			}
		}
		if (said != "") != (c.want != "") || !strings.HasPrefix(said, c.want) {
			t.Errorf("%s: %q, want %q", c.name, said, c.want)
		}
	}
}

// TestSpoilboardAllowance: a bit must reach through the thickest board and as far into
// the spoilboard as cuts go on.
func TestSpoilboardAllowance(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 400, 200), Thickness: 12, Holes: []geom.Loop{geom.Circle(geom.Point{X: 100, Y: 100}, 20)}}
	for through, want := range map[float64]bool{0: false, 0.7: false, 0.8: true} {
		s := Settings{Bits: []Bit{{Name: "six", Diameter: 6, Reach: 13}}, SmallPart: 100, IntoSpoilboard: through}
		_, faults := Prepare(Part{Panel: panel, MinThickness: 11.7, MaxThickness: 12.3}, s)
		if short := len(faults) > 0; short != want {
			t.Errorf("%v into the spoilboard: %v, want too short a bit: %t", through, faults, want)
		}
	}
}
