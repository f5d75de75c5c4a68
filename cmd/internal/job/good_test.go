package job

import (
	"reflect"
	"strings"
	"testing"

	"drawerwright/geom"
	"drawerwright/geom/joinery"
)

// goodFiles are files without a mistake.
var goodFiles = map[string]string{
	"parts":              partsFile,
	"openings":           openingsFile,
	"openings in inches": inchOpeningsFile,
	"least": `units: mm
stock:
  birch: {thickness: 12.2}
cutter: {kind: saw, width: 6}
drawers:
  - {name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}
`,
	"all keys": `job: Bench drawers               # a title
units: mm
stock:
  birch: {thickness: [12.21, 12.16, 12.24], sheet: 1525 x 1525, grain: length, price: 58}
  "hard board (3)": {thickness: 5.9, sheet: 2440 x 1220, grain: none, price: 9.50}
cutter: {kind: saw, width: 6.35}
joinery:
  fence-distance: 6
  cutter-height: 5.5
  groove-ends: through
  bottom-fit: grooved-in
  bottom-clearance: 1.5
  glue-space: 0.2
dxf: {version: R12, units: in}
drawers:
  - name: bench wide
    count: 6
    outside: 460 x 140 x 500
    sides: birch
    box-front: birch
    back: hard board (3)
    bottom: hard board (3)
    joint: dado-rabbet
  - name: bench narrow
    outside: 300 x 140 x 500
    sides: birch
    bottom: hard board (3)
    cutter: {kind: router, width: 6}
    joinery:
      fence-distance: 7
      groove-ends: stopped
      bottom-fit: flush
      bottom-clearance: 0
      dado-clearance: 0.1
      groove-clearance: 0.3
      glue-space: 0
`,
	"router": `units: mm
job: All of the router
stock:
  birch: {thickness: 12}
cutter:
  kind: router
  bits:
    six: {diameter: 6, reach: 25, flutes: 2, type: compression, tip: 5, chip-load: 0.12, speed: 18000 rpm, plunge: 60 in/min, pass-depth: 8}
    half inch: {diameter: 1/2 in, feed: 5 m/min, type: down-cut}
router:
  overcut: 2
  relief: t-bone
  exact-slots: centerline
  depth-from: spoilboard
  register: {place: centerline, diameter: 5, distance: 30}
  tabs: {width: 8, height: 2, spacing: 300}
  onion-skin: 0.4
  small-part: 120
  part-spacing: 20
  into-spoilboard: 0.2
joinery: {faces: one}
dxf:
  layers: "{operation}_{face}_{depth}_{cutter}"
  order: [groove, dado]
  files: "{part}-{thickness}"
drawers:
  - {name: a, outside: 400 x 100 x 500, sides: birch, bottom: birch}
  - {name: b, outside: 400 x 100 x 500, sides: birch, bottom: birch, joint: dado-rabbet}
  - {name: c, outside: 400 x 100 x 500, sides: birch, bottom: birch, cutter: {kind: router, diameter: 4, reach: 20, flutes: 3}}
  - {name: d, outside: 400 x 100 x 500, sides: birch, bottom: birch, cutter: {kind: saw, width: 6.2}}
`,
	"inches": `units: in
stock:
  ply: {thickness: 31/64, sheet: 8 ft x 4 ft}
  thin: {thickness: [15/64, 0.23, "6 mm"]}
cutter: {kind: router, width: 1/4}
drawers:
- name: top
  outside: 18 x 5 1/2 x 20 in
  sides: ply
  bottom: thin
- name: low
  outside: 1' 6" x 5-1/2" x 1' 8"
  sides: ply
  bottom: thin
- name: list
  outside: [18, 5 1/2, 20]
  sides: ply
  bottom: thin
- name: metric
  outside: 45.72X13.97×50.8 cm
  sides: ply
  bottom: thin
- name: mixed
  outside: ["457.2 mm", '5½"', 50.8 cm]
  sides: ply
  bottom: thin
`,
	"JSON":             `{"units": "mm", "stock": {"ply": {"thickness": [12, 12.1]}}, "cutter": {"kind": "saw", "width": 6}, "drawers": [{"name": "a", "outside": [400, 100, 500], "sides": "ply", "bottom": "ply"}]}`,
	"lines of JSON":    "{\n\"units\": \"mm\",\n\"stock\": {\"ply\": {\"thickness\": 12}},\n\"cutter\": {\"kind\": \"saw\", \"width\": 6},\n\"drawers\": [\n{\"name\": \"a\",\n\"outside\": \"400 x 100 x 500\",\n\"sides\": \"ply\", \"bottom\": \"ply\"}\n]\n}\n",
	"odd names":        "units: mm\nstock: {12: {thickness: 12}, yes: {thickness: 010}, null: {thickness: 9}}\ncutter: {kind: saw, width: 6}\ndrawers:\n- {name: 010, outside: 400x100x500, sides: 12, box-front: yes, bottom: null}\n",
	"marks of Windows": "\ufeffunits: mm # é\r\njob: \"a\ttab\"\r\nstock:\r\n\r\n  ply: {thickness: 12}\r\ncutter: {kind: saw, width: 6}\r\ndrawers:\r\n  # é\r\n  - name: é\t# a tab\r\n    outside:\t400 x 100 x 500\r\n    sides: ply\r\n    bottom: ply",
	"own cutters": `---
units: mm
stock:
    ply:
        thickness:
          - 12.0
          - 12.1
drawers:
    - name: sawn
      cutter:
          kind: saw
          width: 1/4 in
      outside:
      - 400
      - 100
      - 500
      sides: ply
      bottom: ply
    - name: routed
      cutter: {
        kind: router,
        width: 6,
      }
      outside: 400 x 100 x 500
      sides: ply
      bottom: ply
      joinery: {dado-clearance: 0.3}
joinery: {dado-clearance: 0.2, groove-clearance: 0.1}
`,
}

