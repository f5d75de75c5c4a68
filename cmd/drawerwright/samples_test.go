package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/cmd/internal/present"
	"drawerwright/cmd/internal/record"
	"drawerwright/geom"
)

// sampled is a sample as parts --json reports it.
func sampled(t *testing.T, name string) record.Report {
	t.Helper()
	samples := inTemp(t)
	code, out, errs := call(t, "", "parts", filepath.Join(samples, name), "--json")
	if code != exitDone {
		t.Fatal(errs)
	}
	r, err := record.Read([]byte(out))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func drawerOf(t *testing.T, r record.Report, name string) record.Drawer {
	t.Helper()
	i := slices.IndexFunc(r.Drawers, func(d record.Drawer) bool { return d.Name == name })
	if i < 0 {
		t.Fatalf("no drawer %s", name)
	}
	return r.Drawers[i]
}

func partOf(t *testing.T, r record.Report, name string) record.Part {
	t.Helper()
	i := slices.IndexFunc(r.Parts, func(p record.Part) bool { return p.Name == name })
	if i < 0 {
		t.Fatalf("no part %s", name)
	}
	return r.Parts[i]
}

// is compares a number worked out by hand.
func is[N ~float64](t *testing.T, what string, got, want N) {
	t.Helper()
	if math.Abs(float64(got-want)) > 1e-4 {
		t.Errorf("%s: %g, by hand %g", what, got, want)
	}
}

// TestKitchenBank, by hand. The opening counts 563.6 x 702 x 545. Boxes: 563.6 - 2 x
// 12.7, less twice the 0.05 by which the thickest side is over the mean of 11.9:
// 538.1 wide; of 545 - 3 the slide of 500 fits. Fronts: 563.6 + 2 x 16 = 595.6 wide;
// of 702 + 32 - 140 - 3 x 3 = 585 the three free ones get 195 each. The lowest begins
// at -16, its box at 10: 195 - 16 - 10 - 10 = 159 is room for 150. Diagonals of 900.5
// and 900.1 over a width of 563.6: 0.4 x 1800.6 / (4 x 563.6) = 0.3195 out of square.
// Boxes are aimed at 1.5875 / 2 below the most that the slides take, 538.2, and 0.03 less,
// which is what they come out wider in the mean (see TestReadOpenings of the package job).
// A box front is 2 x 11.9 - 2 x 5.95 shorter.
func TestKitchenBank(t *testing.T) {
	r := sampled(t, "kitchen-bank.yaml")
	for i, height := range []float64{90, 150, 150, 150} {
		d := drawerOf(t, r, fmt.Sprintf("base-%d", i+1))
		aimed(t, d.Name+" width", d.Outside.Width, 538.2-0.79375-0.0303, 0.01)
		is(t, d.Name+" height", d.Outside.Height.MM(), height)
		is(t, d.Name+" depth", d.Outside.Depth, 500)
	}
	c := r.Cabinets[0]
	is(t, "out of square", c.OutOfSquare, 0.4*1800.6/(4*563.6))
	is(t, "front", c.Rows[3].FrontHeight, 195)
	is(t, "line", c.Rows[3].SlideLine, 10+35)
	is(t, "drawer front", partOf(t, r, "base-2-drawer-front").Length, 595.6)
	is(t, "front", partOf(t, r, "base-2-box-front").Length, drawerOf(t, r, "base-2").Outside.Width-2*11.9+2*5.95)
	// Three alike, and a spare of each.
	is(t, "pieces", float64(partOf(t, r, "base-2-side").Quantity), 3)
	// The tray's fingers: 62 / 12.15 wants 5 rows, but a bit of 3 needs 7.5: 12.4 each.
	tray := partOf(t, r, "tray-box-front")
	is(t, "tray front's finger", tray.Outline[1].Y, 62.0/5-0.25/4)
}

// TestWorkshopBench, by hand. Rows of 520 - 3 x 3 = 511 that grow by 1.25: 511 / (1 +
// 1.25 + 1.5625 + 1.953125) = 511 / 5.765625 = 88.629. A box keeps 5 above and 20
// below. Width 480 - 1.5 - 0.5 / 2, less 2 x 0.0056 for the lesser of two cuts. The back is housed
// at 15: its dado is 12.15
// + (0.1 + 0.4) / 2 wide. Openings of 480 and 481.2 are near, but their drawers are made in two ways.
func TestWorkshopBench(t *testing.T) {
	r := sampled(t, "workshop-bench.yaml")
	d := drawerOf(t, r, "left-1")
	is(t, "height", d.Outside.Height, 511/5.765625-25)
	aimed(t, "width", d.Outside.Width, 478.25-0.0111, 0.01)
	is(t, "depth", d.Outside.Depth, 555)
	side := partOf(t, r, "left-1-side-left")
	i := slices.IndexFunc(side.Operations,
		func(o record.Operation) bool { return o.Kind == "dado" && o.Outline[0].X > 100 })
	is(t, "back's dado from", side.Operations[i].Outline[0].X, 555-15-12.4)
	is(t, "and to", side.Operations[i].Outline[1].X, 540)
	// Two passes of 6.3: the first at 15, the last at 15 + 12.4 - 6.3.
	is(t, "last pass", r.Setups[0].LastBackFence, 21.1)
	text := ofAnyWidth(func(out *present.Printed) { present.PrintParts(out, record.Keep(r)) })
	if !strings.Contains(text, "2 passes, the last at 21.10") {
		t.Errorf("the last pass of the back's dados is not told:\n%s", text)
	}
	// Slid in under a back that is as much lower as groove, thickest bottom and a hair are.
	is(t, "back", partOf(t, r, "left-1-back").Width, d.Outside.Height-(6.075+5.95+0.03))
	// The arithmetic rows of the other opening: 514 - 120 = 394 less the step of 30.
	is(t, "row", r.Cabinets[1].Rows[1].FrontHeight, (394-30)/2.0)
	if len(r.SharedSizes) != 0 {
		t.Errorf("boxes of two makes are alike: %+v", r.SharedSizes)
	}
	// A tote: 420 - 2 x 12.15 between its sides, walls of 150 - 12.15.
	front := partOf(t, r, "tote-box-front")
	is(t, "tote front", front.Length, 420-24.3)
	is(t, "tote wall", front.Width, 150-12.15)
	if got := warningCodes(r); !slices.Equal(got, []string{"note back-setup", "note pull-by-hand", "note rabbet-passes"}) {
		t.Errorf("warnings %v", got)
	}
}

// TestSamplesComeOutRight: a sample shows a shop that does it right. Every box goes together,
// and what is still warned of is what the work is like, as the sample's comment says.
func TestSamplesComeOutRight(t *testing.T) {
	teaches := map[string][]string{"workshop-bench.yaml": {"note back-setup", "note pull-by-hand", "note rabbet-passes"},
		"sewing-cabinet.yaml": {"note back-setup", "note rabbet-passes"},
		"herb-counter.yaml":   {"note assumed", "note lip-setup", "note pull-by-hand", "note rabbet-passes"},
		"seed-store.yaml":     {"note lots"}}
	files, err := filepath.Glob("../../samples/*.yaml")
	if err != nil || len(files) < 10 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			r := sampled(t, name)
			for _, d := range r.Drawers {
				if !strings.HasPrefix(d.Summary, "goes together: ") {
					t.Errorf("%s: %s", d.Name, d.Summary)
				}
			}
			if got := warningCodes(r); !slices.Equal(got, teaches[name]) {
				t.Errorf("it warns of %v, its comment tells of %v", got, teaches[name])
			}
		})
	}
}

