package job

import (
	"strings"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// What a job says of its machines holds, and nothing else changes.
func TestMachines(t *testing.T) {
	j, err := Read("job.yaml", strings.NewReader(base+"machines: {saw: {longest-on-end: 400, sled-reach: 700}, router-table: {pass: 0.4}}\n"))
	if err != nil {
		t.Fatal(err)
	}
	saw, table := setup.DefaultMachine(joinery.Saw), setup.DefaultMachine(joinery.RouterTable)
	saw.MostOnEnd, saw.SledReach, table.Pass = 400, 700, 0.4
	if got := j.Machines.Of(joinery.Saw); got != saw {
		t.Errorf("%+v", got)
	}
	if got := j.Machines.Of(joinery.RouterTable); got != table {
		t.Errorf("%+v", got)
	}
}