// read reads a file that has no mistakes.
func read(t *testing.T, text string) *Job {
	t.Helper()
	job, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
	if len(problems) > 0 {
		t.Fatalf("%d problems, the first:\n%s", len(problems), problems[0])
	}
	return job
}

func TestReadGoodFiles(t *testing.T) {
	for name, text := range goodFiles {
		t.Run(name, func(t *testing.T) { checkJob(t, read(t, text)) })
	}
}

func TestReadDefaults(t *testing.T) {
	j := read(t, goodFiles["least"])
	birch := joinery.Stock{Name: "birch", Thickness: joinery.Measure(12.2), Grain: joinery.GrainNone}
	want := joinery.Spec{
		Name: "a", Count: 1, Units: geom.Millimeter, Width: 400, Height: 100, Depth: 500,
		Sides: birch, Front: birch, Back: birch, Bottom: birch,
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6},
		GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomAuto, BottomClearance: 2, GrooveClearance: 0.2, Limits: joinery.DefaultLimits, OnEnd: joinery.OnEnd{Length: geom.Interval{Min: 150, Max: 600}, MinWidth: 60},
	}
	if got := j.Drawers[0].Spec; !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
	if j.File != "job.yaml" || j.Title != "" || j.Units != geom.Millimeter || j.DXFVersion != "R2000" || j.DXFUnits != geom.Millimeter {
		t.Errorf("got %+v", j)
	}
}

func TestReadAllKeys(t *testing.T) {
	j := read(t, goodFiles["all keys"])
	birch := joinery.Stock{Name: "birch", Thickness: joinery.Measure(12.21, 12.16, 12.24), Length: 1525, Width: 1525, Grain: joinery.GrainLength}
	board := joinery.Stock{Name: "hard board (3)", Thickness: joinery.Measure(5.9), Length: 2440, Width: 1220, Grain: joinery.GrainNone}
	want := []joinery.Spec{{
		Name: "bench wide", Count: 6, Width: 460, Height: 140, Depth: 500,
		Sides: birch, Front: birch, Back: board, Bottom: board,
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Saw, Width: 6.35},
		FenceDistance: 6, CutterHeight: 5.5, GrooveEnds: joinery.GrooveThrough, BottomFit: joinery.BottomGroovedIn,
		BottomClearance: 1.5, GlueSpace: 0.2, GrooveClearance: 0.2, Limits: joinery.DefaultLimits, OnEnd: joinery.OnEnd{Length: geom.Interval{Min: 150, Max: 600}, MinWidth: 60},
	}, {
		Name: "bench narrow", Count: 1, Width: 300, Height: 140, Depth: 500,
		Sides: birch, Front: birch, Back: birch, Bottom: board,
		Joint: joinery.DadoRabbet, Cutter: joinery.Cutter{Kind: joinery.Router, Width: 6},
		DepthFrom: joinery.FromTop, SlotRoom: 0.05, FenceDistance: 7, CutterHeight: 5.5, GrooveEnds: joinery.GrooveStopped, BottomFit: joinery.BottomFlush,
		DadoClearance: 0.1, GrooveClearance: 0.3, Limits: joinery.DefaultLimits,
	}}
	for i, w := range want {
		if got := j.Drawers[i].Spec; !reflect.DeepEqual(got, w) {
			t.Errorf("got %+v\nwant %+v", got, w)
		}
	}
	if len(j.Stocks) != 2 || !reflect.DeepEqual(j.Stocks, []joinery.Stock{birch, board}) {
		t.Errorf("got %+v", j.Stocks)
	}
	if j.Title != "Bench drawers" || j.DXFVersion != "R12" || j.DXFUnits != geom.Inch {
		t.Errorf("got %+v", j)
	}
}