// aimed reports a size that is not aimed where it should be, to what sizes are rounded to.
func aimed[N ~float64](t *testing.T, what string, got, want, step N) {
	t.Helper()
	if steps := float64(got / step); math.Abs(float64(got-want)) > float64(step) || math.Abs(steps-math.Round(steps)) > 1e-6 {
		t.Errorf("%s is %.5f, aimed at %.5f", what, got, want)
	}
}

func warningCodes(r record.Report) []string {
	var codes []string
	for _, w := range r.Warnings {
		codes = append(codes, w.Level+" "+w.Code)
	}
	slices.Sort(codes)
	return slices.Compact(codes)
}

// TestToolChest, by hand, in inches. Boxes: 22 1/16 - 1 - 1/32, less what thick sides stand
// proud in the mean, twice 0.002 / 4 of a uniform spread; of 18 5/8
// less 3 mm and a front of 0.474 the slide of 18 fits. Fronts are 22 1/16 - 3/16 wide;
// of 12 - 3/16 - 1/4 - 3 3/4 = 7 13/16 the two free ones get half each. The screw lines
// come on holes 32 mm apart.
func TestToolChest(t *testing.T) {
	r := sampled(t, "tool-chest.yaml")
	d := drawerOf(t, r, "upper-2")
	aimed(t, "width", d.Outside.Width.In(geom.Inch), 22.0625-1-1.0/32-0.001, 0.001)
	is(t, "depth", d.Outside.Depth.In(geom.Inch), 18)
	is(t, "front", r.Cabinets[0].Rows[1].FrontHeight.In(geom.Inch), 7.8125/2)
	is(t, "front's width", partOf(t, r, "upper-2-drawer-front").Length.In(geom.Inch), 22.0625-0.1875)
	for _, row := range r.Cabinets[0].Rows {
		if holes := row.SlideLine.MM() / 32; math.Abs(holes-math.Round(holes)) > 1e-6 {
			t.Errorf("%s: a line %g holes up", row.Drawer, holes)
		}
	}
	// 20 lb = 9.07184740 kg; the slides carry 75 lb = 34.0194.
	is(t, "load", d.Load, 9.072)
	is(t, "rating", d.Rating, 34.01942775)
	// Dividers: 2 x 0.472 less inside, two of 0.238 between three cells.
	cell := (drawerOf(t, r, "lower-1").Outside.Width.In(geom.Inch) - 0.944 - 2*0.238) / 3
	is(t, "divider", partOf(t, r, "lower-1-divider").Placements[0].Origin[0].In(geom.Inch), 0.472+cell)
}

