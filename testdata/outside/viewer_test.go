package outside

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/geomtest"
	"drawerwright/geom/joinery"
	"drawerwright/preview/scene"
	"drawerwright/preview/viewer"
)

// viewed is a page for viewer.mjs, with what it has to show, and the checks to be made.
type viewed struct {
	Name     string   `json:"name"`
	Page     string   `json:"page"`
	Title    string   `json:"title"`
	Drawers  int      `json:"drawers"`
	Overlaps bool     `json:"overlaps"`
	Checks   []string `json:"checks"`
	Printed  string   `json:"printed"` // the words of its packet, without spaces
}

// checked is what viewer.mjs says of one check.
type checked struct {
	Page, Check string
	Faults      []string
	Facts       json.RawMessage
}

// viewerChecks are all checks of a page.
var viewerChecks = []string{"load", "orbit", "explode", "assembly", "section", "measures", "plays", "measured", "pull",
	"milled", "overlaps", "keys", "theme", "woods", "focus", "refit", "axe", "update", "phone", "without WebGL", "without scripts"}

// maxBank is how large the page of a bank of twelve drawers may be, in bytes.
const maxBank = 1_500_000

// bankOfTwelve has a title that would run if it were taken for markup.
const bankOfTwelve = `job: "<img src=x onerror=alert(1)> & Co"
units: mm
stock:
  ply: {thickness: 12, grain: length}
  thin: {thickness: 6}
cutter: {kind: router, diameter: 5, reach: 22}
openings:
  tall: {width: 500, height: 1900, depth: 480, cabinet: frameless, fronts: overlay}
drawers:
  - name: tall
    opening: tall
    slide: side-mount
    rows: 12
    sides: ply
    bottom: thin
    joint: box-joint
    drawer-front: {stock: ply, handles: handle, handle-spacing: 96}
    pull: {shape: half-round}
`

// tightJob has a bottom whose thickest boards do not go into its groove, and tongues that are tight.
const tightJob = `job: Tight
units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], grain: length}
  front: {thickness: [12.62, 12.56, 12.68], grain: length}
  board: {thickness: [6.1, 6.3, 6.38]}
cutter: {kind: saw, width: 6.35}
drawers:
  - {name: tight, outside: 460 x 140 x 500, sides: birch, box-front: front, bottom: board}
`

// TestViewer: in Chromium the pages load without a word or a request, turn, open, are
// cut, tell dimensions, obey keys and fingers, show pictures without WebGL, and axe-core
// finds nothing serious. Of a second and a third page that is tried for which many drawers or
// names that would be markup make a difference, or everything ([geomtest.All]). The drawers of an
// opening are pulled out as far as their slides go, and what collides then is told.
func TestViewer(t *testing.T) {
	t.Parallel()
	bench, r := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	bank, rows := build(t, bankOfTwelve)
	routed, boxes := build(t, textOf(t, "../../samples/router-boxes.yaml"))
	page := func(dir string) string { return filepath.Join(dir, "boxes.html") }
	if info, err := os.Stat(page(bank)); err != nil || info.Size() > maxBank || len(rows.Drawers) != 12 {
		t.Errorf("the page of %d drawers: %v, %d bytes, at most %d", len(rows.Drawers), err, info.Size(), maxBank)
	}
	met, _ := build(t, knobsMeet)
	jams, _ := build(t, tightJob)
	many := []string{"load", "explode", "section", "measured", "pull", "focus", "refit", "without WebGL"}
	marked := []string{"load", "measures", "overlaps", "axe", "without WebGL", "without scripts"}
	if geomtest.All() {
		many, marked = viewerChecks, viewerChecks
	}
	pages := []viewed{
		{"bench", page(bench), "Bench drawers", len(r.Drawers), false, viewerChecks, packetWords(t, bench)},
		{"bank", page(bank), "<img src=x onerror=alert(1)> & Co", 12, false, many, packetWords(t, bank)},
		{"router", page(routed), "Router boxes", len(boxes.Drawers), false, []string{"milled", "assembly"},
			packetWords(t, routed)},
		{"knobs", page(met), "a-1 and 1 more", 2, false, []string{"load", "pull", "keys", "axe", "update", "phone"}, ""},
		{"tight", page(jams), "Tight", 1, false, []string{"load", "measured"}, ""},
		{"hostile", hostile(t), hostileName, 1, true, marked, ""},
	}
	for _, c := range view(t, pages...) {
		for _, f := range c.Faults {
			t.Errorf("%s, %s: %s", c.Page, c.Check, f)
		}
		if c.Page == "tight" && c.Check == "measured" && !bytes.Contains(c.Facts, []byte(`"jammed":1`)) {
			t.Errorf("nothing jams: %s", c.Facts)
		}
	}
}

