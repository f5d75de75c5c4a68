package batch

import (
	"drawerwright/cmd/internal/job"
	"drawerwright/geom"
	"drawerwright/geom/mill"
)

// routerWays are the entry that a fault's hint names, as the job file has it. A reach or a
// diameter is that of the only bit: of several, the shop chooses which it buys anew.
func routerWays(j *job.Job, drawer int, f mill.Fault) [][]Way {
	if f.Write == 0 {
		return nil
	}
	path := []string{"router", string(f.Entry)}
	switch f.Entry {
	case mill.FieldTabs:
		path = append(path, "height")
	case mill.FieldRegister:
		path = append(path, "distance")
	case mill.FieldReach, mill.FieldBits:
		if len(j.Drawers[drawer].Bits) != 1 {
			return nil
		}
		key := "diameter"
		if f.Entry == mill.FieldReach {
			key = "reach"
		}
		path = j.CutterPath(drawer, key)
	}
	return [][]Way{{{Text: f.Hint, Edits: []job.Edit{{Path: path, Value: geom.LengthOf(f.Write).Text(j.Units)}}}}}
}