// TestPrintRoom, by hand, in inches. Half of the mean of 0.470, 0.473 and 0.471 is
// 0.2356667; a groove for 0.205 with 0.012 of play goes up to 0.4526667, and a blade of
// 0.125 makes it in two passes, the second at 0.4526667 - 0.125. Fingers of a stack of 0.246
// have a play of (0.05 mm + 0.4 mm) / 2, 0.009 as printed, and are 0.2415 high, which takes no
// groove at that height: the lowest row ends 2 mm and a quarter of their play over it, and
// takes up what eight rows leave of 2.5: 2.5 - 8 x 0.2415 = 0.568. Four plugs a box close the grooves in the
// fingers, half of 0.4713333 long. A cleat between two on the sides, all as thick as these:
// 22 - 4 x 0.4713333 less 2 mm; the bottom on them is 1/16 smaller than the inside.
func TestPrintRoom(t *testing.T) {
	r := sampled(t, "print-room.yaml")
	side := partOf(t, r, "paper-side")
	i := slices.IndexFunc(side.Operations, func(o record.Operation) bool { return o.Kind == "groove" })
	is(t, "groove from", side.Operations[i].Outline[0].Y.In(geom.Inch), 0.2356667)
	is(t, "groove to", side.Operations[i].Outline[2].Y.In(geom.Inch), 0.4526667)
	s := r.Setups[0]
	is(t, "cutter", s.CutterWidth.In(geom.Inch), 0.246)
	is(t, "cutter for grooves", s.GrooveCutter.In(geom.Inch), 0.125)
	if len(s.GrooveFences) != 2 {
		t.Fatalf("passes at %v", s.GrooveFences)
	}
	is(t, "first pass", s.GrooveFences[0].In(geom.Inch), 0.2356667)
	is(t, "second pass", s.GrooveFences[1].In(geom.Inch), 0.3276667)
	is(t, "lowest row", r.Setups[1].FingerHeight.In(geom.Inch), 0.568)
	is(t, "finger of the front", partOf(t, r, "type-box-front").Outline[1].Y.In(geom.Inch), 0.568-0.009/4)
	is(t, "groove in it", partOf(t, r, "type-box-front").Operations[0].Outline[0].X.In(geom.Inch), 0)
	i = slices.IndexFunc(r.Buy, func(b record.Buy) bool { return b.Kind == "offcut" })
	if b := r.Buy[i]; b.Name != "plug 0.217 in x 0.236 in, 0.235 in long" || b.Quantity != 8 {
		t.Errorf("plugs: %+v", b)
	}
	cleat := partOf(t, r, "rollers-cleat-end")
	is(t, "cleat", cleat.Length.In(geom.Inch), 22-4*0.47133333-2/25.4)
	is(t, "cleat's height", cleat.Width.In(geom.Inch), 12/25.4)
	is(t, "bottom on cleats", partOf(t, r, "rollers-bottom").Length.In(geom.Inch), 22-2*0.47133333-1.0/16)
	is(t, "bottom over the edges", partOf(t, r, "rollers-bottom").Placements[0].Origin[2].In(geom.Inch), 12/25.4)
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %v", r.Warnings)
	}
}

