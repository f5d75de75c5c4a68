package mill

import (
	"slices"

	"drawerwright/geom"
)

// Use is a setting that had a say in how a panel is cut: with another value, other cuts or
// another bit could have come of it.
type Use struct {
	Setting   geom.Setting
	Operation string // whose corners [SettingRelief] was asked for; empty for other settings
}

// uses notes a setting that decides something.
func (p *preparation) uses(s geom.Setting, operation string) {
	if use := (Use{s, operation}); !slices.Contains(p.work.Uses, use) {
		p.work.Uses = append(p.work.Uses, use)
	}
}
