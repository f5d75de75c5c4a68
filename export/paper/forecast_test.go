package paper

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"drawerwright/export/drawing"
	"drawerwright/geom"

	"pgregory.net/rapid"
)

// readForecast reads lengths off a drawing, by the numbers along its axis.
type readForecast struct {
	at    func(x float64) float64 // the length at a place
	exact float64                 // by how much a length that is read may be off, in mm
	d     drawing.Drawing
}

func read(t failer, f Forecast) readForecast {
	t.Helper()
	d := f.Draw()
	var places, lengths []float64
	for _, w := range d.Texts {
		if w.Role == RoleNumber {
			v, err := strconv.ParseFloat(w.String, 64)
			if err != nil {
				t.Fatalf("%v has the number %q", f, w.String)
			}
			places, lengths = append(places, w.At.X), append(lengths, v*f.Unit.MM())
		}
	}
	n := len(places) - 1
	if n < 1 {
		t.Fatalf("%v has %d numbers", f, n+1)
	}
	scale := (lengths[n] - lengths[0]) / (places[n] - places[0])
	at := func(x float64) float64 { return lengths[0] + (x-places[0])*scale }
	return readForecast{at, 1e-9*math.Abs(lengths[n]) + 1e-6*scale, d}
}

// spans are the lengths that the shapes of a role cover, in the order in which they are drawn.
func (r readForecast) spans(role string) (list []geom.Interval) {
	for _, s := range r.d.Shapes {
		if s.Role == role {
			b := geom.Loop(s.Paths[0]).Bounds()
			list = append(list, geom.Interval{Min: r.at(b.Min.X), Max: r.at(b.Max.X)})
		}
	}
	return list
}

