package batch_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/batch"
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/mill"
)

// others are settings of a router with another value than a job's for one of them.
func others(s mill.Settings) map[mill.Use]mill.Settings {
	out := make(map[mill.Use]mill.Settings)
	other := func(u mill.Use, change func(*mill.Settings)) {
		changed := s
		change(&changed)
		out[u] = changed
	}
	other(mill.Use{Setting: mill.SettingOvercut}, func(s *mill.Settings) { s.Overcut += 0.7 })
	other(mill.Use{Setting: mill.SettingSlots}, func(s *mill.Settings) {
		if s.Slots == mill.SlotsCenterline {
			s.Slots = mill.SlotsWidened
		} else {
			s.Slots = mill.SlotsCenterline
		}
	})
	other(mill.Use{Setting: mill.SettingRegister}, func(s *mill.Settings) { s.Register.Diameter = 11 })
	other(mill.Use{Setting: mill.SettingTabs}, func(s *mill.Settings) { s.Tabs.Width += 1.5 })
	other(mill.Use{Setting: mill.SettingOnionSkin}, func(s *mill.Settings) { s.OnionSkin += 0.3 })
	for _, operation := range mill.Relieved {
		other(mill.Use{Setting: mill.SettingRelief, Operation: operation}, func(s *mill.Settings) {
			own := map[string]mill.Relief{operation: mill.ReliefTBone}
			if s.ReliefOf(operation) == mill.ReliefTBone {
				own[operation] = mill.ReliefDogbone
			}
			for _, o := range mill.Relieved {
				if o != operation {
					own[o] = s.ReliefOf(o)
				}
			}
			s.Reliefs = own
		})
	}
	return out
}

// TestUses: another value of a setting that had no say in a panel changes nothing of how it is
// cut, and of one that had it changes something now and then.
func TestUses(t *testing.T) {
	told := make(map[mill.Use]int)
	for seed := range geomtest.Cases(60, 2000) {
		j := routed(t, uint64(seed))
		if j == nil {
			continue
		}
		if seed%2 == 0 {
			j.Router.Tabs = mill.Tabs{Width: 6, Height: 1, Spacing: 200}
		}
		if seed%3 == 0 {
			j.Router.OnionSkin = 0.5
		}
		b, problems := batch.Make(t.Context(), j)
		if slices.ContainsFunc(problems, func(p batch.Problem) bool { return p.IsError() }) {
			continue
		}
		for _, d := range b.Drawers {
			for _, p := range d.Parts {
				base := b.Router
				base.Bits = p.Bits
				as := mill.Part{Panel: p.Panel, MinThickness: p.Stock.Thickness.Min, MaxThickness: p.Stock.Thickness.Max}
				work, _ := mill.Prepare(as, base)
				for use, s := range others(base) {
					if use.Setting == mill.SettingTabs && base.Tabs.Width == 0 ||
						use.Setting == mill.SettingOnionSkin && base.OnionSkin == 0 {
						continue // the job has no such entry
					}
					changed, _ := mill.Prepare(as, s)
					switch same := reflect.DeepEqual(work, changed); {
					case slices.Contains(work.Uses, use):
						if !same {
							told[use]++
						}
					case !same:
						t.Errorf("seed %d, %s: %v had no say, and another value changes the work", seed, p.Name, use)
					}
				}
			}
		}
	}
	for _, s := range []geom.Setting{mill.SettingOvercut, mill.SettingRegister, mill.SettingTabs, mill.SettingOnionSkin} {
		if told[mill.Use{Setting: s}] == 0 {
			t.Errorf("%s never changed anything", s)
		}
	}
	if !slices.ContainsFunc(mill.Relieved, func(o string) bool {
		return told[mill.Use{Setting: mill.SettingRelief, Operation: o}] > 0
	}) {
		t.Error("no relief ever changed anything")
	}
}

