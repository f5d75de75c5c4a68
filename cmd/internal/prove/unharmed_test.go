package prove_test

import (
	"fmt"
	"testing"

	"drawerwright/cmd/internal/prove"
	"drawerwright/cmd/internal/record"
)

// jobOf is a job of one box of 460 x 140 x 500 from boards of 12.2 and 5.9 on a
// router, with more entries.
func jobOf(bits, more string) string {
	return fmt.Sprintf(`job: One
units: mm
stock:
  birch: {thickness: 12.2}
  ply: {thickness: 5.9}
cutter: {kind: router, %s}
%s
drawers:
  - {name: one, outside: 460 x 140 x 500, sides: birch, bottom: ply, joinery: {dado-clearance: 0.2}}
`, bits, more)
}

const (
	oneBit   = "diameter: 3"
	sameBit  = "diameter: 6.35"
	manyBits = "bits: {big: {diameter: 12}, six: {diameter: 6}, three: {diameter: 3}}"
)

// unharmed are jobs that use every way in which a drawing can be written.
func unharmed(t *testing.T) map[string]string {
	all := map[string]string{}
	for _, name := range []string{"bench-drawers.yaml", "inch-chest.yaml", "router-boxes.yaml"} {
		all[name] = sample(t, name)
	}
	for name, more := range map[string]string{
		"R2000":            "",
		"R12":              "dxf: {version: R12}",
		"inch drawings":    "dxf: {units: in}",
		"R12, inch":        "dxf: {version: R12, units: in}",
		"spoilboard":       "router: {depth-from: spoilboard}",
		"glue space":       "joinery: {glue-space: 0.2}",
		"side relief":      "router: {relief: t-bone}\njoinery: {cutter-height: 7}",
		"bisector relief":  "joinery: {cutter-height: 7}",
		"centerline":       "router: {register: {place: centerline}}",
		"tabs":             "router: {tabs: {}}",
		"skin":             "router: {onion-skin: 0.4, small-part: 300}",
		"skin, spoilboard": "router: {onion-skin: 0.4, small-part: 300, depth-from: spoilboard}",
		"part gap":         "router: {part-spacing: 30}",
		"overcut":          "router: {overcut: 0}",
		"order":            "dxf: {order: [rabbet, dado]}",
		"one face":         "joinery: {faces: one}",
		"own names":        "dxf: {layers: \"{operation}_{cutter}_{depth}_{stock}\", files: \"{part}\"}",
		"no depth":         "dxf: {layers: \"X-{operation}-{face}\"}",
		"dashes":           "dxf: {layers: \"{face}-{operation}-{depth}\"}",
	} {
		all[name] = jobOf(oneBit, more)
		all[name+", many bits"] = jobOf(manyBits, more)
	}
	// Slots of 6.35, for tongues of 6.1 and a bottom of 5.9, are just as wide as the bit.
	all["widened slots"] = jobOf(sameBit, "")
	all["a file for each bit"] = jobOf(manyBits, "dxf: {split: cutter}")
	all["no notes"] = jobOf(sameBit, "dxf: {notes: none}")
	all["lines"] = jobOf(sameBit, "router: {exact-slots: centerline}")
	all["lines, own names"] = jobOf(sameBit,
		"router: {exact-slots: centerline}\ndxf: {version: R12, layers: \"{operation}_{face}\"}")
	return all
}

// TestUnharmed: what build writes has no fault, and its boxes go together.
func TestUnharmed(t *testing.T) {
	for name, text := range unharmed(t) {
		t.Run(name, func(t *testing.T) {
			for _, p := range build(t, text).proofs(t, prove.Options{}) {
				if p.Verdict != record.Goes || len(p.Faults) != 0 || len(p.Overlaps) != 0 ||
					len(p.Corners) != 4 || p.Bottom == nil || !p.Bottom.Fits {
					t.Errorf("%s: %s, %+v", p.Drawer, p.Verdict, p.Faults)
				}
				if p.Cuts != nil || p.Assembled != nil {
					t.Error("details that were not asked for")
				}
			}
		})
	}
}