// TestToolTill, by hand. Chisels: half pins 6 and pins 10, so that (90 - 12 + 10) / 40 is two tails of
// (90 - 12 - 10) / 2; flanks lean 10 / 8 aside, and each part keeps a quarter of half the clearance of 0.25 off
// them. Planes: half pins 7, pins 14, three tails of (150 - 14 - 28) / 3 that lean 14 / 6. The front of the tray
// keeps of 420 x 90 x 10 what two sockets of 34.125 at each end leave, four flanks, and a groove between the
// sockets of 400 x 4.225 x 5.
func TestToolTill(t *testing.T) {
	r := sampled(t, "tool-till.yaml")
	if len(r.Parts) != 8 || len(r.Drawers) != 2 {
		t.Errorf("%d kinds of parts, %d drawers", len(r.Parts), len(r.Drawers))
	}
	front, side := partOf(t, r, "chisels-box-front"), partOf(t, r, "chisels-side")
	is(t, "front", front.Length, 420)
	is(t, "side", side.Length, 260)
	is(t, "bottom", partOf(t, r, "chisels-bottom").Length, 420-2*10+2*5-2)
	flanks, volume := 0, front.Length*front.Width*front.Thickness-2*2*34.125*10*10
	for _, o := range front.Operations {
		x, y := o.Outline[1].X-o.Outline[0].X, o.Outline[2].Y-o.Outline[1].Y
		if o.Kind == "flank" {
			flanks++
			is(t, "flank", y, 10.0/8)
			volume -= x * y * o.Depth / 2
		} else {
			is(t, "groove's height", o.Outline[0].Y, 6+0.25/4+3)
			volume -= x * y * o.Depth
		}
	}
	if flanks != 8 {
		t.Errorf("%d flanks", flanks)
	}
	is(t, "volume of the front", volume, 420*90*10-2*2*34.125*10*10-8*10*1.25*10/2-400*4.225*5)
	tails := func(part string) (y []record.Length) { // at the left end, from below
		for _, v := range partOf(t, r, part).Outline {
			if v.X == 0 {
				y = append(y, v.Y)
			}
		}
		slices.Sort(y)
		return y
	}
	for part, want := range map[string][]record.Length{
		"chisels-side": {6 + 0.0625 - 1.25, 40 - 0.0625 + 1.25, 50 + 0.0625 - 1.25, 84 - 0.0625 + 1.25},
		"planes-side": {7 + 0.0625 - 14.0/6, 43 - 0.0625 + 14.0/6, 57 + 0.0625 - 14.0/6, 93 - 0.0625 + 14.0/6,
			107 + 0.0625 - 14.0/6, 143 - 0.0625 + 14.0/6},
	} {
		got := tails(part)
		if len(got) != len(want) {
			t.Fatalf("%s: %v", part, got)
		}
		for i := range got {
			is(t, part, got[i], want[i])
		}
	}
}

