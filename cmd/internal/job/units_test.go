package job

import (
	"fmt"
	"math/big"
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom"

	"pgregory.net/rapid"
)

// sixtyFourths writes a number of 64ths of an inch as a fraction of an inch
// (17 5/8) and as exact millimeters: 1/64 in is 0.396875 mm.
func sixtyFourths(n int) (inches, millimeters string) {
	inches = geom.Length(int64(n) * 396_875).Number(geom.Inch)
	millimeters = big.NewRat(int64(n)*396_875, 1_000_000).FloatString(6)
	return inches, millimeters
}

// TestUnitsDoNotMatter writes one job in inches and in millimeters, in
// different forms, and expects the same lengths to the nanometer.
func TestUnitsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var inches, millimeters strings.Builder
		both := func(format string, lengths ...int) {
			in, mm := make([]any, len(lengths)), make([]any, len(lengths))
			for i, n := range lengths {
				in[i], mm[i] = sixtyFourths(n)
			}
			fmt.Fprintf(&inches, format, in...)
			fmt.Fprintf(&millimeters, format, mm...)
		}
		draw := func(name string, least, most int) int { return rapid.IntRange(least, most).Draw(t, name) }
		pick := func(forms ...string) string { return rapid.SampledFrom(forms).Draw(t, "form") }
		inches.WriteString("units: in\n")
		millimeters.WriteString("units: mm\n")
		reading := draw("thickness", 3, 200)
		both(pick("stock: {ply: {thickness: [%s, %s], sheet: %s x %s}}\n", "stock:\n  ply:\n    thickness:\n    - %s\n    - \"%s\"\n    sheet: [%s, '%s']\n"),
			reading, reading+draw("second", 0, reading/17), draw("length", 3, 10_000), draw("width", 3, 10_000))
		both("cutter: {kind: router, width: %s}\n", draw("cutter", 2, 150))
		both("joinery: {fence-distance: %s, cutter-height: %s, bottom-clearance: %s, dado-clearance: %s, groove-clearance: %s, glue-space: %s}\n",
			draw("fence", 1, 250), draw("cutter height", 1, 250), draw("slack", 0,
				125), draw("dado clearance", 0, 12), draw("groove clearance", 0, 12), draw("glue space", 0, 12))
		both("drawers:\n"+pick("- {name: a, outside: %s x %s x %s, sides: ply, bottom: ply}\n", "  - name: a\n    outside: [%s, %s, %s]\n    sides: ply\n    bottom: ply\n"),
			draw("width", 3, 10_000), draw("height", 3, 10_000), draw("depth", 3, 10_000))

		in, inProblems := Read("in.yaml", strings.NewReader(inches.String()))
		mm, mmProblems := Read("mm.yaml", strings.NewReader(millimeters.String()))
		if len(inProblems)+len(mmProblems) > 0 {
			t.Fatalf("%v%v\n%s%s", inProblems, mmProblems, &inches, &millimeters)
		}
		a, b := in.Drawers[0].Spec, mm.Drawers[0].Spec
		if a.Units != geom.Inch || b.Units != geom.Millimeter {
			t.Fatalf("units are %v and %v", a.Units, b.Units)
		}
		b.Units, b.Limits = a.Units, a.Limits // which are round in each unit
		if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(in.Stocks[0], mm.Stocks[0]) {
			t.Fatalf("%+v\n%+v\n%s%s", a, b, &inches, &millimeters)
		}
	})
}
