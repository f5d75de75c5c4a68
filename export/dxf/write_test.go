package dxf

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"drawerwright/export/dxf/dxftest"
)

// sample has one of everything.
func sample(v Version, u Unit) *Drawing {
	d := &Drawing{Version: v, Unit: u, Comments: []string{"made for a test"}}
	cut, slot, hole := d.Layer("DADO_INSIDE_5-99MM", 1), d.Layer("DADO_INSIDE_LINE_5-99MM", 30), d.Layer("DRILL", 255)
	d.Polyline(cut, Closed, []Vertex{{X: 0, Y: 0}, {X: 12.5, Y: 0, Bulge: 0.5}, {X: 12.5, Y: 140}})
	d.Circle(hole, 3, -4.25, 2.5)
	d.Polyline(slot, Open, []Vertex{{X: 1, Y: 2, Bulge: -1}, {X: 3, Y: 2, Bulge: 1}})
	return d
}

// pair is a tag without its line.
type pair struct {
	code  int
	value string
}

// pairsFrom gives the tags of a file from the one with this value up to the next
// ENDSEC.
func pairsFrom(t *testing.T, data []byte, section string) []pair {
	t.Helper()
	tags, err := dxftest.ReadTags(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var all []pair
	inside := false
	for _, tag := range tags {
		if inside && tag.Value == "ENDSEC" {
			return all
		}
		if inside {
			all = append(all, pair{tag.Code, tag.Value})
		}
		inside = inside || tag.Code == 2 && tag.Value == section
	}
	t.Fatalf("no section %s", section)
	return nil
}

// The tags of LWPOLYLINE and CIRCLE as the DXF Reference lists them: 90 vertex
// count, 70 closed, 43 constant width, 10 and 20 a vertex, 42 its bulge.
func TestEntitiesR2000(t *testing.T) {
	h := func(i int) string {
		f := writing{rows: make([]layer, 4)} // layer 0 and three more
		return string(appendHandle(nil, f.entityHandle(i)))
	}
	model := string(appendHandle(nil, modelRecord))
	want := []pair{
		{0, "LWPOLYLINE"}, {5, h(0)}, {330, model}, {100, "AcDbEntity"}, {8, "DADO_INSIDE_5-99MM"},
		{100, "AcDbPolyline"}, {90, "3"}, {70, "1"}, {43, "0.0"},
		{10, "0.0"}, {20, "0.0"}, {10, "12.5"}, {20, "0.0"}, {42, "0.5"}, {10, "12.5"}, {20, "140.0"},
		{0, "CIRCLE"}, {5, h(1)}, {330, model}, {100, "AcDbEntity"}, {8, "DRILL"},
		{100, "AcDbCircle"}, {10, "3.0"}, {20, "-4.25"}, {30, "0.0"}, {40, "2.5"},
		{0, "LWPOLYLINE"}, {5, h(2)}, {330, model}, {100, "AcDbEntity"}, {8, "DADO_INSIDE_LINE_5-99MM"},
		{100, "AcDbPolyline"}, {90, "2"}, {70, "0"}, {43, "0.0"},
		{10, "1.0"}, {20, "2.0"}, {42, "-1.0"}, {10, "3.0"}, {20, "2.0"},
	}
	if got := pairsFrom(t, written(t, sample(R2000, Millimeter)), "ENTITIES"); !slices.Equal(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

// The same of R12 (tags from memory): 66 vertices follow, 70 closed, and each
// vertex a record of its own.
func TestEntitiesR12(t *testing.T) {
	const cut, slot = "DADO_INSIDE_5-99MM", "DADO_INSIDE_LINE_5-99MM"
	head := func(layer, closed string) []pair {
		return []pair{{0, "POLYLINE"}, {8, layer}, {66, "1"}, {10, "0.0"}, {20, "0.0"}, {30, "0.0"}, {70, closed}}
	}
	vertex := func(layer, x, y string, bulge ...pair) []pair {
		return append([]pair{{0, "VERTEX"}, {8, layer}, {10, x}, {20, y}, {30, "0.0"}}, bulge...)
	}
	want := slices.Concat(
		head(cut, "1"), vertex(cut, "0.0", "0.0"), vertex(cut, "12.5", "0.0", pair{42, "0.5"}), vertex(cut, "12.5", "140.0"),
		[]pair{{0, "SEQEND"}, {8, cut}},
		[]pair{{0, "CIRCLE"}, {8, "DRILL"}, {10, "3.0"}, {20, "-4.25"}, {30, "0.0"}, {40, "2.5"}},
		head(slot, "0"), vertex(slot, "1.0", "2.0", pair{42, "-1.0"}), vertex(slot, "3.0", "2.0"),
		[]pair{{0, "SEQEND"}, {8, slot}},
	)
	if got := pairsFrom(t, written(t, sample(R12, Inch)), "ENTITIES"); !slices.Equal(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}

// The unit stands in the header of an R2000 file and in a comment of both. Codes
// of $INSUNITS: 1 in, 4 mm; of $MEASUREMENT (from memory): 0 inch, 1 metric.
func TestHeader(t *testing.T) {
	// The arc of bulge 0.5 over the chord from (12.5, 0) to (12.5, 140) lies to the
	// right: sagitta 0.5 x 140/2 = 35. The circle reaches down to -4.25 - 2.5.
	bounds := []pair{
		{9, "$EXTMIN"}, {10, "0.0"}, {20, "-6.75"}, {30, "0.0"},
		{9, "$EXTMAX"}, {10, "47.5"}, {20, "140.0"}, {30, "0.0"},
		{9, "$LIMMIN"}, {10, "0.0"}, {20, "-6.75"},
		{9, "$LIMMAX"}, {10, "47.5"}, {20, "140.0"},
	}
	for _, c := range []struct {
		v                    Version
		u                    Unit
		acadver, comment     string
		insunits, measurment string
	}{
		{R2000, Millimeter, "AC1015", "Units: millimeters", "4", "1"},
		{R2000, Inch, "AC1015", "Units: inches", "1", "0"},
		{R12, Millimeter, "AC1009", "Units: millimeters", "", ""},
		{R12, Inch, "AC1009", "Units: inches", "", ""},
	} {
		data := written(t, sample(c.v, c.u))
		head := "999\n" + c.comment + "\n999\nmade for a test\n0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\n" + c.acadver + "\n"
		if !strings.HasPrefix(string(data), head) {
			t.Errorf("%s %s: begins with %q", c.acadver, c.comment, data[:len(head)])
		}
		got := pairsFrom(t, data, "HEADER")
		variable := func(name string) string {
			i := slices.Index(got, pair{9, name})
			if i < 0 {
				return ""
			}
			return got[i+1].value
		}
		if i := slices.Index(got, bounds[0]); i < 0 || !slices.Equal(got[i:i+len(bounds)], bounds) {
			t.Errorf("%s: bounds in %v", c.acadver, got)
		}
		if a, b := variable("$INSUNITS"), variable("$MEASUREMENT"); a != c.insunits || b != c.measurment {
			t.Errorf("%s %s: $INSUNITS %q, $MEASUREMENT %q", c.acadver, c.comment, a, b)
		}
		if variable("$LUNITS") != "2" {
			t.Errorf("$LUNITS %q", variable("$LUNITS"))
		}
	}
}

// The same drawing gives the same bytes, in whatever order layers are looked up,
// and writing changes nothing.
func TestDeterministic(t *testing.T) {
	for _, v := range []Version{R2000, R12} {
		first := written(t, sample(v, Millimeter))
		d := sample(v, Millimeter)
		for range 20 {
			d.Layer("DRILL", 255)
			d.Layer("DADO_INSIDE_5-99MM", 1)
			if !bytes.Equal(first, written(t, d)) {
				t.Fatalf("version %d: the bytes changed", v)
			}
		}
	}
	d := sample(R2000, Millimeter)
	before := written(t, d)
	d.Version = R12
	written(t, d)
	d.Version = R2000
	if !bytes.Equal(before, written(t, d)) {
		t.Error("writing in another version in between changed the bytes")
	}
}
