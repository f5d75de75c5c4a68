package packet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom/joinery"
)

// TestBackStandsOnTheBottom: a back under which the bottom is slid in gets its height from the bottom before the glue
// takes, and the bottom goes in as far as its holes ask for; other boxes say neither.
func TestBackStandsOnTheBottom(t *testing.T) {
	for _, fit := range []joinery.BottomFit{joinery.BottomSlideIn, joinery.BottomGroovedIn, joinery.BottomApplied} {
		instead := fmt.Sprintf("joinery: {bottom-fit: %s}, sides: ply", fit)
		b := read(t, "", []byte(strings.Replace(string(many(1)), "sides: ply", instead, 1)))
		d := b.Drawers[0]
		slid := fit == joinery.BottomSlideIn
		if slices.Contains(whenSet(d), backOnBottom) != slid {
			t.Errorf("%s: %v", fit, whenSet(d))
		}
		d.Spec.Bottom.Solid = false
		for range 2 {
			if strings.Contains(bottomIn(b, d.Spec), present.SlideInLevel) != slid {
				t.Errorf("%s: %s", fit, bottomIn(b, d.Spec))
			}
			d.Spec.Bottom.Solid = true
		}
	}
}

// TestHeldBackIsPlaned: a back that dowels or tenons hold cannot be pressed down on the bottom.
func TestHeldBackIsPlaned(t *testing.T) {
	for held, pressed := range map[joinery.Fastener]bool{joinery.Screws: true, joinery.Dowels: false,
		joinery.Tenons: false} {
		butt := fmt.Sprintf("joint: butt, fasteners: %s, joinery: {bottom-fit: slide-in}", held)
		d := read(t, "", []byte(strings.Replace(string(many(1)), "joint: dado-rabbet", butt, 1))).Drawers[0]
		list := whenSet(d)
		if slices.Contains(list, backOnBottom) != pressed || strings.Contains(list[0], string(held)) == pressed {
			t.Errorf("%s: %v", held, list)
		}
	}
}

// TestNibsArePared: where the bottom's groove is as deep as tongues are thick, or nearly so, the dry fit says what is
// done about what stays of the tongues; where much stays, and where there are no tongues, it does not.
func TestNibsArePared(t *testing.T) {
	b := read(t, "", many(1))
	d := b.Drawers[0]
	for _, c := range []struct {
		joint   joinery.Joint
		thinner float64 // the groove's floor from the tongue's other face
		said    bool
	}{{joinery.DadoRabbet, 0, true}, {joinery.DadoRabbet, 0.4, true}, {joinery.DadoRabbet, 1, false},
		{joinery.Rabbet, 0, false}} {
		d.Spec.Joint, d.Spec.BottomFit = c.joint, joinery.BottomGroovedIn
		d.Setup.FenceDistance, d.Setup.CutterHeight = 6, 6-c.thinner
		if said := strings.Contains(strings.Join(beforeGlue(d), " "), throughTongues); said != c.said {
			t.Errorf("%s, %g: said %t", c.joint, c.thinner, said)
		}
	}
}

// TestSlidesSayTheirHoles: the words of the slides have every hole, the place of the front ends, for slides of which
// height spacers are, and of wooden runners that boxes need a stop.
func TestSlidesSayTheirHoles(t *testing.T) {
	for slide, stop := range map[string]bool{"side-mount": false, "wooden-runner": true} {
		text := strings.Replace(fmt.Sprintf(inOpening, "none", ""), "side-mount", slide, 1)
		m, _ := chapterOf(t, text, func(maker) {})
		c := m.report.Cabinets[0]
		bank := m.bankOf(c)
		said := strings.Join(m.mounting(bank, c), "\n")
		want := fmt.Sprintf("then every %g.00 mm, %d holes", bank.Plan.Slide.HolePitch, len(bank.Side.Holes)/3)
		if !strings.Contains(said, want) || !strings.Contains(said, "front ends of the slides are level with") {
			t.Errorf("%s: %q is not in\n%s", slide, want, said)
		}
		if strings.Contains(said, "Fix a stop") != stop {
			t.Errorf("%s: a stop is said: %t\n%s", slide, !stop, said)
		}
		want = fmt.Sprintf("slides %g.00 mm high", bank.Plan.Slide.Height)
		if high := m.assumedHigh([]record.Cabinet{c}); !strings.Contains(high, want) {
			t.Error(high)
		}
	}
}

// TestSheetsSayTheirGrain: the order of a sheet's two numbers tells nobody how its grain runs: the cut list says it,
// but of a square sheet.
func TestSheetsSayTheirGrain(t *testing.T) {
	for sheet, want := range map[string]string{"1220 x 2440": "grain along the 1220",
		"2440 x 1220": "grain along the 2440", "1525 x 1525": ""} {
		text := strings.Replace(fmt.Sprintf(inOpening, "none", ""), "grain: length}",
			"grain: length, sheet: "+sheet+"}", 1)
		_, pages := chapterOf(t, text, maker.cutList)
		said := ""
		for _, p := range pages {
			for _, w := range p.Texts {
				said += w.String + "\n"
			}
		}
		if !strings.Contains(said, want) || want == "" && strings.Contains(said, "grain along") {
			t.Errorf("%s: no %q in\n%s", sheet, want, said)
		}
	}
}
