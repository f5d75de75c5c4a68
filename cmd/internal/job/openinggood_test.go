package job

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"drawerwright/geom/joinery"
	"drawerwright/geom/opening"
)

const sound = "units: mm\nslides: {another: {kind: none}}\n"

// testFiles are files that jobs of tests can name.
var testFiles = map[string]string{
	"../shop/slides.yaml": `units: in
slides:
  ball 75: {kind: side-mount, clearance: 1/2, lengths: [16, 18, 20], load: 75 lb, screw-line: 1.5}
  bare: {kind: undermount}
`,
	"bad.yaml":   "units: mm\nslides:\n  a: {kind: side-mount, clearance: 900, inside-deduction: 40}\n  b: {kind: rail}\n  none: {kind: none}\n",
	"empty.yaml": "# to come\n",
	"job.yml":    "units: mm\nstock: {}\n",
	"torn.yaml":  "units: mm\nslides: [\n",
	// Names that are refused, though a folder may well hold such a file.
	"/etc/slides.yaml": sound, `shop\slides.yaml`: sound, "c:slides.yaml": sound, "": sound,
	"twin.yaml": "units: mm\nslides: {own: {kind: none}}\n",
}

func openTest(name string) (io.ReadCloser, error) {
	text, ok := testFiles[name]
	if !ok && strings.HasPrefix(name, "slides/") { // that the samples share
		return os.Open("../../../samples/" + name)
	}
	if !ok {
		return nil, errors.New("there is no " + name)
	}
	return io.NopCloser(strings.NewReader(text)), nil
}

const openingsFile = `job: Kitchen drawers
units: mm
stock:
  birch: {thickness: [12.1, 12.2], material: birch-plywood, sheet: 1525 x 1525, grain: length, price: 58, edge-banding: {thickness: 0.8, price: 0.45}}
  thin: {thickness: 6, material: birch-plywood, tolerance: en315-sanded}
  oak: {thickness: 20, material: white oak, cut: quartersawn}
climate: {now: 45 %, driest: 30 %, dampest: 65 %, temperature: 20 C}
cutter: {kind: router, diameter: 6}
openings:
  sink: {width: [560.5, 560, 561], height: 700, depth: [575, 576], diagonals: 896.4 x 896.6, cabinet: frameless, fronts: overlay, clearance-behind: 20}
  desk: {width: 400, height: 150, depth: 500, cabinet: face-frame, frame-overhang: 19, fronts: inset}
  hutch: {width: 300, height: 400, depth: 330, cabinet: frameless, fronts: none}
slides:
  quiet: {kind: undermount, inside-deduction: 40, lengths: [450, 500, 550], load: 40 kg}
slides-file: ../shop/slides.yaml
drawers:
  - name: sink
    opening: sink
    slide: quiet
    rows: [140, free, free]
    graduation: {arithmetic: 40 mm}
    front-gap: 3
    overlay: [16, 14, 0, 12.5]
    box-heights: [80, 100, 150, 200]
    line-boring: 32
    count: 2
    spares: 1
    load: 20 kg
    sides: birch
    bottom: thin
    joinery: {bottom-fit: slide-in, bottom-height: 13}
    drawer-front: {stock: oak, handles: handle, handle-spacing: 160, handle-from-top: 50}
  - name: desk
    opening: desk
    slide: ball 75
    reveal: 2
    sides: birch
    bottom: thin
    drawer-front: {stock: birch, handles: knob}
  - name: hutch
    opening: hutch
    slide: wooden-runner
    rows: 3
    graduation: {geometric: 1.25}
    sides: birch
    bottom: thin
  - {name: box, outside: 300 x 100 x 400, sides: birch, bottom: thin}
`

const inchOpeningsFile = `units: in
stock:
  ply: {thickness: 15/32, tolerance: ps1-sanded}
cutter: {kind: saw, width: 1/4}
openings:
  left: {width: 20, height: 24, depth: 22 1/2, cabinet: frameless, fronts: overlay}
slides: {own: {kind: side-mount, load: 60 lb}}
drawers:
  - {name: left, opening: left, slide: side-mount, rows: 4, graduation: equal, front-gap: 1/8, overlay: 1/2, sides: ply, bottom: ply, load: 30 lb}
  - {name: again, opening: left, slide: own, rows: 4, sides: ply, bottom: ply}
`

