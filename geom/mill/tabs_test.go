package mill

import (
	"math"
	"slices"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

func tabbed() Settings {
	s := settings(six)
	s.Tabs = Tabs{Width: 8, Height: 2, Spacing: 100}
	return s
}

// TestTabs: the outline is cut down to the tabs' height, and right through in
// slots between them.
func TestTabs(t *testing.T) {
	w := mustPrepare(t, panel(), tabbed())
	if c := w.find(Profile); c.Depth != 10 || c.Remaining != 2 {
		t.Errorf("outline %g deep, %g left", c.Depth, c.Remaining)
	}
	slots := w.slots()
	if len(slots) != 8 { // 3 on each long side, 1 on each short one
		t.Fatalf("%d slots", len(slots))
	}
	// Slots and tabs go all the way round, and four slots turn a corner, where
	// they are a square of their width longer.
	width, area := 6+SlotRoom, 0.0
	for _, l := range slots {
		area += l.Area()
	}
	if want := (800-8*8)*width + 4*width*width; math.Abs(area-want) > 1e-6 {
		t.Errorf("slots cover %g, want %g", area, want)
	}
}

// TestTabsMarked: marked tabs are where the slots leave them, and the outline goes right
// through.
func TestTabsMarked(t *testing.T) {
	s := settings(six)
	s.Tabs = Tabs{Width: 8, Height: 2, Spacing: 100}
	cut := mustPrepare(t, panel(), s)
	s.Tabs.Marked = true
	marked := mustPrepare(t, panel(), s)
	if !marked.find(Profile).Through() || len(marked.slots()) != 0 || len(marked.Tabs) != len(cut.slots()) || len(cut.Tabs) != 0 {
		t.Fatalf("%d marks and %d slots, %d slots without marks", len(marked.Tabs), len(marked.slots()),
			len(cut.slots()))
	}
	// Marks and slots together go all the way round, and are a square of their width
	// longer at each corner.
	width, area := 6+SlotRoom, 0.0
	for _, l := range append(cut.slots(), marked.Tabs...) {
		area += l.Area()
	}
	if want := 800*width + 4*width*width; math.Abs(area-want) > 1e-6 {
		t.Errorf("slots and marks cover %g, want %g", area, want)
	}
}

func (w Operations) slots() (list []geom.Loop) {
	for _, c := range w.Cuts {
		if c.Operation == Slotting {
			list = append(list, c.Outline)
		}
	}
	return list
}

// TestTabsKeepOff: whatever the panel, tabs keep off mating sides and off the
// mouths of pockets, and slots keep off the panel.
func TestTabsKeepOff(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		p := panel()
		length, height := rapid.Float64Range(60, 900).Draw(t, "length"), rapid.Float64Range(50, 300).Draw(t, "height")
		p.Outline = geom.Rectangle(0, 0, length, height)
		x := rapid.Float64Range(5, length-15).Draw(t, "x")
		p.Pockets = []geom.Pocket{{Kind: geom.Dado, Depth: 6, Outline: geom.Rectangle(x, 0, x+8, height)}}
		p.Outline = p.Outline.With(geom.Mating, rapid.SampledFrom([][]int{nil, {1, 3}, {0, 2}, {0, 1, 2}, {3}}).Draw(t, "mating")...)
		w := mustPrepare2(t, p, tabbed())
		slots := w.slots()
		if len(slots) == 0 {
			return
		}
		held++
		for _, l := range slots {
			// A slot touches the panel along its edge and never reaches in.
			inner := 0.0
			for i, v := range l {
				next := l[(i+1)%len(l)]
				mid := geom.Point{X: (v.X + next.X) / 2, Y: (v.Y + next.Y) / 2}
				if mid.X > 1e-9 && mid.X < length-1e-9 && mid.Y > 1e-9 && mid.Y < height-1e-9 {
					inner += v.To(next.Point)
				}
			}
			if inner > 0 || l.Area() <= 0 {
				t.Fatalf("slot %v reaches into the panel, or runs clockwise", l)
			}
		}
		open := func(q geom.Point) bool { // no slot beside this place of the edge
			return !slices.ContainsFunc(slots, func(l geom.Loop) bool {
				b := l.Bounds()
				out := geom.Point{X: q.X, Y: q.Y}
				switch {
				case q.X == 0:
					out.X = -1
				case q.X == length:
					out.X = length + 1
				case q.Y == 0:
					out.Y = -1
				default:
					out.Y = height + 1
				}
				return out.X >= b.Min.X && out.X <= b.Max.X && out.Y >= b.Min.Y && out.Y <= b.Max.Y && pointIn(out, l)
			})
		}
		for side, v := range p.Outline {
			next := p.Outline[(side+1)%4]
			tab := 0
			const steps = 997
			for i := 1; i < steps; i++ {
				f := float64(i) / steps
				q := geom.Point{X: v.X + f*(next.X-v.X), Y: v.Y + f*(next.Y-v.Y)}
				if !open(q) {
					continue
				}
				tab++
				if v.Marks.Has(geom.Mating) {
					t.Fatalf("a tab on mating side %d at %v", side, q)
				}
				if side%2 == 0 && q.X > x-6 && q.X < x+8+6 {
					t.Fatalf("a tab in the mouth of the dado at %v (dado from %g)", q, x)
				}
			}
		}
	})
	if held == 0 {
		t.Error("no panel had tabs")
	}
}

