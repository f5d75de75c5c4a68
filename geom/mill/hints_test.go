package mill

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// TestHintsHold: a setting written as a hint names it ends the complaint. Gaps are
// judged last, so a new fault may only be about one.
func TestHintsHold(t *testing.T) {
	tried := make(map[geom.Code]int)
	rapid.Check(t, func(t *rapid.T) {
		panel := geomtest.AnyPanel().Draw(t, "panel")
		part := Part{Panel: panel, MinThickness: panel.Thickness - rapid.Float64Range(0, 0.5).Draw(t, "thinner"), MaxThickness: panel.Thickness + 0.3}
		s := Settings{
			Bits:        []Bit{{Name: "bit", Diameter: rapid.Float64Range(2, 8).Draw(t, "bit"), Reach: rapid.Float64Range(4, 40).Draw(t, "reach")}},
			Overcut:     1,
			OnionSkin:   rapid.SampledFrom([]float64{0, 0.1, 0.4}).Draw(t, "skin"),
			Register:    Register{Distance: rapid.Float64Range(0, 20).Draw(t, "distance"), Diameter: 6},
			PartSpacing: rapid.Float64Range(0.5, 30).Draw(t, "gap"), SmallPart: 150,
			Unit: rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit"),
		}
		if rapid.Bool().Draw(t, "tabs") {
			s.Tabs = Tabs{Width: 6, Height: rapid.Float64Range(1, 30).Draw(t, "tab"), Spacing: 100}
		}
		_, before := Prepare(part, s)
		for _, f := range before {
			for _, r := range f.Remedies {
				for _, lengths := range r.Ends() {
					_, after := Prepare(part, followed(s, r.Changes[0], lengths[0]))
					if count(after, f) >= count(before, f) {
						t.Fatalf("%s\n%+v\nfollowed: %v", f.Fact.In(s.Unit), r, after)
					}
				}
				tried[f.Code]++
			}
		}
	})
	for _, code := range []geom.Code{"part-spacing", "register", "bit-reach"} {
		if tried[code] == 0 {
			t.Errorf("no hint of %s was followed: %v", code, tried)
		}
	}
}

// followed is a shop's settings with a change.
func followed(s Settings, c geom.Change, mm float64) Settings {
	switch c.Setting {
	case SettingPartSpacing:
		s.PartSpacing = mm
	case SettingOnionSkin:
		s.OnionSkin = mm
	case SettingTabs:
		s.Tabs.Height = mm
	case SettingRegister:
		s.Register.Distance = mm
	case SettingRelief:
		s.Reliefs = map[string]Relief{c.Key: Relief(c.Word)}
	case SettingBits:
		if c.Key == KeyReach {
			s.Bits = []Bit{{Name: "bit", Diameter: s.Bits[0].Diameter, Reach: mm}}
		} else {
			s.Bits = append(slices.Clone(s.Bits), Bit{Name: "small", Diameter: mm})
		}
	}
	return s
}

// count is how often a list has a complaint about the same setting.
func count(list []geom.Diagnosis, d geom.Diagnosis) (n int) {
	for _, o := range list {
		if o.Code == d.Code && o.Subject == d.Subject {
			n++
		}
	}
	return n
}
