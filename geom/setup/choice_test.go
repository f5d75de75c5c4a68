package setup

import (
	"math"
	"reflect"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

func TestServes(t *testing.T) {
	d := joinery.Setup{Cutter: joinery.Cutter{Width: 6}, FenceDistance: 5.5, CutterHeight: 6}
	for _, c := range []struct {
		setting Setting
		want    bool
	}{{Setting{Cutter: 6, Fence: 5.5, Height: 6}, true}, {Setting{Fence: 5.505, Height: 6}, true},
		{Setting{Cutter: 5, Fence: 5.5, Height: 6}, false},
		{Setting{Cutter: 6, Fence: 5.52, Height: 6}, false}, {Setting{Cutter: 6, Fence: 5.5, Height: 5.98}, false}} {
		if got := c.setting.Serves(d); got != c.want {
			t.Errorf("%+v: %v", c.setting, got)
		}
	}
}

func TestTongued(t *testing.T) {
	thick := joinery.Stock{Name: "thick", Thickness: joinery.Thickness{Mean: 18}}
	for _, c := range []struct {
		spec joinery.Spec
		want int
	}{{joinery.Spec{Joint: joinery.Butt, Back: thick}, 0}, {joinery.Spec{Joint: joinery.DadoRabbet}, 1},
		{joinery.Spec{Joint: joinery.DadoRabbet, Back: thick}, 2},
		{joinery.Spec{Joint: joinery.DadoRabbet, Back: thick, BackJoint: joinery.Housed}, 1}} {
		if got := Tongued(c.spec); len(got) != c.want {
			t.Errorf("%s, back %s: %v", c.spec.Joint, c.spec.Back.Name, got)
		}
	}
}

func TestChoose(t *testing.T) {
	g := Group{Fence: geom.Interval{Min: 5.4, Max: 5.7}, Height: geom.Interval{Min: 5.6, Max: 6.2},
		AtFence: 5.5, AtHeight: 6}
	for _, c := range []struct {
		spacers       []float64
		fence, height float64
		one, found    bool
	}{{[]float64{5.65, 6}, 5.65, 5.65, true, true}, {[]float64{5.5, 6}, 5.5, 6, false, true},
		{[]float64{7}, 7, 7, false, true}, {nil, 0, 0, false, false}} {
		got, found := g.Choose(c.spacers)
		if found != c.found || got.One != c.one || got.Fence.Height != c.fence || got.Height.Height != c.height {
			t.Errorf("%v: %+v, %v", c.spacers, got, found)
		}
	}
	got, found := ChooseFor([]float64{5.5, 6}, 5.8, 6.5)
	if !found || got.Fence.Height != 6 || got.Height.Height != 6 || got.One {
		t.Errorf("%+v, %v", got, found)
	}
	if got, found := ChooseFor([]float64{5.5, 6}, 5.5, 6.6); found {
		t.Errorf("the spacers are 0.6 off: %+v", got)
	}
}

// TestFingerJig: notches of 6.1 and fingers of 5.9; a notch of 14.1 takes 14.1 / 6.1 = 2.3,
// three passes, and the finger beside it counts no more than any other.
func TestFingerJig(t *testing.T) {
	panel := geom.Panel{Outline: geom.Rectangle(0, 0, 300, 60)}
	for _, y := range [][2]float64{{0, 14.1}, {20, 26.1}, {32, 38.1}} {
		panel.EdgeCuts = append(panel.EdgeCuts, geom.EdgeCut{Kind: geom.FingerCut, Area: geom.Rectangle(0, y[0], 12, y[1])},
			geom.EdgeCut{Kind: geom.FingerCut, Area: geom.Rectangle(288, y[0], 300, y[1])})
	}
	panel.EdgeCuts = append(panel.EdgeCuts, geom.EdgeCut{Kind: geom.NotchCut, Area: geom.Rectangle(0, 50, 10, 60)})
	list := Notches(panel)
	want := []geom.Interval{{Min: 0, Max: 14.1}, {Min: 20, Max: 26.1}, {Min: 32, Max: 38.1}}
	if !reflect.DeepEqual(list, want) {
		t.Fatalf("notches %v", list)
	}
	a, b, hand := NotchPasses(list[0], 6.1), NotchPasses(list[1], 6.1), NotchPasses(list[0], 0)
	if a != 3 || b != 1 || hand != 1 {
		t.Errorf("passes %d, %d, by hand %d", a, b, hand)
	}
	if w := FingerWidths([][]geom.Interval{list, list}, 6.1); len(w) != 1 || math.Abs(w[0]-5.9) > 1e-9 {
		t.Errorf("fingers %v, want 5.9", w)
	}
	if _, marked := FirstNotch(list[0], 5.9); !marked {
		t.Error("it begins at the edge, and a jig places it")
	}
	if spacer, marked := FirstNotch(list[1], 5.9); marked || math.Abs(spacer-14.1) > 1e-9 { // 20 - 5.9
		t.Errorf("spacer %g, marked %v", spacer, marked)
	}
	if spacer, marked := FirstNotch(geom.Interval{Min: 5.9, Max: 12}, 5.9); marked || spacer != 0 {
		t.Errorf("at the pin: spacer %g, marked %v", spacer, marked)
	}
}

func TestMetricDrill(t *testing.T) {
	for _, c := range []struct {
		mm, size float64
		metric   bool
	}{{6, 6, true}, {4.5, 4.5, true}, {6.2, 6, false}, {6.35, 6.5, false}, {0.2, 0, false}} {
		if size, metric := MetricDrill(c.mm); metric != c.metric || metric && size != c.size {
			t.Errorf("%g mm: %g, metric %v", c.mm, size, metric)
		}
	}
}

func TestOtherWays(t *testing.T) {
	for k, want := range map[joinery.CutterKind]joinery.CutterKind{joinery.Saw: joinery.RouterTable,
		joinery.RouterTable: joinery.Saw} {
		if got := OtherFenced(k); got != want {
			t.Errorf("%s: %s", k, got)
		}
	}
	var said []string
	for _, mm := range UsualBits(geom.Inch) {
		said = append(said, geom.LengthOf(mm).Text(geom.Inch))
	}
	if want := []string{"1/4 in", "3/16 in", "1/8 in"}; !reflect.DeepEqual(said, want) {
		t.Errorf("bits %v", said)
	}
}
