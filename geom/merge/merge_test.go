package merge

import (
	"reflect"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

func part(stock string, fence, length float64, pockets ...geom.Pocket) Part {
	return Part{Stock: stock, Setting: joinery.Setup{Cutter: joinery.Cutter{Kind: joinery.Saw}, FenceDistance: fence},
		Panel: geom.Panel{Outline: geom.Rectangle(0, 0, length, 100), Thickness: 12, Pockets: pockets}}
}

var (
	groove = geom.Pocket{Kind: geom.Groove, Outline: geom.Rectangle(0, 6, 400, 12), Depth: 6}
	dado   = geom.Pocket{Kind: geom.Dado, Outline: geom.Rectangle(6, 0, 12, 100), Depth: 6}
	hole   = geom.Pocket{Kind: geom.Drill, Outline: geom.Circle(geom.Point{X: 200, Y: 50}, 3), Depth: 12}
)

func TestEqualParts(t *testing.T) {
	parts := []Part{part("birch", 6, 400, groove), part("thin", 6, 400), part("birch", 7, 400, groove),
		part("birch", 6, 400, groove), part("birch", 6, 400.000001, groove), part("birch", 6, 400, groove, hole)}
	// birch before thin, fence 6 before 7, and a nanometer is another part.
	want := [][]int{{0, 3}, {4}, {5}, {2}, {1}}
	if got := EqualParts(parts); !reflect.DeepEqual(got, want) {
		t.Errorf("groups %v, want %v", got, want)
	}
	parts[3].Bits = []mill.Bit{{Name: "small", Diameter: 6}}
	if got := EqualParts(parts[:4]); len(got) != 4 {
		t.Errorf("a part with another bit is the same: %v", got)
	}
}

func TestCommonBlanks(t *testing.T) {
	parts := []Part{part("birch", 6, 400, groove, dado), part("birch", 6, 400, dado, hole, groove),
		part("birch", 7, 400, groove, dado), part("birch", 6, 400, groove), part("birch", 6, 401, groove, dado)}
	if got, want := CommonBlanks(parts), [][]int{{0, 1}}; !reflect.DeepEqual(got, want) {
		t.Errorf("blanks %v, want %v", got, want)
	}
	for i := range parts {
		parts[i].Setting.Cutter.Kind = joinery.Router
	}
	if got := CommonBlanks(parts); got != nil {
		t.Errorf("a router has blanks %v", got)
	}
}

func TestFingersAreOfTheBlank(t *testing.T) {
	finger := geom.EdgeCut{Kind: geom.FingerCut, Area: geom.Rectangle(0, 0, 12, 20)}
	a, b := part("birch", 6, 400), part("birch", 6, 400)
	a.Panel.EdgeCuts = []geom.EdgeCut{finger}
	if got := CommonBlanks([]Part{a, b}); got != nil {
		t.Errorf("one has a finger, and they are one blank: %v", got)
	}
	b.Panel.EdgeCuts = []geom.EdgeCut{finger, {Kind: geom.NotchCut, Area: geom.Rectangle(50, 0, 60, 20)}}
	if got := CommonBlanks([]Part{a, b}); len(got) != 1 {
		t.Errorf("a notch makes it another blank: %v", got)
	}
}

func TestLaterOn(t *testing.T) {
	p := part("birch", 6, 400, groove, hole, hole, geom.Pocket{Kind: geom.Cutout},
		geom.Pocket{Kind: geom.Mortise}).Panel
	p.Holes = []geom.Loop{geom.Circle(geom.Point{X: 100, Y: 50}, 5)}
	for _, k := range []geom.EdgeKind{geom.FingerCut, geom.NotchCut, geom.CrossingCut, geom.CrossingCut, geom.PullCut} {
		p.EdgeCuts = append(p.EdgeCuts, geom.EdgeCut{Kind: k})
	}
	want := Later{Holes: 2, Openings: 2, Mortises: 1, Notches: 1, Slots: 2, Pulls: 1}
	if got := LaterOn(p); got != want {
		t.Errorf("later %+v, want %+v", got, want)
	}
}