// TestReadOpenings: each row becomes a drawer with the sizes that follow from the
// opening and the slide.
func TestReadOpenings(t *testing.T) {
	j := read(t, openingsFile)
	type drawer struct {
		name                           string
		width, height, depth           float64
		frontWidth, frontHeight, holes float64
	}
	// Widths are aimed at the middle of what the slide takes, less what this router's boxes come out wider in
	// the mean: at each side the front reaches in by the lesser of a dado's depth and a rabbet's length, off by
	// 0.1, 0.05 and twice 0.02 at three sigma, which is sqrt(0.0133 / 9 / 2 pi) = 0.0153 less. To 0.01 mm.
	// sink: 560 - 40 - 1 / 2 + 2 x 12.15 - 0.03 wide, 575 - 20 - 10 = 545 takes the slide of 500.
	// Fronts are 560 + 16 + 14
	// wide; they share 700 + 12.5 - 2 x 3 - 140 = 566.5 as 263.25 and 303.25, and the steps of boxes are below.
	// desk: 400 - 2 x 12.7 - 25.4 / 32 - 0.03 wide; 500 - 3 - 12.2
	// takes 18 in. The front is 2 smaller all round, and the box 3/8 in lower than the front above and
	// below, since the slide is of a file in inches.
	// hutch: 300 - 2 x 0.75 - 0.5 / 2 - 0.03 wide, 330 - 5 deep; rows of 394 / 3.8125 = 103.34,
	// 129.18, 161.48, and the box 5 + 20 less.
	want := []drawer{
		{"sink-1", 543.77, 80, 500, 590, 140, 2},
		{"sink-2", 543.77, 200, 500, 590, 263.25, 2},
		{"sink-3", 543.77, 200, 500, 590, 303.25, 2},
		{"desk", 373.776, 146 - 2*9.525, 457.2, 396, 146, 1},
		{"hutch-1", 298.22, 394/3.8125 - 25, 325, 0, 0, 0},
		{"hutch-2", 298.22, 1.25*394/3.8125 - 25, 325, 0, 0, 0},
		{"hutch-3", 298.22, 1.5625*394/3.8125 - 25, 325, 0, 0, 0},
		{"box", 300, 100, 400, 0, 0, 0},
	}
	if len(j.Drawers) != len(want) {
		t.Fatalf("%d drawers, want %d", len(j.Drawers), len(want))
	}
	near := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
	for i, w := range want {
		d := j.Drawers[i]
		got := drawer{name: d.Name, width: d.Width, height: d.Height, depth: d.Depth}
		if f := d.DrawerFront; f != nil {
			got.frontWidth, got.frontHeight, got.holes = f.Width, f.Height, float64(f.Handles)
		}
		if got.name != w.name || math.Abs(got.width-w.width) > 0.012 || !near(got.height, w.height) || !near(got.depth, w.depth) ||
			!near(got.frontWidth, w.frontWidth) || !near(got.frontHeight, w.frontHeight) || got.holes != w.holes {
			t.Errorf("got %+v\nwant %+v", got, w)
		}
	}
	for i, d := range j.Drawers[:3] {
		if d.Count != 2 || d.Spares != 1 || d.Load != 20 || d.Undermount == nil || d.Undermount.BottomRecess != 13 || d.DrawerFront.HandleSpacing != 160 || d.DrawerFront.Stock.Name != "oak" {
			t.Errorf("drawer %d is %+v", i, d)
		}
		if at := j.Where(i, joinery.SettingOutside); at != (Position{18, 14}) {
			t.Errorf("the size of drawer %d is at %v", i, at)
		}
	}
	if j.Drawers[3].Undermount != nil || j.Drawers[7].Undermount != nil {
		t.Error("a drawer without such slides has an undermount")
	}
	var banks []string
	for _, b := range j.Banks {
		banks = append(banks, fmt.Sprintf("%s %s %v %g", b.Name, b.Plan.Slide.Name, b.Drawers, b.Plan.Slide.Load))
	}
	// 75 lb = 34.01942775 kg.
	if want := []string{"sink quiet [0 1 2] 40", "desk ball 75 [3] 34.01942775", "hutch wooden-runner [4 5 6] 0"}; !slices.Equal(banks, want) {
		t.Errorf("got %q", banks)
	}
	if o := j.Banks[0].Opening; !slices.Equal(o.Width, []float64{560.5, 560, 561}) || o.ClearanceBehind != 20 || o.FrameOverhang != 0 || o.Fronts != opening.Overlay || !slices.Equal(o.Diagonals, []float64{896.4, 896.6}) {
		t.Errorf("got %+v", o)
	}
	if got := j.Banks[1].Plan.Packing; got != 19 {
		t.Errorf("the desk's sides are packed out by %g", got)
	}
	if s := j.Banks[1].Plan.Slide; s.Kind != opening.SideMount || s.Clearance != 12.7 || math.Abs(s.ScrewLine-38.1) > 1e-9 || math.Abs(s.ClearanceAbove-9.525) > 1e-9 {
		t.Errorf("got %+v", s)
	}
}

