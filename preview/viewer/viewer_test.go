package viewer

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"io/fs"
	"math"
	"regexp"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/geom/solid"
	"drawerwright/preview/scene"
)

const hostile = `</script><script>alert(1)</script><!--<img src=x onerror=alert(1)> "'&`

// sample is a side, and a board that stands in its first dado with a clearance of 0.25.
func sample(t *testing.T) scene.Scene {
	t.Helper()
	side, board := geomtest.Side(), geom.Panel{Outline: geom.Rectangle(0, 0, 294, 140), Thickness: 6.1}
	s := scene.Scene{Title: hostile, Groups: []scene.Group{scene.Alone(hostile, 0)},
		Boxes: []scene.Box{{Name: hostile, Count: 1, Overlaps: []scene.Overlap{{Name: hostile}}, Pieces: []scene.Piece{
			{Name: hostile, Placement: geom.Placement{X: geom.Back, Y: geom.Up}},
			{Name: hostile, Part: 1,
				Placement: geom.Placement{Origin: geom.Vec3{X: 6.1, Y: 12.2}, X: geom.Right, Y: geom.Up}}}}}}
	for i, p := range []geom.Panel{side, board} {
		m, err := solid.Build(p, solid.Options{})
		if err != nil {
			t.Fatal(err)
		}
		s.Meshes = append(s.Meshes, solid.Pack(m))
		s.Parts = append(s.Parts, scene.Part{Name: hostile, Role: joinery.Side, Stock: hostile, Panel: p,
			Mesh: i, Eased: i, Milled: i})
	}
	return s
}

// picture gives one.
func picture(svg string) func() ([]byte, error) {
	return func() ([]byte, error) { return []byte(svg), nil }
}

func written(t *testing.T) string {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, sample(t), []Picture{{SVG: picture(`<svg viewBox="0 0 1 1"></svg>`), File: hostile}}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestNamesAreText: what a name holds ends no script and begins no element.
func TestNamesAreText(t *testing.T) {
	page := written(t)
	for what, want := range map[string]int{"<script": 2, "</script>": 2, "<img": 0, "onerror=alert(1)>": 0, "<!--": 0} {
		if n := strings.Count(page, what); n != want {
			t.Errorf("%q stands %d times in the page, not %d", what, n, want)
		}
	}
	data, err := Data(sample(t))
	if err != nil || bytes.ContainsAny(data, "<>&") {
		t.Errorf("the data would not be safe in a page, %v", err)
	}
	var back readBack
	err = json.Unmarshal(data, &back)
	if err != nil || back.Title != hostile || back.Boxes[0].Pieces[0].Name != hostile ||
		!strings.HasPrefix(back.Boxes[0].Plays[0].Name, hostile) {
		t.Errorf("%v, %+v", err, back)
	}
}

// readBack is what this test reads of the data.
type readBack struct {
	Title  string
	Bytes  string
	Meshes []struct{ At, Vertices, Triangles int }
	Boxes  []struct{ Pieces, Plays []struct{ Name string } }
}

// TestPolicy: the page forbids all but its own script and style, by their hashes, and
// names no place to ask, to lead to or to send to.
func TestPolicy(t *testing.T) {
	page := written(t)
	for tag, kind := range map[string]string{"script": "script-src", "style": "style-src"} {
		from := strings.LastIndex(page, "<"+tag+">") + len(tag) + 2
		sum := sha256.Sum256([]byte(page[from : from+strings.Index(page[from:], "</"+tag+">")]))
		hash := strings.ReplaceAll(base64.StdEncoding.EncodeToString(sum[:]), "+", "&#43;")
		if !strings.Contains(page, kind+" 'sha256-"+hash+"'") {
			t.Errorf("the policy has another hash for the %s", tag)
		}
	}
	if !strings.Contains(page, `content="default-src 'none'; `) {
		t.Error("the policy does not begin with none")
	}
	// What the first word does not cover: where links of the page lead, and where a form is sent.
	for _, must := range []string{"base-uri 'none'", "form-action 'none'", "require-trusted-types-for 'script'"} {
		if !strings.Contains(page, "; "+must) {
			t.Errorf("the policy has no %s", must)
		}
	}
	if at := regexp.MustCompile(`https?://|url\(|@import|\bfetch\(|XMLHttpRequest|WebSocket|importScripts`).FindString(page); at != "" {
		t.Errorf("the page has %q", at)
	}
	if page != written(t) {
		t.Error("not the same bytes twice")
	}
}

// TestMeshes: the bytes hold the solids.
func TestMeshes(t *testing.T) {
	s := sample(t)
	text, err := Data(s)
	if err != nil {
		t.Fatal(err)
	}
	var d readBack
	if err := json.Unmarshal(text, &d); err != nil {
		t.Fatal(err)
	}
	data, err := base64.StdEncoding.DecodeString(d.Bytes)
	if err != nil {
		t.Fatal(err)
	}
	var back solid.Mesh
	m := d.Meshes[0]
	float := func(i int) float64 {
		return float64(math.Float32frombits(binary.LittleEndian.Uint32(data[m.At+4*i:])))
	}
	for i := range m.Vertices {
		back.Vertices = append(back.Vertices, geom.Vec3{X: float(3 * i), Y: float(3*i + 1), Z: float(3*i + 2)})
	}
	for i := range m.Triangles {
		at := m.At + 12*m.Vertices + 6*i
		corner := func(k int) int32 { return int32(binary.LittleEndian.Uint16(data[at+2*k:])) }
		back.Triangles = append(back.Triangles, [3]int32{corner(0), corner(1), corner(2)})
	}
	if err := geomtest.CheckMesh(back); err != nil || back.Volume() != s.Meshes[0].Mesh().Volume() {
		t.Errorf("%v, volume %g of %g", err, back.Volume(), s.Meshes[0].Mesh().Volume())
	}
}

// TestEveryScriptIsUsed: no file is forgotten in the order of scripts.
func TestEveryScriptIsUsed(t *testing.T) {
	files, err := fs.Glob(sources, "script/*.js")
	if err != nil || len(files) != len(scripts) {
		t.Errorf("%d files, %d in the order: %v", len(files), len(scripts), err)
	}
	if strings.Contains(Style()+Script(), "</") {
		t.Error("a source would end its element")
	}
}

// TestMostPictures: pictures beyond the room are named, not held.
func TestMostPictures(t *testing.T) {
	s := sample(t)
	s.Boxes = append(s.Boxes, s.Boxes[0])
	large := "<svg>" + strings.Repeat(" ", maxPictures) + "</svg>"
	var out bytes.Buffer
	if err := Write(&out, s, []Picture{{SVG: picture("<svg></svg>"), File: "a.svg"}, {SVG: picture(large), File: "b.svg"}}); err != nil {
		t.Fatal(err)
	}
	if page := out.String(); strings.Count(page, "<svg") != 1 || !strings.Contains(page, `href="b.svg"`) {
		t.Errorf("%d pictures in the page", strings.Count(page, "<svg"))
	}
}
