package prove

import (
	"testing"

	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
	"drawerwright/geom/proof"
)

// TestLostParts: which dividers and drawer fronts nothing holds.
func TestLostParts(t *testing.T) {
	held := proof.Partition{Name: "divider 1", GoesIn: true, Clearance: 0.2, EndClearance: 1, Lifts: true,
		Joints: [2]proof.PanelJoint{{Name: "left side", Engagement: 3.5}, {Name: "right side", Engagement: 3.5}}}
	hung := []record.Folders{{Rails: [2]string{held.Name}, Width: 300, Below: 95, Above: 20}}
	on := proof.Fixing{Name: "drawer front", Covers: 100, Holes: 4}
	for want, change := range map[string]func(*record.Drawer, *proof.Partition, *proof.Fixing){
		"": func(d *record.Drawer, p *proof.Partition, f *proof.Fixing) { d.LooseDividers = []string{p.Name} },
		"the divider 1 stands 0.4 mm deep in the right side and drops out when it is pushed away: its clearance is 1 mm": func(_ *record.Drawer, p *proof.Partition, _ *proof.Fixing) {
			p.Joints[1].Engagement = 0.4
		},
		"the divider 1 has 1.2 mm of clearance in its dados": func(_ *record.Drawer, p *proof.Partition, _ *proof.Fixing) { p.Clearance = 1.2 },
		"the divider 1 stands 2.5 mm above the bottom":       func(_ *record.Drawer, p *proof.Partition, _ *proof.Fixing) { p.Height = 2.5 },
		"the divider 1 is loose and cannot be lifted out": func(d *record.Drawer, p *proof.Partition, _ *proof.Fixing) {
			d.LooseDividers, p.Lifts = []string{p.Name}, false
		},
		"the upper edge of divider 1 is 90 mm over the bottom: the folders touch it": func(d *record.Drawer, p *proof.Partition, _ *proof.Fixing) {
			d.Folders, p.Over, p.Under = hung, 90, 20
		},
		"the upper edge of divider 1 is 12 mm below the box's: the folders stand out over it": func(d *record.Drawer, p *proof.Partition, _ *proof.Fixing) {
			d.Folders, p.Over, p.Under = hung, 120, 12
		},
		"the drawer front does not lie on the box front":                func(_ *record.Drawer, _ *proof.Partition, f *proof.Fixing) { f.Covers = -1 },
		"between drawer front and box front a gap stays open by 1.5 mm": func(_ *record.Drawer, _ *proof.Partition, f *proof.Fixing) { f.Gap = 1.5 },
		"the box front has no hole for a screw behind the drawer front": func(_ *record.Drawer, _ *proof.Partition, f *proof.Fixing) { f.Holes = 0 },
	} {
		d, p, f := record.Drawer{}, held, on
		change(&d, &p, &f)
		try := trial{Worker: &Worker{Prover: &Prover{unit: geom.Millimeter}}, drawer: d}
		said := ""
		for _, one := range try.lost(&proof.Box{Dividers: []proof.Partition{p}, DrawerFronts: []proof.Fixing{f}}) {
			said += one
		}
		if said != want {
			t.Errorf("%q, want %q", said, want)
		}
	}
}