// TestReadOpeningsInInches: the built-in slides of an inch job are made in inches.
func TestReadOpeningsInInches(t *testing.T) {
	j := read(t, inchOpeningsFile)
	// 22 1/2 in less the 3 mm behind takes 22 in; 20 in less two clearances of 1/2 in, half of the 1/16 in that
	// a box may be narrower, and 2 x 0.0056 mm that this saw's boxes come out wider in the mean (cuts off by
	// 0.03 mm; the lesser of two is 0.01 / sqrt(pi) less).
	for _, d := range j.Drawers {
		if math.Abs(d.Depth-22*25.4) > 1e-6 || math.Abs(d.Width-((19-1.0/32)*25.4-0.0112)) > 0.0127 {
			t.Errorf("%s is %g x %g x %g", d.Name, d.Width, d.Height, d.Depth)
		}
	}
	if len(j.Drawers) != 8 || j.Drawers[0].Name != "left-1" || j.Drawers[3].DrawerFront != nil {
		t.Errorf("got %+v", j.Drawers)
	}
}

// TestReadPlanWarnings: what an opening makes worth saying stands at what was measured of it.
func TestReadPlanWarnings(t *testing.T) {
	text := strings.Replace(openingsFile, "diagonals: 896.4 x 896.6", "diagonals: 894 x 899", 1)
	j, problems := Read("job.yaml", strings.NewReader(text), Files(openTest))
	if got := places(problems); !slices.Equal(got, []string{"10:79 out-of-square"}) || problems.Failed() || len(j.Banks) != 3 {
		t.Errorf("got %q", got)
	}
}

// TestOpeningJudgedAlone: an opening is judged though its drawers' stock cannot be read.
func TestOpeningJudgedAlone(t *testing.T) {
	text := strings.NewReplacer("thickness: 15/32", "thickness: thin", "width: 20,", "width: [20, 20 1/2],").
		Replace(inchOpeningsFile)
	_, problems := Read("job.yaml", strings.NewReader(text))
	if said := strings.Join(places(problems), "; "); !strings.Contains(said, "opening-spread") || !strings.HasPrefix(said, "3:") {
		t.Errorf("got %q", said)
	}
}

// TestReadRefusesFiles: without a way to open files a job cannot name one.
func TestReadRefusesFiles(t *testing.T) {
	_, problems := Read("job.yaml", strings.NewReader(openingsFile))
	if got := places(problems); !slices.Equal(got, []string{"15:14 file"}) {
		t.Errorf("got %q", got)
	}
}

// TestReadTooManyRows: openings make no more drawers than a file may list.
func TestReadTooManyRows(t *testing.T) {
	var text strings.Builder
	text.WriteString("units: mm\nstock: {a: {thickness: 12}}\ncutter: {kind: saw, width: 6}\n" +
		"openings: {o: {width: 400, height: 4000, depth: 500, cabinet: frameless, fronts: none}}\ndrawers:\n")
	for i := range maxDrawers/maxRows + 2 {
		fmt.Fprintf(&text, "- {name: d%d, opening: o, slide: none, rows: %d, sides: a, bottom: a}\n", i, maxRows)
	}
	j, problems := Read("job.yaml", strings.NewReader(text.String()))
	first := fmt.Sprintf("%d:3 too-many", 5+maxDrawers/maxRows+1) // that is more than fit, below five lines
	if got := places(problems); !slices.Equal(got, []string{first}) || len(j.Drawers) != maxDrawers || j.Banks != nil {
		t.Errorf("got %q, %d drawers in %d openings", got, len(j.Drawers), len(j.Banks))
	}
}
