package batch

import (
	"drawerwright/geom/fit"
	"drawerwright/geom/gauge"
)

// CaliperLimits are those of the readings of drawers that are cut at one setting, with
// boards as they were measured.
func CaliperLimits(drawers []Drawer) gauge.Limits {
	list := make([]gauge.Drawer, len(drawers))
	for i, d := range drawers {
		list[i] = d.ForCaliper()
	}
	return gauge.Find(list)
}

// LimitsFor are those of a drawer of the batch, cut at one setting with all that this serves.
func (b Batch) LimitsFor(drawer int) gauge.Limits {
	key := SettingKey(b.Drawers[drawer])
	var together []Drawer
	for _, d := range b.Drawers {
		if SettingKey(d) == key {
			together = append(together, d)
		}
	}
	return CaliperLimits(together)
}

// ForCaliper is a drawer for its caliper limits.
func (d Drawer) ForCaliper() gauge.Drawer {
	return gauge.Drawer{Drawer: d.Drawer, Boards: fit.MeasuredBoards(d.Spec), Accuracy: d.Shop.Accuracy, Slide: d.Shop.Slide}
}
