package present

import (
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// What a drawer bears is said of every load, in the unit of the job.
func TestBearing(t *testing.T) {
	sag := &record.Sag{Simple: 1.9, Clamped: 0.4, LongTerm: 3.8, Limit: 2.1}
	for want, c := range map[string]struct {
		d record.Drawer
		u geom.Unit
	}{
		"":                       {record.Drawer{}, geom.Millimeter},
		"The box weighs 3.4 kg.": {record.Drawer{Weight: 3.4}, geom.Millimeter},
		"The box weighs 3.4 kg, loaded 13 kg; such slides carry 45 kg. Under 10 kg the bottom sags by " +
			"0.40 to 1.90 mm, in years by up to 3.80; 2.10 is 1/200 of its span.": {
			record.Drawer{Weight: 3.4, Load: 10, Rating: 45, Sag: sag}, geom.Millimeter},
		// 10 kg are 22.0 lb; 1.9 mm are 0.0748 in.
		"Under 22 lb the bottom sags by 0.016 to 0.075 in, in years by up to 0.150; 0.083 is 1/200 of its span.": {
			record.Drawer{Load: 10, Sag: sag}, geom.Inch},
		"How far the bottom sags is not known: its stock says no material.": {record.Drawer{Load: 10}, geom.Inch},
	} {
		if got := Bearing(c.d, c.u); got != want {
			t.Errorf("%q, want\n%q", got, want)
		}
	}
}