func TestReadInches(t *testing.T) {
	j := read(t, goodFiles["inches"])
	// 18 in = 457.2 mm, 5 1/2 in = 139.7 mm, 20 in = 508 mm in every form.
	for _, d := range j.Drawers {
		if d.Width != 457.2 || d.Height != 139.7 || d.Depth != 508 {
			t.Errorf("%s is %g x %g x %g", d.Name, d.Width, d.Height, d.Depth)
		}
		if d.GrooveEnds != joinery.GrooveStopped || d.DadoClearance != 0.25 ||
			d.GrooveClearance != 0.2 || d.BottomClearance != 25.4/16 {
			t.Errorf("%s does not have the defaults of a router: %+v", d.Name, d.Spec)
		}
	}
	ply, thin := j.Stocks[0], j.Stocks[1]
	// 31/64 in = 12.303125 mm, 8 ft = 2438.4 mm, 15/64 in = 5.953125 mm, 0.23 in = 5.842 mm.
	if ply.Thickness != joinery.Measure(12.303125) || ply.Length != 2438.4 || ply.Width != 1219.2 || thin.Thickness != joinery.Measure(5.953125, 5.842, 6) {
		t.Errorf("got %+v", j.Stocks)
	}
	if j.DXFUnits != geom.Inch {
		t.Errorf("drawings in %v", j.DXFUnits)
	}
}

func TestReadNamesAsWritten(t *testing.T) {
	j := read(t, goodFiles["odd names"])
	d := j.Drawers[0]
	if d.Name != "010" || d.Sides.Name != "12" || d.Front.Name != "yes" || d.Bottom.Name != "null" || d.Front.Thickness.Mean != 10 {
		t.Errorf("got %+v", d.Spec)
	}
}

func TestReadBothMachines(t *testing.T) {
	j := read(t, goodFiles["own cutters"])
	sawn, routed := j.Drawers[0], j.Drawers[1]
	if sawn.Cutter.Width != 6.35 || sawn.DadoClearance != 0 || sawn.GrooveEnds != joinery.GrooveThrough {
		t.Errorf("got %+v", sawn.Spec)
	}
	if routed.DadoClearance != 0.3 || routed.GrooveClearance != 0.1 || routed.GrooveEnds != joinery.GrooveStopped {
		t.Errorf("got %+v", routed.Spec)
	}
}

// TestReadGrain: a grain along the second number turns the sheet, so that its
// length is always along the grain.
func TestReadGrain(t *testing.T) {
	j := read(t, `units: in
stock:
  long: {thickness: 1/2, sheet: 96 x 48, grain: length}
  tall: {thickness: 1/2, sheet: 48 x 96, grain: width}
  plain: {thickness: 1/4, sheet: 48 x 96}
cutter: {kind: saw, width: 0.26}
drawers:
  - {name: a, outside: 12 x 5 x 20, sides: long, bottom: plain}
`)
	for i, want := range []joinery.Stock{{Length: 2438.4, Width: 1219.2, Grain: joinery.GrainLength}, {Length: 2438.4, Width: 1219.2, Grain: joinery.GrainLength}, {Length: 1219.2, Width: 2438.4, Grain: joinery.GrainNone}} {
		if s := j.Stocks[i]; s.Length != want.Length || s.Width != want.Width || s.Grain != want.Grain {
			t.Errorf("%s: %g x %g, grain %s", s.Name, s.Length, s.Width, s.Grain)
		}
	}
}

// TestReadDecimalCommas: where a comma parts a number in two, the hint says so.
func TestReadDecimalCommas(t *testing.T) {
	for _, text := range []string{
		strings.Replace(base, "thickness: 5.9", "thickness: 5,9", 1),
		strings.Replace(base, "[12.21, 12.16, 12.24]", "[11,85, 11,9]", 1),
		strings.Replace(base, "460 x 140 x 500", "460 x 140,5 x 500", 1),
		strings.Replace(base, "  - name: narrow\n    outside: [300, 140, 500]", "  - {name: n, outside: 300 x 140 x 500,5, sides: birch, bottom: hardboard}\n  - name: narrow\n    outside: [300, 140, 500]", 1),
	} {
		_, problems := Read("job.yaml", strings.NewReader(text))
		if len(problems) != 1 || !problems[0].IsError() || !strings.Contains(problems[0].Hint, "decimal") {
			t.Errorf("%v", problems)
		}
	}
}

func TestReadParts(t *testing.T) {
	const file = "units: mm\nstock: {a: {thickness: 12}, b: {thickness: 9}, c: {thickness: 6}}\ncutter: {kind: saw, width: 6}\ndrawers:\n- {name: a, outside: 400x100x500, sides: a, bottom: c%s}\n"
	for given, want := range map[string]string{
		"": "aaac", ", box-front: b": "abbc", ", back: b": "aabc", ", box-front: b, back: a": "abac",
	} {
		d := read(t, strings.Replace(file, "%s", given, 1)).Drawers[0]
		if got := d.Sides.Name + d.Front.Name + d.Back.Name + d.Bottom.Name; got != want {
			t.Errorf("%q gives %s, want %s", given, got, want)
		}
	}
}

func TestReadManyComments(t *testing.T) {
	read(t, strings.Repeat("# a\n", maxMarks)+goodFiles["least"])
}
