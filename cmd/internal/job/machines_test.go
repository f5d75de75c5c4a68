package job

import (
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
	"drawerwright/geom/setup"
)

// What a job says of its machines holds, and nothing else changes.
func TestMachines(t *testing.T) {
	j, err := Read("job.yaml", strings.NewReader(base+"machines: {saw: {max-length-on-end: 400, crosscut-capacity: 700}, router-table: {pass-depth: 0.4}}\n"))
	if err != nil {
		t.Fatal(err)
	}
	saw, table := setup.DefaultMachine(joinery.Saw,
		geom.Millimeter), setup.DefaultMachine(joinery.RouterTable, geom.Millimeter)
	saw.MaxOnEnd, saw.CrosscutCapacity, table.PassDepth = 400, 700, 0.4
	if got := j.Machines.Of(joinery.Saw); got != saw {
		t.Errorf("%+v", got)
	}
	if got := j.Machines.Of(joinery.RouterTable); got != table {
		t.Errorf("%+v", got)
	}
	// A job in inches has machines of round inches.
	j, err = Read("job.yaml", strings.NewReader(strings.Replace(base, "units: mm", "units: in",
		1)+"machines: {saw: {crosscut-capacity: 20}}\n"))
	saw = setup.DefaultMachine(joinery.Saw, geom.Inch)
	if saw.CrosscutCapacity = 20 * geom.InchMM; j.Machines.Of(joinery.Saw) != saw || geom.LengthOf(saw.MinOnEnd).Text(geom.Inch) != "6 in" {
		t.Errorf("%+v %v", j.Machines.Of(joinery.Saw), err)
	}
}
