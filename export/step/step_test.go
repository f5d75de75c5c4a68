package step_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"drawerwright/export/step"
	"drawerwright/geom"
	"drawerwright/geom/geomtest"
)

// written is a file, which has to be the same each time.
func written(t *testing.T, write func(*bytes.Buffer) error) string {
	t.Helper()
	var out, again bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	if err := write(&again); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(out.Bytes(), again.Bytes()) {
		t.Error("a second file is another one")
	}
	return out.String()
}

func part(t *testing.T, p step.Part) string {
	t.Helper()
	return written(t, func(to *bytes.Buffer) error { return step.WritePart(to, p) })
}

var (
	entityOf = regexp.MustCompile(`^(#\d+)=([A-Z0-9_]*)\((.*)\);$`)
	refOf    = regexp.MustCompile(`#\d+`)
	quoted   = regexp.MustCompile(`'(?:[^']|'')*'`)
)

// entities are those of a file by their numbers. Each is named once, in the order of numbers, and
// names only those before it.
func entities(t *testing.T, file string) map[string]string {
	t.Helper()
	head, data, ok := strings.Cut(file, "DATA;\n")
	schema := "FILE_SCHEMA(('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }'));\nENDSEC;\n"
	if !ok || !strings.HasPrefix(head, "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((") ||
		!strings.Contains(head, "'2;1');\nFILE_NAME('") || !strings.HasSuffix(head, schema) ||
		!strings.HasSuffix(data, "ENDSEC;\nEND-ISO-10303-21;\n") {
		t.Fatalf("no Part 21 file:\n%s", head)
	}
	out, named := map[string]string{}, map[string]bool{}
	for _, line := range strings.Split(strings.TrimSuffix(data, "ENDSEC;\nEND-ISO-10303-21;\n"), "\n") {
		if line == "" {
			continue
		}
		m := entityOf.FindStringSubmatch(line)
		if m == nil {
			t.Fatalf("no entity: %s", line)
		}
		if _, twice := out[m[1]]; twice {
			t.Errorf("%s is there twice", m[1])
		}
		plain := quoted.ReplaceAllString(m[3], "''")
		for _, ref := range refOf.FindAllString(plain, -1) {
			if _, known := out[ref]; !known {
				t.Errorf("%s names %s before it is there", line, ref)
			}
			named[ref] = true
		}
		if strings.Count(plain, "(") != strings.Count(plain, ")") {
			t.Errorf("parentheses of %s", line)
		}
		out[m[1]] = m[2]
	}
	for ref, kind := range out {
		ends := map[string]bool{"APPLICATION_PROTOCOL_DEFINITION": true, "PRODUCT_RELATED_PRODUCT_CATEGORY": true,
			"SHAPE_DEFINITION_REPRESENTATION": true, "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION": true}
		if !named[ref] && !ends[kind] {
			t.Errorf("nothing names %s, %s", ref, kind)
		}
	}
	return out
}

func count(of map[string]string, kind string) (n int) {
	for _, k := range of {
		if k == kind {
			n++
		}
	}
	return n
}

// TestPart: a part is one product with one solid, of as many faces as a person counts.
func TestPart(t *testing.T) {
	blank := geom.Panel{Outline: geom.Rectangle(0, 0, 300, 100), Thickness: 12.2, Pockets: []geom.Pocket{
		{Depth: 6.1, Outline: geom.Circle(geom.Point{X: 50, Y: 50}, 2.5)}}}
	e := entities(t, part(t, step.Part{Name: "side", Panel: blank}))
	for kind, want := range map[string]int{"PRODUCT": 1, "MANIFOLD_SOLID_BREP": 1, "CLOSED_SHELL": 1, "ADVANCED_FACE": 9,
		"FACE_OUTER_BOUND": 9, "FACE_BOUND": 1, "PLANE": 7, "CYLINDRICAL_SURFACE": 2, "CIRCLE": 4, "LINE": 14,
		"VERTEX_POINT": 12, "EDGE_CURVE": 18, "ORIENTED_EDGE": 36} {
		if n := count(e, kind); n != want {
			t.Errorf("%d of %s, want %d", n, kind, want)
		}
	}
}

// TestBox: each part is there once, each piece in its place by name.
func TestBox(t *testing.T) {
	parts := []step.Part{{"side", geomtest.Side()}, {"bottom", geom.Panel{Outline: geom.Rectangle(0, 0, 90, 90), Thickness: 6}}}
	stand := geom.Placement{X: geom.Back, Y: geom.Up}
	away := geom.Placement{Origin: geom.Vec3{X: 100}, X: geom.Back, Y: geom.Up}
	file := written(t, func(to *bytes.Buffer) error {
		return step.WriteBox(to, "box", parts, []step.Piece{{"left side", 0, stand}, {"right side", 0, away}, {"bottom", 1, stand}})
	})
	e := entities(t, file)
	for kind, want := range map[string]int{"PRODUCT": 3, "MANIFOLD_SOLID_BREP": 2, "NEXT_ASSEMBLY_USAGE_OCCURRENCE": 3,
		"CONTEXT_DEPENDENT_SHAPE_REPRESENTATION": 3, "ITEM_DEFINED_TRANSFORMATION": 3} {
		if n := count(e, kind); n != want {
			t.Errorf("%d of %s, want %d", n, kind, want)
		}
	}
	for _, said := range []string{"'left side'", "'right side'", "PRODUCT('side','side'", "PRODUCT('box','box'", "(100.,0.,0.)"} {
		if !strings.Contains(file, said) {
			t.Errorf("nothing says %s", said)
		}
	}
}

// TestText: what strings of Part 21 do not have is written as the standard says.
func TestText(t *testing.T) {
	p := geom.Panel{Outline: geom.Rectangle(0, 0, 10, 10), Thickness: 1}
	for name, want := range map[string]string{`it's`: `'it''s'`, `a\b`: `'a\\b'`, "Tür 1": `'T\X2\00FC\X0\r 1'`,
		"\U0001F600": `'\X4\0001F600\X0\'`, "#7;": `'#7;'`} {
		file := part(t, step.Part{Name: name, Panel: p})
		if !strings.Contains(file, "PRODUCT("+want+",") {
			t.Errorf("%q is not written as %s", name, want)
		}
		entities(t, file)
	}
}
