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
	followed := make(map[string]int)
	rapid.Check(t, func(t *rapid.T) {
		panel := geomtest.AnyPanel().Draw(t, "panel")
		part := Part{Panel: panel, Least: panel.Thickness - rapid.Float64Range(0, 0.5).Draw(t, "thinner"), Most: panel.Thickness + 0.3}
		s := Settings{
			Bits:     []Bit{{Name: "bit", Diameter: rapid.Float64Range(2, 8).Draw(t, "bit"), Reach: rapid.Float64Range(4, 40).Draw(t, "reach")}},
			OverRun:  1,
			Skin:     rapid.SampledFrom([]float64{0, 0.1, 0.4}).Draw(t, "skin"),
			Register: Register{Distance: rapid.Float64Range(0, 20).Draw(t, "distance"), Diameter: 6},
			PartGap:  rapid.Float64Range(0.5, 30).Draw(t, "gap"), SmallPart: 150,
			Unit: rapid.SampledFrom([]geom.Unit{geom.Millimetre, geom.Inch}).Draw(t, "unit"),
		}
		if rapid.Bool().Draw(t, "tabs") {
			s.Tabs = Tabs{Width: 6, Height: rapid.Float64Range(1, 30).Draw(t, "tab"), Spacing: 100}
		}
		_, before := Prepare(part, s)
		for _, f := range before {
			if f.Write == 0 {
				continue
			}
			n := s
			switch f.Entry {
			case FieldGap:
				n.PartGap = f.Write
			case FieldSkin:
				n.Skin = f.Write
			case FieldTabs:
				n.Tabs.Height = f.Write
			case FieldRegister:
				n.Register.Distance = f.Write
			case FieldReach:
				n.Bits = []Bit{{Name: "bit", Diameter: s.Bits[0].Diameter, Reach: f.Write}}
			case FieldBits:
				n.Bits = append(slices.Clone(s.Bits), Bit{Name: "small", Diameter: f.Write})
			}
			followed[f.Code]++
			_, after := Prepare(part, n)
			count := func(list []Fault) (k int) {
				for _, g := range list {
					if g.Code == f.Code && g.Message == f.Message {
						k++
					}
				}
				return k
			}
			if count(after) >= count(before) {
				t.Fatalf("%s\n%s\nfollowed: %v", f.Message, f.Hint, after)
			}
		}
	})
	for _, code := range []string{"part-gap", "register", "bit-reach"} {
		if followed[code] == 0 {
			t.Errorf("no hint of %s was followed: %v", code, followed)
		}
	}
}
