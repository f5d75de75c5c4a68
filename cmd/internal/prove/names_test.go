package prove

import (
	"math"
	"testing"

	"drawerwright/export/dxf"
	"drawerwright/export/router"
	"drawerwright/geom"
	"drawerwright/geom/mill"

	"pgregory.net/rapid"
)

// TestNames reads names as the contract has them, and by other patterns.
func TestNames(t *testing.T) {
	const contract = "{operation}_{face}_{depth}"
	mm := 0.01/2 + 26e-6          // half a hundredth, and 26 nm from which on is rounded up
	half := 0.0001*25.4/2 + 26e-6 // the same of a ten-thousandth of an inch
	for name, c := range map[string]struct {
		pattern string
		want    said
	}{
		"DADO_INSIDE_5-99MM":            {contract, said{operation: "dado", face: "inside", depth: 5.99, step: mm, depthSaid: true}},
		"GROOVE_INSIDE_0-2358IN":        {contract, said{operation: "groove", face: "inside", depth: 0.2358 * 25.4, step: half, depthSaid: true}},
		"RABBET_OUTSIDE_5-98MM":         {contract, said{operation: "rabbet", face: "outside", depth: 5.98, step: mm, depthSaid: true}},
		"PROFILE_INSIDE_THROUGH":        {contract, said{operation: "profile", face: "inside", through: true, depthSaid: true}},
		"DADO_INSIDE_FLOOR_5-99MM":      {contract, said{operation: "dado", face: "inside", floor: true, depth: 5.99, step: mm, depthSaid: true}},
		"DADO_INSIDE_LINE_5-99MM":       {contract, said{operation: "dado", face: "inside", line: true, depth: 5.99, step: mm, depthSaid: true}},
		"DRILL_INSIDE_LINE_THROUGH":     {contract, said{operation: "drill", face: "inside", line: true, through: true, depthSaid: true}},
		"dado_Inside_line_floor_1-2mm":  {contract, said{operation: "dado", face: "inside", line: true, floor: true, depth: 1.2, step: mm, depthSaid: true}},
		"ENGRAVE_INSIDE_0-30MM":         {contract, said{operation: "engrave", face: "inside", line: true, depth: 0.3, step: mm, depthSaid: true}},
		"DADO-LINE":                     {"{operation}", said{operation: "dado", line: true}},
		"SIX_DADO_OAK-12":               {"{cutter}_{operation}_{stock}", said{operation: "dado"}},
		"__DADO":                        {"{cutter}_{stock}_{operation}", said{operation: "dado"}},
		"INSIDEDADO6-10MM":              {"{face}{operation}{depth}", said{operation: "dado", face: "inside", depth: 6.1, step: mm, depthSaid: true}},
		"REGISTER_OUTSIDE_17-20MM":      {contract, said{operation: "register", face: "outside", depth: 17.2, step: mm, depthSaid: true}},
		"REGISTER_OUTSIDE_BELOW_5-00MM": {contract, said{operation: "register", face: "outside", depth: 5, step: mm, depthSaid: true}},
		"SLOT_INSIDE_THROUGH":           {contract, said{operation: "slot", face: "inside", through: true, depthSaid: true}},
		"X.DADO+6-10MM":                 {"x.{operation}+{depth}", said{operation: "dado", depth: 6.1, step: mm, depthSaid: true}},
	} {
		n, err := patternNames(c.pattern)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := n.read(name)
		if !ok || math.Abs(got.depth-c.want.depth) > 1e-12 {
			t.Errorf("%s: %+v (%t), want %+v", name, got, ok, c.want)
		}
		if got.depth = c.want.depth; got != c.want {
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
	n, err := patternNames(contract)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"", "DADO", "DADO_INSIDE", "DADO_INSIDE_", "DADO_INSIDE_6MM", "DADO_INSIDE_6-10", "DADO_TOP_6-10MM", "DADO_INSIDE_-6-10MM", "DADO INSIDE 6-10MM",
		"DADO_INSIDE_6.10MM", "DADO_INSIDE_6-10MM ", "X_DADO_INSIDE_6-10MM", "DADO_INSIDE_THROUGH_6-10MM", "DADO_INSIDE_1" + string(make([]byte, 400)) + "-0MM", "LABEL", "Layer 1"} {
		if got, ok := n.read(name); ok {
			t.Errorf("%q is read as %+v", name, got)
		}
	}
}

// TestNamesAsDrawn: what the drawings write of a cut is read back from its layer's
// name, to the rounding of the number.
func TestNamesAsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pattern := rapid.SampledFrom([]string{"{operation}_{face}_{depth}", "{operation}_{depth}", "{stock}-{operation}_{cutter}_{face}{depth}", "A{face}_{operation}", "{operation}", "{operation}_{diameter}_{depth}", "{diameter}_{operation}{depth}", "{operation}{diameter}"}).Draw(t, "pattern")
		unit := rapid.SampledFrom([]geom.Unit{geom.Millimeter, geom.Inch}).Draw(t, "unit")
		c := mill.Cut{Operation: rapid.SampledFrom([]string{"dado", "groove", "rabbet", "drill", "cutout", "profile"}).Draw(t, "operation"),
			Face: rapid.SampledFrom([]geom.Face{geom.Inside, geom.Outside}).Draw(t, "face"), Depth: rapid.Float64Range(0.1, 30).Draw(t, "depth")}
		if rapid.Bool().Draw(t, "not through") {
			c.Remaining = rapid.Float64Range(0.1, 30).Draw(t, "left")
		}
		if rapid.Bool().Draw(t, "line") {
			c.Path = []geom.Vertex{{}, {Point: geom.Point{X: 5}}}
		} else {
			c.Outline = geom.Rectangle(0, 0, 10, 10)
			if c.Operation == "drill" {
				c.Outline = geom.Circle(geom.Point{}, rapid.Float64Range(1, 40).Draw(t, "radius"))
			}
		}
		part := router.Part{Name: "p", Stock: "birch ply", Bits: []mill.Bit{{Name: "six", Diameter: 6}}, Work: mill.Operations{Cuts: []mill.Cut{c}}, FromSpoilboard: rapid.Bool().Draw(t, "spoilboard")}
		layers, err := router.Layers(part, c.Face, router.Options{Version: dxf.R2000, Unit: unit, Pattern: pattern})
		if err != nil || len(layers) != 1 {
			t.Fatal(layers, err)
		}
		n, err := patternNames(pattern)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := n.read(layers[0].Name)
		if !ok || got.operation != c.Operation || got.line != (len(c.Path) > 0) {
			t.Fatalf("%s: %+v, %t", layers[0].Name, got, ok)
		}
		if got.face != "" && got.face != c.Face.String() {
			t.Fatalf("%s: %+v", layers[0].Name, got)
		}
		if !got.depthSaid {
			return
		}
		want := c.Depth
		if part.FromSpoilboard && c.Remaining > 0 {
			want = c.Remaining
		}
		if got.through != (c.Remaining == 0) || got.floor != (part.FromSpoilboard && c.Remaining > 0) || !got.through && math.Abs(got.depth-want) > got.step+1e-6 {
			t.Fatalf("%s of %g deep, %g left: %+v", layers[0].Name, c.Depth, c.Remaining, got)
		}
	})
}
