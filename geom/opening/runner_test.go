package opening

import (
	"fmt"
	"slices"
	"testing"

	"drawerwright/geom"
)

// chest is an opening of 600 x 640 x 450 with inset fronts of 20, three rows on wooden runners, sides of
// solid wood of 16 that swell by 1 % and shrink by 2 %.
func chest(change func(*Bank)) Bank {
	slide, _ := BuiltIn(Wooden, geom.Millimeter)
	front, sides := stock(20), stock(16)
	sides.Solid, sides.Swelling, sides.Shrinkage, sides.Thickening = true, 0.01, 0.02, 0.01
	b := Bank{Opening: Opening{Width: []float64{600}, Height: []float64{640}, Depth: []float64{450}, Fronts: Inset},
		Slide: slide, Rows: make([]Row, 3), Graduation: Equal, FrontGap: 4, Edge: Edges{3, 3, 3, 3}, Sides: sides, Front: &front}
	change(&b)
	return b
}

// TestStrips, by hand. Rows of (640 - 2 x 3 - 2 x 4) / 3 = 208.667; boxes of (208.667 - 5 - 20) / 1.01 =
// 181.848 grow by 1.818 and shrink by 3.637. 450 - 20 - 5 = 425 deep.
func TestStrips(t *testing.T) {
	const row = 626.0 / 3
	const box = (row - 25) / 1.01
	for name, c := range map[string]struct {
		change func(*Bank)
		want   []Strip // of the uppermost drawer
		over   [2]Seasons
	}{
		// Over the uppermost are its 5, what it grows by, and the reveal of 3; over the others the gap of 4.
		"frameless": {func(*Bank) {}, []Strip{{Runner, 0, 425, 25, 20, 0, 20, 637 - row}},
			[2]Seasons{{8 + 0.01*box, 8, 8 + 0.03*box}, {9 + 0.01*box, 9, 9 + 0.03*box}}},
		// Of the 20 the wear strip is 3.
		"wear strip": {func(b *Bank) { b.Slide.WearStrip = 3 },
			[]Strip{{Runner, 0, 425, 25, 17, 0, 20, 637 - row}, {WearStrip, 0, 425, 25, 3, 0, 20, 637 - row + 17}},
			[2]Seasons{{8 + 0.01*box, 8, 8 + 0.03*box}, {9 + 0.01*box, 9, 9 + 0.03*box}}},
		// The guide goes 20 over the box's lower edge; a kicker of its width and the runner's is behind the rail.
		"face frame": {func(b *Bank) { b.Opening.FrameOverhang, b.Opening.FaceFrame = 19, true },
			[]Strip{{Runner, 0, 425, 25, 20, 0, 20, 637 - row}, {Guide, 0, 425, 19, 40, 19, 20, 637 - row},
				{Kicker, 0, 425, 44, 20, 19, 20, 640}},
			[2]Seasons{{8 + 0.01*box, 8, 8 + 0.03*box}, {9 + 0.01*box, 9, 9 + 0.03*box}}},
		// Before overlay fronts the frame is before guide and kicker.
		"before a frame": {func(b *Bank) {
			b.Opening.FrameOverhang, b.Opening.FaceFrame, b.Opening.Fronts, b.Edge = 19, true, Overlay, Edges{0, 0, -3, -3}
		},
			[]Strip{{Runner, 0, 445, 25, 20, 0, 0, 637 - row}, {Guide, 0, 425, 19, 40, 19, 20, 637 - row},
				{Kicker, 0, 425, 44, 20, 19, 20, 640}},
			[2]Seasons{{8 + 0.01*box, 8, 8 + 0.03*box}, {9 + 0.01*box, 9, 9 + 0.03*box}}},
		// Boxes of 150 grow by 1.5, shrink by 3, and are kicked 6.5 over them.
		"low boxes": {func(b *Bank) { b.BoxHeights = []float64{150} },
			[]Strip{{Runner, 0, 425, 25, 20, 0, 20, 637 - row}, {Kicker, 0, 425, 25, 20, 0, 20, 657 - row + 150 + 6.5}},
			[2]Seasons{{6.5, 5, 9.5}, {6.5, 5, 9.5}}},
		// A kicker of 7.9 would split; one of 8 has the reveal of 3 and what the box is lower.
		"too low for a kicker": {func(b *Bank) { b.BoxHeights = []float64{(row - 29.9) / 1.01} },
			[]Strip{{Runner, 0, 425, 25, 20, 0, 20, 637 - row}}, [2]Seasons{}},
		"just high enough": {func(b *Bank) { b.BoxHeights = []float64{(row - 30) / 1.01} },
			[]Strip{{Runner, 0, 425, 25, 20, 0, 20, 637 - row}, {Kicker, 0, 425, 25, 8, 0, 20, 632}}, [2]Seasons{}},
	} {
		p := mustPlan(t, chest(c.change))
		var got []Strip
		for _, s := range p.Strips {
			if s.Row == 0 {
				got = append(got, s)
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %+v", name, got)
			continue
		}
		for i, w := range c.want {
			g := got[i]
			if g.Part != w.Part {
				t.Errorf("%s: %+v", name, g)
			}
			for what, v := range map[string][2]float64{"length": {g.Length, w.Length}, "width": {g.Width, w.Width},
				"height": {g.High, w.High}, "out": {g.Out, w.Out}, "from": {g.From, w.From}, "bottom": {g.Bottom, w.Bottom}} {
				near(t, fmt.Sprintf("%s: %s of the %s", name, what, w.Part), v[0], v[1])
			}
		}
		for i, w := range c.over {
			if g := p.Rows[i].Over; w.Now > 0 {
				near(t, name+": now", g.Now, w.Now)
				near(t, name+": dampest", g.Dampest, w.Dampest)
				near(t, name+": driest", g.Driest, w.Driest)
			}
		}
	}
}

// TestStripsBored: a kicker within the opening has holes on its middle, as many as a runner.
func TestStripsBored(t *testing.T) {
	p := mustPlan(t, chest(func(b *Bank) { b.BoxHeights = []float64{150} }))
	at := make(map[float64]int)
	for _, h := range p.Holes {
		at[h.Y]++
	}
	for _, s := range p.Strips {
		if n := at[s.Line()]; n != 6 { // 37 + 64 k up to 425 - 20
			t.Errorf("%s of row %d: %d holes", s.Part, s.Row, n)
		}
	}
	if len(p.Strips) != 6 || len(p.Holes) != 36 || p.Slide.HoleDiameter() != 3 {
		t.Errorf("%d strips, %d holes of %g", len(p.Strips), len(p.Holes), p.Slide.HoleDiameter())
	}
}

// TestSolidCabinet: sides that move by 3 % of their depth move 1.92 from one hole to the next, 64 apart, and
// shrink by 9, of which 5 are free behind the boxes; sheets do not.
func TestSolidCabinet(t *testing.T) {
	sides := stock(20)
	sides.Solid, sides.Swelling, sides.Shrinkage = true, 0.01, 0.02
	p, found := Solve(chest(func(b *Bank) { b.Opening.Sides = &sides }))
	if len(p.Slots) != 6 || len(found) != 1 || found[0].Code != "cabinet-shrinks" {
		t.Fatalf("%v, %+v", p.Slots, found)
	}
	near(t, "front", p.Slots[0], 0)
	near(t, "next", p.Slots[1], 1.92)
	near(t, "rear", p.Slots[5], 9.6)
	near(t, "free behind", float64(found[0].Measured.(geom.Millimeters)), 5)
	sides.Solid = false
	if p, found := Solve(chest(func(b *Bank) { b.Opening.Sides = &sides })); len(p.Slots) > 0 || len(found) > 0 {
		t.Errorf("of sheets: %v, %+v", p.Slots, found)
	}
	sides.Solid = true
	_, found = Solve(chest(func(b *Bank) { b.Opening.Sides, b.Opening.ClearanceBehind = &sides, 4 }))
	if len(found) > 0 {
		t.Errorf("with 4 more behind: %+v", found)
	}
}

// TestRunnersJudged: what is refused or warned of goes away a tenth beyond its limit, and what the hint asks
// for does.
func TestRunnersJudged(t *testing.T) {
	for name, c := range map[string]struct {
		code      geom.Code
		bad, good func(*Bank)
	}{
		// 2 x 0.75 + 0.5 + 16 / 2
		"narrow": {"runner-width", func(b *Bank) { b.Slide.RunnerWidth = 9.9 },
			func(b *Bank) { b.Slide.RunnerWidth = 10 }},
		"worn": {"wear-strip", func(b *Bank) { b.Slide.WearStrip = 15.1 }, func(b *Bank) { b.Slide.WearStrip = 15 }},
		// A reveal of 0 leaves the uppermost box what is asked for above it alone.
		"damp": {"runner-binds", func(b *Bank) { b.Edge.Top, b.Slide.ClearanceAbove = 0, 0.9 },
			func(b *Bank) { b.Edge.Top, b.Slide.ClearanceAbove = 0, 1 }},
		// 0.2 and 1 % of 16
		"aside": {"runner-binds", func(b *Bank) { b.Slide.Clearance = 0.35 },
			func(b *Bank) { b.Slide.Clearance = 0.36 }},
	} {
		has := func(b Bank) bool {
			_, found := Solve(b)
			return slices.ContainsFunc(found, func(d geom.Diagnosis) bool { return d.Code == c.code })
		}
		if !has(chest(c.bad)) || has(chest(c.good)) {
			t.Errorf("%s: %v, %v", name, has(chest(c.bad)), has(chest(c.good)))
		}
	}
}