// TestViewerComparator: the checks see a script that fails, a request, and a control
// without a name.
func TestViewerComparator(t *testing.T) {
	t.Parallel()
	dir, _ := build(t, textOf(t, "../../samples/bench-drawers.yaml"))
	spoil := func(name, old, put string, checks ...string) viewed {
		return viewed{name, spoiled(t, dir, name, old, put), "Bench drawers", 2, false, checks, packetWords(t, dir)}
	}
	for _, c := range view(t, spoil("request", "<main", `<img src="https://example.invalid/x.png" alt=""><main`, "load", "phone"),
		spoil("uncut", "gl.stencilFunc(gl.NOTEQUAL, 0, 255);", "gl.stencilFunc(gl.NEVER, 0, 255);", "section"),
		spoil("unglued", "drawStep(state, painter, theme, nearer);", "", "assembly"),
		spoil("unfocused", ".focus();\n}\n\nconst part", ";\n}\n\nconst part", "focus"),
		spoil("unfitted", "if (this.state.camera.fitted) this.state.fit();", "", "refit"),
		spoil("uncolored", "byWood && stocks", "false && stocks", "woods"),
		spoil("unmeasured", "v += times * off(source);", "", "measured"),
		spoil("unnamed", "'aria-label': `show ${what}`,", "", "keys", "axe")) {
		if len(c.Faults) == 0 {
			t.Errorf("%s: the check %q finds nothing", c.Page, c.Check)
		}
	}
}

// spoiled is the page of a build with something else in it, without the policy that would stop it.
func spoiled(t *testing.T, dir, name, old, put string) (file string) {
	t.Helper()
	good := textOf(t, filepath.Join(dir, "boxes.html"))
	policy := good[strings.Index(good, "<meta http-equiv"):]
	good = strings.Replace(good, policy[:strings.Index(policy, ">")+1], "", 1)
	if !strings.Contains(good, old) {
		t.Fatalf("the page has no %q", old)
	}
	file = filepath.Join(t.TempDir(), name+".html")
	if err := os.WriteFile(file, []byte(strings.Replace(good, old, put, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// packetWords are the words of a packet, without spaces.
func packetWords(t *testing.T, dir string) string {
	t.Helper()
	return strings.Join(strings.Fields(run(t, "pdftotext", filepath.Join(dir, "packet.pdf"), "-")), "")
}

// lookedAt is what a script finds in pages, which it reads as JSON, a line each.
func lookedAt[T, P any](t *testing.T, script string, pages []P) []T {
	t.Helper()
	var input strings.Builder
	for _, p := range pages {
		line, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		input.Write(append(line, '\n'))
	}
	return lines[T](t, input.String(), "node", script)
}

// view makes the checks of pages.
func view(t *testing.T, pages ...viewed) []checked {
	t.Helper()
	list := lookedAt[checked](t, "viewer.mjs", pages)
	ran := map[string]bool{}
	for _, c := range list {
		ran[c.Page+c.Check] = true
	}
	for _, p := range pages {
		for _, check := range p.Checks {
			if !ran[p.Name+check] {
				t.Errorf("%s: the check %q did not run", p.Name, check)
			}
		}
	}
	return list
}

const hostileName = `</script><script>alert(1)</script><img src=x onerror=alert(1)> "'&`

// hostile is the page of a drawer whose names would run if they were taken for markup,
// and whose left side stands too far in.
func hostile(t *testing.T) string {
	t.Helper()
	ply := joinery.Stock{Name: hostileName, Thickness: joinery.Measure(12), Grain: joinery.GrainLength}
	d, problems, _ := joinery.LayOut(joinery.Spec{Name: hostileName, Count: 1, Width: 400, Height: 120, Depth: 300, Sides: ply, Front: ply, Back: ply, Bottom: ply,
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Router, Width: 3}, GrooveEnds: joinery.GrooveStopped, BottomFit: joinery.BottomFlush,
		BottomClearance: 2, DadoClearance: 0.2, GrooveClearance: 0.2})
	for _, p := range problems {
		if p.IsError() {
			t.Fatal(p.Fact.In(geom.Millimeter))
		}
	}
	source := scene.Drawer{Drawer: d}
	for i := range d.Parts {
		p := &d.Parts[i]
		source.Names, source.Quantities = append(source.Names, hostileName+string(p.Role)), append(source.Quantities, 1)
		source.Numbers = append(source.Numbers, i+1)
		if p.Role == joinery.Side {
			p.Placements[0].Origin = p.Placements[0].Origin.Add(p.Placements[0].Normal().Scale(3))
		}
	}
	s, err := scene.Make(source, geom.FineGrid(1000))
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "index.html")
	out, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	svg := []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 3"><path d="M0 0L4 3" stroke="#000"/></svg>`)
	picture := viewer.Picture{SVG: func() ([]byte, error) { return svg, nil }, File: `a"b<c>.svg`}
	if err := viewer.Write(out, s, []viewer.Picture{picture}); err != nil {
		t.Fatal(err)
	}
	if err := out.Close(); err != nil {
		t.Fatal(err)
	}
	return file
}
