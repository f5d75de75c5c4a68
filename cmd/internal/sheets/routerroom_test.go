package sheets

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/hold"
	"drawerwright/geom/nest"
)

// plan lays out boxes from a router with a bit of 6; entries are put into the stock, the
// router and the rules for sheets.
func planned(t *testing.T, stock, router, sheets string) (Plan, error) {
	t.Helper()
	text := "units: mm\nstock:\n  birch: {thickness: [11.9, 12, 12.1], sheet: 1525 x 1525, grain: length" + stock + "}\n  ply: {thickness: 6, sheet: 1525 x 1525}\n" +
		"cutter: {kind: router, diameter: 6}\nrouter: {" + router + "}\nsheets: {" + sheets + "}\n" +
		"drawers:\n  - {name: a, count: 6, outside: 340 x 90 x 320, sides: birch, bottom: ply}\n  - {name: b, count: 3, outside: 480 x 160 x 400, sides: birch, bottom: ply}\n"
	j, problems := job.Read("job.yaml", strings.NewReader(text))
	if problems.Failed() {
		t.Fatal(problems)
	}
	b, found := batch.Make(t.Context(), j)
	for _, p := range found {
		if p.IsError() {
			return Plan{}, errors.New(string(p.Code) + ": " + p.Fact.In(geom.Millimeter) + "; " + p.Ask.In(geom.Millimeter))
		}
	}
	return Of(context.Background(), b, nil, Search{Options: nest.Options{Effort: 20}})
}

// TestRoomForCuts: the gap and the trim follow from the bit, and a written one that is too
// small is refused with the least; that does.
func TestRoomForCuts(t *testing.T) {
	p, err := planned(t, "", "", "")
	if err != nil {
		t.Fatal(err)
	}
	// 6 + 3 apart; 6 + 3 and the tolerance of 3.5 make 12.5, in whole millimeters 13.
	if s := p.Stocks[0]; s.Rules.Kerf != int64(geom.LengthOf(9)) || s.Trim != geom.LengthOf(13) {
		t.Errorf("kerf %d, trim %s", s.Rules.Kerf, s.Trim.Text(geom.Millimeter))
	}
	// 9.5
	if p, err = planned(t, ", min-sheet: 1524.5 x 1525", "", ""); err != nil || p.Stocks[0].Trim != geom.LengthOf(10) {
		t.Errorf("trim %s, %v", p.Stocks[0].Trim.Text(geom.Millimeter), err)
	}
	tabs := "tabs: {spacing: 150}, onion-skin: 0.4"
	for _, c := range []struct{ router, wrong, right, says string }{
		{"", "kerf: 8.9", "kerf: 9", "write `kerf: 9 mm`"},
		{"", "trim: 12.4", "trim: 12.5", "write `trim: 12.5 mm`"},
		{"", "trim: 0", "trim: 12.5", "write `trim: 12.5 mm`"},
		{"", "pin-distance: 5.9", "pin-distance: 6", "write `pin-distance: 6 mm`"},
		// Bottoms keep a skin on their own sheets, so that 9 does for all with tabs too.
		{tabs, "kerf: 8", "kerf: 9", "write `kerf: 9 mm`"},
		// The smaller sides have a skin, on one sheet with tabs: two bands of 6.05 and 3.
		{tabs + ", small-part: 200", "kerf: 15", "kerf: 15.1", "write `kerf: 15.1 mm`"},
	} {
		_, err := planned(t, "", c.router, c.wrong)
		if p := (*Problem)(nil); !errors.As(err, &p) || !strings.Contains(p.Ask.In(geom.Millimeter),
			c.says) || !strings.HasPrefix(p.Key, "sheets.") {
			t.Errorf("%s: %v", c.wrong, err)
		}
		if _, err := planned(t, "", c.router, c.right); err != nil {
			t.Errorf("%s: %v", c.right, err)
		}
	}
}

