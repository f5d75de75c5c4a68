package joinery

import (
	"fmt"
	"math"
	"testing"

	"drawerwright/geom"
)

// seat gives a part as it is cut from a board of a thickness, and stands it where
// the floors of its cuts meet the other parts: where they are in the drawer.
func seat(p Part, thickness float64, fromSpoilboard bool) []piece {
	off := thickness - p.Panel.Thickness
	p.Panel.Thickness = thickness
	pockets := p.Panel.Pockets
	p.Panel.Pockets = nil
	deeper := 0.0
	if fromSpoilboard {
		deeper = off
	}
	for _, k := range pockets {
		k.Depth += deeper
		p.Panel.Pockets = append(p.Panel.Pockets, k)
	}
	var list []piece
	for _, s := range p.Placements { // the floor is at thickness - depth from the origin
		s.Origin = s.Origin.Add(s.Normal().Scale(deeper - off))
		list = append(list, piece{p, s})
	}
	return list
}

// TestLapsOfRealBoards puts boxes together from the thinnest, middle and thickest
// boards. No two parts fill the same space, and what the checks say of laps, width
// and depth is what the parts measure.
func TestLapsOfRealBoards(t *testing.T) {
	for name, c := range map[string]struct {
		change     func(*Spec)
		spoilboard bool
		room       float64 // that the sides' rabbets are longer than h: what a front or back is over its mean
		// With sides of 11.8 to 12.3, a front of 9.9 to 10.2 and a back of 13.7 to 14.1,
		// the means in the middle of three readings.
		lap, width, depth [2]float64
	}{
		"saw": {func(*Spec) {}, false, 0,
			[2]float64{-0.3, 0.2}, [2]float64{460, 460.6}, [2]float64{500 - 0.1 - 0.3, 500 + 0.2 + 0.1}},
		"router from the top": {routed, false, 0,
			[2]float64{-0.3, 0.2}, [2]float64{460, 460.6}, [2]float64{500 - 0.1 - 0.3, 500 + 0.2 + 0.1}},
		"router from the spoilboard": {func(s *Spec) { routed(s); s.DepthFrom = FromSpoilboard }, true, 0.2,
			[2]float64{0, 0}, [2]float64{460, 460}, [2]float64{500, 500}},
	} {
		for _, exchanged := range []bool{false, true} {
			t.Run(fmt.Sprint(name, ", exchanged ", exchanged), func(t *testing.T) {
				s := doubled(c.change)
				reads := func(name string, mean, min, max float64) Stock {
					return Stock{Name: name, Thickness: Thickness{mean, min, max}, Grain: GrainNone}
				}
				s.Sides, s.Front, s.Back = reads("s", 12, 11.8, 12.3), reads("f", 10, 9.9,
					10.2), reads("k", 14, 13.7, 14.1)
				s.FenceDistance = 5
				if exchanged {
					s.Front, s.Back = s.Back, s.Front
				}
				d := mustBuild(t, s)
				near(t, "rabbet", d.part(Side).Panel.Pockets[0].Outline.Bounds().Max.X, 6+c.room)
				laps, widths, depths := putTogether(t, d, c.spoilboard)
				for _, k := range []struct {
					code     CheckCode
					want     [2]float64
					measured *extremes
				}{{"lap", c.lap, laps}, {"outside-width", c.width, widths}, {"outside-depth", c.depth, depths}} {
					near(t, "least "+string(k.code), d.fit(k.code).Min, k.want[0])
					near(t, "most "+string(k.code), d.fit(k.code).Max, k.want[1])
					near(t, "least "+string(k.code)+" as measured", k.measured.min, k.want[0])
					near(t, "most "+string(k.code)+" as measured", k.measured.max, k.want[1])
				}
			})
		}
	}
}