// failer is what tests and properties have in common.
type failer interface {
	Helper()
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// rightlyDrawn reads a drawing of a forecast and compares every shape with its length.
func rightlyDrawn(t failer, f Forecast) {
	t.Helper()
	r := read(t, f)
	same := func(what string, got, want geom.Interval) {
		t.Helper()
		if math.Abs(got.Min-want.Min) > r.exact || math.Abs(got.Max-want.Max) > r.exact {
			t.Errorf("%s of %v is drawn from %.9g to %.9g", what, f, got.Min, got.Max)
		}
	}
	band, worst := r.spans(RoleRight), r.spans(RoleWorst)
	same("right", band[0], f.Right)
	same("worst", worst[0], f.Worst)
	same("an end of the worst", worst[1], geom.Interval{Min: f.Worst.Min, Max: f.Worst.Min})
	same("an end of the worst", worst[2], geom.Interval{Min: f.Worst.Max, Max: f.Worst.Max})
	same("an end of right", r.spans(RoleLimit)[0], geom.Interval{Min: f.Right.Min, Max: f.Right.Min})
	same("an end of right", r.spans(RoleLimit)[1], geom.Interval{Min: f.Right.Max, Max: f.Right.Max})
	set := r.spans(RoleSet)[0]
	same("as set", geom.Interval{Min: set.Mid(), Max: set.Mid()}, geom.Interval{Min: f.Set, Max: f.Set})
	bars := append(r.spans(RoleLikely), r.spans(RoleWrong)...)
	if len(bars) == 0 {
		t.Fatalf("%v has no bar", f)
	}
	whole := bars[0]
	for _, b := range bars {
		whole.Min, whole.Max = min(whole.Min, b.Min), max(whole.Max, b.Max)
		if b.Min < worst[0].Min-r.exact || b.Max > worst[0].Max+r.exact {
			t.Errorf("the bar of %v is not between the ends of its worst case", f)
		}
	}
	same("likely", whole, f.Likely)
	for _, b := range r.spans(RoleLikely) {
		if b.Min < f.Right.Min-r.exact || b.Max > f.Right.Max+r.exact {
			t.Errorf("%v: what is not right is drawn as right: %v", f, b)
		}
	}
	for _, b := range r.spans(RoleWrong) {
		if inside := b.Intersect(f.Right); inside.Len() > r.exact {
			t.Errorf("%v: what is right is drawn as wrong: %v", f, b)
		}
	}
	apart(t, f, r.d)
	apart(t, f, f.drawn(onPaper))
}

// apart checks that no two texts of a drawing meet, and that all of it is within its edges.
func apart(t failer, f Forecast, d drawing.Drawing) {
	t.Helper()
	sheet := geom.Rect{Max: geom.Point{X: d.Width, Y: d.Height}}.Grow(1e-9)
	for i, w := range d.Texts {
		if !sheet.Contains(w.Box()) {
			t.Errorf("%v: %q leaves the drawing", f, w.String)
		}
		for _, other := range d.Texts[:i] {
			if w.Box().Overlaps(other.Box()) {
				t.Errorf("%v: %q and %q run into each other", f, w.String, other.String)
			}
		}
	}
	for _, s := range d.Shapes {
		if b := geom.Loop(s.Paths[0]).Bounds(); !sheet.Contains(b) {
			t.Errorf("%v: %s leaves the drawing: %v", f, s.Role, b)
		}
	}
}

// TestForecasts: what stands on a drawing of a forecast is the forecast, for every way in which
// bar, whiskers and band can lie.
func TestForecasts(t *testing.T) {
	in := func(a, b float64) geom.Interval { return geom.Interval{Min: a, Max: b} }
	for _, f := range []Forecast{
		{0.25, in(0.1, 0.4), in(0.19, 0.31), in(0.14, 0.36), "tight", "loose", geom.Millimeter}, // all within
		{500, in(499.5, 500.5), in(499.73, 500.37), in(499.7, 500.69), "shallow", "deep", geom.Millimeter},
		{0.25, in(0.1, 0.4), in(-0.2, 0.6), in(-0.4, 0.9), "proud", "recessed", geom.Millimeter},                 // wrong both ways
		{0.58, in(0.1, 0.4), in(0.55, 0.61), in(0.5, 0.9), "proud", "recessed", geom.Millimeter},                 // all wrong
		{0, in(-0.25, 0.25), in(0, 0), in(0, 0), "proud", "recessed", geom.Millimeter},                           // nothing is off
		{3, in(3, 3), in(3, 3), in(3, 3), "tight", "loose", geom.Inch},                                           // one length alone
		{0.1, in(0.1, 0.1), in(0.05, 0.2), in(-20, 30), "tight", "loose", geom.Millimeter},                       // far out
		{355.6762, in(355.1, 356.1), in(355.3, 356), in(355.2, 357), "short", "long", geom.Inch},                 // inches
		{99999.5, in(99999, 100000), in(99999.4, 99999.6), in(99999, 100000), "narrow", "wide", geom.Millimeter}, // long numbers
	} {
		rightlyDrawn(t, f)
	}
}

// TestAnyForecast draws random ones.
func TestAnyForecast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		length := func(least, most float64, name string) float64 {
			return math.Round(rapid.Float64Range(least, most).Draw(t, name)*1e4) / 1e4
		}
		f := Forecast{Unit: unit, Set: length(-2, 3000, "set"), Below: "shallow", Above: "recessed"}
		about := func(most float64, name string) geom.Interval {
			off := length(-most, most, name+" off")
			return geom.Interval{Min: f.Set + off, Max: f.Set + off + length(0, most, name)}
		}
		f.Right, f.Worst = about(3, "right"), about(5, "worst")
		from, to := length(0, 0.5, "from"), length(0, 0.5, "to")
		f.Likely = geom.Interval{Min: f.Worst.Min + f.Worst.Len()*from, Max: f.Worst.Max - f.Worst.Len()*to}
		rightlyDrawn(t, f)
	})
}

// TestBandsStandInOneLine: whatever a measure is, the band of what is right is in one place, where
// nothing leaves it far.
func TestBandsStandInOneLine(t *testing.T) {
	var first string
	for _, set := range []float64{0.25, 500, 2} {
		f := Forecast{Set: set, Right: geom.Interval{Min: set - 0.3, Max: set + 0.3}, Unit: geom.Millimeter}
		f.Likely, f.Worst = f.Right, f.Right
		for _, s := range f.Draw().Shapes {
			if s.Role != RoleRight {
				continue
			}
			b := geom.Loop(s.Paths[0]).Bounds()
			if at := fmt.Sprintf("%.6f to %.6f", b.Min.X, b.Max.X); first == "" {
				first = at
			} else if at != first {
				t.Errorf("one band is at %s, another at %s", first, at)
			}
		}
	}
}

// TestForecastSigns: each sign that forecasts have is among those that are named, and each stays within
// its drawing.
func TestForecastSigns(t *testing.T) {
	has := make(map[string]bool)
	for _, sign := range ForecastSigns() {
		apart(t, Forecast{Below: sign.Word}, sign.Drawing)
		for _, s := range sign.Shapes {
			has[s.Role] = true
		}
	}
	for _, r := range []string{RoleRight, RoleLimit, RoleLikely, RoleWrong, RoleHatch, RoleWorst, RoleSet} {
		if !has[r] {
			t.Errorf("no sign is a %s", r)
		}
	}
}