// TestNoEffect: what a router's entry does in a job is nothing, and a note says so at that
// entry, once for the job; where it does something, nothing is said.
func TestNoEffect(t *testing.T) {
	const file = `units: mm
stock:
  birch: {thickness: [11.9, 11.85, 11.95], sheet: 1525 x 1525}
  ply:   {thickness: [6.1, 6.05, 6.15], sheet: 1525 x 1525}
cutter: {kind: router, BITS}
router: {ROUTER}
sheets: {SHEETS}
joinery: {JOINERY}
drawers:
  - {name: one, count: 2, outside: SIZE, sides: birch, bottom: ply}
  - {name: two, outside: 300 x 100 x 300, sides: birch, bottom: ply}
`
	for _, c := range []struct {
		bits, router, sheets, joinery, size string
		want                                string
	}{
		{"diameter: 6", "relief: t-bone", "method: free", "", "", "relief"},
		{"diameter: 6", "relief: {groove: t-bone}", "method: free", "", "", "relief"},
		{"diameter: 6", "exact-slots: centerline", "method: free", "", "", "exact-slots"},
		{"diameter: 6.2", "exact-slots: centerline", "method: free", "dado-clearance: 0.25", "", ""},
		{"diameter: 6", "register: {diameter: 8}", "flip-on: pins", "", "", ""},
		{"diameter: 6", "register: {diameter: 8}", "flip-on: three-pins, pin-distance: 10", "faces: one", "",
			"register flip-on pin-distance"},
		{"diameter: 6", "tabs: {}", "method: free", "", "", ""},
		{"diameter: 6", "onion-skin: 0.4", "method: free", "", "", "onion-skin"},
		{"diameter: 6", "onion-skin: 0.4", "method: free", "", "180 x 60 x 140", ""},
		{"diameter: 6", "engrave: yes", "method: free", "", "", "engrave"},
		{"bits: {b: {diameter: 6}, fine: {diameter: 0.8}}", "engrave: {bit: fine}", "method: free", "", "", ""},
		{"bits: {b: {diameter: 6}, fine: {diameter: 0.8}}", "engrave: {bit: fine}", "method: free", "",
			"380 x 120 x 420, cutter: {kind: saw, width: 6.2}", "engrave"},
		{"diameter: 6", "engrave: no", "method: free", "", "", ""},
		{"diameter: 6", "tabs: {}", "prefer: little-time", "", "", "prefer"},
		{"diameter: 6", "tabs: {}", "first-cuts: rip", "", "", "first-cuts"},
		{"diameter: 6", "tabs: {}", "times: {cut: 30 s}", "", "", "times"},
		{"diameter: 6", "tabs: {}", "prefer: little-time", "", "380 x 120 x 420, cutter: {kind: saw, width: 6.2}", ""},
		{"diameter: 6", "overcut: 2", "method: free", "", "", ""},
		{"diameter: 6", "relief: {profile: t-bone}", "method: free", "", "380 x 120 x 420, joint: box-joint", ""},
		{"diameter: 6", "relief: {profile: t-bone, dado: t-bone, others: none}", "method: free", "",
			"380 x 120 x 420, joint: box-joint", "dado others"},
	} {
		if c.size == "" {
			c.size = "380 x 120 x 420"
		}
		text := strings.NewReplacer("BITS", c.bits, "ROUTER", c.router, "SHEETS", c.sheets, "JOINERY", c.joinery,
			"SIZE", c.size).Replace(file)
		j, found := job.Read("job.yaml", strings.NewReader(text))
		if len(found) > 0 {
			t.Fatalf("%v: %+v", c, found)
		}
		_, problems := batch.Make(t.Context(), j)
		var got []string
		for _, p := range problems {
			if p.IsError() {
				t.Fatalf("%v: %v", c, p)
			}
			if p.Code != geom.Code(job.CodeNoEffect) {
				continue
			}
			shown := p.Shown(j)
			name, _, _ := strings.Cut(shown.Message, " has no effect")
			name, _, _ = strings.Cut(name, " puts no number")
			got = append(got, name)
			if !p.OfJob || p.Level != geom.LevelNote {
				t.Errorf("%v: %+v is no note on the job", c, p)
			}
			if at := shown.Line; at != 6 && at != 7 {
				t.Errorf("%v: the note stands at line %d:%d, not at its entry", c, shown.Line, shown.Column)
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%v: notes on %q, want %q", c, s, c.want)
		}
	}
}