// putTogether makes a drawer of every mix of the thinnest, middle and thickest
// boards, and measures its laps, widths and depths.
func putTogether(t *testing.T, d Drawer, spoilboard bool) (laps, widths, depths *extremes) {
	laps, widths, depths = ranging(), ranging(), ranging()
	of := func(t Thickness) []float64 { return []float64{t.Min, t.Mean, t.Max} }
	for _, ts := range of(d.Spec.Sides.Thickness) {
		for _, tf := range of(d.Spec.Front.Thickness) {
			for _, tk := range of(d.Spec.Back.Thickness) {
				pieces := seat(d.part(Side), ts, spoilboard)
				pieces = append(pieces, seat(d.part(Front), tf, spoilboard)...)
				pieces = append(pieces, seat(d.part(Back), tk, spoilboard)...)
				pieces = append(pieces, seat(d.part(Bottom), d.Spec.Bottom.Thickness.Mean, spoilboard)...)
				for i, a := range pieces {
					for _, b := range pieces[i+1:] {
						if at, deep := overlap(a, b); deep {
							t.Fatalf("sides %g, front %g, back %g: %s and %s both fill %v", ts, tf, tk,
								a.Role, b.Role, at)
						}
					}
				}
				low, high := extent(pieces)
				laps.add(pieces[0].stand.Origin.X) // of the left side's outside face
				widths.add(high.X - low.X)
				depths.add(high.Y - low.Y)
			}
		}
	}
	return laps, widths, depths
}

type extremes struct{ min, max float64 }

func ranging() *extremes { return &extremes{math.Inf(1), math.Inf(-1)} }

func (e *extremes) add(v float64) { e.min, e.max = math.Min(e.min, v), math.Max(e.max, v) }

// extent is the box about all wood of the pieces.
func extent(pieces []piece) (low, high geom.Vec3) {
	x, y, z := ranging(), ranging(), ranging()
	for _, p := range pieces {
		for _, b := range p.solidBoxes() {
			for _, v := range b {
				x.add(v.X)
				y.add(v.Y)
				z.add(v.Z)
			}
		}
	}
	return geom.Vec3{X: x.min, Y: y.min, Z: z.min}, geom.Vec3{X: x.max, Y: y.max, Z: z.max}
}

// TestLapVerdicts: proud and recessed, shallow and deep, from the further end; a
// front and a back of different stocks each have a lap.
func TestLapVerdicts(t *testing.T) {
	reads := func(min, max float64) Stock { return Stock{Name: "uneven", Thickness: Thickness{12, min, max}} }
	for _, c := range []struct {
		change func(*Spec)
		code   CheckCode
		want   Verdict
	}{
		{func(s *Spec) { s.Sides = reads(11.9, 12.25) }, "lap", IsFlush},
		{func(s *Spec) { s.Sides = reads(11.9, 12.26) }, "lap", Proud},
		{func(s *Spec) { s.Sides = reads(11.74, 12.1) }, "lap", Recessed},
		{func(s *Spec) { s.Sides = reads(11, 12.4) }, "outside-width", AsAsked}, // thin sides stand back
		{func(s *Spec) { s.Sides = reads(11.9, 12.41) }, "outside-width", Wide},
		{func(s *Spec) { s.Front, s.Back = reads(11.75, 12.25), reads(11.75, 12.25) }, "outside-depth", AsAsked},
		{func(s *Spec) { s.Front, s.Back = reads(11.74, 12), reads(11.75, 12) }, "outside-depth", Shallow},
		{func(s *Spec) { s.Front, s.Back = reads(12, 12.25), reads(12, 12.26) }, "outside-depth", Deep},
	} {
		d, problems := Build(doubled(c.change))
		if got := d.fit(c.code); got.Verdict != c.want {
			t.Errorf("%+v, want %s: %+v", got, c.want, problems)
		}
		// A router that measures from the spoilboard leaves the outside as computed.
		d, problems = Build(doubled(func(s *Spec) { routed(s); c.change(s); s.DepthFrom = FromSpoilboard }))
		if got := d.fit(c.code); got.Min != got.Max || len(problems) != 0 {
			t.Errorf("from the spoilboard %+v: %+v", got, problems)
		}
	}
	d, problems := Build(doubled(func(s *Spec) { s.Sides, s.Back = reads(11.7, 12), sheet("other", 12) }))
	laps := 0
	for _, c := range d.Fit {
		if c.Code == "lap" {
			laps++
		}
	}
	if laps != 2 || len(problems) != 0 {
		t.Errorf("%d laps, %+v", laps, problems)
	}
}
