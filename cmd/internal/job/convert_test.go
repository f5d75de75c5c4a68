package job

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawerwright/cmd/internal/jobtest"
	"drawerwright/geom"
	"drawerwright/geom/joinery"

	"pgregory.net/rapid"
)

func TestConvert(t *testing.T) {
	for _, c := range []struct{ name, file, want string }{
		{"every form of length", `# in mm
units: mm   # of bare numbers
stock:
  birch: {thickness: [12.21, 12, 12.7], sheet: 1525 x 1525}   # measured
  ply: {thickness: "6.350", other-sheets: {half: {sheet: [1220, 2440]}}, tolerance: 1/64 in}
cutter: {kind: saw, width: 6.35}
spacers: [3, 2.5, 1/2]
drawers:
  - name: "400"   # no length
    count: 3
    outside: 400 x 100x450   # width x height x depth
    sides: birch
    load: 10 kg
    joinery: {fence-distance: 6.123}
    dividers: [{stock: birch, direction: across, at: [100, 12 mm, 250]}]
`, `# in mm
units: in   # of bare numbers
stock:
  birch: {thickness: [0.4807, 0.4724, 1/2], sheet: 60.0394 x 60.0394}   # measured
  ply: {thickness: 1/4, other-sheets: {half: {sheet: [48.0315, 96.063]}}, tolerance: 1/64 in}
cutter: {kind: saw, width: 1/4}
spacers: [0.1181, 0.0984, 0.0197]
drawers:
  - name: "400"   # no length
    count: 3
    outside: 15.748 x 3.937x17.7165   # width x height x depth
    sides: birch
    load: 10 kg
    joinery: {fence-distance: 0.24106}
    dividers: [{stock: birch, direction: across, at: [3.937, 12 mm, 9.8425]}]
`},
		{"to millimeters", `units: in
openings: {base: {width: [22 5/32, 22 1/8], height: 27 5/8, depth: 21 1/2}}
stock: {a: {thickness: [0.472, 0.4807]}}
drawers: [{name: a, rows: [5 1/2, free, 6"], reveal: [1/16, 1/8, 0, 1/8 in], outside: 10 x 4 x 12 in}]
`, `units: mm
openings: {base: {width: [562.76875, 561.975], height: 701.675, depth: 546.1}}
stock: {a: {thickness: [11.99, 12.21]}}
drawers: [{name: a, rows: [139.7, free, 6"], reveal: [1/16, 1/8, 0, 1/8 in], outside: 10 x 4 x 12 in}]
`},
		{"words and mistakes stay", "units: in\ncutter: {kind: saw, width: wide}\njoinery: 3\nstock: [1]\nrows: 4\n",
			"units: mm\ncutter: {kind: saw, width: wide}\njoinery: 3\nstock: [1]\nrows: 4\n"},
	} {
		to := geom.Inch
		if strings.Contains(c.want, "units: mm") {
			to = geom.Millimeter
		}
		got, err := Convert([]byte(c.file), to)
		if err != nil || string(got) != c.want {
			t.Errorf("%s: %v\n%s\nwant\n%s", c.name, err, got, c.want)
		}
		if same, err := Convert(got, to); err != nil || !bytes.Equal(same, got) {
			t.Errorf("%s: converted to what it is: %v\n%s", c.name, err, same)
		}
	}
	for file, says := range map[string]string{"stock: {}\n": "no units", "units: cm\n": "not a unit",
		"units: [\n": "read first", "": "no units", "units: mm\nunits: in\n": "again"} {
		got, err := Convert([]byte(file), geom.Inch)
		if got != nil || err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %q %v; want an error that says %q", file, got, err, says)
		}
	}
}

// A job that is converted, and one that is converted back, has the same boards, boxes and parts as the
// one before, but for less than is shown of them; comments stay.
func TestConvertedJobBuildsTheSame(t *testing.T) {
	for name, file := range samples(t) {
		if problem := convertsBothWays(file); problem != "" {
			t.Errorf("%s: %s", name, problem)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, jobtest.Want{})
		if problem := convertsBothWays([]byte(j.Text)); problem != "" {
			t.Fatalf("%s\n%s", problem, j.Text)
		}
	})
}

// A pull that just misses the hole of a knob in inches would meet that of the usual metric screw.
func TestConvertedHandleKeepsItsHole(t *testing.T) {
	if problem := convertsBothWays([]byte(`units: in
stock:
  walls: {thickness: [0.413, 0.413, 0.413], material: mdf}
  face1: {thickness: [0.591, 0.587, 0.594], material: birch-plywood}
  ply2: {thickness: [0.126, 0.126, 0.126], sheet: 2440 mm x 1220 mm, grain: length, price: 8.01, material: plywood}
cutter: {kind: hand, width: 0.126}
openings:
  ash: {width: 7 1/16, height: 9 7/16, depth: 11 13/16, cabinet: frameless, fronts: overlay}
slides:
  own ash: {kind: side-mount, clearance: 0.492, lengths: [9.843, 11.811, 13.78, 15.748, 17.717, 19.685]}
drawers:
  - {name: ash, opening: ash, slide: own ash, rows: 2, drawer-front: {stock: face1, handles: knob}, sides: walls, joint: double-rabbet, bottom: ply2, joinery: {bottom-fit: grooved-in}, pull: {shape: hole}}
`)); problem != "" {
		t.Error(problem)
	}
}

