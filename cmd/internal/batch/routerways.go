package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/mill"
)

// routerWays are the entries that remedies of a panel's diagnosis write in the job file. A
// reach or a diameter is that of the only bit: of several, the shop chooses which it buys
// anew.
func routerWays(j *job.Job, drawer int, d geom.Diagnosis) (ways [][]Way) {
	for _, r := range d.Remedies {
		c := r.Changes[0] // package mill names one at a time
		path := []string{"router", string(c.Setting)}
		if c.Key != "" {
			path = append(path, c.Key)
		}
		if c.Setting == mill.SettingBits {
			if len(j.Drawers[drawer].Bits) != 1 {
				continue
			}
			path = j.CutterPath(drawer, c.Key)
		}
		value := c.Word
		if value == "" {
			value = geom.Millimetres(r.Ends()[0][0]).In(j.Units)
		}
		ways = append(ways, []Way{{Text: job.RemedyText(r, joinery.Spec{Units: j.Units}), Edits: []job.Edit{{Path: path, Value: value}}}})
	}
	return ways
}