// TestAlcoveCabinets, by hand. Both openings count as 561.2 x 480, with shims of 0.6 in the
// wider one. All boxes are as wide, up to the 561.2 - 2 x 12.7 = 535.8 that the slides take
// and no more than 1/16 in under it; of 480 - 3 the slide of 450 fits. Rows of 540 + 24 - 6 = 558
// and 559, a third of it each: 186 and 186.33. The top
// box has 540 - 366 - 20 = 154, the middle one 186 - 20; those of the other are as high. All
// six bottoms are equal: the width - 2 x 12.05 + 2 x 6.025 - 1 long.
func TestAlcoveCabinets(t *testing.T) {
	file, err := filepath.Abs("../../samples/alcove-cabinets.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := sampled(t, "alcove-cabinets.yaml")
	width := drawerOf(t, r, "window-1").Outside.Width
	if width > 535.8 || width < 535.8-25.4/16 {
		t.Errorf("boxes of %g do not run", width)
	}
	for i, height := range []float64{154, 166, 154} {
		for _, name := range []string{"window", "door"} {
			d := drawerOf(t, r, fmt.Sprintf("%s-%d", name, i+1))
			is(t, d.Name+" width", d.Outside.Width, width)
			is(t, d.Name+" height", d.Outside.Height.MM(), height)
			is(t, d.Name+" depth", d.Outside.Depth, 450)
			is(t, d.Name+" bottom", partOf(t, r, d.Name+"-bottom").Length, width-12.05-1)
		}
	}
	is(t, "front", r.Cabinets[1].Rows[0].FrontHeight, 559.0/3)
	is(t, "no shim", r.Cabinets[0].Shim, 0)
	is(t, "shim", r.Cabinets[1].Shim, 0.6)
	// Two pieces for each of the three drawers of the wider opening, by the slide's file.
	want := []record.Buy{{Kind: "shim", Name: "0.60 mm thick, 450.00 x 45.00 mm, behind ball bearing", Quantity: 6,
		Unit: "pieces"}}
	if got := boughtOf(r, "shim"); !slices.Equal(got, want) {
		t.Errorf("shims %+v, want %+v", got, want)
	}
	if len(r.SharedSizes) != 1 || !r.SharedSizes[0].Made || r.SharedSizes[0].Rows != 3 {
		t.Errorf("%+v", r.SharedSizes)
	}
	one := regexp.MustCompile(` 6 .* window-1-bottom, window-2-bottom, window-3-bottom, door-1-bottom, door-2-bottom, door-3-bottom\n`)
	if text := ran(t, 0, "parts", file, "--all"); !one.MatchString(text) {
		t.Errorf("not one list of bottoms:\n%s", text)
	}
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %v", warningCodes(r))
	}
}

// boughtOf is what a report has to buy of a kind.
func boughtOf(r record.Report, kind string) (list []record.Buy) {
	for _, x := range r.Buy {
		if x.Kind == kind {
			list = append(list, x)
		}
	}
	return list
}

