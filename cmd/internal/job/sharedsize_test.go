package job

import (
	"strings"
	"testing"
)

// alikeText is a job with two openings that differ by 1.2 in width, 1 in height and 1.5 in
// depth.
const alikeText = `units: mm
group-openings: yes
stock: {ply: {thickness: 12}, thin: {thickness: 6}}
cutter: {kind: router, diameter: 6}
openings:
  left: {width: 561.2, height: 540, depth: 480, cabinet: frameless, fronts: none}
  right: {width: 562.4, height: 541, depth: 481.5, cabinet: frameless, fronts: none}
drawers:
  - {name: box, outside: 300 x 100 x 300, sides: ply, bottom: thin}
  - {name: left, opening: left, slide: wooden-runner, rows: 2, sides: ply, bottom: thin}
  - {name: right, opening: right, slide: wooden-runner, rows: 2, sides: ply, bottom: thin}
`

// TestReadSharedSize: the boxes are those of the narrower, the lower and the shallower opening:
// 561.2 - 2 x 0.75 - 0.1 for no spread wide, 475 deep, rows of 268.5 less 5 and 20 high.
// The wider opening has shims of 0.6. Drawers keep the order of the file.
func TestReadSharedSize(t *testing.T) {
	j := read(t, alikeText)
	var names []string
	for _, d := range j.Drawers {
		names = append(names, d.Name)
		if d.Name != "box" && (d.Width != j.Drawers[1].Width || d.Height != j.Drawers[1].Height || d.Depth != 475) {
			t.Errorf("%s is %g x %g x %g", d.Name, d.Width, d.Height, d.Depth)
		}
	}
	if strings.Join(names, " ") != "box left-1 left-2 right-1 right-2" {
		t.Errorf("%v", names)
	}
	if a := j.SharedSizes; len(a) != 1 || !a[0].Made || len(a[0].Banks) != 2 ||
		j.Banks[a[0].Banks[1]].Name != "right" || a[0].Shared.Rows != 2 {
		t.Errorf("%+v", a)
	}
	if got := j.Banks[1].Plan.Shim; got < 0.599999 || got > 0.600001 || j.Banks[0].Plan.Shim != 0 {
		t.Errorf("shims of %g and %g", j.Banks[0].Plan.Shim, got)
	}
}

// TestSharedSizeIsOffered: without the key each opening has its own boxes, and what could be
// shared is known.
func TestSharedSizeIsOffered(t *testing.T) {
	j := read(t, strings.Replace(alikeText, "group-openings: yes\n", "", 1))
	if a := j.SharedSizes; len(a) != 1 || a[0].Made || j.Drawers[1].Width == j.Drawers[3].Width ||
		j.Banks[1].Plan.Shim != 0 {
		t.Errorf("%+v", a)
	}
}

// TestSharedSizeDoesNothing: openings that differ by more, or drawers that are made in another
// way, share no box, and the key is reported; an opening that is refused is another matter.
func TestSharedSizeDoesNothing(t *testing.T) {
	for name, c := range map[string]struct {
		old, new string
		want     string
	}{
		"another width":     {"width: 562.4", "width: 563.4", "2:17 no-effect"},
		"another depth":     {"depth: 481.5", "depth: 482.5", "2:17 no-effect"},
		"another joint":     {"left, slide: wooden-runner", "left, joint: rabbet, slide: wooden-runner", "2:17 no-effect"},
		"another slide":     {"right, slide: wooden-runner", "right, slide: none", "2:17 no-effect"},
		"another clearance": {"right, slide: wooden-runner", "right, joinery: {bottom-clearance-depth: 1}, slide: wooden-runner", "2:17 no-effect"},
		"a refused one":     {"depth: 481.5", "depth: 40", "11:28 depth"},
		"an unknown slide":  {"right, slide: wooden-runner", "right, slide: woden", "11:42 unknown-name"},
	} {
		text := strings.Replace(alikeText, c.old, c.new, 1)
		_, problems := Read("job.yaml", strings.NewReader(text))
		if got := places(problems); len(got) != 1 || got[0] != c.want {
			t.Errorf("%s: %q", name, got)
		}
	}
	// A pull and dividers are no other make.
	j := read(t, strings.Replace(alikeText, "left, slide",
		"left, pull: {shape: hole}, dividers: [{direction: across, at: 1, stock: thin}], slide", 1))
	if len(j.SharedSizes) != 1 {
		t.Errorf("%+v", j.SharedSizes)
	}
}