func mustPrepare2(t *rapid.T, p Part, s Settings) Operations {
	w, faults := Prepare(p, s)
	for _, f := range faults {
		if f.IsError() {
			t.Fatalf("%s: %v", f.Code, f)
		}
	}
	return w
}

func pointIn(p geom.Point, l geom.Loop) bool {
	inside := false
	for i, a := range l {
		b := l[(i+1)%len(l)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
	}
	return inside
}

// TestHolding: which panels are held by what, and what is said of the others.
func TestHolding(t *testing.T) {
	small := func(mating ...int) Part {
		p := panel()
		p.Outline = geom.Rectangle(0, 0, 120, 100).With(geom.Mating, mating...)
		return p
	}
	with := func(change func(*Settings)) Settings {
		s := settings(six)
		s.SmallPart = UsualSmallPart(geom.Millimeter)
		change(&s)
		return s
	}
	for _, c := range []struct {
		name  string
		part  Part
		s     Settings
		left  float64
		slots bool
		want  []string
	}{
		{"large", panel(), with(func(*Settings) {}), 0, false, nil},
		{"small", small(), with(func(*Settings) {}), 0, false, []string{"small-part"}},
		{"small with an onion skin", small(), with(func(s *Settings) { s.OnionSkin = 0.4 }), 0.4, false, nil},
		{"large with an onion skin for small ones", panel(), with(func(s *Settings) { s.OnionSkin = 0.4 }), 0, false, nil},
		{"small with both", small(), with(func(s *Settings) { s.OnionSkin, s.Tabs = 0.4, Tabs{Width: 8, Height: 2, Spacing: 100} }), 0.4, false, nil},
		{"large with both", panel(), with(func(s *Settings) { s.OnionSkin, s.Tabs = 0.4, Tabs{Width: 8, Height: 2, Spacing: 100} }), 2, true, nil},
		{"no free side", small(0, 1, 2, 3), with(func(s *Settings) { s.SmallPart, s.Tabs = 10, Tabs{Width: 8, Height: 2, Spacing: 100} }), 0, false, []string{"tabs"}},
		{"no free side, an onion skin", small(0, 1, 2, 3), with(func(s *Settings) { s.SmallPart, s.Tabs, s.OnionSkin = 10, Tabs{Width: 8, Height: 2, Spacing: 100}, 0.4 }), 0.4, false, nil},
		// Of 0.5 the thinnest board, 0.1 thinner than the mean, leaves 0.4.
		{"tabs too low", panel(), with(func(s *Settings) { s.Tabs = Tabs{Width: 8, Height: 0.5, Spacing: 100} }), 0, false, []string{"tabs"}},
		{"low tabs from the spoilboard", panel(), with(func(s *Settings) { s.Tabs, s.FromSpoilboard = Tabs{Width: 8, Height: 0.5, Spacing: 100}, true }), 0.5, true, nil},
		{"tabs just high enough", panel(), with(func(s *Settings) { s.Tabs = Tabs{Width: 8, Height: 0.6, Spacing: 100} }), 0.6, true, nil},
		{"tabs too high", panel(), with(func(s *Settings) { s.Tabs = Tabs{Width: 8, Height: 12, Spacing: 100} }), 0, false, []string{"tabs"}},
		// The thinnest board is 0.1 thinner than the mean.
		{"skin too thin", small(), with(func(s *Settings) { s.OnionSkin = 0.2 }), 0.2, false, []string{"onion-skin"}},
		{"thin skin from the spoilboard", small(), with(func(s *Settings) { s.OnionSkin, s.FromSpoilboard = 0.2, true }), 0.2, false, nil},
		{"skin too thick", small(), with(func(s *Settings) { s.OnionSkin = 12 }), 12, false, []string{"onion-skin"}},
	} {
		w, faults := Prepare(c.part, c.s)
		if got := codes(faults); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
		if got := w.find(Profile); got.Remaining != c.left || (len(w.slots()) > 0) != c.slots {
			t.Errorf("%s: %g left, %d slots", c.name, got.Remaining, len(w.slots()))
		}
	}
}

// TestOnionSkinInPlaceOfTabs: where tabs find no room, the remedy says what a skin does there,
// and that there is another way; of a small part it says that a skin is no hold.
func TestOnionSkinInPlaceOfTabs(t *testing.T) {
	part := panel()
	part.Outline = geom.Rectangle(0, 0, 120, 100).With(geom.Mating, 0, 1, 2, 3)
	for _, c := range []struct {
		small       float64
		tabs        Tabs
		result, ask string
	}{
		{10, Tabs{Width: 8, Height: 2, Spacing: 100}, "it holds what tabs cannot", "hold it down otherwise"},
		{UsualSmallPart(geom.Millimeter), Tabs{}, "hold it down by more than suction", ""},
	} {
		s := settings(six)
		s.SmallPart, s.Tabs = c.small, c.tabs
		_, faults := Prepare(part, s)
		if len(faults) != 1 || len(faults[0].Remedies) != 1 {
			t.Fatalf("small part %g: %v", c.small, faults)
		}
		skin := faults[0].Remedies[0]
		if skin.Changes[0].Setting != SettingOnionSkin || skin.Result.In(geom.Millimeter) != c.result || faults[0].Ask.In(geom.Millimeter) != c.ask {
			t.Errorf("small part %g: %+v, ask %q", c.small, skin, faults[0].Ask.In(geom.Millimeter))
		}
	}
}