// TestSharedSizeIsSaidEverywhere: shims stand in list, packet, drawings and table; without the
// key the offer names it.
func TestSharedSizeIsSaidEverywhere(t *testing.T) {
	samples := inTemp(t)
	if code, _, errs := call(t, "", "build", filepath.Join(samples, "alcove-cabinets.yaml"), "-o", "out", "--no-proof"); code != exitDone {
		t.Fatal(errs)
	}
	for name, want := range map[string]string{
		"parts.txt":              "Shims between the slides and the cabinet: in door 0.60 mm at the left and at the right.",
		"tables/slide-lines.csv": "door,door-1,411.67,376.67,366.67,186.33,0.6,mm",
		"cabinet/door.svg":       "shims of 0.6 mm behind the slides",
		"cabinet/door.left.dxf":  "shims of 0.6 mm behind the slides",
	} {
		data, err := os.ReadFile(filepath.Join("out", name))
		if err != nil || !strings.Contains(jobtest.Unfolded(data), want) {
			t.Errorf("%s does not say %q: %v", name, want, err)
		}
	}
	data, err := os.ReadFile(filepath.Join(samples, "alcove-cabinets.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir("slides", 0o755); err != nil {
		t.Fatal(err)
	}
	slides, err := os.ReadFile(filepath.Join(samples, "slides", "metric.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("slides/metric.yaml", slides, 0o644); err != nil {
		t.Fatal(err)
	}
	_, out, errs := call(t, strings.Replace(string(data), "group-openings: yes\n", "", 1), "parts", "-", "--all")
	if !strings.Contains(out, "near-equal openings: boxes for a governing opening of 561.20 x 480.00 mm") || !strings.Contains(out, "Write `group-openings: yes` in the job") {
		t.Errorf("no offer: %s%s", out, errs)
	}
}

// TestStudyDesk, by hand, in inches. Of 21 3/4 less 10 mm and a front of 0.492 the slide of
// 18 fits: the series goes on at 21. Inside it is 15 1/16 less 42 mm wide, within 1 mm. Of 24 1/2
// - 3/16 - 2/8 - 4 - 12 = 8 1/16 the free row has all.
func TestStudyDesk(t *testing.T) {
	r := sampled(t, "study-desk.yaml")
	d := drawerOf(t, r, "pedestal-2")
	is(t, "depth", d.Outside.Depth.In(geom.Inch), 18)
	if off := d.Inside.Width.In(geom.Inch) - (15.0625 - 42/25.4); math.Abs(off) > 1/25.4 {
		t.Errorf("inside it is off by %g", off)
	}
	is(t, "row", r.Cabinets[0].Rows[1].FrontHeight.In(geom.Inch), 8.0625)
	is(t, "rating", d.Rating, 75*0.45359237)
	if len(r.Warnings) != 0 {
		t.Errorf("warnings %v", warningCodes(r))
	}
}

// TestSlideFiles: every series of the two files that jobs share serves a drawer, in the
// longest of its lengths that fits, whichever unit the job is in.
func TestSlideFiles(t *testing.T) {
	samples := inTemp(t)
	for _, file := range []string{"metric", "inch"} {
		data, err := os.ReadFile(filepath.Join(samples, "slides", file+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file+".yaml", data, 0o644); err != nil {
			t.Fatal(err)
		}
		unit := 1.0
		if strings.Contains(string(data), "units: in\n") {
			unit = 25.4
		}
		if !strings.Contains(string(data), "Common practice, no source") {
			t.Errorf("%s.yaml does not say what its figures rest on", file)
		}
		series := regexp.MustCompile(`(?m)^  (\w[\w ]*):\n    kind: ([\w-]+)\n    lengths: \[([\d, ]+)\]`).FindAllStringSubmatch(string(data), -1)
		if len(series) != strings.Count(string(data), "kind:") || len(series) < 6 {
			t.Fatalf("%d series in %s.yaml", len(series), file)
		}
		for _, s := range series {
			var lengths []float64
			for _, l := range strings.Split(s[3], ", ") {
				v, err := strconv.ParseFloat(l, 64)
				if err != nil {
					t.Fatal(err)
				}
				lengths = append(lengths, v*unit)
			}
			if !slices.IsSorted(lengths) {
				t.Errorf("%s: %v", s[1], lengths)
			}
			for _, job := range []string{"mm", "in"} {
				for _, want := range []float64{lengths[0], lengths[len(lengths)/2], lengths[len(lengths)-1]} {
					// Slides need up to 10 mm behind them.
					text := fmt.Sprintf("units: %s\nslides-file: %s.yaml\nstock: {side: {thickness: 12 mm}, bottom: {thickness: 6 mm}}\ncutter: {kind: router, bits: {a: {diameter: 3 mm}}}\n"+
						"openings: {o: {width: 500 mm, height: 200 mm, depth: %g mm, cabinet: frameless, fronts: none}}\n"+
						"drawers: [{name: a, opening: o, slide: %s, sides: side, bottom: bottom, joinery: {bottom-height: 14 mm}}]\n", job, file, want+10.5, s[1])
					code, out, errs := call(t, text, "parts", "-", "--json")
					r, err := record.Read([]byte(out))
					if code != exitDone || err != nil {
						t.Fatalf("%s of %s.yaml: %s%s", s[1], file, out, errs)
					}
					is(t, s[1]+" of "+file+".yaml", r.Drawers[0].Outside.Depth.MM(), want)
				}
			}
		}
	}
}