var anyThickness = regexp.MustCompile(`thickness: (?:\[([^,\]]+)[^\]]*\]|([^,}\s]+))(?:, tolerance: [^,}]+)?`)

// Where a file names the standard by which its boards are judged, it is the same in either unit: the
// widths that are aimed at in openings stay, which may else jump by half a millimeter for a
// thousandth of one.
func TestNamedStandardKeepsWidths(t *testing.T) {
	jumps := `units: in
stock: {walls: {thickness: 0.587, tolerance: ps1-sanded}, ply: {thickness: [0.289, 0.289, 0.289]}}
cutter: {kind: router-table, diameter: 0.303}
joinery: {bottom-clearance: 0.073, groove-ends: plugged}
openings:
  ash: {width: 15 5/16, height: 17 3/4, depth: 15 3/4, cabinet: face-frame, frame-overhang: 0.58, fronts: none}
drawers:
  - {name: ash, opening: ash, slide: center-mount, rows: [8 11/16, free], sides: walls, joint: butt,
     fasteners: dowels, bottom: ply, joinery: {bottom-fit: slide-in, bottom-height: 0.394}}
`
	if problem, sound := keepsWidths(jumps); problem != "" || !sound {
		t.Fatalf("%t %s", sound, problem)
	}
	rapid.Check(t, func(t *rapid.T) {
		j := jobtest.Draw(t, jobtest.Want{Corner: "butt"})
		named := rapid.SampledFrom(toleranceWords()).Draw(t, "standard")
		text := anyThickness.ReplaceAllString(j.Text, "thickness: $1$2, tolerance: "+named)
		if problem, _ := keepsWidths(text); problem != "" {
			t.Fatalf("%s\n%s", problem, text)
		}
	})
}

// keepsWidths says which width differs after a job was converted, and whether it could be read.
func keepsWidths(file string) (problem string, sound bool) {
	first, problems := Read("", strings.NewReader(file), Files(openTest))
	if problems.Failed() {
		return "", false
	}
	next, err := Convert([]byte(file), other(first.Units), Files(openTest))
	if err != nil {
		return err.Error(), true
	}
	j, _ := Read("", bytes.NewReader(next), Files(openTest))
	for i, d := range j.Drawers {
		if was := first.Drawers[i].Width; math.Abs(d.Width-was) > sameSize {
			return fmt.Sprintf("%s is %.3f wide, then %.3f\n%s", d.Name, was, d.Width, next), true
		}
	}
	return "", true
}

// convertsBothWays says what differs after a job was converted there and back.
func convertsBothWays(file []byte) string {
	first, problems := Read("", bytes.NewReader(file), Files(openTest))
	if problems.Failed() {
		return ""
	}
	text, last := file, first
	for _, to := range []geom.Unit{other(first.Units), first.Units} {
		next, err := Convert(text, to, Files(openTest))
		if err != nil {
			return err.Error()
		}
		j, problems := Read("", bytes.NewReader(next), Files(openTest))
		if problems.Failed() || j.Units != to {
			return fmt.Sprintf("in %s: %v\n%s", j.Units, problems, next)
		}
		if strings.Count(string(next), "#") != strings.Count(string(file), "#") {
			return "comments are lost\n" + string(next)
		}
		if problem := differ(last, j); problem != "" {
			return problem + "\n" + string(next)
		}
		text, last = next, j
	}
	return ""
}

func other(u geom.Unit) geom.Unit {
	if u == geom.Inch {
		return geom.Millimeter
	}
	return geom.Inch
}

// differ says which board or part of two jobs differs in what is shown of it: a thousandth of an inch.
func differ(a, b *Job) string {
	far := func(v, w float64) bool { return math.Abs(v-w) > sameSize }
	for i, s := range a.Stocks {
		o := b.Stocks[i]
		sheet := far(s.Length, o.Length) || far(s.Width, o.Width)
		if s.Name != o.Name || far(s.Thickness.Mean, o.Thickness.Mean) || sheet {
			return fmt.Sprintf("%+v, then %+v", s, o)
		}
	}
	for i, d := range a.Drawers {
		if far(d.Width, b.Drawers[i].Width) {
			if !sameStandards(a.Boards(d.Spec), b.Boards(b.Drawers[i].Spec)) {
				continue
			}
			return fmt.Sprintf("%s is %.3f wide, then %.3f", d.Name, d.Width, b.Drawers[i].Width)
		}
		one, _, sound := joinery.LayOut(d.Spec)
		other, _, stillSound := joinery.LayOut(b.Drawers[i].Spec)
		if sound && !stillSound {
			return fmt.Sprintf("%s can be made: %t, then %t", d.Name, sound, stillSound)
		}
		if !sound {
			continue
		}
		// Screws, which are usual in a unit, can tell two parts of one size apart by their holes.
		for _, pair := range [][2][]joinery.Part{{one.Parts, other.Parts}, {other.Parts, one.Parts}} {
			for _, p := range pair[0] {
				length, width := p.Panel.Length(), p.Panel.Width()
				if !slices.ContainsFunc(pair[1], func(q joinery.Part) bool {
					return p.Role == q.Role && !far(length, q.Panel.Length()) && !far(width, q.Panel.Width())
				}) {
					return fmt.Sprintf("%s: a %s of %.3f x %.3f is in one alone", d.Name, p.Role, length, width)
				}
			}
		}
	}
	return ""
}