// TestHeldOnSheets: every part with tabs has as many as its size asks for, and where a
// written gap leaves too few, the job is refused with what ends that.
func TestHeldOnSheets(t *testing.T) {
	p, err := planned(t, "", "tabs: {spacing: 150}, onion-skin: 0.4", "")
	if err != nil {
		t.Fatal(err)
	}
	shared := 0
	for _, s := range p.Stocks {
		for _, one := range s.Laid {
			if len(one.Held) != len(one.Placements) {
				t.Fatalf("%s: %d of %d parts are held", s.Name, len(one.Held), len(one.Placements))
			}
			for i, h := range one.Held {
				if want := map[string]hold.Kind{"birch": hold.Tabs, "ply": hold.OnionSkin}[s.Name]; h.By != want || h.By == hold.Tabs && (h.Tabs < h.Need || h.Tabs != len(h.To)) {
					t.Errorf("%s: part %d is held by %+v", s.Name, i, h)
				}
				for _, to := range h.To {
					if to > hold.Frame {
						shared++
						if back := one.Held[to].To; !contains(back, i) {
							t.Errorf("%d hangs at %d, which hangs at %v", i, to, back)
						}
					}
				}
			}
		}
	}
	if shared == 0 {
		t.Error("no tab is common to two parts")
	}
	// Without a skin nothing holds bottoms, whose edges all stand in grooves.
	_, err = planned(t, "", "tabs: {spacing: 150}", "")
	if p := (*Problem)(nil); !errors.As(err, &p) || p.Code != "sheet-held" || p.Key != "router.tabs" || !strings.Contains(p.Ask.In(geom.Millimeter), "`onion-skin: 0.5 mm`") {
		t.Errorf("no onion skin: %v", err)
	}
	if _, err = planned(t, "", "tabs: {spacing: 150}, onion-skin: 0.3", ""); err != nil {
		t.Errorf("with the skin that the hint names: %v", err)
	}
	// A side of 320 x 90 asks for 41 tabs at this spacing; with the slots between them its
	// long edges have room for 16 each.
	_, err = planned(t, "", "tabs: {spacing: 10}, onion-skin: 0.3", "")
	pr := (*Problem)(nil)
	if !errors.As(err, &pr) || pr.Code != "sheet-held" {
		t.Fatalf("too many tabs: %v", err)
	}
	_, spacing, _ := strings.Cut(pr.Ask.In(geom.Millimeter), "`")
	spacing, _, _ = strings.Cut(spacing, "`")
	if _, err = planned(t, "", "tabs: {"+spacing+"}, onion-skin: 0.3", ""); err != nil {
		t.Errorf("with the %s that the hint names: %v", spacing, err)
	}
}

func contains(list []int, v int) bool {
	for _, w := range list {
		if w == v {
			return true
		}
	}
	return false
}

// TestKeepOut: nothing that is cut, on either face, is in an area to keep out of; pins go
// elsewhere; where they cannot, the job is refused.
func TestKeepOut(t *testing.T) {
	areas := ", keep-out: [{at: 0 x 480, size: 60 x 80}, {at: 600 x -20, size: 100 x 60}, {at: 1400 x 1400, size: 200 x 200}]"
	p, err := planned(t, areas, "tabs: {}, onion-skin: 0.3", "")
	if err != nil {
		t.Fatal(err)
	}
	s := p.Stocks[0]
	if !s.RotatedSheets || len(s.blocked(1525)) != 6 {
		t.Fatalf("turned %t, %v", s.RotatedSheets, s.blocked(1525))
	}
	for _, one := range s.Laid {
		for _, d := range s.Drawn(one) {
			for _, c := range d.Part.Work.Cuts {
				b, r := c.Outline.Bounds(), 0.0
				if c.Operation == "profile" {
					r = 6
				}
				for _, k := range s.blocked(1525) {
					if b.Min.X-r < k.Max.X-1e-6 && b.Max.X+r > k.Min.X+1e-6 && b.Min.Y-r < k.Max.Y-1e-6 && b.Max.Y+r > k.Min.Y+1e-6 {
						t.Errorf("%s at %v is in %v", c.Operation, b, k)
					}
				}
			}
		}
	}
	on, pins := s.FlipRegistration()
	if on != "pins" || len(pins) != 2 || math.Abs(pins[0].X-9.5) > 1e-9 || math.Abs(pins[1].X-1515.5) > 1e-9 || pins[0].Y != pins[1].Y || pins[0].Y > 474 && pins[0].Y < 566 {
		t.Errorf("%s %v", on, pins)
	}
	_, err = planned(t, ", keep-out: [{at: 0 x 0, size: 60 x 1525}]", "", "")
	if pr := (*Problem)(nil); !errors.As(err, &pr) || pr.Code != "sheet-pins" || pr.Key != "keep-out" {
		t.Errorf("pins under a clamp: %v", err)
	}
	if p, err = planned(t, ", keep-out: [{at: 0 x 0, size: 60 x 1525}]", "", "flip-on: stops"); err != nil {
		t.Errorf("on stops: %v", err)
	} else if on, pins := p.Stocks[0].FlipRegistration(); on != "stops" || len(pins) != 0 {
		t.Errorf("%s %v", on, pins)
	}
	if p, err = planned(t, "", "", "flip-on: three-pins, pin-distance: 10"); err != nil {
		t.Error(err)
	} else if _, pins := p.Stocks[0].FlipRegistration(); len(pins) != 3 || pins[2] != (geom.Point{X: 762.5, Y: 1525 - 13.5}) || pins[0].X != 13.5 {
		t.Errorf("three pins at %v", pins)
	}
}
