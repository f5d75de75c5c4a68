package proof

import (
	"math"
	"testing"
)

// sound is a box in which all holds, with a divider and a drawer front.
func sound() Box {
	b := Box{ClearanceX: 1, ClearanceY: 2}
	for _, end := range []string{"front", "back"} {
		for _, side := range []string{"left", "right"} {
			b.Corners = append(b.Corners, Corner{End: end, Side: side, GoesTogether: true, Captured: true, Clearance: 0.25,
				ShoulderGap: 0.2})
		}
	}
	for _, w := range []string{"left", "right", "front", "back"} {
		b.BottomJoints = append(b.BottomJoints, PanelJoint{Name: w, GoesIn: true, Engagement: 5})
	}
	b.Dividers = []Partition{{Name: "divider", GoesIn: true, EndClearance: 1, Lifts: true,
		Joints: [2]PanelJoint{{Name: "left", Engagement: 4}, {Name: "right", Engagement: 4}}}}
	for i, name := range []string{"rail 1", "rail 2"} {
		rail := b.Dividers[0]
		rail.Name, rail.Middle, rail.Over, rail.Under = name, 330*float64(i), 250, 25
		b.Dividers = append(b.Dividers, rail)
	}
	b.Insert = &Insert{Clearance: [2]float64{2, 2}, Lifts: true}
	b.DrawerFronts = []Fixing{{Name: "face", Covers: 100, Holes: 4}}
	return b
}

// TestLosses: each of them is found alone, just above its limit and its tick, and not just
// below.
func TestLosses(t *testing.T) {
	meant := Meant{Bridged: 1, Captured: func(string) bool { return true }, Loose: []string{"divider"},
		Folders: []Folders{{Rails: [2]string{"rail 1", "rail 2"}, Width: 330, Below: 240, Above: 20}}}
	const a, hair = Tick, 1e-6
	for _, c := range []struct {
		kind   LossKind
		change func(b *Box, by float64) // by a hair over the limit, or under it
	}{
		{NotHeld, func(b *Box, by float64) { b.Corners[0].Captured = by < 0 }},
		{MuchClearance, func(b *Box, by float64) { b.Corners[0].Clearance = 1 + a + by }},
		{ShoulderOpen, func(b *Box, by float64) { b.Corners[0].ShoulderGap = 1 + a + by }},
		{OffShoulder, func(b *Box, by float64) { b.Corners[0].Open = 1 + a + by }},
		{OffCleat, func(b *Box, by float64) { b.BottomFit, b.BottomJoints[1].Engagement = OnCleats, 0.5+a-by }},
		{NotUnder, func(b *Box, by float64) { b.BottomFit, b.BottomJoints[1].Engagement = Applied, a-by }},
		{GapOver, func(b *Box, by float64) { b.BottomFit, b.BottomJoints[1].Gap = Applied, 1+a+by }},
		{NotUnder, func(b *Box, by float64) { b.BottomFit, b.BottomJoints[3].Engagement = SlideIn, a-by }},
		{NotInGroove, func(b *Box, by float64) { b.BottomFit, b.BottomJoints[2].Engagement = SlideIn, a-by }},
		{DropsOut, func(b *Box, by float64) { b.BottomJoints[2].Engagement = 1 + a - by }}, // half of 2 from front to back
		{DividerDrops, func(b *Box, by float64) { b.Dividers[0].Joints[1].Engagement = 0.5 + a - by }},
		{DividerClearance, func(b *Box, by float64) { b.Dividers[0].Clearance = 1 + a + by }},
		{DividerStands, func(b *Box, by float64) { b.Dividers[0].Height = 2 + a + by }},
		{DividerStays, func(b *Box, by float64) { b.Dividers[0].Lifts = by < 0 }},
		{RailsApart, func(b *Box, by float64) { b.Dividers[1].Middle = -1 - a - by }},
		{RailsApart, func(b *Box, by float64) { b.Dividers[1].Middle = 1 + a + by }},
		{FolderDrags, func(b *Box, by float64) { b.Dividers[1].Over = 240 - a - by }},
		{FolderProud, func(b *Box, by float64) { b.Dividers[2].Under = 20 - a - by }},
		{StripFalls, func(b *Box, by float64) {
			if by > 0 {
				b.Insert.Fallen = []string{"insert 1"}
			}
		}},
		{InsertStands, func(b *Box, by float64) { b.Insert.Height = 2 + a + by }},
		{InsertStands, func(b *Box, by float64) { b.Insert.Height = -2 - a - by }},
		{InsertStays, func(b *Box, by float64) { b.Insert.Lifts = by < 0 }},
		{FrontOff, func(b *Box, by float64) { b.DrawerFronts[0].Covers = a - by }},
		{FrontGap, func(b *Box, by float64) { b.DrawerFronts[0].Gap = 1 + a + by }},
		{FrontUnheld, func(b *Box, by float64) {
			if by > 0 {
				b.DrawerFronts[0].Holes = 0
			}
		}},
	} {
		b := sound()
		c.change(&b, -hair)
		if list := b.Losses(meant); len(list) > 0 {
			t.Errorf("kind %d, just within: %+v", c.kind, list)
		}
		c.change(&b, hair)
		if list := b.Losses(meant); len(list) != 1 || list[0].Kind != c.kind {
			t.Errorf("kind %d, just beyond: %+v", c.kind, list)
		}
	}
}

// TestOpenShoulders: a job may call wider shoulders right; one that nothing closes is another
// matter.
func TestOpenShoulders(t *testing.T) {
	b := sound()
	b.Corners[0].ShoulderGap, b.Corners[1].ShoulderGap = 1.5, math.Inf(1)
	meant := Meant{Bridged: 1, Open: 1.5, Captured: func(string) bool { return true }}
	if list := b.Losses(meant); len(list) > 0 {
		t.Errorf("%+v", list)
	}
	if meant.Open = 1.4; len(b.Losses(meant)) != 1 {
		t.Errorf("%+v", b.Losses(meant))
	}
}

func TestLeastWood(t *testing.T) {
	if ComesThrough(5.5, 6) || !ComesThrough(5.51, 6) {
		t.Error("half a millimeter has to be left under a pocket")
	}
	if !NothingLeft(0.09) || NothingLeft(0.1) {
		t.Error("a tenth of a millimeter is left of a bridge")
	}
	if Blocked(-2.9) || !Blocked(-3.1) {
		t.Error("up to 3 mm it is the part that is too large")
	}
}
