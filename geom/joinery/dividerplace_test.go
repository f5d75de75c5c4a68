package joinery

import (
	"math"
	"testing"

	"drawerwright/geom"
)

// TestDividerPlaces: what is wrong with a place is said as it is, and one that stands alone can begin anywhere in the
// range that is named. Walls of 12.2 with rabbets of half that leave 500 - 2 x 12.2 between them, so a divider of 6 can
// begin up to 475.6 - 6 - 20.
func TestDividerPlaces(t *testing.T) {
	ply, thin, six := sheet("ply", 12.2), sheet("thin", 5.9), sheet("six", 6.15)
	const last = 500 - 2*12.2 - 6.15 - 20
	found := func(places ...float64) (geom.Diagnosis, bool) {
		s := saw(460, 140, 500, 6.35, ply, thin)
		s.Dividers = []Divider{{Stock: six, Direction: Across, At: places}}
		_, problems := Build(s)
		for _, p := range problems {
			if p.Code == "divider-room" {
				return p, true
			}
		}
		return geom.Diagnosis{}, false
	}
	for _, c := range []struct {
		at   []float64
		says string
	}{
		{[]float64{510}, "divider 1: at 510 mm it is beyond the far wall: the inside is 475.6 mm, and it can begin at 20 mm to 449.45 mm"},
		{[]float64{470}, "divider 1: at 470 mm its board of 6.15 mm runs into the far wall: the inside is 475.6 mm, and it can begin at 20 mm to 449.45 mm"},
		{[]float64{5}, "divider 1: it leaves a cell of 5 mm in 475.6 mm; at least 20 mm is needed"},
		{[]float64{200, 205}, "divider 1: those at 200 mm and 205 mm overlap"},
	} {
		d, wrong := found(c.at...)
		if said := d.Fact.In(geom.Millimeter); !wrong || said != c.says {
			t.Errorf("%v: %s, not %s", c.at, said, c.says)
			continue
		}
		if len(d.Remedies) != 1 {
			t.Errorf("%v: %d ways out", c.at, len(d.Remedies))
			continue
		}
		change := d.Remedies[0].Changes[0]
		if len(c.at) > 1 {
			if change.Count != len(c.at) {
				t.Errorf("%v: %d are offered", c.at, change.Count)
			}
			continue
		}
		if change.Min != 20 || math.Abs(change.Max-last) > 0.01 {
			t.Errorf("%v: it can begin at %g to %g", c.at, change.Min, change.Max)
		}
		for _, v := range []float64{change.Min, change.Max} {
			if d, wrong := found(v); wrong {
				t.Errorf("at %g: %s", v, d.Fact.In(geom.Millimeter))
			}
		}
		if _, wrong := found(change.Max + 0.02); !wrong {
			t.Errorf("%g is not the last place", change.Max)
		}
	}
	if _, wrong := found(100, 300); wrong {
		t.Error("two in their places are refused")
	}
}
